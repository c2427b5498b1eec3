//! Numbers, money, lengths and dates as a language writes them.

use dentwright_price::{decimals, round};
use jiff::civil::Date;
use rust_decimal::Decimal;

use crate::words::Words;
use crate::{Language, LengthUnit, ReportError};

/// No-break space: between a number and its unit, in German before the currency.
const GAP: char = '\u{a0}';
/// Thin no-break space: around ±.
const THIN: char = '\u{202f}';
/// A true minus sign.
const MINUS: char = '\u{2212}';
const MM_PER_INCH: f64 = 25.4;

/// How one report writes its values.
pub(crate) struct Format {
    pub(crate) language: Language,
    pub(crate) unit: LengthUnit,
}

impl Format {
    /// A number with so many decimals; something that is not a number is a dash.
    pub(crate) fn number(&self, value: f64, places: usize) -> String {
        if !value.is_finite() {
            return "–".to_owned();
        }
        self.separated(&format!("{value:.places$}"))
    }

    /// A decimal with the decimals that it has.
    pub(crate) fn decimal(&self, value: Decimal) -> String {
        self.separated(&value.to_string())
    }

    /// A decimal without zeros at its end: quantities and percentages.
    pub(crate) fn quantity(&self, value: Decimal) -> String {
        self.separated(&value.normalize().to_string())
    }

    /// Money: `€1,234.56`, `1.234,56 €`; a currency without a sign of its own by its code.
    pub(crate) fn money(&self, amount: Decimal, currency: &str) -> String {
        let amount = round(amount, decimals(currency));
        let digits = self.separated(&amount.abs().to_string());
        let sign = if amount.is_sign_negative() && !amount.is_zero() { MINUS.to_string() } else { String::new() };
        let coin = sign_of(currency);
        match self.language {
            Language::En if coin == currency => format!("{sign}{currency}{GAP}{digits}"),
            Language::En => format!("{sign}{coin}{digits}"),
            _ => format!("{sign}{digits}{GAP}{coin}"),
        }
    }

    /// Money with all the decimals that it has: prices of a unit may have more than the coin.
    pub(crate) fn money_exact(&self, amount: Decimal, currency: &str) -> String {
        let coin = decimals(currency);
        let scale = amount.normalize().scale();
        if scale <= coin {
            return self.money(amount, currency);
        }
        let digits = self.separated(&amount.normalize().to_string());
        let coin = sign_of(currency);
        match self.language {
            Language::En if coin == currency => format!("{currency}{GAP}{digits}"),
            Language::En => format!("{coin}{digits}"),
            _ => format!("{digits}{GAP}{coin}"),
        }
    }

    /// A share as percent.
    pub(crate) fn percent(&self, share: f64) -> String {
        let places = if share > 0.0 && share < 0.0995 || share > 0.9905 && share < 1.0 { 1 } else { 0 };
        let value = self.number(100.0 * share, places);
        match self.language {
            Language::En | Language::It | Language::Pl => format!("{value}%"),
            Language::De | Language::Fr | Language::Es => format!("{value}{GAP}%"),
        }
    }

    /// A size across, without its unit.
    pub(crate) fn across(&self, mm: f64) -> String {
        match self.unit {
            LengthUnit::Mm => self.number(mm, usize::from(mm < 9.95)),
            LengthUnit::Inch => self.number(mm / MM_PER_INCH, 2),
        }
    }

    /// A depth with its doubt (twice the standard deviation), without its unit.
    pub(crate) fn depth(&self, mm: f64, sigma_mm: Option<f64>) -> String {
        let measured = usize::from(sigma_mm.is_some());
        let (per_mm, places) = match self.unit {
            LengthUnit::Mm => (1.0, 2 + measured),
            LengthUnit::Inch => (1.0 / MM_PER_INCH, 3 + measured),
        };
        let depth = self.number(mm * per_mm, places);
        let Some(sigma_mm) = sigma_mm else {
            return depth;
        };
        // A doubt that rounds to nothing is shown as one last digit: no reading is free of doubt.
        let last = if places == 3 { 1e-3 } else { 1e-4 };
        let doubt = (2.0 * sigma_mm * per_mm).max(last);
        format!("{depth}{THIN}±{THIN}{}", self.number(doubt, places))
    }

