//! Plates against published and closed-form deflections.

mod common;

use common::{assert_near, elastic, even, flat, follow, towards_middle};
use dentwright_sheet::*;

const D: f64 = 210000.0 * 0.343 / (12.0 * 0.91);

fn steel() -> Metal {
    elastic(210000.0, 0.3)
}

fn disc(radius: f64, hold: Hold, coarse: f64) -> Panel {
    let axis = || towards_middle(radius, 1.5, coarse);
    flat(axis(), axis(), Outline::Disc(2.0 * radius), steel(), 0.7, Edges::all(hold))
}

fn square(hold: Hold) -> Panel {
    let axis = || towards_middle(100.0, 1.5, 8.0);
    flat(axis(), axis(), Outline::Rectangle, steel(), 0.7, Edges::all(hold))
}

const EVERYWHERE: Tip = Tip::Rectangle { width_mm: 200.0, height_mm: 200.0 };

/// `w D/(P a²)` under a light load, even over the whole or at the middle.
fn coefficient(mut panel: Panel, tip: Tip, a: f64) -> f64 {
    let (w, p) = follow(&mut panel, tip, &[Given::Force(0.01)], -1.0)[0];
    -w * D / (p * a * a)
}

/// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), articles 16 to 19.
#[test]
fn discs_bend_by_the_closed_forms() {
    use std::f64::consts::PI;
    let whole = Tip::Disc { radius_mm: 100.0 };
    let (c, s) = (Hold::Clamped, Hold::Pinned);
    assert_near("disc clamped, even", coefficient(disc(100.0, c, 8.0), whole, 100.0), 1.0 / (64.0 * PI), 0.003);
    assert_near("disc clamped, middle", coefficient(disc(100.0, c, 8.0), Tip::Point, 100.0), 1.0 / (16.0 * PI), 0.003);
    assert_near("disc supported, even", coefficient(disc(100.0, s, 8.0), whole, 100.0), 5.3 / 1.3 / (64.0 * PI), 0.003);
    assert_near(
        "disc supported, middle",
        coefficient(disc(100.0, s, 8.0), Tip::Point, 100.0),
        3.3 / 1.3 / (16.0 * PI),
        0.003,
    );
}

/// Navier's series, and the tables of Timoshenko and Woinowsky-Krieger for clamped sides.
#[test]
fn squares_bend_by_the_tables() {
    let (c, s) = (Hold::Clamped, Hold::Pinned);
    assert_near("square supported, even", coefficient(square(s), EVERYWHERE, 200.0), 0.0040624, 0.003);
    assert_near("square supported, middle", coefficient(square(s), Tip::Point, 200.0), 0.0116008, 0.003);
    assert_near("square clamped, even", coefficient(square(c), EVERYWHERE, 200.0), 0.0012653, 0.003);
    assert_near("square clamped, middle", coefficient(square(c), Tip::Point, 200.0), 0.005612, 0.003);
}

/// Föppl-von Kármán boundary-value solution of the clamped disc under a load at its middle (a 100, t 0.7), which
/// tends to the membrane law of Komaragiri, Begley and Simmonds (2005).
#[test]
fn a_clamped_disc_stiffens_as_it_deepens() {
    let known = [
        (0.35, 12.8786),
        (0.7, 33.058),
        (1.4, 118.208),
        (2.0, 260.444),
        (2.8, 584.826),
        (3.5, 1027.82),
        (5.0, 2625.83),
    ];
    let levels: Vec<_> = known.iter().map(|(w, _)| Given::Level(-w)).collect();
    let found = follow(&mut disc(100.0, Hold::Clamped, 8.0), Tip::Point, &levels, -1.0);
    for ((w, p), (_, ours)) in known.iter().zip(found) {
        assert_near(&format!("clamped disc {w} mm"), ours, *p, 0.005);
    }
}

/// The square plate of Levy (NACA TN-847, 1942), ν = 0.316, all sides immovable: `q a⁴/(E h⁴)` and `w/h`, as CalculiX
/// 2.20 computes it with S8R elements extrapolated to no size; Levy's own values, from memory, are within 2.4 %.
#[test]
fn a_clamped_square_stiffens_as_it_deepens() {
    let known = [(17.79, 0.2364), (63.4, 0.6905), (134.9, 1.1056), (245.0, 1.4926), (402.0, 1.8555)];
    let (a, h, e) = (200.0, 0.7f64, 210000.0);
    let axis = || towards_middle(0.5 * a, 8.0, 8.0);
    let mut panel = flat(axis(), axis(), Outline::Rectangle, elastic(e, 0.316), h, Edges::all(Hold::Clamped));
    let loads: Vec<_> = known.iter().map(|(q, _)| Given::Force(q * e * h.powi(4) / (a * a))).collect();
    for ((q, w), (ours, _)) in known.iter().zip(follow(&mut panel, EVERYWHERE, &loads, -1.0)) {
        assert_near(&format!("clamped square q {q}"), -ours / h, *w, 0.005);
    }
}

/// Halving the cells cuts the error of a smooth deflection at least eightfold.
#[test]
fn error_shrinks_at_least_with_the_third_power_of_the_cell() {
    let error = |cells: usize| {
        let panel = flat(
            even(-100.0, 100.0, cells),
            even(-100.0, 100.0, cells),
            Outline::Rectangle,
            steel(),
            0.7,
            Edges::all(Hold::Pinned),
        );
        (coefficient(panel, EVERYWHERE, 200.0) / 0.00406235 - 1.0).abs()
    };
    let errors = [4, 8, 16].map(error);
    println!("errors {errors:?}");
    assert!(errors[1] < errors[0] / 8.0 && errors[2] < (errors[1] / 8.0).max(1e-4), "{errors:?}");
}

/// More surface than there is room for: a disc that has grown by `ε` both ways between clamped edges is pressed together by
/// `E t ε / (1 − ν)` and buckles from `14.68 D/a²` on, supported from `4.20 D/a²` (Timoshenko and Gere, Theory of Elastic
/// Stability, article 7.2; ν = 0.3). There its stiffness loses a direction, and not before.
#[test]
fn a_disc_that_has_grown_buckles_at_the_closed_form() {
    for (hold, k) in [(Hold::Clamped, 14.68), (Hold::Pinned, 4.20)] {
        let grown = k * D / (100.0 * 100.0) * 0.7 / (210000.0 * 0.7);
        let lost = |times: f64| {
            let mut panel = disc(100.0, hold, 8.0);
            panel.patch.memory.iter_mut().for_each(|m| m.plastic = Modes::new(times * grown, 0.0, 0.0));
            let state = panel.patch.state(&panel.patch.places).expect("it does not fold");
            panel.patch.factor(&state).negative()
        };
        println!("{hold:?} {:?}", [0.9, 0.97, 1.03, 1.1].map(lost));
        assert_eq!((lost(0.97), lost(1.03)), (0, 1), "{hold:?}");
    }
}
