//! The sheet's thickness at one place: layers added up to stretching force and moment.

use crate::quadrature::halved_lobatto;
use crate::strain::Modes;
use crate::yielding::{Memory, Metal, answer_from};
use nalgebra::{Matrix3, Vector3};

/// Layers across the thickness: places `ζ` from the inner to the outer face and their weights, mm.
#[derive(Debug, Clone)]
pub struct Layers {
    /// Height over the middle, mm; the first is the inner face, the last the outer.
    pub zeta: Vec<f64>,
    /// Thickness each stands for, mm.
    pub weight: Vec<f64>,
}

impl Layers {
    /// `n` layers of a sheet of thickness `t`, `n` odd and at least 5: faces and middle among them.
    pub fn new(t: f64, n: usize) -> Self {
        let (zeta, weight) = halved_lobatto(n).into_iter().map(|(x, w)| (0.5 * t * x, 0.5 * t * w)).unzip();
        Self { zeta, weight }
    }

    /// Number of layers.
    pub fn len(&self) -> usize {
        self.zeta.len()
    }

    /// Never: a sheet has faces.
    pub fn is_empty(&self) -> bool {
        self.zeta.is_empty()
    }

    /// Thickness, mm.
    pub fn thickness(&self) -> f64 {
        self.weight.iter().sum()
    }
}

/// Force and moment of a section, and its tangent.
pub struct Section {
    /// Stretching force, conjugate modes, N/mm.
    pub force: Modes,
    /// Moment conjugate to the change of curvature, N.
    pub moment: Modes,
    /// `∂n/∂ε`, `∂n/∂κ`, `∂m/∂κ`.
    pub tangent: [Matrix3<f64>; 3],
}

/// Adds up the layers at membrane strain `membrane` and change of curvature `curvature`; writes what
/// they then remember into `next`.
pub fn add_up(
    metal: &Metal,
    layers: &Layers,
    before: &[Memory],
    membrane: &Modes,
    curvature: &Modes,
    next: &mut [Memory],
) -> Section {
    let mut section = Section { force: Vector3::zeros(), moment: Vector3::zeros(), tangent: [Matrix3::zeros(); 3] };
    let onset = metal.hardening.onset();
    for (i, (zeta, weight)) in layers.zeta.iter().zip(&layers.weight).enumerate() {
        let layer = answer_from(metal, onset, &before[i], &(membrane - *zeta * curvature));
        section.force += *weight * layer.stress;
        section.moment -= *weight * zeta * layer.stress;
        section.tangent[0] += *weight * layer.tangent;
        section.tangent[1] -= *weight * zeta * layer.tangent;
        section.tangent[2] += *weight * zeta * zeta * layer.tangent;
        next[i] = layer.memory;
    }
    section
}

/// The section of a sheet that stays elastic.
pub fn elastic(metal: &Metal, thickness: f64, membrane: &Modes, curvature: &Modes) -> Section {
    let k = metal.stiffness();
    let (stretch, bend) = (k * thickness, k * (thickness.powi(3) / 12.0));
    Section {
        force: stretch.component_mul(membrane),
        moment: bend.component_mul(curvature),
        tangent: [Matrix3::from_diagonal(&stretch), Matrix3::zeros(), Matrix3::from_diagonal(&bend)],
    }
}
