//! What steps the photos of a pattern really show, from the photos themselves.
//!
//! Every photo k of one pattern is `A + B cos(φ + 2πδ_k)`, so less what all have in common it is a fixed
//! pair of pictures mixed by the phasor `w_k = g_k exp(2πi δ_k)`. Over many waves all phases come equally often;
//! then the covariance of the photos is `Re(w_i w̄_j)`, and its two strongest components give all phasors
//! up to one turn, one shift and one mirroring (principal components, Vargas, Quiroga and Belenguer 2011). Where the
//! phase is known already, from a finer pattern, each phasor is a regression.

use crate::steps::Steps;
use nalgebra::{Complex, DMatrix, Matrix3, Vector3};
use std::f64::consts::TAU;

/// One photo as it shows itself beside the others of its pattern.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shown {
    /// Its shift, periods, where the good photos have theirs by the file.
    pub shift: f64,
    /// Its contrast over theirs.
    pub gain: f64,
    /// Whether it agrees with them.
    pub good: bool,
}

/// Distance of a phasor from where the file puts it, relative, above which a photo is bad: a
/// seventeenth of the contrast, or a hundredth of a period. Good photos stay below a fifth of that.
const TOLERANCE: f64 = 0.06;
/// The same for a coarse pattern, whose own stray light adds to it: only a wrong step is told.
const COARSE_TOLERANCE: f64 = 0.6;
/// Pixels between the samples, both ways, and between the two pixels whose difference is a sample.
const EVERY_PX: usize = 5;
const APART_PX: usize = 7;
/// Fewer samples say nothing.
const LEAST_SAMPLES: usize = 500;

/// Steps of a fine pattern. `shifts` as the file says. `None` when too little of it is seen.
pub fn shown_steps(steps: &Steps, shifts: &[f64]) -> Option<Vec<Shown>> {
    let (n, width) = (shifts.len(), steps.photos[0].width);
    let height = steps.photos[0].grey.len() / width;
    let mut covariance = DMatrix::<f64>::zeros(n, n);
    let mut samples = 0;
    let least = CONTRAST_SHARE * strong_range(steps);
    let mut d = vec![0.0; n];
    for y in (0..height.saturating_sub(APART_PX)).step_by(EVERY_PX) {
        for x in (0..width.saturating_sub(APART_PX)).step_by(EVERY_PX) {
            let i = y * width + x;
            for beside in [i + APART_PX, i + APART_PX * width] {
                if range(steps, i) < least || range(steps, beside) < least {
                    continue;
                }
                (0..n).for_each(|k| d[k] = f64::from(steps.light(k, i) - steps.light(k, beside)));
                let still = d.iter().sum::<f64>() / n as f64;
                d.iter_mut().for_each(|d| *d -= still);
                (0..n).for_each(|a| (0..n).for_each(|b| covariance[(a, b)] += d[a] * d[b]));
                samples += 1;
            }
        }
    }
    if samples < LEAST_SAMPLES {
        return None;
    }
    let eigen = covariance.symmetric_eigen();
    let mut order: Vec<usize> = (0..n).collect();
    order.sort_by(|&a, &b| eigen.eigenvalues[b].total_cmp(&eigen.eigenvalues[a]));
    let [first, second] = [order[0], order[1]].map(|k| eigen.eigenvalues[k].max(0.0).sqrt());
    let phasor = |k: usize, mirrored: f64| {
        Complex::new(first * eigen.eigenvectors[(k, order[0])], mirrored * second * eigen.eigenvectors[(k, order[1])])
    };
    let told = |mirrored: f64| {
        let phasors: Vec<_> = (0..n).map(|k| phasor(k, mirrored)).collect();
        agree(&phasors, shifts, TOLERANCE)
    };
    let (one, other) = (told(1.0), told(-1.0));
    let fit = |s: &[Shown]| s.iter().zip(shifts).filter(|(s, _)| s.good).map(|(s, f)| off(s, *f)).sum::<f64>();
    let goods = |s: &[Shown]| s.iter().filter(|s| s.good).count();
    let rank = |s: &[Shown]| (goods(s), -fit(s));
    Some(if rank(&one) >= rank(&other) { one } else { other })
}

