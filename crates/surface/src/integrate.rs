//! Slopes to height: masked, weighted least squares.
//!
//! For every pair of neighbouring cells that both hold slopes the height difference is asked to equal
//! the integral of a cubic through the four slopes around it (Li et al. 2013), of the trapezoid at rims,
//! weighted by the inverse variance of the two slopes' mean. The normal equations are a weighted graph
//! Laplacian (Southwell 1980; Hudgin and Fried order the same unknowns differently). They are solved by
//! conjugate gradients, preconditioned with one multigrid cycle on 2 x 2 aggregates.
//!
//! Limits: every connected area has a free constant of its own, so heights compare only within one area.
//! A low's depth is short by about `11/720 · step⁴ · z⁗`, 0.06 % for a Gaussian of σ = 3 cells.

use crate::grid::{Map, SlopeMap};
use rayon::prelude::*;

/// When the solver stops.
#[derive(Debug, Clone, Copy)]
pub struct IntegrateSettings {
    /// Residual norm over right-hand-side norm at which the solution is taken. 1e-6 leaves about a
    /// hundredth of a micrometre on a half-millimetre dent.
    pub tolerance: f64,
    /// Cycles after which it gives up improving.
    pub max_cycles: usize,
}

impl Default for IntegrateSettings {
    fn default() -> Self {
        Self { tolerance: 1e-6, max_cycles: 200 }
    }
}

/// Height from slopes, mm. `start` (a height map of the same grid) shortens the work when the slopes
/// changed little. Cells without slopes, or without a neighbour that has some, come out NaN.
pub fn integrate(slopes: &SlopeMap, start: Option<&Map>, settings: &IntegrateSettings) -> Map {
    let grid = slopes.grid;
    let fine = Level::from_slopes(slopes);
    let rhs = right_hand_side(slopes, &fine);
    let mut height: Vec<f64> = match start {
        Some(map) => map.values.iter().map(|&v| if v.is_finite() { f64::from(v) } else { 0.0 }).collect(),
        None => vec![0.0; grid.len()],
    };
    let levels = coarsen(fine);
    solve(&levels, &rhs, &mut height, settings);
    let values = height.iter().zip(&levels[0].diagonal).map(|(&h, &d)| if d > 0.0 { h as f32 } else { f32::NAN });
    Map { grid, values: values.collect() }
}

/// A weighted graph Laplacian on a rectangle: `right[i]` joins cell i to the next in x, `up[i]` to the
/// next in y; zero where there is no edge.
struct Level {
    nx: usize,
    ny: usize,
    right: Vec<f64>,
    up: Vec<f64>,
    diagonal: Vec<f64>,
    inverse: Vec<f64>,
}

impl Level {
    fn new(nx: usize, ny: usize, right: Vec<f64>, up: Vec<f64>) -> Self {
        let mut diagonal = vec![0.0; nx * ny];
        for iy in 0..ny {
            for ix in 0..nx {
                let i = iy * nx + ix;
                if ix + 1 < nx {
                    diagonal[i] += right[i];
                    diagonal[i + 1] += right[i];
                }
                if iy + 1 < ny {
                    diagonal[i] += up[i];
                    diagonal[i + nx] += up[i];
                }
            }
        }
        let inverse = diagonal.iter().map(|&d| if d > 0.0 { 1.0 / d } else { 0.0 }).collect();
        Self { nx, ny, right, up, diagonal, inverse }
    }

    fn from_slopes(s: &SlopeMap) -> Self {
        let (nx, ny) = (s.grid.nx, s.grid.ny);
        let reference = median_variance(s);
        let weight = |i: usize, j: usize| {
            if !s.is_read(i) || !s.is_read(j) {
                return 0.0;
            }
            let variance = 0.5 * (f64::from(s.sigma[i]).powi(2) + f64::from(s.sigma[j]).powi(2));
            reference / variance.max(reference * MIN_RELATIVE_VARIANCE)
        };
        let right = (0..nx * ny).map(|i| if i % nx + 1 < nx { weight(i, i + 1) } else { 0.0 }).collect();
        let up = (0..nx * ny).map(|i| if i / nx + 1 < ny { weight(i, i + nx) } else { 0.0 }).collect();
        Self::new(nx, ny, right, up)
    }

