//! Decimal money: how it is rounded, and how many decimals a currency has.

use rust_decimal::{Decimal, RoundingStrategy};

/// ISO 4217 currencies without a smaller coin.
const WITHOUT_CENTS: [&str; 17] = [
    "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF",
    "XPF",
];
/// ISO 4217 currencies with thousandths.
const WITH_THOUSANDTHS: [&str; 7] = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"];
/// ISO 4217 units of account with ten-thousandths.
const WITH_TEN_THOUSANDTHS: [&str; 2] = ["CLF", "UYW"];

/// Decimals of a currency by ISO 4217: 2 but for a few (list one as published on 1 January 2026).
///
/// ```
/// assert_eq!(dentwright_price::decimals("EUR"), 2);
/// assert_eq!(dentwright_price::decimals("JPY"), 0);
/// ```
#[must_use]
pub fn decimals(currency: &str) -> u32 {
    match currency {
        code if WITHOUT_CENTS.contains(&code) => 0,
        code if WITH_THOUSANDTHS.contains(&code) => 3,
        code if WITH_TEN_THOUSANDTHS.contains(&code) => 4,
        _ => 2,
    }
}

/// Rounds half away from zero to so many decimals, and writes all of them.
///
/// ```
/// use dentwright_price::round;
/// assert_eq!(round("2.005".parse().unwrap(), 2).to_string(), "2.01");
/// assert_eq!(round("-2.005".parse().unwrap(), 2).to_string(), "-2.01");
/// assert_eq!(round("7".parse().unwrap(), 2).to_string(), "7.00");
/// ```
#[must_use]
pub fn round(amount: Decimal, decimals: u32) -> Decimal {
    let mut rounded = amount.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero);
    rounded.rescale(decimals);
    rounded
}

/// Hours as a quote shows them: hundredths, half away from zero.
///
/// The value is expected to be finite and below 10¹²; anything else is nothing.
#[must_use]
pub fn hundredths(hours: f64) -> Decimal {
    round(Decimal::from_f64_retain(hours).unwrap_or_default(), 2)
}
