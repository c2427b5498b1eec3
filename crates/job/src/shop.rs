//! The shop: its head on papers, its rates, its units.

use dentwright_surface::FinishLimit;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// The shop and what it has chosen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Shop {
    /// Its name.
    pub name: String,
    /// Street and town.
    pub address: String,
    /// Telephone.
    pub phone: String,
    /// Mail address.
    pub email: String,
    /// Tax number.
    pub tax_id: String,
    /// ISO 4217 code of the currency.
    pub currency: String,
    /// Price of an hour, without tax.
    pub hourly_rate: Decimal,
    /// Tax, %.
    pub tax_percent: Decimal,
    /// Language of app and papers.
    pub language: Language,
    /// Unit of length on screen and paper.
    pub length_unit: LengthUnit,
    /// Unit of temperature on screen and paper.
    pub temperature_unit: TemperatureUnit,
    /// Deviation from the intended shape that still counts as done, µm.
    pub finish_limit_um: f64,
    /// Slope of that deviation that still counts as done, mrad (µm per mm).
    #[serde(default = "finish_slope_mrad")]
    #[cfg_attr(feature = "schema", schema(required))]
    pub finish_slope_mrad: f64,
    /// Waves shorter than this are texture, mm.
    #[serde(default = "finish_scale_mm")]
    #[cfg_attr(feature = "schema", schema(required))]
    pub finish_scale_mm: f64,
}

/// Language of app and papers.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Language {
    /// English.
    #[default]
    En,
    /// German.
    De,
}

/// Unit of length.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LengthUnit {
    /// Millimetres and micrometres.
    #[default]
    Mm,
    /// Inches and mils.
    Inch,
}

/// Unit of temperature.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TemperatureUnit {
    /// Degrees Celsius.
    #[default]
    C,
    /// Degrees Fahrenheit.
    F,
}

/// Why a shop's settings cannot be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ShopError {
    /// The currency is not three capital letters.
    #[error("the currency is {0:?}, but must be three capital letters such as EUR")]
    Currency(String),
    /// The rate is below zero or absurd.
    #[error("the hourly rate is {0}, but must be from 0 to 100000")]
    HourlyRate(Decimal),
    /// The tax is not a percentage.
    #[error("the tax is {0} %, but must be from 0 to 100")]
    TaxPercent(Decimal),
    /// The finish limit is no length that can be judged.
    #[error("the finish limit is {0} µm, but must be from 0.1 to 1000")]
    FinishLimit(f64),
    /// The slope is none that can be judged.
    #[error("the finish slope is {0} mrad, but must be from 0.05 to 50")]
    FinishSlope(f64),
    /// The scale is none that can be judged.
    #[error("the finish scale is {0} mm, but must be from 2 to 30")]
    FinishScale(f64),
}

/// Dearest hour that is not a slip of the pen, in any currency.
const DEAREST_HOUR: i64 = 100_000;
/// Finish limits that make sense, µm: below, paint's own texture rules; above, a dent is plain to see.
const FINISH_LIMITS_UM: std::ops::RangeInclusive<f64> = 0.1..=1000.0;
/// The same of slopes, mrad, and of the scale on which both are judged, mm: below, peel; above, whole dents.
const FINISH_SLOPES_MRAD: std::ops::RangeInclusive<f64> = 0.05..=50.0;
const FINISH_SCALES_MM: std::ops::RangeInclusive<f64> = 2.0..=30.0;

fn finish_slope_mrad() -> f64 {
    1e3 * FinishLimit::default().slope
}

fn finish_scale_mm() -> f64 {
    FinishLimit::default().scale_mm
}

impl Default for Shop {
    /// A shop without a name. The rate and the finish limit are common practice, no published source.
    fn default() -> Self {
        Self {
            name: String::new(),
            address: String::new(),
            phone: String::new(),
            email: String::new(),
            tax_id: String::new(),
            currency: "EUR".to_owned(),
            hourly_rate: Decimal::new(95_00, 2),
            tax_percent: Decimal::new(19, 0),
            language: Language::default(),
            length_unit: LengthUnit::default(),
            temperature_unit: TemperatureUnit::default(),
            finish_limit_um: 1e3 * FinishLimit::default().depth_mm,
            finish_slope_mrad: finish_slope_mrad(),
            finish_scale_mm: finish_scale_mm(),
        }
    }
}

impl Shop {
    /// What counts as done in this shop.
    #[must_use]
    pub fn finish_limit(&self) -> FinishLimit {
        FinishLimit {
            depth_mm: self.finish_limit_um / 1000.0,
            slope: self.finish_slope_mrad / 1000.0,
            scale_mm: self.finish_scale_mm,
        }
    }

    /// Checks the numbers.
    ///
    /// # Errors
    /// The first one that cannot be.
    pub fn check(&self) -> Result<(), ShopError> {
        if self.currency.len() != 3 || !self.currency.bytes().all(|b| b.is_ascii_uppercase()) {
            return Err(ShopError::Currency(self.currency.clone()));
        }
        if self.hourly_rate < Decimal::ZERO || self.hourly_rate > Decimal::from(DEAREST_HOUR) {
            return Err(ShopError::HourlyRate(self.hourly_rate));
        }
        if self.tax_percent < Decimal::ZERO || self.tax_percent > Decimal::ONE_HUNDRED {
            return Err(ShopError::TaxPercent(self.tax_percent));
        }
        if !FINISH_LIMITS_UM.contains(&self.finish_limit_um) {
            return Err(ShopError::FinishLimit(self.finish_limit_um));
        }
        if !FINISH_SLOPES_MRAD.contains(&self.finish_slope_mrad) {
            return Err(ShopError::FinishSlope(self.finish_slope_mrad));
        }
        if !FINISH_SCALES_MM.contains(&self.finish_scale_mm) {
            return Err(ShopError::FinishScale(self.finish_scale_mm));
        }
        Ok(())
    }
}
