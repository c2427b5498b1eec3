//! Tax on a quote, and where it is rounded.

use crate::{Line, LineKind, Pricing, UpliftOn, round};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// Where tax is rounded to the smallest coin; the country's law says.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TaxRounding {
    /// Once for each rate, on the sum of the lines.
    #[default]
    Invoice,
    /// On every line; the tax is the sum of the rounded ones.
    Line,
}

/// Taxes of a country as its pack supplies them: what an app offers to choose from. No legal advice.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct CountryTax {
    /// ISO 3166-1 code of the country, two letters.
    pub country: String,
    /// Rates, the usual one first.
    pub rates: Vec<TaxRate>,
    /// Where the tax is rounded.
    pub rounding: TaxRounding,
}

/// One rate.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct TaxRate {
    /// Its name in the pack, such as `standard`.
    pub code: String,
    /// How much, %.
    pub percent: Decimal,
}

/// What one rate comes to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct TaxSum {
    /// The rate, %.
    pub percent: Decimal,
    /// What it is taken on.
    pub on: Decimal,
    /// The tax.
    pub tax: Decimal,
}

/// Tax by rate: one, or work and goods apart.
pub(crate) fn taxes(lines: &[Line], pricing: &Pricing, coin: u32) -> Vec<TaxSum> {
    let goods_percent = pricing.goods_tax_percent.filter(|percent| *percent != pricing.tax_percent);
    let Some(goods_percent) = goods_percent else {
        let whole: Vec<Decimal> = lines.iter().map(|line| line.amount).collect();
        return vec![tax(&whole, pricing.tax_percent, pricing.tax_rounding, coin)];
    };
    let share = goods_share(lines);
    let goods: Vec<Decimal> = lines.iter().map(|line| round(line.amount * goods_part(line, share), coin)).collect();
    let work: Vec<Decimal> = lines.iter().zip(&goods).map(|(line, goods)| line.amount - goods).collect();
    let rate = |parts: &[Decimal], percent| tax(parts, percent, pricing.tax_rounding, coin);
    vec![rate(&work, pricing.tax_percent), rate(&goods, goods_percent)]
}

fn tax(amounts: &[Decimal], percent: Decimal, rounding: TaxRounding, coin: u32) -> TaxSum {
    let of = |amount: Decimal| round(amount * percent / Decimal::ONE_HUNDRED, coin);
    let on = amounts.iter().sum();
    let tax = match rounding {
        TaxRounding::Invoice => of(on),
        TaxRounding::Line => amounts.iter().map(|amount| of(*amount)).sum(),
    };
    TaxSum { percent, on, tax }
}

/// How much of a line is goods; discounts and uplifts on everything are shared like the plain lines.
fn goods_part(line: &Line, share: Decimal) -> Decimal {
    match (line.kind, line.on) {
        (LineKind::Part | LineKind::Sundry, _) => Decimal::ONE,
        (LineKind::Discount, _) | (LineKind::Uplift, Some(UpliftOn::All)) => share,
        _ => Decimal::ZERO,
    }
}

/// Goods among the plain lines, 0 to 1.
fn goods_share(lines: &[Line]) -> Decimal {
    let sum =
        |on: UpliftOn| -> Decimal { lines.iter().filter(|line| line.kind.is_under(on)).map(|line| line.amount).sum() };
    let all = sum(UpliftOn::All);
    if all.is_zero() { Decimal::ZERO } else { (all - sum(UpliftOn::Labour)) / all }
}
