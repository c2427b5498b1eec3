//! The lines near every place of a lattice: the plane wave that explains its surroundings best.

use crate::photo::Photo;
use crate::pixel::Pixel;
use nalgebra::Vector2;
use rayon::prelude::*;
use std::f64::consts::TAU;

/// Distance of the lattice's places, px.
const APART_PX: usize = 16;
/// Standard deviation of the window, periods expected.
const WINDOW_PERIODS: f64 = 0.8;
/// Samples from the window's middle to its end, which is at two standard deviations.
const SAMPLES: i32 = 9;
/// The wave is looked for between these multiples of the expected frequency.
const SLOWEST: f64 = 0.4;
const FASTEST: f64 = 2.6;
const FREQUENCIES: usize = 10;
/// And turned by up to so much to either side, rad.
const MOST_TURNED: f64 = 0.7;
const TURNS: i32 = 3;
/// Times the search is made twice as fine.
const FINER: usize = 3;
/// Share of the variance that a wave must explain to be one. Of a square wave its first harmonic has 0.81.
const LEAST_SHARE: f64 = 0.45;
/// Contrast over the ordinary one below which it is something else's lines.
const LEAST_CONTRAST: f64 = 0.3;

struct Wave {
    frequency: Vector2<f64>,
    phase: f64,
    amplitude: f64,
    share: f64,
}

/// Wrapped phase of the lines at every pixel, rad, as the nearest place of the lattice has it; NaN where no lines
/// are seen. `expected` is the board coordinate a pixel should mirror, in pitches: its direction is believed, its
/// rate between two fifths and two and a half times.
pub fn carrier(photo: &Photo, table: &[f32; 256], expected: impl Fn(&Pixel) -> Option<f64> + Sync) -> Vec<f32> {
    let (width, height) = (photo.width, photo.height);
    let (nx, ny) = (width / APART_PX, height / APART_PX);
    let middle = |k: usize| Pixel::new(place(k % nx), place(k / nx));
    let waves: Vec<Option<Wave>> =
        (0..nx * ny).into_par_iter().map(|k| strongest(photo, table, middle(k), rate(&expected, middle(k))?)).collect();
    let mut contrast: Vec<f64> = waves.iter().flatten().map(|w| w.amplitude).collect();
    contrast.sort_by(f64::total_cmp);
    let least = LEAST_CONTRAST * contrast.get(contrast.len() / 2).copied().unwrap_or(f64::MAX);
    let mut out = vec![f32::NAN; width * height];
    out.par_chunks_mut(width).enumerate().for_each(|(y, row)| {
        for (x, value) in row.iter_mut().enumerate() {
            let k = (y / APART_PX).min(ny - 1) * nx + (x / APART_PX).min(nx - 1);
            if let Some(wave) = waves[k].as_ref().filter(|w| w.amplitude >= least) {
                let apart = Pixel::new(x as f64 + 0.5, y as f64 + 0.5) - middle(k);
                let phase = wave.phase + wave.frequency.dot(&apart);
                *value = (phase - TAU * (phase / TAU).round()) as f32;
            }
        }
    });
    out
}

fn place(k: usize) -> f64 {
    (k as f64 + 0.5) * APART_PX as f64
}

/// Expected change of the phase, rad per px.
fn rate(expected: &impl Fn(&Pixel) -> Option<f64>, at: Pixel) -> Option<Vector2<f64>> {
    let here = expected(&at)?;
    let ahead = |step: Pixel| expected(&(at + step)).map(|then| TAU * (then - here));
    Some(Vector2::new(ahead(Pixel::new(1.0, 0.0))?, ahead(Pixel::new(0.0, 1.0))?)).filter(|k| k.norm() > 1e-6)
}

