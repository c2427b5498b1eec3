//! How the patch is held: stiff or soft springs along its edges and along braces.

use crate::mesh::{Mesh, Outline, Shape};
use crate::quadrature::gauss;
use crate::shell::Slopes;
use crate::yielding::Metal;
use nalgebra::{Matrix3, Vector3};
use serde::{Deserialize, Serialize};

/// How an edge is held.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Hold {
    /// Neither moves nor turns.
    Clamped,
    /// Does not move, turns freely.
    Pinned,
    /// Not held.
    Free,
    /// Held by what stands for the rest of the panel.
    Spring(Springs),
    /// Held along the axes of the frame: a diaphragm, a plane of symmetry.
    Along {
        /// Against movement along x, y and z, N/mm².
        spring: [f64; 3],
        /// Against turning about the line, N.
        turning: f64,
    },
}

/// Springs along a line, per mm of it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Springs {
    /// Against movement in the sheet's plane, N/mm².
    pub in_plane: f64,
    /// Against movement out of it, N/mm².
    pub out_of_plane: f64,
    /// Against turning about the line, N.
    pub turning: f64,
}

impl Springs {
    /// Springs of a flat sheet that goes on to three times the patch's width and is clamped there. In the plane the
    /// ring's closed form (Lamé); out of it a guided strip; against turning an endless plate round a hole. An estimate
    /// without a source for panels.
    pub fn rest_of_panel(width_mm: f64, thickness_mm: f64, metal: &Metal) -> Self {
        let (t, nu, a) = (thickness_mm, metal.nu, 0.5 * width_mm);
        let d = metal.e_mpa * t.powi(3) / (12.0 * (1.0 - nu * nu));
        Self {
            in_plane: metal.e_mpa * t / ((1.0 - nu * nu) * a) * ((1.0 + nu) / 9.0 + 1.0 - nu) / (8.0 / 9.0),
            out_of_plane: 12.0 * d / (2.0 * a).powi(3),
            turning: d * (1.0 - nu) / a,
        }
    }

    /// The same for a panel that is curved and so carries itself: three times stiffer along it and against turning, six
    /// hundred times out of it. Ours, no published source.
    pub fn rest_of_curved_panel(width_mm: f64, thickness_mm: f64, metal: &Metal) -> Self {
        Self::rest_of_panel(width_mm, thickness_mm, metal).stiffer([3.0, 600.0])
    }

    /// So many times stiffer: along the sheet and against turning, and out of its plane.
    #[must_use]
    pub fn stiffer(&self, [along, out]: [f64; 2]) -> Self {
        Self { in_plane: along * self.in_plane, out_of_plane: out * self.out_of_plane, turning: along * self.turning }
    }
}

/// The four sides; a round outline is held by `left` all round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Edges {
    /// Side at low x.
    pub left: Hold,
    /// Side at high x.
    pub right: Hold,
    /// Side at low y.
    pub bottom: Hold,
    /// Side at high y.
    pub top: Hold,
}

impl Edges {
    /// All sides alike.
    pub fn all(hold: Hold) -> Self {
        Self { left: hold, right: hold, bottom: hold, top: hold }
    }
}

/// A held place of a line.
#[derive(Debug, Clone)]
pub struct Held {
    /// First node of its cell.
    pub node: usize,
    /// Splines.
    pub shape: Shape,
    /// Length it stands for, mm.
    length: f64,
    rest: Vector3<f64>,
    /// Against movement, N/mm².
    spring: Matrix3<f64>,
    turning: f64,
    /// Square to the line in the sheet's plane.
    across: Vector3<f64>,
    /// Whether it only pushes, along this sign of z.
    only: Option<f64>,
}

impl Held {
    /// Its springs a mm of line: in the sheet's plane, out of it, against turning; the sheet taken as level.
    pub(crate) fn springs(&self) -> Springs {
        Springs { in_plane: self.spring[(0, 0)], out_of_plane: self.spring[(2, 2)], turning: self.turning }
    }

    /// A place pulled to a height without friction, or where `only` is given pushed along that sign of z alone; `spring`
    /// in N/mm³ over the area in mm².
    pub(crate) fn to_height(
        (node, shape): (usize, Shape),
        area: f64,
        height: f64,
        spring: f64,
        only: Option<f64>,
    ) -> Self {
        let mut along_z = Matrix3::zeros();
        along_z[(2, 2)] = spring;
        let rest = Vector3::new(0.0, 0.0, height);
        Self { node, shape, length: area, rest, spring: along_z, turning: 0.0, across: Vector3::x(), only }
    }

    /// Force on the place, on `x,1` and on `x,2`, and their stiffness (9×9 by blocks).
    pub fn forces(&self, place: &Vector3<f64>, g: &Slopes) -> ([Vector3<f64>; 3], [[Matrix3<f64>; 3]; 3]) {
        let mut force = [Vector3::zeros(); 3];
        let mut stiffness = [[Matrix3::zeros(); 3]; 3];
        if self.only.is_some_and(|way| way * (self.rest.z - place.z) <= 0.0) {
            return (force, stiffness);
        }
        force[0] = self.length * self.spring * (place - self.rest);
        stiffness[0][0] = self.length * self.spring;
        let cross = g[0].cross(&g[1]);
        let area = cross.norm();
        let normal = cross / area;
        // energy ½k(n·ν)², δn = −(n·δx,α) a^α; the part of the stiffness that needs a turn already there is left out
        let dual = [g[1].cross(&normal) / area, normal.cross(&g[0]) / area];
        let turn = normal.dot(&self.across);
        let slope: [Vector3<f64>; 2] = std::array::from_fn(|a| -dual[a].dot(&self.across) * normal);
        for a in 0..2 {
            force[1 + a] = self.length * self.turning * turn * slope[a];
            for b in 0..2 {
                stiffness[1 + a][1 + b] = self.length * self.turning * slope[a] * slope[b].transpose();
            }
        }
        (force, stiffness)
    }
}

