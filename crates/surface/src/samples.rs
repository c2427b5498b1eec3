//! Cells of a height map that a shape's terms are fitted to by weighted least squares.
//!
//! A smooth term is a part in x times a part in y, and cells stand in the rows of a grid. So the normal equations are
//! summed along each row for the parts in x alone (28 products of two at degree six, where the terms have 406), and a
//! row's sums are spread over the parts in y once.

use crate::frame::{Frame, Profile, dot};
use crate::grid::Grid;
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};
use rayon::prelude::*;
use std::ops::Range;

/// Coefficients, and the factored normal equations they came from.
pub(crate) struct Fit {
    pub c: DVector<f64>,
    pub factor: Option<Cholesky<f64, Dyn>>,
}

/// Cells with their terms and heights.
pub(crate) struct Samples {
    priors: Vec<f64>,
    /// Degrees in x and y of the smooth terms.
    degrees: Vec<(usize, usize)>,
    columns: Vec<Column>,
    rows: Vec<Row>,
    /// Which column each sample stands in.
    column: Vec<u32>,
    /// Profile terms of each sample; none without a body line.
    profiles: Vec<Profile>,
    values: Vec<f64>,
}

/// The parts in x of one column of the grid, and their products two by two, each pair once.
struct Column {
    parts: Vec<f64>,
    products: Vec<f64>,
}

/// The parts in y of one row, and its samples.
struct Row {
    parts: Vec<f64>,
    samples: Range<usize>,
}

/// Rows whose normal equations are summed by one core; fixed, so that sums do not depend on the cores.
const BATCH: usize = 16;
/// Samples that weigh less say nothing.
const LEAST_WEIGHT: f64 = 1e-6;

impl Samples {
    /// Samples at `cells` of a grid (flat indices, ascending) with the heights `values` (mm).
    pub fn of(frame: &Frame, grid: &Grid, cells: &[usize], values: Vec<f64>) -> Self {
        let column = |ix: usize| {
            let parts = frame.along_x(grid.at(ix, 0).0);
            let products = (0..parts.len()).flat_map(|a| parts[a..].iter().map(|p| p * parts[a]).collect::<Vec<_>>());
            Column { products: products.collect(), parts }
        };
        let mut rows: Vec<Row> = Vec::new();
        for row in cells.chunk_by(|a, b| a / grid.nx == b / grid.nx) {
            let first = rows.last().map_or(0, |r| r.samples.end);
            let parts = frame.along_y(grid.at(0, row[0] / grid.nx).1);
            rows.push(Row { parts, samples: first..first + row.len() });
        }
        Self {
            priors: frame.priors(),
            degrees: frame.degrees().collect(),
            columns: (0..grid.nx).map(column).collect(),
            rows,
            column: cells.iter().map(|i| (i % grid.nx) as u32).collect(),
            profiles: cells.iter().filter_map(|&i| frame.profile(grid.position(i))).collect(),
            values,
        }
    }

    /// Weighted least squares.
    pub fn fit(&self, weights: &[f64]) -> Fit {
        let n = self.priors.len();
        let batches: Vec<Sums> = self.rows.par_chunks(BATCH).map(|rows| self.sums(rows, weights)).collect();
        let (mut normal, mut right) = (DMatrix::<f64>::zeros(n, n), DVector::<f64>::zeros(n));
        for batch in batches {
            normal.iter_mut().zip(batch.normal).for_each(|(sum, v)| *sum += v);
            right.iter_mut().zip(batch.right).for_each(|(sum, v)| *sum += v);
        }
        let ridge = 1e-9 * normal.diagonal().sum().max(1e-12) / n.max(1) as f64;
        for (a, prior) in self.priors.iter().enumerate() {
            normal[(a, a)] += ridge + prior;
        }
        // Only the lower triangle is filled; the factorisation reads no other.
        let factor = normal.cholesky();
        Fit { c: factor.as_ref().map_or_else(|| DVector::zeros(n), |f| f.solve(&right)), factor }
    }

    fn sums(&self, rows: &[Row], weights: &[f64]) -> Sums {
        let n = self.priors.len();
        let mut sums = Sums { normal: vec![0.0; n * n], right: vec![0.0; n] };
        for row in rows {
            let along = self.along(row, weights, &mut sums);
            self.spread(row, &along, &mut sums);
        }
        sums
    }

