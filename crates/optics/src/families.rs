//! Whether lines are mirrored twice: by the front and by the back of glass or clear plastic.
//!
//! Tile by tile the spectrum of one photo is looked at. One mirror gives one peak, its harmonics above it and all of
//! them weaker; a peak below the strongest one, or beside its multiples, is a second set of lines.
//!
//! Limits: both sets must be seen over most of the tiles that show lines, and differ by more than two cycles a tile.

use crate::photo::Photo;
use nalgebra::Vector2;
use rayon::prelude::*;
use std::f64::consts::TAU;

/// Samples along a tile's side.
const SIDE: usize = 64;
/// Highest frequency looked at, cycles a tile.
const HIGHEST: i32 = 26;
/// Frequencies this low are brightness, not lines.
const LOWEST: f64 = 3.0;
/// Reach of a peak under the window, cycles a tile.
const REACH: f64 = 2.6;
/// Amplitude over the strongest one's from which a peak is a set of lines.
const STRONG: f64 = 0.3;
/// Tiles along the photo's long side.
const TILES: usize = 5;
/// A tile whose strongest peak has a smaller amplitude shows no lines, in levels of 255.
const LEAST_LEVELS: f64 = 1.0;

/// Share of the tiles with lines that show two sets of them, and how many tiles show lines. `together` pixels each
/// way make one sample, 64 samples a tile.
#[must_use]
pub fn two_families(photo: &Photo, together: usize) -> (f64, usize) {
    let tiles = tiles(photo, SIDE * together);
    let seen: Vec<bool> = tiles.into_par_iter().filter_map(|at| is_double(&spectrum(photo, at, together))).collect();
    let double = seen.iter().filter(|d| **d).count();
    (double as f64 / seen.len().max(1) as f64, seen.len())
}

/// Samples along a photo's long side when its ordinary lines are looked for.
const SAMPLES: f64 = 800.0;
/// Rates that are within this of each other, relative, belong to one set of lines.
const ALIKE: f64 = 0.5;
/// Share of the tiles that must agree on it.
const AGREED: f64 = 0.3;

/// Rate of the lines that most of a photo shows, rad per px across and down; its sign is free. `None` where too few
/// tiles agree on one.
#[must_use]
pub fn ordinary_lines(photo: &Photo) -> Option<Vector2<f64>> {
    let together = (photo.width.max(photo.height) as f64 / SAMPLES).round().max(1.0) as usize;
    let tiles = tiles(photo, SIDE * together);
    let count = tiles.len();
    let of_tile = |at: (usize, usize)| strongest(&spectrum(photo, at, together));
    let peaks: Vec<(Vector2<f64>, f64)> =
        tiles.into_par_iter().filter_map(of_tile).map(|(fx, fy, size)| (Vector2::new(fx, fy), size)).collect();
    let alike = |of: Vector2<f64>| {
        let turned = move |(f, size): &(Vector2<f64>, f64)| (if f.dot(&of) < 0.0 { -f } else { *f }, *size);
        peaks.iter().map(turned).filter(move |(f, _)| (f - of).norm() < ALIKE * of.norm())
    };
    let weight = |of: Vector2<f64>| alike(of).map(|(_, size)| size).sum::<f64>();
    let (best, _) = peaks.iter().max_by(|a, b| weight(a.0).total_cmp(&weight(b.0)))?;
    let mean = alike(*best).map(|(f, size)| f * size).sum::<Vector2<f64>>() / weight(*best);
    let enough = alike(*best).count() as f64 >= AGREED * count as f64;
    enough.then(|| mean * TAU / (SIDE * together) as f64)
}

/// First pixels of tiles spread evenly over a photo; none where it is smaller than one.
fn tiles(photo: &Photo, tile: usize) -> Vec<(usize, usize)> {
    let (columns, rows) = ((photo.width / tile).min(TILES), (photo.height / tile).min(TILES));
    let at = |k: usize, of: usize, whole: usize| (2 * k + 1) * whole / (2 * of) - tile / 2;
    let place = |k: usize| (at(k % columns, columns, photo.width), at(k / columns, rows, photo.height));
    (0..columns * rows).map(place).collect()
}

/// Frequencies across and down, cycles a tile, and the amplitude of each, levels. Half of them: the other half is
/// the same.
struct Spectrum(Vec<(f64, f64, f64)>);

