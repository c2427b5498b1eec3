//! Cubic B-splines on uneven breaks, one axis of the patch.

/// An axis cut into cells; the splines are smooth to the second derivative and end at both ends.
#[derive(Debug, Clone)]
pub struct Axis {
    /// Growing ends of the cells, mm.
    pub breaks: Vec<f64>,
    knots: Vec<f64>,
}

/// Values and first and second derivatives of the four splines that live on a cell.
pub type Four = [[f64; 4]; 3];

impl Axis {
    /// An axis with these growing ends of cells.
    pub fn new(breaks: Vec<f64>) -> Self {
        let (first, last) = (breaks[0], breaks[breaks.len() - 1]);
        let mut knots = vec![first; 3];
        knots.extend(&breaks);
        knots.extend([last; 3]);
        Self { breaks, knots }
    }

    /// Cells.
    pub fn cells(&self) -> usize {
        self.breaks.len() - 1
    }

    /// Splines, three more than cells. Cell `c` carries splines `c` to `c + 3`.
    pub fn splines(&self) -> usize {
        self.cells() + 3
    }

    /// Cell in which `x` lies; the nearest one outside.
    pub fn cell(&self, x: f64) -> usize {
        self.breaks.partition_point(|b| *b <= x).saturating_sub(1).min(self.cells() - 1)
    }

    /// Middle of the region a spline governs (Greville abscissa), mm: a spline surface whose
    /// coefficients are these places is the axis itself.
    pub fn greville(&self, spline: usize) -> f64 {
        (self.knots[spline + 1] + self.knots[spline + 2] + self.knots[spline + 3]) / 3.0
    }

    /// The four splines of cell `c` at `x` (de Boor's recursion).
    pub fn at(&self, c: usize, x: f64) -> Four {
        let k = &self.knots;
        let i = c + 3;
        let mut table = [[0.0; 4]; 4];
        table[0][0] = 1.0;
        for degree in 1..4 {
            for r in 0..=degree {
                // spline i - degree + r of this degree
                let j = i + r - degree;
                let mut value = 0.0;
                if r > 0 {
                    value += table[degree - 1][r - 1] * (x - k[j]) / (k[j + degree] - k[j]);
                }
                if r < degree {
                    value += table[degree - 1][r] * (k[j + degree + 1] - x) / (k[j + degree + 1] - k[j + 1]);
                }
                table[degree][r] = value;
            }
        }
        let slope = |degree: usize, lower: &[f64; 4]| -> [f64; 4] {
            std::array::from_fn(|r| {
                if r > degree {
                    return 0.0;
                }
                let j = i + r - degree;
                let mut value = 0.0;
                if r > 0 {
                    value += lower[r - 1] / (k[j + degree] - k[j]);
                }
                if r < degree {
                    value -= lower[r] / (k[j + degree + 1] - k[j + 1]);
                }
                degree as f64 * value
            })
        };
        let quadratic_slope = slope(2, &table[1]);
        [table[3], slope(3, &table[2]), slope(3, &quadratic_slope)]
    }
}

/// Breaks from `low` to `high`: cells of `fine` within `reach` of each focus, growing by `growth` a cell
/// away from them up to `coarse`.
pub fn graded(low: f64, high: f64, foci: &[Focus], growth: f64, coarse: f64) -> Vec<f64> {
    let size = |x: f64| {
        foci.iter().map(|f| f.fine + (growth - 1.0) * ((x - f.at).abs() - f.reach).max(0.0)).fold(coarse, f64::min)
    };
    // equal steps of ∫ dx/size
    let n = (((high - low) / foci.iter().map(|f| f.fine).fold(coarse, f64::min) * 8.0).ceil() as usize).max(64);
    let mut sum = vec![0.0];
    let dx = (high - low) / n as f64;
    for i in 0..n {
        sum.push(sum[i] + dx / size(low + (i as f64 + 0.5) * dx));
    }
    let cells = (sum[n] - 1e-9).ceil().max(4.0);
    let mut breaks = vec![low];
    let mut at = 0;
    for c in 1..cells as usize {
        let wanted = sum[n] * c as f64 / cells;
        while sum[at + 1] < wanted {
            at += 1;
        }
        breaks.push(low + dx * (at as f64 + (wanted - sum[at]) / (sum[at + 1] - sum[at])));
    }
    breaks.push(high);
    breaks
}

/// A place that wants small cells.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Focus {
    /// Where, mm.
    pub at: f64,
    /// Half length of the fine stretch, mm.
    pub reach: f64,
    /// Cell size there, mm.
    pub fine: f64,
}
