//! The way in: how a bar is fed through an opening to where it stands.
//!
//! Ways are made backwards. The bar is drawn out through one place of the opening along its own middle line, turned so that
//! the line there keeps pointing the way it should; which way that is, how far the bar is twisted meanwhile, and whether
//! it is brought to the opening's middle are what is searched. Every way is proved clear (`clear.rs`).

use crate::clear::Room;
use crate::inner_side::{Opening, Wall};
use crate::solid::{Near, Solid};
use crate::tool::Capsule;
use nalgebra::{Isometry3, Point3, UnitQuaternion, Vector3};
use std::f64::consts::FRAC_PI_4;

/// Poses along the way are this far apart on the bar, mm.
const STRIDE: f64 = 5.0;
/// A corner of the bar is turned over this length to either side, mm.
const CORNER: f64 = 10.0;
/// Shares by which the bar is set square to the opening on its way out.
const SQUARE: [f64; 3] = [1.0, 0.5, 0.0];
/// Twists on the way out, rad.
const TWISTS: [f64; 5] = [0.0, FRAC_PI_4, -FRAC_PI_4, 2.0 * FRAC_PI_4, -2.0 * FRAC_PI_4];

/// A bar with its tip.
pub struct Shape {
    /// Corners of the middle line from the tip.
    pub corners: Vec<Point3<f64>>,
    /// Round lengths that hold all of it, tip included.
    pub parts: Vec<Capsule>,
    /// Length of the bar up to each corner, mm.
    along: Vec<f64>,
}

/// Where a standing bar passes an opening.
#[derive(Debug, Clone, Copy)]
pub struct Passing {
    /// Length of the bar behind the wall, mm.
    pub inside: f64,
    /// Place in the wall's plane.
    pub at: [f64; 2],
}

impl Shape {
    /// From corners and round lengths.
    pub fn new(corners: Vec<Point3<f64>>, parts: Vec<Capsule>) -> Self {
        let mut along = vec![0.0];
        for l in corners.windows(2) {
            along.push(along[along.len() - 1] + (l[1] - l[0]).norm());
        }
        Self { corners, parts, along }
    }

    /// Place of the middle line, `s` mm from the tip; the line goes on straight beyond its ends.
    pub fn at(&self, s: f64) -> Point3<f64> {
        let k = self.along.partition_point(|a| *a <= s).clamp(1, self.along.len() - 1);
        let (a, b) = (self.corners[k - 1], self.corners[k]);
        a + (b - a) * ((s - self.along[k - 1]) / (self.along[k] - self.along[k - 1]))
    }

    /// Direction of the middle line toward the hand; corners are rounded.
    fn direction(&self, s: f64) -> Vector3<f64> {
        (self.at(s + CORNER) - self.at((s - CORNER).max(0.0))).normalize()
    }

    /// Where the bar standing at `pose` passes the wall: once, from behind it to the hand's side.
    pub fn passes(&self, pose: &Isometry3<f64>, wall: usize, solid: &Solid) -> Option<Passing> {
        let local: Vec<_> = self.corners.iter().map(|c| solid.in_wall(wall, &(pose * c))).collect();
        let mut found = None;
        for (k, l) in local.windows(2).enumerate() {
            if (l[0].z < 0.0) == (l[1].z < 0.0) {
                continue;
            }
            if found.is_some() || l[0].z >= 0.0 {
                return None;
            }
            let s = l[0].z / (l[0].z - l[1].z);
            let q = l[0].lerp(&l[1], s);
            let inside = self.along[k] + s * (self.along[k + 1] - self.along[k]);
            found = Some(Passing { inside, at: [q.x, q.y] });
        }
        found
    }
}

/// A way from before the opening to where the bar stands, proved clear; else what was in the way first.
pub fn way_in(
    shape: &Shape,
    stands: &Isometry3<f64>,
    passing: &Passing,
    [wall_at, opening_at]: [usize; 2],
    room: &Room,
) -> Result<Vec<Isometry3<f64>>, Near> {
    let wall = &room.solid.side.walls[wall_at];
    let opening = &wall.openings[opening_at];
    let mut first = None;
    for to_middle in [1.0, 0.0] {
        for square in SQUARE {
            for twist in TWISTS {
                let way = drawn_out(shape, stands, passing, wall, opening, [square, twist, to_middle]);
                match clear(shape, &way, wall_at, room) {
                    Ok(()) => return Ok(way.into_iter().rev().collect()),
                    Err(near) => first = first.or(Some(near)),
                }
            }
        }
    }
    Err(first.unwrap_or(Near::Skin))
}

/// Poses from where the bar stands until it is out.
fn drawn_out(
    shape: &Shape,
    stands: &Isometry3<f64>,
    passing: &Passing,
    wall: &Wall,
    opening: &Opening,
    [square, twist, to_middle]: [f64; 3],
) -> Vec<Isometry3<f64>> {
    let out = wall.axes()[2];
    let start = stands.rotation * shape.direction(passing.inside);
    let end = turn(&start, &out).powf(square) * start;
    let middle = opening.outline.middle();
    let n = (passing.inside / STRIDE).ceil().max(4.0) as usize;
    let (mut way, mut rotation) = (vec![*stands], stands.rotation);
    for k in 1..=n {
        let share = k as f64 / n as f64;
        let s = passing.inside * (1.0 - share);
        let wanted = turn(&start, &end).powf(share) * start;
        rotation = turn(&(rotation * shape.direction(s)), &wanted) * rotation;
        let twisted = UnitQuaternion::from_axis_angle(&nalgebra::Unit::new_normalize(wanted), twist / n as f64);
        rotation = twisted * rotation;
        let at = [0, 1].map(|i| passing.at[i] + to_middle * share * (middle[i] - passing.at[i]));
        let origin = wall.place(at) - rotation * shape.at(s).coords;
        way.push(Isometry3::from_parts(origin.coords.into(), rotation));
    }
    // the tip is in the opening: straight out with it
    let last = way[n];
    let widest = shape.parts.iter().map(|p| p.radius).fold(0.0, f64::max);
    let far = (0..=10).map(|k| (widest + 5.0) * f64::from(k) / 10.0).skip(1);
    way.extend(far.map(|d| Isometry3::from_parts((last.translation.vector + out * d).into(), last.rotation)));
    way
}

fn turn(from: &Vector3<f64>, to: &Vector3<f64>) -> UnitQuaternion<f64> {
    UnitQuaternion::rotation_between(from, to).unwrap_or_else(UnitQuaternion::identity)
}

fn clear(shape: &Shape, way: &[Isometry3<f64>], wall: usize, room: &Room) -> Result<(), Near> {
    let end = way[way.len() - 1];
    let out = |part: &Capsule| part.ends.iter().all(|e| room.solid.in_wall(wall, &(end * e)).z > part.radius);
    if !shape.parts.iter().all(out) {
        return Err(room.solid.nearest(&(end * shape.corners[0]), &[], 0.0).1);
    }
    // coarse first: most ways that are not clear do not even stand
    way.iter().step_by(4).try_for_each(|pose| room.stands(&shape.parts, pose))?;
    way.windows(2).try_for_each(|w| room.moves(&shape.parts, &w[0], &w[1]))
}
