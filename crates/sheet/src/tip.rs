//! What touches the sheet: a rigid tip that slides on it, or a patch of even pressure.

use crate::mesh::{Mesh, Shape};
use crate::patch::columns;
use crate::quadrature::{Bar, Convex, Disc, inside};
use crate::stencil::Stencil;
use nalgebra::{Matrix3, Vector3};
use serde::{Deserialize, Serialize};

/// Shape of a tip, tab or knock-down head.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "shape", rename_all = "snake_case", deny_unknown_fields)]
pub enum Tip {
    /// A ball.
    Sphere {
        /// Radius, mm.
        radius_mm: f64,
    },
    /// A flat round face.
    Disc {
        /// Radius, mm.
        radius_mm: f64,
    },
    /// A flat face along x and y.
    Rectangle {
        /// Along x, mm.
        width_mm: f64,
        /// Along y, mm.
        height_mm: f64,
    },
    /// A flat face, turned.
    Strip {
        /// Long side, mm.
        length_mm: f64,
        /// Short side, mm.
        width_mm: f64,
        /// Turn of the long side from x, degrees.
        #[serde(default)]
        angle_deg: f64,
    },
    /// A single point.
    Point,
}

impl Tip {
    /// What it covers when it stands at `centre`; nothing for a point.
    pub fn footprint(&self, centre: [f64; 2]) -> Option<Box<dyn Convex>> {
        match *self {
            Self::Sphere { radius_mm } | Self::Disc { radius_mm } => Some(Box::new(Disc { centre, radius: radius_mm })),
            Self::Rectangle { width_mm, height_mm } => {
                Some(Box::new(Bar { centre, half: [0.5 * width_mm, 0.5 * height_mm], turn: 0.0 }))
            }
            Self::Strip { length_mm, width_mm, angle_deg } => {
                let half = [0.5 * length_mm, 0.5 * width_mm];
                Some(Box::new(Bar { centre, half, turn: angle_deg.to_radians() }))
            }
            Self::Point => None,
        }
    }

    /// Smallest extent, mm.
    pub fn narrowest(&self) -> f64 {
        match *self {
            Self::Sphere { radius_mm } | Self::Disc { radius_mm } => 2.0 * radius_mm,
            Self::Rectangle { width_mm: a, height_mm: b } | Self::Strip { length_mm: a, width_mm: b, .. } => a.min(b),
            Self::Point => 0.0,
        }
    }

    /// Half its extent along x and y, mm.
    pub fn half(&self) -> [f64; 2] {
        match *self {
            Self::Sphere { radius_mm } | Self::Disc { radius_mm } => [radius_mm; 2],
            Self::Rectangle { width_mm, height_mm } => [0.5 * width_mm, 0.5 * height_mm],
            Self::Strip { length_mm, width_mm, angle_deg } => {
                let (s, c) = angle_deg.to_radians().sin_cos();
                [0.5 * (length_mm * c.abs() + width_mm * s.abs()), 0.5 * (length_mm * s.abs() + width_mm * c.abs())]
            }
            Self::Point => [0.0; 2],
        }
    }
}

/// Overlap over which touching sets in, mm: a contact that starts with a jump in stiffness keeps Newton's method
/// hopping on and off.
const ROUNDING: f64 = 0.002;

/// A place of the sheet that a tip may touch or load.
struct Touched {
    node: usize,
    shape: Shape,
    area: f64,
}

/// Places of the sheet under a footprint, each with the area it stands for.
fn covered(mesh: &Mesh, footprint: &dyn Convex, n: usize) -> Vec<Touched> {
    let mut touched = Vec::new();
    for cx in 0..mesh.x.cells() {
        for cy in 0..mesh.y.cells() {
            let x = [mesh.x.breaks[cx], mesh.x.breaks[cx + 1]];
            let y = [mesh.y.breaks[cy], mesh.y.breaks[cy + 1]];
            for (px, py, area) in inside(footprint, x, y, n) {
                if mesh.holds(px, py) {
                    let (node, shape) = mesh.locate(px, py);
                    touched.push(Touched { node, shape, area });
                }
            }
        }
    }
    touched
}

/// A rigid tip that can touch the sheet without friction.
pub struct Contact {
    /// Where it stands, mm.
    centre: [f64; 2],
    /// Way it moves: −1 inward, from outside; +1 outward, from inside.
    pub way: f64,
    /// Radius of a ball to the sheet's middle, mm; none for a flat face.
    ball: Option<f64>,
    /// Pressure a mm of overlap, N/mm³.
    stiffness: f64,
    touched: Vec<Touched>,
}

/// What a contact adds.
pub struct Pressed {
    /// Derivative of its energy by the tip's height: `way` times the tip's force, N.
    pub by_level: f64,
    /// Its second derivative, N/mm.
    pub by_level_twice: f64,
    /// Derivative of the nodes' forces by the tip's height: node and N/mm.
    pub coupling: Vec<(usize, Vector3<f64>)>,
    /// Area touched, mm².
    pub area: f64,
}

