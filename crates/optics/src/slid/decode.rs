//! Photos of a slid line board with known steps to the phase of every pixel.
//!
//! With few photos of nearly black and white lines a single pixel is a handful of blacks and whites: which
//! phases agree with them, and how well, is all there is to know. So brightness `A` and amplitude `B` are
//! taken from the neighbourhood (regression on the profile), and the phase is the mean over all phases,
//! each weighted with its likelihood; its variance is the pixel's doubt. Harmonics are part of the profile and
//! leave no ripple.

use super::profile::Profile;
use super::steps::Slides;
use super::tiles::Tiles;
use crate::photo::Photo;
use rayon::prelude::*;
use std::f32::consts::TAU;

/// Phase of one axis, all pixels.
#[derive(Debug, Clone)]
pub struct SlidPhase {
    /// Wrapped phase, rad; NaN where no lines are mirrored.
    pub phase: Vec<f32>,
    /// One-sigma doubt of it, rad.
    pub sigma: Vec<f32>,
}

/// Phases tried.
const PLACES: usize = 64;
/// A neighbourhood counts as mirrored lines where its variance is this share of the ordinary one.
const VARIANCE_SHARE: f32 = 0.09;
/// And this many times the noise's.
const VARIANCE_OVER_NOISE: f32 = 9.0;
/// Deviation from the profile that is always allowed for, of the amplitude: edges softer here than there.
const LEAST_DEVIATION: f32 = 0.12;
/// A pixel that deviates more from every phase is dirt, a tag's rim or another thing, of the amplitude.
const WORST_DEVIATION: f32 = 0.45;

/// Phase of every pixel. `photos` are all that were given to [`super::find_slides`].
pub fn slid_phase(photos: &[&Photo], steps: &Slides, table: &[f32; 256]) -> SlidPhase {
    let used: Vec<&Photo> = steps.kept.iter().map(|&k| photos[k]).collect();
    let tables: Vec<[f32; 256]> = steps.gains.iter().map(|g| table.map(|v| v / *g as f32)).collect();
    let view = View { photos: &used, tables: &tables, width: used[0].width };
    let waves = Waves::new(&steps.profile, &steps.steps);
    let mut tiles = Tiles::new(&view);
    tiles.find_lines(VARIANCE_SHARE, VARIANCE_OVER_NOISE * (steps.noise as f32).powi(2));
    tiles.regress(&view, |levels, _| waves.free(levels));
    let doubt = (steps.noise / steps.amplitude.max(1e-9)) as f32;
    let deviation = doubt.max(LEAST_DEVIATION);
    tiles.regress(&view, |levels, local| waves.best(levels, local.0, local.1));
    let n = view.photos.len();
    let pixels = view.pixels();
    let (mut phase, mut sigma) = (vec![f32::NAN; pixels], vec![f32::NAN; pixels]);
    phase.par_chunks_mut(view.width).zip(sigma.par_chunks_mut(view.width)).enumerate().for_each(
        |(y, (phase, sigma))| {
            let mut levels = vec![0f32; n];
            for x in 0..view.width {
                let Some((a, b)) = tiles.local(x, y) else { continue };
                view.levels(y * view.width + x, &mut levels);
                levels.iter_mut().for_each(|v| *v = (*v - a) / b);
                if let Some((mean, spread)) = waves.likely(&levels, deviation) {
                    (phase[x], sigma[x]) = (mean, spread);
                }
            }
        },
    );
    SlidPhase { phase, sigma }
}

/// The photos used, made linear and equally bright.
pub(super) struct View<'a> {
    pub photos: &'a [&'a Photo],
    pub tables: &'a [[f32; 256]],
    pub width: usize,
}

impl View<'_> {
    pub fn pixels(&self) -> usize {
        self.photos[0].grey.len()
    }

    pub fn levels(&self, i: usize, out: &mut [f32]) {
        for ((out, photo), table) in out.iter_mut().zip(self.photos).zip(self.tables) {
            *out = table[usize::from(photo.grey[i])];
        }
    }
}

