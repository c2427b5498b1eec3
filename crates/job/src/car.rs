//! Who brings the car, and the car.

use crate::vin::{CheckDigit, Vin};
use crate::{Panel, VinError};
use dentwright_price::Metal;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A customer. Everything may be empty: a car is taken in first, its owner's address comes later.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Customer {
    /// Name.
    pub name: String,
    /// Street and town.
    pub address: String,
    /// Telephone.
    pub phone: String,
    /// Mail address.
    pub email: String,
}

/// A car.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Car {
    /// Its number, as far as it is known.
    pub vin: Option<ChassisNumber>,
    /// Number plate.
    pub plate: String,
    /// Make.
    pub make: String,
    /// Model.
    pub model: String,
    /// Year of building.
    pub year: Option<i16>,
    /// Colour.
    pub colour: String,
    /// What is known of the paint: kind, readings, repaints.
    pub paint: String,
    /// Distance driven, km.
    pub odometer_km: Option<u32>,
    /// Whether it carries more than 60 V DC; none where nobody has looked.
    pub high_voltage: Option<bool>,
    /// Metal of the panels that somebody has looked at.
    pub metals: BTreeMap<Panel, Metal>,
}

/// The number on the car: a VIN, or what older and special vehicles carry. It warns and never blocks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum ChassisNumber {
    /// Of a VIN's form.
    Vin(Vin),
    /// Anything else, as entered.
    Other(String),
}

impl ChassisNumber {
    /// Takes a number as entered; none where nothing was.
    #[must_use]
    pub fn of(text: &str) -> Option<Self> {
        let text = text.trim();
        if text.is_empty() {
            return None;
        }
        Some(Vin::parse(text).map_or_else(|_| Self::Other(text.to_owned()), Self::Vin))
    }

    /// As written.
    #[must_use]
    pub fn as_str(&self) -> &str {
        match self {
            Self::Vin(vin) => vin.as_str(),
            Self::Other(text) => text,
        }
    }

    /// Why it is no VIN, where it is none.
    #[must_use]
    pub fn error(&self) -> Option<VinError> {
        match self {
            Self::Vin(_) => None,
            Self::Other(text) => Vin::parse(text).err(),
        }
    }

    /// What its ninth place says, where it is a VIN.
    #[must_use]
    pub fn check_digit(&self) -> Option<CheckDigit> {
        match self {
            Self::Vin(vin) => Some(vin.check_digit()),
            Self::Other(_) => None,
        }
    }
}

impl Car {
    /// Make and model in one line.
    #[must_use]
    pub fn title(&self) -> String {
        format!("{} {}", self.make, self.model).trim().to_owned()
    }

    /// Metal of a panel: as recorded, else steel, which most outer skins are.
    #[must_use]
    pub fn metal(&self, panel: Panel) -> Metal {
        self.metals.get(&panel).copied().unwrap_or(Metal::Steel)
    }
}
