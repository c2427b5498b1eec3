//! What a country's law and custom put on a paper, from `countries/*.toml`. No legal advice.

use crate::{Language, Paper};
use jiff::civil::Date;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// A country's pack. Every one says of itself that it is no legal advice.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Country {
    /// ISO 3166-1 alpha-2.
    pub code: String,
    /// Its name, in its own language.
    pub name: String,
    /// That it is no legal advice.
    pub notice: String,
    /// Day its values were last looked at.
    #[cfg_attr(feature = "schema", schema(value_type = String))]
    pub checked: Date,
    /// ISO 4217.
    pub currency: String,
    /// Size of the sheet.
    pub paper: Paper,
    /// Smallest step that cash is paid in.
    pub cash_step: Decimal,
    /// Whether e-invoices by EN 16931 are usual.
    pub e_invoice: bool,
    /// Its taxes.
    pub tax: CountryTaxes,
    /// Right to cancel.
    pub cancellation: CancellationRight,
    /// How long invoices are kept.
    pub keep: KeepingTime,
    /// Workmanship.
    pub warranty: WarrantyTime,
    /// Coins to measure with, smallest first.
    pub coins: Vec<Coin>,
    /// Where the coins' sizes come from.
    pub coins_source: String,
    /// Lines that belong on papers, by language; `en` is always there.
    pub lines: BTreeMap<String, Lines>,
}

/// Taxes on sales.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CountryTaxes {
    /// What the tax is called, by language.
    pub name: BTreeMap<String, String>,
    /// Rates, the usual one first.
    pub rates: Vec<CountryRate>,
    /// Where tax is rounded: `invoice`, once for each rate, or `line`.
    pub rounding: String,
}

/// A rate of tax.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CountryRate {
    /// Its name in the pack, such as `standard`.
    pub code: String,
    /// %.
    pub percent: Decimal,
    /// Since when, where that is known.
    #[cfg_attr(feature = "schema", schema(value_type = Option<String>))]
    pub since: Option<Date>,
    /// Where it comes from, or that it is from memory.
    pub source: String,
}

/// A consumer's right to cancel what was agreed away from the shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CancellationRight {
    /// Days to do so.
    pub days: u32,
    /// Business days (true) or days of the calendar.
    pub business_days: bool,
    /// Where it comes from.
    pub source: String,
}

/// How long tax law wants invoices kept.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct KeepingTime {
    /// Whole years after the one in which they were issued.
    pub years: u32,
    /// Where it comes from.
    pub source: String,
}

/// How long the shop stands in for its work.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct WarrantyTime {
    /// Months.
    pub months: u32,
    /// Where it comes from.
    pub source: String,
}

/// A coin to measure dents with.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Coin {
    /// Its name.
    pub name: String,
    /// Diameter, mm.
    pub mm: Decimal,
}

/// Lines of one language.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Lines {
    /// Under an authorisation.
    #[serde(default)]
    pub consent: Vec<String>,
    /// Under a warranty.
    #[serde(default)]
    pub warranty: Vec<String>,
    /// Under a cancellation notice.
    #[serde(default)]
    pub cancellation: Vec<String>,
    /// Under an invoice.
    #[serde(default)]
    pub invoice: Vec<String>,
}

const FILES: [&str; 9] = [
    include_str!("../../countries/us.toml"),
    include_str!("../../countries/gb.toml"),
    include_str!("../../countries/de.toml"),
    include_str!("../../countries/at.toml"),
    include_str!("../../countries/ch.toml"),
    include_str!("../../countries/fr.toml"),
    include_str!("../../countries/it.toml"),
    include_str!("../../countries/es.toml"),
    include_str!("../../countries/pl.toml"),
];

static COUNTRIES: LazyLock<Vec<Country>> = LazyLock::new(|| {
    let read = |text: &&str| toml::from_str(text).expect("the packs are our own and read by the tests");
    FILES.iter().map(read).collect()
});

/// All countries that have a pack.
#[must_use]
pub fn countries() -> &'static [Country] {
    &COUNTRIES
}

/// A country's pack; none where there is none under this code.
///
/// ```
/// use dentwright_report::country;
/// assert_eq!(country("CH").unwrap().currency, "CHF");
/// assert!(country("XX").is_none());
/// ```
#[must_use]
pub fn country(code: &str) -> Option<&'static Country> {
    countries().iter().find(|country| country.code == code)
}

impl Country {
    /// Its lines in a language, or in English.
    #[must_use]
    pub fn lines(&self, language: Language) -> &Lines {
        static NONE: LazyLock<Lines> = LazyLock::new(Lines::default);
        self.lines.get(language.code()).or_else(|| self.lines.get("en")).unwrap_or(&NONE)
    }

    /// What its tax is called in a language, or in English.
    #[must_use]
    pub fn tax_name(&self, language: Language) -> &str {
        let names = &self.tax.name;
        names.get(language.code()).or_else(|| names.get("en")).map_or("", String::as_str)
    }

    /// The rate that most work has, %; zero where the country has none of its own.
    #[must_use]
    pub fn usual_rate(&self) -> Decimal {
        self.tax.rates.first().map_or(Decimal::ZERO, |rate| rate.percent)
    }
}
