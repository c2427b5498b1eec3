//! Hours, rates, lines, uplifts and tax: a quote.
//!
//! # Entry points
//! [`Learned`]: the hours model, from [`HoursSettings`] and the shop's [`FinishedJob`]s. [`hours()`] of a
//! [`Dent`], [`quote()`] of a [`QuoteInput`]; [`HailTable::from_csv`] reads the user's own table;
//! [`foretell()`] and [`calibration()`] say how well hours were predicted.
//!
//! # Conventions
//! Sizes in mm, hours in h, money in [`Decimal`](rust_decimal::Decimal) without tax unless it
//! says gross. Rounding: half away from zero, each line to the smallest coin, tax where the law puts it.
//!
//! # Idea
//! The hours of a dent are a base times one factor for each thing that makes it harder; every
//! factor is shown. Their logarithm is linear, so that finished jobs move the factors in closed form,
//! from common practice to the shop's own. Likely hours are an expectation and add up; low and high come
//! from a distribution of which a part is shared by all dents of the car.
//!
//! # Limits
//! The coefficients it starts from are common practice without a published source: a start, not a
//! promise. A job timed by mistake (a clock left running) is learned like any other. No price table is
//! shipped, and nothing here judges whether a dent *can* be repaired without paint.
//!
//! # References
//! Explained factor by factor in `docs/hours.md`, checked in `docs/checks-price.md`; coefficients in
//! `hours.toml`.

mod check;
mod conditions;
mod dent;
mod entries;
mod error;
mod features;
mod finished;
mod foretold;
mod hours;
mod learned;
mod lines;
mod money;
mod pricing;
mod quote;
mod regression;
mod settings;
mod shares;
mod size_rules;
mod sizes;
mod student;
mod sum;
mod table;
mod table_cells;
mod table_csv;
mod table_error;
mod tax;
mod view;
mod ways;

pub use conditions::{Conditions, ConditionsError, Paint};
pub use dent::{Access, Dent, DentError, Kind, Metal, Place};
pub use entries::{Charge, Discount, Part, RiLine, Stacking, Sundry, Uplift, UpliftOn};
pub use error::QuoteError;
pub use finished::{FinishedError, FinishedJob, Timed};
pub use foretold::{Calibration, Foretold, Level, calibration, foretell};
pub use hours::{Doubt, Factor, Hours, hours, log_distribution, total_hours};
pub use learned::{Coefficient, LearnError, Learned};
pub use lines::{Line, LineKind, Unit};
pub use money::{decimals, hundredths, round};
pub use pricing::{PricedBy, Pricing, QuoteInput, QuotedDent};
pub use quote::{Quote, quote};
pub use regression::Regression;
pub use settings::{
    AccessTimes, HOURS_TOML, HoursSettings, KindTimes, MetalTimes, PaintTimes, PlaceTimes, SettingsError, Widths,
};
pub use shares::{Against, Shares, Split};
pub use size_rules::{PanelSizes, SizeCount, SizeRules};
pub use sizes::{SizeClass, SizeRule};
pub use student::StudentT;
pub use table::{HailTable, PricePer, TableRow};
pub use table_error::TableError;
pub use tax::{CountryTax, TaxRate, TaxRounding, TaxSum};
