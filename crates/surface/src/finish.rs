//! What counts as done, and the answer whether a panel is.

use serde::{Deserialize, Serialize};

/// What counts as done.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct FinishLimit {
    /// Deviation that is still done, mm.
    pub depth_mm: f64,
    /// Slope of the deviation that is still done, mm per mm.
    pub slope: f64,
    /// Waves shorter than this are texture, mm.
    pub scale_mm: f64,
}

impl Default for FinishLimit {
    /// 10 µm, and 1 mrad: 10 µm over 10 mm. At arm's length (610 mm) a slope of 1 mrad moves a mirrored line by
    /// 1.2 mm (mirror equation), about a tenth of the pitch of an ordinary board, which is where an eye that follows
    /// the line begins to see it; common practice, no published source. Waves under 5 mm are peel.
    fn default() -> Self {
        Self { depth_mm: 0.010, slope: 0.001, scale_mm: 5.0 }
    }
}

/// The answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub enum Verdict {
    /// Every place is within the limit, doubt counted.
    #[serde(rename = "done")]
    Done,
    /// Some place is surely over it.
    #[serde(rename = "not done")]
    NotDone,
    /// The doubt straddles the limit.
    #[serde(rename = "cannot tell")]
    CannotTell,
}

/// What would settle a "cannot tell".
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SettleCode {
    /// A reading with less doubt.
    LessDoubt,
    /// Nothing: it lies at the limit. Work it once more, or take it as not done.
    AtTheLimit,
    /// A reading of what was not read.
    ReadTheRest,
    /// A reading with the board closer, since the metal is too steep there.
    Closer,
}

/// What would settle it, with the doubt it takes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Settle {
    /// Which.
    pub code: SettleCode,
    /// Panel x of the place, mm.
    pub x_mm: f64,
    /// Panel y, mm.
    pub y_mm: f64,
    /// One-sigma doubt there, mm; none for a hole.
    pub sigma_mm: Option<f64>,
    /// One-sigma doubt that would tell, mm; none for a hole.
    pub needed_sigma_mm: Option<f64>,
}

/// Verdict with its reason in plain words.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Finish {
    /// The limit of depth, mm.
    pub limit_mm: f64,
    /// The limit of slope, mm per mm; none in readings made before it was judged.
    #[serde(default)]
    pub slope_limit: Option<f64>,
    /// The scale of both, mm.
    #[serde(default)]
    pub scale_mm: Option<f64>,
    /// The answer.
    pub verdict: Verdict,
    /// Why.
    pub reason: String,
    /// Chance that nothing that was read is over the limit, 0 to 1.
    #[serde(default)]
    pub within: Option<f64>,
    /// Chance that the place most likely over the limit is over it.
    #[serde(default)]
    pub over: Option<f64>,
    /// What would settle a "cannot tell", or comes next where a hole hides the metal.
    #[serde(default)]
    pub settle: Option<Settle>,
}

/// The verdict on one spot.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct SpotFinish {
    /// The answer.
    pub verdict: Verdict,
    /// Chance that it is over the limit.
    pub over: f64,
    /// Steepest place of it at the limit's scale, mm per mm.
    pub slope: f64,
    /// One-sigma doubt of that slope.
    pub slope_sigma: f64,
    /// What would settle a "cannot tell".
    pub settle: Option<Settle>,
}

/// A place inside what was read that was not read itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hole {
    /// Panel x of its middle, mm.
    pub x_mm: f64,
    /// Panel y, mm.
    pub y_mm: f64,
    /// Area, mm².
    pub area_mm2: f64,
    /// Whether the metal there was too steep to read.
    pub steep: bool,
}
