//! A weighted graph Laplacian on a grid, and one multigrid cycle on 2 x 2 aggregates that nearly inverts it.
//!
//! Weights are kept in single precision, and so is all inside the cycle: it only has to point the way.

use rayon::prelude::*;
use std::ops::{Add, Mul, Sub};

/// A Laplacian on a rectangle: `right[i]` joins cell i to the next in x, `up[i]` to the next in y; zero where there is
/// no edge, so in the last column and the last row.
pub(crate) struct Level {
    pub nx: usize,
    pub ny: usize,
    pub right: Vec<f32>,
    pub up: Vec<f32>,
    /// A row of no edges: what lies below the first.
    none: Vec<f32>,
}

/// Single or double precision.
pub(crate) trait Real:
    Copy + Send + Sync + From<f32> + Add<Output = Self> + Sub<Output = Self> + Mul<Output = Self>
{
}
impl Real for f32 {}
impl Real for f64 {}

/// Rows that one core takes at least.
const ROWS: usize = 32;

impl Level {
    pub fn new(nx: usize, ny: usize, right: Vec<f32>, up: Vec<f32>) -> Self {
        Self { nx, ny, right, up, none: vec![0.0; nx] }
    }

    /// Of every cell in a row: the sum of its four weights, and the sum of weights times neighbours.
    fn around<T: Real>(&self, x: &[T], iy: usize, weight: &mut [T], sum: &mut [T]) {
        let (nx, at) = (self.nx, iy * self.nx);
        let (here, right, up) = (&x[at..at + nx], &self.right[at..at + nx], &self.up[at..at + nx]);
        let (down, below) = if iy > 0 { (&self.up[at - nx..at], &x[at - nx..at]) } else { (&self.none[..nx], here) };
        let above = if iy + 1 < self.ny { &x[at + nx..at + 2 * nx] } else { here };
        let (weight, sum) = (&mut weight[..nx], &mut sum[..nx]);
        for ix in 0..nx {
            let (u, d) = (T::from(up[ix]), T::from(down[ix]));
            weight[ix] = u + d + T::from(right[ix]);
            sum[ix] = u * above[ix] + d * below[ix];
        }
        for ix in 1..nx {
            let w = T::from(right[ix - 1]);
            weight[ix] = weight[ix] + w;
            sum[ix] = sum[ix] + w * here[ix - 1];
            sum[ix - 1] = sum[ix - 1] + w * here[ix];
        }
    }

    /// `Laplacian · x`.
    pub fn apply(&self, x: &[f64], out: &mut [f64]) {
        let nx = self.nx;
        out.par_chunks_mut(nx).enumerate().with_min_len(ROWS).for_each_init(
            || (vec![0.0; nx], vec![0.0; nx]),
            |(weight, sum), (iy, out)| {
                let here = &x[iy * nx..(iy + 1) * nx];
                self.around(x, iy, weight, sum);
                for ix in 0..nx {
                    out[ix] = weight[ix] * here[ix] - sum[ix];
                }
            },
        );
    }

    /// Whether a cell has any edge.
    pub fn is_joined(&self, i: usize) -> bool {
        let left = i % self.nx > 0 && self.right[i - 1] > 0.0;
        let below = i >= self.nx && self.up[i - self.nx] > 0.0;
        left || below || self.right[i] > 0.0 || self.up[i] > 0.0
    }

    /// One damped Jacobi sweep: `out = x + ω D⁻¹ (b - A x)`.
    fn sweep(&self, b: &[f32], x: &[f32], out: &mut [f32]) {
        let nx = self.nx;
        out.par_chunks_mut(nx).enumerate().with_min_len(ROWS).for_each_init(
            || (vec![0.0; nx], vec![0.0; nx]),
            |(weight, sum), (iy, out)| {
                let (here, b) = (&x[iy * nx..(iy + 1) * nx], &b[iy * nx..(iy + 1) * nx]);
                self.around(x, iy, weight, sum);
                for ix in 0..nx {
                    let left = b[ix] + sum[ix] - weight[ix] * here[ix];
                    out[ix] = here[ix] + DAMPING * left / weight[ix].max(f32::MIN_POSITIVE);
                }
            },
        );
    }

