//! A quote for the template: lines, sums, the spread.

use dentwright_price::{Line, LineKind, Quote, Stacking, Unit, round};
use rust_decimal::Decimal;
use serde_json::{Value, json};

use crate::ReportError;
use crate::damage_view::panel;
use crate::view::Setting;

pub(crate) fn quote(quote: &Quote, with: &Setting) -> Result<Value, ReportError> {
    let (format, words) = (&with.format, &with.words);
    let money = |amount| format.money(amount, &quote.currency);
    let hours = |hours: f64| format!("{}\u{a0}h", format.number(hours, 1));
    let uplifts = quote.lines.iter().filter(|line| line.kind == LineKind::Uplift).count();
    let stacking = match quote.add_or_compound {
        Stacking::Add => "stacking-add",
        Stacking::Compound => "stacking-compound",
    };
    let dents = quote.hours.likely > 0.0;
    Ok(json!({
        "lines": quote.lines.iter().map(|one| line(one, &quote.currency, with)).collect::<Result<Vec<_>, _>>()?,
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

fn line(line: &Line, currency: &str, with: &Setting) -> Result<Value, ReportError> {
    let (format, words) = (&with.format, &with.words);
    let quantity = match line.unit {
        Unit::Hour => format!(
            "{}\u{a0}{}",
            format.decimal(round(line.quantity, line.quantity.normalize().scale().max(2))),
            words.say("unit-hour")?
        ),
        Unit::Percent => format!("{}\u{a0}{}", format.quantity(line.quantity), words.say("unit-percent")?),
        Unit::Piece => format.quantity(line.quantity),
    };
    let price = match line.unit {
        Unit::Percent => {
            let base = format.money((line.unit_price * Decimal::ONE_HUNDRED).abs(), currency);
            words.fill("line-uplift-on", &[("base", &base)])?
        }
        Unit::Hour | Unit::Piece => format.money(line.unit_price, currency),
    };
    Ok(json!({
        "kind": line.kind,
        "what": what(line, with)?,
        "quantity": quantity,
        "price": price,
        "amount": format.money(line.amount, currency),
    }))
}

fn what(line: &Line, with: &Setting) -> Result<String, ReportError> {
    match line.kind {
        LineKind::RemoveInstall => with.words.fill("line-ri", &[("what", &line.what)]),
        LineKind::Discount => with.words.say("line-discount"),
        LineKind::Dent if line.count.unwrap_or(1) > 1 => {
            let count = with.format.number(f64::from(line.count.unwrap_or(1)), 0);
            Ok(format!("{}, {}", panel(&line.what, with), with.words.fill("line-dents", &[("count", &count)])?))
        }
        LineKind::Dent => Ok(panel(&line.what, with)),
        LineKind::Part | LineKind::Sundry | LineKind::Uplift => Ok(line.what.clone()),
    }
}