    /// Unit of sizes and depths.
    pub(crate) fn length_unit(&self) -> &'static str {
        match self.unit {
            LengthUnit::Mm => "mm",
            LengthUnit::Inch => "in",
        }
    }

    /// Unit of small heights, mm: a micrometre or a thousandth of an inch.
    pub(crate) fn height_unit_mm(&self) -> f64 {
        match self.unit {
            LengthUnit::Mm => 1e-3,
            LengthUnit::Inch => 1e-3 * MM_PER_INCH,
        }
    }

    /// A small height in µm or mil, with its unit; two digits at least where it is not whole.
    pub(crate) fn height(&self, mm: f64) -> String {
        let unit = match self.unit {
            LengthUnit::Mm => "µm",
            LengthUnit::Inch => "mil",
        };
        let value = mm / self.height_unit_mm();
        let whole = (value - value.round()).abs() < 1e-6;
        let places = match value.abs() {
            _ if whole => 0,
            small if small < 1.0 => 2,
            middle if middle < 10.0 => 1,
            _ => 0,
        };
        format!("{}{GAP}{unit}", self.number(value, places))
    }

    /// A date: `25 November 2026`, `25. November 2026`.
    pub(crate) fn date(&self, date: Date, words: &Words) -> Result<String, ReportError> {
        let month = words.say(&format!("month-{}", date.month()))?;
        let day = date.day().to_string();
        words.fill("date", &[("day", &day), ("month", &month), ("year", &date.year().to_string())])
    }

    /// `1234567.8` with the language's separators and a true minus.
    fn separated(&self, plain: &str) -> String {
        let (thousand, point) = match self.language {
            Language::En => (',', '.'),
            Language::De | Language::It | Language::Es => ('.', ','),
            Language::Fr => (THIN, ','),
            Language::Pl => (GAP, ','),
        };
        let digits = plain.trim_start_matches('-');
        let (whole, fraction) = digits.split_once('.').unwrap_or((digits, ""));
        let zero = digits.bytes().all(|byte| matches!(byte, b'0' | b'.'));
        let mut text = String::new();
        if plain.starts_with('-') && !zero {
            text.push(MINUS);
        }
        for (index, digit) in whole.chars().enumerate() {
            if index > 0 && (whole.len() - index).is_multiple_of(3) {
                text.push(thousand);
            }
            text.push(digit);
        }
        if !fraction.is_empty() {
            text.push(point);
            text.push_str(fraction);
        }
        text
    }
}

fn sign_of(currency: &str) -> &str {
    match currency {
        "EUR" => "€",
        "USD" => "$",
        "GBP" => "£",
        "JPY" => "¥",
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const EN: Format = Format { language: Language::En, unit: LengthUnit::Mm };
    const DE: Format = Format { language: Language::De, unit: LengthUnit::Mm };
    const INCH: Format = Format { language: Language::En, unit: LengthUnit::Inch };

    fn money(format: &Format, amount: &str, currency: &str) -> String {
        format.money(amount.parse().unwrap(), currency)
    }

    #[test]
    fn money_is_written_as_the_language_does() {
        assert_eq!(money(&EN, "1234.56", "EUR"), "€1,234.56");
        assert_eq!(money(&DE, "1234.56", "EUR"), "1.234,56\u{a0}€");
        assert_eq!(money(&EN, "-14.5", "GBP"), "−£14.50");
        assert_eq!(money(&DE, "1234567", "CHF"), "1.234.567,00\u{a0}CHF");
        assert_eq!(money(&EN, "999.5", "JPY"), "¥1,000");
        assert_eq!(money(&EN, "-0.00", "EUR"), "€0.00");
    }

    #[test]
    fn other_languages_separate_as_they_do() {
        let of = |language| Format { language, unit: LengthUnit::Mm };
        assert_eq!(money(&of(Language::Fr), "1234567.5", "EUR"), "1\u{202f}234\u{202f}567,50\u{a0}€");
        assert_eq!(money(&of(Language::It), "1234.5", "EUR"), "1.234,50\u{a0}€");
        assert_eq!(money(&of(Language::Es), "1234.5", "EUR"), "1.234,50\u{a0}€");
        assert_eq!(money(&of(Language::Pl), "1234.5", "PLN"), "1\u{a0}234,50\u{a0}PLN");
        assert_eq!(EN.money_exact("1.355".parse().unwrap(), "EUR"), "€1.355");
        assert_eq!(EN.money_exact("95.0".parse().unwrap(), "EUR"), "€95.00");
    }

    #[test]
    fn depth_carries_its_doubt() {
        assert_eq!(EN.depth(0.3124, Some(0.0019)), "0.312\u{202f}±\u{202f}0.004");
        assert_eq!(DE.depth(0.3124, None), "0,31");
        assert_eq!(EN.depth(-0.02, Some(0.0)), "−0.020\u{202f}±\u{202f}0.001");
        assert_eq!(INCH.depth(2.54, Some(0.0254)), "0.1000\u{202f}±\u{202f}0.0020");
    }

    #[test]
    fn units() {
        assert_eq!(EN.across(24.6) + EN.length_unit(), "25mm");
        assert_eq!(INCH.across(25.4) + INCH.length_unit(), "1.00in");
        assert_eq!(EN.height(0.005), "5\u{a0}µm");
        assert_eq!(INCH.height(0.0254), "1\u{a0}mil");
        assert_eq!(DE.percent(0.987), "99\u{a0}%");
        assert_eq!(EN.percent(0.004), "0.4%");
        assert_eq!(EN.number(f64::NAN, 1), "–");
    }
}