impl Contact {
    /// A tip at `centre`; the sheet is `thickness` thick of modulus `e_mpa`, which is how much it gives across itself.
    pub fn new(mesh: &Mesh, tip: &Tip, centre: [f64; 2], way: f64, thickness: f64, e_mpa: f64) -> Self {
        let ball = match tip {
            Tip::Sphere { radius_mm } => Some(radius_mm + 0.5 * thickness),
            _ => None,
        };
        let footprint = tip.footprint(centre);
        let touched = footprint.map(|f| covered(mesh, f.as_ref(), 4)).unwrap_or_default();
        Self { centre, way, ball, stiffness: e_mpa / thickness, touched }
    }

    /// Overlap (positive when touching) of a place of the sheet with the tip at `level`, and the way out of it.
    fn overlap(&self, place: &Vector3<f64>, level: f64) -> (f64, Vector3<f64>, f64) {
        match self.ball {
            Some(radius) => {
                let centre = Vector3::new(self.centre[0], self.centre[1], level - self.way * radius);
                let from = place - centre;
                let distance = from.norm();
                (radius - distance, from / distance, distance)
            }
            None => (self.way * (level - place.z), Vector3::new(0.0, 0.0, self.way), f64::INFINITY),
        }
    }

    /// Pressure at an overlap, MPa, and its slope, MPa/mm.
    fn pressure(&self, overlap: f64) -> (f64, f64) {
        if overlap >= ROUNDING {
            return (self.stiffness * overlap, self.stiffness);
        }
        let s = overlap + ROUNDING;
        (self.stiffness * s * s / (4.0 * ROUNDING), self.stiffness * s / (2.0 * ROUNDING))
    }

    /// Level of the tip at which it first touches the surface `places`, mm.
    pub fn first_touch(&self, mesh: &Mesh, places: &[Vector3<f64>]) -> f64 {
        let levels = self.touched.iter().filter_map(|t| {
            let p = mesh.value(t.node, &t.shape, places);
            match self.ball {
                None => Some(p.z),
                Some(radius) => {
                    let aside = (p.x - self.centre[0]).powi(2) + (p.y - self.centre[1]).powi(2);
                    // the ball's surface at this distance from its axis stands back by r − √(r² − aside)
                    (aside < radius * radius).then(|| p.z + self.way * (radius - (radius * radius - aside).sqrt()))
                }
            }
        });
        // the first level met on the way
        levels.map(|l| l * self.way).fold(f64::INFINITY, f64::min) * self.way
    }

    /// Adds its forces on the surface `places`, and its stiffness where that is asked.
    pub fn add(
        &self,
        mesh: &Mesh,
        places: &[Vector3<f64>],
        level: f64,
        force: &mut [Vector3<f64>],
        mut stiffness: Option<&mut Stencil>,
    ) -> Pressed {
        let mut pressed = Pressed { by_level: 0.0, by_level_twice: 0.0, coupling: Vec::new(), area: 0.0 };
        for t in &self.touched {
            let place = mesh.value(t.node, &t.shape, places);
            let (overlap, out, distance) = self.overlap(&place, level);
            if overlap <= -ROUNDING {
                continue;
            }
            let (pressure, k) = self.pressure(overlap);
            let (push, k) = (pressure * t.area, k * t.area);
            let gradient = -push * out;
            let square = out * out.transpose();
            let block = k * square - (push / distance) * (Matrix3::identity() - square);
            let across = -block.column(2);
            pressed.by_level -= gradient.z;
            pressed.by_level_twice += block[(2, 2)];
            pressed.area += t.area;
            let nodes = mesh.nodes(t.node);
            for (i, row) in nodes.into_iter().enumerate() {
                force[row] += t.shape[0][i] * gradient;
                pressed.coupling.push((row, t.shape[0][i] * across));
                let Some(stiffness) = &mut stiffness else { continue };
                for (j, column) in nodes.into_iter().enumerate() {
                    stiffness.add(row, column, &columns(&(t.shape[0][i] * t.shape[0][j] * block)));
                }
            }
        }
        pressed
    }
}

/// A patch of even pressure along z: a textbook load, a glued tab.
pub struct Load {
    /// Share of the force each node takes; their sum is 1.
    pub share: Vec<(usize, f64)>,
    /// Way it moves: −1 inward, +1 outward.
    pub way: f64,
}

impl Load {
    /// Even pressure under a tip that stands at `centre`; all at one place for [`Tip::Point`].
    pub fn new(mesh: &Mesh, tip: &Tip, centre: [f64; 2], way: f64) -> Self {
        let touched = match tip.footprint(centre) {
            Some(footprint) => covered(mesh, footprint.as_ref(), 4),
            None => {
                let (node, shape) = mesh.locate(centre[0], centre[1]);
                vec![Touched { node, shape, area: 1.0 }]
            }
        };
        let area: f64 = touched.iter().map(|t| t.area).sum();
        let mut share = std::collections::BTreeMap::new();
        for t in &touched {
            for (i, node) in mesh.nodes(t.node).into_iter().enumerate() {
                *share.entry(node).or_insert(0.0) += t.shape[0][i] * t.area / area;
            }
        }
        Self { share: share.into_iter().collect(), way }
    }

    /// Mean height of what it covers, mm.
    pub fn level(&self, places: &[Vector3<f64>]) -> f64 {
        self.share.iter().map(|(n, s)| s * places[*n].z).sum()
    }
}
