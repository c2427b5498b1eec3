//! A job: a customer, a car, its damages.

use crate::{Car, Customer, Damage, Stage};
use dentwright_price::Pricing;
use jiff::Timestamp;
use jiff::civil::{Date, Time};
use uuid::Uuid;

/// A job.
#[derive(Debug, Clone, PartialEq)]
pub struct Job {
    /// Its id.
    pub id: Uuid,
    /// Its number, as people say it.
    pub number: String,
    /// When it was taken in.
    pub created: Timestamp,
    /// How far it has come.
    pub stage: Stage,
    /// Who brought the car.
    pub customer: Customer,
    /// The car.
    pub car: Car,
    /// The day it was promised for.
    pub promised: Option<Date>,
    /// At what time of that day; none for any.
    pub promised_time: Option<Time>,
    /// Where the car stands, or is to be met.
    pub place: String,
    /// When its work was done; none before.
    pub finished: Option<Timestamp>,
    /// Notes, as entered.
    pub notes: String,
    /// Its damages, in the order of entry.
    pub damages: Vec<Damage>,
    /// What was entered for the quote; none where nothing was, so that the shop's rates apply.
    pub pricing: Option<Pricing>,
}

impl Job {
    /// Dents of the whole car, counted one by one.
    #[must_use]
    pub fn dent_count(&self) -> u64 {
        self.damages.iter().flat_map(|damage| &damage.dents).map(|entry| u64::from(entry.dent.count)).sum()
    }
}

/// Number of the nth job of a year, from 1.
///
/// ```
/// assert_eq!(dentwright_job::job_number(2026, 7), "2026-007");
/// assert_eq!(dentwright_job::job_number(2026, 1204), "2026-1204");
/// ```
#[must_use]
pub fn job_number(year: i16, nth: u32) -> String {
    format!("{year}-{nth:03}")
}
