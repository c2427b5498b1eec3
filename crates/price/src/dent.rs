//! What is priced: one dent, or a number of dents alike.

use serde::{Deserialize, Serialize};

/// What sort of damage a dent is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A door ding: round, with a crown around it.
    Round,
    /// A hail dent: round, blunt, without stretch.
    Hail,
    /// Wide and soft, without a sharp centre.
    Soft,
    /// A sharp low, stretched at its centre.
    Sharp,
    /// A long low with a ridge on each side.
    Crease,
    /// Metal above the surface, left by earlier work or a push.
    High,
}

impl Kind {
    /// All of them; the first is compared with.
    pub const ALL: [Self; 6] = [Self::Round, Self::Hail, Self::Soft, Self::Sharp, Self::Crease, Self::High];
}

/// The metal of the outer skin.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Metal {
    /// Mild or bake-hardening steel.
    Steel,
    /// High-strength steel.
    HighStrengthSteel,
    /// Aluminium sheet.
    Aluminium,
}

impl Metal {
    /// All of them; the first is compared with.
    pub const ALL: [Self; 3] = [Self::Steel, Self::HighStrengthSteel, Self::Aluminium];
}

/// How the back of the dent is reached.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Access {
    /// Through an opening that exists.
    Open,
    /// After trim has been removed (its removal is a line of its own).
    TrimOff,
    /// Partly behind a brace.
    Braced,
    /// From the front only, by glue.
    GlueOnly,
    /// No way is known yet.
    None,
}

impl Access {
    /// All of them; the first is compared with.
    pub const ALL: [Self; 5] = [Self::Open, Self::TrimOff, Self::Braced, Self::GlueOnly, Self::None];
}

/// Where on the panel the dent lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// Away from lines and edges.
    Flat,
    /// On a body line.
    BodyLine,
    /// Within 25 mm of a folded edge.
    Edge,
    /// On a roof rail or another closed, stiff section.
    Rail,
}

impl Place {
    /// All of them; the first is compared with.
    pub const ALL: [Self; 4] = [Self::Flat, Self::BodyLine, Self::Edge, Self::Rail];
}

/// One dent, or `count` dents alike.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Dent {
    /// What sort of damage it is.
    pub kind: Kind,
    /// The longer way across, mm, over zero.
    pub length_mm: f64,
    /// The shorter way across, mm, over zero.
    pub width_mm: f64,
    /// Depth of a low, or height of a high, mm; its sign does not matter.
    pub depth_mm: f64,
    /// The metal of the panel.
    pub metal: Metal,
    /// How its back is reached.
    pub access: Access,
    /// Where on the panel it lies.
    pub place: Place,
    /// Depth over half width; worked out from the sizes where it was not measured.
    #[serde(default)]
    pub sharpness: Option<f64>,
    /// How many dents alike this stands for, 1 or more.
    #[serde(default = "one")]
    pub count: u32,
}

fn one() -> u32 {
    1
}

/// Why a dent cannot be priced.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum DentError {
    /// A size is not a number, or is not one that a panel can have.
    #[error("{field} is {value}, but must be {must}")]
    Size {
        /// The field's name.
        field: &'static str,
        /// What it holds.
        value: f64,
        /// What it may hold.
        must: &'static str,
    },
    /// The count is zero.
    #[error("the count is 0, but a line stands for at least one dent")]
    NoCount,
    /// The count is more than a car has.
    #[error("the count is {0}, but one line stands for at most 99999 dents: a slip of the finger?")]
    TooMany(u32),
}

/// No panel of a car is longer, mm.
const LONGEST_MM: f64 = 5_000.0;
/// No dent that is pushed out is deeper, mm.
const DEEPEST_MM: f64 = 500.0;
/// No car has more dents alike: a hundred times what the densest hail leaves (common practice, no published source).
const MOST_ALIKE: u32 = 99_999;

impl Dent {
    /// Checks that every size is a number that a dent can have.
    ///
    /// # Errors
    /// Names the first field that is out of its range.
    pub fn check(&self) -> Result<(), DentError> {
        for (field, value) in [("length_mm", self.length_mm), ("width_mm", self.width_mm)] {
            let must = "over 0 and at most 5000";
            within(field, value, value > 0.0 && value <= LONGEST_MM, must)?;
        }
        let depth = self.depth_mm;
        within("depth_mm", depth, depth.abs() <= DEEPEST_MM, "at most 500")?;
        if let Some(value) = self.sharpness {
            within("sharpness", value, (0.0..=100.0).contains(&value), "0 to 100")?;
        }
        if self.count == 0 {
            return Err(DentError::NoCount);
        }
        if self.count > MOST_ALIKE {
            return Err(DentError::TooMany(self.count));
        }
        Ok(())
    }

    /// Area of the ellipse that the two sizes span, mm².
    #[must_use]
    pub fn area_mm2(&self) -> f64 {
        std::f64::consts::FRAC_PI_4 * self.length_mm * self.width_mm
    }

    /// Depth over half the shorter way across, unless it was given.
    #[must_use]
    pub fn sharpness(&self) -> f64 {
        let half_width_mm = self.length_mm.min(self.width_mm) / 2.0;
        self.sharpness.unwrap_or(self.depth_mm.abs() / half_width_mm)
    }
}

fn within(field: &'static str, value: f64, good: bool, must: &'static str) -> Result<(), DentError> {
    if good { Ok(()) } else { Err(DentError::Size { field, value, must }) }
}
