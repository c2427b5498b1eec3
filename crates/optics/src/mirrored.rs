//! Phases of several periods to the board point every pixel mirrors.
//!
//! The finest phase of each axis is unwrapped over the region, then each connected area takes the one
//! order on which most of its pixels agree by the coarser phases. A light paint scatters the board's own
//! light and shifts coarse phases, so single pixels may vote wrong; areas do not.

use crate::bundle::Mirrored;
use crate::demodulate::Phase;
use crate::pixel::Pixel;
use crate::unwrap::unwrap;
use nalgebra::Vector2;
use rayon::prelude::*;
use std::collections::HashMap;
use std::f32::consts::TAU;

/// The board point of every pixel of the panel photo.
#[derive(Debug, Clone)]
pub struct BoardField {
    /// Photo width, px.
    pub width: usize,
    /// Photo height, px.
    pub height: usize,
    /// Board u, mm; NaN where no board point is known.
    pub u_mm: Vec<f32>,
    /// Board v, mm; NaN where no board point is known.
    pub v_mm: Vec<f32>,
    /// One-sigma noise of each, mm.
    pub sigma_mm: Vec<f32>,
    /// Pixels in which both axes stood out from the noise but their order stayed unknown.
    pub undecided: usize,
}

impl BoardField {
    /// Board point and noise at a place of the photo, bilinear; `None` next to an unknown pixel.
    pub fn sample(&self, p: &Pixel) -> Option<(Vector2<f64>, f64)> {
        let (fx, fy) = (p.x - 0.5, p.y - 0.5);
        if !(fx >= 0.0 && fy >= 0.0) {
            return None;
        }
        let (ix, iy) = (fx as usize, fy as usize);
        if ix + 1 >= self.width || iy + 1 >= self.height {
            return None;
        }
        let (tx, ty) = (fx - ix as f64, fy - iy as f64);
        let i = iy * self.width + ix;
        let mix = |a: &[f32]| {
            let (p, q) = (f64::from(a[i]), f64::from(a[i + 1]));
            let (r, s) = (f64::from(a[i + self.width]), f64::from(a[i + self.width + 1]));
            (p * (1.0 - tx) + q * tx) * (1.0 - ty) + (r * (1.0 - tx) + s * tx) * ty
        };
        let (u, v) = (mix(&self.u_mm), mix(&self.v_mm));
        (u.is_finite() && v.is_finite()).then(|| (Vector2::new(u, v), f64::from(self.sigma_mm[i])))
    }

    /// About `count` pixels on a lattice, each with its board point.
    pub fn lattice(&self, count: usize) -> Vec<Mirrored> {
        let known = self.u_mm.iter().filter(|u| u.is_finite()).count();
        let step = ((known as f64 / count as f64).sqrt() as usize).max(1);
        let mut out = Vec::new();
        for y in (step / 2..self.height).step_by(step) {
            for x in (step / 2..self.width).step_by(step) {
                let i = y * self.width + x;
                if self.u_mm[i].is_finite() {
                    out.push(Mirrored {
                        pixel: Pixel::new(x as f64 + 0.5, y as f64 + 0.5),
                        board_mm: Vector2::new(f64::from(self.u_mm[i]), f64::from(self.v_mm[i])),
                    });
                }
            }
        }
        out
    }
}

/// A modulation must exceed this many times its noise.
const MODULATION_OVER_NOISE: f64 = 3.0;
/// And this share of the ordinary modulation of the mirrored area.
const MODULATION_SHARE: f32 = 0.3;
/// Pixels taken off the rim of the mask, where a pixel sees half sticker and half board.
const RIM_PX: usize = 2;
/// Areas of fewer pixels are specks.
const SMALLEST_AREA_PX: usize = 200;

/// Joins the phases of both axes, each sorted from coarse to fine, into board points.
/// `size_mm` is the lit width and height.
pub fn board_field(u: &[Phase], v: &[Phase], width: usize, size_mm: (f64, f64)) -> BoardField {
    let (Some(fine_u), Some(fine_v)) = (u.last(), v.last()) else {
        unreachable!("callers give at least one phase an axis")
    };
    let pixels = fine_u.phase.len();
    let height = pixels / width;
    let (mask_u, mask_v) = (stands_out(fine_u), stands_out(fine_v));
    let both: Vec<bool> = mask_u.iter().zip(&mask_v).map(|(a, b)| *a && *b).collect();
    let mask = erode(&clean(&both, width), width, RIM_PX);
    let ((s_u, lost_u), (s_v, lost_v)) = rayon::join(|| fractions(u, &mask, width), || fractions(v, &mask, width));
    let to_mm = |s: Vec<f32>, size: f64| -> Vec<f32> { s.into_iter().map(|s| (s - 0.5) * size as f32).collect() };
    let noise = |phase: &Phase, size: f64, i: usize| phase.sigma(i) * size / (f64::from(TAU) * phase.periods);
    let sigma_mm = (0..pixels)
        .into_par_iter()
        .with_min_len(4096)
        .map(|i| if mask[i] { noise(fine_u, size_mm.0, i).hypot(noise(fine_v, size_mm.1, i)) as f32 } else { f32::NAN })
        .collect();
    let (mut u_mm, mut v_mm) = (to_mm(s_u, size_mm.0), to_mm(s_v, size_mm.1));
    for i in 0..pixels {
        if !(u_mm[i].is_finite() && v_mm[i].is_finite()) {
            (u_mm[i], v_mm[i]) = (f32::NAN, f32::NAN);
        }
    }
    BoardField { width, height, u_mm, v_mm, sigma_mm, undecided: lost_u.max(lost_v) }
}

