//! `reading.json`, as its own types.

use crate::gauge_file::GaugeFacts;
use crate::stand::StandFacts;
use crate::texture::TextureFacts;
use dentwright_surface::{Finish, Fold, Spot, SpotFinish};
use serde::{Deserialize, Serialize};

/// The whole file.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct ReadingFile {
    /// Centre of every panel tag, mm.
    pub panel_tags: Vec<PanelTagPlace>,
    /// Grid of the maps.
    pub grid: GridFacts,
    /// File names of the maps.
    pub maps: Maps,
    /// Lows and highs, deepest first.
    pub spots: Vec<SpotFacts>,
    /// Holes that were too steep to read, largest first; a spot names those in it by their place in this list.
    #[serde(default)]
    pub folds: Vec<Fold>,
    /// Depths that were measured by hand and joined.
    #[serde(default)]
    pub gauges: Vec<GaugeFacts>,
    /// The panel photo on which spots are laid.
    pub photo: PhotoFacts,
    /// Share of the grid that was read.
    pub read_fraction: f64,
    /// `absolute` or `relative`.
    pub scale: String,
    /// Done or not.
    pub finish: Finish,
    /// The paint's texture; none in readings made before it was told apart.
    #[serde(default)]
    pub texture: Option<TextureFacts>,
    /// What could not be read.
    pub unread: Vec<UnreadFacts>,
    /// Remarks.
    pub notes: Vec<Note>,
    /// What is known of the camera.
    pub camera: CameraFacts,
    /// Where camera and board stood; readings of early versions lack it.
    #[serde(default)]
    pub stand: Option<StandFacts>,
    /// Every photo.
    pub frames: Vec<FrameFacts>,
    /// Version of the program.
    pub version: String,
    /// Settings of the reading.
    pub settings: serde_json::Value,
}

/// Centre of a tag.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct PanelTagPlace {
    pub id: usize,
    pub x_mm: f64,
    pub y_mm: f64,
    pub z_mm: f64,
}

/// Grid of the maps; row 0 is `y0_mm`, rows go up.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct GridFacts {
    pub x0_mm: f64,
    pub y0_mm: f64,
    pub step_mm: f64,
    pub nx: usize,
    pub ny: usize,
}

/// File names.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct Maps {
    pub deviation: String,
    pub height: String,
    pub sigma: String,
    pub unread: String,
}

/// A spot and where it lies in the panel photo.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct SpotFacts {
    /// The spot itself.
    #[serde(flatten)]
    pub spot: Spot,
    /// Whether it is done; none in readings made before spots were judged one by one.
    #[serde(default)]
    pub finish: Option<SpotFinish>,
    /// Its extreme in the photo, px.
    #[cfg_attr(feature = "schema", schema(value_type = (f64, f64)))]
    pub at_px: [f64; 2],
    /// Its outline in the photo, px.
    #[cfg_attr(feature = "schema", schema(value_type = Vec<(f64, f64)>))]
    pub outline_px: Vec<[f64; 2]>,
}

/// The panel photo.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct PhotoFacts {
    pub file: String,
    pub width_px: usize,
    pub height_px: usize,
}

/// A reason for not reading, its value in the unread map, its share of the grid and what to do.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct UnreadFacts {
    pub code: String,
    pub value: u8,
    pub fraction: f64,
    pub text: String,
    pub next: String,
}

/// A remark.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct Note {
    pub code: String,
    pub text: String,
}

/// The reading camera as solved.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct CameraFacts {
    pub focal_px: f64,
    pub k1: f64,
    pub source: String,
    /// Day the lens was calibrated on, where it was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub calibrated: Option<String>,
    pub gamma: f64,
    pub corner_rms_px: f64,
    pub board_median_mm: f64,
}

/// A photo, and whether it was used.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct FrameFacts {
    pub file: String,
    pub role: String,
    pub ok: bool,
    pub note: String,
}
