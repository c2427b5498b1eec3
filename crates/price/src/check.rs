//! What a quote is made from, checked before any arithmetic.

use rust_decimal::Decimal;

use crate::ways::table_of_classes;
use crate::{Charge, Discount, Hours, PricedBy, Pricing, QuoteError, QuoteInput};

// Limits far above any car. Together they keep every sum and product below the 7.9e28 that a
// decimal holds: 1e5 lines of 1e14, doubled by 20 uplifts, times 100 %.

/// Largest amount, quantity or rate.
const MOST: i64 = 10_000_000;
/// Largest percentage.
const MOST_PERCENT: i64 = 100;
/// Most uplifts on one quote.
const MOST_UPLIFTS: usize = 20;
/// Most lines on one quote.
const MOST_LINES: usize = 100_000;
/// Most hours on one quote, h.
const MOST_HOURS: f64 = 1e6;

/// Longest text of a line, letters.
const LONGEST_TEXT: usize = 200;

/// Checks every dent and number; the first bad one is named.
pub(crate) fn check(input: &QuoteInput) -> Result<(), QuoteError> {
    let pricing = &input.pricing;
    let currency = &pricing.currency;
    if currency.len() != 3 || !currency.bytes().all(|byte| byte.is_ascii_uppercase()) {
        return Err(QuoteError::Currency(currency.clone()));
    }
    check_counts(input)?;
    pricing.conditions.check()?;
    for (index, quoted) in input.dents.iter().enumerate() {
        text(&quoted.what)?;
        let named = |error| QuoteError::Dent { line: index + 1, what: quoted.what.clone(), error };
        quoted.dent.check().map_err(named)?;
    }
    amount("the hourly rate", pricing.hourly_rate)?;
    check_way(&pricing.way)?;
    check_lines(pricing)?;
    check_sum(pricing)
}

fn check_way(way: &PricedBy) -> Result<(), QuoteError> {
    match way {
        PricedBy::Hours => Ok(()),
        PricedBy::SizeClasses { classes, .. } => Ok(table_of_classes(classes).check()?),
        PricedBy::HailTable { oversize, .. } => {
            oversize.map_or(Ok(()), |each| amount("the price of an oversize dent", each))
        }
        PricedBy::DayRate { day_rate, hours_per_day, days } => {
            amount("the day rate", *day_rate)?;
            let hours = "the hours of a day";
            let tenth = Decimal::new(1, 1);
            if *hours_per_day < tenth {
                return Err(QuoteError::Value { what: hours.to_owned(), value: *hours_per_day, must: "0.1 to 24" });
            }
            within(hours, *hours_per_day, 24, "0.1 to 24")?;
            days.map_or(Ok(()), |days| within("the days", days, 10_000, "0 to 10000"))
        }
    }
}

fn check_lines(pricing: &Pricing) -> Result<(), QuoteError> {
    for line in &pricing.ri_lines {
        let (Charge::Hours(value) | Charge::Amount(value)) = line.charge;
        text(&line.what)?;
        amount(&line.what, value)?;
    }
    for part in &pricing.parts {
        text(&part.what)?;
        amount(&part.what, part.quantity)?;
        amount(&part.what, part.unit_price)?;
    }
    for sundry in &pricing.sundries {
        text(&sundry.what)?;
        amount(&sundry.what, sundry.amount)?;
    }
    for uplift in &pricing.uplifts {
        text(&uplift.what)?;
        percent(&uplift.what, uplift.percent)?;
    }
    Ok(())
}

fn check_sum(pricing: &Pricing) -> Result<(), QuoteError> {
    match pricing.discount {
        Some(Discount::Percent(value)) => percent("the discount", value)?,
        Some(Discount::Amount(value)) => amount("the discount", value)?,
        None => {}
    }
    percent("the tax", pricing.tax_percent)?;
    pricing.goods_tax_percent.map_or(Ok(()), |value| percent("the tax on parts", value))?;
    let split = pricing.split.as_ref();
    split.map_or(Ok(()), |split| percent("the technician's share", split.technician_percent))?;
    pricing.conventional.map_or(Ok(()), |cost| amount("the conventional repair", cost))
}

/// Checks that the hours are ones that a person could work.
pub(crate) fn check_hours(hours: &Hours) -> Result<(), QuoteError> {
    // Written so that a value that is not a number is refused too.
    if hours.high <= MOST_HOURS { Ok(()) } else { Err(QuoteError::TooManyHours { hours: hours.high }) }
}

fn check_counts(input: &QuoteInput) -> Result<(), QuoteError> {
    let pricing = &input.pricing;
    let lines = input.dents.len() + pricing.ri_lines.len() + pricing.parts.len() + pricing.sundries.len();
    if lines > MOST_LINES {
        return Err(QuoteError::TooMany { what: "lines", most: MOST_LINES });
    }
    if pricing.uplifts.len() > MOST_UPLIFTS {
        return Err(QuoteError::TooMany { what: "uplifts", most: MOST_UPLIFTS });
    }
    Ok(())
}

fn text(what: &str) -> Result<(), QuoteError> {
    let letters = what.chars().count();
    if letters <= LONGEST_TEXT {
        return Ok(());
    }
    Err(QuoteError::Text { begin: what.chars().take(30).collect(), letters, most: LONGEST_TEXT })
}

fn amount(what: &str, value: Decimal) -> Result<(), QuoteError> {
    within(what, value, MOST, "0 to 10000000")
}

fn percent(what: &str, value: Decimal) -> Result<(), QuoteError> {
    within(what, value, MOST_PERCENT, "0 to 100 %")
}

fn within(what: &str, value: Decimal, most: i64, must: &'static str) -> Result<(), QuoteError> {
    if value >= Decimal::ZERO && value <= Decimal::from(most) {
        return Ok(());
    }
    Err(QuoteError::Value { what: what.to_owned(), value, must })
}
