//! The panel as the technician meets it: a patch, the shape it was meant to have, and where it stands now.

use crate::equilibrium::{Drive, Given, Tolerance, balance};
use crate::moves::{Move, Outcome};
use crate::patch::Patch;
use crate::strain::Modes;
use crate::yielding::Memory;
use nalgebra::Vector3;

/// A patch with its intended shape.
pub struct Panel {
    /// The sheet.
    pub patch: Patch,
    /// Coefficients of the intended surface.
    pub intended: Vec<Vector3<f64>>,
    /// Whether the last shape kept was stable.
    pub stable: bool,
}

impl Panel {
    /// A patch whose undeformed surface is the intended one.
    pub fn new(patch: Patch) -> Self {
        Self { intended: patch.mesh.rest.clone(), patch, stable: true }
    }

    /// Deviation of the present surface at a place of the panel frame, mm, outward positive.
    pub fn deviation(&self, x: f64, y: f64) -> f64 {
        let mesh = &self.patch.mesh;
        let mut from = [x, y];
        for _ in 0..4 {
            // which bit of sheet stands at (x, y)
            let place = mesh.at(from[0], from[1], &self.patch.places);
            from = [from[0] + x - place.x, from[1] + y - place.y];
        }
        mesh.at(from[0], from[1], &self.patch.places).z - mesh.at(x, y, &self.intended).z
    }

    /// Largest principal strain of the sheet's middle, in size the most tensile; 0 where none is tensile.
    pub fn max_membrane_strain(&self) -> f64 {
        self.sheet_points()
            .filter_map(|i| self.patch.strained(i).ok())
            .map(|s| largest(&s.membrane))
            .fold(0.0, f64::max)
    }

    /// Largest equivalent plastic strain in any layer.
    pub fn max_plastic_strain(&self) -> f64 {
        self.patch.memory.iter().map(|m| m.spent).fold(0.0, f64::max)
    }

    /// Indices of the points that are sheet.
    pub fn sheet_points(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.patch.mesh.points.len()).filter(|i| self.patch.mesh.points[*i].sheet)
    }

    /// Lets the panel come to rest with nothing touching it; whether it did.
    pub fn let_go(&mut self) -> bool {
        let places = self.patch.places.clone();
        let tolerance = Tolerance { rounds: 40, ..Tolerance::default() };
        match balance(&self.patch, &Drive::Nothing, Given::Force(0.0), &places, (0.0, 0.0), tolerance) {
            Ok(found) => {
                self.stable = found.negative == 0;
                self.patch.keep(found.places, found.memory);
                true
            }
            Err(_) => false,
        }
    }

    /// Takes up a shape and memory that this panel had before.
    pub fn take_up(&mut self, places: Vec<Vector3<f64>>, memory: Vec<Memory>) {
        self.patch.keep(places, memory);
    }

    /// Fills in what a move left.
    pub fn describe_left(&self, wanted: &Move, outcome: &mut Outcome) {
        outcome.at_tip_left_mm = self.deviation(wanted.at[0], wanted.at[1]);
        outcome.springback_mm = (outcome.at_tip_held_mm - outcome.at_tip_left_mm).abs();
        outcome.max_plastic_strain = self.max_plastic_strain();
        outcome.max_membrane_strain = self.max_membrane_strain();
        let asked = self.sheet_points().map(|i| self.patch.mesh.points[i].at).chain([wanted.at]);
        let heights = asked.filter(|p| self.patch.mesh.holds(p[0], p[1])).map(|p| (self.deviation(p[0], p[1]), p));
        let (mut low, mut high) = ((f64::INFINITY, [0.0; 2]), (f64::NEG_INFINITY, [0.0; 2]));
        for h in heights {
            low = if h.0 < low.0 { h } else { low };
            high = if h.0 > high.0 { h } else { high };
        }
        (outcome.lowest_left_mm, outcome.lowest_at_mm) = low;
        (outcome.highest_left_mm, outcome.highest_at_mm) = high;
    }
}

/// Larger principal value of a plane tensor's modes.
pub fn largest(modes: &Modes) -> f64 {
    modes[0] + modes[1].hypot(modes[2])
}
