//! Where the board is mirrored: pixels whose sines stand out from the noise along both axes.

use crate::demodulate::Phase;
use rayon::prelude::*;

/// A modulation must exceed this many times its noise.
const MODULATION_OVER_NOISE: f64 = 3.0;
/// And this share of the ordinary modulation of the mirrored area.
const MODULATION_SHARE: f32 = 0.3;
/// Pixels taken off the rim of the mask, where a pixel sees half sticker and half board.
const RIM_PX: usize = 2;

/// Pixels that mirror the board, less a rim.
pub(crate) fn mirrored_mask(u: &Phase, v: &Phase, width: usize) -> Vec<bool> {
    let (least_u, least_v) = (least_modulation(u), least_modulation(v));
    let both: Vec<bool> =
        u.modulation.iter().zip(&v.modulation).map(|(u, v)| (*u > least_u) & (*v > least_v)).collect();
    erode(&clean(&both, width), width, RIM_PX)
}

/// Modulation above which a pixel stands out.
fn least_modulation(phase: &Phase) -> f32 {
    let floor = (MODULATION_OVER_NOISE * (2.0 / phase.steps as f64).sqrt() * phase.noise) as f32;
    let mut strong: Vec<f32> = phase.modulation.iter().step_by(31).copied().filter(|&m| m > 2.0 * floor).collect();
    if strong.is_empty() {
        return floor;
    }
    let middle = strong.len() / 2;
    let ordinary = *strong.select_nth_unstable_by(middle, f32::total_cmp).1;
    floor.max(MODULATION_SHARE * ordinary)
}

/// Majority of the 3 x 3 neighbourhood: single noisy pixels neither poke holes nor make specks.
pub(crate) fn clean(mask: &[bool], width: usize) -> Vec<bool> {
    let height = mask.len() / width;
    let mut out = vec![false; mask.len()];
    out.par_chunks_mut(width).enumerate().filter(|(y, _)| *y > 0 && y + 1 < height).for_each(|(y, row)| {
        let [above, here, below] = [y - 1, y, y + 1].map(|k| &mask[k * width..(k + 1) * width]);
        let column = |x: usize| u8::from(above[x]) + u8::from(here[x]) + u8::from(below[x]);
        for x in 1..width - 1 {
            row[x] = column(x - 1) + column(x) + column(x + 1) >= 5;
        }
    });
    out
}

/// Takes `by` pixels off the rim of a mask.
pub(crate) fn erode(mask: &[bool], width: usize, by: usize) -> Vec<bool> {
    let height = mask.len() / width;
    let mut across = vec![false; mask.len()];
    across.par_chunks_mut(width).zip(mask.par_chunks(width)).for_each(|(row, mask)| {
        let inner = &mut row[by..width - by];
        inner.copy_from_slice(&mask[by..width - by]);
        for k in (0..=2 * by).filter(|&k| k != by) {
            inner.iter_mut().zip(&mask[k..]).for_each(|(r, m)| *r &= m);
        }
    });
    let mut out = vec![false; mask.len()];
    out.par_chunks_mut(width).enumerate().filter(|(y, _)| *y >= by && y + by < height).for_each(|(y, row)| {
        row.copy_from_slice(&across[y * width..(y + 1) * width]);
        for k in (y - by..=y + by).filter(|&k| k != y) {
            row.iter_mut().zip(&across[k * width..]).for_each(|(r, m)| *r &= m);
        }
    });
    out
}
