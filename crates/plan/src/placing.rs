//! How one frame on the panel lies in another: readings choose their own.

use dentwright_surface::Laying;
use serde::{Deserialize, Serialize};

/// Turned about the origin, then shifted.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Placing {
    /// Turn from x toward y, rad.
    pub turn_rad: f64,
    /// Shift, mm.
    pub shift_mm: [f64; 2],
}

impl Placing {
    /// A frame whose axes are the other's and whose origin lies there, mm.
    #[must_use]
    pub fn at(shift_mm: [f64; 2]) -> Self {
        Self { turn_rad: 0.0, shift_mm }
    }

    /// A place in the other frame, mm.
    #[must_use]
    pub fn carry(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let (sin, cos) = self.turn_rad.sin_cos();
        [x * cos - y * sin + self.shift_mm[0], x * sin + y * cos + self.shift_mm[1]]
    }

    /// A place of the other frame in this one, mm.
    #[must_use]
    pub fn back(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let (sin, cos) = self.turn_rad.sin_cos();
        let (x, y) = (x - self.shift_mm[0], y - self.shift_mm[1]);
        [x * cos + y * sin, y * cos - x * sin]
    }

    /// How an earlier reading's frame lies in a later one's.
    #[must_use]
    pub fn of(laying: &Laying) -> Self {
        Self { turn_rad: laying.turn_rad, shift_mm: [laying.dx_mm, laying.dy_mm] }
    }

    /// How this frame lies in the one that the other frame lies in.
    #[must_use]
    pub fn then(&self, other: &Self) -> Self {
        Self { turn_rad: self.turn_rad + other.turn_rad, shift_mm: other.carry(self.shift_mm) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back_and_on() {
        let first = Placing { turn_rad: 0.4, shift_mm: [30.0, -12.0] };
        let second = Placing { turn_rad: -1.1, shift_mm: [4.0, 9.0] };
        let off = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).hypot(a[1] - b[1]);
        let place = [7.0, 21.0];
        assert!(off(first.then(&second).carry(place), second.carry(first.carry(place))) < 1e-9);
        assert!(off(first.back(first.carry(place)), place) < 1e-9);
        // a quarter turn takes x to y
        let quarter = Placing { turn_rad: std::f64::consts::FRAC_PI_2, shift_mm: [1.0, 0.0] };
        assert!(off(quarter.carry([2.0, 0.0]), [1.0, 2.0]) < 1e-9);
    }
}
