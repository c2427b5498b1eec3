//! What the contrast of shifted lines says of the mirror, block by block of a photo.
//!
//! One mirror keeps the contrast of its lines, and as much across as up. Two mirrors, the front and the back of a
//! clear sheet, add two waves whose phases drift apart: the contrast rises and falls, along u in other places than
//! along v. A lens out of focus keeps less of fine lines than of coarse ones.

use crate::steps::Steps;
use nalgebra::Complex;
use rayon::prelude::*;
use std::f64::consts::TAU;

/// Blocks along a photo's long side.
const BLOCKS: usize = 25;
/// Samples along a block's side: noise of 30 % of the contrast a pixel leaves about 1 % a block.
const SAMPLES: usize = 24;
/// Every how many of them the rate is looked at.
const RATE_EVERY: usize = 3;
/// Contrast over that of the clearest blocks from which a block counts as mirroring the lines.
const CLEAR: f64 = 0.4;
/// Fewer blocks say nothing.
const LEAST_BLOCKS: usize = 20;

/// One pattern's lines over the blocks of its photos.
#[derive(Debug, Clone)]
pub struct Contrast {
    periods: f64,
    blocks: Vec<Block>,
}

#[derive(Debug, Clone, Copy)]
struct Block {
    /// Mean amplitude, linear, full scale 1.
    amplitude: f64,
    /// Rate of the phase across and down, rad per px.
    rate: f64,
}

impl Contrast {
    /// Looks at the photos of one pattern, or of one slid board.
    #[must_use]
    pub fn of(steps: &Steps) -> Self {
        let (width, pixels) = (steps.photos[0].width, steps.photos[0].grey.len());
        let height = pixels / width.max(1);
        let side = width.max(height).div_ceil(BLOCKS).max(SAMPLES + 1);
        let (across, down) = (width / side, height / side);
        let corner = |k: usize| (k % across * side, k / across * side);
        let blocks = (0..across * down).into_par_iter().map(|k| block(steps, width, corner(k), side)).collect();
        Self { periods: steps.periods, blocks }
    }

    /// How unevenly the contrast of `self` and `other`, lines the other way, rises and falls: half the distance
    /// from the 10th to the 90th percentile of the logarithm of their ratio. `None` where too little is mirrored.
    #[must_use]
    pub fn swing(&self, other: &Self) -> Option<f64> {
        let pairs = self.pairs(other);
        let most = |(a, b): &(Block, Block)| a.amplitude.max(b.amplitude);
        let clear = CLEAR * part(pairs.iter().map(most).collect(), 0.9)?;
        let clear = pairs.iter().filter(|p| most(p) >= clear && p.0.amplitude.min(p.1.amplitude) > 0.0);
        let ratios: Vec<f64> = clear.map(|(a, b)| (a.amplitude / b.amplitude).ln()).collect();
        if ratios.len() < LEAST_BLOCKS {
            return None;
        }
        Some(0.5 * (part(ratios.clone(), 0.9)? - part(ratios, 0.1)?))
    }

    /// Share of the contrast of `coarser` lines the same way that these keep, in the middle of the blocks.
    #[must_use]
    pub fn kept(&self, coarser: &Self) -> Option<f64> {
        let shares = self.beside(coarser, |fine, coarse| fine.amplitude / coarse.amplitude)?;
        part(shares, 0.5)
    }

    /// Pixels a period of these lines takes where they stand closest (a tenth closer still), as `coarser` lines the
    /// same way foretell it: too fine ones cannot tell it themselves.
    #[must_use]
    pub fn closest_px(&self, coarser: &Self) -> Option<f64> {
        let times = self.periods / coarser.periods;
        let rate = part(self.beside(coarser, |_, coarse| coarse.rate)?, 0.9)?;
        (rate > 0.0).then(|| TAU / (times * rate))
    }

    fn pairs(&self, other: &Self) -> Vec<(Block, Block)> {
        self.blocks.iter().copied().zip(other.blocks.iter().copied()).collect()
    }

