//! Photos of one axis of a slid line board to steps: which photo was slid how far, and which one is no good.
//!
//! A first guess from the photos' covariance ([`super::covariance`]); then alternating least squares over
//! phases (pixel by pixel) and steps (photo by photo), as in Wang and Han 2004 but with the lines' own
//! profile in place of a sine, so that its harmonics do not bend the steps. A photo that the others'
//! model does not explain is left out and named.

use super::covariance::{centred_covariance, fit_steps};
use super::profile::Profile;
use super::waves::{Place, Waves};
use crate::photo::Photo;
use rayon::prelude::*;
use std::f64::consts::TAU;
use thiserror::Error;

/// Steps of the photos of one axis.
#[derive(Debug, Clone)]
pub struct Slides {
    /// Which photos are used, by their place in what was given.
    pub kept: Vec<usize>,
    /// Step of each photo used, rad, the first 0; the direction of all is unknown.
    pub steps: Vec<f64>,
    /// Brightness of each photo used, mean 1.
    pub gains: Vec<f64>,
    /// The board's profile.
    pub profile: Profile,
    /// Root mean square of what is left in each photo given, over the lines' amplitude.
    pub left: Vec<f64>,
    /// Photos used that show the same step as an earlier one.
    pub repeats: Vec<(usize, usize)>,
    /// Amplitude of the lines' first harmonic, linear, full scale 1.
    pub amplitude: f64,
    /// Deviation of a linear intensity from the model, full scale 1.
    pub noise: f64,
}

/// Why the steps cannot be found.
#[derive(Debug, Error, Clone, PartialEq)]
pub enum SlidesError {
    /// Too few photos to find anything from.
    #[error("{found} photos can be used; at least 4 are needed")]
    TooFew {
        /// How many there are.
        found: usize,
    },
    /// Nothing changes between them.
    #[error("the lines are the same in all photos, or there are none")]
    NotMoved,
    /// They cover too little of a pitch.
    #[error("the photos show fewer than 3 different places of the lines")]
    TooAlike,
}

/// Photos that are needed to find steps and a profile.
pub const LEAST_PHOTOS: usize = 4;
/// Pixels from which the steps are found.
const SAMPLES: usize = 40_000;
/// A photo that is left this many times worse explained than the middle one is looked at.
const SUSPECT: f64 = 1.6;
/// And is left out where that makes the rest this much better explained.
const BETTER: f64 = 0.75;
/// Where this much is left unexplained, of the amplitude, there were no moving lines: fitted noise leaves 0.9.
const MERE_NOISE: f64 = 0.6;
/// Steps nearer than this are the same, rad: a fiftieth of a pitch.
const SAME_RAD: f64 = TAU / 50.0;

/// Finds the steps of photos of one axis. `table` makes levels linear.
pub fn find_slides(photos: &[&Photo], table: &[f32; 256]) -> Result<Slides, SlidesError> {
    if photos.len() < LEAST_PHOTOS {
        return Err(SlidesError::TooFew { found: photos.len() });
    }
    let samples = Samples::of(photos, table).ok_or(SlidesError::NotMoved)?;
    let mut kept: Vec<usize> = (0..photos.len()).collect();
    let mut model = samples.fit(&kept).ok_or(SlidesError::NotMoved)?;
    while kept.len() > LEAST_PHOTOS {
        let mut sorted = model.left.clone();
        sorted.sort_by(f64::total_cmp);
        let middle = sorted[(sorted.len() - 1) / 2];
        let suspects = (0..kept.len()).filter(|&k| model.left[k] > SUSPECT * middle);
        let without = |k: usize| {
            let rest: Vec<usize> = kept.iter().copied().filter(|&photo| photo != kept[k]).collect();
            samples.fit(&rest).map(|fit| (rest, fit))
        };
        let best = suspects.filter_map(without).min_by(|a, b| a.1.rms().total_cmp(&b.1.rms()));
        match best {
            Some((rest, fit)) if fit.rms() < BETTER * model.rms() => (kept, model) = (rest, fit),
            _ => break,
        }
    }
    if model.rms() > MERE_NOISE {
        return Err(SlidesError::NotMoved);
    }
    let repeats = repeated(&kept, &model.steps);
    if kept.len() - repeats.len() < 3 {
        return Err(SlidesError::TooAlike);
    }
    Ok(Slides {
        left: samples.left_in_all(&kept, &model),
        noise: model.rms() * model.amplitude,
        repeats,
        kept,
        ..model.into()
    })
}

