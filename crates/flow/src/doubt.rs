//! The doubt of a deviation, cell by cell.
//!
//! On sound metal the true deviation is zero, so what is found there is the error itself: its local root
//! mean square, blended with the whole panel's, is the floor. To it come the geometry's share of the
//! deviation, the place's doubt times the deviation's slope, and the intended shape's own doubt where no sound
//! metal is near.

use dentwright_surface::{Intended, Map, local_mean};

/// Doubt of scale from poses and board size, relative. A guess from known-truth captures, rounded up.
const SCALE_DOUBT: f64 = 0.004;
/// Doubt of where on the panel a deviation lies, mm. A guess from known-truth captures, rounded up.
const PLACE_DOUBT_MM: f64 = 0.05;
/// The same beside a body line, where tags stand a few millimetres above or below the smooth panel and are seen
/// aslant. A guess as well.
const PLACE_DOUBT_AT_LINE_MM: f64 = 0.15;
/// Share of what is found on sound metal (its square) that is error: the rest is the paint's own texture, which is
/// truly there. A guess from known-truth captures; beside a body line all of it is taken for error.
const ERROR_SHARE: f64 = 0.72;
/// Times the doubt of a single photo each way against what sound metal shows: its window errs in one direction where
/// the lines bend. A guess from known-truth captures, rounded up.
const STILL_TIMES: f64 = 1.5;
/// Side of the neighbourhood over which the error on sound metal is taken, mm.
const NEIGHBOURHOOD_MM: f64 = 30.0;
/// Orange peel below this is not seen as an error of a deviation, mm.
const FLOOR_MM: f64 = 0.0002;

/// One-sigma doubt of a deviation map, from a `still` or a full set of photos.
pub(crate) fn doubt(deviation: &Map, intended: &Intended, still: bool) -> Map {
    let grid = deviation.grid;
    let square = Map {
        grid,
        values: deviation.values.iter().zip(&intended.sound).map(|(d, s)| if *s { d * d } else { f32::NAN }).collect(),
    };
    let local = local_mean(&square, NEIGHBOURHOOD_MM);
    let times = if still { STILL_TIMES } else { 1.0 };
    let overall = intended.sound_rms_mm.powi(2);
    let (place_mm, error_share) = match intended.line {
        Some(_) => (PLACE_DOUBT_AT_LINE_MM, 1.0),
        None => (PLACE_DOUBT_MM, ERROR_SHARE),
    };
    let values = (0..grid.len()).map(|i| {
        let d = f64::from(deviation.values[i]);
        if !d.is_finite() {
            return f32::NAN;
        }
        let near = f64::from(local.values[i]);
        let floor = if near.is_finite() { 0.5 * near + 0.5 * overall } else { 2.0 * overall };
        let shape = f64::from(intended.doubt.values[i]).powi(2);
        let place = (place_mm * steepness(deviation, i)).powi(2);
        (times * (error_share * floor + shape + place + FLOOR_MM.powi(2) + (SCALE_DOUBT * d).powi(2)).sqrt()) as f32
    });
    Map { grid, values: values.collect() }
}

/// Slope of a map at a cell, over two cells to either side where they were read.
fn steepness(map: &Map, i: usize) -> f64 {
    let grid = map.grid;
    let along = |at: usize, length: usize, stride: usize| {
        let (back, ahead) = (at.min(REACH), (length - 1 - at).min(REACH));
        let rise = f64::from(map.values[i + ahead * stride]) - f64::from(map.values[i - back * stride]);
        let run = (back + ahead) as f64 * grid.step_mm;
        if rise.is_finite() && run > 0.0 { rise / run } else { 0.0 }
    };
    along(i % grid.nx, grid.nx, 1).hypot(along(i / grid.nx, grid.ny, grid.nx))
}

/// Cells to either side over which a slope is taken.
const REACH: usize = 2;
