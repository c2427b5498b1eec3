//! What the panel was meant to be: a smooth surface fitted to the sound metal around the damage.
//!
//! A polynomial in both directions, fitted by weighted least squares with Geman and McClure's weight whose
//! scale shrinks from the depth of the damage to the level of the texture (graduated non-convexity, Blake
//! and Zisserman 1987), so that the damage does not pull it; then what still stands out is left out
//! altogether with a margin, and the fit made once more.
//!
//! A body line, where one is found, adds a profile across it (piecewise linear, free to change evenly along
//! the line), fitted in the same robust way from the sound stretches on either side of the damage.
//!
//! Limits: damage wider than about half of what was read is taken for shape.

use crate::grid::{Grid, Map};
use crate::line::{BodyLine, find_body_line, profile_knots};
use nalgebra::{DMatrix, DVector};

/// How the intended shape is found.
#[derive(Debug, Clone)]
pub struct IntendedSettings {
    /// Total degree of the polynomial. Six follows what is left of pose errors; more would follow dents.
    pub degree: usize,
    /// Distance between the cells that are fitted, mm.
    pub sample_mm: f64,
    /// What stands out less than this is sound, mm.
    pub sound_mm: f64,
    /// Sound metal nearer than this to what stands out is not trusted, mm.
    pub margin_mm: f64,
}

impl Default for IntendedSettings {
    fn default() -> Self {
        Self { degree: 6, sample_mm: 2.0, sound_mm: 0.002, margin_mm: 6.0 }
    }
}

/// The intended shape and the sound metal it rests on.
#[derive(Debug, Clone)]
pub struct Intended {
    /// Height of the intended shape, mm, on every cell that was read.
    pub shape: Map,
    /// Whether the cell counted as sound.
    pub sound: Vec<bool>,
    /// Root mean square of height less shape over the sound cells, mm.
    pub sound_rms_mm: f64,
    /// The body line that was kept, if one was found.
    pub line: Option<BodyLine>,
}

/// Fits the intended shape to a height map.
pub fn intended_shape(height: &Map, settings: &IntendedSettings) -> Intended {
    let grid = height.grid;
    let line = find_body_line(height);
    let frame = Frame::over(height, settings.degree, line);
    let stride = ((settings.sample_mm / grid.step_mm).round() as usize).max(1);
    let cells: Vec<usize> = (0..grid.len())
        .filter(|i| height.values[*i].is_finite())
        .filter(|i| {
            let near = line.is_some_and(|l| l.across_along(grid.position(*i)).0.abs() < DENSE_MM);
            near || (i % grid.nx) % stride == 0 && (i / grid.nx) % stride == 0
        })
        .collect();
    let rows: Vec<Row> = cells.iter().map(|&i| frame.row(grid.position(i))).collect();
    let value: Vec<f64> = cells.iter().map(|&i| f64::from(height.values[i])).collect();
    let n = frame.terms();
    let mut c = fit(n, &rows, &value, &vec![1.0; cells.len()]);
    let mut scale = 3.0 * spread(&residuals(&rows, &value, &c)).max(settings.sound_mm);
    loop {
        for _ in 0..3 {
            let weights: Vec<f64> =
                residuals(&rows, &value, &c).iter().map(|r| 1.0 / (1.0 + (r / scale).powi(2)).powi(2)).collect();
            c = fit(n, &rows, &value, &weights);
        }
        if scale <= settings.sound_mm {
            break;
        }
        scale = (scale * 0.6).max(settings.sound_mm);
    }
    let mut sound = vec![true; grid.len()];
    for _ in 0..2 {
        let off: Vec<bool> = (0..grid.len())
            .map(|i| (f64::from(height.values[i]) - frame.value(grid.position(i), &c)).abs() > 1.5 * settings.sound_mm)
            .collect();
        let off = widen(&keep_large(&off, &grid, MARKED_MM2), &grid, settings.margin_mm);
        sound = (0..grid.len()).map(|i| !off[i] && height.values[i].is_finite()).collect();
        let weights: Vec<f64> = cells.iter().map(|&i| if sound[i] { 1.0 } else { 0.0 }).collect();
        if weights.iter().sum::<f64>() < 0.2 * cells.len() as f64 {
            break;
        }
        c = fit(n, &rows, &value, &weights);
    }
    let shape = Map {
        grid,
        values: (0..grid.len())
            .map(|i| if height.values[i].is_finite() { frame.value(grid.position(i), &c) as f32 } else { f32::NAN })
            .collect(),
    };
    let squares: Vec<f64> =
        (0..grid.len()).filter(|&i| sound[i]).map(|i| f64::from(height.values[i] - shape.values[i]).powi(2)).collect();
    let sound_rms_mm = (squares.iter().sum::<f64>() / squares.len().max(1) as f64).sqrt();
    Intended { shape, sound, sound_rms_mm, line }
}

/// Every cell this near to a body line is fitted, mm.
const DENSE_MM: f64 = 14.0;

/// Smaller marks are texture.
const MARKED_MM2: f64 = 6.0;

/// The terms of one place that are not zero: index and value.
type Row = Vec<(usize, f64)>;

