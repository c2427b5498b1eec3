//! How far the lines of one photo stand from those of another that shows the same place.
//!
//! The lines of the first photo are found without knowing where the board stands: what most of the photo shows tells
//! their ordinary rate, from which they are followed. The second photo's lines are followed along the first's, so what
//! the window blurs is blurred alike in both, and the difference is unwrapped over the region.
//!
//! Limits: one set of lines; where the mirror image turns over it looks the same as where it does not, so what such a
//! place encloses is left out.

use super::carrier::carrier;
use super::follow::{Followed, follow, wrapped};
use super::lost::followed_both;
use crate::families::ordinary_lines;
use crate::photo::Photo;
use crate::unwrap::unwrap;
use nalgebra::Vector2;
use std::f64::consts::TAU;

/// Lines of a photo against those of an earlier one.
#[derive(Debug, Clone)]
pub struct LinesMoved {
    /// Change of the phase, rad; NaN where the lines cannot be followed in both.
    pub change: Vec<f32>,
    /// Phase in the first photo, rad, wrapped.
    pub phase: Vec<f32>,
    /// Where lines are, but cannot be followed in both.
    pub lost: Vec<bool>,
    /// Ordinary rate of the lines across and down, rad per px.
    pub rate: Vector2<f64>,
    /// Standard deviation of the window under which the lines were followed, px.
    pub window_px: f64,
}

/// Standard deviation of the window, in periods of the lines: enough to tell brightness from lines.
const WINDOW_PERIODS: f64 = 0.55;
/// Kept from places where lines are lost, in windows.
const MARGIN: f64 = 1.0;

/// How the lines moved from one photo to another of the same size and place; `None` where no lines are seen.
#[must_use]
pub fn lines_moved(before: &Photo, after: &Photo, table: &[f32; 256]) -> Option<LinesMoved> {
    let width = before.width;
    let rate = ordinary_lines(before)?;
    let window_px = WINDOW_PERIODS * TAU / rate.norm();
    let first = carrier(before, table, |p| Some(rate.dot(p) / TAU));
    let first = follow(before, table, &first, window_px);
    let second = follow(after, table, &first.phase, window_px);
    let lost = (0..first.lost.len()).map(|i| first.lost[i] || second.lost[i]).collect();
    let second = Followed { lost, ..second };
    let (u, v, lost) = followed_both(&first, &second, width, (MARGIN * window_px).round() as usize);
    let turned: Vec<f32> = u.phase.iter().zip(&v.phase).map(|(a, b)| wrapped(b - a)).collect();
    let known: Vec<bool> = turned.iter().map(|t| t.is_finite()).collect();
    let (change, _) = unwrap(&turned, &known, width);
    Some(LinesMoved { change, phase: u.phase, lost, rate, window_px })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::response::linear_table;

    /// Bent lines whose phase is moved by a bump's two lobes, with a patch without lines.
    fn photo(lobe: f64, seed: u32) -> Photo {
        let (width, height) = (800, 600);
        let mut state = seed;
        let mut level = |i: usize| {
            let (x, y) = ((i % width) as f64, (i / width) as f64);
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let grain = f64::from(state >> 8) / f64::from(1u32 << 24) - 0.5;
            let phase = TAU * (0.9 * x + 0.15 * y + 12.0 * (y / 300.0).sin()) / 17.0 + moved(x, y, lobe);
            let lines = if (x - 600.0).hypot(y - 400.0) < 60.0 { 0.0 } else { phase.cos() };
            (186.0 * (0.5 + 0.35 * lines + 0.04 * grain).powf(1.0 / 2.2) * 1.2).clamp(0.0, 255.0) as u8
        };
        Photo { width, height, grey: (0..width * height).map(&mut level).collect(), focal_35mm: None }
    }

    fn moved(x: f64, y: f64, lobe: f64) -> f64 {
        let (dx, dy) = ((x - 300.0) / 40.0, (y - 250.0) / 40.0);
        lobe * 1.65 * dx * (-0.5 * (dx * dx + dy * dy)).exp() + 0.2
    }

    #[test]
    fn the_change_is_that_of_the_phase_beyond_half_a_turn_too() {
        for lobe in [0.6, 4.5] {
            let lines = lines_moved(&photo(0.0, 1), &photo(lobe, 2), &linear_table(2.2)).unwrap();
            let period = TAU / lines.rate.norm();
            assert!((period - 17.0 / 0.9124).abs() < 3.0, "{period}");
            let told: Vec<f64> = (0..lines.change.len())
                .filter(|i| lines.change[*i].is_finite())
                .map(|i| {
                    // Of lines found without a board, which side is forward is not known.
                    let sign = if lines.rate.x > 0.0 { 1.0 } else { -1.0 };
                    let truth = moved((i % 800) as f64, (i / 800) as f64, lobe) - moved(0.0, 0.0, 0.0);
                    sign * f64::from(lines.change[i]) - truth
                })
                .collect();
            let middle = told.iter().sum::<f64>() / told.len() as f64;
            let rms = (told.iter().map(|t| (t - middle).powi(2)).sum::<f64>() / told.len() as f64).sqrt();
            // The window of nine pixels blurs lobes of forty by a twentieth.
            assert!((0.001..0.05 * lobe + 0.03).contains(&rms), "{rms} at {lobe}");
            // Of 480,000 pixels those nearer than three windows to the rim or two to the patch are left out.
            assert!(told.len() > 270_000 && lines.change[400 * 800 + 600].is_nan(), "{}", told.len());
        }
    }

    #[test]
    fn a_photo_without_lines_has_none() {
        let plain = Photo { width: 800, height: 600, grey: vec![120; 480_000], focal_35mm: None };
        assert!(lines_moved(&plain, &plain, &linear_table(2.2)).is_none());
    }
}
