//! Slopes of a dent, put together to its height.

use dentwright_surface::{Grid, IntegrateSettings, SlopeMap, integrate};

const DEPTH_MM: f64 = 0.4;
const RADIUS_MM: f64 = 6.0;

fn main() {
    let grid = Grid { x0_mm: -30.0, y0_mm: -30.0, step_mm: 0.5, nx: 121, ny: 121 };
    // z = -depth · exp(-r²/2R²), so ∂z/∂x = depth · x/R² · exp(-r²/2R²).
    let steepness =
        |x: f64, y: f64| DEPTH_MM / RADIUS_MM.powi(2) * (-(x * x + y * y) / (2.0 * RADIUS_MM.powi(2))).exp();
    let slopes = SlopeMap {
        grid,
        dzdx: (0..grid.len()).map(|i| grid.position(i)).map(|(x, y)| (x * steepness(x, y)) as f32).collect(),
        dzdy: (0..grid.len()).map(|i| grid.position(i)).map(|(x, y)| (y * steepness(x, y)) as f32).collect(),
        sigma: vec![1e-4; grid.len()],
    };
    let height = integrate(&slopes, None, &IntegrateSettings::default());
    let depth_mm = f64::from(height.values[0] - height.values[grid.len() / 2]);
    println!("depth {:.2} µm of {:.2}", depth_mm * 1e3, DEPTH_MM * 1e3);
    assert!((depth_mm / DEPTH_MM - 1.0).abs() < 1e-3);
}
