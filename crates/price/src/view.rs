//! One view of how the spread is shared between a dent and its car's day, learned in closed form.
//!
//! The logarithm of the time of one dent is linear in its features, so a dent timed alone is an
//! observation of [`Regression`] as it stands. A time for several lines together is one of
//! `ln Σ μᵢ`, `μᵢ = exp(xᵢ·β)`: it is linearised at the coefficients it leads to itself, a few times
//! over (Gauss–Newton steps, as an iterated Kalman filter takes them: B. M. Bell and F. W. Cathey,
//! IEEE Transactions on Automatic Control 38, 1993), with the variance that Fenton's method gives
//! the sum (see [`hours`](crate::hours())). What the car and the day share is one more coefficient
//! for the length of a job. The variance that goes into Fenton's formula is the one known before the
//! job.

use crate::features::{SIZE, starts};
use crate::sum::Sum;
use crate::{FinishedJob, HoursSettings, Regression, StudentT};
use serde::{Deserialize, Serialize};

/// What is known if the day's share of the spread is this.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct View {
    pub regression: Regression,
    /// Variance of what a car's dents share, in units of σ², the variance of one dent's own.
    pub shared: f64,
    /// Logarithm of how well it explains all jobs so far, with what was thought of it before.
    pub evidence: f64,
    /// How many scales low and high lie from the middle of the logarithm.
    pub away: f64,
    /// Share of the distribution that lies below high.
    below_high: f64,
}

/// Most Gauss–Newton steps of a job; two to four are usual.
const STEPS: usize = 12;
/// Change of a coefficient below which a step was the last.
const STILL: f64 = 1e-9;

impl View {
    /// A view whose ratio of the two spreads is `times` the settings' one, with the same spread of a single
    /// dent; `weight` is how likely it is.
    pub fn start(settings: &HoursSettings, times: f64, weight: f64) -> Self {
        let start = starts(settings);
        let widths: Vec<f64> = start.iter().map(|one| one.width).collect();
        let shared = (times * settings.spread_shared / settings.spread_own).powi(2);
        let own = (settings.spread_own.powi(2) + settings.spread_shared.powi(2)) / (1.0 + shared);
        let mean = start.iter().map(|one| one.mean).collect();
        let normal = StudentT { location: 0.0, scale: 1.0, freedom: f64::INFINITY };
        let regression = Regression::new(mean, &widths, own.sqrt(), settings.width.spread_weight);
        Self::of(regression, shared, weight.ln(), normal.below(settings.spread_z))
    }

    fn of(regression: Regression, shared: f64, evidence: f64, below_high: f64) -> Self {
        let unit = StudentT { location: 0.0, scale: 1.0, freedom: regression.freedom() };
        Self { regression, shared, evidence, away: unit.quantile(below_high), below_high }
    }

    /// What one job more teaches.
    pub fn and(&self, job: &FinishedJob, settings: &HoursSettings) -> Self {
        let known = self.regression.with_effect(self.shared);
        let mut at = self.regression.mean().to_vec();
        let (mut next, mut explained) = (known.clone(), 0.0);
        for _ in 0..STEPS {
            (next, explained) = (known.clone(), 0.0);
            for timed in &job.timed {
                let sum = Sum::at(&at, &timed.dents, &job.conditions, settings);
                let y = timed.worked_h.ln() + 0.5 * self.variance(&sum) - sum.bend(&at);
                let x: Vec<f64> = sum.features.iter().copied().chain([1.0]).collect();
                explained += next.observe(&x, y, self.own(&sum));
            }
            let moved = at.iter().zip(next.mean()).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
            at.copy_from_slice(&next.mean()[..SIZE]);
            // Lines timed one by one are linear as they stand.
            if moved < STILL || job.timed.iter().all(|timed| timed.dents.len() == 1) {
                break;
            }
        }
        Self::of(next.without_effect(), self.shared, self.evidence + explained, self.below_high)
    }

    /// Variance of the logarithm of a sum by the dents' own spread, in units of σ² (Fenton).
    pub fn own(&self, sum: &Sum) -> f64 {
        let variance = self.regression.noise_variance();
        (variance.exp_m1() * sum.own).ln_1p() / variance
    }

    /// Variance of the logarithm of a sum, coefficients known.
    pub fn variance(&self, sum: &Sum) -> f64 {
        self.regression.noise_variance() * (self.shared + self.own(sum))
    }

    /// Distribution of the logarithm of a sum's hours.
    pub fn log_hours(&self, sum: &Sum) -> StudentT {
        let log = self.regression.predict(&sum.features, self.shared + self.own(sum));
        StudentT { location: sum.expected.ln() - 0.5 * self.variance(sum), ..log }
    }
}