    /// `(Laplacian · x)[row]`, one row of cells.
    fn apply_row(&self, x: &[f64], iy: usize, out: &mut [f64]) {
        let nx = self.nx;
        let at = iy * nx;
        let (below, above) = (iy > 0, iy + 1 < self.ny);
        for ix in 0..nx {
            let i = at + ix;
            let mut sum = self.diagonal[i] * x[i];
            if ix > 0 {
                sum -= self.right[i - 1] * x[i - 1];
            }
            if ix + 1 < nx {
                sum -= self.right[i] * x[i + 1];
            }
            if below {
                sum -= self.up[i - nx] * x[i - nx];
            }
            if above {
                sum -= self.up[i] * x[i + nx];
            }
            out[ix] = sum;
        }
    }

    fn apply(&self, x: &[f64], out: &mut [f64]) {
        out.par_chunks_mut(self.nx).enumerate().with_min_len(32).for_each(|(iy, row)| self.apply_row(x, iy, row));
    }

    /// One damped Jacobi sweep: `x += ω D⁻¹ (b - A x)`.
    fn smooth(&self, b: &[f64], x: &mut Vec<f64>, scratch: &mut Vec<f64>) {
        let source: &[f64] = x;
        scratch.par_chunks_mut(self.nx).enumerate().with_min_len(32).for_each(|(iy, row)| {
            self.apply_row(source, iy, row);
            let at = iy * self.nx;
            for (ix, value) in row.iter_mut().enumerate() {
                let i = at + ix;
                *value = source[i] + JACOBI_DAMPING * self.inverse[i] * (b[i] - *value);
            }
        });
        std::mem::swap(x, scratch);
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
                if ix % 2 == 1 && ix + 1 < self.nx {
                    right[c] += 0.5 * self.right[i];
                }
                if iy % 2 == 1 && iy + 1 < self.ny {
                    up[c] += 0.5 * self.up[i];
                }
            }
        }
        Self::new(cx, cy, right, up)
    }
}

/// Damping that makes Jacobi a smoother of the five-point Laplacian (Trottenberg et al., Multigrid, 2.1).
const JACOBI_DAMPING: f64 = 0.8;
/// No cell may count more than a hundred ordinary ones.
const MIN_RELATIVE_VARIANCE: f64 = 0.01;
/// Levels stop here and are smoothed to death.
const COARSEST_CELLS: usize = 64;

fn median_variance(s: &SlopeMap) -> f64 {
    let mut all: Vec<f32> =
        (0..s.sigma.len()).step_by(7).filter(|&i| s.is_read(i)).map(|i| s.sigma[i] * s.sigma[i]).collect();
    if all.is_empty() {
        return 1.0;
    }
    let middle = all.len() / 2;
    let (_, m, _) = all.select_nth_unstable_by(middle, f32::total_cmp);
    f64::from(*m).max(1e-30)
}

fn right_hand_side(s: &SlopeMap, level: &Level) -> Vec<f64> {
    let (nx, ny) = (s.grid.nx, s.grid.ny);
    let mut b = vec![0.0; nx * ny];
    for i in 0..nx * ny {
        let (ix, iy) = (i % nx, i / nx);
        if level.right[i] > 0.0 {
            let d = level.right[i] * rise(s, &s.dzdx, i, 1, ix > 0 && ix + 2 < nx);
            b[i] -= d;
            b[i + 1] += d;
        }
        if level.up[i] > 0.0 {
            let d = level.up[i] * rise(s, &s.dzdy, i, nx, iy > 0 && iy + 2 < ny);
            b[i] -= d;
            b[i + nx] += d;
        }
    }
    b
}

/// Height difference from cell `i` to the next along `stride`, mm: a cubic through four slopes where the two
/// outer ones exist (`inside`) and were read, else the trapezoid rule.
fn rise(s: &SlopeMap, slope: &[f32], i: usize, stride: usize, inside: bool) -> f64 {
    let near = f64::from(slope[i]) + f64::from(slope[i + stride]);
    if inside && s.is_read(i - stride) && s.is_read(i + 2 * stride) {
        let far = f64::from(slope[i - stride]) + f64::from(slope[i + 2 * stride]);
        s.grid.step_mm * (13.0 * near - far) / 24.0
    } else {
        0.5 * s.grid.step_mm * near
    }
}

