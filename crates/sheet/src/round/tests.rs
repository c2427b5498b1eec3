//! The round piece against a closed form and solids.

use super::*;
use crate::hardening::Hardening;

fn plate(hardening: Hardening) -> Round {
    let metal = Metal { e_mpa: 210000.0, nu: 0.3, hardening, kinematic_share: 0.0 };
    let focus = crate::spline::Focus { at: 0.0, reach: 5.0, fine: 1.0 };
    let axis = Axis::new(crate::spline::graded(0.0, 60.0, &[focus], 1.25, 6.0));
    let rim = Rim { along: 1e7, up: 1e7, turn: 1e8 };
    Round::new(axis, metal, Layers::new(0.7, 9), rim, &|_| 0.0)
}

/// A clamped disc under an even load within a radius: Timoshenko and Woinowsky-Krieger 1959, closed form.
#[test]
fn a_clamped_disc_gives_by_the_closed_form() {
    let mut round = plate(Hardening::Elastic);
    let load = round.even(10.0);
    round.settle(&Act::Forces(&(&load * 0.1))).expect("balance");
    let (a, c, d) = (60.0f64, 10.0f64, 210000.0 * 0.343 / (12.0 * 0.91));
    let known = 0.1 / (16.0 * std::f64::consts::PI * d) * (a * a - c * c * (0.75 + (a / c).ln()));
    let found = round.height(&round.now, 0.0);
    println!("{:+.3} %", 100.0 * (found / known - 1.0));
    assert!((found / known - 1.0).abs() < 0.01, "{found} {known}");
}

/// Pressed 500 N by an even load on 10 mm, let go, pushed back 250 N, let go: CalculiX 2.20 CAX8R solids, deck `wide` of
/// `tests/calculix`.
#[test]
fn a_disc_pressed_and_pushed_back_equals_solids() {
    let mut round = plate(Hardening::Swift { k_mpa: 530.0, n: 0.2, yield_mpa: 200.0 });
    let load = round.even(10.0);
    let mut found = Vec::new();
    for peak in [-500.0, 250.0] {
        for force in (1..=10).map(|k| peak * f64::from(k) / 10.0) {
            round.settle(&Act::Forces(&(&load * force))).expect("balance");
        }
        found.push(round.height(&round.now, 0.0));
        for force in (0..5).rev().map(|k| peak * f64::from(k) / 5.0) {
            round.settle(&Act::Forces(&(&load * force))).expect("balance");
        }
        found.push(round.height(&round.now, 0.0));
    }
    // as the full shell is held to the same deck
    let allowed = [0.01, 0.01, 0.01, 0.02];
    for ((ours, known), allowed) in found.iter().zip([-1.766872, -0.559163, 1.264917, -0.086044]).zip(allowed) {
        println!("ours {ours:.4}, solids {known:.4}, off by {:+.4} mm", ours - known);
        assert!((ours - known).abs() < allowed, "{found:?}");
    }
}
