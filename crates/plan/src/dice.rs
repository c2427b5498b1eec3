//! Numbers drawn by seed, the same on every machine: SplitMix64 (Steele, Lea and Flood 2014).

use std::f64::consts::TAU;

/// A source of drawn numbers.
#[derive(Debug, Clone)]
pub struct Dice(u64);

impl Dice {
    /// From a seed.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Evenly from a range.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * ((self.bits() >> 11) as f64 / (1u64 << 53) as f64)
    }

    /// Normally, with mean 0 and standard deviation 1 (Box and Muller 1958).
    pub fn normal(&mut self) -> f64 {
        let (a, b) = (self.between(f64::MIN_POSITIVE, 1.0), self.between(0.0, TAU));
        (-2.0 * a.ln()).sqrt() * b.cos()
    }

    /// One of several, by place.
    pub fn one_of(&mut self, n: usize) -> usize {
        (self.bits() % n as u64) as usize
    }
}
