//! Outlines in a plane: rectangle, circle, polygon; how far a place is from the line, and on which side.

use serde::{Deserialize, Serialize};
use std::f64::consts::TAU;

/// Corners that stand for a circle's rim where corners are wanted.
const ROUND: usize = 32;

/// A closed line in a plane, mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "shape", rename_all = "snake_case", deny_unknown_fields)]
pub enum Outline {
    /// Sides along the plane's axes.
    Rectangle {
        /// Middle.
        at: [f64; 2],
        /// Width and height.
        size: [f64; 2],
    },
    /// Circle.
    Circle {
        /// Middle.
        at: [f64; 2],
        /// Radius.
        radius: f64,
    },
    /// Corners in turn; the last is joined to the first. The line must not cross itself.
    Polygon {
        /// Corners.
        corners: Vec<[f64; 2]>,
    },
}

impl Outline {
    /// Corners in turn; a circle's rim is given by points on it.
    pub fn corners(&self) -> Vec<[f64; 2]> {
        match self {
            Self::Rectangle { at: [x, y], size: [w, h] } => {
                let (a, b) = (0.5 * w, 0.5 * h);
                vec![[x - a, y - b], [x + a, y - b], [x + a, y + b], [x - a, y + b]]
            }
            Self::Circle { at: [x, y], radius } => {
                let point = |k: usize| TAU * k as f64 / ROUND as f64;
                (0..ROUND).map(|k| [x + radius * point(k).cos(), y + radius * point(k).sin()]).collect()
            }
            Self::Polygon { corners } => corners.clone(),
        }
    }

    /// A place inside of an outline that bulges everywhere; near the middle of any other.
    pub fn middle(&self) -> [f64; 2] {
        match self {
            Self::Rectangle { at, .. } | Self::Circle { at, .. } => *at,
            Self::Polygon { corners } => {
                let n = corners.len().max(1) as f64;
                corners.iter().fold([0.0; 2], |sum, c| [sum[0] + c[0] / n, sum[1] + c[1] / n])
            }
        }
    }

    /// How far a place is inside, mm; outside it is negative.
    pub fn depth(&self, place: [f64; 2]) -> f64 {
        let [px, py] = place;
        match self {
            Self::Circle { at, radius } => radius - (px - at[0]).hypot(py - at[1]),
            Self::Rectangle { at, size } => {
                let (a, b) = (0.5 * size[0] - (px - at[0]).abs(), 0.5 * size[1] - (py - at[1]).abs());
                if a >= 0.0 && b >= 0.0 { a.min(b) } else { -(a.min(0.0).hypot(b.min(0.0))) }
            }
            Self::Polygon { corners } => {
                let mut inside = false;
                let mut nearest = f64::INFINITY;
                for (k, a) in corners.iter().enumerate() {
                    let b = corners[(k + 1) % corners.len()];
                    nearest = nearest.min(to_line(place, *a, b));
                    if (a[1] > py) != (b[1] > py) && px < a[0] + (py - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
                        inside = !inside;
                    }
                }
                if inside { nearest } else { -nearest }
            }
        }
    }

    /// Why it bounds nothing, if it does not.
    pub fn flaw(&self) -> Option<&'static str> {
        let numbers = match self {
            Self::Rectangle { at, size } => vec![*at, *size],
            Self::Circle { at, radius } => vec![*at, [*radius; 2]],
            Self::Polygon { corners } => corners.clone(),
        };
        if !numbers.iter().flatten().all(|v| v.is_finite()) {
            return Some("has a number that is none");
        }
        match self {
            Self::Rectangle { size, .. } if !(size[0] > 0.0 && size[1] > 0.0) => Some("has no width or height"),
            Self::Circle { radius, .. } if !(*radius > 0.0) => Some("has no radius"),
            Self::Polygon { corners } if corners.len() < 3 => Some("has fewer than three corners"),
            Self::Polygon { corners } if crosses_itself(corners) => Some("crosses itself"),
            _ => None,
        }
    }
}

/// Distance of a place from the straight line between two others, mm.
fn to_line(p: [f64; 2], a: [f64; 2], b: [f64; 2]) -> f64 {
    let (d, e) = ([b[0] - a[0], b[1] - a[1]], [p[0] - a[0], p[1] - a[1]]);
    let square = d[0] * d[0] + d[1] * d[1];
    let s = if square > 0.0 { ((d[0] * e[0] + d[1] * e[1]) / square).clamp(0.0, 1.0) } else { 0.0 };
    (e[0] - s * d[0]).hypot(e[1] - s * d[1])
}

fn crosses_itself(c: &[[f64; 2]]) -> bool {
    let n = c.len();
    let turn = |a: [f64; 2], b: [f64; 2], p: [f64; 2]| (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    let cross = |i: usize, j: usize| {
        let (a, b, p, q) = (c[i], c[(i + 1) % n], c[j], c[(j + 1) % n]);
        turn(a, b, p) * turn(a, b, q) < 0.0 && turn(p, q, a) * turn(p, q, b) < 0.0
    };
    (0..n).any(|i| (i + 2..n).any(|j| (j + 1) % n != i && cross(i, j)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rectangle_is_the_polygon_of_its_corners() {
        let rectangle = Outline::Rectangle { at: [3.0, -2.0], size: [20.0, 8.0] };
        let polygon = Outline::Polygon { corners: rectangle.corners() };
        for i in 0..40 {
            let p = [f64::from(i) * 1.1 - 19.0, f64::from(i * 7 % 23) - 12.0];
            assert!((rectangle.depth(p) - polygon.depth(p)).abs() < 1e-9, "{p:?}");
        }
    }

    #[test]
    fn a_bow_tie_bounds_nothing() {
        let corners = vec![[0.0, 0.0], [10.0, 10.0], [10.0, 0.0], [0.0, 10.0]];
        assert_eq!(Outline::Polygon { corners }.flaw(), Some("crosses itself"));
    }
}
