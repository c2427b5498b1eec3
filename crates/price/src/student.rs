//! Student's t: the distribution that a regression with unknown noise predicts with.
//!
//! The integral is the incomplete beta function by its continued fraction (Abramowitz and Stegun,
//! Handbook of Mathematical Functions, 26.7.1 and 26.5.8), the logarithm of the gamma function by
//! Stirling's series (6.1.41).

use serde::{Deserialize, Serialize};
use std::f64::consts::PI;

/// Student's t, moved and stretched.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct StudentT {
    /// Its middle.
    pub location: f64,
    /// Its unit of width, over zero.
    pub scale: f64,
    /// Degrees of freedom, over zero; with many it is a normal distribution.
    pub freedom: f64,
}

/// Degrees of freedom from which it is taken as normal: the quantiles then agree to 1e-9.
const MOST_FREEDOM: f64 = 1e9;
/// Newton steps; from the middle outwards they never pass the root, and six to ten are usual.
const STEPS: usize = 200;

impl StudentT {
    /// Share of the distribution below a value, 0 to 1.
    ///
    /// ```
    /// use dentwright_price::StudentT;
    /// let t = StudentT { location: 0.0, scale: 1.0, freedom: 1.0 };
    /// assert!((t.below(1.0) - 0.75).abs() < 1e-12); // Cauchy: 1/2 + atan(1)/π
    /// ```
    #[must_use]
    pub fn below(&self, value: f64) -> f64 {
        let t = (value - self.location) / self.scale;
        let tail = 0.5 * tail(t.abs(), self.freedom.min(MOST_FREEDOM));
        if t > 0.0 { 1.0 - tail } else { tail }
    }

    /// The value that a share `p` of the distribution lies below; `p` over 0 and under 1.
    ///
    /// ```
    /// use dentwright_price::StudentT;
    /// let t = StudentT { location: 0.0, scale: 1.0, freedom: 10.0 };
    /// assert!((t.quantile(0.9) - 1.372_183_641).abs() < 1e-8); // printed tables: 1.372
    /// ```
    #[must_use]
    pub fn quantile(&self, p: f64) -> f64 {
        let freedom = self.freedom.min(MOST_FREEDOM);
        let away = (p - 0.5).abs();
        let mut t = 0.0_f64;
        for _ in 0..STEPS {
            let missing = away - (0.5 - 0.5 * tail(t, freedom));
            let step = missing / density(t, freedom);
            t += step;
            if step.abs() <= 1e-13 * (1.0 + t) {
                break;
            }
        }
        self.location + self.scale * t.copysign(p - 0.5)
    }
}

/// Share beyond ±t.
fn tail(t: f64, freedom: f64) -> f64 {
    incomplete_beta(freedom / (freedom + t * t), t * t / (freedom + t * t), freedom / 2.0, 0.5)
}

fn density(t: f64, freedom: f64) -> f64 {
    let top = ln_gamma(f64::midpoint(freedom, 1.0)) - ln_gamma(freedom / 2.0) - 0.5 * (freedom * PI).ln();
    (top - f64::midpoint(freedom, 1.0) * (t * t / freedom).ln_1p()).exp()
}

/// Iₓ(a, b); `y` is 1 − x, given because it may be much smaller than 1.
fn incomplete_beta(x: f64, y: f64, a: f64, b: f64) -> f64 {
    if y <= 0.0 {
        return 1.0;
    }
    if x <= 0.0 {
        return 0.0;
    }
    if x * (a + b + 2.0) > a + 1.0 {
        return 1.0 - incomplete_beta(y, x, b, a);
    }
    let front = a * ln_below_one(x, y) + b * ln_below_one(y, x) + ln_gamma(a + b) - ln_gamma(a) - ln_gamma(b);
    front.exp() / a / fraction(x, a, b)
}

/// ln x where x = 1 − y, precise on both ends.
fn ln_below_one(x: f64, y: f64) -> f64 {
    if y < 0.5 { (-y).ln_1p() } else { x.ln() }
}

/// The continued fraction 1 + d₁/(1 + d₂/(1 + …)), by Lentz's way from the front.
fn fraction(x: f64, a: f64, b: f64) -> f64 {
    const TINY: f64 = 1e-300;
    let (mut value, mut above, mut under) = (1.0, 1.0, 0.0);
    for term in 1..100_000_u32 {
        let m = f64::from(term / 2);
        let d = if term % 2 == 0 {
            m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m))
        } else {
            -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0))
        };
        under = 1.0 / not_zero(1.0 + d * under, TINY);
        above = not_zero(1.0 + d / above, TINY);
        value *= above * under;
        if (above * under - 1.0).abs() < 1e-15 {
            break;
        }
    }
    value
}

fn not_zero(value: f64, tiny: f64) -> f64 {
    if value.abs() < tiny { tiny } else { value }
}

/// ln Γ(z) for z over 0: moved up to where Stirling's series holds to rounding.
fn ln_gamma(z: f64) -> f64 {
    let (mut z, mut moved) = (z, 0.0);
    while z < 12.0 {
        moved += z.ln();
        z += 1.0;
    }
    let inverse = 1.0 / (z * z);
    let series = 1.0 / 12.0 - inverse * (1.0 / 360.0 - inverse * (1.0 / 1260.0 - inverse / 1680.0));
    (z - 0.5) * z.ln() - z + 0.5 * (2.0 * PI).ln() + series / z - moved
}
