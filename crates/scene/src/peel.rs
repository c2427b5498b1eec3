//! Orange peel: the paint's own fine waviness.
//!
//! Plane waves of random direction and phase between the band's two wavelengths, with the spectrum of white noise
//! through a Gaussian filter, held as a cubic B-spline so that slopes are exact and quick.

use crate::dent::Rise;
use crate::noise::Random;
use rayon::prelude::*;
use std::f64::consts::TAU;

/// Shortest and longest wavelength, mm.
const BAND_MM: [f64; 2] = [1.0, 8.0];
/// Deviation of the Gaussian in spatial frequency, rad/mm: most of the height lies between 2 and 6 mm wavelength,
/// which gives the slopes near 0.6 mrad at 0.4 µm that the sets of an independent renderer show.
const SPREAD_PER_MM: f64 = 1.4;
/// Node distance: five to the shortest wave.
const STEP_MM: f64 = 0.2;
/// Enough for the heights to be close to normally distributed.
const WAVES: usize = 160;

/// A wavy height map.
#[derive(Debug, Clone)]
pub struct Peel {
    x0: f64,
    y0: f64,
    nx: usize,
    ny: usize,
    nodes: Vec<f32>,
}

impl Peel {
    /// Peel of a given rms height (mm) over a panel of `w` by `h` mm.
    #[must_use]
    pub fn new(w: f64, h: f64, rms: f64, seed: u64) -> Self {
        let (nx, ny) = ((w / STEP_MM) as usize + 5, (h / STEP_MM) as usize + 5);
        let (x0, y0) = (-w / 2.0 - STEP_MM, -h / 2.0 - STEP_MM);
        let waves = waves(rms, seed);
        let mut nodes = vec![0.0f32; nx * ny];
        nodes.par_chunks_mut(nx).enumerate().for_each(|(j, row)| {
            let y = y0 + j as f64 * STEP_MM;
            for wave in &waves {
                wave.add_to(row, x0, y);
            }
        });
        Self { x0, y0, nx, ny, nodes }
    }

    /// Height and slopes, panel frame.
    #[must_use]
    pub fn rise(&self, x: f64, y: f64) -> Rise {
        let (i, wx, dx) = spline((x - self.x0) / STEP_MM, self.nx);
        let (j, wy, dy) = spline((y - self.y0) / STEP_MM, self.ny);
        let mut rise = Rise::default();
        for k in 0..4 {
            let start = (j + k) * self.nx + i;
            let row = &self.nodes[start..start + 4];
            let (mut value, mut slope) = (0.0, 0.0);
            for m in 0..4 {
                value += wx[m] * f64::from(row[m]);
                slope += dx[m] * f64::from(row[m]);
            }
            rise.z += wy[k] * value;
            rise.dx += wy[k] * slope / STEP_MM;
            rise.dy += dy[k] * value / STEP_MM;
        }
        rise
    }
}

struct Wave {
    kx: f64,
    ky: f64,
    phase: f64,
    height: f64,
}

impl Wave {
    /// Adds the wave to a row of nodes by turning a unit vector from node to node.
    fn add_to(&self, row: &mut [f32], x0: f64, y: f64) {
        let (mut sin, mut cos) = (self.kx * x0 + self.ky * y + self.phase).sin_cos();
        let (turn_sin, turn_cos) = (self.kx * STEP_MM).sin_cos();
        for node in row {
            *node += (self.height * cos) as f32;
            (cos, sin) = (cos * turn_cos - sin * turn_sin, sin * turn_cos + cos * turn_sin);
        }
    }
}

fn waves(rms: f64, seed: u64) -> Vec<Wave> {
    let mut random = Random::new(seed ^ 0x7065_656c);
    let [low, high] = [TAU / BAND_MM[1], TAU / BAND_MM[0]];
    (0..WAVES)
        .map(|_| {
            // k² of filtered white noise is distributed exponentially; here between the band's ends.
            let share = |k: f64| (-(k / SPREAD_PER_MM).powi(2) / 2.0).exp();
            let drawn = share(low) + (share(high) - share(low)) * random.unit();
            let k = SPREAD_PER_MM * (-2.0 * drawn.ln()).sqrt();
            let (sin, cos) = (TAU * random.unit()).sin_cos();
            let (kx, ky) = (k * cos, k * sin);
            // A B-spline lowers a sampled wave by (2 + cos kh)/3 per axis; make up for it.
            let lowered = |k: f64| (2.0 + (k * STEP_MM).cos()) / 3.0;
            let height = rms * (2.0 / WAVES as f64).sqrt() / (lowered(kx) * lowered(ky));
            Wave { kx, ky, phase: TAU * random.unit(), height }
        })
        .collect()
}

/// First of four nodes, cubic B-spline weights and their derivatives.
fn spline(place: f64, n: usize) -> (usize, [f64; 4], [f64; 4]) {
    let whole = place.floor().clamp(1.0, n as f64 - 3.0);
    let t = place - whole;
    let s = 1.0 - t;
    let w = [
        s * s * s / 6.0,
        (4.0 - 6.0 * t * t + 3.0 * t * t * t) / 6.0,
        (4.0 - 6.0 * s * s + 3.0 * s * s * s) / 6.0,
        t * t * t / 6.0,
    ];
    let d = [-s * s / 2.0, (3.0 * t - 4.0) * t / 2.0, (4.0 - 3.0 * s) * s / 2.0, t * t / 2.0];
    (whole as usize - 1, w, d)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn height_has_the_said_rms_and_slopes_are_its_derivatives() {
        let peel = Peel::new(100.0, 80.0, 4e-4, 5);
        let places = (0..4000).map(|i| (f64::from(i % 80) * 1.13 - 45.0, f64::from(i / 80) * 1.31 - 33.0));
        let sum: f64 = places.clone().map(|(x, y)| peel.rise(x, y).z.powi(2)).sum();
        let rms = (sum / 4000.0).sqrt();
        assert!((3.6e-4..4.4e-4).contains(&rms), "rms {rms}");
        for (x, y) in places.step_by(97) {
            let h = 1e-4;
            let rise = peel.rise(x, y);
            let dx = (peel.rise(x + h, y).z - peel.rise(x - h, y).z) / (2.0 * h);
            let dy = (peel.rise(x, y + h).z - peel.rise(x, y - h).z) / (2.0 * h);
            assert!((rise.dx - dx).abs() < 1e-6 && (rise.dy - dy).abs() < 1e-6, "at {x} {y}");
        }
    }
}
