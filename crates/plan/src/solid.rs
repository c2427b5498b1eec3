//! How far a place is from all that is solid behind a panel: never told more than it is, which is what the proofs of
//! clear ways rely on.

use crate::inner_side::{InnerSide, Wall};
use nalgebra::{Point3, Vector3};

/// What a place is near to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Near {
    /// The panel itself.
    Skin,
    /// A wall, by its place in the list.
    Wall(usize),
    /// A brace, by its place in the list.
    Brace(usize),
    /// A thing to keep away from, by its place in the list.
    Behind(usize),
}

/// An inner side made ready to be asked many times.
pub struct Solid<'a> {
    /// What was drawn.
    pub side: &'a InnerSide,
    /// Axes of the walls.
    axes: Vec<[Vector3<f64>; 3]>,
    /// Greatest distance of the panel's outline from the frame's middle, mm.
    far: f64,
    /// Change of slope a mm, at most.
    bend: f64,
}

impl<'a> Solid<'a> {
    /// Of a checked drawing.
    pub fn new(side: &'a InnerSide) -> Self {
        let far = side.outline.corners().iter().map(|c| c[0].hypot(c[1])).fold(0.0, f64::max);
        let [a, b, c] = side.curvature;
        let bend = 0.5 * (a + c).abs() + (0.5 * (a - c)).hypot(b);
        Self { side, axes: side.walls.iter().map(Wall::axes).collect(), far, bend }
    }

    /// A place in the frame of a wall.
    pub fn in_wall(&self, wall: usize, p: &Point3<f64>) -> Vector3<f64> {
        let d = p - Point3::from(self.side.walls[wall].origin);
        let [a, b, c] = &self.axes[wall];
        Vector3::new(d.dot(a), d.dot(b), d.dot(c))
    }

    /// Distance from a place to the nearest solid thing, mm, and what it is, the panel itself taken as `farther` mm
    /// farther away; things in `but` are passed over. Never more than the true distance.
    pub fn nearest(&self, p: &Point3<f64>, but: &[Near], farther: f64) -> (f64, Near) {
        let mut best = (f64::INFINITY, Near::Skin);
        let mut take = |d: f64, what: Near| {
            if d < best.0 && !but.contains(&what) {
                best = (d, what);
            }
        };
        take(self.skin(p) + farther, Near::Skin);
        (0..self.axes.len()).for_each(|i| take(self.wall(i, p), Near::Wall(i)));
        for (i, b) in self.side.braces.iter().enumerate() {
            let to_line = |l: &[[f64; 3]]| to_segment(p, &Point3::from(l[0]), &Point3::from(l[1])).0;
            take(b.line.windows(2).map(to_line).fold(f64::INFINITY, f64::min) - b.radius, Near::Brace(i));
        }
        for (i, b) in self.side.behind.iter().enumerate() {
            let out = [0, 1, 2].map(|k| (b.from[k].min(b.to[k]) - p[k]).max(p[k] - b.from[k].max(b.to[k])));
            let far = out.iter().map(|d| d.max(0.0).powi(2)).sum::<f64>().sqrt();
            let deep = out.iter().copied().fold(f64::NEG_INFINITY, f64::max).min(0.0);
            take(far + deep - b.keep, Near::Behind(i));
        }
        best
    }

    /// Distance from what of a wall is solid, mm: off its plane, and in it to the outline or to an opening's rim.
    fn wall(&self, wall: usize, p: &Point3<f64>) -> f64 {
        let q = self.in_wall(wall, p);
        let wall = &self.side.walls[wall];
        let flat = [q.x, q.y];
        let beyond = (-wall.outline.depth(flat)).max(0.0);
        let in_opening = wall.openings.iter().map(|o| o.outline.depth(flat)).fold(0.0, f64::max);
        q.z.hypot(beyond.max(in_opening))
    }

    /// Lower bound of the distance to the panel from behind it, mm: the greater of what lies between in height, over the
    /// steepest slope on the way, and of the way to the outline for a place beyond it.
    fn skin(&self, p: &Point3<f64>) -> f64 {
        let steepest = self.bend * self.far.max(p.x.hypot(p.y));
        let under = (self.side.height(p.x, p.y) - p.z) / steepest.hypot(1.0);
        under.max(-self.side.outline.depth([p.x, p.y]))
    }
}

/// Distance from a place to a straight line between two others, mm, and how far along the line it is nearest, 0 to 1.
pub fn to_segment(p: &Point3<f64>, a: &Point3<f64>, b: &Point3<f64>) -> (f64, f64) {
    let (d, e) = (b - a, p - a);
    let square = d.norm_squared();
    let s = if square > 0.0 { (d.dot(&e) / square).clamp(0.0, 1.0) } else { 0.0 };
    ((e - d * s).norm(), s)
}