fn stands_out(phase: &Phase) -> Vec<bool> {
    let floor = (MODULATION_OVER_NOISE * (2.0 / phase.steps as f64).sqrt() * phase.noise) as f32;
    let mut strong: Vec<f32> = phase.modulation.iter().step_by(31).copied().filter(|&m| m > 2.0 * floor).collect();
    let ordinary = if strong.is_empty() {
        0.0
    } else {
        let middle = strong.len() / 2;
        *strong.select_nth_unstable_by(middle, f32::total_cmp).1
    };
    let limit = floor.max(MODULATION_SHARE * ordinary);
    phase.modulation.iter().map(|&m| m > limit).collect()
}

/// Majority of the 3 x 3 neighbourhood: single noisy pixels neither poke holes nor make specks.
fn clean(mask: &[bool], width: usize) -> Vec<bool> {
    let height = mask.len() / width;
    let mut out = vec![false; mask.len()];
    out.par_chunks_mut(width).enumerate().for_each(|(y, row)| {
        if y == 0 || y + 1 >= height {
            return;
        }
        for x in 1..width - 1 {
            let i = y * width + x;
            let count: usize = [i - width, i, i + width]
                .iter()
                .map(|&c| usize::from(mask[c - 1]) + usize::from(mask[c]) + usize::from(mask[c + 1]))
                .sum();
            row[x] = count >= 5;
        }
    });
    out
}

fn erode(mask: &[bool], width: usize, by: usize) -> Vec<bool> {
    let height = mask.len() / width;
    let mut across = vec![false; mask.len()];
    across.par_chunks_mut(width).enumerate().for_each(|(y, row)| {
        for x in by..width - by {
            row[x] = (x - by..=x + by).all(|k| mask[y * width + k]);
        }
    });
    let mut out = vec![false; mask.len()];
    out.par_chunks_mut(width).enumerate().for_each(|(y, row)| {
        if y >= by && y + by < height {
            for x in 0..width {
                row[x] = (y - by..=y + by).all(|k| across[k * width + x]);
            }
        }
    });
    out
}

/// Fraction of the board per pixel, and how many pixels stayed without an order.
fn fractions(phases: &[Phase], mask: &[bool], width: usize) -> (Vec<f32>, usize) {
    let Some((fine, coarse)) = phases.split_last() else { return (Vec::new(), 0) };
    let (mut phase, label) = unwrap(&fine.phase, mask, width);
    let mut votes: HashMap<u32, HashMap<i32, usize>> = HashMap::new();
    for i in 0..phase.len() {
        if label[i] != u32::MAX && i % 3 == 0 {
            let turns = (absolute(coarse, fine, i) - phase[i]) / TAU;
            *votes.entry(label[i]).or_default().entry(turns.round() as i32).or_default() += 1;
        }
    }
    let order: HashMap<u32, i32> = votes
        .into_iter()
        .filter(|(_, v)| v.values().sum::<usize>() * 3 >= SMALLEST_AREA_PX)
        .filter_map(|(l, v)| v.into_iter().max_by_key(|&(turns, n)| (n, turns)).map(|(turns, _)| (l, turns)))
        .collect();
    let mut lost = 0;
    let scale = 1.0 / (TAU * fine.periods as f32);
    for (value, l) in phase.iter_mut().zip(&label) {
        *value = match order.get(l) {
            Some(&turns) => (*value + TAU * turns as f32) * scale,
            None => {
                lost += usize::from(*l != u32::MAX);
                f32::NAN
            }
        };
    }
    (phase, lost)
}

/// Fine phase with the order that the coarser phases give at this one pixel, coarse to fine.
fn absolute(coarse: &[Phase], fine: &Phase, i: usize) -> f32 {
    let mut known: Option<(f32, f64)> = None;
    for phase in coarse.iter().chain([fine]) {
        let value = match known {
            None => phase.phase[i].rem_euclid(TAU),
            Some((before, periods)) => {
                let guess = before * (phase.periods / periods) as f32;
                phase.phase[i] + TAU * ((guess - phase.phase[i]) / TAU).round()
            }
        };
        known = Some((value, phase.periods));
    }
    known.map_or(0.0, |k| k.0)
}