fn spectrum(photo: &Photo, (x0, y0): (usize, usize), together: usize) -> Spectrum {
    let mean_of = |x: usize, y: usize| {
        let square = (0..together).flat_map(|j| (0..together).map(move |i| (x * together + i, y * together + j)));
        let sum: f64 = square.map(|(x, y)| f64::from(photo.grey[(y0 + y) * photo.width + x0 + x])).sum();
        sum / (together * together) as f64
    };
    let levels: Vec<f64> = (0..SIDE * SIDE).map(|i| mean_of(i % SIDE, i / SIDE)).collect();
    let mean = levels.iter().sum::<f64>() / levels.len() as f64;
    let fall: Vec<f64> = (0..SIDE).map(|k| 0.5 - 0.5 * (TAU * (k as f64 + 0.5) / SIDE as f64).cos()).collect();
    let windowed: Vec<f64> =
        levels.iter().enumerate().map(|(i, v)| (v - mean) * fall[i % SIDE] * fall[i / SIDE]).collect();
    let turns = |f: i32| -> Vec<(f64, f64)> {
        (0..SIDE).map(|k| (-TAU * f64::from(f) * k as f64 / SIDE as f64).sin_cos()).map(|(s, c)| (c, s)).collect()
    };
    let down: Vec<(i32, Vec<(f64, f64)>)> = (-HIGHEST..=HIGHEST).map(|f| (f, turns(f))).collect();
    let mut out = Vec::new();
    for fx in 0..=HIGHEST {
        let across = turns(fx);
        let rows = windowed.chunks_exact(SIDE);
        let of_rows: Vec<(f64, f64)> =
            rows.map(|r| r.iter().zip(&across).fold((0.0, 0.0), |s, (v, t)| (s.0 + v * t.0, s.1 + v * t.1))).collect();
        for (fy, turns) in down.iter().filter(|(fy, _)| fx > 0 || *fy > 0) {
            let times = |s: (f64, f64), (v, t): (&(f64, f64), &(f64, f64))| {
                (s.0 + v.0 * t.0 - v.1 * t.1, s.1 + v.0 * t.1 + v.1 * t.0)
            };
            let sum = of_rows.iter().zip(turns).fold((0.0, 0.0), times);
            // A wave of amplitude b leaves b/2 times the window's sum, a quarter of the samples.
            out.push((f64::from(fx), f64::from(*fy), 8.0 * sum.0.hypot(sum.1) / (SIDE * SIDE) as f64));
        }
    }
    Spectrum(out)
}

/// Frequencies of a tile that are lines, not brightness.
fn lines(spectrum: &Spectrum) -> impl Iterator<Item = &(f64, f64, f64)> {
    spectrum.0.iter().filter(|p| p.0.hypot(p.1) >= LOWEST)
}

/// The strongest of a tile's lines; `None` where it shows none.
fn strongest(spectrum: &Spectrum) -> Option<(f64, f64, f64)> {
    lines(spectrum).max_by(|a, b| a.2.total_cmp(&b.2)).filter(|p| p.2 >= LEAST_LEVELS).copied()
}

/// Whether a tile shows two sets of lines; `None` where it shows none.
fn is_double(spectrum: &Spectrum) -> Option<bool> {
    let first = strongest(spectrum)?;
    let apart = |p: &(f64, f64, f64), times: f64| {
        // The spectrum of a real photo is even: one half stands for both.
        let to = |sign: f64| (p.0 - sign * times * first.0).hypot(p.1 - sign * times * first.1);
        to(1.0).min(to(-1.0))
    };
    let of_first = |p: &(f64, f64, f64)| (1..=5).any(|m| apart(p, f64::from(m)) <= REACH * f64::from(m).sqrt());
    let beside = lines(spectrum).filter(|p| !of_first(p));
    Some(beside.fold(0.0, |most: f64, p| most.max(p.2)) >= STRONG * first.2)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn photo(level: impl Fn(f64, f64) -> f64) -> Photo {
        let (width, height) = (512, 384);
        let grey = (0..width * height).map(|i| level((i % width) as f64, (i / width) as f64).clamp(0.0, 255.0) as u8);
        Photo { width, height, grey: grey.collect(), focal_35mm: None }
    }

    #[test]
    fn one_set_of_lines_is_one_though_black_and_white_and_bent() {
        let square = photo(|x, y| if (TAU * (x + 6.0 * (y / 90.0).sin()) / 17.0).cos() > 0.0 { 200.0 } else { 40.0 });
        let sine = photo(|x, y| 120.0 + 60.0 * (TAU * (y + 0.001 * x * x / 4.0) / 21.0).cos());
        for photo in [square, sine] {
            let (share, tiles) = two_families(&photo, 2);
            assert!(share <= 0.2 && tiles >= 8, "{share} of {tiles}");
        }
    }

    #[test]
    fn two_sets_of_lines_are_two() {
        let both = photo(|x, y| 120.0 + 50.0 * (TAU * y / 13.0).cos() + 30.0 * (TAU * (y + 0.1 * x) / 24.0).cos());
        let (share, tiles) = two_families(&both, 2);
        assert!(share >= 0.8 && tiles >= 8, "{share} of {tiles}");
    }
}
