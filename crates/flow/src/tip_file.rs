//! A tip that was found, as files: `tip.json` and the marked photo `tip.jpg`.

use crate::picture::colour_of;
use crate::tip::Tip;
use crate::write::{WriteError, put};
use image::{Rgb, RgbImage};
use nalgebra::{Matrix2, Vector2};
use serde::{Deserialize, Serialize};
use std::path::Path;

/// What is told of a tip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct TipFile {
    /// In which frame places are told.
    pub frame: TipFrame,
    /// Where the tip stands, mm.
    pub place_mm: [f64; 2],
    /// One-sigma doubt along x and y, mm.
    pub sigma_mm: [f64; 2],
    /// One-sigma doubt in the direction where it is largest, mm.
    pub largest_sigma_mm: f64,
    /// The same place in the photo before, px.
    pub at_px: Option<[f64; 2]>,
    /// How far the lines moved beside the tip, in their spacing.
    pub lines_moved: f64,
    /// One-sigma of that.
    pub lines_moved_sigma: f64,
    /// From the tip to where the lines moved most, mm.
    pub width_mm: f64,
    /// Against the aim.
    pub aim: Option<AimFacts>,
    /// How far the camera moved between the photos, px; undone.
    pub camera_moved_px: f64,
    /// Tags that tell the frame.
    pub tags: Vec<TipTag>,
    /// Names of the two photos.
    pub photos: [String; 2],
    /// Version of the program.
    pub version: String,
}

/// A tag of the panel, by its centre.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[allow(missing_docs)]
pub struct TipTag {
    pub id: usize,
    pub x_mm: f64,
    pub y_mm: f64,
}

/// The frame of a tip's place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TipFrame {
    /// That of a reading.
    Reading,
    /// Laid through the tags: origin in their middle, x to the photo's right, y up; the panel is taken for flat.
    Tags,
}

/// A tip against its aim.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct AimFacts {
    /// The aim, mm.
    pub aim_mm: [f64; 2],
    /// The aim in the photo before, px.
    pub at_px: Option<[f64; 2]>,
    /// From the aim to the tip, mm.
    pub off_mm: [f64; 2],
    /// How far that is, mm.
    pub distance_mm: f64,
    /// One-sigma of that distance, mm.
    pub sigma_mm: f64,
    /// Direction from the aim to the tip, degrees counter-clockwise from x.
    pub direction_deg: f64,
}

impl AimFacts {
    pub(crate) fn of(aim_mm: [f64; 2], tip: Vector2<f64>, covariance: &Matrix2<f64>, at_px: Option<[f64; 2]>) -> Self {
        let off = tip - Vector2::from(aim_mm);
        let distance_mm = off.norm();
        // On the aim itself every direction is as good: the largest doubt stands for all.
        let sigma_mm = match off.try_normalize(1e-9) {
            Some(along) => along.dot(&(covariance * along)).sqrt(),
            None => covariance.symmetric_eigenvalues().max().sqrt(),
        };
        Self {
            aim_mm,
            at_px,
            off_mm: off.into(),
            distance_mm,
            sigma_mm,
            direction_deg: off.y.atan2(off.x).to_degrees(),
        }
    }
}

const TIP_INK: Rgb<u8> = Rgb([255, 240, 90]);
const AIM_INK: Rgb<u8> = Rgb([120, 220, 255]);
/// Share of a colour laid over the photo.
const TINT: f64 = 0.45;

impl Tip {
    /// The loaded photo as JPEG: where the lines moved to either side in two colours, a ring on the tip as wide as its
    /// doubt (two sigmas), a cross on the aim.
    ///
    /// # Errors
    /// A picture that cannot be encoded.
    pub fn picture(&self) -> Result<Vec<u8>, WriteError> {
        let (width, height) = (self.photo.width as u32, self.photo.height as u32);
        let most = self.file.lines_moved * std::f64::consts::TAU;
        let middle = self.middle();
        let mut picture = RgbImage::from_fn(width, height, |x, y| {
            let i = (y * width + x) as usize;
            let (grey, change) = (f64::from(self.photo.grey[i]), f64::from(self.lines.change[i]));
            let share = if change.is_finite() { TINT * ((change - middle).abs() / most).min(1.0) } else { 0.0 };
            let colour = colour_of((change - middle).signum());
            Rgb(colour.map(|c| (grey * (1.0 - share) + f64::from(c) * share) as u8))
        });
        let thick = f64::from(width.max(height)) / 800.0;
        if let Some(tip) = self.file.at_px {
            let radius = (2.0 * self.file.largest_sigma_mm / self.mm_per_px).max(6.0 * thick);
            ring(&mut picture, tip, radius, thick, TIP_INK);
            ring(&mut picture, tip, 0.0, 2.0 * thick, TIP_INK);
        }
        if let Some(aim) = self.file.aim.as_ref().and_then(|a| a.at_px) {
            for k in -10..=10 {
                let d = f64::from(k) * thick;
                ring(&mut picture, [aim[0] + d, aim[1]], 0.0, thick, AIM_INK);
                ring(&mut picture, [aim[0], aim[1] + d], 0.0, thick, AIM_INK);
            }
        }
        let mut bytes = std::io::Cursor::new(Vec::new());
        let written = picture.write_to(&mut bytes, image::ImageFormat::Jpeg);
        written.map_err(|e| WriteError::Encode(e.to_string()))?;
        Ok(bytes.into_inner())
    }

    /// What all lines moved, rad.
    fn middle(&self) -> f64 {
        let mut all: Vec<f32> = self.lines.change.iter().step_by(31).copied().filter(|c| c.is_finite()).collect();
        let at = all.len() / 2;
        if all.is_empty() { 0.0 } else { f64::from(*all.select_nth_unstable_by(at, f32::total_cmp).1) }
    }
}

/// A ring, or with no radius a dot.
fn ring(picture: &mut RgbImage, at: [f64; 2], radius: f64, thick: f64, ink: Rgb<u8>) {
    let reach = radius + thick;
    let range = |v: f64, n: u32| (v - reach).max(0.0) as u32..((v + reach + 1.0).max(0.0) as u32).min(n);
    for y in range(at[1], picture.height()) {
        for x in range(at[0], picture.width()) {
            let off = (f64::from(x) + 0.5 - at[0]).hypot(f64::from(y) + 0.5 - at[1]);
            if (off - radius).abs() <= thick {
                picture.put_pixel(x, y, ink);
            }
        }
    }
}

/// Writes `tip.json` and `tip.jpg` into a folder.
///
/// # Errors
/// A disk that says no.
pub fn write_tip(tip: &Tip, dir: &Path) -> Result<(), WriteError> {
    let json = serde_json::to_vec_pretty(&tip.file).map_err(|e| WriteError::Encode(e.to_string()))?;
    put(&[("tip.json", json), ("tip.jpg", tip.picture()?)], dir)
}
