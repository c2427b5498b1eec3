//! What the panel was meant to be: a smooth surface fitted to the sound metal around the damage.
//!
//! A polynomial in both directions, fitted by weighted least squares with Geman and McClure's weight whose
//! scale shrinks from the depth of the damage to the level of the texture (graduated non-convexity, Blake
//! and Zisserman 1987), so that the damage does not pull it; then what still stands out is left out
//! altogether with a margin and its soft skirts, and the fit made again.
//!
//! A body line, where one is found, adds a profile across it (a cubic spline, free to change evenly along
//! the line), fitted in the same robust way from the sound stretches on either side of the damage.
//!
//! Limits: damage wider than about half of what was read is taken for shape.

use crate::average::average;
use crate::enclosed::doubt_the_open;
use crate::frame::{Frame, NOISE_MM};
use crate::grid::{Grid, Map};
use crate::line::{BodyLine, find_body_line};
use crate::regions::{areas, keep_large, widen};
use crate::ridge::Ridge;
use crate::samples::{Fit, Samples};

/// How the intended shape is found.
#[derive(Debug, Clone)]
pub struct IntendedSettings {
    /// Total degree of the polynomial. Six follows what is left of pose errors; more would follow dents.
    pub degree: usize,
    /// Distance between the cells that are fitted, mm.
    pub sample_mm: f64,
    /// What stands out less than this is sound, mm.
    pub sound_mm: f64,
    /// Sound metal nearer than this to what stands out is not trusted, mm.
    pub margin_mm: f64,
    /// A body line that was drawn; looked for where there is none.
    pub line: Option<BodyLine>,
}

impl Default for IntendedSettings {
    fn default() -> Self {
        Self { degree: 6, sample_mm: 2.0, sound_mm: 0.002, margin_mm: 6.0, line: None }
    }
}

/// The intended shape and the sound metal it rests on.
#[derive(Debug, Clone)]
pub struct Intended {
    /// Height of the intended shape, mm, on every cell that was read.
    pub shape: Map,
    /// One-sigma of that shape, mm: larger where no sound metal is near.
    pub doubt: Map,
    /// Whether the cell counted as sound.
    pub sound: Vec<bool>,
    /// Root mean square of height less shape over the sound cells, mm.
    pub sound_rms_mm: f64,
    /// The body line that was kept, if one was found.
    pub line: Option<BodyLine>,
    /// That line as a ridge.
    pub ridge: Option<Ridge>,
}

/// Fits the intended shape to a height map.
pub fn intended_shape(height: &Map, settings: &IntendedSettings) -> Intended {
    let grid = height.grid;
    let line = settings.line.or_else(|| find_body_line(height));
    let frame = Frame::over(height, settings.degree, line);
    let stride = ((settings.sample_mm / grid.step_mm).round() as usize).max(1);
    let cells: Vec<usize> = (0..grid.len())
        .filter(|i| height.values[*i].is_finite())
        .filter(|i| {
            let near = line.is_some_and(|l| l.across_along(grid.position(*i)).0.abs() < DENSE_MM);
            near || (i % grid.nx) % stride == 0 && (i / grid.nx) % stride == 0
        })
        .collect();
    let value: Vec<f64> = cells.iter().map(|&i| f64::from(height.values[i])).collect();
    let samples = Samples::of(&frame, &grid, &cells, value);
    let mut fit = samples.fit(&vec![1.0; cells.len()]);
    let mut scale = 3.0 * spread(&samples.residuals(&fit.c)).max(settings.sound_mm);
    loop {
        for _ in 0..3 {
            let weights: Vec<f64> =
                samples.residuals(&fit.c).iter().map(|r| 1.0 / (1.0 + (r / scale).powi(2)).powi(2)).collect();
            fit = samples.fit(&weights);
        }
        if scale <= settings.sound_mm {
            break;
        }
        scale = (scale * 0.6).max(settings.sound_mm);
    }
    let mut sound = vec![true; grid.len()];
    let mut shape = frame.over_grid(&grid, &fit.c);
    let rim = rim(height, settings.margin_mm);
    for _ in 0..ROUNDS {
        let left =
            Map { grid, values: height.values.iter().zip(&shape).map(|(h, s)| (f64::from(*h) - s) as f32).collect() };
        let damage = damage(&left, &rim, settings);
        sound = (0..grid.len()).map(|i| !damage[i] && height.values[i].is_finite()).collect();
        let weights: Vec<f64> = cells.iter().map(|&i| if sound[i] { 1.0 } else { 0.0 }).collect();
        if weights.iter().sum::<f64>() < 0.2 * cells.len() as f64 {
            break;
        }
        fit = samples.fit(&weights);
        shape = frame.over_grid(&grid, &fit.c);
    }
    let read = |(h, s): (&f32, &f64)| if h.is_finite() { *s as f32 } else { f32::NAN };
    let shape = Map { grid, values: height.values.iter().zip(&shape).map(read).collect() };
    let squares: Vec<f64> =
        (0..grid.len()).filter(|&i| sound[i]).map(|i| f64::from(height.values[i] - shape.values[i]).powi(2)).collect();
    let sound_rms_mm = (squares.iter().sum::<f64>() / squares.len().max(1) as f64).sqrt();
    let mut doubt = doubt_of(&frame, &fit, height, NOISE_MM.max(ALIKE * sound_rms_mm));
    doubt_the_open(&mut doubt, |i| height.values[i] - shape.values[i], &sound);
    let ridge = line.and_then(|line| {
        let seen = (0..grid.len()).filter(|i| height.values[*i].is_finite());
        let across = seen.map(|i| line.across_along(grid.position(i)).0);
        let ends = across.fold((f64::MAX, f64::MIN), |(low, high), t| (low.min(t), high.max(t)));
        Ridge::new(line, |t| frame.across(t, &fit), ends)
    });
    Intended { shape, doubt, sound, sound_rms_mm, line, ridge }
}

