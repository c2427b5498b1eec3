//! Places where the texture does not match the rest of the panel: marks of tools, and paint polished smooth.
//!
//! The root mean square of the waves of 1 to 6 mm is taken over neighbourhoods and held against the panel's
//! own, which is the middle of all neighbourhoods; so is the scatter of ordinary ones. What lies far outside is told,
//! rougher or smoother. Nothing is said where metal still lies far off or steep: its own shape leaks into the band.
//!
//! Limits: marks shallower than the panel's own peel are not seen, nor are those finer than four cells.

use crate::areal::rms;
use crate::average::local_mean;
use crate::gauss::longer_than;
use crate::grid::{Grid, Map};
use crate::regions::areas;
use serde::{Deserialize, Serialize};

/// How the texture of a place differs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum MarkKind {
    /// More texture than the panel has: marks of tips or hammers, or sanding.
    Rougher,
    /// Less: polished.
    Smoother,
}

/// A place whose texture does not match.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Mark {
    /// How it differs.
    pub kind: MarkKind,
    /// Middle, panel x, mm.
    pub x_mm: f64,
    /// Middle, panel y, mm.
    pub y_mm: f64,
    /// Area, mm².
    pub area_mm2: f64,
    /// Root mean square of the texture there, µm.
    pub sq_um: f64,
    /// The same of the panel, µm.
    pub panel_sq_um: f64,
}

/// Longest wave that counts as texture here, mm: tips leave marks of a few millimetres, dents are longer.
pub const TEXTURE_MM: f64 = 6.0;
/// Side of a neighbourhood, mm: some ten waves.
const AROUND_MM: f64 = 8.0;
/// Times the panel's own texture, from which it is rougher, and below which smoother; an eye sees a half more or less
/// beside each other. A guess, common practice, no published source.
const ROUGHER: f64 = 1.6;
const SMOOTHER: f64 = 0.55;
/// And this many times the scatter of the neighbourhoods.
const SCATTERS: f64 = 4.0;
/// Smaller places are chance, mm².
const LEAST_MM2: f64 = 30.0;
/// A curved place leaks: waves of the longer part that bend more than this share of the texture's own leave it out.
const LEAK: f64 = 0.5;

/// Places whose texture does not match, the largest first.
#[must_use]
pub fn marks(deviation: &Map) -> Vec<Mark> {
    let grid = deviation.grid;
    let long = longer_than(deviation, TEXTURE_MM);
    let fine = deviation.less(&long);
    let panel = middle_rms(&fine);
    let leaks = leaks(&long, LEAK * panel);
    let square = |i: usize| if leaks[i] { f32::NAN } else { fine.values[i].powi(2) };
    let squares = Map { grid, values: (0..grid.len()).map(square).collect() };
    let mut local = local_mean(&squares, AROUND_MM);
    local
        .values
        .iter_mut()
        .zip(&squares.values)
        .for_each(|(l, s)| *l = if s.is_finite() { l.sqrt() } else { f32::NAN });
    let scatter = scatter(&local);
    let limits = [
        (MarkKind::Rougher, f64::max(ROUGHER * panel, panel + SCATTERS * scatter)),
        (MarkKind::Smoother, f64::min(SMOOTHER * panel, panel - SCATTERS * scatter)),
    ];
    let mut found = Vec::new();
    for (kind, limit) in limits {
        let off = |v: f32| if kind == MarkKind::Rougher { f64::from(v) > limit } else { f64::from(v) < limit };
        let mask: Vec<bool> = local.values.iter().map(|v| off(*v)).collect();
        let large = |a: &Vec<usize>| a.len() as f64 * grid.step_mm.powi(2) >= LEAST_MM2;
        found.extend(areas(&mask, &grid).into_iter().filter(large).map(|a| describe(kind, &a, &fine, panel)));
    }
    found.sort_by(|a, b| b.area_mm2.total_cmp(&a.area_mm2));
    found
}

/// Cells where what is longer than texture would leave more than `most_mm` in the texture: the Gaussian filter takes
/// `σ²/2` times the bend from a curved place, `σ` of its weights.
fn leaks(long: &Map, most_mm: f64) -> Vec<bool> {
    let grid = long.grid;
    let sigma_square = (TEXTURE_MM * 0.469_718_6).powi(2) / std::f64::consts::TAU;
    let reach = ((TEXTURE_MM / grid.step_mm) as usize).max(1);
    (0..grid.len()).map(|i| 0.5 * sigma_square * bend(long, i, reach) > most_mm).collect()
}

/// Sum of the second derivatives along x and y over a reach of cells, 1/mm; nothing where they cannot be had.
fn bend(map: &Map, i: usize, reach: usize) -> f64 {
    let Grid { nx, ny, step_mm, .. } = map.grid;
    let along = |at: usize, length: usize, stride: usize| {
        if at < reach || at + reach >= length {
            return 0.0;
        }
        let v = |k: usize| f64::from(map.values[k]);
        let bend = (v(i - reach * stride) - 2.0 * v(i) + v(i + reach * stride)) / (reach as f64 * step_mm).powi(2);
        if bend.is_finite() { bend.abs() } else { 0.0 }
    };
    along(i % nx, nx, 1) + along(i / nx, ny, nx)
}

fn describe(kind: MarkKind, area: &[usize], fine: &Map, panel: f64) -> Mark {
    let n = area.len() as f64;
    let at = area.iter().map(|&i| fine.grid.position(i)).fold((0.0, 0.0), |s, p| (s.0 + p.0 / n, s.1 + p.1 / n));
    let here = Map { grid: fine.grid, values: area.iter().map(|&i| fine.values[i]).collect() };
    Mark {
        kind,
        x_mm: at.0,
        y_mm: at.1,
        area_mm2: n * fine.grid.step_mm.powi(2),
        sq_um: 1e3 * rms(&here),
        panel_sq_um: 1e3 * panel,
    }
}

/// Root mean square of a map by its middle size, which marks do not pull: 1.4826 times it, as of a normal distribution.
fn middle_rms(map: &Map) -> f64 {
    1.4826 * middle(map.values.iter().filter(|v| v.is_finite()).map(|v| v.abs()).collect())
}

fn scatter(map: &Map) -> f64 {
    let all: Vec<f32> = map.values.iter().copied().filter(|v| v.is_finite()).collect();
    let centre = middle(all.clone()) as f32;
    1.4826 * middle(all.into_iter().map(|v| (v - centre).abs()).collect())
}

fn middle(mut all: Vec<f32>) -> f64 {
    let at = all.len() / 2;
    if all.is_empty() { 0.0 } else { f64::from(*all.select_nth_unstable_by(at, f32::total_cmp).1) }
}