fn wrap(d: f64) -> f64 {
    d - TAU * (d / TAU).round()
}

fn repeated(kept: &[usize], steps: &[f64]) -> Vec<(usize, usize)> {
    let earlier = |k: usize| (0..k).find(|&j| wrap(steps[k] - steps[j]).abs() < SAME_RAD);
    (1..steps.len()).filter_map(|k| earlier(k).map(|j| (kept[k], kept[j]))).collect()
}

/// Pixels of the mirrored lines, as linear intensities of all photos, in rows.
struct Samples {
    photos: usize,
    rows: Vec<f64>,
}

/// What the photos are explained by.
struct Model {
    steps: Vec<f64>,
    gains: Vec<f64>,
    profile: Profile,
    /// Root mean square left in each photo, over the amplitude.
    left: Vec<f64>,
    amplitude: f64,
}

impl From<Model> for Slides {
    fn from(m: Model) -> Self {
        let (kept, left, repeats) = Default::default();
        Slides {
            kept,
            steps: m.steps,
            gains: m.gains,
            profile: m.profile,
            left,
            repeats,
            amplitude: m.amplitude,
            noise: 0.0,
        }
    }
}

impl Model {
    fn rms(&self) -> f64 {
        (self.left.iter().map(|l| l * l).sum::<f64>() / self.left.len() as f64).sqrt()
    }
}

impl Samples {
    /// Pixels that change between photos by more than noise.
    fn of(photos: &[&Photo], table: &[f32; 256]) -> Option<Self> {
        let n = photos.len();
        let pixels = photos[0].grey.len();
        let spread = |i: usize| {
            let (mut sum, mut square) = (0.0, 0.0);
            for photo in photos {
                let v = f64::from(table[usize::from(photo.grey[i])]);
                sum += v;
                square += v * v;
            }
            (square / n as f64 - (sum / n as f64).powi(2)).max(0.0).sqrt()
        };
        let stride = (pixels / (8 * SAMPLES)).max(1);
        let all: Vec<(usize, f64)> =
            (0..pixels / stride).into_par_iter().with_min_len(4096).map(|k| (k * stride, spread(k * stride))).collect();
        let mut sorted: Vec<f64> = all.iter().map(|s| s.1).collect();
        sorted.sort_by(f64::total_cmp);
        let (still, strong) = (sorted[sorted.len() / 50], sorted[sorted.len() * 19 / 20]);
        let limit = (4.0 * still).max(0.25 * strong);
        let moved: Vec<usize> = all.into_iter().filter(|s| s.1 > limit).map(|s| s.0).collect();
        if moved.len() < 500 || strong < LEAST_CHANGE {
            return None;
        }
        let every = moved.len().div_ceil(SAMPLES);
        let value = |i: usize, photo: &Photo| f64::from(table[usize::from(photo.grey[i])]);
        let rows = moved.iter().step_by(every).flat_map(|&i| photos.iter().map(move |p| value(i, p))).collect();
        Some(Self { photos: n, rows })
    }

    /// Rows of the photos chosen.
    fn chosen(&self, kept: &[usize]) -> Vec<f64> {
        self.rows.chunks_exact(self.photos).flat_map(|row| kept.iter().map(|&k| row[k])).collect()
    }

