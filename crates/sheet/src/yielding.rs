//! One layer of the sheet: plane-stress J2 plasticity with isotropic and kinematic hardening.
//!
//! Return mapping in closed modes after Simo and Taylor (1986), *A return mapping algorithm for
//! plane stress elastoplasticity*. The kinematic share follows Prager's rule with a modulus taken
//! from the same curve, so that one pull gives that curve whatever the share.

use crate::hardening::Hardening;
use crate::strain::Modes;
use nalgebra::{Matrix3, Vector3};
use serde::{Deserialize, Serialize};

/// `σ̄² = ξᵀ Q ξ` in the conjugate modes.
const Q: Vector3<f64> = Vector3::new(0.25, 0.75, 0.75);

/// Elastic constants and yield of the metal, as a layer needs them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Metal {
    /// Young's modulus, MPa.
    pub e_mpa: f64,
    /// Poisson's ratio.
    pub nu: f64,
    /// Flow stress.
    pub hardening: Hardening,
    /// Share of the hardening that moves the yield surface instead of widening it, 0 to 1.
    pub kinematic_share: f64,
}

impl Metal {
    /// Stiffness of the three modes, MPa.
    pub fn stiffness(&self) -> Modes {
        let shear = 2.0 * self.e_mpa / (1.0 + self.nu);
        Vector3::new(2.0 * self.e_mpa / (1.0 - self.nu), shear, shear)
    }
}

/// What a layer remembers.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Memory {
    /// Plastic logarithmic strain, modes.
    pub plastic: Modes,
    /// Back stress, conjugate modes, MPa.
    pub back: Modes,
    /// Equivalent plastic strain.
    pub spent: f64,
}

/// Stress after a strain, its consistent tangent, and what the layer then remembers.
#[derive(Debug, Clone, Copy)]
pub struct Answer {
    /// Conjugate modes, MPa.
    pub stress: Modes,
    /// ∂stress/∂strain, MPa.
    pub tangent: Matrix3<f64>,
    /// Memory at the end of the step.
    pub memory: Memory,
}

/// Equivalent (von Mises) stress of conjugate modes, MPa.
pub fn equivalent(stress: &Modes) -> f64 {
    stress.component_mul(stress).dot(&Q).sqrt()
}

/// Answer of a layer to the total strain `strain`.
pub fn answer(metal: &Metal, memory: &Memory, strain: &Modes) -> Answer {
    answer_from(metal, metal.hardening.onset(), memory, strain)
}

/// [`answer`] where the onset of the metal's hardening is at hand.
pub(crate) fn answer_from(metal: &Metal, onset: f64, memory: &Memory, strain: &Modes) -> Answer {
    let k = metal.stiffness();
    let trial = k.component_mul(&(strain - memory.plastic));
    let xi = trial - memory.back;
    let first = metal.hardening.yield_mpa();
    let (old_curve, old_slope) = metal.hardening.past_onset(onset, memory.spent);
    let moved = if first.is_finite() { metal.kinematic_share * (old_curve - first) } else { 0.0 };
    // a layer that stands on its yield surface is elastic until it is asked for more
    if equivalent(&xi) <= (old_curve - moved) * (1.0 + 1e-9) {
        return Answer { stress: trial, tangent: Matrix3::from_diagonal(&k), memory: *memory };
    }
    let kq = k.component_mul(&Q);
    // Σ Q ξ²/D² = 1 with D = σ(p + Δp) − K(p) + Δp Q k: convex and falling, Newton from zero cannot overshoot
    let spread = xi.component_mul(&xi).component_mul(&Q);
    let mut dp = 0.0;
    let (mut curve, mut slope) = (old_curve, old_slope);
    let mut d;
    let mut rounds = 0;
    loop {
        d = kq.map(|v| curve - moved + dp * v);
        let f = (0..3).map(|i| spread[i] / (d[i] * d[i])).sum::<f64>() - 1.0;
        rounds += 1;
        if f.abs() < 1e-12 || rounds > 60 {
            break;
        }
        let df = (0..3).map(|i| -2.0 * spread[i] * (slope + kq[i]) / (d[i] * d[i] * d[i])).sum::<f64>();
        dp = (dp - f / df).max(0.0);
        (curve, slope) = metal.hardening.past_onset(onset, memory.spent + dp);
    }
    let n = xi.component_div(&d);
    let gained = metal.kinematic_share * (curve - old_curve);
    let stress = trial - dp * kq.component_mul(&n);
    let w = kq.component_mul(&n).component_div(&d);
    let along: f64 = (0..3).map(|i| Q[i] * n[i] * n[i] * (slope + kq[i]) / d[i]).sum();
    let tangent = Matrix3::from_diagonal(&Vector3::from_fn(|i, _| k[i] * (1.0 - dp * kq[i] / d[i])))
        - w * w.transpose() * ((curve - moved - dp * slope) / along);
    let memory = Memory {
        plastic: memory.plastic + dp * n.component_mul(&Q),
        back: memory.back + gained * n,
        spent: memory.spent + dp,
    };
    Answer { stress, tangent, memory }
}
