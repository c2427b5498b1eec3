//! Damage that was there before: marked with the customer, signed, and no part of the work.

use crate::{At, Panel};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A mark of old damage on the car.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct OldDamage {
    /// Its id.
    pub id: Uuid,
    /// Where.
    pub panel: Panel,
    /// Where on the panel.
    pub at: At,
    /// What it is.
    pub kind: OldKind,
    /// Anything to add, as entered.
    pub note: String,
}

/// What old damage is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum OldKind {
    /// A scratch.
    Scratch,
    /// A stone's hit in the paint.
    Chip,
    /// Cracked or flaking paint.
    Crack,
    /// A dent that is not to be worked on.
    Dent,
    /// Rust.
    Rust,
    /// Broken or missing trim or glass.
    Broken,
    /// Signs of an earlier repair.
    Repaired,
}

impl OldKind {
    /// All of them.
    pub const ALL: [Self; 7] =
        [Self::Scratch, Self::Chip, Self::Crack, Self::Dent, Self::Rust, Self::Broken, Self::Repaired];

    /// Its code, by which its word is found.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::Scratch => "scratch",
            Self::Chip => "chip",
            Self::Crack => "crack",
            Self::Dent => "dent",
            Self::Rust => "rust",
            Self::Broken => "broken",
            Self::Repaired => "repaired",
        }
    }
}