/// Held places of all edges. `membrane` is E t, `bending` the plate stiffness D, both of the sheet.
pub fn hold(mesh: &Mesh, edges: &Edges, membrane: f64, bending: f64) -> Vec<Held> {
    let (bx, by) = (&mesh.x.breaks, &mesh.y.breaks);
    let (x0, x1, y0, y1) = (bx[0], bx[bx.len() - 1], by[0], by[by.len() - 1]);
    let mut held = Vec::new();
    if let Outline::Disc(d) = mesh.outline {
        for (turn, weight) in around(mesh, 0.5 * d) {
            let (s, c) = turn.sin_cos();
            let at = [0.5 * d * c, 0.5 * d * s];
            held.extend(place(mesh, edges.left, at, [c, s], weight, membrane, bending));
        }
        return held;
    }
    for (hold, fixed, out) in [(edges.left, x0, -1.0), (edges.right, x1, 1.0)] {
        for (y, w) in along(by) {
            held.extend(place(mesh, hold, [fixed, y], [out, 0.0], w, membrane, bending));
        }
    }
    for (hold, fixed, out) in [(edges.bottom, y0, -1.0), (edges.top, y1, 1.0)] {
        for (x, w) in along(bx) {
            held.extend(place(mesh, hold, [x, fixed], [0.0, out], w, membrane, bending));
        }
    }
    held
}

/// Held places of a brace behind the sheet: a line it rests on, free to turn and to slide.
pub fn brace(mesh: &Mesh, [x0, y0, x1, y1]: [f64; 4], out_of_plane: f64) -> Vec<Held> {
    let length = (x1 - x0).hypot(y1 - y0);
    let n = (length / 2.0).ceil().max(1.0) as usize;
    let springs = Springs { in_plane: 0.0, out_of_plane, turning: 0.0 };
    (0..n)
        .map(|i| (i as f64 + 0.5) / n as f64)
        .map(|s| [x0 + s * (x1 - x0), y0 + s * (y1 - y0)])
        .filter(|p| mesh.holds(p[0], p[1]))
        .filter_map(|p| place(mesh, Hold::Spring(springs), p, [1.0, 0.0], length / n as f64, 0.0, 0.0))
        .collect()
}

fn place(
    mesh: &Mesh,
    hold: Hold,
    at: [f64; 2],
    out: [f64; 2],
    length: f64,
    membrane: f64,
    bending: f64,
) -> Option<Held> {
    // stiff enough that a fully stretched, fully bent sheet moves it by under a thousandth of a millimetre
    let (stiff, stiff_turn) = (50.0 * membrane, 500.0 * bending);
    let (node, shape) = mesh.locate(at[0], at[1]);
    let g = mesh.slopes(node, &shape, &mesh.rest);
    let normal = g[0].cross(&g[1]).normalize();
    let along = (g[1] * out[0] - g[0] * out[1]).normalize();
    let square = normal * normal.transpose();
    let even = |s: f64| Matrix3::from_diagonal_element(s);
    let (spring, turning) = match hold {
        Hold::Free => return None,
        Hold::Clamped => (even(stiff), stiff_turn),
        Hold::Pinned => (even(stiff), 0.0),
        Hold::Spring(s) => (s.in_plane * (even(1.0) - square) + s.out_of_plane * square, s.turning),
        Hold::Along { spring, turning } => (Matrix3::from_diagonal(&Vector3::from(spring)), turning),
    };
    Some(Held {
        node,
        shape,
        length,
        rest: mesh.value(node, &shape, &mesh.rest),
        spring,
        turning,
        across: along.cross(&normal),
        only: None,
    })
}

/// Three Gauss places a cell along a side.
fn along(breaks: &[f64]) -> Vec<(f64, f64)> {
    let rule = gauss(3);
    breaks
        .windows(2)
        .flat_map(|b| {
            let (middle, half) = (0.5 * (b[0] + b[1]), 0.5 * (b[1] - b[0]));
            rule.iter().map(move |(s, w)| (middle + half * s, half * w)).collect::<Vec<_>>()
        })
        .collect()
}

/// Angles round a disc and the length each stands for, cut where the rim crosses the cells' sides.
fn around(mesh: &Mesh, radius: f64) -> Vec<(f64, f64)> {
    use std::f64::consts::{PI, TAU};
    let mut cuts = vec![0.0, TAU];
    for b in mesh.x.breaks.iter().filter(|b| b.abs() < radius) {
        let turn = (b / radius).acos();
        cuts.extend([turn, TAU - turn]);
    }
    for b in mesh.y.breaks.iter().filter(|b| b.abs() < radius) {
        let turn = (b / radius).asin();
        cuts.extend([(turn + TAU) % TAU, PI - turn]);
    }
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    along(&cuts).into_iter().map(|(turn, w)| (turn, w * radius)).collect()
}