/// The profile as each photo shows it at each phase tried.
struct Waves {
    photos: usize,
    wave: Vec<f32>,
    square: Vec<f32>,
    mean: Vec<f32>,
    direction: Vec<(f32, f32)>,
}

impl Waves {
    fn new(profile: &Profile, steps: &[f64]) -> Self {
        let (fine, n) = (profile.table(PLACES * 32), steps.len());
        let at = |index: usize, step: f64| {
            let turn = (index as f64 / PLACES as f64 + step / std::f64::consts::TAU).rem_euclid(1.0);
            fine[(turn * fine.len() as f64).round() as usize % fine.len()] as f32
        };
        let wave: Vec<f32> =
            (0..PLACES).flat_map(|j| steps.iter().map(move |s| (j, *s))).map(|(j, s)| at(j, s)).collect();
        let square = wave.chunks_exact(n).map(|w| w.iter().map(|v| v * v).sum()).collect();
        let mean = wave.chunks_exact(n).map(|w| w.iter().sum::<f32>() / n as f32).collect();
        let direction = (0..PLACES).map(|j| (TAU * j as f32 / PLACES as f32).sin_cos()).collect();
        Self { photos: n, wave, square, mean, direction }
    }

    fn of(&self, j: usize) -> &[f32] {
        &self.wave[j * self.photos..(j + 1) * self.photos]
    }

    /// The wave that explains a pixel best when its own brightness and amplitude are free.
    fn free(&self, levels: &[f32]) -> &[f32] {
        let n = self.photos as f32;
        let mean = levels.iter().sum::<f32>() / n;
        let mut best = (f32::MIN, 0);
        for j in 0..PLACES {
            let product: f32 = levels.iter().zip(self.of(j)).map(|(v, w)| (v - mean) * w).sum();
            let length = (self.square[j] - n * self.mean[j] * self.mean[j]).max(0.1).sqrt();
            if product / length > best.0 {
                best = (product / length, j);
            }
        }
        self.of(best.1)
    }

    /// The wave nearest to a pixel of known brightness and amplitude.
    fn best(&self, levels: &[f32], a: f32, b: f32) -> &[f32] {
        let cost = |j: usize| {
            let product: f32 = levels.iter().zip(self.of(j)).map(|(v, w)| (v - a) / b * w).sum();
            self.square[j] - 2.0 * product
        };
        let best = (0..PLACES).map(|j| (cost(j), j)).min_by(|p, q| p.0.total_cmp(&q.0));
        self.of(best.map_or(0, |b| b.1))
    }

    /// Mean phase and its spread, weighted by likelihood; `None` where no phase is likely.
    fn likely(&self, q: &[f32], deviation: f32) -> Option<(f32, f32)> {
        let own: f32 = q.iter().map(|v| v * v).sum();
        let mut cost = [0f32; PLACES];
        for (j, cost) in cost.iter_mut().enumerate() {
            let product: f32 = q.iter().zip(self.of(j)).map(|(v, w)| v * w).sum();
            *cost = self.square[j] - 2.0 * product;
        }
        let least = cost.iter().copied().fold(f32::MAX, f32::min);
        let left = ((least + own).max(0.0) / self.photos as f32).sqrt();
        if !(left < WORST_DEVIATION.max(4.0 * deviation)) {
            return None;
        }
        let scale = 0.5 / (deviation * deviation);
        let (mut sine, mut cosine, mut sum) = (0.0, 0.0, 0.0);
        for (cost, (s, c)) in cost.iter().zip(&self.direction) {
            let exponent = (cost - least) * scale;
            if exponent < 12.0 {
                let weight = (-exponent).exp();
                (sine, cosine, sum) = (sine + weight * s, cosine + weight * c, sum + weight);
            }
        }
        let length = (sine * sine + cosine * cosine).sqrt() / sum;
        Some((sine.atan2(cosine), (-2.0 * length.clamp(1e-3, 1.0).ln()).max(0.0).sqrt()))
    }
}
