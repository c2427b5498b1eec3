//! Bayesian linear regression in closed form, one observation after another.
//!
//! `y = x·β + ε`, `ε ~ N(0, r·σ²)`, with the conjugate prior `β | σ² ~ N(m, σ²·V)`,
//! `σ² ~ InverseGamma(a, b)`. An observation changes them by (A. Gelman and others, Bayesian Data
//! Analysis, 3rd edition, 2013, chapter 14; the rank-one form is Kalman's)
//! ```text
//! s = r + xᵀV x,   e = y − xᵀm
//! m += V x·e/s,    V −= V x·xᵀV/s,    a += 1/2,    b += e²/(2s)
//! ```
//! and the next `y` is Student's t with 2a degrees of freedom around `xᵀm`, of scale² `b/a·s`.
//! Nothing is inverted, so a coefficient may be known exactly (a width of nothing).

use crate::StudentT;
use serde::{Deserialize, Serialize};

/// What is known of the coefficients and of the noise.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Regression {
    /// m: the coefficients, most probable.
    mean: Vec<f64>,
    /// V: their covariance in units of σ², a row after the other.
    cover: Vec<f64>,
    /// a.
    shape: f64,
    /// b.
    rate: f64,
}

impl Regression {
    /// Before any observation: coefficients `mean` with standard deviations `widths` (of as many),
    /// independent, if the noise has the standard deviation `noise`, over 0, which itself is known as
    /// well as from `weight` observations, over 0.
    #[must_use]
    pub fn new(mean: Vec<f64>, widths: &[f64], noise: f64, weight: f64) -> Self {
        let size = mean.len();
        let mut cover = vec![0.0; size * size];
        for (at, width) in widths.iter().enumerate() {
            cover[at * size + at] = (width / noise).powi(2);
        }
        Self { mean, cover, shape: weight / 2.0, rate: weight / 2.0 * noise * noise }
    }

    /// The same with other degrees of freedom for the noise, as if its variance times them was learned from
    /// so many observations. Minus the number of coefficients is what least squares without a prior assumes.
    #[must_use]
    pub fn with_freedom(self, freedom: f64) -> Self {
        Self { shape: freedom / 2.0, ..self }
    }

    /// How many coefficients there are.
    #[must_use]
    pub fn size(&self) -> usize {
        self.mean.len()
    }

    /// The coefficients, most probable.
    #[must_use]
    pub fn mean(&self) -> &[f64] {
        &self.mean
    }

    /// Variance of the noise, b/a.
    #[must_use]
    pub fn noise_variance(&self) -> f64 {
        self.rate / self.shape
    }

    /// Degrees of freedom, 2a.
    #[must_use]
    pub fn freedom(&self) -> f64 {
        2.0 * self.shape
    }

    /// Learns that `y` was seen at `x`, with `noise` times σ², over 0, of doubt of its own. Answers with the
    /// logarithm of the density that was predicted there.
    pub fn observe(&mut self, x: &[f64], y: f64, noise: f64) -> f64 {
        let across = self.across(x);
        let s = noise + dot(x, &across);
        let e = y - dot(x, &self.mean);
        let scale = (self.noise_variance() * s).abs().sqrt();
        let said = StudentT { location: 0.0, scale, freedom: self.freedom() }.ln_density(e);
        let size = self.size();
        for (row, a) in across.iter().enumerate().filter(|(_, a)| **a != 0.0) {
            self.mean[row] += a * e / s;
            let of_row = &mut self.cover[row * size..(row + 1) * size];
            of_row.iter_mut().zip(&across).for_each(|(v, b)| *v -= a * b / s);
        }
        self.shape += 0.5;
        self.rate += 0.5 * e * e / s;
        said
    }

    /// The distribution of a `y` at `x` with `noise` times σ² of doubt of its own; 0 for the
    /// expectation's.
    #[must_use]
    pub fn predict(&self, x: &[f64], noise: f64) -> StudentT {
        let s = noise + self.doubt(x);
        StudentT { location: dot(x, &self.mean), scale: (self.noise_variance() * s).sqrt(), freedom: self.freedom() }
    }

    /// xᵀV x: the doubt of the coefficients at `x`, in units of σ².
    #[must_use]
    pub fn doubt(&self, x: &[f64]) -> f64 {
        dot(x, &self.across(x)).max(0.0)
    }

    /// With one coefficient more, of mean 0 and variance `ratio` times σ².
    #[must_use]
    pub(crate) fn with_effect(&self, ratio: f64) -> Self {
        let size = self.size();
        let mut cover = Vec::with_capacity((size + 1) * (size + 1));
        for row in self.cover.chunks_exact(size) {
            cover.extend_from_slice(row);
            cover.push(0.0);
        }
        cover.extend(std::iter::repeat_n(0.0, size));
        cover.push(ratio);
        let mean = self.mean.iter().copied().chain([0.0]).collect();
        Self { mean, cover, ..*self }
    }

    /// Without the last coefficient, whatever it was.
    #[must_use]
    pub(crate) fn without_effect(&self) -> Self {
        let size = self.size() - 1;
        let cover = self.cover.chunks_exact(size + 1).take(size).flat_map(|row| &row[..size]).copied().collect();
        Self { mean: self.mean[..size].to_vec(), cover, ..*self }
    }

    fn across(&self, x: &[f64]) -> Vec<f64> {
        self.cover.chunks_exact(self.size()).map(|row| dot(row, x)).collect()
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
