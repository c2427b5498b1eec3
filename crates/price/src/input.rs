//! What a quote is made from.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::Dent;

/// Everything that is entered for a quote. Money is in `currency`, without tax.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct QuoteInput {
    /// The dents, one line each.
    pub dents: Vec<QuotedDent>,
    /// Trim to remove and install.
    #[serde(default)]
    pub ri_lines: Vec<RiLine>,
    /// Percentages on top.
    #[serde(default)]
    pub uplifts: Vec<Uplift>,
    /// Whether percentages add or compound; shown on the quote.
    #[serde(default)]
    pub add_or_compound: Stacking,
    /// Price of an hour of work.
    pub hourly_rate: Decimal,
    /// Parts that are fitted.
    #[serde(default)]
    pub parts: Vec<Part>,
    /// Wax, clips, disposal: a text and an amount each.
    #[serde(default)]
    pub sundries: Vec<Sundry>,
    /// Taken off before tax.
    #[serde(default)]
    pub discount: Option<Discount>,
    /// Tax on the net total, %.
    pub tax_percent: Decimal,
    /// ISO 4217 code of the currency.
    pub currency: String,
}

/// A dent with the words that its line carries.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct QuotedDent {
    /// The line's text, such as the panel's name.
    pub what: String,
    /// The dent.
    pub dent: Dent,
}

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
