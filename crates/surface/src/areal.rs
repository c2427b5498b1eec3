//! Figures of a surface's texture (ISO 25178-2) and its split by scale.
//!
//! Figures are of what is left after a least-squares plane was taken off, over the cells that were read. The bands are
//! those of the trade, from 0.1 to 30 mm, each the difference of two Gaussian filters ([`longer_than`]); dents are longer.
//! A band whose waves are shorter than four cells is not seen by a reading, and said to be so.
//!
//! Limits: a reading's own noise is in the finest band. No form but the plane is taken off here; give a deviation.

use crate::gauss::longer_than;
use crate::grid::Map;
use serde::{Deserialize, Serialize};

/// Areal figures of a surface, ISO 25178-2; heights in µm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Areal {
    /// Arithmetical mean height, µm.
    pub sa_um: f64,
    /// Root mean square height, µm.
    pub sq_um: f64,
    /// Tallest peak, µm.
    pub sp_um: f64,
    /// Deepest pit, µm.
    pub sv_um: f64,
    /// Peak and pit together, µm.
    pub sz_um: f64,
    /// Skewness.
    pub ssk: f64,
    /// Kurtosis; 3 for a normal distribution.
    pub sku: f64,
    /// Root mean square gradient, mrad.
    pub sdq_mrad: f64,
}

/// Figures of a map over the cells that were read; `None` for fewer than four.
#[must_use]
pub fn areal(map: &Map) -> Option<Areal> {
    let level = levelled(map)?;
    let heights: Vec<f64> = level.values.iter().filter(|v| v.is_finite()).map(|v| 1e3 * f64::from(*v)).collect();
    let n = heights.len() as f64;
    let mean = |power: i32| heights.iter().map(|h| h.powi(power)).sum::<f64>() / n;
    let sq = mean(2).sqrt();
    let (sp, sv) = heights.iter().fold((0.0f64, 0.0f64), |(p, v), h| (p.max(*h), v.max(-h)));
    Some(Areal {
        sa_um: heights.iter().map(|h| h.abs()).sum::<f64>() / n,
        sq_um: sq,
        sp_um: sp,
        sv_um: sv,
        sz_um: sp + sv,
        ssk: mean(3) / sq.powi(3),
        sku: mean(4) / sq.powi(4),
        sdq_mrad: 1e3 * gradient(&level),
    })
}

/// A map less its least-squares plane; `None` for fewer than four cells, or cells in a line.
fn levelled(map: &Map) -> Option<Map> {
    let grid = map.grid;
    let read: Vec<usize> = (0..grid.len()).filter(|&i| map.values[i].is_finite()).collect();
    let mut normal = nalgebra::Matrix3::zeros();
    let mut right = nalgebra::Vector3::zeros();
    let row = |i: usize| {
        nalgebra::Vector3::new(1.0, (i % grid.nx) as f64 / grid.nx as f64, (i / grid.nx) as f64 / grid.ny as f64)
    };
    for &i in &read {
        normal += row(i) * row(i).transpose();
        right += row(i) * f64::from(map.values[i]);
    }
    let plane = normal.cholesky().filter(|_| read.len() >= 4)?.solve(&right);
    let values = (0..grid.len()).map(|i| (f64::from(map.values[i]) - row(i).dot(&plane)) as f32);
    Some(Map { grid, values: values.collect() })
}

/// Root mean square gradient from the differences of neighbours, each direction over its own.
fn gradient(map: &Map) -> f64 {
    let grid = map.grid;
    let along = |stride: usize, has_next: &dyn Fn(usize) -> bool| {
        let rise = |i: usize| f64::from(map.values[i + stride] - map.values[i]) / grid.step_mm;
        let squares = (0..grid.len()).filter(|&i| has_next(i)).map(|i| rise(i).powi(2)).filter(|s| s.is_finite());
        let (sum, count) = squares.fold((0.0, 0.0), |(s, n), v| (s + v, n + 1.0));
        sum / f64::max(count, 1.0)
    };
    (along(1, &|i| i % grid.nx + 1 < grid.nx) + along(grid.nx, &|i| i / grid.nx + 1 < grid.ny)).sqrt()
}

/// Ends of the trade's bands of waviness, mm; common practice, no published source.
pub const BANDS_MM: [f64; 6] = [0.1, 0.3, 1.0, 3.0, 10.0, 30.0];
/// Cells to the shortest wave that a reading shows.
const CELLS_A_WAVE: f64 = 4.0;

/// What of a surface lies in one band of wavelengths.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Band {
    /// Shortest wave, mm.
    pub from_mm: f64,
    /// Longest wave, mm.
    pub to_mm: f64,
    /// How much of the band a reading of this step shows: all of it, or only from this wave on, mm; none where it shows
    /// nothing of it.
    pub seen_from_mm: Option<f64>,
    /// Root mean square height of what is seen, µm.
    pub sq_um: Option<f64>,
}

/// The bands of a map on the cells where `sound` holds; the others are left out of the filters and the figures.
#[must_use]
pub fn bands(deviation: &Map, sound: &[bool]) -> Vec<Band> {
    let map = masked(deviation, sound);
    let least = CELLS_A_WAVE * map.grid.step_mm;
    // What is longer than the short end of the band to come.
    let mut rest = None;
    let of = |ends: &[f64]| {
        let (from_mm, to_mm) = (ends[0], ends[1]);
        let seen_from_mm = (to_mm > 1.2 * least).then(|| from_mm.max(least));
        let sq_um = seen_from_mm.map(|_| {
            let from_here = rest.take().unwrap_or_else(|| without_single_cells(&map, from_mm));
            let longer = longer_than(&map, to_mm);
            let sq_um = 1e3 * rms(&from_here.less(&longer));
            rest = Some(longer);
            sq_um
        });
        Band { from_mm, to_mm, seen_from_mm, sq_um }
    };
    BANDS_MM.windows(2).map(of).collect()
}

/// Waves of a map longer than the short end of a band; all of them where that end is too short to be filtered.
fn without_single_cells(map: &Map, from_mm: f64) -> Map {
    if from_mm > 2.0 * map.grid.step_mm { longer_than(map, from_mm) } else { map.clone() }
}

fn masked(map: &Map, keep: &[bool]) -> Map {
    let value = |(v, k): (&f32, &bool)| if *k { *v } else { f32::NAN };
    Map { grid: map.grid, values: map.values.iter().zip(keep).map(value).collect() }
}

/// Root mean square of the cells that were read.
pub(crate) fn rms(map: &Map) -> f64 {
    let squares = map.values.iter().filter(|v| v.is_finite()).map(|v| f64::from(*v).powi(2));
    let (sum, count) = squares.fold((0.0, 0.0), |(s, n), v| (s + v, n + 1.0));
    (sum / f64::max(count, 1.0)).sqrt()
}

/// Texture of a map: what is shorter than a wavelength, mm, on the cells where `sound` holds.
#[must_use]
pub fn texture(deviation: &Map, sound: &[bool], longest_mm: f64) -> Map {
    let map = masked(deviation, sound);
    map.less(&longer_than(&map, longest_mm))
}
