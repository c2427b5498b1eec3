//! How bright a line board is across its lines: a black and white wave with soft edges.
//!
//! `p(φ) = Σ c_h cos hφ`, `c_h = 2 sin(πhd)/(πh) · exp(-h²w²/2)`: a white line of share `d` of the pitch,
//! centred at φ = 0, blurred by a Gaussian of `w` rad. `d = 1/2` and `w = 0` is the square wave, a large
//! `w` leaves the sine alone. Mean zero; harmonics up to [`HARMONICS`].

use std::f64::consts::PI;

/// Harmonics kept. The eleventh of a square wave is a hundredth of its power.
pub const HARMONICS: usize = 11;

/// The brightness across one pitch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Profile {
    /// Share of white in a pitch, 0 to 1.
    pub white: f64,
    /// Standard deviation of the edge's blur, rad (a pitch is 2π).
    pub softness_rad: f64,
}

impl Profile {
    /// Amplitude of each harmonic, the first at index 0, scaled so that the first is one.
    pub fn amplitudes(&self) -> [f64; HARMONICS] {
        let c = |h: f64| (PI * h * self.white).sin() / h * (-0.5 * (h * self.softness_rad).powi(2)).exp();
        let first = c(1.0);
        std::array::from_fn(|k| c((k + 1) as f64) / first)
    }

    /// Brightness at even phases over one pitch, from phase 0.
    pub fn table(&self, places: usize) -> Vec<f64> {
        let c = self.amplitudes();
        (0..places)
            .map(|j| {
                let phase = 2.0 * PI * j as f64 / places as f64;
                c.iter().enumerate().map(|(k, a)| a * ((k + 1) as f64 * phase).cos()).sum()
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sharp_half_white_profile_is_the_square_wave() {
        let table = Profile { white: 0.5, softness_rad: 0.05 }.table(64);
        // The square wave whose first harmonic is 1 stands at ±π/4.
        assert!((table[0] - PI / 4.0).abs() < 0.05 && (table[32] + PI / 4.0).abs() < 0.05);
        assert!(table.iter().sum::<f64>().abs() < 1e-9);
        let sine = Profile { white: 0.5, softness_rad: 2.0 }.table(64);
        assert!((sine[0] - 1.0).abs() < 1e-4 && sine[16].abs() < 1e-4);
    }
}
