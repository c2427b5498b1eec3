//! Brightness and amplitude of mirrored lines, tile by tile: paint and light change slowly over a panel.

use super::decode::View;
use rayon::prelude::*;

/// Side of a tile, px.
const SIDE: usize = 4;
/// Tiles to each side that are taken together: about a pitch of the mirror image.
const REACH: usize = 1;

/// Local brightness and amplitude.
pub(super) struct Tiles {
    nx: usize,
    ny: usize,
    /// Variance over the photos.
    variance: Vec<f32>,
    lines: Vec<bool>,
    local: Vec<(f32, f32)>,
}

impl Tiles {
    pub fn new(view: &View) -> Self {
        let height = view.pixels() / view.width;
        let (nx, ny) = (view.width / SIDE, height / SIDE);
        let n = view.photos.len();
        let variance = each(nx, ny, |tile| {
            let mut levels = vec![0f32; n];
            let of = |i: usize, levels: &mut [f32]| {
                view.levels(i, levels);
                let mean = levels.iter().sum::<f32>() / n as f32;
                levels.iter().map(|v| (v - mean).powi(2)).sum::<f32>() / (n - 1) as f32
            };
            pixels(tile, nx, view.width).map(|i| of(i, &mut levels)).sum::<f32>() / (SIDE * SIDE) as f32
        });
        Self { nx, ny, variance, lines: vec![false; nx * ny], local: vec![(0.0, 1.0); nx * ny] }
    }

    /// Marks the tiles that mirror lines: `share` of the ordinary variance, and not under `least`.
    pub fn find_lines(&mut self, share: f32, least: f32) {
        let around = self.together(|t| [self.variance[t], 1.0]);
        let around: Vec<f32> = around.iter().map(|[v, n]| v / n).collect();
        let mut strong: Vec<f32> = around.iter().copied().filter(|&v| v > least).collect();
        if strong.is_empty() {
            return;
        }
        let middle = strong.len() / 2;
        let limit = least.max(share * *strong.select_nth_unstable_by(middle, f32::total_cmp).1);
        // A tile must change itself too, else the rim of a tag would count.
        self.lines = around.iter().zip(&self.variance).map(|(a, v)| *a > limit && *v > 0.3 * limit).collect();
    }

    /// Least squares of `level = A + B wave` over each tile and its neighbours.
    pub fn regress<'w>(&mut self, view: &View, wave: impl Fn(&[f32], (f32, f32)) -> &'w [f32] + Sync) {
        let n = view.photos.len();
        let sums = each(self.nx, self.ny, |tile| {
            let mut sums = [0f32; 5];
            if !self.lines[tile] {
                return sums;
            }
            let mut levels = vec![0f32; n];
            for i in pixels(tile, self.nx, view.width) {
                view.levels(i, &mut levels);
                let wave = wave(&levels, self.local[tile]);
                for (w, v) in wave.iter().zip(&levels) {
                    let add = [1.0, *w, w * w, *v, w * v];
                    sums.iter_mut().zip(add).for_each(|(s, a)| *s += a);
                }
            }
            sums
        });
        let around = self.together(|t| sums[t]);
        for (t, [one, w, ww, v, wv]) in around.into_iter().enumerate() {
            let determinant = one * ww - w * w;
            let b = (one * wv - w * v) / determinant;
            if self.lines[t] && b.is_finite() && b > 0.0 {
                self.local[t] = ((v - b * w) / one, b);
            } else {
                self.lines[t] = false;
            }
        }
    }

    /// Brightness and amplitude at a pixel, where it mirrors lines.
    pub fn local(&self, x: usize, y: usize) -> Option<(f32, f32)> {
        let (tx, ty) = (x / SIDE, y / SIDE);
        let tile = ty * self.nx + tx;
        (tx < self.nx && ty < self.ny && self.lines[tile]).then(|| self.local[tile])
    }

    fn together<const K: usize>(&self, of: impl Fn(usize) -> [f32; K] + Sync + Send) -> Vec<[f32; K]> {
        each(self.nx, self.ny, |tile| {
            let (x, y) = (tile % self.nx, tile / self.nx);
            let mut sum = [0f32; K];
            for ty in y.saturating_sub(REACH)..=(y + REACH).min(self.ny - 1) {
                for tx in x.saturating_sub(REACH)..=(x + REACH).min(self.nx - 1) {
                    sum.iter_mut().zip(of(ty * self.nx + tx)).for_each(|(s, v)| *s += v);
                }
            }
            sum
        })
    }
}

fn each<T: Send>(nx: usize, ny: usize, of: impl Fn(usize) -> T + Sync + Send) -> Vec<T> {
    (0..nx * ny).into_par_iter().with_min_len(512).map(of).collect()
}

fn pixels(tile: usize, nx: usize, width: usize) -> impl Iterator<Item = usize> {
    let first = (tile / nx) * SIDE * width + (tile % nx) * SIDE;
    (0..SIDE * SIDE).map(move |k| first + (k / SIDE) * width + k % SIDE)
}
