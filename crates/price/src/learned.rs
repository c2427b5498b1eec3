//! The hours model: the shipped coefficients as a prior, moved by the shop's own finished jobs.
//!
//! The logarithm of the time of one dent is linear in its features, so a dent timed alone is an
//! observation of [`Regression`] as it stands. A time for several lines together is one of
//! `ln Σ μᵢ`, `μᵢ = exp(xᵢ·β)`: it is linearised at the coefficients it leads to itself, a few times
//! over (Gauss–Newton steps, as an iterated Kalman filter takes them: B. M. Bell and F. W. Cathey,
//! IEEE Transactions on Automatic Control 38, 1993), with the variance that Fenton's method gives
//! the sum (see [`hours`](crate::hours())). What the car and the day share is one more coefficient
//! for the length of a job. The variance that goes into Fenton's formula is the one known before the
//! job. So jobs are learned one by one, and what was said before each is known afterwards.

use crate::features::{SIZE, features, starts};
use crate::{Conditions, Dent, FinishedError, FinishedJob, HoursSettings, Regression, SettingsError, StudentT};
use serde::{Deserialize, Serialize};

/// What is known of the shop's hours: a value that can be kept, and learned further.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Learned {
    /// What it started from.
    pub(crate) settings: HoursSettings,
    pub(crate) regression: Regression,
    jobs: u32,
}

/// One coefficient as it started and as it stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Coefficient {
    /// Its name, as in the settings: `base_hours`, `area_power`, `kind.crease`.
    pub name: String,
    /// As it started: hours, a power, or how many times as long.
    pub start: f64,
    /// As it stands.
    pub now: f64,
    /// One time in ten it is less than this.
    pub low: f64,
    /// One time in ten it is more than this.
    pub high: f64,
}

/// Why nothing can be learned.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LearnError {
    /// The settings it starts from are not usable.
    #[error(transparent)]
    Settings(#[from] SettingsError),
    /// A job is not usable.
    #[error(transparent)]
    Job(#[from] FinishedError),
}

/// Most Gauss–Newton steps of a job; two to four are usual.
const STEPS: usize = 12;
/// Change of the logarithm of hours below which a step was the last.
const STILL: f64 = 1e-9;

impl Learned {
    /// Nothing learned yet: common practice, with its widths.
    ///
    /// # Errors
    /// When a coefficient is out of its range.
    pub fn start(settings: &HoursSettings) -> Result<Self, SettingsError> {
        settings.check()?;
        let start = starts(settings);
        let mean = start.iter().map(|one| one.mean).collect();
        let widths: Vec<f64> = start.iter().map(|one| one.width).collect();
        let regression = Regression::new(mean, &widths, settings.spread_own, settings.width.spread_weight);
        Ok(Self { settings: settings.clone(), regression, jobs: 0 })
    }

    /// What these jobs teach, in their order.
    ///
    /// # Errors
    /// When the settings or a job are not usable; the first one found.
    pub fn of<'a>(
        settings: &HoursSettings,
        jobs: impl IntoIterator<Item = &'a FinishedJob>,
    ) -> Result<Self, LearnError> {
        let mut learned = Self::start(settings)?;
        for job in jobs {
            learned = learned.and(job)?;
        }
        Ok(learned)
    }

    /// What one job more teaches.
    ///
    /// # Errors
    /// When the job is not usable.
    pub fn and(&self, job: &FinishedJob) -> Result<Self, FinishedError> {
        job.check()?;
        let known = self.regression.with_effect(self.shared());
        let mut at = self.regression.mean().to_vec();
        let mut next = known.clone();
        for _ in 0..STEPS {
            next = known.clone();
            for timed in &job.timed {
                let sum = self.sum_at(&at, timed.dents.iter(), &job.conditions);
                let bend = sum.expected.ln() - sum.mean_feature(&at);
                let y = timed.worked_h.ln() + 0.5 * self.variance(&sum) - bend;
                let x: Vec<f64> = sum.features.iter().copied().chain([1.0]).collect();
                next.observe(&x, y, self.own(&sum));
            }
            let moved = at.iter().zip(next.mean()).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
            at.copy_from_slice(&next.mean()[..SIZE]);
            if moved < STILL {
                break;
            }
        }
        Ok(Self { settings: self.settings.clone(), regression: next.without_effect(), jobs: self.jobs + 1 })
    }

    /// How many jobs were learned.
    #[must_use]
    pub fn jobs(&self) -> u32 {
        self.jobs
    }

    /// Standard deviation of the logarithm of one dent's hours, beside what the car shares.
    #[must_use]
    pub fn spread_own(&self) -> f64 {
        self.regression.noise_variance().sqrt()
    }

    /// All coefficients, as they started and as they stand.
    #[must_use]
    pub fn coefficients(&self) -> Vec<Coefficient> {
        let away = StudentT { location: 0.0, scale: 1.0, freedom: self.regression.freedom() }.quantile(0.9);
        let coefficient = |(at, start): (usize, crate::features::Start)| {
            let mut only = vec![0.0; SIZE];
            only[at] = 1.0;
            let StudentT { location, scale, .. } = self.regression.predict(&only, 0.0);
            let plain = |value: f64| if start.factor { value.exp() } else { value };
            Coefficient {
                name: start.name.to_owned(),
                start: plain(start.mean),
                now: plain(location),
                low: plain(location - away * scale),
                high: plain(location + away * scale),
            }
        };
        starts(&self.settings).into_iter().enumerate().map(coefficient).collect()
    }

    /// Hours of lines put together, as known now.
    pub(crate) fn sum<'a>(&self, dents: impl IntoIterator<Item = &'a Dent>, conditions: &Conditions) -> Sum {
        self.sum_at(self.regression.mean(), dents, conditions)
    }

    fn sum_at<'a>(&self, at: &[f64], dents: impl IntoIterator<Item = &'a Dent>, conditions: &Conditions) -> Sum {
        let mut sum = Sum { expected: 0.0, features: vec![0.0; SIZE], own: 0.0 };
        for dent in dents {
            let known = features(dent, conditions, &self.settings);
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

    /// Variance of what a car's dents share, in units of σ².
    pub(crate) fn shared(&self) -> f64 {
        (self.settings.spread_shared / self.settings.spread_own).powi(2)
    }

    /// Variance of the logarithm of a sum by the dents' own spread, in units of σ² (Fenton).
    pub(crate) fn own(&self, sum: &Sum) -> f64 {
        let variance = self.regression.noise_variance();
        (variance.exp_m1() * sum.own).ln_1p() / variance
    }

    /// Variance of the logarithm of a sum, coefficients known.
    pub(crate) fn variance(&self, sum: &Sum) -> f64 {
        self.regression.noise_variance() * (self.shared() + self.own(sum))
    }
}

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
    fn mean_feature(&self, at: &[f64]) -> f64 {
        self.features.iter().zip(at).map(|(x, b)| x * b).sum()
    }
}
