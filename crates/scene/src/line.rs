//! A pressed line of the panel: two sides that meet in a rounded ridge.

use crate::dent::Rise;
use serde::{Deserialize, Serialize};

/// A ridge that runs along the panel.
///
/// Across it, at distance `t` from the ridge, height is `−tan(angle/2)·(√(t² + radius²) − radius)`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BodyLine {
    /// Height of the ridge at x = 0, panel frame, mm.
    pub y0: f64,
    /// Angle between the two sides, degrees.
    pub angle: f64,
    /// Length over which the ridge is rounded, mm.
    pub radius: f64,
    /// dy/dx of the ridge.
    #[serde(default)]
    pub slope: f64,
}

impl BodyLine {
    /// Height and slopes the line adds at a place, panel frame.
    #[must_use]
    pub fn rise(&self, x: f64, y: f64) -> Rise {
        let along = self.slope.hypot(1.0);
        let t = (y - self.y0 - self.slope * x) / along;
        let steep = (self.angle.to_radians() / 2.0).tan();
        let root = t.hypot(self.radius);
        let dz_dt = -steep * t / root;
        Rise { z: -steep * (root - self.radius), dx: -dz_dt * self.slope / along, dy: dz_dt / along }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn far_sides_differ_by_the_angle() {
        let line = BodyLine { y0: 30.0, angle: 4.0, radius: 25.0, slope: 0.0 };
        let turn = line.rise(0.0, -1e5).dy.atan() - line.rise(0.0, 1e5).dy.atan();
        assert!((turn.to_degrees() - 4.0).abs() < 1e-4);
        assert_eq!(line.rise(5.0, 30.0).z, 0.0);
        let sloping = BodyLine { slope: 0.2, ..line };
        let h = 1e-4;
        let dx = (sloping.rise(12.0 + h, 4.0).z - sloping.rise(12.0 - h, 4.0).z) / (2.0 * h);
        assert!((sloping.rise(12.0, 4.0).dx - dx).abs() < 1e-9);
    }
}
