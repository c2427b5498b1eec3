//! Hours, rates, lines, uplifts and tax: a quote.
//!
//! # Entry points
//! [`hours()`] of a [`Dent`], [`quote()`] of a [`QuoteInput`]; both with [`HoursSettings`].
//!
//! # Conventions
//! Sizes in mm, hours in h, money in [`Decimal`](rust_decimal::Decimal) without tax unless it
//! says gross. Rounding: half away from zero, each line to the smallest coin, tax on the net sum.
//!
//! # Idea
//! The hours of a dent are a base times one factor for each thing that makes it harder; every
//! factor is shown. Likely hours are an expectation and add up; low and high come from a
//! lognormal spread of which a part is shared by all dents of the car.
//!
//! # Limits
//! The coefficients are common practice without a published source: a start, not a promise. No
//! price table, and no judgement whether a dent *can* be repaired without paint.
//!
//! # References
//! Explained factor by factor in `docs/hours.md`; coefficients in `hours.toml`.

mod check;
mod dent;
mod error;
mod hours;
mod input;
mod money;
mod quote;
mod settings;

pub use dent::{Access, Dent, DentError, Kind, Metal, Place};
pub use error::QuoteError;
pub use hours::{Factor, Hours, hours, total_hours};
pub use input::{Charge, Discount, Part, QuoteInput, QuotedDent, RiLine, Stacking, Sundry, Uplift, UpliftOn};
pub use money::{decimals, hundredths, round};
pub use quote::{Line, LineKind, Quote, Unit, quote};
pub use settings::{AccessTimes, HOURS_TOML, HoursSettings, KindTimes, MetalTimes, PlaceTimes, SettingsError};
