//! What a quote is made from: the dents, and how they are priced.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::{
    Conditions, Dent, Discount, Part, RiLine, SizeClass, SizeRule, Split, Stacking, Sundry, TaxRounding, Uplift,
};

/// Everything that is entered for a quote.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct QuoteInput {
    /// The dents.
    pub dents: Vec<QuotedDent>,
    /// The rest.
    #[serde(flatten)]
    pub pricing: Pricing,
}

/// A dent with the words that its line carries.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct QuotedDent {
    /// The line's text; dents of one panel share theirs, which is also the panel's name in a hail table.
    pub what: String,
    /// The dent.
    pub dent: Dent,
}

/// What is entered for a quote beside the dents. Money is in `currency`, without tax.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Pricing {
    /// Paint and temperature.
    #[serde(default)]
    pub conditions: Conditions,
    /// How the dents are priced.
    #[serde(default)]
    pub way: PricedBy,
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
    /// Tax on parts and sundries, %, where it is another one than on work.
    #[serde(default)]
    pub goods_tax_percent: Option<Decimal>,
    /// Where the tax is rounded.
    #[serde(default)]
    pub tax_rounding: TaxRounding,
    /// ISO 4217 code of the currency.
    pub currency: String,
    /// How net is shared between technician and shop; none where it is not.
    #[serde(default)]
    pub split: Option<Split>,
    /// What the conventional repair would cost, without tax; none where nobody entered it.
    #[serde(default)]
    pub conventional: Option<Decimal>,
}

/// How the dents are priced.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum PricedBy {
    /// Hours times the rate, a line of dents each.
    #[default]
    Hours,
    /// A price per dent by its size.
    SizeClasses {
        /// The classes, smallest first; only the last may be open at the top.
        classes: Vec<SizeClass>,
        /// How dents get their size.
        #[serde(default)]
        size_rule: SizeRule,
    },
    /// Panel × count × size, by a table that was imported.
    HailTable {
        /// The table's id; the table itself is handed to [`quote`](crate::quote()) beside the input.
        table: String,
        /// How dents get their size.
        #[serde(default)]
        size_rule: SizeRule,
        /// On top for every dent larger than the table's largest size, which it counts as.
        #[serde(default)]
        oversize: Option<Decimal>,
    },
    /// Days times a price.
    DayRate {
        /// Price of a day.
        day_rate: Decimal,
        /// Hours that are worked on dents in a day, h.
        hours_per_day: Decimal,
        /// How many days; none for the likely hours, up to the next half day.
        #[serde(default)]
        days: Option<Decimal>,
    },
}

impl Pricing {
    /// Hours times a rate, and nothing else.
    #[must_use]
    pub fn new(hourly_rate: Decimal, tax_percent: Decimal, currency: &str) -> Self {
        Self {
            conditions: Conditions::default(),
            way: PricedBy::Hours,
            ri_lines: Vec::new(),
            uplifts: Vec::new(),
            add_or_compound: Stacking::default(),
            hourly_rate,
            parts: Vec::new(),
            sundries: Vec::new(),
            discount: None,
            tax_percent,
            goods_tax_percent: None,
            tax_rounding: TaxRounding::default(),
            currency: currency.to_owned(),
            split: None,
            conventional: None,
        }
    }
}
