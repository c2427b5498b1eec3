//! The terms an intended shape is made of, and their least-squares fit to samples of a height.
//!
//! Legendre products, so that the normal equations stay well conditioned; then, where there is a body
//! line, its profile: a cubic spline across the line, free to change evenly along it and to follow a bow.
//! Terms are expected small the higher they are, which matters only where hardly any sample holds them.

use crate::grid::{Grid, Map};
use crate::line::{BodyLine, cubic_splines, profile_knots};
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};
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
type Profile = [(usize, f64); 4 * ALONG];

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

    fn along_x(&self, x: f64) -> Vec<f64> {
        legendre((x - self.centre.0) / self.half.0, self.degree)
    }

    fn along_y(&self, y: f64) -> Vec<f64> {
        legendre((y - self.centre.1) / self.half.1, self.degree)
    }

    /// Degrees in x and y of every smooth term.
    fn degrees(&self) -> impl Iterator<Item = (usize, usize)> {
        (0..=self.degree).flat_map(|d| (0..=d).map(move |j| (d - j, j)))
    }

    fn profile(&self, at: (f64, f64)) -> Option<Profile> {
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
    fn priors(&self) -> Vec<f64> {
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
fn dot(a: &[f64], b: &[f64]) -> f64 {
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

/// Coefficients, and the factored normal equations they came from.
pub(crate) struct Fit {
    pub c: DVector<f64>,
    factor: Option<Cholesky<f64, Dyn>>,
}

/// Places of a height map with their terms.
pub(crate) struct Samples {
    priors: Vec<f64>,
    smooth: usize,
    /// Smooth terms, sample by sample.
    rows: Vec<f64>,
    /// Profile terms; none without a body line.
    profiles: Vec<Profile>,
    values: Vec<f64>,
}

/// Samples whose normal equations are summed by one core; fixed, so that sums do not depend on the cores.
const BATCH: usize = 2048;

impl Samples {
    /// Samples at `places` (mm) with the heights `values` (mm).
    pub fn of(frame: &Frame, places: impl Iterator<Item = (f64, f64)>, values: Vec<f64>) -> Self {
        let smooth = frame.smooth();
        let mut rows = Vec::with_capacity(values.len() * smooth);
        let mut profiles = Vec::new();
        for at in places {
            let (px, py) = (frame.along_x(at.0), frame.along_y(at.1));
            rows.extend(frame.degrees().map(|(a, b)| px[a] * py[b]));
            profiles.extend(frame.profile(at));
        }
        Self { priors: frame.priors(), smooth, rows, profiles, values }
    }

    /// Weighted least squares.
    pub fn fit(&self, weights: &[f64]) -> Fit {
        let n = self.priors.len();
        let batches: Vec<(Vec<f64>, Vec<f64>)> =
            weights.par_chunks(BATCH).enumerate().map(|(k, w)| self.sums(k * BATCH, w)).collect();
        let (mut normal, mut right) = (DMatrix::<f64>::zeros(n, n), DVector::<f64>::zeros(n));
        for (matrix, vector) in batches {
            normal.iter_mut().zip(matrix).for_each(|(sum, v)| *sum += v);
            right.iter_mut().zip(vector).for_each(|(sum, v)| *sum += v);
        }
        let ridge = 1e-9 * normal.diagonal().sum().max(1e-12) / n.max(1) as f64;
        for (a, prior) in self.priors.iter().enumerate() {
            normal[(a, a)] += ridge + prior;
        }
        // Only the lower triangle is filled; the factorisation reads no other.
        let factor = normal.cholesky();
        Fit { c: factor.as_ref().map_or_else(|| DVector::zeros(n), |f| f.solve(&right)), factor }
    }

    /// Normal matrix (lower triangle, by columns) and right-hand side of the samples from `first` on.
    fn sums(&self, first: usize, weights: &[f64]) -> (Vec<f64>, Vec<f64>) {
        let (n, smooth) = (self.priors.len(), self.smooth);
        let (mut normal, mut right) = (vec![0.0; n * n], vec![0.0; n]);
        for (k, &w) in (first..).zip(weights).filter(|(_, w)| **w >= 1e-6) {
            let row = &self.rows[k * smooth..(k + 1) * smooth];
            let profile = self.profiles.get(k).map_or(&[][..], |p| &p[..]);
            for a in 0..smooth {
                let wa = w * row[a];
                right[a] += wa * self.values[k];
                let column = &mut normal[a * n..(a + 1) * n];
                column[a..smooth].iter_mut().zip(&row[a..]).for_each(|(sum, b)| *sum += wa * b);
                profile.iter().for_each(|&(b, vb)| column[b] += wa * vb);
            }
            for (j, &(a, va)) in profile.iter().enumerate() {
                right[a] += w * va * self.values[k];
                profile[j..].iter().for_each(|&(b, vb)| normal[a * n + b] += w * va * vb);
            }
        }
        (normal, right)
    }

    /// Heights less the shape with coefficients `c`, mm.
    pub fn residuals(&self, c: &DVector<f64>) -> Vec<f64> {
        let c = c.as_slice();
        let left = |k: usize| {
            let smooth = dot(&self.rows[k * self.smooth..(k + 1) * self.smooth], c);
            let profile: f64 = self.profiles.get(k).map_or(0.0, |p| p.iter().map(|&(i, v)| v * c[i]).sum());
            self.values[k] - smooth - profile
        };
        (0..self.values.len()).into_par_iter().with_min_len(BATCH).map(left).collect()
    }
}
