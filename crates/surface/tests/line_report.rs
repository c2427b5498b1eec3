//! A body line whose run is known: hit on a part of it, pushed aside, blunted.

mod common;

use common::{Random, bump, even, field, sum};
use dentwright_surface::{BodyLine, Grid, LineReport, Map, Station, drawn_line, line_report};

const GRID: Grid = Grid { x0_mm: -130.0, y0_mm: -60.0, step_mm: 0.8, nx: 326, ny: 151 };
const LINE: BodyLine = BodyLine { normal_rad: 1.6, offset_mm: 4.0 };

/// A ridge of 60 mrad, rounded over 3 mm, on a curved panel; `aside` and `round` change along it.
fn panel(aside: impl Fn(f64) -> f64, round: impl Fn(f64) -> f64) -> Map {
    Map::from_fn(GRID, |x, y| {
        let (t, s) = LINE.across_along((x, y));
        -x * x / 5000.0 - y * y / 4000.0 - 0.03 * (t - aside(s)).hypot(round(s))
    })
}

/// A place at a distance along and across the line.
fn off(s: f64, t: f64) -> (f64, f64) {
    let (sin, cos) = LINE.normal_rad.sin_cos();
    ((LINE.offset_mm + t) * cos - s * sin, (LINE.offset_mm + t) * sin + s * cos)
}

/// What is told of a line with a shape and a low of its own, drawn a few millimetres and a degree off.
fn told(shape: &Map, low: &Map, seed: u64) -> LineReport {
    let straight = panel(|_| 0.0, |_| 3.0);
    let height = sum(&sum(shape, low), &field(GRID, 3.0, 0.0004, &mut Random::new(seed)));
    let deviation =
        Map { grid: GRID, values: height.values.iter().zip(&straight.values).map(|(h, s)| h - s).collect() };
    let (line, ends) = drawn_line(&height, off(-110.0, 2.5), off(110.0, -1.5)).unwrap();
    assert!(
        (line.normal_rad - LINE.normal_rad).abs() < 0.004 && (line.offset_mm - LINE.offset_mm).abs() < 0.4,
        "{line:?}"
    );
    line_report(&height, &deviation, &even(GRID, 0.0006), &LINE, ends).unwrap()
}

fn near(report: &LineReport, along: f64) -> Station {
    let far = |s: &Station| (s.along_mm - along).abs();
    *report.stations.iter().min_by(|a, b| far(a).total_cmp(&far(b))).unwrap()
}

#[test]
fn height_sideways_and_sharpness_come_out_with_their_doubt() {
    let hit = |s: f64| (-(s * s) / (2.0 * 12.0 * 12.0)).exp();
    let (straight, level) = (panel(|_| 0.0, |_| 3.0), even(GRID, 0.0));
    let low = Map::from_fn(GRID, |x, y| {
        let (t, s) = LINE.across_along((x, y));
        -0.06 * bump(s, t, 9.0)
    });
    let dented = told(&straight, &low, 4);
    // 2 · 30 mrad, most of it in the inner half.
    assert!((35.0..60.0).contains(&dented.turn_mrad.abs()), "{}", dented.turn_mrad);
    assert!((near(&dented, 0.0).height_mm + 0.058).abs() < 0.004, "{:?}", near(&dented, 0.0));
    let sound = near(&dented, 90.0);
    assert!(sound.height_mm.abs() < 0.002 && sound.sideways_mm.abs() < 0.06 && (sound.sharpness - 1.0).abs() < 0.05);

    let aside = told(&panel(|s| 0.4 * hit(s), |_| 3.0), &level, 5);
    let pushed = near(&aside, 0.0);
    assert!((pushed.sideways_mm - 0.4).abs() < 0.08 && pushed.sideways_sigma_mm > 0.001, "{pushed:?}");
    assert!(near(&aside, -90.0).sideways_mm.abs() < 0.08, "{:?}", near(&aside, -90.0));

    // Rounded over 5 mm instead of 3, the bend at the crest is 3/5 of it.
    let blunt = near(&told(&panel(|_| 0.0, |s| 3.0 + 2.0 * hit(s)), &level, 6), 0.0);
    assert!((0.5..0.95).contains(&blunt.sharpness) && blunt.sharpness_sigma < 0.2, "{blunt:?}");
}

#[test]
fn where_there_is_no_line_nothing_is_told() {
    let smooth = Map::from_fn(GRID, |x, y| -x * x / 5000.0 - y * y / 4000.0);
    let (line, ends) = drawn_line(&smooth, (-100.0, 0.0), (100.0, 5.0)).unwrap();
    let flat = even(GRID, 0.0);
    let found = line_report(&smooth, &flat, &even(GRID, 0.0005), &line, ends);
    assert!(found.is_none(), "{:?}", found.map(|r| r.turn_mrad));
    assert!(drawn_line(&smooth, (0.0, 0.0), (5.0, 1.0)).is_none());
}
