//! What a hand does to the metal.

use dentwright_sheet::{Goal, Kind, Move, Tip};
use serde::{Deserialize, Serialize};

/// A way of moving metal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Act {
    /// From behind with a tip.
    Push,
    /// From the front with a glued tab.
    Pull,
    /// From the front with a knock-down.
    Tap,
    /// From the front with a soft wide head that spreads a small high.
    Blend,
}

impl Act {
    /// +1 where metal comes outward, −1 inward.
    #[must_use]
    pub fn way(self) -> f64 {
        if matches!(self, Self::Push | Self::Pull) { 1.0 } else { -1.0 }
    }

    /// The move as the sheet's solvers take it: travel from first touch, mm.
    #[must_use]
    pub fn on_sheet(self, at: [f64; 2], tip_mm: f64, travel_mm: f64) -> Move {
        let (disc, ball) = (Tip::Disc { radius_mm: tip_mm }, Tip::Sphere { radius_mm: tip_mm });
        let (kind, tip, bonded) = match self {
            Self::Push => (Kind::Push, ball, false),
            Self::Pull => (Kind::Pull, disc, false),
            Self::Tap => (Kind::Tap, ball, false),
            Self::Blend => (Kind::Tap, disc, true),
        };
        Move { kind, at, tip, bonded, goal: Goal::Travel(travel_mm), steps: 3 }
    }
}
