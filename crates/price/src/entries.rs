//! The lines that are entered for a quote: trim, percentages, parts, what is taken off.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// Removing and installing a part of the car.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct RiLine {
    /// What is removed and installed.
    pub what: String,
    /// `"hours": "0.8"` or `"amount": "60.00"`.
    #[serde(flatten)]
    pub charge: Charge,
}

/// How an R&I line is charged.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Charge {
    /// Hours, times the rate.
    Hours(Decimal),
    /// A fixed amount.
    Amount(Decimal),
}

/// A percentage on top of some of the lines.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Uplift {
    /// Why.
    pub what: String,
    /// How much, %; 0 or more.
    pub percent: Decimal,
    /// On which lines.
    pub on: UpliftOn,
}

/// Which lines an uplift is taken on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum UpliftOn {
    /// The dents.
    Dents,
    /// The dents and R&I.
    Labour,
    /// Dents, R&I, parts and sundries.
    All,
}

/// How several percentages meet.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Stacking {
    /// Each is taken on the plain lines: 25 % and 10 % make 35 %.
    #[default]
    Add,
    /// Each is taken on the lines with the uplifts before it: 25 % and 10 % make 37.5 %.
    Compound,
}

impl Stacking {
    /// The other one.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Add => Self::Compound,
            Self::Compound => Self::Add,
        }
    }
}

/// A part that is fitted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Part {
    /// Its name.
    pub what: String,
    /// How many.
    pub quantity: Decimal,
    /// Price of one.
    pub unit_price: Decimal,
}

/// Something small with an amount.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Sundry {
    /// Its name.
    pub what: String,
    /// Its amount.
    pub amount: Decimal,
}

/// What is taken off the sum of all lines, before tax.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Discount {
    /// So many %, 0 to 100.
    Percent(Decimal),
    /// An amount, at most the sum of the lines.
    Amount(Decimal),
}
