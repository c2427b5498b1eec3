//! Damage of known form: round and long lows, creases, highs.

use serde::{Deserialize, Serialize};

/// One low (or, with a negative depth, one high).
///
/// In its own turned axes with `q² = (x/a)² + (y/b)²`, height is `−depth · exp(−q²) · (1 − crown·q²)`: past
/// `q = 1/√crown` metal stands up in a ring. With `crease` the profile across (y) is a sharp V of that edge radius.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dent {
    /// Centre, panel frame, mm.
    pub x: f64,
    /// Centre, panel frame, mm.
    pub y: f64,
    /// Half length, mm: where the depth has fallen to 1/e.
    pub a: f64,
    /// Half width, mm.
    pub b: f64,
    /// Depth of the centre, mm; negative for a high.
    pub depth: f64,
    /// Share of a ring of raised metal, 0 to about 0.5.
    #[serde(default)]
    pub crown: f64,
    /// Turn of the long axis, degrees counter-clockwise from x.
    #[serde(default)]
    pub rot: f64,
    /// Present in a crease: width, mm, over which the bottom of the V is rounded.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub crease: Option<f64>,
}

/// A height with its first derivatives, mm and 1.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Rise {
    /// Height, mm.
    pub z: f64,
    /// dz/dx.
    pub dx: f64,
    /// dz/dy.
    pub dy: f64,
}

impl std::ops::AddAssign for Rise {
    fn add_assign(&mut self, other: Self) {
        self.z += other.z;
        self.dx += other.dx;
        self.dy += other.dy;
    }
}

/// Beyond this q² even a metre-deep dent is under a picometre.
const NOTHING_BEYOND: f64 = 36.0;

impl Dent {
    /// Height and slopes this dent adds at a place, panel frame.
    #[must_use]
    pub fn rise(&self, x: f64, y: f64) -> Rise {
        let (sin, cos) = self.rot.to_radians().sin_cos();
        let (dx, dy) = (x - self.x, y - self.y);
        let (s, t) = (cos * dx + sin * dy, -sin * dx + cos * dy);
        // p: squared distance in half widths, with its derivatives along and across.
        let (across, across_dt) = self.across(t);
        let p = (s / self.a).powi(2) + across;
        if p > NOTHING_BEYOND {
            return Rise::default();
        }
        let bell = (-p).exp();
        let z = -self.depth * bell * (1.0 - self.crown * p);
        let dz_dp = self.depth * bell * (1.0 + self.crown - self.crown * p);
        let (dz_ds, dz_dt) = (dz_dp * 2.0 * s / (self.a * self.a), dz_dp * across_dt);
        Rise { z, dx: cos * dz_ds - sin * dz_dt, dy: sin * dz_ds + cos * dz_dt }
    }

    /// Half the extent along its longer axis, mm.
    #[must_use]
    pub fn reach(&self) -> f64 {
        self.a.max(self.b)
    }

    /// The across term and its derivative: `(t/b)²`, or for a crease `√(t² + r²) − r` over b, which is straight-sided.
    fn across(&self, t: f64) -> (f64, f64) {
        match self.crease {
            None => ((t / self.b).powi(2), 2.0 * t / (self.b * self.b)),
            Some(edge) => {
                let root = t.hypot(edge);
                ((root - edge) / self.b, t / (root * self.b))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slopes_are_the_derivatives_of_height() {
        let round = Dent { x: 3.0, y: -2.0, a: 20.0, b: 9.0, depth: 0.4, crown: 0.3, rot: 25.0, crease: None };
        let crease = Dent { crease: Some(1.5), ..round };
        for dent in [round, crease] {
            for (x, y) in [(3.0, -2.0), (10.0, 4.0), (-8.0, -9.0), (25.0, 12.0)] {
                let h = 1e-5;
                let rise = dent.rise(x, y);
                let dx = (dent.rise(x + h, y).z - dent.rise(x - h, y).z) / (2.0 * h);
                let dy = (dent.rise(x, y + h).z - dent.rise(x, y - h).z) / (2.0 * h);
                assert!((rise.dx - dx).abs() < 1e-9 && (rise.dy - dy).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn the_bottom_is_as_deep_as_said_and_the_ring_stands_up() {
        let dent = Dent { x: 0.0, y: 0.0, a: 10.0, b: 10.0, depth: 0.5, crown: 0.35, rot: 0.0, crease: None };
        assert_eq!(dent.rise(0.0, 0.0).z, -0.5);
        let ring = dent.rise(10.0 * (1.0f64 / 0.35 + 1.0).sqrt(), 0.0);
        assert!(ring.z > 0.003 && ring.dx.abs() < 1e-12, "top of the ring: {ring:?}");
    }
}
