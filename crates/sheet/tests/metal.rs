//! One layer against closed forms and finite differences.

use dentwright_sheet::{Hardening, Layers, Memory, Metal, Modes, add_up, answer, equivalent};
use proptest::prelude::*;

fn steel(kinematic_share: f64) -> Metal {
    let hardening = Hardening::Swift { k_mpa: 530.0, n: 0.2, yield_mpa: 200.0 };
    Metal { e_mpa: 210000.0, nu: 0.3, hardening, kinematic_share }
}

/// Pulls along x in steps to each strain in turn, the other way free; stress along x and memory after each.
fn pull(metal: &Metal, strains: &[f64]) -> Vec<(f64, Memory)> {
    let (mut memory, mut across) = (Memory::default(), 0.0);
    strains
        .iter()
        .map(|along| {
            let mut last = None;
            for _ in 0..60 {
                let strain = Modes::new(0.5 * (along + across), 0.5 * (along - across), 0.0);
                let a = answer(metal, &memory, &strain);
                // 2 σ₂₂ = t₀ − t₁, and by the strain across ½(∂₀ − ∂₁)
                let t = &a.tangent;
                let slope = 0.5 * (t[(0, 0)] - t[(0, 1)] - t[(1, 0)] + t[(1, 1)]);
                across -= (a.stress[0] - a.stress[1]) / slope;
                last = Some(a);
            }
            let a = last.expect("rounds");
            memory = a.memory;
            assert!((a.stress[0] - a.stress[1]).abs() < 1e-6);
            (0.5 * (a.stress[0] + a.stress[1]), memory)
        })
        .collect()
}

#[test]
fn one_pull_gives_the_curve_whatever_the_share() {
    for share in [0.0, 0.4, 1.0] {
        let metal = steel(share);
        for (strain, (stress, memory)) in
            [0.002, 0.01, 0.05, 0.2].into_iter().zip(pull(&metal, &[0.002, 0.01, 0.05, 0.2]))
        {
            let spent = strain - stress / 210000.0;
            assert!((stress - metal.hardening.at(spent).0).abs() < 1e-6, "share {share}, strain {strain}: {stress}");
            assert!((memory.spent - spent).abs() < 1e-10);
        }
    }
}

#[test]
fn turning_back_yields_early_by_the_kinematic_share() {
    // σ falls by 2 (Y + (1 − s)(σ − Y)) before it flows back
    for share in [0.0, 0.4, 1.0] {
        let metal = steel(share);
        let up = pull(&metal, &[0.05]);
        let drop = 2.0 * (200.0 + (1.0 - share) * (up[0].0 - 200.0));
        for (part, flows) in [(0.995, false), (1.005, true)] {
            let back = pull(&metal, &[0.05, 0.05 - part * drop / 210000.0]);
            assert_eq!(back[1].1.spent > up[0].1.spent, flows, "share {share}, part {part}");
        }
    }
}

#[test]
fn even_stretch_both_ways_follows_the_curve() {
    // σ₁ = σ₂ = σ̄, p = 2 (ε − σ (1 − ν)/E) by constant volume
    let metal = steel(0.0);
    let strain = 0.03;
    let a = answer(&metal, &Memory::default(), &Modes::new(strain, 0.0, 0.0));
    let stress = 0.5 * a.stress[0];
    assert!((equivalent(&a.stress) - stress).abs() < 1e-9);
    assert!((a.memory.spent - 2.0 * (strain - stress * 0.7 / 210000.0)).abs() < 1e-10);
    assert!((stress - metal.hardening.at(a.memory.spent).0).abs() < 1e-6);
}

proptest! {
    #[test]
    fn tangent_is_the_derivative(
        a in -0.05f64..0.05, b in -0.05f64..0.05, c in -0.05f64..0.05,
        da in -0.01f64..0.01, db in -0.01f64..0.01, share in 0.0f64..1.0,
    ) {
        let metal = steel(share);
        let memory = answer(&metal, &Memory::default(), &Modes::new(a, b, c)).memory;
        let strain = Modes::new(a + da, b + db, c - da);
        let here = answer(&metal, &memory, &strain);
        let step = 1e-8;
        for k in 0..3 {
            let mut up = strain;
            let mut down = strain;
            up[k] += step;
            down[k] -= step;
            let slope = (answer(&metal, &memory, &up).stress - answer(&metal, &memory, &down).stress) / (2.0 * step);
            // a finite difference across the corner of the yield surface is neither slope
            prop_assume!(here.memory.spent - memory.spent > 1e-6 || here.memory.spent == memory.spent);
            for i in 0..3 {
                prop_assert!((slope[i] - here.tangent[(i, k)]).abs() < 30.0, "{slope} against {}", here.tangent);
            }
        }
    }
}

/// A strip of a metal that keeps its volume (ν = ½) bent to `curvature` without hindrance across.
fn bend(layers: &Layers, memory: &[Memory], curvature: f64, next: &mut [Memory]) -> f64 {
    let metal = Metal {
        e_mpa: 210000.0,
        nu: 0.5,
        hardening: Hardening::Linear { yield_mpa: 200.0, h_mpa: 0.0 },
        kinematic_share: 0.0,
    };
    let modes = Modes::new(0.25 * curvature, 0.75 * curvature, 0.0);
    let s = add_up(&metal, layers, memory, &Modes::zeros(), &modes, next);
    0.5 * (s.moment[0] + s.moment[1])
}

#[test]
fn bent_strip_follows_the_closed_form_moment() {
    // M = M₀ [1 − ⅓ (k_Y/k)²], M₀ = σ_Y t²/4, k_Y = 2 σ_Y/(E t): any text on plasticity, e.g. Prager and Hodge (1951)
    let t = 0.7;
    let (m0, k_yield) = (200.0 * t * t / 4.0, 2.0 * 200.0 / (210000.0 * t));
    for (n, allowed) in [(7, 0.025), (9, 0.025), (31, 0.001)] {
        let layers = Layers::new(t, n);
        let worst = (2..60)
            .map(|i| {
                let k = k_yield * f64::from(i) * 0.5;
                let mut next = vec![Memory::default(); n];
                let ours = bend(&layers, &vec![Memory::default(); n], k, &mut next);
                (ours / (m0 * (1.0 - (k_yield / k).powi(2) / 3.0)) - 1.0).abs()
            })
            .fold(0.0, f64::max);
        println!("{n} layers: moment off by at most {:.2} %", 100.0 * worst);
        assert!(worst < allowed, "{n} layers: {worst}");
    }
}

#[test]
fn bent_strip_springs_back_by_the_closed_form() {
    // R/R' = 4 x³ − 3 x + 1, x = R σ_Y/(E t); bent to R = 20 and 40 mm of 0.7 mm sheet
    for (radius, rest) in [(20.0, 0.9184), (40.0, 0.8374)] {
        let layers = Layers::new(0.7, 9);
        let mut next = vec![Memory::default(); 9];
        let moment = bend(&layers, &vec![Memory::default(); 9], 1.0 / radius, &mut next);
        let stiffness = 210000.0 * 0.7f64.powi(3) / 12.0;
        let left = radius * (1.0 / radius - moment / stiffness);
        println!("R {radius}: keeps {left:.4} of its curvature, closed form {rest}");
        assert!((left - rest).abs() < 0.004, "{left} against {rest}");
    }
}
