//! The patch cut into cells: spline axes, the undeformed surface on them, and the places where the sheet is asked.

use crate::quadrature::{Convex, Disc, gauss, inside, outside};
use crate::shell::{Frame, Slopes};
use crate::spline::Axis;
use nalgebra::{DMatrix, Vector3};

/// Share of the sheet's stiffness that stands outside a round outline, where a cell is cut: enough to
/// keep splines with almost no sheet under them in their place.
const GHOST: f64 = 1e-6;

/// What of the rectangle is sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outline {
    /// All of it.
    Rectangle,
    /// The disc in its middle of this diameter, mm.
    Disc(f64),
}

/// Values of the 16 splines of a cell and their derivatives: `N  N,1  N,2  N,11  N,22  N,12`.
pub type Shape = [[f64; 16]; 6];

/// A place where the sheet's section is asked.
#[derive(Debug, Clone)]
pub struct Point {
    /// Place, mm.
    pub at: [f64; 2],
    /// First node of the cell.
    pub node: usize,
    /// Splines.
    pub shape: Shape,
    /// Sheet area it stands for, mm².
    pub area: f64,
    /// Undeformed frame.
    pub frame: Frame,
    /// Whether there is sheet; else a faint elastic stand-in.
    pub sheet: bool,
}

/// Cells, nodes and points of a patch. Node `(ix, iy)` has index `ix * y.splines() + iy`.
#[derive(Debug, Clone)]
pub struct Mesh {
    /// Axis along x.
    pub x: Axis,
    /// Axis along y.
    pub y: Axis,
    /// Outline.
    pub outline: Outline,
    /// Coefficients of the undeformed surface.
    pub rest: Vec<Vector3<f64>>,
    /// Nodes that move anything.
    pub active: Vec<bool>,
    /// Points, cell by cell, cells by `ix` then `iy`.
    pub points: Vec<Point>,
    /// First point of every cell column, and the end.
    pub columns: Vec<usize>,
}

impl Mesh {
    /// A patch over the two axes whose undeformed surface is `z0(x, y)`; `gauss_points` each way a cell.
    /// `None` where that surface folds.
    pub fn new(x: Axis, y: Axis, outline: Outline, z0: &dyn Fn(f64, f64) -> f64, gauss_points: usize) -> Option<Self> {
        Self::mapped(x, y, outline, &|u, v| Vector3::new(u, v, z0(u, v)), gauss_points)
    }

    /// A patch whose undeformed surface is any map of the two axes into space, which need not lie over the plane.
    /// `None` where it folds.
    pub fn mapped(
        x: Axis,
        y: Axis,
        outline: Outline,
        place: &dyn Fn(f64, f64) -> Vector3<f64>,
        gauss_points: usize,
    ) -> Option<Self> {
        let rest = interpolate(&x, &y, place);
        let active = vec![false; rest.len()];
        let mut mesh = Self { x, y, outline, rest, active, points: Vec::new(), columns: vec![0] };
        for cx in 0..mesh.x.cells() {
            for cy in 0..mesh.y.cells() {
                mesh.add_cell(cx, cy, gauss_points)?;
            }
            mesh.columns.push(mesh.points.len());
        }
        Some(mesh)
    }

    fn add_cell(&mut self, cx: usize, cy: usize, n: usize) -> Option<()> {
        let x = [self.x.breaks[cx], self.x.breaks[cx + 1]];
        let y = [self.y.breaks[cy], self.y.breaks[cy + 1]];
        let (within, without) = match self.region() {
            Some(disc) if !holds_all(&disc, x, y) => (inside(&disc, x, y, n + 1), outside(&disc, x, y, n)),
            _ => (whole(x, y, n), Vec::new()),
        };
        if within.is_empty() {
            return Some(());
        }
        let node = cx * self.y.splines() + cy;
        for a in 0..4 {
            for b in 0..4 {
                self.active[node + a * self.y.splines() + b] = true;
            }
        }
        for (list, sheet) in [(within, true), (without, false)] {
            for (px, py, w) in list {
                let shape = self.shape(cx, cy, px, py);
                let frame = Frame::of(&self.slopes(node, &shape, &self.rest))?;
                let area = w * frame.area * if sheet { 1.0 } else { GHOST };
                self.points.push(Point { at: [px, py], node, shape, area, frame, sheet });
            }
        }
        Some(())
    }

    /// The disc of a round outline.
    pub fn region(&self) -> Option<Disc> {
        match self.outline {
            Outline::Rectangle => None,
            Outline::Disc(d) => Some(Disc { centre: [0.0, 0.0], radius: 0.5 * d }),
        }
    }

    /// Whether a place is on the sheet.
    pub fn holds(&self, x: f64, y: f64) -> bool {
        let (bx, by) = (&self.x.breaks, &self.y.breaks);
        match self.outline {
            Outline::Rectangle => x >= bx[0] && x <= bx[bx.len() - 1] && y >= by[0] && y <= by[by.len() - 1],
            Outline::Disc(d) => x.hypot(y) <= 0.5 * d,
        }
    }

