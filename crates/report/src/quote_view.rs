//! A quote for the template: lines, sums, the spread.

use dentwright_price::{Line, LineKind, Quote, Stacking, Unit, round};
use rust_decimal::Decimal;
use serde_json::{Value, json};

use crate::damage_view::size;
use crate::view::Setting;
use crate::{DentRow, ReportError};

/// `dents` are those of the whole car, in the order of the quote's dent lines.
pub(crate) fn quote<'a>(
    quote: &Quote,
    mut dents: impl Iterator<Item = &'a DentRow>,
    with: &Setting,
) -> Result<Value, ReportError> {
    let mut row = |one: &Line| {
        let by_dent = one.kind == LineKind::Dent && one.unit == Unit::Hour;
        let dent = if by_dent { dents.next() } else { None };
        line(one, dent, &quote.currency, with)
    };
    let lines = quote.lines.iter().map(&mut row).collect::<Result<Vec<_>, _>>()?;
    let (format, words) = (&with.format, &with.words);
    let money = |amount| format.money(amount, &quote.currency);
    let hours = |hours: f64| format!("{}\u{a0}h", format.number(hours, 1));
    let uplifts = quote.lines.iter().filter(|line| line.kind == LineKind::Uplift).count();
    let stacking = match quote.add_or_compound {
        Stacking::Add => "stacking-add",
        Stacking::Compound => "stacking-compound",
    };
    // A table's price does not depend on hours.
    let dents = quote.gross_low < quote.gross_high;
    Ok(json!({
        "lines": lines,
        "net": money(quote.net),
        "tax_label": words.fill("tax", &[("percent", &format.quantity(quote.tax_percent))])?,
        "tax": money(quote.tax),
        "gross": money(quote.gross),
        "spread": dents.then(|| json!({
            "low": money(quote.gross_low),
            "likely": money(quote.gross),
            "high": money(quote.gross_high),
            "hours_low": hours(quote.hours.low),
            "hours_likely": hours(quote.hours.likely),
            "hours_high": hours(quote.hours.high),
        })),
        "stacking": (uplifts > 0).then(|| words.say(stacking)).transpose()?,
    }))
}

fn line(line: &Line, dent: Option<&DentRow>, currency: &str, with: &Setting) -> Result<Value, ReportError> {
    let (format, words) = (&with.format, &with.words);
    let quantity = match line.unit {
        Unit::Hour => format!(
            "{}\u{a0}{}",
            format.decimal(round(line.quantity, line.quantity.normalize().scale().max(2))),
            words.say("unit-hour")?
        ),
        Unit::Percent => format!("{}\u{a0}{}", format.quantity(line.quantity), words.say("unit-percent")?),
        Unit::Day => format!("{}\u{a0}{}", format.quantity(line.quantity), words.say("unit-day")?),
        Unit::Piece => format.quantity(line.quantity),
    };
    let price = match line.unit {
        Unit::Percent => {
            let base = format.money((line.unit_price * Decimal::ONE_HUNDRED).abs(), currency);
            words.fill("line-uplift-on", &[("base", &base)])?
        }
        Unit::Hour | Unit::Day | Unit::Piece => format.money(line.unit_price, currency),
    };
    Ok(json!({
        "kind": line.kind,
        "what": what(line, dent, with)?,
        "quantity": quantity,
        "price": price,
        "amount": format.money(line.amount, currency),
    }))
}

/// A line in words.
pub(crate) fn what(line: &Line, dent: Option<&DentRow>, with: &Setting) -> Result<String, ReportError> {
    match line.kind {
        LineKind::RemoveInstall => with.words.fill("line-ri", &[("what", &line.what)]),
        LineKind::Discount => with.words.say("line-discount"),
        LineKind::Dent => {
            let place = match (line.unit, line.size_mm) {
                (Unit::Day, _) => with.words.say("line-days")?,
                (Unit::Piece, Some(size_mm)) => {
                    let place = place_and_size(&line.what, None, with);
                    let unit = with.format.length_unit();
                    let size = format!("{}\u{a0}{unit}", with.format.across(size_mm));
                    with.words.fill("line-up-to", &[("what", &place), ("size", &size)])?
                }
                _ => place_and_size(&line.what, dent, with),
            };
            match line.count.unwrap_or(1) {
                1 => Ok(place),
                count => Ok(format!("{place}, {}", with.words.fill("line-dents", &[("count", &count.to_string())])?)),
            }
        }
        LineKind::Oversize => {
            let place = place_and_size(&line.what, None, with);
            with.words.fill("line-oversize", &[("what", &place)])
        }
        LineKind::Part | LineKind::Sundry | LineKind::Uplift => Ok(line.what.clone()),
    }
}

/// A panel's code becomes its name with the dent's size; any other text stays as it was entered.
fn place_and_size(what: &str, dent: Option<&DentRow>, with: &Setting) -> String {
    match (with.words.find(&format!("panel-{what}")), dent) {
        (Some(panel), Some(row)) => {
            format!("{panel}: {}\u{a0}{}", size(row.dent.length_mm, row.dent.width_mm, with), with.format.length_unit())
        }
        (Some(panel), None) => panel,
        (None, _) => what.to_owned(),
    }
}
