//! The sums of an invoice (BG-22) and its tax by category and rate (BG-23).

use crate::{Invoice, Tax};
use dentwright_price::round;
use rust_decimal::Decimal;
use std::collections::BTreeMap;

/// The document's totals.
///
/// ```
/// use dentwright_invoice::*;
/// # use jiff::civil::date;
/// let mut invoice = Invoice::new("R-1", date(2026, 11, 26), "EUR", Party::default(), Party::default());
/// let hours = "2.5".parse().unwrap();
/// invoice.lines.push(Line::new("Roof", hours, HOUR, "95".parse().unwrap(), Tax::at("19".parse().unwrap())));
/// let totals = Totals::of(&invoice);
/// assert_eq!(totals.net.to_string(), "237.50");    // 2.5 × 95
/// assert_eq!(totals.tax.to_string(), "45.13");     // 19 % of it, half a cent up
/// assert_eq!(totals.gross.to_string(), "282.63");
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Totals {
    /// BT-106: sum of the lines.
    pub lines: Decimal,
    /// BT-107: sum of what is taken off the whole.
    pub allowances: Decimal,
    /// BT-108: sum of what is added to the whole.
    pub charges: Decimal,
    /// BT-109: without tax.
    pub net: Decimal,
    /// BT-110: tax.
    pub tax: Decimal,
    /// BT-112: with tax.
    pub gross: Decimal,
    /// BT-115: still to be paid.
    pub due: Decimal,
    /// BG-23: one for each category and rate.
    pub by_rate: Vec<TaxTotal>,
}

/// Tax of one category and rate (BG-23).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxTotal {
    /// BT-118 and BT-119.
    pub tax: Tax,
    /// BT-116: what it is taken on.
    pub base: Decimal,
    /// BT-117: the tax, rounded to the coin.
    pub amount: Decimal,
}

impl Totals {
    /// Adds an invoice up. Tax is rounded once for each category and rate (BR-CO-17).
    #[must_use]
    pub fn of(invoice: &Invoice) -> Self {
        let coin = invoice.coin();
        let lines = invoice.lines.iter().map(|line| line.net(coin)).sum();
        let sum = |charge| {
            let of_side = invoice.adjustments.iter().filter(|one| one.charge == charge);
            of_side.map(|one| one.amount).sum::<Decimal>()
        };
        let (allowances, charges) = (sum(false), sum(true));
        let by_rate = by_rate(invoice, coin);
        let net = round(lines - allowances + charges, coin);
        let tax = round(by_rate.iter().map(|one| one.amount).sum(), coin);
        let gross = net + tax;
        Self {
            lines: round(lines, coin),
            allowances: round(allowances, coin),
            charges: round(charges, coin),
            net,
            tax,
            gross,
            due: round(gross - invoice.prepaid + invoice.rounding, coin),
            by_rate,
        }
    }
}

fn by_rate(invoice: &Invoice, coin: u32) -> Vec<TaxTotal> {
    let mut bases: BTreeMap<Tax, Decimal> = BTreeMap::new();
    for line in &invoice.lines {
        *bases.entry(line.tax.normal()).or_default() += line.net(coin);
    }
    for one in &invoice.adjustments {
        *bases.entry(one.tax.normal()).or_default() += if one.charge { one.amount } else { -one.amount };
    }
    let total = |(tax, base): (Tax, Decimal)| TaxTotal {
        tax,
        base: round(base, coin),
        amount: round(base * tax.rate / Decimal::ONE_HUNDRED, coin),
    };
    bases.into_iter().map(total).collect()
}

impl Tax {
    /// So that 19 and 19.00 are one rate.
    fn normal(self) -> Self {
        Self { rate: self.rate.normalize(), ..self }
    }
}
