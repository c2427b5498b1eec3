//! Steps of a slid line board from how alike its photos are.
//!
//! A pixel of phase φ shows `g_k (A + B p(φ + δ_k))` in photo k. Over all pixels, whose phases cover the
//! pitch evenly, the covariance of two photos is `Σ_h P_h cos h(δ_j - δ_k)` with `P_h` the power of the
//! profile's harmonics: it depends on the steps alone, not on the panel. Taking every pixel's mean over the photos off first removes
//! paint, tags and surroundings; the model is centred in the same way. The first guess are the two leading
//! principal components (Vargas, Quiroga, Belenguer 2011), whose rows lie on a circle; the fit is damped
//! least squares over steps, profile, power and noise.
//!
//! Limits: the direction of sliding cannot be known from photos alone (φ, δ and -φ, -δ look the same);
//! the first photo's step is zero.

use super::profile::Profile;
use nalgebra::{DMatrix, DVector};
use std::f64::consts::TAU;

/// Steps and profile found from a covariance.
#[derive(Debug, Clone)]
pub struct Fit {
    /// Step of each photo, rad, the first 0.
    pub steps: Vec<f64>,
    /// The board's profile.
    pub profile: Profile,
}

/// Photos by photos covariance, each pixel's mean over the photos taken off, from pixel values in rows of `n`.
pub fn centred_covariance(rows: &[f64], n: usize) -> DMatrix<f64> {
    let mut c = DMatrix::<f64>::zeros(n, n);
    let mut y = vec![0.0; n];
    for row in rows.chunks_exact(n) {
        let mean = row.iter().sum::<f64>() / n as f64;
        y.iter_mut().zip(row).for_each(|(y, v)| *y = v - mean);
        for j in 0..n {
            for k in 0..=j {
                c[(j, k)] += y[j] * y[k];
            }
        }
    }
    let count = (rows.len() / n).max(1) as f64;
    DMatrix::from_fn(n, n, |j, k| c[(j.max(k), j.min(k))] / count)
}

/// Fits steps and profile to a centred covariance of three or more photos.
pub fn fit_steps(c: &DMatrix<f64>) -> Option<Fit> {
    let n = c.nrows();
    let power = c.trace() / (n as f64 - 1.0);
    if n < 3 || !(power > 0.0) {
        return None;
    }
    let c = c / power;
    let firsts = principal_steps(&c);
    firsts
        .iter()
        .flat_map(|first| STARTS.iter().map(move |softness| (first, *softness)))
        .map(|(first, softness)| {
            let mut p = DVector::from_element(n + 3, 0.0);
            p.as_mut_slice()[..n - 1].copy_from_slice(&first[1..]);
            p.as_mut_slice()[n - 1..].copy_from_slice(&[1.0, 0.5, softness, 0.02]);
            descend(&c, p)
        })
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(p, _)| unpack(&p))
}

/// Softnesses tried first, rad: printed lines, blurred lines, sines.
const STARTS: [f64; 3] = [0.2, 0.5, 1.2];

/// Steps by the two leading principal components: seen from their origin, and from the centre of the circle
/// that fits them best, since uneven steps leave the centred components off it.
fn principal_steps(c: &DMatrix<f64>) -> [Vec<f64>; 2] {
    let n = c.nrows();
    let eigen = c.clone().symmetric_eigen();
    let mut order: Vec<usize> = (0..n).collect();
    order.sort_by(|&a, &b| eigen.eigenvalues[b].total_cmp(&eigen.eigenvalues[a]));
    let scaled = |k: usize, e: usize| eigen.eigenvectors[(k, order[e])] * eigen.eigenvalues[order[e]].max(0.0).sqrt();
    let points: Vec<[f64; 2]> = (0..n).map(|k| [scaled(k, 0), scaled(k, 1)]).collect();
    [[0.0, 0.0], circle_centre(&points)].map(|[x, y]| {
        let at = |k: usize| (points[k][1] - y).atan2(points[k][0] - x);
        (0..n).map(|k| at(k) - at(0)).collect()
    })
}

/// Centre of the circle nearest to points: least squares of `x² + y² = 2ax + 2by + c` (Kåsa 1976).
fn circle_centre(points: &[[f64; 2]]) -> [f64; 2] {
    let design = DMatrix::from_fn(points.len(), 3, |i, j| if j < 2 { 2.0 * points[i][j] } else { 1.0 });
    let right = DVector::from_iterator(points.len(), points.iter().map(|[x, y]| x * x + y * y));
    design.svd(true, true).solve(&right, 1e-9).map_or([0.0; 2], |s| [s[0], s[1]])
}

fn profile_of(p: &DVector<f64>, n: usize) -> Profile {
    Profile { white: p[n], softness_rad: p[n + 1] }
}