/// Steps of a coarse pattern, where `fraction` gives the board fraction of some pixels. `None` when the
/// samples span too little of a period.
pub fn shown_steps_at(steps: &Steps, shifts: &[f64], fraction: &[(usize, f64)]) -> Option<Vec<Shown>> {
    if fraction.len() < LEAST_SAMPLES {
        return None;
    }
    let terms = |s: f64| {
        let (sin, cos) = (TAU * steps.periods * s).sin_cos();
        Vector3::new(1.0, cos, -sin)
    };
    let normal: Matrix3<f64> = fraction.iter().map(|(_, s)| terms(*s) * terms(*s).transpose()).sum();
    if normal.symmetric_eigenvalues().min() < LEAST_SPAN * fraction.len() as f64 {
        return None;
    }
    let inverse = normal.try_inverse()?;
    let phasor = |k: usize| {
        let right: Vector3<f64> = fraction.iter().map(|(i, s)| terms(*s) * f64::from(steps.light(k, *i))).sum();
        let c = inverse * right;
        Complex::new(c[1], c[2])
    };
    let phasors: Vec<_> = (0..shifts.len()).map(phasor).collect();
    Some(agree(&phasors, shifts, COARSE_TOLERANCE))
}

/// Smallest eigenvalue, per sample, of a coarse pattern's regression: about half a period is seen.
const LEAST_SPAN: f64 = 0.02;
/// Share of the ordinary contrast that a sample must have.
const CONTRAST_SHARE: f32 = 0.4;

/// Brightest less darkest of the photos at a pixel.
fn range(steps: &Steps, pixel: usize) -> f32 {
    let light = |k: usize| steps.light(k, pixel);
    let (low, high) =
        (1..steps.photos.len()).fold((light(0), light(0)), |(l, h), k| (l.min(light(k)), h.max(light(k))));
    high - low
}

fn strong_range(steps: &Steps) -> f32 {
    let mut all: Vec<f32> = (0..steps.photos[0].grey.len()).step_by(211).map(|i| range(steps, i)).collect();
    let at = all.len() * 9 / 10;
    *all.select_nth_unstable_by(at, f32::total_cmp).1
}

fn off(shown: &Shown, shift: f64) -> f64 {
    (Complex::from_polar(shown.gain, TAU * shown.shift) - Complex::from_polar(1.0, TAU * shift)).norm()
}

/// Lays phasors on those of the file by one turn, stretch and shift, leaving out the worst as long as some
/// lie too far off.
fn agree(phasors: &[Complex<f64>], shifts: &[f64], tolerance: f64) -> Vec<Shown> {
    let said: Vec<Complex<f64>> = shifts.iter().map(|s| Complex::from_polar(1.0, TAU * s)).collect();
    let mut kept: Vec<usize> = (0..said.len()).collect();
    let mut laid = lay(phasors, &said, &kept);
    while kept.len() > 3 && worst(&laid, &said, &kept) > tolerance {
        let without = |k: usize| kept.iter().copied().filter(|&j| j != k).collect::<Vec<_>>();
        let trial = |k: usize| {
            let rest = without(k);
            let laid = lay(phasors, &said, &rest);
            (worst(&laid, &said, &rest), rest, laid)
        };
        let best = kept.iter().map(|&k| trial(k)).min_by(|a, b| a.0.total_cmp(&b.0));
        let Some((_, rest, better)) = best else { break };
        (kept, laid) = (rest, better);
    }
    (0..said.len())
        .map(|k| Shown {
            shift: laid[k].arg() / TAU,
            gain: laid[k].norm(),
            good: kept.contains(&k) && (laid[k] - said[k]).norm() <= tolerance,
        })
        .collect()
}

fn worst(laid: &[Complex<f64>], said: &[Complex<f64>], kept: &[usize]) -> f64 {
    kept.iter().map(|&k| (laid[k] - said[k]).norm()).fold(0.0, f64::max)
}

/// All phasors after the turn, stretch and shift that lay the kept ones on what the file says.
fn lay(phasors: &[Complex<f64>], said: &[Complex<f64>], kept: &[usize]) -> Vec<Complex<f64>> {
    let n = kept.len() as f64;
    let mean = |v: &[Complex<f64>]| kept.iter().map(|&k| v[k]).sum::<Complex<f64>>() / n;
    let (from, to) = (mean(phasors), mean(said));
    // said ≈ to + turn (phasor - from), least squares.
    let (mut cross, mut square) = (Complex::new(0.0, 0.0), 0.0);
    for &k in kept {
        let p = phasors[k] - from;
        cross += p.conj() * (said[k] - to);
        square += p.norm_sqr();
    }
    let turn = if square > 0.0 { cross / square } else { Complex::new(0.0, 0.0) };
    phasors.iter().map(|p| to + turn * (p - from)).collect()
}
