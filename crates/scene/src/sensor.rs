//! From radiance to the bytes a phone would store: exposure, noise, response, eight bits.

use crate::noise::Random;
use serde::{Deserialize, Serialize};

/// A phone's sensor and its processing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Sensor {
    /// Electrons at full brightness: shot noise is the root of the count.
    pub full_electrons: f64,
    /// Read noise, electrons.
    pub read_electrons: f64,
    /// Stored value is linear light to the power 1/gamma; 0 means the sRGB curve (IEC 61966-2-1).
    pub gamma: f64,
    /// JPEG quality, 1 to 100.
    pub quality: u8,
    /// Colour stored at half resolution, as phones do.
    pub half_colour: bool,
}

impl Default for Sensor {
    fn default() -> Self {
        Self { full_electrons: 9000.0, read_electrons: 6.0, gamma: 2.2, quality: 88, half_colour: true }
    }
}

impl Sensor {
    /// Stored bytes of linear light (1 is full scale), with noise that `start` picks.
    #[must_use]
    pub fn expose(&self, light: &[f32], exposure: f32, start: u64) -> Vec<u8> {
        let curve = self.curve();
        let mut random = Random::new(start);
        let full = self.full_electrons as f32;
        let read = (self.read_electrons / self.full_electrons) as f32;
        light
            .iter()
            .map(|l| {
                let signal = (l * exposure).min(4.0);
                let spread = (signal / full + read * read).sqrt();
                let value = (signal + spread * random.normal()).clamp(0.0, 1.0);
                curve[(value * CURVE_STEPS as f32 + 0.5) as usize]
            })
            .collect()
    }

    fn curve(&self) -> Vec<u8> {
        let stored = |k: usize| (255.0 * self.respond(k as f64 / CURVE_STEPS as f64) + 0.5) as u8;
        (0..=CURVE_STEPS).map(stored).collect()
    }

    fn respond(&self, linear: f64) -> f64 {
        if self.gamma > 0.0 {
            linear.powf(1.0 / self.gamma)
        } else if linear <= 0.003_130_8 {
            12.92 * linear
        } else {
            1.055 * linear.powf(1.0 / 2.4) - 0.055
        }
    }
}

/// Fine enough that the darkest stored values above 1 keep their place.
const CURVE_STEPS: usize = 1 << 17;

/// Blurs three-value pixels by a Gaussian of this deviation in pixels, along rows and then columns.
pub fn blur(light: &mut [f32], width: usize, height: usize, deviation_px: f64) {
    let reach = (3.0 * deviation_px).ceil() as isize;
    let bell: Vec<f32> = (-reach..=reach).map(|k| (-(k as f64 / deviation_px).powi(2) / 2.0).exp() as f32).collect();
    let sum: f32 = bell.iter().sum();
    let mut pass = |along: usize, count: usize, across: usize| {
        let from = light.to_vec();
        for k in 0..width * height {
            let place = (k / along % count) as isize;
            let start = k as isize - place * along as isize;
            for c in 0..3 {
                let tap = |(m, w): (usize, &f32)| {
                    let at = (place + m as isize - reach).clamp(0, count as isize - 1);
                    from[((start + at * along as isize) * 3) as usize + c] * w
                };
                light[k * 3 + c] = bell.iter().enumerate().map(tap).sum::<f32>() / sum;
            }
        }
        debug_assert_eq!(along * count * across, width * height);
    };
    pass(1, width, height);
    pass(width, height, 1);
}

/// Shifts three-value pixels by a part of a pixel or more, right and down, linearly.
#[must_use]
pub fn nudge(light: &[f32], width: usize, height: usize, [right, down]: [f64; 2]) -> Vec<f32> {
    let mut out = vec![0.0; light.len()];
    for j in 0..height {
        for i in 0..width {
            let x = (i as f64 - right).clamp(0.0, width as f64 - 1.001);
            let y = (j as f64 - down).clamp(0.0, height as f64 - 1.001);
            let (k, s, t) = (y as usize * width + x as usize, x.fract() as f32, y.fract() as f32);
            for c in 0..3 {
                let at = |k: usize| light[k * 3 + c];
                let (above, below) =
                    (at(k) * (1.0 - s) + at(k + 1) * s, at(k + width) * (1.0 - s) + at(k + width + 1) * s);
                out[(j * width + i) * 3 + c] = above * (1.0 - t) + below * t;
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grey_keeps_its_mean_and_has_the_said_noise() {
        let sensor = Sensor::default();
        let bytes = sensor.expose(&vec![0.3; 60_000], 1.0, 9);
        let linear: Vec<f64> = bytes.iter().map(|b| (f64::from(*b) / 255.0).powf(2.2)).collect();
        let mean = linear.iter().sum::<f64>() / 6e4;
        let spread = (linear.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / 6e4).sqrt();
        let wanted = (0.3f64 / 9000.0 + (6.0f64 / 9000.0).powi(2)).sqrt();
        // Rounding to eight bits adds a third of a step squared.
        assert!((mean - 0.3).abs() < 2e-4, "{mean}");
        assert!((0.98..1.06).contains(&(spread / wanted)), "{spread} {wanted}");
    }

    #[test]
    fn nudging_moves_a_ramp_and_blurring_keeps_it() {
        let ramp: Vec<f32> = (0..40 * 30).flat_map(|k| [(k % 40) as f32, (k / 40) as f32, 1.0]).collect();
        let moved = nudge(&ramp, 40, 30, [2.5, -1.25]);
        let at = (15 * 40 + 20) * 3;
        assert!((moved[at] - 17.5).abs() < 1e-4 && (moved[at + 1] - 16.25).abs() < 1e-4);
        let mut soft = ramp.clone();
        blur(&mut soft, 40, 30, 1.5);
        assert!((soft[at] - 20.0).abs() < 1e-4 && (soft[at + 1] - 15.0).abs() < 1e-4);
    }
}