struct Frame {
    centre: (f64, f64),
    half: (f64, f64),
    degree: usize,
    line: Option<BodyLine>,
    knots: Vec<f64>,
}

impl Frame {
    fn over(height: &Map, degree: usize, line: Option<BodyLine>) -> Self {
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

    fn terms(&self) -> usize {
        (self.degree + 1) * (self.degree + 2) / 2 + 2 * self.knots.len()
    }

    /// Legendre products, so that the normal equations stay well conditioned; then the line's profile.
    fn row(&self, at: (f64, f64)) -> Row {
        let px = legendre((at.0 - self.centre.0) / self.half.0, self.degree);
        let py = legendre((at.1 - self.centre.1) / self.half.1, self.degree);
        let mut out = Vec::with_capacity((self.degree + 1) * (self.degree + 2) / 2 + 4);
        for d in 0..=self.degree {
            for j in 0..=d {
                out.push((out.len(), px[d - j] * py[j]));
            }
        }
        let Some(line) = &self.line else { return out };
        let (across, along) = line.across_along(at);
        let k = self.knots.partition_point(|&knot| knot <= across).clamp(1, self.knots.len() - 1);
        let t = (across - self.knots[k - 1]) / (self.knots[k] - self.knots[k - 1]);
        let (first, along) = (out.len(), along / self.half.0.max(self.half.1));
        for (knot, hat) in [(k - 1, 1.0 - t), (k, t)] {
            out.push((first + 2 * knot, hat));
            out.push((first + 2 * knot + 1, hat * along));
        }
        out
    }

    fn value(&self, at: (f64, f64), c: &DVector<f64>) -> f64 {
        dot(&self.row(at), c)
    }
}

fn dot(row: &Row, c: &DVector<f64>) -> f64 {
    row.iter().map(|&(i, v)| v * c[i]).sum()
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

fn fit(n: usize, rows: &[Row], value: &[f64], weights: &[f64]) -> DVector<f64> {
    let mut normal = DMatrix::<f64>::zeros(n, n);
    let mut right = DVector::<f64>::zeros(n);
    for ((row, v), w) in rows.iter().zip(value).zip(weights) {
        if *w < 1e-6 {
            continue;
        }
        for (k, &(a, va)) in row.iter().enumerate() {
            let wa = w * va;
            right[a] += wa * v;
            for &(b, vb) in &row[k..] {
                normal[(b, a)] += wa * vb;
            }
        }
    }
    let ridge = 1e-9 * normal.diagonal().sum().max(1e-12) / n.max(1) as f64;
    for a in 0..n {
        normal[(a, a)] += ridge;
    }
    // Only the lower triangle is filled; the factorisation reads no other.
    normal.cholesky().map_or_else(|| DVector::zeros(n), |f| f.solve(&right))
}

fn residuals(rows: &[Row], value: &[f64], c: &DVector<f64>) -> Vec<f64> {
    rows.iter().zip(value).map(|(r, v)| v - dot(r, c)).collect()
}

fn spread(r: &[f64]) -> f64 {
    (r.iter().map(|v| v * v).sum::<f64>() / r.len().max(1) as f64).sqrt()
}

/// Connected cells (four neighbours) of a mask as lists of flat indices.
pub fn areas(mask: &[bool], grid: &Grid) -> Vec<Vec<usize>> {
    let mut seen = vec![false; mask.len()];
    let mut out = Vec::new();
    for start in 0..mask.len() {
        if !mask[start] || seen[start] {
            continue;
        }
        seen[start] = true;
        let mut area = vec![start];
        let mut next = 0;
        while next < area.len() {
            let i = area[next];
            next += 1;
            let (ix, iy) = (i % grid.nx, i / grid.nx);
            let around = [
                (ix > 0).then(|| i - 1),
                (ix + 1 < grid.nx).then_some(i + 1),
                (iy > 0).then(|| i - grid.nx),
                (iy + 1 < grid.ny).then_some(i + grid.nx),
            ];
            for k in around.into_iter().flatten() {
                if mask[k] && !seen[k] {
                    seen[k] = true;
                    area.push(k);
                }
            }
        }
        out.push(area);
    }
    out
}

fn keep_large(mask: &[bool], grid: &Grid, least_mm2: f64) -> Vec<bool> {
    let mut out = vec![false; mask.len()];
    for area in areas(mask, grid) {
        if area.len() as f64 * grid.step_mm * grid.step_mm >= least_mm2 {
            area.iter().for_each(|&i| out[i] = true);
        }
    }
    out
}

/// Widens a mask by a square margin.
fn widen(mask: &[bool], grid: &Grid, by_mm: f64) -> Vec<bool> {
    let by = (by_mm / grid.step_mm).ceil() as usize;
    let pass = |mask: &[bool], stride: usize, along: usize| -> Vec<bool> {
        let mut out = vec![false; mask.len()];
        for i in (0..mask.len()).filter(|&i| mask[i]) {
            let at = (i / stride) % along;
            let (back, ahead) = (at.min(by), (along - 1 - at).min(by));
            (0..=back).for_each(|k| out[i - k * stride] = true);
            (0..=ahead).for_each(|k| out[i + k * stride] = true);
        }
        out
    };
    pass(&pass(mask, 1, grid.nx), grid.nx, grid.ny)
}