    /// First node and splines at a place.
    pub fn locate(&self, x: f64, y: f64) -> (usize, Shape) {
        let (cx, cy) = (self.x.cell(x), self.y.cell(y));
        (cx * self.y.splines() + cy, self.shape(cx, cy, x, y))
    }

    fn shape(&self, cx: usize, cy: usize, x: f64, y: f64) -> Shape {
        let (fx, fy) = (self.x.at(cx, x), self.y.at(cy, y));
        let product = |i: usize, j: usize| std::array::from_fn(|k| fx[i][k / 4] * fy[j][k % 4]);
        [product(0, 0), product(1, 0), product(0, 1), product(2, 0), product(0, 2), product(1, 1)]
    }

    /// The point of sheet nearest to a place among those of its cell.
    pub fn nearest_point(&self, x: f64, y: f64) -> Option<usize> {
        let (cx, cy) = (self.x.cell(x), self.y.cell(y));
        let node = cx * self.y.splines() + cy;
        let column = self.columns[cx]..self.columns[cx + 1];
        let first = column.start + self.points[column.clone()].partition_point(|p| p.node < node);
        let of_cell =
            (first..column.end).take_while(|i| self.points[*i].node == node).filter(|i| self.points[*i].sheet);
        let far = |i: usize| (self.points[i].at[0] - x).powi(2) + (self.points[i].at[1] - y).powi(2);
        of_cell.min_by(|a, b| far(*a).total_cmp(&far(*b)))
    }

    /// Nodes of the cell whose first node is `node`, in the order of `Shape`.
    pub fn nodes(&self, node: usize) -> [usize; 16] {
        let ny = self.y.splines();
        std::array::from_fn(|k| node + k / 4 * ny + k % 4)
    }

    /// Derivatives of the surface with coefficients `places`.
    pub fn slopes(&self, node: usize, shape: &Shape, places: &[Vector3<f64>]) -> Slopes {
        let mut sum = [Vector3::zeros(); 5];
        for (k, n) in self.nodes(node).into_iter().enumerate() {
            for (d, value) in sum.iter_mut().enumerate() {
                *value += shape[d + 1][k] * places[n];
            }
        }
        sum
    }

    /// Value of the field with coefficients `places` at a located place.
    pub fn value(&self, node: usize, shape: &Shape, places: &[Vector3<f64>]) -> Vector3<f64> {
        self.nodes(node).into_iter().enumerate().map(|(k, n)| shape[0][k] * places[n]).sum()
    }

    /// Value at `(x, y)`.
    pub fn at(&self, x: f64, y: f64, places: &[Vector3<f64>]) -> Vector3<f64> {
        let (node, shape) = self.locate(x, y);
        self.value(node, &shape, places)
    }
}

fn whole(x: [f64; 2], y: [f64; 2], n: usize) -> Vec<(f64, f64, f64)> {
    let rule = gauss(n);
    let scaled = |range: [f64; 2], (s, w): (f64, f64)| {
        (0.5 * (range[0] + range[1]) + 0.5 * (range[1] - range[0]) * s, 0.5 * (range[1] - range[0]) * w)
    };
    let along: Vec<_> = rule.iter().map(|p| scaled(x, *p)).collect();
    let across: Vec<_> = rule.iter().map(|p| scaled(y, *p)).collect();
    along.iter().flat_map(|(px, wx)| across.iter().map(move |(py, wy)| (*px, *py, wx * wy))).collect()
}

fn holds_all(disc: &Disc, x: [f64; 2], y: [f64; 2]) -> bool {
    x.iter().all(|px| disc.cut(*px).is_some_and(|(low, high)| low <= y[0] && high >= y[1]))
}

/// Coefficients of the spline surface through `place` at the Greville places.
fn interpolate(x: &Axis, y: &Axis, place: &dyn Fn(f64, f64) -> Vector3<f64>) -> Vec<Vector3<f64>> {
    let (nx, ny) = (x.splines(), y.splines());
    let matrix = |axis: &Axis| {
        let n = axis.splines();
        let mut matrix = DMatrix::zeros(n, n);
        for i in 0..n {
            let cell = axis.cell(axis.greville(i));
            for (r, v) in axis.at(cell, axis.greville(i))[0].into_iter().enumerate() {
                matrix[(i, cell + r)] += v;
            }
        }
        matrix.lu()
    };
    let (along, across) = (matrix(x), matrix(y));
    let places = DMatrix::from_fn(nx, ny, |i, j| place(x.greville(i), y.greville(j)));
    let [px, py, pz] = [0, 1, 2].map(|c| {
        let known = "Greville places determine a spline (Schoenberg and Whitney)";
        let first = along.solve(&places.map(|p| p[c])).expect(known);
        across.solve(&first.transpose()).expect(known)
    });
    (0..nx * ny).map(|n| (n % ny, n / ny)).map(|at| Vector3::new(px[at], py[at], pz[at])).collect()
}
