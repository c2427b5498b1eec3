//! Photos of the car as it came: what should be on them.
//!
//! Common practice, no published source: four corners show every panel and the light, plate and instruments
//! tie them to the car and its day, the old damage settles who made it.

use serde::{Deserialize, Serialize};
use std::str::FromStr;

/// A place of the checklist. Damaged panels have photos of their own beside these.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Shot {
    /// The corner at the front left, with plate.
    FrontLeft,
    /// The corner at the front right.
    FrontRight,
    /// The corner at the rear right, with plate.
    RearRight,
    /// The corner at the rear left.
    RearLeft,
    /// Instruments: odometer and warning lamps.
    Instruments,
    /// The number on the car.
    Vin,
    /// Old damage.
    Old,
    /// The paint gauge on the car.
    Gauge,
}

/// A text that is no place of the checklist.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0:?} is no place of the photo checklist")]
pub struct NoSuchShot(pub String);

impl Shot {
    /// All of them, in the order in which one walks round the car.
    pub const ALL: [Self; 8] = [
        Self::FrontLeft,
        Self::FrontRight,
        Self::RearRight,
        Self::RearLeft,
        Self::Instruments,
        Self::Vin,
        Self::Old,
        Self::Gauge,
    ];

    /// Its code, by which its word is found.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::FrontLeft => "front_left",
            Self::FrontRight => "front_right",
            Self::RearRight => "rear_right",
            Self::RearLeft => "rear_left",
            Self::Instruments => "instruments",
            Self::Vin => "vin",
            Self::Old => "old",
            Self::Gauge => "gauge",
        }
    }
}

impl FromStr for Shot {
    type Err = NoSuchShot;

    fn from_str(text: &str) -> Result<Self, NoSuchShot> {
        Self::ALL.into_iter().find(|shot| shot.code() == text).ok_or_else(|| NoSuchShot(text.to_owned()))
    }
}
