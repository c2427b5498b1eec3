//! N photos of one shifted sine to phase and modulation, pixel by pixel.
//!
//! Least squares of `I_k = A + B cos(φ + 2π δ_k)` (generalised phase stepping, Greivenkamp 1984), on
//! intensities made linear by a power law whose exponent is found from the photos: the second harmonic
//! that a wrong exponent leaves is driven to zero.

use crate::photo::Photo;
use nalgebra::{DMatrix, Matrix3};
use rayon::prelude::*;
use std::f64::consts::TAU;

/// Phase of one pattern, all pixels.
#[derive(Debug, Clone)]
pub struct Phase {
    /// Periods across the board.
    pub periods: f64,
    /// Wrapped phase, rad, in (-π, π].
    pub phase: Vec<f32>,
    /// Amplitude B, linear, full scale 1.
    pub modulation: Vec<f32>,
    /// One-sigma noise of a linear intensity, full scale 1.
    pub noise: f64,
    /// Photos the phase was made from.
    pub steps: usize,
}

impl Phase {
    /// One-sigma phase noise of a pixel, rad: `√(2/N) σI / B`.
    pub fn sigma(&self, pixel: usize) -> f64 {
        (2.0 / self.steps as f64).sqrt() * self.noise / f64::from(self.modulation[pixel]).max(1e-9)
    }
}

/// Linear intensity of every stored level for a power-law response.
pub fn linear_table(gamma: f64) -> [f32; 256] {
    std::array::from_fn(|level| (level as f64 / 255.0).powf(gamma) as f32)
}

/// Weights that turn N linear intensities into `(A, B cos φ, B sin φ)`; `None` when the shifts
/// (in periods) do not determine them.
fn weights(shifts: &[f64]) -> Option<DMatrix<f64>> {
    let design = design_matrix(shifts);
    let normal: Matrix3<f64> = (design.transpose() * &design).fixed_view::<3, 3>(0, 0).into_owned();
    let smallest = normal.symmetric_eigenvalues().min();
    if smallest < 0.05 * shifts.len() as f64 {
        return None;
    }
    let inverse = normal.try_inverse()?;
    Some(DMatrix::from_column_slice(3, 3, inverse.as_slice()) * design.transpose())
}

fn design_matrix(shifts: &[f64]) -> DMatrix<f64> {
    DMatrix::from_fn(shifts.len(), 3, |k, c| match c {
        0 => 1.0,
        1 => (TAU * shifts[k]).cos(),
        _ => -(TAU * shifts[k]).sin(),
    })
}

/// Demodulates photos of one pattern; `None` when their shifts do not determine the phase.
pub fn demodulate(photos: &[&Photo], shifts: &[f64], periods: f64, table: &[f32; 256]) -> Option<Phase> {
    let n = photos.len();
    let w = weights(shifts)?;
    let w: Vec<[f32; 3]> = (0..n).map(|k| [w[(0, k)] as f32, w[(1, k)] as f32, w[(2, k)] as f32]).collect();
    let pixels = photos[0].grey.len();
    let (mut phase, mut modulation) = (vec![0f32; pixels], vec![0f32; pixels]);
    const BLOCK: usize = 8192;
    phase.par_chunks_mut(BLOCK).zip(modulation.par_chunks_mut(BLOCK)).enumerate().for_each(|(b, (phase, modulation))| {
        let at = b * BLOCK;
        let len = phase.len();
        let mut c = [0f32; BLOCK];
        let mut s = [0f32; BLOCK];
        for (photo, w) in photos.iter().zip(&w) {
            for (i, &level) in photo.grey[at..at + len].iter().enumerate() {
                let value = table[usize::from(level)];
                c[i] += w[1] * value;
                s[i] += w[2] * value;
            }
        }
        for i in 0..len {
            phase[i] = s[i].atan2(c[i]);
            modulation[i] = s[i].hypot(c[i]);
        }
    });
    let noise = noise_level(photos, shifts, table);
    Some(Phase { periods, phase, modulation, noise, steps: n })
}

/// Spread of the intensities about the fitted sine, from the median absolute residual. With three photos
/// there is no residual: the quantisation step stands in.
fn noise_level(photos: &[&Photo], shifts: &[f64], table: &[f32; 256]) -> f64 {
    let n = photos.len();
    let Some(w) = weights(shifts).filter(|_| n > 3) else { return 1.0 / 255.0 };
    let project = DMatrix::identity(n, n) - design_matrix(shifts) * w;
    let freedom = (n - 3) as f64;
    let mut sums: Vec<f64> = (0..photos[0].grey.len())
        .step_by(97)
        .map(|i| {
            let values = DMatrix::from_fn(n, 1, |k, _| f64::from(table[usize::from(photos[k].grey[i])]));
            ((&project * values).norm_squared() / freedom).sqrt()
        })
        .collect();
    let middle = sums.len() / 2;
    let (_, median, _) = sums.select_nth_unstable_by(middle, f64::total_cmp);
    // Median of |N(0,1)| is 0.6745; for more freedom the ratio tends to one.
    (*median / if n == 4 { 0.6745 } else { 0.85 }).max(2e-4)
}

/// The power-law exponent that leaves no second harmonic, between 1 and 3; 2.2 where it cannot be told.
/// `photos` must be four quarter-period steps in order.
pub fn estimate_gamma(photos: &[&Photo]) -> f64 {
    let harmonic = |gamma: f64| -> f64 {
        let table = linear_table(gamma);
        let (mut cross, mut square) = (0.0, 0.0);
        for i in (0..photos[0].grey.len()).step_by(53) {
            let levels: [u8; 4] = std::array::from_fn(|k| photos[k].grey[i]);
            if levels.iter().any(|&l| l > 250) {
                continue;
            }
            let [a, b, c, d] = levels.map(|l| f64::from(table[usize::from(l)]));
            let (re, im) = (a - c, d - b);
            let power = re * re + im * im;
            if power < 4e-4 {
                continue;
            }
            let cos2 = (re * re - im * im) / power;
            cross += 0.25 * (a - b + c - d) * cos2 * power.sqrt();
            square += 0.5 * power * cos2 * cos2;
        }
        if square > 0.0 { cross / square } else { f64::NAN }
    };
    let (mut low, mut high) = (1.0, 3.0);
    let (at_low, at_high) = (harmonic(low), harmonic(high));
    if !(at_low * at_high < 0.0) {
        return DEFAULT_GAMMA;
    }
    for _ in 0..20 {
        let middle = 0.5 * (low + high);
        if harmonic(middle) * at_low > 0.0 { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

/// What phones write when nothing else is known (sRGB's overall exponent).
pub const DEFAULT_GAMMA: f64 = 2.2;
