//! What a quote of a job is made from.

use crate::{Job, Shop};
use dentwright_price::{Pricing, QuoteInput, QuotedDent};

impl Shop {
    /// The shop's rates and nothing else.
    #[must_use]
    pub fn pricing(&self) -> Pricing {
        Pricing::new(self.hourly_rate, self.tax_percent, &self.currency)
    }
}

/// Everything a quote of the job is made from. A dent's line carries its panel's code, which the app
/// and the papers put into words.
#[must_use]
pub fn quote_input(job: &Job, shop: &Shop) -> QuoteInput {
    let dents = job.damages.iter().flat_map(|damage| {
        let what = damage.panel.code();
        damage.dents.iter().map(move |entry| QuotedDent { what: what.to_owned(), dent: entry.dent.clone() })
    });
    QuoteInput { dents: dents.collect(), pricing: job.pricing.clone().unwrap_or_else(|| shop.pricing()) }
}