/// Times the damage is marked and the rest fitted again: without the damage its skirts stand out more.
const ROUNDS: usize = 3;
/// What a mean over [`SKIRT_MEAN_MM`] may stand off beside damage and still be sound, mm: texture averages out to a
/// third of it, the soft crown around a dent does not. A guess from known-truth captures.
const SKIRT_MM: f64 = 0.0006;
const SKIRT_MEAN_MM: f64 = 10.0;

/// What is not sound: all that stands out with a margin, and the soft skirts that go on from there. Skirts of what
/// lies at the rim of the reading are not followed: there the shape itself is least certain.
fn damage(left: &Map, rim: &[bool], settings: &IntendedSettings) -> Vec<bool> {
    let grid = left.grid;
    let off: Vec<bool> = left.values.iter().map(|r| f64::from(r.abs()) > 1.5 * settings.sound_mm).collect();
    let strong = keep_large(&off, &grid, MARKED_MM2);
    let inner = areas(&strong, &grid).into_iter().filter(|area| area.iter().all(|&i| !rim[i]));
    let inner = widen(&mask_of(inner, &grid), &grid, settings.margin_mm);
    let mean = average(left, SKIRT_MEAN_MM);
    let weak: Vec<bool> = (0..grid.len()).map(|i| inner[i] || f64::from(mean.values[i].abs()) > SKIRT_MM).collect();
    let skirts = areas(&weak, &grid).into_iter().filter(|area| area.iter().any(|&i| inner[i]));
    let skirts = mask_of(skirts, &grid);
    let marked = widen(&strong, &grid, settings.margin_mm);
    marked.iter().zip(&skirts).map(|(m, s)| *m || *s).collect()
}

/// Cells near the end of what was read.
fn rim(height: &Map, margin_mm: f64) -> Vec<bool> {
    let grid = height.grid;
    let at_end = |i: usize| i % grid.nx == 0 || (i + 1) % grid.nx == 0 || i < grid.nx || i + grid.nx >= grid.len();
    let unread: Vec<bool> = (0..grid.len()).map(|i| at_end(i) || !height.values[i].is_finite()).collect();
    widen(&unread, &grid, margin_mm)
}

fn mask_of(areas: impl Iterator<Item = Vec<usize>>, grid: &Grid) -> Vec<bool> {
    let mut mask = vec![false; grid.len()];
    areas.flatten().for_each(|i| mask[i] = true);
    mask
}

/// Error that neighbouring cells share, over the error of one: see [`NOISE_MM`].
const ALIKE: f64 = 5.0;
/// The doubt of the shape changes slowly: it is worked out this far apart, mm.
const DOUBT_MM: f64 = 5.0;

fn doubt_of(frame: &Frame, fit: &Fit, height: &Map, noise_mm: f64) -> Map {
    let grid = height.grid;
    let stride = ((DOUBT_MM / grid.step_mm).round() as usize).max(1);
    let coarse = Grid {
        step_mm: grid.step_mm * stride as f64,
        nx: grid.nx.div_ceil(stride) + 1,
        ny: grid.ny.div_ceil(stride) + 1,
        ..grid
    };
    let doubt = Map::from_fn(coarse, |x, y| noise_mm * frame.doubt((x, y), fit));
    let at = |i: usize| {
        let (x, y) = grid.position(i);
        doubt.sample(x, y).filter(|_| height.values[i].is_finite()).map_or(f32::NAN, |v| v as f32)
    };
    Map { grid, values: (0..grid.len()).map(at).collect() }
}

/// Every cell this near to a body line is fitted, mm.
const DENSE_MM: f64 = 14.0;

/// Smaller marks are texture.
const MARKED_MM2: f64 = 6.0;

fn spread(r: &[f64]) -> f64 {
    (r.iter().map(|v| v * v).sum::<f64>() / r.len().max(1) as f64).sqrt()
}