/// Residuals of the model, then of weak priors on profile and noise.
fn residuals(c: &DMatrix<f64>, p: &DVector<f64>) -> DVector<f64> {
    let n = c.nrows();
    let profile = profile_of(p, n);
    let step = |k: usize| if k == 0 { 0.0 } else { p[k - 1] };
    let powers = profile.amplitudes().map(|a| a * a);
    let total: f64 = powers.iter().sum();
    let model = DMatrix::from_fn(n, n, |j, k| {
        let d = step(j) - step(k);
        let alike: f64 = powers.iter().enumerate().map(|(h, w)| w * ((h + 1) as f64 * d).cos()).sum();
        p[n - 1] * alike / total + if j == k { p[n + 2].powi(2) } else { 0.0 }
    });
    let model = centre(&model);
    let mut r = Vec::with_capacity(n * (n + 1) / 2 + 3);
    for j in 0..n {
        for k in 0..=j {
            r.push((model[(j, k)] - c[(j, k)]) * if j == k { 1.0 } else { 2f64.sqrt() });
        }
    }
    r.extend(PRIORS.iter().enumerate().map(|(i, (value, sigma))| PRIOR_WEIGHT * (p[n + i] - value) / sigma));
    DVector::from_vec(r)
}

/// White share, softness and noise as a line board usually has them, and how much they vary.
const PRIORS: [(f64, f64); 3] = [(0.5, 0.08), (0.4, 0.6), (0.0, 0.3)];
/// The priors settle only what a few photos leave open.
const PRIOR_WEIGHT: f64 = 0.003;

fn centre(c: &DMatrix<f64>) -> DMatrix<f64> {
    let n = c.nrows();
    let rows: Vec<f64> = (0..n).map(|j| c.row(j).sum() / n as f64).collect();
    let all = rows.iter().sum::<f64>() / n as f64;
    DMatrix::from_fn(n, n, |j, k| c[(j, k)] - rows[j] - rows[k] + all)
}

/// Levenberg and Marquardt's damped steps; parameters and half the squared residual.
fn descend(c: &DMatrix<f64>, mut p: DVector<f64>) -> (DVector<f64>, f64) {
    let mut damping = 1e-3;
    let mut r = residuals(c, &p);
    for _ in 0..60 {
        let jacobian = DMatrix::from_columns(
            &(0..p.len())
                .map(|i| {
                    let mut q = p.clone();
                    q[i] += 1e-6;
                    (residuals(c, &q) - &r) / 1e-6
                })
                .collect::<Vec<_>>(),
        );
        let (normal, gradient) = (jacobian.tr_mul(&jacobian), jacobian.tr_mul(&r));
        let mut damped = normal.clone();
        (0..p.len()).for_each(|i| damped[(i, i)] += damping * (normal[(i, i)] + 1e-9));
        let Some(step) = damped.cholesky().map(|f| f.solve(&gradient)) else { break };
        let mut trial = &p - &step;
        bound(&mut trial, c.nrows());
        let then = residuals(c, &trial);
        if then.norm_squared() < r.norm_squared() {
            let gain = 1.0 - then.norm_squared() / r.norm_squared();
            (p, r) = (trial, then);
            damping = (damping * 0.2).max(1e-9);
            if gain < 1e-9 {
                break;
            }
        } else {
            damping *= 8.0;
            if damping > 1e6 {
                break;
            }
        }
    }
    let cost = 0.5 * r.norm_squared();
    (p, cost)
}

/// Keeps the profile one that lines can have.
fn bound(p: &mut DVector<f64>, n: usize) {
    p[n] = p[n].clamp(0.2, 0.8);
    p[n + 1] = p[n + 1].abs().clamp(0.02, 3.0);
}

fn unpack(p: &DVector<f64>) -> Fit {
    let n = p.len() - 3;
    let steps = (0..n).map(|k| if k == 0 { 0.0 } else { p[k - 1] }).map(|s| s - TAU * (s / TAU).round());
    Fit { steps: steps.collect(), profile: profile_of(p, n) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Unequal steps and a nearly square wave: found to a thousandth of a pitch, up to the direction.
    #[test]
    fn unequal_steps_of_a_square_wave_are_found() {
        let truth = [0.0, 0.7, 1.9, 2.6, 4.1, 5.0];
        let table = Profile { white: 0.46, softness_rad: 0.3 }.table(3600);
        let rows: Vec<f64> = (0..3600)
            .flat_map(|i| truth.map(|s| 0.3 + 0.1 * table[(i + (s / TAU * 3600.0) as usize) % 3600]))
            .collect();
        let fit = fit_steps(&centred_covariance(&rows, 6)).unwrap();
        let wrapped = |d: f64| (d - TAU * (d / TAU).round()).abs();
        let worst = |sign: f64| fit.steps.iter().zip(truth).map(|(f, t)| wrapped(sign * f - t)).fold(0.0, f64::max);
        assert!(worst(1.0).min(worst(-1.0)) < 0.006, "{:?}", fit.steps);
        // 0.46 and 0.54 of white have the same powers.
        assert!((fit.profile.white - 0.5).abs() - 0.04 < 0.01, "{fit:?}");
    }
}
