//! Repeatable random numbers: the same start, the same picture, on every machine.

/// A small generator (SplitMix64; Steele, Lea, Flood, "Fast Splittable Pseudorandom Number Generators", OOPSLA 2014).
#[derive(Debug, Clone)]
pub struct Random(u64);

impl Random {
    /// Starts a sequence.
    #[must_use]
    pub fn new(start: u64) -> Self {
        Self(start.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0xd1b5_4a32_d192_ed03)
    }

    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Even between 0 and 1.
    pub fn unit(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Close to normal, mean 0 and variance 1: four 16-bit even numbers added (tails end at 3.46).
    pub fn normal(&mut self) -> f32 {
        let bits = self.bits();
        let sum: u64 = (0..4).map(|k| (bits >> (16 * k)) & 0xffff).sum();
        (sum as f32 / 65_536.0 - 1.999_97) * 3.0f32.sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn normal_numbers_have_mean_nought_and_variance_one() {
        let mut random = Random::new(1);
        let values: Vec<f64> = (0..200_000).map(|_| f64::from(random.normal())).collect();
        let mean = values.iter().sum::<f64>() / 2e5;
        let variance = values.iter().map(|v| v * v).sum::<f64>() / 2e5;
        assert!(mean.abs() < 0.008 && (variance - 1.0).abs() < 0.02, "{mean} {variance}");
    }
}
