//! Lines of dents put together, at given coefficients.

use crate::features::{SIZE, features};
use crate::{Conditions, Dent, HoursSettings};

/// Lines of dents put together.
pub(crate) struct Sum {
    /// Expected hours, Σ μᵢ.
    pub expected: f64,
    /// Features of the lines, weighted with their hours: the gradient of ln Σ μᵢ.
    pub features: Vec<f64>,
    /// Σ μᵢ²/nᵢ / (Σ μᵢ)², nᵢ dents in a line: 1 for one dent, 1/n for n alike.
    pub own: f64,
}

impl Sum {
    /// Puts lines together; `at` are the coefficients.
    pub fn at<'a>(
        at: &[f64],
        dents: impl IntoIterator<Item = &'a Dent>,
        conditions: &Conditions,
        settings: &HoursSettings,
    ) -> Self {
        let mut sum = Self { expected: 0.0, features: vec![0.0; SIZE], own: 0.0 };
        for dent in dents {
            let known = features(dent, conditions, settings);
            let expected = known.iter().map(|(_, place, value)| at[*place] * value).sum::<f64>().exp();
            known.iter().for_each(|(_, place, value)| sum.features[*place] += expected * value);
            sum.expected += expected;
            sum.own += expected * expected / f64::from(dent.count);
        }
        if sum.expected > 0.0 {
            sum.features.iter_mut().for_each(|feature| *feature /= sum.expected);
            sum.own /= sum.expected * sum.expected;
        }
        sum
    }

    /// What the linearised sum is off at no coefficients: ln Σ μᵢ − x̄·β.
    pub fn bend(&self, at: &[f64]) -> f64 {
        self.expected.ln() - self.features.iter().zip(at).map(|(x, b)| x * b).sum::<f64>()
    }
}
