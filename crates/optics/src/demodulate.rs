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
    phase.par_chunks_mut(BLOCK).zip(modulation.par_chunks_mut(BLOCK)).enumerate().for_each(|(b, (sine, cosine))| {
        let at = b * BLOCK;
        for (photo, w) in photos.iter().zip(&w) {
            let levels = &photo.grey[at..at + sine.len()];
            for ((s, c), &level) in sine.iter_mut().zip(cosine.iter_mut()).zip(levels) {
                let value = table[usize::from(level)];
                *c += w[1] * value;
                *s += w[2] * value;
            }
        }
    });
    let mut noise = noise_level(photos, shifts, table);
    let strong = percentile_90(&phase, &modulation);
    if (2.0 / n as f64).sqrt() * noise > GRAINY_RAD * strong {
        // Averaging the phasor before its angle is taken keeps grain from turning into wrong orders.
        phase = box_three(&phase, photos[0].width);
        modulation = box_three(&modulation, photos[0].width);
        noise /= 3.0;
    }
    phase.par_chunks_mut(BLOCK).zip(modulation.par_chunks_mut(BLOCK)).for_each(|(sine, cosine)| {
        for (s, c) in sine.iter_mut().zip(cosine) {
            (*s, *c) = (s.atan2(*c), s.hypot(*c));
        }
    });
    Some(Phase { periods, phase, modulation, noise, steps: n })
}

/// Phase noise of the brightest tenth above which a photo set counts as grainy, rad.
const GRAINY_RAD: f64 = 0.06;

/// Amplitude that a tenth of the pixels exceed.
fn percentile_90(sine: &[f32], cosine: &[f32]) -> f64 {
    let mut all: Vec<f32> = (0..sine.len()).step_by(61).map(|i| sine[i].hypot(cosine[i])).collect();
    let at = all.len() * 9 / 10;
    f64::from(*all.select_nth_unstable_by(at, f32::total_cmp).1)
}

/// Mean of each pixel's 3 x 3 neighbourhood; the outermost pixels stay.
fn box_three(values: &[f32], width: usize) -> Vec<f32> {
    let height = values.len() / width;
    let mut out = values.to_vec();
    out.par_chunks_mut(width).enumerate().filter(|(y, _)| *y > 0 && y + 1 < height).for_each(|(y, row)| {
        let [above, here, below] = [y - 1, y, y + 1].map(|k| &values[k * width..(k + 1) * width]);
        let column = |x: usize| above[x] + here[x] + below[x];
        for x in 1..width - 1 {
            row[x] = (column(x - 1) + column(x) + column(x + 1)) / 9.0;
        }
    });
    out
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
