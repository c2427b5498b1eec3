//! The hours model: the shipped coefficients as a prior, moved by the shop's own finished jobs.
//!
//! How the spread is shared between a dent and its car's day is a number that has no closed form, so a
//! few [`View`]s of it are learned side by side, each in closed form, and the one that explains the jobs
//! best is asked. Jobs are learned one by one, and what was said before each is known afterwards.

use crate::features::{SIZE, Start, starts};
use crate::sum::Sum;
use crate::view::View;
use crate::{Conditions, Dent, FinishedError, FinishedJob, HoursSettings, SettingsError, StudentT};
use serde::{Deserialize, Serialize};

/// What is known of the shop's hours: a value that can be kept, and learned further.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Learned {
    /// What it started from.
    pub(crate) settings: HoursSettings,
    views: Vec<View>,
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

/// The views: the day's share of the spread against the shipped one, as a factor on the ratio of the two
/// standard deviations, and how likely each is before any job. A guess, wide on both sides.
const VIEWS: [(f64, f64); 5] = [(0.25, 0.1), (0.5, 0.2), (1.0, 0.4), (2.0, 0.2), (4.0, 0.1)];

impl Learned {
    /// Nothing learned yet: common practice, with its widths.
    ///
    /// # Errors
    /// When a coefficient is out of its range.
    pub fn start(settings: &HoursSettings) -> Result<Self, SettingsError> {
        settings.check()?;
        let views = VIEWS.iter().map(|(times, weight)| View::start(settings, *times, *weight)).collect();
        Ok(Self { settings: settings.clone(), views, jobs: 0 })
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
        let views = self.views.iter().map(|view| view.and(job, &self.settings)).collect();
        Ok(Self { settings: self.settings.clone(), views, jobs: self.jobs + 1 })
    }

    /// The view that explains the jobs best.
    pub(crate) fn best(&self) -> &View {
        let best = self.views.iter().max_by(|a, b| a.evidence.total_cmp(&b.evidence));
        best.expect("there are always the views it started with")
    }

    /// How many jobs were learned.
    #[must_use]
    pub fn jobs(&self) -> u32 {
        self.jobs
    }

    /// Standard deviations of the logarithm of one dent's hours: its own, and what all dents of a car share.
    #[must_use]
    pub fn spreads(&self) -> [f64; 2] {
        let variance = self.best().regression.noise_variance();
        [variance.sqrt(), (variance * self.best().shared).sqrt()]
    }

    /// All coefficients, as they started and as they stand.
    #[must_use]
    pub fn coefficients(&self) -> Vec<Coefficient> {
        let regression = &self.best().regression;
        let away = StudentT { location: 0.0, scale: 1.0, freedom: regression.freedom() }.quantile(0.9);
        let coefficient = |(at, start): (usize, Start)| {
            let mut only = vec![0.0; SIZE];
            only[at] = 1.0;
            let StudentT { location, scale, .. } = regression.predict(&only, 0.0);
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
        Sum::at(self.best().regression.mean(), dents, conditions, &self.settings)
    }
}
