//! What is entered for a quote, and what a quote is made from.

use crate::{Job, Shop};
use dentwright_price::{Discount, Part, QuoteInput, QuotedDent, RiLine, Stacking, Sundry, Uplift};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// What is entered for a quote beside the dents. Money without tax.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Pricing {
    /// Trim to remove and install.
    #[serde(default)]
    pub ri_lines: Vec<RiLine>,
    /// Percentages on top.
    #[serde(default)]
    pub uplifts: Vec<Uplift>,
    /// Whether percentages add or compound.
    #[serde(default)]
    pub add_or_compound: Stacking,
    /// Price of an hour.
    pub hourly_rate: Decimal,
    /// Parts that are fitted.
    #[serde(default)]
    pub parts: Vec<Part>,
    /// Small things with an amount.
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

impl Pricing {
    /// The shop's rates and nothing else.
    #[must_use]
    pub fn of_shop(shop: &Shop) -> Self {
        Self {
            ri_lines: Vec::new(),
            uplifts: Vec::new(),
            add_or_compound: Stacking::default(),
            hourly_rate: shop.hourly_rate,
            parts: Vec::new(),
            sundries: Vec::new(),
            discount: None,
            tax_percent: shop.tax_percent,
            currency: shop.currency.clone(),
        }
    }
}

/// Everything a quote of the job is made from. A dent's line carries its panel's code, which the app
/// and the papers put into words.
#[must_use]
pub fn quote_input(job: &Job, shop: &Shop) -> QuoteInput {
    let pricing = job.pricing.clone().unwrap_or_else(|| Pricing::of_shop(shop));
    let dents = job.damages.iter().flat_map(|damage| {
        let what = damage.panel.code();
        damage.dents.iter().map(move |entry| QuotedDent { what: what.to_owned(), dent: entry.dent.clone() })
    });
    QuoteInput {
        dents: dents.collect(),
        ri_lines: pricing.ri_lines,
        uplifts: pricing.uplifts,
        add_or_compound: pricing.add_or_compound,
        hourly_rate: pricing.hourly_rate,
        parts: pricing.parts,
        sundries: pricing.sundries,
        discount: pricing.discount,
        tax_percent: pricing.tax_percent,
        currency: pricing.currency,
    }
}
