//! How near a reading comes to the truth: laid on by its tags, compared cell by cell.
//!
//! Limits: the scene's dents are told apart by their own extents, so two dents nearer than those share cells.

use crate::mirror::Mirroring;
use crate::reading::{ReadMaps, ReadSpot};
use crate::truth::Truth;
use nalgebra::{Matrix3, Vector3};
use serde::Serialize;
use thiserror::Error;

/// The whole comparison. Errors are reading minus truth, µm.
#[derive(Debug, Clone, Serialize)]
pub struct Score {
    /// Cells compared.
    pub cells: usize,
    /// Median of the error's size.
    pub error_p50_um: f64,
    /// 95th percentile of the error's size.
    pub error_p95_um: f64,
    /// Largest error's size.
    pub error_max_um: f64,
    /// Mean error.
    pub bias_um: f64,
    /// 95th percentile over the cells outside every dent's extent alone.
    pub sound_p95_um: f64,
    /// Share of cells whose error lies within twice the said sigma.
    pub within_two_sigma: f64,
    /// Median said sigma, µm.
    pub sigma_p50_um: f64,
    /// Root mean square distance left between tags and their true centres, mm.
    pub tag_rms_mm: f64,
    /// Area that mirrors the board unfolded beside the tags, cm².
    pub readable_cm2: f64,
    /// Share of it that was read.
    pub read_share: f64,
    /// Every dent of the scene.
    pub dents: Vec<DentScore>,
    /// Spots over 5 µm where the truth has nothing of that sign.
    pub false_spots: Vec<ReadSpot>,
}

/// One dent: true against read.
#[derive(Debug, Clone, Serialize)]
pub struct DentScore {
    /// Centre in the truth's frame, mm.
    pub x_mm: f64,
    /// Centre in the truth's frame, mm.
    pub y_mm: f64,
    /// True height of the centre over the intended shape, µm (negative for a low).
    pub true_um: f64,
    /// Read at the same cells' extreme, µm; absent where the centre was not read.
    pub read_um: Option<f64>,
    /// Height of the nearest spot of the right sign, µm.
    pub spot_um: Option<f64>,
    /// `read_um` minus truth.
    pub error_um: Option<f64>,
}

/// Why there is no score.
#[derive(Debug, Error)]
pub enum ScoreError {
    /// Fewer than three tags are known to both.
    #[error("the reading has {0} tags of the truth, three are needed to lay it on")]
    Tags(usize),
    /// No cell of the reading falls on the truth.
    #[error("no cell that was read lies on the panel of the truth")]
    Nothing,
}

/// Spots smaller than this are not held against a reading.
const SPOT_UM: f64 = 5.0;
/// A dent's extent in half lengths: beyond it less than 0.1 % of the depth is left.
const DENT_EXTENT: f64 = 2.7;

/// Lays a reading on the truth and compares. Photos had `width` by `height` pixels.
///
/// # Errors
/// Too few common tags, or no common cell.
pub fn score(reading: &ReadMaps, truth: &Truth, width: usize, height: usize) -> Result<Score, ScoreError> {
    let lay = Lay::by_tags(reading, truth)?;
    let cells = compare(reading, truth, &lay);
    if cells.is_empty() {
        return Err(ScoreError::Nothing);
    }
    let mut sizes: Vec<f64> = cells.iter().map(|c| c.error_um().abs()).collect();
    let mut sound: Vec<f64> =
        cells.iter().filter(|c| !in_any_dent(truth, c.x, c.y)).map(|c| c.error_um().abs()).collect();
    let mut sigmas: Vec<f64> = cells.iter().map(|c| c.sigma_um).collect();
    let within = cells.iter().filter(|c| c.error_um().abs() <= 2.0 * c.sigma_um).count();
    let (readable_cm2, read_share) = share_read(reading, truth, &lay, width, height);
    let spots: Vec<(ReadSpot, [f64; 2])> = reading.spots.iter().map(|s| (*s, lay.spot(reading, s))).collect();
    let n = cells.len() as f64;
    Ok(Score {
        cells: cells.len(),
        error_p50_um: percentile(&mut sizes, 0.5),
        error_p95_um: percentile(&mut sizes, 0.95),
        error_max_um: percentile(&mut sizes, 1.0),
        bias_um: cells.iter().map(Cell::error_um).sum::<f64>() / n,
        sound_p95_um: percentile(&mut sound, 0.95),
        within_two_sigma: within as f64 / n,
        sigma_p50_um: percentile(&mut sigmas, 0.5),
        tag_rms_mm: lay.rms_mm,
        readable_cm2,
        read_share,
        dents: truth.scene.dents.iter().map(|d| dent_score(d, &cells, &spots, truth)).collect(),
        false_spots: spots.iter().filter(|(s, at)| is_false(s, *at, truth)).map(|(s, _)| *s).collect(),
    })
}

