//! A curved panel with a low and a high: intended shape, deviation, spots, verdict.

use dentwright_surface::{
    FinishLimit, Grid, IntendedSettings, Map, SpotKind, SpotSettings, Verdict, find_spots, intended_shape, judge,
};

fn main() {
    let grid = Grid { x0_mm: -80.0, y0_mm: -60.0, step_mm: 1.0, nx: 161, ny: 121 };
    let bump = |x: f64, y: f64, radius: f64| (-(x * x + y * y) / (2.0 * radius * radius)).exp();
    let panel = |x: f64, y: f64| -x * x / 6000.0 - y * y / 4000.0;
    let damage = |x: f64, y: f64| -0.2 * bump(x + 20.0, y, 8.0) + 0.03 * bump(x - 35.0, y - 10.0, 5.0);
    let height = Map::from_fn(grid, |x, y| panel(x, y) + damage(x, y));

    let intended = intended_shape(&height, &IntendedSettings::default());
    let values = height.values.iter().zip(&intended.shape.values).map(|(h, s)| h - s).collect();
    let deviation = Map { grid, values };
    let sigma = Map { grid, values: vec![0.0005; grid.len()] };
    let spots = find_spots(&deviation, &sigma, &[], &SpotSettings::default());
    for s in &spots {
        println!("{:?} {:.1} µm at x {:.0}, y {:.0} mm", s.kind, s.height_mm * 1e3, s.x_mm, s.y_mm);
    }
    let (finish, each) = judge(&deviation, &sigma, &spots, &[], &FinishLimit::default());
    println!("{:?}: {}", finish.verdict, finish.reason);

    assert_eq!(spots.iter().map(|s| s.kind).collect::<Vec<_>>(), [SpotKind::Low, SpotKind::High]);
    assert!((spots[0].height_mm + 0.2).abs() < 0.003 && (spots[1].height_mm - 0.03).abs() < 0.002);
    assert_eq!(finish.verdict, Verdict::NotDone);
    assert!(each.iter().all(|spot| spot.verdict == Verdict::NotDone && spot.over > 0.99));
}
