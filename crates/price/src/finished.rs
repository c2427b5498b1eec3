//! Work that was done and timed: what the hours are learned from.

use crate::{Conditions, ConditionsError, Dent, DentError};
use serde::{Deserialize, Serialize};

/// A finished job with the time that was worked on its dents.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct FinishedJob {
    /// Its name, such as its number.
    pub what: String,
    /// Paint and temperature.
    #[serde(default)]
    pub conditions: Conditions,
    /// What was timed: the whole job once, or its panels, lines or dents apart. No dent twice.
    pub timed: Vec<Timed>,
}

/// Dents and the time they took together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Timed {
    /// The dents; one, if it was timed alone.
    pub dents: Vec<Dent>,
    /// Worked time on them without R&I, h, over zero.
    pub worked_h: f64,
}

/// Why nothing can be learned from a job.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum FinishedError {
    /// Nothing of it was timed.
    #[error("job {job}: nothing was timed")]
    Nothing {
        /// The job's name.
        job: String,
    },
    /// A time without dents.
    #[error("job {job}, time {nth}: there are no dents for {worked_h} h")]
    NoDents {
        /// The job's name.
        job: String,
        /// Which time, from 1.
        nth: usize,
        /// What was worked, h.
        worked_h: f64,
    },
    /// The worked time is not one that a person can work on dents.
    #[error("job {job}, time {nth}: the worked time is {worked_h} h, but must be over 0 and at most 10000")]
    Time {
        /// The job's name.
        job: String,
        /// Which time, from 1.
        nth: usize,
        /// What was worked, h.
        worked_h: f64,
    },
    /// A dent that cannot be.
    #[error("job {job}, time {nth}: {error}")]
    Dent {
        /// The job's name.
        job: String,
        /// Which time, from 1.
        nth: usize,
        /// What is wrong with it.
        error: DentError,
    },
    /// A temperature that cannot be.
    #[error("job {job}: {error}")]
    Conditions {
        /// The job's name.
        job: String,
        /// What is wrong.
        error: ConditionsError,
    },
}

/// Longest time on one job that is not a slip of the pen, h.
const LONGEST_H: f64 = 10_000.0;

impl FinishedJob {
    /// Checks that something can be learned from it.
    ///
    /// # Errors
    /// Names the job and the first time that is not usable.
    pub fn check(&self) -> Result<(), FinishedError> {
        let job = || self.what.clone();
        if self.timed.is_empty() {
            return Err(FinishedError::Nothing { job: job() });
        }
        self.conditions.check().map_err(|error| FinishedError::Conditions { job: job(), error })?;
        for (nth, timed) in (1..).zip(&self.timed) {
            let worked_h = timed.worked_h;
            if !(worked_h > 0.0 && worked_h <= LONGEST_H) {
                return Err(FinishedError::Time { job: job(), nth, worked_h });
            }
            if timed.dents.is_empty() {
                return Err(FinishedError::NoDents { job: job(), nth, worked_h });
            }
            let bad = timed.dents.iter().find_map(|dent| dent.check().err());
            bad.map_or(Ok(()), |error| Err(FinishedError::Dent { job: job(), nth, error }))?;
        }
        Ok(())
    }

    /// Worked time of all that was timed, h.
    #[must_use]
    pub fn worked_h(&self) -> f64 {
        self.timed.iter().map(|timed| timed.worked_h).sum()
    }

    /// All dents that were timed.
    pub fn dents(&self) -> impl Iterator<Item = &Dent> {
        self.timed.iter().flat_map(|timed| &timed.dents)
    }
}