/// One cell in the truth's frame.
#[derive(Debug, Clone, Copy)]
pub struct Cell {
    /// Index into the reading's maps.
    pub index: usize,
    /// Place in the truth's frame, mm.
    pub x: f64,
    /// Place in the truth's frame, mm.
    pub y: f64,
    /// Read deviation, µm.
    pub read_um: f64,
    /// True damage, µm.
    pub true_um: f64,
    /// Said standard deviation, µm.
    pub sigma_um: f64,
}

impl Cell {
    /// Reading minus truth, µm.
    #[must_use]
    pub fn error_um(&self) -> f64 {
        self.read_um - self.true_um
    }
}

/// The rigid move `truth_from_reading`.
#[derive(Debug, Clone)]
pub struct Lay {
    turn: Matrix3<f64>,
    from: Vector3<f64>,
    to: Vector3<f64>,
    /// What is left between tags, mm.
    pub rms_mm: f64,
}

impl Lay {
    /// Least squares over the common tags' centres (Arun, Huang, Blostein 1987).
    ///
    /// # Errors
    /// Fewer than three common tags.
    pub fn by_tags(reading: &ReadMaps, truth: &Truth) -> Result<Self, ScoreError> {
        let known = truth.tag_centres();
        let pairs: Vec<(Vector3<f64>, Vector3<f64>)> =
            reading.tags.iter().filter_map(|(id, at)| known.iter().find(|k| k.0 == *id).map(|k| (*at, k.1))).collect();
        if pairs.len() < 3 {
            return Err(ScoreError::Tags(pairs.len()));
        }
        let n = pairs.len() as f64;
        let from = pairs.iter().map(|p| p.0).sum::<Vector3<f64>>() / n;
        let to = pairs.iter().map(|p| p.1).sum::<Vector3<f64>>() / n;
        let cross: Matrix3<f64> = pairs.iter().map(|p| (p.0 - from) * (p.1 - to).transpose()).sum();
        let svd = cross.svd(true, true);
        let (u, vt) = (svd.u.unwrap_or_default(), svd.v_t.unwrap_or_default());
        let flip = (vt.transpose() * u.transpose()).determinant().signum();
        let turn = vt.transpose() * Matrix3::from_diagonal(&Vector3::new(1.0, 1.0, flip)) * u.transpose();
        let left: f64 = pairs.iter().map(|p| (turn * (p.0 - from) + to - p.1).norm_squared()).sum();
        Ok(Self { turn, from, to, rms_mm: (left / n).sqrt() })
    }

    fn forth(&self, p: &Vector3<f64>) -> Vector3<f64> {
        self.turn * (p - self.from) + self.to
    }

    /// A point of the truth's frame in the reading's.
    #[must_use]
    pub fn back(&self, p: &Vector3<f64>) -> Vector3<f64> {
        self.turn.transpose() * (p - self.to) + self.from
    }

    /// A reading's height direction against the truth's, at a base slope: lengths along one to lengths along the other.
    fn upright(&self, slope: [f64; 2]) -> f64 {
        let normal = Vector3::new(-slope[0], -slope[1], 1.0);
        normal.dot(&self.turn.column(2))
    }

    fn spot(&self, reading: &ReadMaps, spot: &ReadSpot) -> [f64; 2] {
        let height = reading.cell(spot.x_mm, spot.y_mm).map_or(f64::NAN, |k| f64::from(reading.height[k]));
        let z = if height.is_finite() { height } else { self.from.z };
        let p = self.forth(&Vector3::new(spot.x_mm, spot.y_mm, z));
        [p.x, p.y]
    }
}

/// All cells that were read and lie on the truth.
#[must_use]
pub fn compare(reading: &ReadMaps, truth: &Truth, lay: &Lay) -> Vec<Cell> {
    let mut cells = Vec::new();
    for index in 0..reading.nx * reading.ny {
        let [x, y] = reading.place(index % reading.nx, index / reading.nx);
        let (deviation, z) = (f64::from(reading.deviation[index]), f64::from(reading.height[index]));
        if !deviation.is_finite() || !z.is_finite() {
            continue;
        }
        let p = lay.forth(&Vector3::new(x, y, z));
        let (Some(damage), Some(slope)) = (truth.damage_at(p.x, p.y), base_slope(truth, p.x, p.y)) else {
            continue;
        };
        cells.push(Cell {
            index,
            x: p.x,
            y: p.y,
            read_um: deviation * lay.upright(slope) * 1e3,
            true_um: damage * 1e3,
            sigma_um: f64::from(reading.sigma[index]) * 1e3,
        });
    }
    cells
}