    /// Sums along a row; what belongs to a body line alone is complete and goes straight into `sums`.
    fn along(&self, row: &Row, weights: &[f64], sums: &mut Sums) -> Along {
        let (n, smooth, parts) = (self.priors.len(), self.degrees.len(), row.parts.len());
        let mut along = Along {
            products: vec![0.0; parts * (parts + 1) / 2],
            heights: vec![0.0; parts],
            profile: vec![0.0; (n - smooth) * parts],
        };
        for k in row.samples.clone().filter(|k| weights[*k] >= LEAST_WEIGHT) {
            let (w, column) = (weights[k], &self.columns[self.column[k] as usize]);
            add(&mut along.products, w, &column.products);
            add(&mut along.heights, w * self.values[k], &column.parts);
            let profile = self.profiles.get(k).map_or(&[][..], |p| &p[..]);
            for (j, &(a, va)) in profile.iter().enumerate() {
                add(&mut along.profile[(a - smooth) * parts..(a - smooth + 1) * parts], w * va, &column.parts);
                sums.right[a] += w * va * self.values[k];
                profile[j..].iter().for_each(|&(b, vb)| sums.normal[a * n + b] += w * va * vb);
            }
        }
        along
    }

    /// Spreads a row's sums over the parts in y.
    fn spread(&self, row: &Row, along: &Along, sums: &mut Sums) {
        let (n, smooth, parts) = (self.priors.len(), self.degrees.len(), row.parts.len());
        for (j, &(a, b)) in self.degrees.iter().enumerate() {
            sums.right[j] += along.heights[a] * row.parts[b];
            let column = &mut sums.normal[j * n..(j + 1) * n];
            for (k, &(c, d)) in self.degrees.iter().enumerate().skip(j) {
                column[k] += along.products[pair(a, c, parts)] * row.parts[b] * row.parts[d];
            }
            for (sum, of_x) in column[smooth..].iter_mut().zip(along.profile.chunks_exact(parts)) {
                *sum += of_x[a] * row.parts[b];
            }
        }
    }

    /// Heights less the shape with coefficients `c`, mm.
    pub fn residuals(&self, c: &DVector<f64>) -> Vec<f64> {
        let of_row = |row: &Row| {
            let mut of_x = vec![0.0; row.parts.len()];
            self.degrees.iter().zip(c.iter()).for_each(|(&(a, b), c)| of_x[a] += c * row.parts[b]);
            row.samples.clone().map(move |k| {
                let smooth = dot(&self.columns[self.column[k] as usize].parts, &of_x);
                let profile: f64 = self.profiles.get(k).map_or(0.0, |p| p.iter().map(|&(i, v)| v * c[i]).sum());
                self.values[k] - smooth - profile
            })
        };
        self.rows.par_iter().with_min_len(BATCH).flat_map_iter(of_row).collect()
    }
}

/// Normal matrix (lower triangle, by columns) and right-hand side.
struct Sums {
    normal: Vec<f64>,
    right: Vec<f64>,
}

/// What the samples of a row add up to: weights times two parts in x, times a part and the height, times a part and
/// each of the profile's terms.
struct Along {
    products: Vec<f64>,
    heights: Vec<f64>,
    profile: Vec<f64>,
}

/// Where the product of two parts stands among all pairs of `parts`.
fn pair(a: usize, b: usize, parts: usize) -> usize {
    let (first, second) = (a.min(b), a.max(b));
    first * (2 * parts - first - 1) / 2 + second
}

fn add(sums: &mut [f64], times: f64, values: &[f64]) {
    sums.iter_mut().zip(values).for_each(|(sum, v)| *sum += times * v);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::Map;
    use crate::line::BodyLine;

    #[test]
    fn a_shape_made_of_the_terms_comes_back_with_and_without_a_line() {
        let grid = Grid { x0_mm: -40.0, y0_mm: -30.0, step_mm: 2.0, nx: 41, ny: 31 };
        let kink = |x: f64, y: f64| -0.02 * (y - 0.2 * x - 3.0).hypot(8.0);
        let bowl = |x: f64, y: f64| 3e-4 * x * x - 2e-4 * x * y + 1e-6 * y * y * y;
        let cells: Vec<usize> = (0..grid.len()).filter(|i| i % 7 != 3).collect();
        let line = BodyLine { normal_rad: (1.0f64).atan2(-0.2), offset_mm: 3.0 / 1.0198 };
        for line in [None, Some(line)] {
            let height = Map::from_fn(grid, |x, y| bowl(x, y) + if line.is_some() { kink(x, y) } else { 0.0 });
            let frame = Frame::over(&height, 6, line);
            let values = cells.iter().map(|&i| f64::from(height.values[i])).collect();
            let samples = Samples::of(&frame, &grid, &cells, values);
            let left = samples.residuals(&samples.fit(&vec![1.0; cells.len()]).c);
            let worst = left.iter().fold(0.0, |most: f64, l| most.max(l.abs()));
            // What terms are expected to be pulls a little; the kink is a curve that splines follow nearly.
            assert!(worst < if line.is_some() { 2e-3 } else { 1e-4 }, "{worst}");
            let weights: Vec<f64> = (0..cells.len()).map(|k| f64::from(u8::from(k % 2 == 0))).collect();
            let half = samples.residuals(&samples.fit(&weights).c);
            assert!(half.iter().zip(&left).any(|(a, b)| (a - b).abs() > 1e-9), "weights count");
        }
    }
}
