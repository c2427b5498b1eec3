//! A quote's lines as those of an invoice. Only the quote's lines and its tax by rate are used.

use crate::words::Words;
use crate::{Language, ReportError};
use dentwright_invoice::{Adjustment, DAY, HOUR, Line as InvoiceLine, PIECE, Tax};
use dentwright_price::{Line, LineKind, Quote, Unit, decimals, round};
use rust_decimal::Decimal;

/// A quote's lines, and what is added or taken off on the whole, so that both make the quote's net at every rate.
///
/// Percentages become one piece at their amount; a discount becomes an
/// allowance. Where goods are taxed at a rate of their own, percentages and discount are shared between
/// the rates as the quote shared them, as one charge or allowance a rate.
///
/// # Errors
/// When a language file of the program is broken.
pub fn lines_of(quote: &Quote, language: Language) -> Result<(Vec<InvoiceLine>, Vec<Adjustment>), ReportError> {
    let words = Words::new(language)?;
    let mut names = Vec::new();
    for one in &quote.lines {
        names.push(name(one, &words)?);
    }
    Ok(split(quote, &names))
}

/// A line in words: the panel and how many dents, what is removed and installed, or as it was entered.
fn name(line: &Line, words: &Words) -> Result<String, ReportError> {
    let plain = match line.kind {
        LineKind::Discount => return words.say("bill-discount"),
        LineKind::RemoveInstall => return words.fill("line-ri", &[("what", &line.what)]),
        LineKind::Dent if line.unit == Unit::Day => words.say("line-days")?,
        LineKind::Oversize => {
            let panel = words.find(&format!("panel-{}", line.what)).unwrap_or_else(|| line.what.clone());
            words.fill("line-oversize", &[("what", &panel)])?
        }
        LineKind::Dent => words.find(&format!("panel-{}", line.what)).unwrap_or_else(|| line.what.clone()),
        _ => line.what.clone(),
    };
    match line.count.filter(|count| *count > 1) {
        Some(count) => Ok(format!("{plain}, {}", words.fill("line-dents", &[("count", &count.to_string())])?)),
        None => Ok(plain),
    }
}

fn split(quote: &Quote, names: &[String]) -> (Vec<InvoiceLine>, Vec<Adjustment>) {
    let name = |one: &Line| {
        let at = quote.lines.iter().position(|other| std::ptr::eq(other, one));
        at.map_or_else(String::new, |at| names[at].clone())
    };
    let coin = decimals(&quote.currency);
    let rates = rates(quote);
    let (work, goods) = (rates[0].0, rates.last().map_or(rates[0].0, |rate| rate.0));
    if rates.len() == 1 {
        let tax = Tax::at(work);
        let (off, plain): (Vec<&Line>, Vec<&Line>) = quote.lines.iter().partition(|line| line.amount < Decimal::ZERO);
        let lines = plain.into_iter().map(|one| line(one, name(one), tax, coin)).collect();
        return (lines, off.into_iter().map(|one| adjustment(one.amount, name(one), tax)).collect());
    }
    let shared = |one: &&Line| one.unit == Unit::Percent || one.amount < Decimal::ZERO;
    let is_goods = |one: &Line| matches!(one.kind, LineKind::Part | LineKind::Sundry);
    let rate_of = |one: &Line| if is_goods(one) { goods } else { work };
    let lines: Vec<InvoiceLine> = quote
        .lines
        .iter()
        .filter(|one| !shared(one))
        .map(|one| line(one, name(one), Tax::at(rate_of(one)), coin))
        .collect();
    let why: Vec<String> = quote.lines.iter().filter(shared).map(&name).collect();
    let missing = |(rate, on): &(Decimal, Decimal)| {
        let tax = Tax::at(*rate);
        let there: Decimal = lines.iter().filter(|line| line.tax == tax).map(|line| line.net(coin)).sum();
        let rest = on - there;
        (!rest.is_zero()).then(|| adjustment(rest, why.join(", "), tax))
    };
    let adjustments = rates.iter().filter_map(missing).collect();
    (lines, adjustments)
}

/// Rate and what it is taken on, the one on work first.
fn rates(quote: &Quote) -> Vec<(Decimal, Decimal)> {
    let taxes: Vec<_> = quote.taxes.iter().map(|tax| (tax.percent, tax.on)).collect();
    if taxes.is_empty() { vec![(quote.tax_percent, quote.net)] } else { taxes }
}

fn line(line: &Line, name: String, tax: Tax, coin: u32) -> InvoiceLine {
    let exact = round(line.quantity * line.unit_price, coin) == line.amount;
    match line.unit {
        Unit::Hour if exact => InvoiceLine::new(name, line.quantity, HOUR, line.unit_price, tax),
        Unit::Day if exact => InvoiceLine::new(name, line.quantity, DAY, line.unit_price, tax),
        Unit::Piece if exact => InvoiceLine::new(name, line.quantity, PIECE, line.unit_price, tax),
        _ => InvoiceLine::new(name, Decimal::ONE, PIECE, line.amount, tax),
    }
}

fn adjustment(amount: Decimal, reason: String, tax: Tax) -> Adjustment {
    let charge = amount > Decimal::ZERO;
    // UNTDID 5189, 95: discount.
    let reason_code = if charge { String::new() } else { "95".to_owned() };
    Adjustment { charge, amount: amount.abs(), base: None, percent: None, reason, reason_code, tax }
}

/// An amount rounded to the smallest step that cash is paid in, half away from zero.
///
/// ```
/// use dentwright_report::rounded_to_cash;
/// let d = |text: &str| text.parse().unwrap();
/// assert_eq!(rounded_to_cash(d("12.33"), d("0.05")), d("12.35"));
/// assert_eq!(rounded_to_cash(d("12.32"), d("0.05")), d("12.30"));
/// assert_eq!(rounded_to_cash(d("12.32"), d("0.01")), d("12.32"));
/// ```
#[must_use]
pub fn rounded_to_cash(amount: Decimal, step: Decimal) -> Decimal {
    if step.is_zero() {
        return amount;
    }
    let scale = amount.scale();
    let mut rounded = round(amount / step, 0) * step;
    rounded.rescale(scale.max(step.scale()));
    rounded
}
