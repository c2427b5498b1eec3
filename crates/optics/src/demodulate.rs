//! N photos of one shifted sine to phase and modulation, pixel by pixel.

use crate::photo::Photo;
use crate::steps::Steps;
use rayon::prelude::*;
use std::f32::consts::{FRAC_PI_2, PI};

/// Phase of one pattern, all pixels.
#[derive(Debug, Clone)]
pub struct Phase {
    /// Periods across the board.
    pub periods: f64,
    /// Wrapped phase, rad, in (-π, π].
    pub phase: Vec<f32>,
    /// Amplitude B, linear, full scale 1.
    pub modulation: Vec<f32>,
    /// One-sigma noise of a linear intensity, full scale 1.
    pub noise: f64,
    /// Photos the phase was made from.
    pub steps: usize,
}

impl Phase {
    /// One-sigma phase noise of a pixel, rad: `√(2/N) σI / B`.
    pub fn sigma(&self, pixel: usize) -> f64 {
        (2.0 / self.steps as f64).sqrt() * self.noise / f64::from(self.modulation[pixel]).max(1e-9)
    }
}

/// Demodulates photos of one pattern; `None` when their shifts do not determine the phase.
pub fn demodulate(photos: &[&Photo], shifts: &[f64], periods: f64, table: &[f32; 256]) -> Option<Phase> {
    Some(Steps::new(photos, shifts, periods, table)?.demodulate())
}

impl Steps<'_> {
    /// Phase and modulation of every pixel.
    pub fn demodulate(&self) -> Phase {
        let width = self.photos[0].width;
        let pixels = self.photos[0].grey.len();
        let steps = self.photos.len();
        let mut noise = self.noise();
        let grainy = (2.0 / steps as f64).sqrt() * noise > GRAINY_RAD * self.strong();
        let (mut phase, mut modulation) = (vec![0f32; pixels], vec![0f32; pixels]);
        each_block(&mut phase, &mut modulation, |at, sine, cosine| {
            self.phasors(at, sine, cosine);
            if !grainy {
                to_polar(sine, cosine);
            }
        });
        if grainy {
            // Averaging the phasor before its angle is taken keeps grain from turning into wrong orders.
            phase = box_three(&phase, width);
            modulation = box_three(&modulation, width);
            noise /= 3.0;
            each_block(&mut phase, &mut modulation, |_, sine, cosine| to_polar(sine, cosine));
        }
        Phase { periods: self.periods, phase, modulation, noise, steps }
    }

    /// `B sin φ` and `B cos φ` of the pixels from `at` on, added to what is there.
    fn phasors(&self, at: usize, sine: &mut [f32], cosine: &mut [f32]) {
        for (photo, w) in self.photos.iter().zip(&self.weights) {
            let levels = &photo.grey[at..at + sine.len()];
            for ((s, c), &level) in sine.iter_mut().zip(cosine.iter_mut()).zip(levels) {
                let value = self.table[usize::from(level)];
                *c += w[1] * value;
                *s += w[2] * value;
            }
        }
    }

    /// Amplitude that a tenth of the pixels exceed.
    fn strong(&self) -> f64 {
        let pixels = self.photos[0].grey.len();
        let size = |(c, s): (f32, f32)| (c * c + s * s).sqrt();
        let mut all: Vec<f32> = (0..pixels).step_by(61).map(|i| size(self.phasor(i))).collect();
        let at = all.len() * 9 / 10;
        f64::from(*all.select_nth_unstable_by(at, f32::total_cmp).1)
    }
}

/// Phase noise of the brightest tenth above which a photo set counts as grainy, rad.
const GRAINY_RAD: f64 = 0.06;
/// Pixels that stay in the fastest cache together with their photos.
const BLOCK: usize = 4096;

fn each_block(a: &mut [f32], b: &mut [f32], f: impl Fn(usize, &mut [f32], &mut [f32]) + Sync) {
    a.par_chunks_mut(BLOCK).zip(b.par_chunks_mut(BLOCK)).enumerate().for_each(|(k, (a, b))| f(k * BLOCK, a, b));
}

/// `(B sin φ, B cos φ)` to `(φ, B)` in place.
fn to_polar(sine: &mut [f32], cosine: &mut [f32]) {
    for (s, c) in sine.iter_mut().zip(cosine) {
        (*s, *c) = (angle(*s, *c), (*s * *s + *c * *c).sqrt());
    }
}

/// Angle of `(c, s)`, rad, without branches so that it runs several pixels at a time. The series is
/// Abramowitz and Stegun's 4.4.49, right to 2e-8; single precision adds about 2e-7.
pub(crate) fn angle(s: f32, c: f32) -> f32 {
    const SERIES: [f32; 8] = [
        0.002_866_225_7,
        -0.016_165_737,
        0.042_909_615,
        -0.075_289_64,
        0.106_562_64,
        -0.142_089,
        0.199_935_5,
        -0.333_331_45,
    ];
    let (ys, xs) = (s.abs(), c.abs());
    let (small, large) = (ys.min(xs), ys.max(xs).max(f32::MIN_POSITIVE));
    let t = small / large;
    let q = t * t;
    let series = SERIES.iter().fold(0.0, |sum, a| sum * q + a);
    let first = t + t * q * series;
    let quarter = if ys > xs { FRAC_PI_2 - first } else { first };
    let half = if c < 0.0 { PI - quarter } else { quarter };
    if s < 0.0 { -half } else { half }
}

/// Mean of each pixel's 3 x 3 neighbourhood; the outermost pixels stay.
fn box_three(values: &[f32], width: usize) -> Vec<f32> {
    let height = values.len() / width;
    let mut out = values.to_vec();
    out.par_chunks_mut(width).enumerate().filter(|(y, _)| *y > 0 && y + 1 < height).for_each(|(y, row)| {
        let [above, here, below] = [y - 1, y, y + 1].map(|k| &values[k * width..(k + 1) * width]);
        let column = |x: usize| above[x] + here[x] + below[x];
        for x in 1..width - 1 {
            row[x] = (column(x - 1) + column(x) + column(x + 1)) / 9.0;
        }
    });
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_angle_is_the_arc_tangent_all_around() {
        for k in -3600..=3600 {
            let (s, c) = (f64::from(k) * 0.05f64).to_radians().sin_cos();
            let found = f64::from(angle(0.3 * s as f32, 0.3 * c as f32));
            let off = (found - s.atan2(c)).abs();
            assert!(off.min((off - 2.0 * std::f64::consts::PI).abs()) < 5e-7, "{k}: {off}");
        }
        assert_eq!(angle(0.0, 0.0), 0.0);
    }
}
