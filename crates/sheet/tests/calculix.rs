//! Pressed, let go, pushed back, let go: against solids computed with CalculiX 2.20, decks and numbers in `calculix/`.

mod common;

use common::flat;
use dentwright_sheet::*;

/// Centre while pressed, left, while pushed back, left; mm.
fn ours(kinematic_share: f64) -> [f64; 4] {
    let hardening = Hardening::Swift { k_mpa: 530.0, n: 0.2, yield_mpa: 200.0 };
    let metal = Metal { e_mpa: 210000.0, nu: 0.3, hardening, kinematic_share };
    let focus = |at, reach, fine| Focus { at, reach, fine };
    let foci = [focus(0.0, 10.0, 2.0), focus(-60.0, 0.0, 2.5), focus(60.0, 0.0, 2.5)];
    let axis = || Axis::new(graded(-60.0, 60.0, &foci, 1.3, 6.0));
    let mut panel = flat(axis(), axis(), Outline::Disc(120.0), metal, 0.7, Edges::all(Hold::Clamped));
    let mut go = |kind, force| {
        let tip = Tip::Disc { radius_mm: 10.0 };
        let wanted = Move { kind, at: [0.0, 0.0], tip, bonded: true, goal: Goal::Force(force), steps: 12 };
        let outcome = perform(&mut panel, &wanted);
        assert!(outcome.converged, "{:?}", outcome.stopped);
        [outcome.at_tip_held_mm, outcome.at_tip_left_mm]
    };
    let ([a, b], [c, d]) = (go(Kind::Press, 500.0), go(Kind::Push, 250.0));
    [a, b, c, d]
}

#[test]
fn a_dent_pressed_and_pushed_back_equals_solids() {
    let known =
        [(0.0, [-1.764703, -0.5569317, 1.267931, -0.08077222]), (1.0, [-1.764955, -0.5557235, 1.269762, -0.02249952])];
    for (share, reference) in known {
        let found = ours(share);
        for (what, i, allowed) in
            [("pressed", 0, 0.01), ("left", 1, 0.01), ("pushed back", 2, 0.01), ("left again", 3, 0.015)]
        {
            let off = found[i] - reference[i];
            println!(
                "share {share}, {what}: ours {:.4}, reference {:.4}, difference {off:+.4} mm",
                found[i], reference[i]
            );
            assert!(off.abs() < allowed, "share {share}, {what}: {} against {}", found[i], reference[i]);
        }
    }
}
