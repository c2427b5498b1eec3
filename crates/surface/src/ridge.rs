//! A body line as a shape of its own: a ridge straight along, bent across.
//!
//! The second derivative across the line is kept millimetre by millimetre; heights and slopes follow from
//! it, with both zero on the line, so that they agree with each other exactly. Beyond what was seen the ridge
//! runs on straight. What bends evenly from one end of the seen profile to the other is left to the panel.

use crate::line::BodyLine;

/// A ridge.
#[derive(Debug, Clone, PartialEq)]
pub struct Ridge {
    line: BodyLine,
    /// Distance of the first millimetre from the line, mm.
    first_mm: f64,
    /// Per millimetre: height (mm), slope, and second derivative (1/mm) up to the next.
    pieces: Vec<[f64; 3]>,
}

/// Share of the seen profile at either end that is taken for panel, not ridge.
const END: f64 = 0.25;

impl Ridge {
    /// A ridge whose profile is a height (mm) over the distance from the line, seen between two distances (mm).
    pub fn new(line: BodyLine, profile: impl Fn(f64) -> f64, (from, to): (f64, f64)) -> Option<Self> {
        let count = (to - from).floor();
        if !(8.0..10_000.0).contains(&count) {
            return None;
        }
        let at = |k: usize| from + k as f64 + 0.5;
        let mut bends: Vec<f64> =
            (0..count as usize).map(|k| profile(at(k) + 1.0) - 2.0 * profile(at(k)) + profile(at(k) - 1.0)).collect();
        let end = ((bends.len() as f64 * END) as usize).max(1);
        let mean = |part: &[f64]| part.iter().sum::<f64>() / part.len() as f64;
        let (left, right) = (mean(&bends[..end]), mean(&bends[bends.len() - end..]));
        let span = (bends.len() - end) as f64;
        for (k, bend) in bends.iter_mut().enumerate() {
            *bend -= left + (right - left) * (k as f64 + 0.5 - 0.5 * end as f64) / span;
        }
        let mut pieces = Vec::with_capacity(bends.len());
        let (mut height, mut slope) = (0.0, 0.0);
        for bend in bends {
            pieces.push([height, slope, bend]);
            height += slope + 0.5 * bend;
            slope += bend;
        }
        let mut ridge = Self { line, first_mm: from, pieces };
        let [height, slope, _] = ridge.across(0.0);
        for (k, piece) in ridge.pieces.iter_mut().enumerate() {
            piece[0] -= height + slope * (from + k as f64);
            piece[1] -= slope;
        }
        Some(ridge)
    }

    /// Height (mm), slope and second derivative at a distance from the line.
    fn across(&self, t: f64) -> [f64; 3] {
        let last = self.pieces.len() - 1;
        let place = t - self.first_mm;
        let k = (place.max(0.0) as usize).min(last);
        let [height, slope, bend] = self.pieces[k];
        let tau = place - k as f64;
        let inside = tau.clamp(0.0, 1.0);
        let ahead = slope + bend * inside;
        let z = height + slope * inside + 0.5 * bend * inside * inside + ahead * (tau - inside);
        [z, ahead, if tau == inside { bend } else { 0.0 }]
    }

    /// Height (mm) and slopes at a panel position.
    pub fn at(&self, x_mm: f64, y_mm: f64) -> (f64, f64, f64) {
        let (sin, cos) = self.line.normal_rad.sin_cos();
        let [z, slope, _] = self.across(self.line.across_along((x_mm, y_mm)).0);
        (z, slope * cos, slope * sin)
    }

    /// Second derivatives xx, xy, yy at a panel position, per mm.
    pub fn bends(&self, x_mm: f64, y_mm: f64) -> [f64; 3] {
        let (sin, cos) = self.line.normal_rad.sin_cos();
        let bend = self.across(self.line.across_along((x_mm, y_mm)).0)[2];
        [bend * cos * cos, bend * sin * cos, bend * sin * sin]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ridge_keeps_its_kink_runs_on_straight_and_leaves_even_curvature_to_the_panel() {
        let line = BodyLine { normal_rad: 1.5, offset_mm: 12.0 };
        let kink = |t: f64| -0.035 * t.hypot(6.0);
        let ridge = Ridge::new(line, |t| kink(t) + 0.0002 * t * t, (-60.0, 80.0)).unwrap();
        let place = |t: f64| {
            let (sin, cos) = line.normal_rad.sin_cos();
            ((line.offset_mm + t) * cos, (line.offset_mm + t) * sin)
        };
        let turn = |t: f64| ridge.at(place(t).0, place(t).1);
        let slope = |t: f64| turn(t).1 * line.normal_rad.cos() + turn(t).2 * line.normal_rad.sin();
        // The whole turn of the kink, less the little of it that lies in the ends.
        assert!((slope(-200.0) - slope(200.0) - 0.07).abs() < 0.004, "{}", slope(-200.0) - slope(200.0));
        assert!((slope(150.0) - slope(90.0)).abs() < 1e-12 && turn(0.0).0.abs() < 1e-9);
        let h = 1e-4;
        let (x, y) = place(7.3);
        let (z, zx, _) = ridge.at(x, y);
        assert!(((ridge.at(x + h, y).0 - z) / h - zx).abs() < 1e-5);
        assert!(((ridge.at(x, y + h).2 - ridge.at(x, y).2) / h - ridge.bends(x, y)[2]).abs() < 1e-6);
    }
}
