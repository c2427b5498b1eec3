//! Two readings of one panel: laid on each other by texture, and what changed.

mod common;

use common::{Random, bump, even, field, sum};
use dentwright_surface::{ChangeSettings, Grid, LaidBy, Laying, Map, Measured, Way, change, lay_by_shape, residual};

const STEP: f64 = 0.8;
const GRID: Grid = Grid { x0_mm: -110.0, y0_mm: -80.0, step_mm: STEP, nx: 276, ny: 201 };

/// Peel of 0.4 µm at a few millimetres.
fn peel(seed: u64) -> Map {
    let wide = Grid { x0_mm: -200.0, y0_mm: -200.0, step_mm: 0.5, nx: 801, ny: 801 };
    field(wide, 3.0, 0.0004, &mut Random::new(seed))
}

/// What a reading shows of a panel that lies turned and shifted in its frame, with an error of its own.
fn reading(panel: &Map, damage: impl Fn(f64, f64) -> f64, at: &Laying, seed: u64) -> Map {
    let error = field(GRID, 15.0, 0.0003, &mut Random::new(seed));
    let seen = Map::from_fn(GRID, |x, y| {
        let (x, y) = at.back((x, y));
        panel.sample(x, y).unwrap_or(0.0) + damage(x, y)
    });
    sum(&seen, &error)
}

fn turned(degrees: f64, dx_mm: f64, dy_mm: f64) -> Laying {
    Laying {
        turn_rad: degrees.to_radians(),
        dx_mm,
        dy_mm,
        by: LaidBy::Tags { count: 0, moved: 0 },
        middle_x_mm: 0.0,
        middle_y_mm: 0.0,
        place_sigma_mm: 0.05,
        turn_sigma_rad: 5e-4,
    }
}

#[test]
fn texture_tells_how_two_readings_lie() {
    let panel = peel(7);
    let deep = |x: f64, y: f64| -0.4 * bump(x + 12.0, y - 4.0, 9.0);
    let left = |x: f64, y: f64| 0.006 * bump(x + 15.0, y - 9.0, 6.0);
    let before = reading(&panel, deep, &turned(0.0, 0.0, 0.0), 1);
    for (degrees, dx, dy) in [(0.0, 0.0, 0.0), (-7.3, 14.2, -22.9), (21.6, -35.0, 8.4)] {
        let truth = turned(degrees, dx, dy);
        let after = reading(&panel, left, &truth, 2);
        let found = lay_by_shape(&before, &after).unwrap();
        assert!(matches!(found.by, LaidBy::Shape { likeness } if (0.3..0.999).contains(&likeness)), "{found:?}");
        let off = |p: (f64, f64)| {
            let (a, b) = (found.carry(p), truth.carry(p));
            (a.0 - b.0).hypot(a.1 - b.1)
        };
        for place in [(0.0, 0.0), (60.0, 40.0), (-60.0, 35.0)] {
            let sigma = found.place_sigma_at(found.carry(place));
            assert!(
                off(place) < 0.15 && off(place) < 4.0 * sigma,
                "{degrees}: {} at {place:?}, said {sigma}",
                off(place)
            );
        }
    }
}

#[test]
fn another_panel_is_not_taken_for_this_one() {
    let flat = |_: f64, _: f64| 0.0;
    for seed in 0..4 {
        let (a, b) = (peel(100 + seed), peel(200 + seed));
        let (before, after) =
            (reading(&a, flat, &turned(0.0, 0.0, 0.0), 3), reading(&b, flat, &turned(3.0, 5.0, 0.0), 4));
        let found = lay_by_shape(&before, &after);
        assert!(found.is_none(), "{found:?}");
    }
}

#[test]
fn better_worse_and_volume_come_out_with_their_doubt() {
    let truth = turned(4.0, 6.0, -3.0);
    let low = |x: f64, y: f64, h: f64| -h * bump(x + 20.0, y, 8.0);
    let before = reading(&peel(9), |x, y| low(x, y, 0.200), &turned(0.0, 0.0, 0.0), 5);
    // The low came up by 170 µm, a high of 25 µm was made beside it.
    let after = reading(&peel(9), |x, y| low(x, y, 0.030) + 0.025 * bump(x - 25.0, y - 10.0, 6.0), &truth, 6);
    let sigma = even(GRID, 0.0006);
    let (e, l) = (Measured { deviation: &before, sigma: &sigma }, Measured { deviation: &after, sigma: &sigma });
    let found = change(e, l, &truth, &ChangeSettings::default());
    assert_eq!(found.worked.iter().map(|w| w.way).collect::<Vec<_>>(), [Way::Better, Way::Worse]);
    let (up, high) = (&found.worked[0], &found.worked[1]);
    assert!((up.change_mm - 0.170).abs() < 0.004 && (up.before_mm + 0.200).abs() < 0.004, "{up:?}");
    assert!((high.change_mm - 0.025).abs() < 0.002 && high.before_mm.abs() < 0.002, "{high:?}");
    let (x, y) = truth.carry((-20.0, 0.0));
    assert!((up.x_mm - x).hypot(up.y_mm - y) < 2.5);
    // Volume of a Gaussian of height h: 2πr²h.
    let volume = std::f64::consts::TAU * (0.170 * 64.0 + 0.025 * 36.0);
    assert!((found.raised.mm3 - volume).abs() < 4.0 * found.raised.sigma_mm3 + 0.02 * volume, "{:?}", found.raised);
    assert!(found.raised.sigma_mm3 > 0.05 && found.raised.sigma_mm3 < 0.05 * volume && found.lowered.mm3 < 0.3);
    let settings = ChangeSettings::default();
    let left = residual(l, &settings);
    assert!((left.largest_mm.abs() - 0.03).abs() < 0.003 && residual(e, &settings).volume.mm3 > 4.0 * left.volume.mm3);
}

#[test]
fn the_said_doubt_of_a_change_holds() {
    let truth = turned(-2.0, 3.0, 4.0);
    let panel = peel(11);
    let before = reading(&panel, |x, y| -0.3 * bump(x, y, 10.0), &turned(0.0, 0.0, 0.0), 21);
    let after = reading(&panel, |x, y| -0.02 * bump(x, y, 10.0), &truth, 22);
    // Laid a tenth of a millimetre wrong, as much as is said.
    let wrong = Laying { dx_mm: truth.dx_mm + 0.07, dy_mm: truth.dy_mm - 0.07, place_sigma_mm: 0.07, ..truth };
    let sigma = even(GRID, 0.0003);
    let (e, l) = (Measured { deviation: &before, sigma: &sigma }, Measured { deviation: &after, sigma: &sigma });
    let found = change(e, l, &wrong, &ChangeSettings::default());
    let inside = |i: &usize| found.map.values[*i].is_finite();
    let (mut within, mut all) = (0.0, 0.0);
    for i in (0..GRID.len()).filter(inside) {
        let (x, y) = truth.back(GRID.position(i));
        let error = f64::from(found.map.values[i]) - 0.28 * bump(x, y, 10.0);
        within += f64::from(u8::from(error.abs() <= 2.0 * f64::from(found.sigma.values[i])));
        all += 1.0;
    }
    println!("within two sigma {:.3}", within / all);
    assert!((0.90..=0.99).contains(&(within / all)), "{}", within / all);
}
