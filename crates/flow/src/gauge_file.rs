//! A depth measured by hand, as it is asked and as a reading keeps it.

use crate::gauge::GaugeError;
use serde::{Deserialize, Serialize};

/// Doubt of a dial gauge held by hand, two sigma, mm: it shows hundredths, seat and hand leave a few of them. Common
/// practice, no published source.
pub const GAUGE_DOUBT_MM: f64 = 0.05;
/// Nothing deeper is a dent, mm.
const DEEPEST_MM: f64 = 50.0;
/// A doubt above this measures nothing, mm.
const WORST_DOUBT_MM: f64 = 5.0;
/// Feet nearer together or farther apart than this are a slip of the pen, mm.
const SPANS_MM: std::ops::RangeInclusive<f64> = 5.0..=1000.0;

/// A depth that was measured with a gauge or a straightedge and feeler.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct GaugeAsked {
    /// Where its tip stood, panel x, mm.
    pub x_mm: f64,
    /// Panel y, mm.
    pub y_mm: f64,
    /// What it showed, mm; negative for a low.
    pub height_mm: f64,
    /// Its doubt, two sigma, mm.
    #[serde(default = "usual_doubt")]
    pub doubt_mm: f64,
    /// Distance between its feet, mm, zeroed on a flat plate; 0 for a depth against the sound metal all round.
    #[serde(default)]
    pub span_mm: f64,
    /// How its feet stood, degrees from panel x toward y: 0 side by side, 90 one above the other.
    #[serde(default)]
    pub angle_deg: f64,
}

fn usual_doubt() -> f64 {
    GAUGE_DOUBT_MM
}

impl GaugeAsked {
    /// Whether a gauge can have shown it.
    pub(crate) fn check(&self) -> Result<(), GaugeError> {
        let Self { x_mm, y_mm, height_mm, doubt_mm, span_mm, angle_deg } = *self;
        if ![x_mm, y_mm, height_mm, doubt_mm, span_mm, angle_deg].into_iter().all(f64::is_finite) {
            return Err(GaugeError::Wrong("a number of the gauge is missing"));
        }
        if height_mm.abs() > DEEPEST_MM {
            return Err(GaugeError::Wrong("a gauge depth is at most 50 mm"));
        }
        if doubt_mm <= 0.0 || doubt_mm > WORST_DOUBT_MM {
            return Err(GaugeError::Wrong("the gauge's doubt is above 0 and at most 5 mm"));
        }
        if span_mm != 0.0 && !SPANS_MM.contains(&span_mm) {
            return Err(GaugeError::Wrong("the gauge's feet stand 5 to 1000 mm apart, or 0 for none"));
        }
        Ok(())
    }

    /// Where its feet stood, panel frame, mm.
    pub(crate) fn feet(&self) -> [(f64, f64); 2] {
        let (sin, cos) = self.angle_deg.to_radians().sin_cos();
        [0.5, -0.5].map(|side| (self.x_mm + side * self.span_mm * cos, self.y_mm + side * self.span_mm * sin))
    }
}

/// Whether a depth and the map tell the same where both do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Agreement {
    /// Within twice the doubt of both.
    Agrees,
    /// Within three times.
    Near,
    /// Farther apart: one of them is wrong.
    Disagrees,
}

impl Agreement {
    pub(crate) fn of(sigmas: f64) -> Self {
        match sigmas.abs() {
            s if s <= 2.0 => Self::Agrees,
            s if s <= 3.0 => Self::Near,
            _ => Self::Disagrees,
        }
    }
}

/// A depth in a reading.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct GaugeFacts {
    /// As it was entered.
    #[serde(flatten)]
    pub asked: GaugeAsked,
    /// What it comes to against the intended shape, mm; negative for a low.
    pub against_shape_mm: f64,
    /// One-sigma doubt of that, mm.
    pub sigma_mm: f64,
    /// The map there, mm, where it was read.
    pub map_mm: Option<f64>,
    /// Its one-sigma doubt, mm.
    pub map_sigma_mm: Option<f64>,
    /// Whether both tell the same.
    pub agrees: Option<Agreement>,
    /// Area of the hole that was filled in with it, mm².
    pub filled_mm2: Option<f64>,
}