    /// `b - A x`, summed over the 2 x 2 cells that are one on the next level.
    fn restrict(&self, b: &[f32], x: &[f32], coarse: &mut [f32]) {
        let nx = self.nx;
        coarse.par_chunks_mut(nx.div_ceil(2)).enumerate().with_min_len(ROWS / 2).for_each_init(
            || (vec![0.0; nx], vec![0.0; nx]),
            |(weight, sum), (cy, coarse)| {
                coarse.fill(0.0);
                for iy in 2 * cy..(2 * cy + 2).min(self.ny) {
                    let (here, b) = (&x[iy * nx..(iy + 1) * nx], &b[iy * nx..(iy + 1) * nx]);
                    self.around(x, iy, weight, sum);
                    for ix in 0..nx {
                        sum[ix] += b[ix] - weight[ix] * here[ix];
                    }
                    coarse.iter_mut().zip(sum.chunks(2)).for_each(|(c, pair)| *c += pair.iter().sum::<f32>());
                }
            },
        );
    }

    /// Joins 2 x 2 cells. Halving the summed weights undoes the overestimate that piecewise constant
    /// corrections would otherwise cause (it is the five-point operator of the doubled step).
    fn coarser(&self) -> Self {
        let (cx, cy) = (self.nx.div_ceil(2), self.ny.div_ceil(2));
        let (mut right, mut up) = (vec![0.0; cx * cy], vec![0.0; cx * cy]);
        for iy in 0..self.ny {
            for ix in 0..self.nx {
                let i = iy * self.nx + ix;
                let c = (iy / 2) * cx + ix / 2;
                if ix % 2 == 1 {
                    right[c] += 0.5 * self.right[i];
                }
                if iy % 2 == 1 {
                    up[c] += 0.5 * self.up[i];
                }
            }
        }
        Self::new(cx, cy, right, up)
    }
}

/// Damping that makes Jacobi a smoother of the five-point Laplacian (Trottenberg et al., Multigrid, 2.1).
const DAMPING: f32 = 0.8;
/// Levels stop here and are smoothed to death.
const COARSEST_CELLS: usize = 64;
const COARSEST_SWEEPS: usize = 30;

/// All levels with what the cycle works on.
pub(crate) struct Cycle {
    levels: Vec<Level>,
    x: Vec<Vec<f32>>,
    b: Vec<Vec<f32>>,
    other: Vec<Vec<f32>>,
}

impl Cycle {
    pub fn new(fine: Level) -> Self {
        let mut levels = vec![fine];
        while levels.last().is_some_and(|l| l.nx * l.ny > COARSEST_CELLS) {
            let next = levels.last().map(Level::coarser);
            levels.extend(next);
        }
        let all = || levels.iter().map(|l| vec![0.0; l.nx * l.ny]).collect();
        Self { x: all(), b: all(), other: all(), levels }
    }

    /// The Laplacian itself.
    pub fn fine(&self) -> &Level {
        &self.levels[0]
    }

    /// One symmetric V-cycle for the right-hand side `r`: two sweeps down, two sweeps up.
    pub fn run(&mut self, r: &[f64]) -> &[f32] {
        self.b[0].par_iter_mut().zip(r).with_min_len(16384).for_each(|(b, r)| *b = *r as f32);
        let last = self.levels.len() - 1;
        for k in 0..=last {
            self.x[k].fill(0.0);
            self.sweeps(k, if k == last { COARSEST_SWEEPS } else { 2 });
            if k < last {
                let (fine, coarse) = self.b.split_at_mut(k + 1);
                self.levels[k].restrict(&fine[k], &self.x[k], &mut coarse[0]);
            }
        }
        for k in (0..last).rev() {
            let (nx, cx) = (self.levels[k].nx, self.levels[k + 1].nx);
            let (fine, coarse) = self.x.split_at_mut(k + 1);
            fine[k].par_chunks_mut(nx).enumerate().with_min_len(ROWS).for_each(|(iy, row)| {
                let coarse = &coarse[0][iy / 2 * cx..(iy / 2 + 1) * cx];
                row.chunks_mut(2).zip(coarse).for_each(|(pair, c)| pair.iter_mut().for_each(|x| *x += c));
            });
            self.sweeps(k, 2);
        }
        &self.x[0]
    }

    fn sweeps(&mut self, k: usize, count: usize) {
        for _ in 0..count {
            self.levels[k].sweep(&self.b[k], &self.x[k], &mut self.other[k]);
            std::mem::swap(&mut self.x[k], &mut self.other[k]);
        }
    }
}
