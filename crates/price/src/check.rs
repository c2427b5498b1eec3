//! What a quote is made from, checked before any arithmetic.

use rust_decimal::Decimal;

use crate::{Charge, Discount, Hours, QuoteError, QuoteInput};

// Limits far above any car. Together they keep every sum and product below the 7.9e28 that a
// decimal holds: 1e5 lines of 1e14, doubled by 20 uplifts, times 100 %.

/// Largest amount, quantity or rate.
const MOST: i64 = 10_000_000;
/// Largest percentage of an uplift.
const MOST_PERCENT: i64 = 100;
/// Most uplifts on one quote.
const MOST_UPLIFTS: usize = 20;
/// Most lines on one quote.
const MOST_LINES: usize = 100_000;
/// Most hours on one quote, h.
const MOST_HOURS: f64 = 1e6;

/// Checks every dent and number; the first bad one is named.
pub(crate) fn check(input: &QuoteInput) -> Result<(), QuoteError> {
    let currency = &input.currency;
    if currency.len() != 3 || !currency.bytes().all(|byte| byte.is_ascii_uppercase()) {
        return Err(QuoteError::Currency(currency.clone()));
    }
    check_counts(input)?;
    for (index, quoted) in input.dents.iter().enumerate() {
        let named = |error| QuoteError::Dent { line: index + 1, what: quoted.what.clone(), error };
        quoted.dent.check().map_err(named)?;
    }
    amount("the hourly rate", input.hourly_rate)?;
    percent("the tax", input.tax_percent, 100, "0 to 100 %")?;
    check_lines(input)?;
    match input.discount {
        Some(Discount::Percent(value)) => percent("the discount", value, 100, "0 to 100 %"),
        Some(Discount::Amount(value)) => amount("the discount", value),
        None => Ok(()),
    }
}

fn check_lines(input: &QuoteInput) -> Result<(), QuoteError> {
    for line in &input.ri_lines {
        let (Charge::Hours(value) | Charge::Amount(value)) = line.charge;
        amount(&line.what, value)?;
    }
    for part in &input.parts {
        amount(&part.what, part.quantity)?;
        amount(&part.what, part.unit_price)?;
    }
    for sundry in &input.sundries {
        amount(&sundry.what, sundry.amount)?;
    }
    for uplift in &input.uplifts {
        percent(&uplift.what, uplift.percent, MOST_PERCENT, "0 to 100 %")?;
    }
    Ok(())
}

/// Checks that the hours are ones that a person could work.
pub(crate) fn check_hours(hours: &Hours) -> Result<(), QuoteError> {
    // Written so that a value that is not a number is refused too.
    if hours.high <= MOST_HOURS { Ok(()) } else { Err(QuoteError::TooManyHours { hours: hours.high }) }
}

fn check_counts(input: &QuoteInput) -> Result<(), QuoteError> {
    let lines = input.dents.len() + input.ri_lines.len() + input.parts.len() + input.sundries.len();
    if lines > MOST_LINES {
        return Err(QuoteError::TooMany { what: "lines", most: MOST_LINES });
    }
    if input.uplifts.len() > MOST_UPLIFTS {
        return Err(QuoteError::TooMany { what: "uplifts", most: MOST_UPLIFTS });
    }
    Ok(())
}

fn amount(what: &str, value: Decimal) -> Result<(), QuoteError> {
    within(what, value, MOST, "0 to 10000000")
}

fn percent(what: &str, value: Decimal, most: i64, must: &'static str) -> Result<(), QuoteError> {
    within(what, value, most, must)
}

fn within(what: &str, value: Decimal, most: i64, must: &'static str) -> Result<(), QuoteError> {
    if value >= Decimal::ZERO && value <= Decimal::from(most) {
        return Ok(());
    }
    Err(QuoteError::Value { what: what.to_owned(), value, must })
}
