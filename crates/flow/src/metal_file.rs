//! `metal.json`, as its own types. Every number is an estimate.

use crate::GridFacts;
use dentwright_sheet::Range;
use serde::{Deserialize, Serialize};

/// What the metal of a reading holds.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct MetalFile {
    /// `estimate`.
    pub word: String,
    /// The sheet as taken.
    pub sheet: SheetFacts,
    /// Middle of the patch in the reading's frame, mm.
    pub at_mm: [f64; 2],
    /// Half the patch, mm.
    pub half_mm: f64,
    /// Greatest deviation in the patch, in size, mm.
    pub depth_mm: f64,
    /// How far the computed shape is off the measured one, root mean square, mm.
    pub misfit_mm: f64,
    /// How far the intended shape is off the smooth one that was taken, mm; large beside a body line.
    pub intended_off_mm: f64,
    /// Where the sheet would spring back if let go, so that something round it holds it in its shape: its largest stress as
    /// a share of what it takes for good. None where it stays by itself.
    #[serde(default)]
    pub held: Option<f64>,
    /// Largest stretch of the middle, as a share.
    pub stretch: Option<Place>,
    /// Surface gained for good, mm².
    pub area_gained_mm2: f64,
    /// Largest bending strain that stays on a face.
    pub bent: Option<Place>,
    /// Where the sheet is pulled most, MPa.
    pub pulled: Option<Place>,
    /// Where it is pressed together most, MPa, negative.
    pub pressed: Option<Place>,
    /// A crown that holds the low beside it, mm.
    pub held_by_crown: Option<[f64; 2]>,
    /// Whether it pops as it is.
    pub oil_can_now: Option<OilCanFacts>,
    /// Whether it pops if brought level.
    pub oil_can_level: Option<OilCanFacts>,
    /// How far the quick answer to a move is off here.
    pub check: Option<Check>,
    /// Grid of the maps.
    pub grid: GridFacts,
    /// Version of the program.
    pub version: String,
}

/// The sheet as taken.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct SheetFacts {
    pub metal: String,
    pub says: String,
    pub source: String,
    pub thickness_mm: Range,
    pub yield_mpa: Range,
    pub kinematic_share: Range,
}

/// A number and its doubt, about two standard deviations.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct Doubtful {
    pub value: f64,
    pub doubt: f64,
}

/// A number at a place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = MetalPlace))]
pub struct Place {
    /// The number.
    pub value: Doubtful,
    /// Where, in the reading's frame, mm.
    pub at_mm: [f64; 2],
    /// How far the metal is out of place there, mm.
    pub deviation_mm: f64,
}

/// Whether the sheet pops.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct OilCanFacts {
    /// Whether it stays where it is.
    pub stable: bool,
    /// Force a mm of a light push where it is softest, N/mm.
    pub stiffness_n_per_mm: f64,
    /// Where that is, mm.
    pub softest_at_mm: [f64; 2],
    /// When it pops; none where it does not.
    pub pops: Option<Forced>,
}

/// A pop.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Forced {
    /// Force, N.
    pub force_n: Doubtful,
    /// Travel before it, mm.
    pub travel_mm: f64,
    /// Whether it then stays in its other shape.
    pub stays: bool,
}

/// A push solved in full and quickly.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = QuickCheck))]
#[allow(missing_docs)]
pub struct Check {
    pub travel_mm: f64,
    pub full_left_mm: f64,
    pub quick_left_mm: f64,
    pub full_force_n: f64,
    pub quick_force_n: f64,
}