fn base_slope(truth: &Truth, x: f64, y: f64) -> Option<[f64; 2]> {
    let h = 1.0;
    let dx = truth.base_at(x + h, y)? - truth.base_at(x - h, y)?;
    let dy = truth.base_at(x, y + h)? - truth.base_at(x, y - h)?;
    Some([dx / (2.0 * h), dy / (2.0 * h)])
}

fn in_any_dent(truth: &Truth, x: f64, y: f64) -> bool {
    truth.scene.dents.iter().any(|d| (x - d.x).hypot(y - d.y) < DENT_EXTENT * d.reach())
}

/// Area (cm²) that can be read, and the share of it that was.
fn share_read(reading: &ReadMaps, truth: &Truth, lay: &Lay, width: usize, height: usize) -> (f64, f64) {
    let mirroring = Mirroring::of(truth, width, height);
    let nx = truth.x.len();
    let (mut all, mut read) = (0usize, 0usize);
    for k in (0..mirroring.readable.len()).filter(|k| mirroring.readable[*k]) {
        let z = f64::from(truth.base[k]) + f64::from(truth.damage[k]);
        let p = lay.back(&Vector3::new(truth.x[k % nx], truth.y[k / nx], z));
        all += 1;
        read += usize::from(reading.cell(p.x, p.y).is_some_and(|c| reading.deviation[c].is_finite()));
    }
    let cell_cm2 = (truth.x[1] - truth.x[0]) * (truth.y[1] - truth.y[0]) / 100.0;
    (all as f64 * cell_cm2, read as f64 / (all as f64).max(1.0))
}

fn dent_score(dent: &crate::dent::Dent, cells: &[Cell], spots: &[(ReadSpot, [f64; 2])], truth: &Truth) -> DentScore {
    let sign = -dent.depth.signum();
    let near = dent.a.min(dent.b) / 2.0;
    let inside = || cells.iter().filter(|c| (c.x - dent.x).hypot(c.y - dent.y) < near);
    let centre_read = inside().any(|c| (c.x - dent.x).hypot(c.y - dent.y) < 1.5);
    let extreme = |of: fn(&Cell) -> f64| inside().map(of).map(|v| v * sign).fold(f64::MIN, f64::max) * sign;
    let true_um = truth.damage_at(dent.x, dent.y).map_or(-dent.depth * 1e3, |d| d * 1e3);
    let read_um = centre_read.then(|| extreme(|c| c.read_um));
    let spot_um = spots
        .iter()
        .filter(|(s, at)| s.height_mm * sign > 0.0 && (at[0] - dent.x).hypot(at[1] - dent.y) < dent.reach())
        .map(|(s, _)| s.height_mm * 1e3)
        .max_by(|a, b| (a * sign).total_cmp(&(b * sign)));
    let error_um = read_um.map(|r| r - extreme(|c| c.true_um));
    DentScore { x_mm: dent.x, y_mm: dent.y, true_um, read_um, spot_um, error_um }
}

/// A spot over the limit is false where nothing of its sign and a quarter of its size lies within 6 mm of its place.
fn is_false(spot: &ReadSpot, at: [f64; 2], truth: &Truth) -> bool {
    if spot.height_mm.abs() * 1e3 < SPOT_UM {
        return false;
    }
    let steps = || (-6..=6).map(f64::from);
    let there = steps()
        .flat_map(|dy| steps().map(move |dx| (at[0] + dx, at[1] + dy)))
        .filter_map(|(x, y)| truth.damage_at(x, y))
        .map(|d| d * spot.height_mm.signum())
        .fold(f64::MIN, f64::max);
    there < 0.25 * spot.height_mm.abs()
}

/// The value below which a share of the values lies; NaN of none.
fn percentile(values: &mut [f64], share: f64) -> f64 {
    if values.is_empty() {
        return f64::NAN;
    }
    let k = ((values.len() - 1) as f64 * share).round() as usize;
    *values.select_nth_unstable_by(k, f64::total_cmp).1
}
