//! The lines' profile as photos of known steps show it, and the phase that explains a pixel best.

use super::profile::Profile;
use std::f64::consts::{PI, TAU};

/// A pixel's phase (as a place in the table), mean and amplitude.
pub(super) struct Place {
    pub index: usize,
    pub a: f64,
    pub b: f64,
}

/// Places over a pitch that are tried for a pixel's phase.
const PLACES: usize = 96;

/// The profile as each photo shows it, at even phases.
pub(super) struct Waves {
    steps: Vec<f64>,
    /// Brightness over [`FINE`] phases.
    fine: Vec<f64>,
    /// For each place and photo, brightness less its mean over the photos; and its length per place.
    centred: Vec<f64>,
    length: Vec<f64>,
    mean: Vec<f64>,
}

const FINE: usize = 96 * 16;

impl Waves {
    pub fn new(profile: Profile, steps: &[f64]) -> Self {
        let n = steps.len();
        let mut waves = Self {
            steps: steps.to_vec(),
            fine: profile.table(FINE),
            centred: Vec::with_capacity(PLACES * n),
            length: Vec::with_capacity(PLACES),
            mean: Vec::with_capacity(PLACES),
        };
        for index in 0..PLACES {
            let p: Vec<f64> = (0..n).map(|k| waves.at(index, k).0).collect();
            let mean = p.iter().sum::<f64>() / n as f64;
            waves.centred.extend(p.iter().map(|v| v - mean));
            waves.length.push(p.iter().map(|v| (v - mean).powi(2)).sum::<f64>().sqrt());
            waves.mean.push(mean);
        }
        waves
    }

    /// Brightness and its slope (per rad) that photo `k` shows at a place.
    pub fn at(&self, index: usize, k: usize) -> (f64, f64) {
        self.bright(index as f64 / PLACES as f64 * TAU + self.steps[k])
    }

    fn bright(&self, phase: f64) -> (f64, f64) {
        let at = (phase / TAU).rem_euclid(1.0) * FINE as f64;
        let (i, t) = (at as usize % FINE, at.fract());
        let (p, q) = (self.fine[i], self.fine[(i + 1) % FINE]);
        (p + (q - p) * t, (q - p) * FINE as f64 / TAU)
    }

    /// The place that explains a pixel's values best.
    pub fn place(&self, row: &[f64]) -> Place {
        let n = row.len();
        let a = row.iter().sum::<f64>() / n as f64;
        let longest = self.length.iter().copied().fold(0.0, f64::max);
        let mut best = (f64::MIN, 0, 0.0);
        for (index, m) in self.centred.chunks_exact(n).enumerate() {
            let length = self.length[index];
            // Where hardly any photo differs from the others the amplitude cannot be told.
            if length < 0.4 * longest {
                continue;
            }
            let product: f64 = row.iter().zip(m).map(|(v, m)| (v - a) * m).sum();
            if product / length > best.0 {
                best = (product / length, index, product / (length * length));
            }
        }
        Place { index: best.1, a: a - best.2 * self.mean[best.1], b: best.2 }
    }

    /// Root mean square left of a photo at the step that suits it best, over the amplitude.
    pub fn left_at_best_step(&self, seen: &[f64], places: &[Place]) -> f64 {
        let power: f64 = places.iter().map(|p| p.b * p.b).sum();
        let share = seen.iter().sum::<f64>() / places.iter().map(|p| p.a).sum::<f64>();
        let left = |step: f64| {
            let wave = |p: &Place| p.a + p.b * self.bright(p.index as f64 / PLACES as f64 * TAU + step).0;
            seen.iter().zip(places).map(|(v, p)| (v / share - wave(p)).powi(2)).sum::<f64>()
        };
        let best = (0..32).map(|k| left(f64::from(k) * PI / 16.0)).fold(f64::MAX, f64::min);
        (best / power.max(1e-12)).sqrt()
    }
}
