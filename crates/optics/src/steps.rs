//! The photos of one sine shifted step by step, and what they say of single pixels.
//!
//! Least squares of `I_k = A + B cos(φ + 2π δ_k)` (generalised phase stepping, Greivenkamp 1984), on
//! intensities made linear by the response table.

use crate::photo::Photo;
use nalgebra::{DMatrix, Matrix3};
use std::f64::consts::TAU;

/// Photos of one pattern with their shifts, ready to be decoded.
#[derive(Debug, Clone)]
pub struct Steps<'a> {
    /// Periods across the board.
    pub periods: f64,
    /// The photos, all of one size.
    pub photos: Vec<&'a Photo>,
    pub(crate) table: &'a [f32; 256],
    /// Per photo its share in A, B cos φ and B sin φ.
    pub(crate) weights: Vec<[f32; 3]>,
    /// Row k: what the fitted sine leaves of photo k, from all photos.
    residue: Vec<f32>,
}

impl<'a> Steps<'a> {
    /// `shifts` in periods, one a photo; `None` when they do not determine a phase.
    pub fn new(photos: &[&'a Photo], shifts: &[f64], periods: f64, table: &'a [f32; 256]) -> Option<Self> {
        let design = design_matrix(shifts);
        let normal: Matrix3<f64> = (design.transpose() * &design).fixed_view::<3, 3>(0, 0).into_owned();
        if normal.symmetric_eigenvalues().min() < LEAST_SPREAD * shifts.len() as f64 {
            return None;
        }
        let inverse = normal.try_inverse()?;
        let w = DMatrix::from_column_slice(3, 3, inverse.as_slice()) * design.transpose();
        let n = photos.len();
        let residue = DMatrix::identity(n, n) - &design * &w;
        Some(Self {
            periods,
            photos: photos.to_vec(),
            table,
            weights: (0..n).map(|k| [w[(0, k)] as f32, w[(1, k)] as f32, w[(2, k)] as f32]).collect(),
            residue: residue.transpose().iter().map(|&v| v as f32).collect(),
        })
    }

    /// Linear intensity of a pixel in photo `k`, full scale 1.
    pub fn light(&self, k: usize, pixel: usize) -> f32 {
        self.table[usize::from(self.photos[k].grey[pixel])]
    }

    /// `B cos φ` and `B sin φ` of one pixel.
    pub fn phasor(&self, pixel: usize) -> (f32, f32) {
        self.weights.iter().enumerate().fold((0.0, 0.0), |(c, s), (k, w)| {
            let value = self.light(k, pixel);
            (c + w[1] * value, s + w[2] * value)
        })
    }

    /// One-sigma noise of a linear intensity: spread about the fitted sine, from the median absolute
    /// residual. With three photos there is no residual: the quantisation step stands in.
    pub fn noise(&self) -> f64 {
        let n = self.photos.len();
        if n < 4 {
            return 1.0 / 255.0;
        }
        let freedom = (n - 3) as f64;
        let mut light = vec![0.0; n];
        let mut sums: Vec<f64> = (0..self.photos[0].grey.len())
            .step_by(NOISE_EVERY)
            .map(|i| {
                light.iter_mut().enumerate().for_each(|(k, l)| *l = self.light(k, i));
                let left = |row: &[f32]| row.iter().zip(&light).map(|(r, l)| r * l).sum::<f32>();
                let square: f32 = self.residue.chunks_exact(n).map(|row| left(row).powi(2)).sum();
                (f64::from(square) / freedom).sqrt()
            })
            .collect();
        let middle = sums.len() / 2;
        let median = *sums.select_nth_unstable_by(middle, f64::total_cmp).1;
        // Median of |N(0,1)| is 0.6745; for more freedom the ratio tends to one.
        (median / if n == 4 { 0.6745 } else { 0.85 }).max(2e-4)
    }
}

/// Smallest eigenvalue of the normal equations, per photo, below which the shifts say too little: four even
/// quarters have a half, three of them a fifth.
const LEAST_SPREAD: f64 = 0.05;
/// Every how many pixels one is looked at for the noise; a prime, so that no column is favoured.
const NOISE_EVERY: usize = 97;

fn design_matrix(shifts: &[f64]) -> DMatrix<f64> {
    DMatrix::from_fn(shifts.len(), 3, |k, c| match c {
        0 => 1.0,
        1 => (TAU * shifts[k]).cos(),
        _ => -(TAU * shifts[k]).sin(),
    })
}
