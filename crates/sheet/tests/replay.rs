//! A dent is pressed and only its shape handed over; the replayed hit must find the stretch again.

mod common;

use common::flat;
use dentwright_sheet::*;
use dentwright_surface::{Grid, Map};

#[test]
fn a_hit_is_found_again_from_its_shape() {
    let metal = Metal {
        e_mpa: 207000.0,
        nu: 0.3,
        hardening: Hardening::Swift { k_mpa: 580.0, n: 0.17, yield_mpa: 245.0 },
        kinematic_share: 0.4,
    };
    // the truth: pressed 4 mm by a ball of 12 mm at (6, -4) on finer cells than the replay uses
    let breaks = |at: f64| Axis::new(graded(-60.0, 60.0, &[Focus { at, reach: 5.0, fine: 1.3 }], 1.25, 6.0));
    let mut truth = flat(breaks(6.0), breaks(-4.0), Outline::Rectangle, metal.clone(), 0.7, Edges::all(Hold::Clamped));
    let wanted = Move {
        kind: Kind::Press,
        at: [6.0, -4.0],
        tip: Tip::Sphere { radius_mm: 12.0 },
        bonded: false,
        goal: Goal::To(-4.0),
        steps: 16,
    };
    let outcome = perform(&mut truth, &wanted);
    assert!(outcome.converged, "{:?}", outcome.stopped);
    let grid = Grid { x0_mm: -50.0, y0_mm: -50.0, step_mm: 2.0, nx: 51, ny: 51 };
    let shape = Map::from_fn(grid, |x, y| truth.deviation(x, y));

    let settings = ReplaySettings {
        metal,
        thickness_mm: 0.7,
        radii_mm: [0.0, 0.0],
        half_mm: 60.0,
        hold: Hold::Clamped,
        balls_mm: vec![6.0, 15.0, 40.0],
    };
    let found = replay(&shape, &settings).expect("a hit");
    let peak =
        |panel: &Panel| remains(panel).into_iter().max_by(|a, b| a.stretch.total_cmp(&b.stretch)).expect("points");
    let (ours, theirs) = (peak(&found.panel), peak(&truth));
    println!("ball {} mm, {:.2} mm deep, misfit {:.3} mm", found.ball_mm, found.pressed_mm, found.misfit_mm);
    println!("peak stretch {:.4}, true {:.4}", ours.stretch, theirs.stretch);
    assert_eq!(found.ball_mm, 15.0, "the ball nearest to the true one");
    assert!(found.misfit_share < 0.05, "{}", found.misfit_share);
    let ratio = ours.stretch / theirs.stretch;
    assert!((1.0 / 1.5..1.5).contains(&ratio), "{ratio}");
    let place = [found.at_mm[0] + ours.at_mm[0], found.at_mm[1] + ours.at_mm[1]];
    assert!((place[0] - theirs.at_mm[0]).hypot(place[1] - theirs.at_mm[1]) < 5.0, "{place:?}");
    // sign of tension where it exceeds a tenth of yield
    let replayed = remains(&found.panel);
    let nearest = |x: f64, y: f64| {
        let far = |s: &Remains| (s.at_mm[0] - x).powi(2) + (s.at_mm[1] - y).powi(2);
        replayed.iter().min_by(|a, b| far(a).total_cmp(&far(b))).expect("points").tension_mpa
    };
    let tense: Vec<_> = remains(&truth)
        .into_iter()
        .filter(|s| s.tension_mpa.abs() > 24.5 && s.at_mm.iter().all(|c| c.abs() < 45.0))
        .collect();
    let right = tense
        .iter()
        .filter(|s| nearest(s.at_mm[0] - found.at_mm[0], s.at_mm[1] - found.at_mm[1]) * s.tension_mpa > 0.0);
    let share = right.count() as f64 / tense.len() as f64;
    println!("sign of tension right at {:.1} % of {} points", 100.0 * share, tense.len());
    assert!(tense.len() > 50 && share > 0.9, "{share}");
}