    fn fit(&self, kept: &[usize]) -> Option<Model> {
        let n = kept.len();
        let mut rows = self.chosen(kept);
        let mut gains = vec![0.0; n];
        rows.chunks_exact(n).for_each(|row| gains.iter_mut().zip(row).for_each(|(g, v)| *g += v));
        let mean = gains.iter().sum::<f64>() / n as f64;
        gains.iter_mut().for_each(|g| *g /= mean);
        rows.chunks_exact_mut(n).for_each(|row| row.iter_mut().zip(&gains).for_each(|(v, g)| *v /= g));
        let first = fit_steps(&centred_covariance(&rows, n))?;
        let other = Profile { white: 1.0 - first.profile.white, ..first.profile };
        [first.profile, other]
            .into_iter()
            .map(|profile| alternate(&rows, &first.steps, profile, &gains))
            .min_by(|a, b| a.rms().total_cmp(&b.rms()))
    }

    /// What the model leaves of every photo given, also of those not used (at the step that suits them best).
    fn left_in_all(&self, kept: &[usize], model: &Model) -> Vec<f64> {
        let rows = self.chosen(kept);
        let rows: Vec<f64> =
            rows.chunks_exact(kept.len()).flat_map(|r| r.iter().zip(&model.gains).map(|(v, g)| v / g)).collect();
        let waves = Waves::new(model.profile, &model.steps);
        let places: Vec<Place> = rows.chunks_exact(kept.len()).map(|row| waves.place(row)).collect();
        (0..self.photos)
            .map(|photo| match kept.iter().position(|&k| k == photo) {
                Some(k) => model.left[k],
                None => {
                    let seen: Vec<f64> = self.rows.iter().skip(photo).step_by(self.photos).copied().collect();
                    waves.left_at_best_step(&seen, &places)
                }
            })
            .collect()
    }
}

/// Linear intensity; lines that change less are not there.
const LEAST_CHANGE: f64 = 0.004;

/// Rounds of the alternation; it settles in about five.
const ROUNDS: usize = 8;

/// Alternates phases and steps.
fn alternate(rows: &[f64], steps: &[f64], profile: Profile, gains: &[f64]) -> Model {
    let n = steps.len();
    let mut steps = steps.to_vec();
    let mut left = vec![0.0; n];
    let mut amplitude = 0.0;
    for round in 0..=ROUNDS {
        let waves = Waves::new(profile, &steps);
        let sums = rows
            .par_chunks(n * 1024)
            .map(|block| {
                let mut sums = vec![[0.0; 3]; n];
                let mut power = 0.0;
                for row in block.chunks_exact(n) {
                    let place = waves.place(row);
                    power += place.b * place.b;
                    for (k, sum) in sums.iter_mut().enumerate() {
                        let (p, slope) = waves.at(place.index, k);
                        let e = row[k] - place.a - place.b * p;
                        sum[0] += e * place.b * slope;
                        sum[1] += (place.b * slope).powi(2);
                        sum[2] += e * e;
                    }
                }
                (sums, power)
            })
            .reduce(|| (vec![[0.0; 3]; n], 0.0), |a, b| (add(a.0, &b.0), a.1 + b.1));
        let count = (rows.len() / n) as f64;
        amplitude = (sums.1 / count).sqrt();
        left = sums.0.iter().map(|s| (s[2] / count).sqrt() / amplitude.max(1e-12)).collect();
        if round < ROUNDS {
            let moves: Vec<f64> = sums.0.iter().map(|s| (s[0] / s[1].max(1e-12)).clamp(-0.3, 0.3)).collect();
            steps.iter_mut().zip(&moves).for_each(|(s, m)| *s = wrap(*s + m - moves[0]));
        }
    }
    Model { steps, gains: gains.to_vec(), profile, left, amplitude }
}

fn add(mut a: Vec<[f64; 3]>, b: &[[f64; 3]]) -> Vec<[f64; 3]> {
    a.iter_mut().zip(b).for_each(|(a, b)| (0..3).for_each(|i| a[i] += b[i]));
    a
}