fn strongest(photo: &Photo, table: &[f32; 256], at: Pixel, expected: Vector2<f64>) -> Option<Wave> {
    let window = Window::new(photo, table, at, 2.0 * WINDOW_PERIODS * TAU / expected.norm())?;
    let turned = |stretch: f64, turn: f64| nalgebra::Rotation2::new(turn) * expected * stretch;
    let ratio = (FASTEST / SLOWEST).powf(1.0 / (FREQUENCIES - 1) as f64);
    let mut best = (-1.0, 1.0, 0.0);
    let look = |best: &mut (f64, f64, f64), stretch: f64, turn: f64| {
        if (SLOWEST..=FASTEST).contains(&stretch) && turn.abs() <= MOST_TURNED {
            let power = window.wave(&turned(stretch, turn)).norm_squared();
            if power > best.0 {
                *best = (power, stretch, turn);
            }
        }
    };
    for k in 0..FREQUENCIES {
        for t in -TURNS..=TURNS {
            let turn = 0.999 * MOST_TURNED * f64::from(t) / f64::from(TURNS);
            look(&mut best, SLOWEST * ratio.powi(k as i32) * 1.000_001, turn);
        }
    }
    let (mut up, mut aside) = (ratio.ln(), MOST_TURNED / f64::from(TURNS));
    for _ in 0..FINER {
        (up, aside) = (0.5 * up, 0.5 * aside);
        let (_, stretch, turn) = best;
        for (i, j) in [(-1, 0), (1, 0), (0, -1), (0, 1), (-1, -1), (1, 1), (-1, 1), (1, -1)] {
            look(&mut best, stretch * (f64::from(i) * up).exp(), turn + f64::from(j) * aside);
        }
    }
    let frequency = turned(best.1, best.2);
    let wave = window.wave(&frequency);
    let amplitude = 2.0 * wave.norm();
    let share = 0.5 * amplitude * amplitude / window.variance.max(1e-12);
    let wave = Wave { frequency, phase: wave.y.atan2(wave.x), amplitude, share };
    Some(wave).filter(|w| w.share >= LEAST_SHARE)
}

/// Brightness around a place, less its mean, times the window.
struct Window {
    apart_px: f64,
    values: Vec<f64>,
    variance: f64,
}

impl Window {
    /// `None` at the photo's rim.
    fn new(photo: &Photo, table: &[f32; 256], at: Pixel, reach: f64) -> Option<Self> {
        let apart_px = reach / f64::from(SAMPLES);
        let inside = |v: f64, n: usize| v - reach >= 0.0 && v + reach < n as f64;
        if !(inside(at.x, photo.width) && inside(at.y, photo.height)) {
            return None;
        }
        let axis = || -SAMPLES..=SAMPLES;
        let fall = |k: i32| (-0.5 * (2.0 * f64::from(k) / f64::from(SAMPLES)).powi(2)).exp();
        let mut samples = Vec::new();
        for (j, i) in axis().flat_map(|j| axis().map(move |i| (j, i))) {
            let (x, y) = (at.x + apart_px * f64::from(i), at.y + apart_px * f64::from(j));
            let level = photo.grey[y as usize * photo.width + x as usize];
            samples.push((fall(i) * fall(j), f64::from(table[usize::from(level)])));
        }
        let sum: f64 = samples.iter().map(|s| s.0).sum();
        let mean = samples.iter().map(|s| s.0 * s.1).sum::<f64>() / sum;
        let variance = samples.iter().map(|s| s.0 * (s.1 - mean).powi(2)).sum::<f64>() / sum;
        let values = samples.iter().map(|s| s.0 * (s.1 - mean) / sum).collect();
        Some(Self { apart_px, values, variance })
    }

    /// Mean of the values times exp(-i k·d): half the amplitude and the phase of that wave.
    fn wave(&self, k: &Vector2<f64>) -> Vector2<f64> {
        let turns = |k: f64| -> Vec<(f64, f64)> {
            (-SAMPLES..=SAMPLES).map(|i| (-k * self.apart_px * f64::from(i)).sin_cos()).collect()
        };
        let (across, down) = (turns(k.x), turns(k.y));
        let rows = self.values.chunks_exact(across.len()).zip(&down).map(|(row, (sin, cos))| {
            let (mut re, mut im) = (0.0, 0.0);
            for (v, (s, c)) in row.iter().zip(&across) {
                re += v * c;
                im += v * s;
            }
            Vector2::new(re * cos - im * sin, re * sin + im * cos)
        });
        rows.sum()
    }
}
