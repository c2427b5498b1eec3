//! Student's t: the distribution that a regression with unknown noise predicts with.
//!
//! The integral is the incomplete beta function by its continued fraction (Abramowitz and Stegun,
//! Handbook of Mathematical Functions, 26.7.1 and 26.5.8), the ratio of two gamma functions by its
//! asymptotic series (NIST Digital Library of Mathematical Functions, 5.11.13).

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

    /// Logarithm of the density at a value.
    #[must_use]
    pub fn ln_density(&self, value: f64) -> f64 {
        ln_density((value - self.location) / self.scale, self.freedom.min(MOST_FREEDOM)) - self.scale.ln()
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
            let step = missing / ln_density(t, freedom).exp();
            t += step;
            if step.abs() <= 1e-13 * (1.0 + t) {
                break;
            }
        }
        self.location + self.scale * t.copysign(p - 0.5)
    }
}

/// Share beyond ±t: I of ν/2 and 1/2 at ν/(ν + t²), from the end where the fraction is short.
fn tail(t: f64, freedom: f64) -> f64 {
    let (x, y) = (freedom / (freedom + t * t), t * t / (freedom + t * t));
    let a = freedom / 2.0;
    if y <= 0.0 {
        return 1.0;
    }
    let ln_x = if y < 0.5 { (-y).ln_1p() } else { x.ln() };
    let front = (a * ln_x + 0.5 * y.ln() + ln_half_step(a) - 0.5 * PI.ln()).exp();
    if x * (a + 2.5) > a + 1.0 { 1.0 - front / 0.5 / fraction(y, 0.5, a) } else { front / a / fraction(x, a, 0.5) }
}

fn ln_density(t: f64, freedom: f64) -> f64 {
    let top = ln_half_step(freedom / 2.0) - 0.5 * (freedom * PI).ln();
    top - f64::midpoint(freedom, 1.0) * (t * t / freedom).ln_1p()
}

/// The continued fraction 1 + d₁/(1 + d₂/(1 + …)), by Lentz's way from the front.
fn fraction(x: f64, a: f64, b: f64) -> f64 {
    const TINY: f64 = 1e-300;
    let not_zero = |value: f64| if value.abs() < TINY { TINY } else { value };
    let (mut value, mut above, mut under) = (1.0, 1.0, 0.0);
    for term in 1..100_000_u32 {
        let m = f64::from(term / 2);
        let d = if term % 2 == 0 {
            m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m))
        } else {
            -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0))
        };
        under = 1.0 / not_zero(1.0 + d * under);
        above = not_zero(1.0 + d / above);
        value *= above * under;
        if (above * under - 1.0).abs() < 1e-15 {
            break;
        }
    }
    value
}

/// ln Γ(a + 1/2) − ln Γ(a) for a over 0: moved up to where the series holds to rounding.
fn ln_half_step(a: f64) -> f64 {
    let (mut a, mut moved) = (a, 0.0);
    while a < 30.0 {
        moved -= (0.5 / a).ln_1p();
        a += 1.0;
    }
    let inverse = 1.0 / (a * a);
    let series = -1.0 / 8.0 + inverse * (1.0 / 192.0 - inverse * (1.0 / 640.0 - inverse * 17.0 / 14_336.0));
    0.5 * a.ln() + series / a + moved
}
