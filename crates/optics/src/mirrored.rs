//! The board point every pixel mirrors, from the patterns of both axes.

use crate::bundle::Mirrored;
use crate::demodulate::Phase;
use crate::mask::mirrored_mask;
use crate::orders::board_fraction;
use crate::pixel::Pixel;
use crate::steps::Steps;
use nalgebra::Vector2;
use rayon::prelude::*;
use std::f64::consts::TAU;

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

/// Joins the patterns of both axes, each sorted from coarse to fine, into board points.
/// `size_mm` is the lit width and height.
pub fn board_field(u: &[Steps], v: &[Steps], width: usize, size_mm: (f64, f64)) -> BoardField {
    let (Some((last_u, coarse_u)), Some((last_v, coarse_v))) = (u.split_last(), v.split_last()) else {
        unreachable!("callers give at least one pattern an axis")
    };
    let (fine_u, fine_v) = rayon::join(|| last_u.demodulate(), || last_v.demodulate());
    let mask = mirrored_mask(&fine_u, &fine_v, width);
    let sigma_mm = board_sigma(&fine_u, &fine_v, &mask, size_mm);
    let ((mut u_mm, lost_u), (mut v_mm, lost_v)) = rayon::join(
        || board_fraction(&fine_u, coarse_u, &mask, width),
        || board_fraction(&fine_v, coarse_v, &mask, width),
    );
    u_mm.par_iter_mut().zip(&mut v_mm).with_min_len(4096).for_each(|(u, v)| {
        (*u, *v) = if (*u + *v).is_finite() {
            ((*u - 0.5) * size_mm.0 as f32, (*v - 0.5) * size_mm.1 as f32)
        } else {
            (f32::NAN, f32::NAN)
        };
    });
    BoardField { width, height: mask.len() / width, u_mm, v_mm, sigma_mm, undecided: lost_u.max(lost_v) }
}

/// One-sigma noise of the board points, both axes together, mm; NaN outside the mask.
fn board_sigma(u: &Phase, v: &Phase, mask: &[bool], size_mm: (f64, f64)) -> Vec<f32> {
    let per_modulation = |phase: &Phase, size: f64| {
        let at_one = (2.0 / phase.steps as f64).sqrt() * phase.noise;
        (at_one * size / (TAU * phase.periods)) as f32
    };
    let (a, b) = (per_modulation(u, size_mm.0), per_modulation(v, size_mm.1));
    let sigma = |i: usize| {
        let (x, y) = (a / u.modulation[i].max(1e-9), b / v.modulation[i].max(1e-9));
        if mask[i] { (x * x + y * y).sqrt() } else { f32::NAN }
    };
    (0..mask.len()).into_par_iter().with_min_len(4096).map(sigma).collect()
}
