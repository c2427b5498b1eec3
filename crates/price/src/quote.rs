//! A quote: lines, their sum, tax, and how far the total may move.
//!
//! **Rounding.** Hours are rounded to hundredths, each line's amount to the currency's smallest
//! coin, half away from zero. Net is the sum of the lines as printed; tax is rounded where the
//! country's law puts it. So anyone can add a printed quote up.
//!
//! **What changes what.** A line changes no other, but for these rules: percentages (uplifts, discount,
//! tax, shares) are of sums; dents of one panel share its bracket in a hail table, and under the
//! majority rule its size; a day rate is one line for all dents. The order of entry changes only the
//! order of the lines: uplifts are worked out in an order of their own (by what they are on, percent,
//! text).

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::check::{check, check_hours};
use crate::ways::{Sized, by_days, by_hours, by_whole_hours, ends, table_of_classes};
use crate::{
    Against, HailTable, Hours, Learned, Line, LineKind, PricedBy, QuoteError, QuoteInput, Shares, SizeRule, SizeRules,
    Stacking, TaxSum, decimals, round, total_hours,
};
use crate::{lines, shares, size_rules, tax};

/// A quote. All money in `currency`, with all its decimals.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Quote {
    /// What is charged, in the order of the paper.
    pub lines: Vec<Line>,
    /// Sum of the lines.
    pub net: Decimal,
    /// Tax on net, %; where goods have a rate of their own, the one on work.
    pub tax_percent: Decimal,
    /// Tax by rate.
    #[serde(default)]
    pub taxes: Vec<TaxSum>,
    /// Tax on net.
    pub tax: Decimal,
    /// Net and tax.
    pub gross: Decimal,
    /// Gross if the dents take their low hours; as `gross` where hours do not make the price.
    pub gross_low: Decimal,
    /// Gross if the dents take their high hours; as `gross` where hours do not make the price.
    pub gross_high: Decimal,
    /// Hours of the dents together, with their doubt. R&I hours are not among them.
    pub hours: Hours,
    /// Whether percentages were added or compounded.
    pub add_or_compound: Stacking,
    /// Gross if they were stacked the other way; none with fewer than two.
    #[serde(default)]
    pub gross_stacked_otherwise: Option<Decimal>,
    /// Both size rules side by side; none where sizes do not make the price.
    #[serde(default)]
    pub size_rules: Option<SizeRules>,
    /// Net shared between technician and shop; none where it is not.
    #[serde(default)]
    pub shares: Option<Shares>,
    /// Net beside the conventional repair; none where nobody entered its cost.
    #[serde(default)]
    pub against: Option<Against>,
    /// ISO 4217 code of the currency.
    pub currency: String,
}

/// Makes the quote. `table` is the hail table that the input names, where it names one.
///
/// # Errors
/// When a dent, a percentage, an amount or a table is not usable; the first fault found.
pub fn quote(input: &QuoteInput, learned: &Learned, table: Option<&HailTable>) -> Result<Quote, QuoteError> {
    check(input)?;
    let pricing = &input.pricing;
    let hours = total_hours(input.dents.iter().map(|quoted| &quoted.dent), &pricing.conditions, learned);
    check_hours(&hours)?;
    let maker = Maker { input, coin: decimals(&pricing.currency) };
    let classes = match &pricing.way {
        PricedBy::SizeClasses { classes, .. } => Some(table_of_classes(classes)),
        _ => None,
    };
    let (rule, table, oversize) = match &pricing.way {
        PricedBy::SizeClasses { size_rule, .. } => (*size_rule, classes.as_ref(), None),
        PricedBy::HailTable { size_rule, oversize, .. } => {
            (*size_rule, Some(table.ok_or(QuoteError::NoTable)?), *oversize)
        }
        PricedBy::Hours | PricedBy::DayRate { .. } => (SizeRule::Gauge, None, None),
    };
    if let Some(table) = table {
        table.check()?;
        let sized = Sized::of(input, table, oversize);
        let sheet = maker.sheet(sized.lines(rule, maker.coin)?, pricing.add_or_compound);
        let size_rules =
            size_rules::both(&sized, rule, |lines| maker.sheet(lines, pricing.add_or_compound).gross, maker.coin);
        let (low, high) = (sheet.gross, sheet.gross);
        return Ok(Quote { size_rules: Some(size_rules), ..maker.quote(sheet, hours, low, high) });
    }
    let by_day = matches!(pricing.way, PricedBy::DayRate { .. });
    let dents = if by_day { by_days(input, hours.likely, maker.coin) } else { by_hours(input, learned, maker.coin) };
    let sheet = maker.sheet(dents, pricing.add_or_compound);
    let at = |dent_hours: f64| {
        let dents = if by_day {
            by_days(input, dent_hours, maker.coin)
        } else {
            by_whole_hours(dent_hours, pricing.hourly_rate, maker.coin)
        };
        maker.sheet(dents, pricing.add_or_compound).gross
    };
    let [low, high] = ends(&hours).map(at);
    let (low, high) = (low.min(sheet.gross), high.max(sheet.gross));
    Ok(maker.quote(sheet, hours, low, high))
}

/// Lines with what they come to.
struct Sheet {
    lines: Vec<Line>,
    net: Decimal,
    taxes: Vec<TaxSum>,
    gross: Decimal,
}

/// What all sheets of a quote share.
struct Maker<'a> {
    input: &'a QuoteInput,
    coin: u32,
}

impl Maker<'_> {
    /// Everything around the dent lines.
    fn sheet(&self, dents: Vec<Line>, stacking: Stacking) -> Sheet {
        let (pricing, coin) = (&self.input.pricing, self.coin);
        let mut all = dents;
        all.sort_by_key(|line| line.kind);
        all.extend(lines::plain(pricing, coin));
        all.extend(lines::uplifts(pricing, &all, stacking, coin));
        all.extend(lines::discount(pricing, lines::sum(&all), coin));
        let net = round(lines::sum(&all), coin);
        let taxes = tax::taxes(&all, pricing, coin);
        let gross = net + taxes.iter().map(|one| one.tax).sum::<Decimal>();
        Sheet { lines: all, net, taxes, gross }
    }

    fn quote(&self, sheet: Sheet, hours: Hours, gross_low: Decimal, gross_high: Decimal) -> Quote {
        let (pricing, coin) = (&self.input.pricing, self.coin);
        let Sheet { lines, net, taxes, gross } = sheet;
        let split = pricing.split.as_ref();
        Quote {
            gross_stacked_otherwise: self.stacked_otherwise(&lines),
            shares: split.map(|split| shares::shares(split, &lines, net, coin)),
            against: pricing.conventional.map(|cost| shares::against(cost, net, coin)),
            lines,
            net,
            tax_percent: pricing.tax_percent,
            tax: taxes.iter().map(|one| one.tax).sum(),
            taxes,
            gross,
            gross_low,
            gross_high,
            hours,
            add_or_compound: pricing.add_or_compound,
            size_rules: None,
            currency: pricing.currency.clone(),
        }
    }

    fn stacked_otherwise(&self, all: &[Line]) -> Option<Decimal> {
        let pricing = &self.input.pricing;
        let dents = || all.iter().filter(|line| matches!(line.kind, LineKind::Dent | LineKind::Oversize)).cloned();
        (pricing.uplifts.len() > 1).then(|| self.sheet(dents().collect(), pricing.add_or_compound.other()).gross)
    }
}
