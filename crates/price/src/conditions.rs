//! What is the same for all dents of a car, and changes how long they take.

use serde::{Deserialize, Serialize};

/// Paint and temperature.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Conditions {
    /// What is known of the paint.
    #[serde(default)]
    pub paint: Paint,
    /// Temperature of the panels while they are worked on, °C; none where nobody measured it, which
    /// counts as warm enough.
    #[serde(default)]
    pub panel_c: Option<f64>,
}

/// What is known of the paint, as far as it changes the time.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Paint {
    /// The maker's, in order; also where nobody has looked.
    #[default]
    Factory,
    /// Old or brittle: smaller pushes, more warming.
    Old,
    /// Painted again, so that it may lift or crack.
    Repainted,
}

impl Paint {
    /// All of them; the first is compared with.
    pub const ALL: [Self; 3] = [Self::Factory, Self::Old, Self::Repainted];
}

/// Coldest and hottest panel that anyone works on, °C.
const PANEL_C: std::ops::RangeInclusive<f64> = -30.0..=90.0;

/// A temperature that no panel has while it is worked on.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("the panels' temperature is {0} °C, but must be from -30 to 90; leave it empty where nobody measured it")]
pub struct ConditionsError(pub f64);

impl Conditions {
    /// Checks the temperature.
    ///
    /// # Errors
    /// When it is not one that people work at.
    pub fn check(&self) -> Result<(), ConditionsError> {
        match self.panel_c {
            Some(panel_c) if !PANEL_C.contains(&panel_c) => Err(ConditionsError(panel_c)),
            _ => Ok(()),
        }
    }
}
