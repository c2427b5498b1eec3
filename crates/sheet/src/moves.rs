//! A push, press, pull or tap: what is asked and what came of it.

use crate::tip::Tip;
use serde::{Deserialize, Serialize};

/// Kind of move.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = MoveKind))]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// From outside, inward.
    Press,
    /// From inside, outward.
    Push,
    /// Outward, by a tab glued on.
    Pull,
    /// A blow from outside, taken as a slow press: the sheet's own inertia and the metal's dislike of haste are left out.
    Tap,
}

impl Kind {
    /// −1 inward, +1 outward.
    pub fn way(self) -> f64 {
        match self {
            Self::Press | Self::Tap => -1.0,
            Self::Push | Self::Pull => 1.0,
        }
    }
}

/// How far a move goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Goal {
    /// Where the tip stands at the end, from the unloaded intended surface, outward positive, mm.
    To(f64),
    /// Travel from first touch, mm.
    Travel(f64),
    /// Force, N.
    Force(f64),
}

/// A move.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// Kind.
    pub kind: Kind,
    /// Place, mm.
    pub at: [f64; 2],
    /// What touches.
    pub tip: Tip,
    /// Even pressure over what the tip covers instead of a rigid tip.
    pub bonded: bool,
    /// How far.
    pub goal: Goal,
    /// Steps on the way there.
    pub steps: usize,
}

impl Move {
    /// Whether the tip presses evenly: bonded, glued, or a single point.
    pub fn even(&self) -> bool {
        self.bonded || self.kind == Kind::Pull || self.tip == Tip::Point
    }
}

/// What came of a move. Heights are deviations from the intended surface, outward positive, mm.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Outcome {
    /// Largest force, N.
    pub peak_force_n: f64,
    /// `[travel, force]`, mm and N, from first touch while loading and unloading.
    pub curve: Vec<[f64; 2]>,
    /// Under the tip's centre, while held.
    pub at_tip_held_mm: f64,
    /// There, after unloading.
    pub at_tip_left_mm: f64,
    /// Highest place left.
    pub highest_left_mm: f64,
    /// Where it is.
    pub highest_at_mm: [f64; 2],
    /// Lowest place left.
    pub lowest_left_mm: f64,
    /// Where it is.
    pub lowest_at_mm: [f64; 2],
    /// What came back under the tip when let go: held less left, in size.
    pub springback_mm: f64,
    /// Largest equivalent plastic strain so far, any layer.
    pub max_plastic_strain: f64,
    /// Largest principal strain of the sheet's middle, left.
    pub max_membrane_strain: f64,
    /// The same while held.
    pub max_membrane_strain_held: f64,
    /// Largest equivalent plastic strain this move added, any layer.
    pub plastic_strain_spent: f64,
    /// Travels at which the sheet snapped to another shape, mm; what it passed on the way is not known.
    pub snapped_at_mm: Vec<f64>,
    /// Newton steps.
    pub iterations: usize,
    /// Time, s.
    pub seconds: f64,
    /// Whether every shape asked for was found in balance, unloading included.
    pub converged: bool,
    /// Where it stopped and why, when it did.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stopped: Option<String>,
}
