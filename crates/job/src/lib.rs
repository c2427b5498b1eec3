//! The record of the work: customer, car, damages, and what follows from them.
//!
//! # Entry points
//! A [`Job`] holds a [`Customer`], a [`Car`] and [`Damage`]s. [`Vin::parse`] checks a vehicle
//! identification number, [`cautions()`] says what to take care of, [`quote_input()`] gathers what a
//! quote is made from, [`dents_of_spots()`] turns the spots of a reading into dents. [`judge_paint()`] holds
//! each panel's paint against the others, [`merge()`] lays together what several devices edited.
//!
//! # Conventions
//! Sizes in mm, places on a panel from 0 to 1 right and down of the panel as it is drawn, times as
//! [`jiff`] values. Ids, days and times are arguments: nothing here asks a clock, a file or chance.
//!
//! # Idea
//! Plain values that are parsed once at the border and cannot be wrong afterwards; every rule is a
//! function of them.
//!
//! # Limits
//! One customer and one car a job. Rounds of work are not recorded yet.
//!
//! # References
//! VIN: 49 CFR Part 565. Cautions: practice of the trade, as the report's texts say.

mod billing;
mod car;
mod cautions;
mod clock;
mod crew;
mod damage;
mod job;
mod merge;
mod old;
mod paint;
mod panel;
mod pay;
mod pricing;
mod shop;
mod shot;
mod spots;
mod stage;
mod vin;

pub use billing::{Billing, BillingError};
pub use car::{Car, ChassisNumber, Customer};
pub use cautions::{Caution, CautionCode, cautions};
pub use clock::{EntryState, LONGEST_STRETCH_S, TimeEntry, WorkKind, WorkedByKind, by_kind, on_dents_s};
pub use crew::{Pay, PayError, Technician};
pub use damage::{At, AtError, Capture, CaptureFile, Damage, DentEntry, Photo, ReadingEntry, Source};
pub use job::{Job, job_number};
pub use merge::{Clash, Edit, NoSuchField, merge};
pub use old::{OldDamage, OldKind};
pub use paint::{PaintError, PaintReading, PaintSays, PanelPaint, judge_paint};
pub use panel::{NoSuchPanel, Panel};
pub use pay::{DoneJob, JobPay, PayPeriod, PayRow, pay_sheet};
pub use pricing::quote_input;
pub use shop::{Language, LengthUnit, Shop, ShopError, TemperatureUnit};
pub use shot::{NoSuchShot, Shot};
pub use spots::{SpotDent, TakeSettings, dents_of_spots};
pub use stage::{NoSuchStage, Stage};
pub use vin::{CheckDigit, Vin, VinError, check_digit};
