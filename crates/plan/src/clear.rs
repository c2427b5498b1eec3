//! Is a bar clear of all that is solid, standing and on its way: proved by distance, never by trying places.
//!
//! A place that is `d` away from everything solid has nothing solid within `d`; so a length, or a move, is clear when
//! the distance at its middle exceeds half of it and the bar's radius, else its halves are asked. What cannot be proved
//! within [`LEAST`] counts as not clear.

use crate::solid::{Near, Solid};
use crate::tool::Capsule;
use nalgebra::{Isometry3, Point3};

/// Parts are not halved below this, mm.
const LEAST: f64 = 0.1;
/// A move is not halved more often than this.
const HALVINGS: u32 = 12;

/// What a bar must be clear of, and by how much.
#[derive(Clone, Copy)]
pub struct Room<'a> {
    /// What is behind the panel.
    pub solid: &'a Solid<'a>,
    /// Distance to keep from the bar's surface, mm; from the panel none is asked.
    pub margin: f64,
    /// What it may touch.
    pub but: &'a [Near],
}

impl Room<'_> {
    /// Whether every round length, standing at `pose`, is clear by the margin; else what is in the way.
    pub fn stands(&self, parts: &[Capsule], pose: &Isometry3<f64>) -> Result<(), Near> {
        parts.iter().try_for_each(|c| self.length(&c.ends.map(|e| pose * e), c.radius + self.margin))
    }

    /// Whether the way from one pose to another, straight for the tip and turning evenly, is clear.
    pub fn moves(&self, parts: &[Capsule], from: &Isometry3<f64>, to: &Isometry3<f64>) -> Result<(), Near> {
        parts.iter().try_for_each(|part| self.part_moves(part, from, to, HALVINGS))
    }

    fn part_moves(
        &self,
        part: &Capsule,
        from: &Isometry3<f64>,
        to: &Isometry3<f64>,
        halvings: u32,
    ) -> Result<(), Near> {
        let middle = between(from, to, 0.5);
        let far = part.ends.iter().map(|e| e.coords.norm()).fold(0.0, f64::max);
        let way = (to.translation.vector - from.translation.vector).norm() + far * from.rotation.angle_to(&to.rotation);
        let ends = part.ends.map(|e| middle * e);
        match self.length(&ends, part.radius + self.margin + 0.5 * way) {
            Ok(()) => Ok(()),
            Err(near) if halvings == 0 || way < LEAST => Err(near),
            Err(near) => {
                // no use in halving what does not even stand in the middle
                self.length(&ends, part.radius + self.margin).map_err(|_| near)?;
                self.part_moves(part, from, &middle, halvings - 1)?;
                self.part_moves(part, &middle, to, halvings - 1)
            }
        }
    }

    /// Whether every place of a straight line is `need` away from all that is solid.
    fn length(&self, [a, b]: &[Point3<f64>; 2], need: f64) -> Result<(), Near> {
        let half = 0.5 * (b - a).norm();
        let (free, near) = self.solid.nearest(&nalgebra::center(a, b), self.but, self.margin);
        if free >= need + half {
            return Ok(());
        }
        if free < need || half < LEAST {
            return Err(near);
        }
        let middle = nalgebra::center(a, b);
        self.length(&[*a, middle], need)?;
        self.length(&[middle, *b], need)
    }
}

/// The pose a share of the way from one to another.
pub fn between(from: &Isometry3<f64>, to: &Isometry3<f64>, share: f64) -> Isometry3<f64> {
    let turn = from.rotation.rotation_to(&to.rotation);
    let translation = from.translation.vector.lerp(&to.translation.vector, share);
    Isometry3::from_parts(translation.into(), turn.powf(share) * from.rotation)
}