    /// Of every block that mirrors the coarser lines clearly.
    fn beside(&self, coarser: &Self, of: impl Fn(&Block, &Block) -> f64) -> Option<Vec<f64>> {
        let pairs = self.pairs(coarser);
        let clear = CLEAR * part(pairs.iter().map(|p| p.1.amplitude).collect(), 0.9)?;
        let seen: Vec<f64> =
            pairs.iter().filter(|p| p.1.amplitude >= clear && clear > 0.0).map(|(a, b)| of(a, b)).collect();
        (seen.len() >= LEAST_BLOCKS).then_some(seen)
    }
}

fn block(steps: &Steps, width: usize, (x0, y0): (usize, usize), side: usize) -> Block {
    let phasor = |x: usize, y: usize| {
        let (c, s) = steps.phasor(y * width + x);
        Complex::new(f64::from(c), f64::from(s))
    };
    let apart = (side - 1) / SAMPLES;
    let (mut amplitude, mut turns) = (0.0, [Complex::new(0.0, 0.0); 2]);
    for k in 0..SAMPLES * SAMPLES {
        let (x, y) = (x0 + (k % SAMPLES) * apart, y0 + (k / SAMPLES) * apart);
        let here = phasor(x, y);
        amplitude += here.norm();
        if k % RATE_EVERY != 0 {
            continue;
        }
        turns[0] += phasor(x + 1, y) * here.conj();
        turns[1] += phasor(x, y + 1) * here.conj();
    }
    let [across, down] = turns.map(|t| t.arg());
    Block { amplitude: amplitude / (SAMPLES * SAMPLES) as f64, rate: across.hypot(down) }
}

/// The value below which a share of the values lies.
fn part(mut values: Vec<f64>, share: f64) -> Option<f64> {
    values.retain(|v| v.is_finite());
    let at = (values.len().checked_sub(1)? as f64 * share).round() as usize;
    Some(*values.select_nth_unstable_by(at, f64::total_cmp).1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::photo::Photo;
    use crate::response::linear_table;

    /// Four photos of lines seen through a function of place and shift.
    fn seen(light: impl Fn(f64, f64, f64) -> f64) -> Vec<Photo> {
        let (width, height) = (500, 400);
        let photo = |shift: f64| {
            let level = |i: usize| 128.0 + 100.0 * light((i % width) as f64, (i / width) as f64, TAU * shift);
            let grey = (0..width * height).map(|i| level(i).round().clamp(0.0, 255.0) as u8).collect();
            Photo { width, height, grey, focal_35mm: None }
        };
        [0.0, 0.25, 0.5, 0.75].map(photo).to_vec()
    }

    fn contrast(photos: &[Photo], periods: f64) -> Contrast {
        let photos: Vec<&Photo> = photos.iter().collect();
        let table = linear_table(1.0);
        Contrast::of(&Steps::new(&photos, &[0.0, 0.25, 0.5, 0.75], periods, &table).unwrap())
    }

    #[test]
    fn two_mirrors_swing_and_one_does_not() {
        let wave = |rate: f64, at: f64, shift: f64| (rate * at + shift).cos();
        let one = |u: bool| contrast(&seen(|x, y, s| 0.9 * wave(0.2, if u { x } else { y }, s)), 1.0);
        assert!(one(true).swing(&one(false)).unwrap() < 0.02);
        let two = |u: bool| {
            let at = move |x: f64, y: f64| if u { x } else { y };
            contrast(&seen(|x, y, s| 0.6 * wave(0.2, at(x, y), s) + 0.3 * wave(0.24, at(x, y), s)), 1.0)
        };
        // The ratio of two waves with a second one half as strong swings between 1/3 and 3: ln 3 is 1.1.
        let swing = two(true).swing(&two(false)).unwrap();
        assert!((0.4..1.1).contains(&swing), "{swing}");
    }

    #[test]
    fn what_a_lens_keeps_and_how_close_lines_stand_is_told() {
        let lines = |rate: f64, size: f64| seen(move |x, _, s| size * (rate * x + s).cos());
        let (fine, coarse) = (contrast(&lines(0.6, 0.3), 12.0), contrast(&lines(0.05, 0.9), 1.0));
        let kept = fine.kept(&coarse).unwrap();
        assert!((kept - 1.0 / 3.0).abs() < 0.02, "{kept}");
        let px = fine.closest_px(&coarse).unwrap();
        // All rows are alike here: rounding to levels does not average out, and the closest tenth is a few percent off.
        assert!((px / (TAU / 0.6) - 1.0).abs() < 0.08, "{px}");
    }
}