fn coarsen(fine: Level) -> Vec<Level> {
    let mut levels = vec![fine];
    while levels.last().is_some_and(|l| l.nx * l.ny > COARSEST_CELLS) {
        let next = levels.last().map(Level::coarser);
        levels.extend(next);
    }
    levels
}

/// Preconditioned conjugate gradients (Saad, Iterative Methods, algorithm 9.1).
fn solve(levels: &[Level], rhs: &[f64], x: &mut [f64], settings: &IntegrateSettings) {
    let fine = &levels[0];
    let n = rhs.len();
    let mut work = vec![0.0; n];
    fine.apply(x, &mut work);
    let mut r: Vec<f64> = rhs.iter().zip(&work).map(|(b, a)| b - a).collect();
    let target = settings.tolerance * dot(rhs, rhs).sqrt();
    let mut z = vec![0.0; n];
    let mut scratch = Scratch::new(levels);
    let (mut p, mut rz_old) = (vec![0.0; n], 0.0);
    for cycle in 0..settings.max_cycles {
        if dot(&r, &r).sqrt() <= target {
            break;
        }
        precondition(levels, &r, &mut z, &mut scratch);
        let rz = dot(&r, &z);
        let beta = if cycle == 0 { 0.0 } else { rz / rz_old };
        p.par_iter_mut().zip(&z).with_min_len(4096).for_each(|(p, z)| *p = z + beta * *p);
        fine.apply(&p, &mut work);
        let curvature = dot(&p, &work);
        if curvature <= 0.0 {
            break;
        }
        let alpha = rz / curvature;
        x.par_iter_mut().zip(&p).with_min_len(4096).for_each(|(x, p)| *x += alpha * p);
        r.par_iter_mut().zip(&work).with_min_len(4096).for_each(|(r, w)| *r -= alpha * w);
        rz_old = rz;
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    // Fixed chunks keep the sum, and so the whole reading, the same on any number of cores.
    let parts: Vec<f64> =
        a.par_chunks(16384).zip(b.par_chunks(16384)).map(|(a, b)| a.iter().zip(b).map(|(x, y)| x * y).sum()).collect();
    parts.iter().sum()
}

struct Scratch {
    x: Vec<Vec<f64>>,
    b: Vec<Vec<f64>>,
    t: Vec<Vec<f64>>,
}

impl Scratch {
    fn new(levels: &[Level]) -> Self {
        let all = || levels.iter().map(|l| vec![0.0; l.nx * l.ny]).collect();
        Self { x: all(), b: all(), t: all() }
    }
}

/// One symmetric V-cycle: two sweeps down, two sweeps up.
fn precondition(levels: &[Level], r: &[f64], z: &mut [f64], s: &mut Scratch) {
    s.b[0].copy_from_slice(r);
    for k in 0..levels.len() {
        s.x[k].fill(0.0);
        let sweeps = if k + 1 == levels.len() { 30 } else { 2 };
        for _ in 0..sweeps {
            levels[k].smooth(&s.b[k], &mut s.x[k], &mut s.t[k]);
        }
        if k + 1 < levels.len() {
            levels[k].apply(&s.x[k], &mut s.t[k]);
            let (fine_b, coarse_b) = s.b.split_at_mut(k + 1);
            restrict(&levels[k], &fine_b[k], &s.t[k], &mut coarse_b[0], levels[k + 1].nx);
        }
    }
    for k in (0..levels.len() - 1).rev() {
        let (fine_x, coarse_x) = s.x.split_at_mut(k + 1);
        let (nx, cx) = (levels[k].nx, levels[k + 1].nx);
        for (i, x) in fine_x[k].iter_mut().enumerate() {
            *x += coarse_x[0][(i / nx / 2) * cx + (i % nx) / 2];
        }
        for _ in 0..2 {
            levels[k].smooth(&s.b[k], &mut s.x[k], &mut s.t[k]);
        }
    }
    z.copy_from_slice(&s.x[0]);
}

fn restrict(level: &Level, b: &[f64], ax: &[f64], coarse: &mut [f64], cx: usize) {
    coarse.fill(0.0);
    for iy in 0..level.ny {
        for ix in 0..level.nx {
            let i = iy * level.nx + ix;
            coarse[(iy / 2) * cx + ix / 2] += b[i] - ax[i];
        }
    }
}
