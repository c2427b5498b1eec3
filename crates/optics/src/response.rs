//! The phone's response: stored levels back to linear light.
//!
//! A power law whose exponent is found from the photos: the second harmonic that a wrong exponent leaves in
//! a shifted sine is driven to zero.

use crate::photo::Photo;

/// Linear intensity of every stored level for a power-law response.
pub fn linear_table(gamma: f64) -> [f32; 256] {
    std::array::from_fn(|level| (level as f64 / 255.0).powf(gamma) as f32)
}

/// The power-law exponent that leaves no second harmonic, between 1 and 3; 2.2 where it cannot be told.
/// `photos` must be four quarter-period steps in order.
pub fn estimate_gamma(photos: &[&Photo]) -> f64 {
    let at = |i: usize| -> [u8; 4] { std::array::from_fn(|k| photos[k].grey[i]) };
    let seen = (0..photos[0].grey.len()).step_by(EVERY_PX).map(at);
    let seen: Vec<[u8; 4]> = seen.filter(|levels| levels.iter().all(|&l| l <= BRIGHTEST)).collect();
    let harmonic = |gamma: f64| -> f64 {
        let table = linear_table(gamma);
        let (mut cross, mut square) = (0.0, 0.0);
        for levels in &seen {
            let [a, b, c, d] = levels.map(|l| f64::from(table[usize::from(l)]));
            let (re, im) = (a - c, d - b);
            let power = re * re + im * im;
            if power < 4e-4 {
                continue;
            }
            let cos2 = (re * re - im * im) / power;
            cross += 0.25 * (a - b + c - d) * cos2 * power.sqrt();
            square += 0.5 * power * cos2 * cos2;
        }
        if square > 0.0 { cross / square } else { f64::NAN }
    };
    let (mut low, mut high) = (1.0, 3.0);
    let (at_low, at_high) = (harmonic(low), harmonic(high));
    if !(at_low * at_high < 0.0) {
        return DEFAULT_GAMMA;
    }
    for _ in 0..20 {
        let middle = 0.5 * (low + high);
        if harmonic(middle) * at_low > 0.0 { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

/// Every how many pixels one is looked at; a prime, so that no column is favoured.
const EVERY_PX: usize = 149;
/// Brighter levels may be the end of the scale.
const BRIGHTEST: u8 = 250;

/// What phones write when nothing else is known (sRGB's overall exponent).
pub const DEFAULT_GAMMA: f64 = 2.2;
