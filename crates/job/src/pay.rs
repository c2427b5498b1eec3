//! What the clock and the finished jobs come to for each technician.
//!
//! Hours are those clocked within the period; time that two clocks of one technician share is counted once. A
//! share of labour is of the jobs whose work was done within the period, by the technician's part of all time
//! clocked on that job, whenever that was. What is in doubt counts nowhere.

use crate::{Pay, Technician, TimeEntry};
use dentwright_price::round;
use jiff::Timestamp;
use rust_decimal::Decimal;
use serde::Serialize;
use uuid::Uuid;

/// From a moment until before another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PayPeriod {
    /// Its first moment.
    pub from: Timestamp,
    /// The first moment after it.
    pub until: Timestamp,
}

/// A job whose work was done within the period.
#[derive(Debug, Clone, PartialEq)]
pub struct DoneJob {
    /// Its id.
    pub id: Uuid,
    /// Its number.
    pub number: String,
    /// Net of the labour on it: dents and trim, with their part of uplifts and discount.
    pub labour: Decimal,
    /// The technicians' part together, where its own quote shares net.
    pub split: Option<Decimal>,
}

/// A technician's row.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct PayRow {
    /// Who.
    pub technician: Technician,
    /// Clocked within the period, s.
    pub clocked_s: i64,
    /// Jobs done within the period on which they worked.
    pub jobs: Vec<JobPay>,
    /// What it comes to; none for those who are not paid by this sheet.
    #[cfg_attr(feature = "schema", schema(required))]
    pub pay: Option<Decimal>,
}

/// A done job in a technician's row.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct JobPay {
    /// Its number.
    pub number: String,
    /// Time of this technician on it, s.
    pub seconds: i64,
    /// Net of its labour.
    pub labour: Decimal,
    /// What this technician gets for it; none unless by share.
    #[cfg_attr(feature = "schema", schema(required))]
    pub pay: Option<Decimal>,
}

/// The sheet: everybody who works here or clocked within the period. Amounts have `coin` decimals.
#[must_use]
pub fn pay_sheet(
    crew: &[Technician],
    entries: &[TimeEntry],
    jobs: &[DoneJob],
    period: PayPeriod,
    now: Timestamp,
    coin: u32,
) -> Vec<PayRow> {
    let parts: Vec<Vec<(Uuid, i64, Decimal)>> = jobs.iter().map(|job| parts(job, entries, now, coin)).collect();
    let row = |technician: &Technician| {
        let clocked_s = clocked_s(technician.id, entries, period, now);
        let mine = |(job, parts): (&DoneJob, &Vec<(Uuid, i64, Decimal)>)| {
            let (_, seconds, split) = parts.iter().find(|(id, ..)| *id == technician.id)?;
            let all: i64 = parts.iter().map(|(_, seconds, _)| seconds).sum();
            let share = Decimal::from(*seconds) / Decimal::from(all);
            let pay = match (technician.pay, job.split) {
                (Pay::Share { .. }, Some(_)) => Some(*split),
                (Pay::Share { percent }, None) => {
                    Some(round(job.labour * share * percent / Decimal::ONE_HUNDRED, coin))
                }
                _ => None,
            };
            Some(JobPay { number: job.number.clone(), seconds: *seconds, labour: job.labour, pay })
        };
        let jobs: Vec<JobPay> = jobs.iter().zip(&parts).filter_map(mine).collect();
        let pay = match technician.pay {
            Pay::None => None,
            Pay::Hour { rate } => Some(round(rate * Decimal::from(clocked_s) / Decimal::from(3600), coin)),
            Pay::Share { .. } => Some(jobs.iter().filter_map(|job| job.pay).sum()),
        };
        PayRow { technician: technician.clone(), clocked_s, jobs, pay }
    };
    let worth_a_row = |row: &PayRow| !row.technician.gone || row.clocked_s > 0 || !row.jobs.is_empty();
    crew.iter().map(row).filter(worth_a_row).collect()
}

/// Everybody's time on a job, s, with their part of what its own quote gives the technicians. The parts add up
/// to the whole: each is what is due up to there, less what went before.
fn parts(job: &DoneJob, entries: &[TimeEntry], now: Timestamp, coin: u32) -> Vec<(Uuid, i64, Decimal)> {
    let mut times: Vec<(Uuid, i64)> = Vec::new();
    for entry in entries.iter().filter(|entry| entry.job == Some(job.id)) {
        let seconds = entry.counted_s(now);
        match times.iter_mut().find(|(id, _)| *id == entry.technician) {
            _ if seconds == 0 => {}
            Some((_, sum)) => *sum += seconds,
            None => times.push((entry.technician, seconds)),
        }
    }
    times.sort_unstable();
    let all: i64 = times.iter().map(|(_, seconds)| seconds).sum();
    let (pool, mut before, mut passed) = (job.split.unwrap_or_default(), Decimal::ZERO, 0);
    let part = |(id, seconds): (Uuid, i64)| {
        passed += seconds;
        let due = round(pool * Decimal::from(passed) / Decimal::from(all), coin);
        let part = due - before;
        before = due;
        (id, seconds, part)
    };
    times.into_iter().map(part).collect()
}

/// Time within the period that counts, s; what clocks share once.
fn clocked_s(technician: Uuid, entries: &[TimeEntry], period: PayPeriod, now: Timestamp) -> i64 {
    let within = |entry: &TimeEntry| {
        let (from, until) = (entry.started.max(period.from), entry.stopped?.min(period.until));
        (entry.technician == technician && entry.counted_s(now) > 0 && from < until).then_some((from, until))
    };
    let mut stretches: Vec<(Timestamp, Timestamp)> = entries.iter().filter_map(within).collect();
    stretches.sort_unstable();
    let (mut sum, mut reached) = (0, period.from);
    for (from, until) in stretches {
        let from = from.max(reached);
        if from < until {
            sum += until.duration_since(from).as_secs();
            reached = until;
        }
    }
    sum
}
