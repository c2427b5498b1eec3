//! What stays in the sheet: stretch, bending and tension at its points, and as maps.

use crate::panel::{Panel, largest};
use crate::strain::Modes;
use crate::yielding::equivalent;
use dentwright_surface::{Grid, Map};
use std::f64::consts::FRAC_PI_2;

/// What stays at one place of the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Remains {
    /// Place, mm.
    pub at_mm: [f64; 2],
    /// Largest principal plastic strain of the middle, mean over the thickness.
    pub stretch: f64,
    /// Surface gained for good.
    pub area: f64,
    /// Plastic bending strain on the outer face, over the middle's: the principal one that is larger in size.
    pub bent_outer: f64,
    /// The same on the inner face.
    pub bent_inner: f64,
    /// Equivalent plastic strain of the most worked layer.
    pub spent: f64,
    /// Membrane stress, larger in size of the two principal ones, MPa; tension positive.
    pub tension_mpa: f64,
    /// Its direction from x, rad.
    pub direction: f64,
}

/// A map of what stays.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Layer {
    /// [`Remains::stretch`].
    Stretch,
    /// [`Remains::bent_outer`].
    BentOuter,
    /// [`Remains::bent_inner`].
    BentInner,
    /// [`Remains::tension_mpa`].
    Tension,
    /// [`Remains::direction`], nearest point's.
    Direction,
}

/// What stays at every point of the sheet as it stands.
pub fn remains(panel: &Panel) -> Vec<Remains> {
    panel.sheet_points().filter_map(|i| at_point(panel, i)).collect()
}

/// Largest equivalent stress on a face of a sheet that is bent within its yield stress, MPa; none where it folds.
pub fn face_stress(panel: &Panel) -> Option<f64> {
    let (patch, t) = (&panel.patch, panel.patch.layers.thickness());
    let at = |i: usize| {
        let section = patch.strained(i).ok()?.section;
        let face = |side: f64| equivalent(&(section.force / t + section.moment * (side * 6.0 / (t * t))));
        Some(face(1.0).max(face(-1.0)))
    };
    panel.sheet_points().map(at).try_fold(0.0, |most, one| Some(f64::max(most, one?)))
}

fn at_point(panel: &Panel, i: usize) -> Option<Remains> {
    let patch = &panel.patch;
    let (n, t) = (patch.layers.len(), patch.layers.thickness());
    let memory = &patch.memory[i * n..(i + 1) * n];
    let middle: Modes = memory.iter().zip(&patch.layers.weight).map(|(m, w)| m.plastic * (w / t)).sum();
    // conjugate modes are sums; half of them are the tensor's
    let stress = patch.strained(i).ok()?.section.force * (0.5 / t);
    let turn = 0.5 * stress[2].atan2(stress[1]);
    let (tension, direction) =
        if stress[0] >= 0.0 { (major(&stress), turn) } else { (major(&stress), turn + FRAC_PI_2) };
    Some(Remains {
        at_mm: patch.mesh.points[i].at,
        stretch: largest(&middle),
        area: 2.0 * middle[0],
        bent_outer: major(&(memory[n - 1].plastic - middle)),
        bent_inner: major(&(memory[0].plastic - middle)),
        spent: memory.iter().map(|m| m.spent).fold(0.0, f64::max),
        tension_mpa: tension,
        direction,
    })
}

/// Principal value that is larger in size.
fn major(modes: &Modes) -> f64 {
    modes[0] + modes[0].signum() * modes[1].hypot(modes[2])
}

impl Remains {
    /// The value of a layer.
    pub fn of(&self, layer: Layer) -> f64 {
        match layer {
            Layer::Stretch => self.stretch,
            Layer::BentOuter => self.bent_outer,
            Layer::BentInner => self.bent_inner,
            Layer::Tension => self.tension_mpa,
            Layer::Direction => self.direction,
        }
    }
}

/// A layer of what stays on a grid whose frame has the panel's origin at `origin_mm`; NaN off the panel. Each cell has
/// the mean of the points near it, nearer ones counting more.
pub fn layer_map(panel: &Panel, points: &[Remains], layer: Layer, grid: Grid, origin_mm: [f64; 2]) -> Map {
    let mesh = &panel.patch.mesh;
    let mut bins: Vec<Vec<usize>> = vec![Vec::new(); mesh.x.cells() * mesh.y.cells()];
    for (i, p) in points.iter().enumerate() {
        bins[mesh.x.cell(p.at_mm[0]) * mesh.y.cells() + mesh.y.cell(p.at_mm[1])].push(i);
    }
    Map::from_fn(grid, |x, y| {
        let (x, y) = (x - origin_mm[0], y - origin_mm[1]);
        if !mesh.holds(x, y) {
            return f64::NAN;
        }
        let near = &bins[mesh.x.cell(x) * mesh.y.cells() + mesh.y.cell(y)];
        let far = |i: usize| (points[i].at_mm[0] - x).powi(2) + (points[i].at_mm[1] - y).powi(2);
        if layer == Layer::Direction {
            let nearest = near.iter().copied().min_by(|a, b| far(*a).total_cmp(&far(*b)));
            return nearest.map_or(f64::NAN, |i| points[i].direction);
        }
        let (sum, weight) = near.iter().fold((0.0, 0.0), |(sum, weight), i| {
            let w = 1.0 / (far(*i) + 0.01);
            (sum + w * points[*i].of(layer), weight + w)
        });
        sum / weight
    })
}
