//! A recipe: what to photograph, how, and what goes wrong on the way. TOML, in `recipes/`.

use crate::scene::Scene;
use crate::sensor::Sensor;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A set of photos to be made.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Recipe {
    /// What it is for, one sentence.
    pub about: String,
    /// What stands where.
    pub scene: Scene,
    /// How it is photographed.
    #[serde(default)]
    pub photos: Photos,
    /// What goes wrong.
    #[serde(default)]
    pub traps: Traps,
}

/// Which photos are taken, and with what.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Photos {
    /// Photo size from the reading position, pixels.
    pub size: [usize; 2],
    /// Size of the set-up photo, pixels.
    pub setup_size: [usize; 2],
    /// Rays along each side of a pixel.
    pub rays: usize,
    /// Waves over the board's width, coarse to fine; none for a line board.
    pub u: Vec<u32>,
    /// Waves over the board's height.
    pub v: Vec<u32>,
    /// Equal steps of each wave.
    pub steps: u32,
    /// Line board: photos an axis, slid by unknown amounts between. Makes `[board] kind = "lines"`.
    pub slides: u32,
    /// Line board: how far it was slid in each photo of an axis, mm; by chance where there are none.
    pub slid_mm: Vec<f64>,
    /// Line board: one photo an axis of the standing board.
    pub stills: bool,
    /// Radiance of the board's white over that of the surroundings.
    pub board_over_room: f64,
    /// How bright the brightest of the mirror image is stored, of full scale.
    pub expose_to: f64,
    /// The sensor.
    pub sensor: Sensor,
    /// The screen's own gamma; 1 where it was linearised.
    pub screen_gamma: f64,
    /// Pitch of the screen's own pixels, mm, a sixth of it dark; 0 where they are too fine to matter.
    pub screen_pixel_mm: f64,
    /// Whether EXIF names the focal length.
    pub exif: bool,
}

impl Default for Photos {
    fn default() -> Self {
        Self {
            size: [1600, 1200],
            setup_size: [3024, 2268],
            rays: 2,
            u: vec![1, 6, 36],
            v: vec![1, 5, 20],
            steps: 4,
            slides: 0,
            slid_mm: Vec::new(),
            stills: false,
            board_over_room: 33.0,
            expose_to: 0.65,
            sensor: Sensor::default(),
            screen_gamma: 1.0,
            screen_pixel_mm: 0.0,
            exif: true,
        }
    }
}

/// Mishaps, each known to happen. Files are named as in the capture folder.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Traps {
    /// The tripod was knocked for one photo: `{file, by = [right, down] in pixels}`.
    pub nudged: Vec<Nudged>,
    /// The light in the room changed: that photo's brightness times a factor.
    pub brighter: Vec<Brighter>,
    /// A photo of the wrong step: it shows what another shows.
    pub repeats: Vec<Repeats>,
    /// A photo blurred by hand shake, Gaussian, pixels.
    pub blurred: Vec<Blurred>,
    /// Specks of dirt on the panel, 0.4 to 1.5 mm in radius.
    pub dirt: u32,
    /// True wave shifts differ from the file's by up to this share of a wave.
    pub shift_error: f64,
    /// Trim, badges, stickers: matt rectangles on the panel.
    pub stuck: Vec<Stuck>,
    /// The panel is glass or clear plastic, whose back mirrors too.
    pub back: Option<Back>,
}

/// See [`Traps::stuck`].
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stuck {
    /// Middle, panel frame, mm.
    pub at: [f64; 2],
    /// Width and height, mm.
    pub size: [f64; 2],
    /// Diffuse reflectance.
    pub grey: f64,
}

/// See [`Traps::back`]: a second mirror behind the first.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Back {
    /// Thickness of the sheet, mm; its back looks nearer by the index of refraction, 1.5.
    pub thickness_mm: f64,
    /// How much of what the front mirrors the back adds.
    pub share: f64,
    /// Curvature of the back beyond the front's, along x and y, 1/mm: none for a sheet of even thickness.
    pub bend: [f64; 2],
}

/// See [`Traps::nudged`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Nudged {
    /// Which photo.
    pub file: String,
    /// Right and down, pixels.
    pub by: [f64; 2],
}

/// See [`Traps::brighter`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Brighter {
    /// Which photo.
    pub file: String,
    /// Times.
    pub times: f64,
}

/// See [`Traps::repeats`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Repeats {
    /// Which photo.
    pub file: String,
    /// Whose picture it shows.
    pub shows: String,
}

/// See [`Traps::blurred`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Blurred {
    /// Which photo.
    pub file: String,
    /// Deviation of the blur, pixels.
    pub by_px: f64,
}

/// Why a text is no recipe.
#[derive(Debug, Error)]
pub enum RecipeError {
    /// Not TOML, or fields that are not known.
    #[error("not a recipe: {0}")]
    Toml(#[from] toml::de::Error),
    /// A mishap names a photo that is not taken.
    #[error("the recipe takes no photo {0}")]
    NoSuchPhoto(String),
}

impl Recipe {
    /// Parses a recipe.
    ///
    /// # Errors
    /// Broken TOML or unknown fields.
    pub fn parse(text: &str) -> Result<Self, RecipeError> {
        Ok(toml::from_str(text)?)
    }

    /// Smaller photos of the same scene, for quick trials: both sizes divided.
    #[must_use]
    pub fn shrunk(mut self, divisor: usize) -> Self {
        self.photos.size = self.photos.size.map(|n| n / divisor);
        self.photos.setup_size = self.photos.setup_size.map(|n| n / divisor);
        self
    }
}
