//! Integration against closed forms: Gaussian surfaces, and the noise law.

use dentwright_surface::{Grid, IntegrateSettings, Map, SlopeMap, integrate};
use std::f64::consts::TAU;

const SETTINGS: IntegrateSettings = IntegrateSettings { tolerance: 1e-8, max_cycles: 200 };

fn square(cells: usize, step_mm: f64) -> Grid {
    Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm, nx: cells, ny: cells }
}

/// Slopes of a Gaussian low of `depth_mm` and width `sigma_mm` at the middle of the grid, exact in every cell.
fn gaussian(grid: Grid, depth_mm: f64, sigma_mm: f64) -> SlopeMap {
    let middle = 0.5 * (grid.nx - 1) as f64 * grid.step_mm;
    let at = |i: usize| {
        let (x, y) = grid.position(i);
        (x - middle, y - middle)
    };
    let height = |i: usize| -depth_mm * (-(at(i).0.powi(2) + at(i).1.powi(2)) / (2.0 * sigma_mm.powi(2))).exp();
    let slope = |along: f64, i: usize| (-height(i) * along / sigma_mm.powi(2)) as f32;
    let all = || 0..grid.len();
    SlopeMap {
        grid,
        dzdx: all().map(|i| slope(at(i).0, i)).collect(),
        dzdy: all().map(|i| slope(at(i).1, i)).collect(),
        sigma: vec![1e-4; grid.len()],
    }
}

/// Depth at the middle against the rim, mm.
fn depth(map: &Map) -> f64 {
    let middle = map.grid.len() / 2;
    f64::from(map.values[0] - map.values[middle])
}

#[test]
fn gaussian_lows_come_back_to_a_thousandth() {
    for sigma_cells in [3.0, 5.0, 8.0, 12.0] {
        let grid = square((14.0 * sigma_cells) as usize | 1, 0.5);
        let slopes = gaussian(grid, 0.5, sigma_cells * grid.step_mm);
        let found = depth(&integrate(&slopes, None, &SETTINGS));
        // The corner stands at exp(-49), so the depth is the whole 0.5 mm.
        assert!((found / 0.5 - 1.0).abs() < 1e-3, "σ = {sigma_cells} cells: {found} mm instead of 0.5");
    }
}

#[test]
fn the_error_shrinks_with_the_fourth_power_of_the_step() {
    // The cubic rule is of fourth order: half the step, a sixteenth of the error.
    let error = |step_mm: f64| {
        let grid = square((21.0 / step_mm) as usize | 1, step_mm);
        let slopes = gaussian(grid, 0.5, 1.5);
        (depth(&integrate(&slopes, None, &SETTINGS)) - 0.5).abs()
    };
    let ratio = error(1.0) / error(0.5);
    assert!((12.0..20.0).contains(&ratio), "the error shrank {ratio} times");
}

#[test]
fn a_sloping_plane_is_exact_across_holes() {
    let grid = square(41, 0.5);
    let mut slopes = SlopeMap { grid, dzdx: vec![0.02; 1681], dzdy: vec![-0.01; 1681], sigma: vec![1e-4; 1681] };
    for i in (0..1681).filter(|i| (10..20).contains(&(i % 41)) && (5..30).contains(&(i / 41))) {
        slopes.sigma[i] = f32::NAN;
    }
    let height = integrate(&slopes, None, &SETTINGS);
    let across = f64::from(height.values[40 * 41 + 40] - height.values[0]);
    assert!((across - 20.0 * (0.02 - 0.01)).abs() < 1e-5, "{across}");
    assert!(height.values[10 * 41 + 12].is_nan());
}

#[test]
fn white_noise_of_the_slopes_follows_the_logarithmic_law() {
    // σh = σslope · step · √(ln N / 2π) (Fried 1977 and Noll 1978 for wavefront slopes; design notes of the project).
    // Mean over several draws; the constant under the logarithm is not in the law, hence the wide bounds.
    for cells in [64, 128, 256] {
        let grid = square(cells, 0.5);
        let law_mm = SLOPE_SIGMA * grid.step_mm * ((cells as f64).ln() / TAU).sqrt();
        let draws = 6;
        let mean_square = (0..draws).map(|k| noise_height(grid, k).powi(2)).sum::<f64>() / f64::from(draws);
        let ratio = mean_square.sqrt() / law_mm;
        assert!((0.6..1.6).contains(&ratio), "{cells} cells: {ratio} times the law");
    }
}

const SLOPE_SIGMA: f64 = 1e-3;

/// Root mean square of the height that pure slope noise makes, its mean taken off, mm.
fn noise_height(grid: Grid, draw: u32) -> f64 {
    let mut state = 0x9e37_79b9_7f4a_7c15u64.wrapping_mul(u64::from(draw) + 1);
    let mut noise = || (SLOPE_SIGMA * gauss(&mut state)) as f32;
    let n = grid.len();
    let slopes = SlopeMap {
        grid,
        dzdx: (0..n).map(|_| noise()).collect(),
        dzdy: (0..n).map(|_| noise()).collect(),
        sigma: vec![SLOPE_SIGMA as f32; n],
    };
    let height = integrate(&slopes, None, &SETTINGS);
    let mean = height.values.iter().map(|&v| f64::from(v)).sum::<f64>() / n as f64;
    (height.values.iter().map(|&v| (f64::from(v) - mean).powi(2)).sum::<f64>() / n as f64).sqrt()
}

/// Normal deviate from twelve uniform ones of a xorshift generator (Marsaglia 2003).
fn gauss(state: &mut u64) -> f64 {
    let mut sum = -6.0;
    for _ in 0..12 {
        *state ^= *state << 13;
        *state ^= *state >> 7;
        *state ^= *state << 17;
        sum += (*state >> 11) as f64 / (1u64 << 53) as f64;
    }
    sum
}
