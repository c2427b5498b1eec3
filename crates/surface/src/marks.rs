//! Places where the texture does not match the rest of the panel: marks of tools, and paint polished smooth.
//!
//! The root mean square of the waves of 1 to 6 mm is taken over neighbourhoods and held against the panel's
//! own, which is the middle of all neighbourhoods; so is the scatter of ordinary ones. What lies far outside is told,
//! rougher or smoother. Nothing is said where metal still lies far off or steep: its own shape leaks into the band,
//! most of all at the rim of a fold, where the filter sees one side of it only and the bend grows within a millimetre
//! or two.
//!
//! Limits: marks shallower than the panel's own peel are not seen, nor are those finer than four cells.

use crate::areal::rms;
use crate::average::local_mean;
use crate::gauss::{longer_and_share, spread_mm};
use crate::grid::{Grid, Map};
use crate::regions::{areas, rings};
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

/// Places whose texture does not match, the largest first; `folded` are the cells that were not read since the mirror image
/// turns over there.
#[must_use]
pub fn marks(deviation: &Map, folded: &[bool]) -> Vec<Mark> {
    let grid = deviation.grid;
    let (long, share) = longer_and_share(deviation, TEXTURE_MM);
    let fine = deviation.less(&long);
    let panel = middle_rms(&fine);
    let mut leaks = leaks(&long, &share, LEAK * panel);
    let folded: Vec<usize> = (0..grid.len()).filter(|i| folded[*i]).collect();
    let rim = rings(&grid, &folded, TEXTURE_MM, |i| deviation.values[i].is_finite());
    rim.into_iter().for_each(|(i, _)| leaks[i] = true);
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

/// Cells where what is longer than texture would leave more than `most_mm` in the texture. Of a curved place the
/// Gaussian filter takes `σ²/2` times the bend, `σ` that of its weights. Beside cells that were not read its weights stand
/// off the cell by `σ² ∇s / s`, `s` the share of them that was read, and it takes that times the slope. Where neither
/// side tells the slope, the cell is left out.
fn leaks(long: &Map, share: &Map, most_mm: f64) -> Vec<bool> {
    let Grid { nx, ny, step_mm, .. } = long.grid;
    let sigma_square = spread_mm(TEXTURE_MM).powi(2);
    let reach = ((TEXTURE_MM / step_mm) as usize).max(1);
    let leak = |i: usize| {
        [(i % nx, nx, 1), (i / nx, ny, nx)].map(|(at, length, stride)| {
            let [back, ahead, two_back, two_ahead] =
                [-1, 1, -2, 2].map(|k| beside(long, i, (at, length, stride), k * reach as isize));
            let here = f64::from(long.values[i]);
            let length_mm = reach as f64 * step_mm;
            let (slope, bend) = match (back, ahead) {
                (Some(b), Some(a)) => (Some((a - b) / (2.0 * length_mm)), Some(b - 2.0 * here + a)),
                (Some(b), None) => (Some((here - b) / length_mm), two_back.map(|bb| here - 2.0 * b + bb)),
                (None, Some(a)) => (Some((a - here) / length_mm), two_ahead.map(|aa| here - 2.0 * a + aa)),
                (None, None) => (None, None),
            };
            let neighbour = |k| beside(share, i, (at, length, stride), k).unwrap_or(0.0);
            let off_mm = sigma_square * (neighbour(1) - neighbour(-1)) / (2.0 * step_mm * f64::from(share.values[i]));
            let slanted = if off_mm == 0.0 { 0.0 } else { slope.map_or(f64::INFINITY, |s| s * off_mm) };
            (slanted, 0.5 * sigma_square * bend.unwrap_or(0.0).abs() / length_mm.powi(2))
        })
    };
    let over = |i: usize| {
        let [(slant_x, bend_x), (slant_y, bend_y)] = leak(i);
        (slant_x + slant_y).abs().max(bend_x + bend_y)
    };
    (0..long.grid.len()).map(|i| over(i) > most_mm).collect()
}

/// What a map holds `steps` cells along a row or column; none off the grid and where it was not read.
fn beside(map: &Map, i: usize, (at, length, stride): (usize, usize, usize), steps: isize) -> Option<f64> {
    at.checked_add_signed(steps).filter(|&k| k < length)?;
    let value = map.values[i.checked_add_signed(steps * stride as isize)?];
    value.is_finite().then(|| f64::from(value))
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gauss::longer_than;

    const GRID: Grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 0.5, nx: 260, ny: 200 };
    /// Middle of the fold, mm.
    const FOLD: (f64, f64) = (45.0, 50.0);

    /// Peel of 0.5 µm, alike over 3 mm; the numbers are those of a linear congruence (Knuth's MMIX).
    fn peel(seed: u64) -> Map {
        let mut state = seed;
        let mut random = || {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 40) as f32 / (1u64 << 24) as f32 - 0.5
        };
        let white = Map { grid: GRID, values: (0..GRID.len()).map(|_| random()).collect() };
        let mut peel = longer_than(&white, 3.0);
        let times = (0.0005 / rms(&peel)) as f32;
        peel.values.iter_mut().for_each(|v| *v *= times);
        peel
    }

    /// A dent 2.2 mm deep that was not read where it is steeper than 90 mrad, as a board reaches.
    fn fold(x: f64, y: f64) -> f64 {
        let (dx, dy) = ((x - FOLD.0) / 9.0, (y - FOLD.1) / 8.0);
        let z = -2.2 * (-dx * dx - dy * dy).exp();
        let steep = (2.0 * z * dx / 9.0).hypot(2.0 * z * dy / 8.0) > 0.09;
        if steep || dx.hypot(dy) < 1.0 { f64::NAN } else { z }
    }

    /// Sixteen taps of a sharp tip, 2.5 mm across, from a corner on.
    fn taps(height_mm: f64, from: (f64, f64), x: f64, y: f64) -> f64 {
        let tap = |k: u32| {
            let (dx, dy) = (x - from.0 - 4.5 * f64::from(k % 4), y - from.1 - 4.5 * f64::from(k / 4));
            (-(dx * dx + dy * dy) / 2.42).exp()
        };
        height_mm * (0..16).map(tap).sum::<f64>()
    }

    fn marks_of(seed: u64, folds: bool, shape: impl Fn(f64, f64) -> f64) -> Vec<Mark> {
        let (peel, shape) = (peel(seed), Map::from_fn(GRID, shape));
        let both = peel.values.iter().zip(&shape.values).map(|(a, b)| a + b);
        let both = Map { grid: GRID, values: both.collect() };
        let folded: Vec<bool> = both.values.iter().map(|v| folds && v.is_nan()).collect();
        marks(&both, &folded)
    }

    #[test]
    fn the_rim_of_a_fold_is_no_mark_and_taps_near_it_are_one() {
        for seed in [1, 2, 3] {
            let alone = marks_of(seed, true, fold);
            assert!(alone.is_empty(), "{alone:?}");
            let corner = (FOLD.0 + 29.0, FOLD.1 - 7.0);
            let found = marks_of(seed, true, |x, y| fold(x, y) + taps(0.005, corner, x, y));
            let there = |m: &Mark| (m.x_mm - corner.0 - 6.75).hypot(m.y_mm - corner.1 - 6.75) < 5.0;
            assert!(found.len() == 1 && found[0].kind == MarkKind::Rougher && there(&found[0]), "{found:?}");
        }
    }

    /// A hole in level metal (a tag, a reflection) leaks nothing, so marks are told up to its rim.
    #[test]
    fn taps_at_the_rim_of_a_hole_in_level_metal_are_told() {
        let hole = |x: f64, y: f64| (x - 40.0).abs().max((y - 50.0).abs()) < 8.0;
        let corner = (50.0, 43.0);
        let shape = |x: f64, y: f64| if hole(x, y) { f64::NAN } else { taps(0.003, corner, x, y) };
        let found = marks_of(4, false, shape);
        let near = found.iter().any(|m| m.kind == MarkKind::Rougher && m.area_mm2 > 150.0);
        assert!(found.len() == 1 && near, "{found:?}");
        let level = marks_of(4, false, |x, y| if hole(x, y) { f64::NAN } else { 0.0 });
        assert!(level.is_empty(), "{level:?}");
    }
}
