//! The doubt of a deviation, cell by cell.
//!
//! On sound metal the true deviation is zero, so what is found there is the error itself: its local root
//! mean square, blended with the whole panel's, is the floor. To it come the geometry's share of the
//! deviation and the intended shape's own doubt where no sound metal is near.

use dentwright_surface::{Intended, Map};

/// Doubt of scale from poses and board size, relative. A guess from known-truth captures, rounded up.
const SCALE_DOUBT: f64 = 0.004;
/// Side of the neighbourhood over which the error on sound metal is taken, mm.
const NEIGHBOURHOOD_MM: f64 = 30.0;
/// Orange peel below this is not seen as an error of a deviation, mm.
const FLOOR_MM: f64 = 0.0003;

/// One-sigma doubt of a deviation map.
pub(crate) fn doubt(deviation: &Map, intended: &Intended) -> Map {
    let grid = deviation.grid;
    let square = Map {
        grid,
        values: deviation.values.iter().zip(&intended.sound).map(|(d, s)| if *s { d * d } else { f32::NAN }).collect(),
    };
    let local = spread_out(&square);
    let overall = intended.sound_rms_mm.powi(2);
    let values = (0..grid.len()).map(|i| {
        let d = f64::from(deviation.values[i]);
        if !d.is_finite() {
            return f32::NAN;
        }
        let near = f64::from(local[i]);
        let floor = if near.is_finite() { 0.5 * near + 0.5 * overall } else { 2.0 * overall };
        (floor + FLOOR_MM.powi(2) + (SCALE_DOUBT * d).powi(2)).sqrt() as f32
    });
    Map { grid, values: values.collect() }
}

/// Mean over the neighbourhood, also for cells that hold nothing themselves.
fn spread_out(map: &Map) -> Vec<f32> {
    let grid = map.grid;
    let by = (0.5 * NEIGHBOURHOOD_MM / grid.step_mm).ceil() as usize;
    let pass = |sum: &[(f64, f64)], stride: usize, along: usize| -> Vec<(f64, f64)> {
        let mut out = vec![(0.0, 0.0); sum.len()];
        for i in 0..sum.len() {
            let at = (i / stride) % along;
            if at != 0 {
                continue;
            }
            let mut running = (0.0, 0.0);
            for k in 0..by.min(along) {
                running = (running.0 + sum[i + k * stride].0, running.1 + sum[i + k * stride].1);
            }
            for k in 0..along {
                if k + by < along {
                    let s = sum[i + (k + by) * stride];
                    running = (running.0 + s.0, running.1 + s.1);
                }
                if k > by {
                    let s = sum[i + (k - by - 1) * stride];
                    running = (running.0 - s.0, running.1 - s.1);
                }
                out[i + k * stride] = running;
            }
        }
        out
    };
    let start: Vec<(f64, f64)> =
        map.values.iter().map(|&v| if v.is_finite() { (f64::from(v), 1.0) } else { (0.0, 0.0) }).collect();
    pass(&pass(&start, 1, grid.nx), grid.nx, grid.ny)
        .iter()
        .map(|(s, n)| if *n >= 0.5 { (s / n) as f32 } else { f32::NAN })
        .collect()
}
