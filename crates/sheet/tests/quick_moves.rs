//! Quick answers to moves against full solves on a pressed dent.

mod common;

use common::flat;
use dentwright_sheet::*;

fn sheet() -> Panel {
    let metal = Metal {
        e_mpa: 207000.0,
        nu: 0.3,
        hardening: Hardening::Swift { k_mpa: 580.0, n: 0.17, yield_mpa: 245.0 },
        kinematic_share: 0.4,
    };
    let foci = [Focus { at: 0.0, reach: 20.0, fine: 2.4 }];
    let axis = || Axis::new(graded(-60.0, 60.0, &foci, 1.3, 8.0));
    flat(axis(), axis(), Outline::Rectangle, metal, 0.7, Edges::all(Hold::Clamped))
}

/// Median of the differences as shares.
fn median(mut shares: Vec<f64>) -> f64 {
    shares.sort_by(f64::total_cmp);
    shares[shares.len() / 2]
}

#[test]
fn quick_answers_are_near_full_solves() {
    let mut dent = sheet();
    let tip = Tip::Sphere { radius_mm: 12.0 };
    let hit = Move { kind: Kind::Press, at: [0.0, 0.0], tip, bonded: false, goal: Goal::To(-4.0), steps: 16 };
    assert!(perform(&mut dent, &hit).converged);
    let give = give_map(&dent, 21).expect("stiffness");
    let strip = Tip::Strip { length_mm: 20.0, width_mm: 6.0, angle_deg: 0.0 };
    let moves = [
        (Kind::Push, [0.0, 0.0], Tip::Sphere { radius_mm: 6.0 }, 2.0),
        (Kind::Push, [0.0, 0.0], Tip::Sphere { radius_mm: 12.0 }, 3.0),
        (Kind::Push, [0.0, 0.0], Tip::Disc { radius_mm: 8.0 }, 3.0),
        (Kind::Push, [10.0, 0.0], Tip::Sphere { radius_mm: 6.0 }, 2.0),
        (Kind::Tap, [16.0, 0.0], Tip::Disc { radius_mm: 6.0 }, 1.5),
        (Kind::Pull, [0.0, 0.0], Tip::Disc { radius_mm: 10.0 }, 3.0),
        (Kind::Push, [0.0, 0.0], strip, 2.5),
        (Kind::Push, [20.0, 12.0], Tip::Sphere { radius_mm: 6.0 }, 2.5),
    ];
    let (mut forces, mut lefts) = (Vec::new(), Vec::new());
    for (kind, at, tip, travel) in moves {
        let wanted = Move { kind, at, tip, bonded: false, goal: Goal::Travel(travel), steps: 12 };
        let fast = quick(&dent, &give, &wanted).expect("a quick answer");
        let mut panel = sheet();
        panel.take_up(dent.patch.places.clone(), dent.patch.memory.clone());
        let before = panel.deviation(at[0], at[1]);
        let full = perform(&mut panel, &wanted);
        assert!(full.converged, "{:?}", full.stopped);
        let (held, left) = (full.at_tip_held_mm - before, full.at_tip_left_mm - before);
        let middle = at == [0.0, 0.0];
        println!("{kind:?} {tip:?} at {at:?}: held {:.2}, in full {held:.2} mm", fast.held_mm);
        println!(
            "  left {:.3}, in full {left:.3} mm; force {:.0}, in full {:.0} N",
            fast.left_mm, fast.force_n, full.peak_force_n
        );
        // where the dent is round about the tip it is near; on its flank only the size of the lift is told
        let off = [fast.force_n / full.peak_force_n - 1.0, fast.left_mm - left];
        let allowed = if middle { [0.03, 0.05] } else { [0.4, 0.25] };
        assert!((fast.held_mm - held).abs() < if middle { 0.02 } else { 0.3 }, "held");
        assert!(off[0].abs() < allowed[0] && off[1].abs() < allowed[1] && fast.left_mm * left > 0.0, "{off:?}");
        forces.push(off[0].abs());
        lefts.push((fast.left_mm / left - 1.0).abs());
    }
    let (force, left) = (median(forces.clone()), median(lefts.clone()));
    let most = |v: &[f64]| v.iter().copied().fold(0.0, f64::max);
    println!("force off by {:.0} % (most {:.0} %)", 100.0 * force, 100.0 * most(&forces));
    println!("lift left off by {:.0} % (most {:.0} %)", 100.0 * left, 100.0 * most(&lefts));
    assert!(force < 0.1 && left < 0.15);
}
