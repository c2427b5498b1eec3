//! The terms an intended shape is made of.
//!
//! Legendre products, so that the normal equations stay well conditioned; then, where there is a body
//! line, its profile: a cubic spline across the line, free to change evenly along it and to follow a bow.
//! Terms are expected small the higher they are, which matters only where hardly any sample holds them.
//! The fit itself is `samples.rs`.

use crate::grid::{Grid, Map};
use crate::line::{BodyLine, cubic_splines, profile_knots};
use crate::samples::Fit;
use nalgebra::DVector;
use rayon::prelude::*;

/// The terms over a patch of panel.
pub(crate) struct Frame {
    centre: (f64, f64),
    half: (f64, f64),
    degree: usize,
    line: Option<BodyLine>,
    knots: Vec<f64>,
}

/// Powers of the place along a body line that its profile may change with: even, and bowed.
const ALONG: usize = 3;
/// Size of the polynomial's terms by degree, mm, over a patch of two or three hundred millimetres: a panel is
/// smooth. A guess from panels of 1 to 5 m radius and from what pose errors leave, rounded up.
const EXPECTED_MM: [f64; 7] = [1e3, 1e3, 1e2, 1.0, 0.3, 0.03, 0.01];
/// Size of the profile's terms by power along the line, mm.
const EXPECTED_ALONG_MM: [f64; ALONG] = [30.0, 3.0, 1.0];
/// Error of a sample that counts once, mm: peel and pose errors are alike over about a centimetre, so many
/// samples say the same thing.
pub(crate) const NOISE_MM: f64 = 0.003;

/// The terms of a body line's profile that are not zero at one place: index and value.
pub(crate) type Profile = [(usize, f64); 4 * ALONG];

impl Frame {
    /// Terms scaled to what was read of a height map.
    pub fn over(height: &Map, degree: usize, line: Option<BodyLine>) -> Self {
        let (mut low, mut high) = ((f64::MAX, f64::MAX), (f64::MIN, f64::MIN));
        for i in (0..height.grid.len()).filter(|&i| height.values[i].is_finite()) {
            let (x, y) = height.grid.position(i);
            low = (low.0.min(x), low.1.min(y));
            high = (high.0.max(x), high.1.max(y));
        }
        Self {
            centre: (0.5 * (low.0 + high.0), 0.5 * (low.1 + high.1)),
            half: ((0.5 * (high.0 - low.0)).max(1.0), (0.5 * (high.1 - low.1)).max(1.0)),
            degree,
            line,
            knots: if line.is_some() { profile_knots() } else { Vec::new() },
        }
    }

    /// How many terms are smooth; the profile's come after them.
    fn smooth(&self) -> usize {
        (self.degree + 1) * (self.degree + 2) / 2
    }

    fn terms(&self) -> usize {
        self.smooth() + ALONG * self.knots.len().saturating_sub(4)
    }

    /// The smooth terms' parts in x.
    pub fn along_x(&self, x: f64) -> Vec<f64> {
        legendre((x - self.centre.0) / self.half.0, self.degree)
    }

    /// The smooth terms' parts in y.
    pub fn along_y(&self, y: f64) -> Vec<f64> {
        legendre((y - self.centre.1) / self.half.1, self.degree)
    }

    /// Degrees in x and y of every smooth term.
    pub fn degrees(&self) -> impl Iterator<Item = (usize, usize)> {
        (0..=self.degree).flat_map(|d| (0..=d).map(move |j| (d - j, j)))
    }

    /// The profile's terms at a place; none without a body line.
    pub fn profile(&self, at: (f64, f64)) -> Option<Profile> {
        let (across, along) = self.line.as_ref()?.across_along(at);
        let (first, splines) = cubic_splines(&self.knots, across);
        let along = along / self.half.0.max(self.half.1);
        Some(std::array::from_fn(|k| {
            let (spline, power) = (k / ALONG, k % ALONG);
            (self.smooth() + ALONG * (first + spline) + power, splines[spline] * along.powi(power as i32))
        }))
    }

    /// The body line's profile as it is all along, mm at a distance from it.
    pub fn across(&self, t: f64, fit: &Fit) -> f64 {
        let (first, splines) = cubic_splines(&self.knots, t);
        splines.iter().enumerate().map(|(k, v)| v * fit.c[self.smooth() + ALONG * (first + k)]).sum()
    }

    /// What each term adds to the diagonal of the normal equations: how small it is expected to be.
    pub fn priors(&self) -> Vec<f64> {
        let smooth = self.degrees().map(|(a, b)| EXPECTED_MM[(a + b).min(EXPECTED_MM.len() - 1)]);
        let profile = (self.smooth()..self.terms()).map(|k| EXPECTED_ALONG_MM[(k - self.smooth()) % ALONG]);
        smooth.chain(profile).map(|expected| (NOISE_MM / expected).powi(2)).collect()
    }

    /// One-sigma of the fitted shape at a place, in units of a sample's error.
    pub fn doubt(&self, at: (f64, f64), fit: &Fit) -> f64 {
        let Some(factor) = &fit.factor else { return f64::INFINITY };
        let (px, py) = (self.along_x(at.0), self.along_y(at.1));
        let mut row = DVector::zeros(self.terms());
        self.degrees().enumerate().for_each(|(k, (a, b))| row[k] = px[a] * py[b]);
        self.profile(at).into_iter().flatten().for_each(|(k, v)| row[k] = v);
        factor.l_dirty().solve_lower_triangular_mut(&mut row);
        row.norm()
    }

    /// The shape with coefficients `c` on every cell of a grid, mm.
    pub fn over_grid(&self, grid: &Grid, c: &DVector<f64>) -> Vec<f64> {
        let columns: Vec<Vec<f64>> = (0..grid.nx).map(|ix| self.along_x(grid.at(ix, 0).0)).collect();
        let mut out = vec![0.0; grid.len()];
        out.par_chunks_mut(grid.nx).enumerate().for_each(|(iy, row)| {
            let py = self.along_y(grid.at(0, iy).1);
            let mut of_x = vec![0.0; self.degree + 1];
            self.degrees().zip(c.iter()).for_each(|((a, b), c)| of_x[a] += c * py[b]);
            for (ix, value) in row.iter_mut().enumerate() {
                let profile = self.profile(grid.at(ix, iy)).map_or(0.0, |p| p.iter().map(|&(k, v)| v * c[k]).sum());
                *value = profile + dot(&columns[ix], &of_x);
            }
        });
        out
    }
}

/// Sum of products over the shorter of two slices, in four strands that run at once.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let n = a.len().min(b.len());
    let ((a4, a1), (b4, b1)) = (a[..n].as_chunks::<4>(), b[..n].as_chunks::<4>());
    let strands = a4.iter().zip(b4).fold([0.0; 4], |s, (a, b)| std::array::from_fn(|k| s[k] + a[k] * b[k]));
    strands.iter().sum::<f64>() + a1.iter().zip(b1).map(|(a, b)| a * b).sum::<f64>()
}

fn legendre(t: f64, degree: usize) -> Vec<f64> {
    let mut p = vec![1.0, t];
    for k in 1..degree {
        let k_ = k as f64;
        p.push(((2.0 * k_ + 1.0) * t * p[k] - k_ * p[k - 1]) / (k_ + 1.0));
    }
    p.truncate(degree + 1);
    p
}
