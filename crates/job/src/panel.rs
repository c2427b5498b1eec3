//! Panels of a car by the codes that every part of the program uses.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// An outer panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the codes")]
pub enum Panel {
    Bonnet,
    Roof,
    BootLid,
    Tailgate,
    FrontWingLeft,
    FrontWingRight,
    RearWingLeft,
    RearWingRight,
    FrontDoorLeft,
    FrontDoorRight,
    RearDoorLeft,
    RearDoorRight,
    RoofRailLeft,
    RoofRailRight,
    FrontBumper,
    RearBumper,
    SillLeft,
    SillRight,
    FuelFlap,
}

/// A text that is no panel's code.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0:?} is no panel")]
pub struct NoSuchPanel(pub String);

impl Panel {
    /// All panels.
    pub const ALL: [Self; 19] = [
        Self::Bonnet,
        Self::Roof,
        Self::BootLid,
        Self::Tailgate,
        Self::FrontWingLeft,
        Self::FrontWingRight,
        Self::RearWingLeft,
        Self::RearWingRight,
        Self::FrontDoorLeft,
        Self::FrontDoorRight,
        Self::RearDoorLeft,
        Self::RearDoorRight,
        Self::RoofRailLeft,
        Self::RoofRailRight,
        Self::FrontBumper,
        Self::RearBumper,
        Self::SillLeft,
        Self::SillRight,
        Self::FuelFlap,
    ];

    /// Its code, such as `front_door_left`.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::Bonnet => "bonnet",
            Self::Roof => "roof",
            Self::BootLid => "boot_lid",
            Self::Tailgate => "tailgate",
            Self::FrontWingLeft => "front_wing_left",
            Self::FrontWingRight => "front_wing_right",
            Self::RearWingLeft => "rear_wing_left",
            Self::RearWingRight => "rear_wing_right",
            Self::FrontDoorLeft => "front_door_left",
            Self::FrontDoorRight => "front_door_right",
            Self::RearDoorLeft => "rear_door_left",
            Self::RearDoorRight => "rear_door_right",
            Self::RoofRailLeft => "roof_rail_left",
            Self::RoofRailRight => "roof_rail_right",
            Self::FrontBumper => "front_bumper",
            Self::RearBumper => "rear_bumper",
            Self::SillLeft => "sill_left",
            Self::SillRight => "sill_right",
            Self::FuelFlap => "fuel_flap",
        }
    }

    /// Any of the four doors.
    #[must_use]
    pub fn is_door(self) -> bool {
        matches!(self, Self::FrontDoorLeft | Self::FrontDoorRight | Self::RearDoorLeft | Self::RearDoorRight)
    }

    /// The roof or a rail beside it.
    #[must_use]
    pub fn is_roof_or_rail(self) -> bool {
        matches!(self, Self::Roof | Self::RoofRailLeft | Self::RoofRailRight)
    }

    /// A lid that struts may hold up.
    #[must_use]
    pub fn is_lid(self) -> bool {
        matches!(self, Self::Bonnet | Self::BootLid | Self::Tailgate)
    }

    /// A bumper.
    #[must_use]
    pub fn is_bumper(self) -> bool {
        matches!(self, Self::FrontBumper | Self::RearBumper)
    }

    /// A sill, or a rear wing beside the seat's belt.
    #[must_use]
    pub fn is_sill_or_rear_wing(self) -> bool {
        matches!(self, Self::SillLeft | Self::SillRight | Self::RearWingLeft | Self::RearWingRight)
    }
}

impl fmt::Display for Panel {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl FromStr for Panel {
    type Err = NoSuchPanel;

    fn from_str(text: &str) -> Result<Self, NoSuchPanel> {
        Self::ALL.into_iter().find(|panel| panel.code() == text).ok_or_else(|| NoSuchPanel(text.to_owned()))
    }
}
