//! How well the hours have been predicted so far: every finished job is predicted with what was known
//! before it, compared, and only then learned (A. P. Dawid, "The prequential approach", Journal of the
//! Royal Statistical Society A 147, 1984).

use crate::hours::log_distribution;
use crate::{FinishedJob, HoursSettings, LearnError, Learned};
use serde::{Deserialize, Serialize};

/// A finished job beside what was said before it was learned.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Foretold {
    /// The job's name.
    pub what: String,
    /// One time in ten it was said to take less than this, h.
    pub low: f64,
    /// As often less as more, h.
    pub middle: f64,
    /// One time in ten it was said to take more than this, h.
    pub high: f64,
    /// What was worked, h.
    pub worked: f64,
    /// Share of what was thought possible that lay below what was worked, 0 to 1.
    pub rank: f64,
}

/// What became of the predictions.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Calibration {
    /// How many jobs were predicted.
    pub jobs: usize,
    /// Share of them that came between low and high; 0.8 is right.
    pub inside: f64,
    /// Where that share lies in 95 of 100 shops whose predictions are right, by chance alone.
    pub by_chance: [f64; 2],
    /// Half of the jobs missed the middle by less than this factor.
    pub usual_miss: f64,
    /// Worked over middle, on average (geometric): over 1, the work took longer than said.
    pub lean: f64,
    /// For 10, 20 … 90 %: the share of jobs that came below that quantile.
    pub below: Vec<Level>,
}

/// One point of the calibration plot; on the diagonal it is right.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Level {
    /// Share that was said to lie below.
    pub said: f64,
    /// Share that did.
    pub came: f64,
}

/// Predicts each job, then learns it; what was said, and what is known in the end.
///
/// # Errors
/// When the settings or a job are not usable; the first one found.
pub fn foretell(settings: &HoursSettings, jobs: &[FinishedJob]) -> Result<(Vec<Foretold>, Learned), LearnError> {
    let mut learned = Learned::start(settings)?;
    let mut said = Vec::with_capacity(jobs.len());
    for job in jobs {
        let next = learned.and(job)?;
        said.extend(foretold(job, &learned));
        learned = next;
    }
    Ok((said, learned))
}

fn foretold(job: &FinishedJob, learned: &Learned) -> Option<Foretold> {
    let log = log_distribution(job.dents(), &job.conditions, learned)?;
    let worked = job.worked_h();
    Some(Foretold {
        what: job.what.clone(),
        low: log.quantile(0.1).exp(),
        middle: log.location.exp(),
        high: log.quantile(0.9).exp(),
        worked,
        rank: log.below(worked.ln()),
    })
}

/// Sums predictions up; none without any.
#[must_use]
pub fn calibration(said: &[Foretold]) -> Option<Calibration> {
    if said.is_empty() {
        return None;
    }
    let share =
        |wanted: &dyn Fn(&Foretold) -> bool| count(said.iter().filter(|one| wanted(one)).count()) / count(said.len());
    let mut misses: Vec<f64> = said.iter().map(|one| (one.worked / one.middle).ln().abs()).collect();
    misses.sort_by(f64::total_cmp);
    let lean = said.iter().map(|one| (one.worked / one.middle).ln()).sum::<f64>() / count(said.len());
    let level = |tenth: u32| {
        let level = f64::from(tenth) / 10.0;
        Level { said: level, came: share(&|one| one.rank < level) }
    };
    Some(Calibration {
        jobs: said.len(),
        inside: share(&|one| (0.1..=0.9).contains(&one.rank)),
        by_chance: by_chance(said.len(), 0.8),
        usual_miss: misses[misses.len() / 2].exp(),
        lean: lean.exp(),
        below: (1..10).map(level).collect(),
    })
}

/// Shares k/n that a binomial count passes on neither side more often than one time in forty.
fn by_chance(n: usize, p: f64) -> [f64; 2] {
    let logs = (p.ln(), (1.0 - p).ln());
    let mut choose = 0.0_f64;
    let (mut sum, mut low, mut high) = (0.0, 0.0, 1.0);
    for k in 0..=n {
        let before = sum;
        sum += (choose + count(k) * logs.0 + count(n - k) * logs.1).exp();
        let at = count(k) / count(n);
        if before < 0.025 && sum >= 0.025 {
            low = at;
        }
        if before < 0.975 && sum >= 0.975 {
            high = at;
        }
        choose += (count(n - k) / count(k + 1)).ln();
    }
    [low, high]
}

#[allow(clippy::cast_precision_loss, reason = "a number of jobs, far below 2^52")]
fn count(n: usize) -> f64 {
    n as f64
}
