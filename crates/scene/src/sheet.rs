//! The camera sheet, and photos of it through a lens that is known: what a calibration is tested with.

use crate::light::Lamp;
use crate::photo::{Photo, compress};
use crate::picture::{Picture, Shown};
use crate::recipe::Recipe;
use crate::scene::{CameraPose, Sticker};
use crate::view::{Fineness, snap};
use jpeg_encoder::EncodingError;
use rayon::prelude::*;

/// Photo width and height, px.
pub const SIZE: [usize; 2] = [1280, 960];
/// Horizontal field of view, degrees.
const FOV_DEG: f64 = 62.0;
/// Radial distortion, as that of an ordinary phone.
pub const DISTORTION: [f64; 2] = [0.055, -0.075];
/// Offset of the optical axis, share of the width.
const AXIS_OFFSET: [f64; 2] = [0.0045, -0.0030];

/// Where the tags of the camera sheet lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CameraSheet {
    /// Id of the upper left tag; the others follow row by row.
    pub first: usize,
    /// Tags in a row.
    pub columns: usize,
    /// Rows.
    pub rows: usize,
    /// Side of a black square, mm.
    pub tag_mm: f64,
    /// From one tag to the next, both ways, mm.
    pub pitch_mm: f64,
}

impl CameraSheet {
    /// The one there is.
    pub const OURS: Self = Self { first: 24, columns: 8, rows: 5, tag_mm: 24.0, pitch_mm: 33.0 };
}

/// The lens behind the photos: focal length (px), and where its axis meets the photo (px).
#[must_use]
pub fn truth() -> (f64, [f64; 2]) {
    let [w, h] = SIZE.map(|n| n as f64);
    let focal_px = w / 2.0 / (FOV_DEG.to_radians() / 2.0).tan();
    (focal_px, [w / 2.0 + AXIS_OFFSET[0] * w, h / 2.0 + AXIS_OFFSET[1] * w])
}

/// Eye and up of each photo: tilted to all sides, near and far, once turned a quarter, as the how-to says.
const VIEWS: [([f64; 3], [f64; 3]); 9] = [
    ([10.0, -15.0, 300.0], [0.0, 1.0, 0.0]),
    ([-170.0, 20.0, 260.0], [0.0, 1.0, 0.0]),
    ([180.0, -10.0, 255.0], [0.05, 1.0, 0.0]),
    ([15.0, 160.0, 250.0], [0.0, 1.0, 0.1]),
    ([-20.0, -175.0, 245.0], [0.0, 1.0, 0.0]),
    ([-130.0, -120.0, 270.0], [1.0, 0.1, 0.0]),
    ([125.0, 130.0, 280.0], [-1.0, 0.1, 0.0]),
    ([60.0, -60.0, 420.0], [0.2, 1.0, 0.0]),
    ([-90.0, 100.0, 330.0], [-0.3, 1.0, 0.0]),
];

/// Nine photos of the flat sheet, with blur, noise and JPEG. About half a second each on two cores.
///
/// # Errors
/// Sizes that JPEG cannot hold.
pub fn photos() -> Result<Vec<Photo>, EncodingError> {
    let recipe = recipe();
    let stage = recipe.stage();
    let lamp = Lamp::new(&stage.shape, &stage.board, recipe.scene.w, recipe.scene.h);
    let shown = Shown::new(Picture::Tags, &recipe.scene.board);
    let glow = lamp.glow(&shown);
    let shoot = |(k, (pos, up)): (usize, &([f64; 3], [f64; 3]))| {
        let at = [pos[0] * 0.08, pos[1] * 0.08, 0.0];
        let pose = CameraPose {
            pos: *pos,
            at,
            up: *up,
            fov: FOV_DEG,
            distortion: DISTORTION,
            axis_offset: AXIS_OFFSET,
            ..recipe.scene.cam
        };
        let [width, height] = SIZE;
        let light = snap(&stage, &pose, Fineness { width, height, rays: 2 }, &shown, &glow);
        let bytes = recipe.photos.sensor.expose(&light, 0.8, k as u64);
        let jpeg = compress(&bytes, width, height, &recipe.photos.sensor, Some(26.0))?;
        Ok(Photo { file: format!("camera_{k}.jpg"), jpeg })
    };
    VIEWS.par_iter().enumerate().map(shoot).collect()
}

/// A flat, matt white sheet in an evenly lit room; the board stands far away.
fn recipe() -> Recipe {
    let text = "about = \"camera sheet\"\n[scene]\nRx = 1e12\nRy = 1e12\nw = 300.0\nh = 205.0\npaint = [0.8, 0.8, 0.8]\n\
                [scene.board]\npos = [0.0, 9000.0, 9000.0]\nat = [0.0, 0.0, 0.0]\nw = 700.0\nh = 400.0\nids = []\ntag = 60.0\n";
    let mut recipe = Recipe::parse(text).unwrap_or_else(|why| unreachable!("a text of our own: {why}"));
    let CameraSheet { first, columns, rows, tag_mm, pitch_mm } = CameraSheet::OURS;
    let sticker = |k: usize| Sticker {
        id: first + k,
        x: ((k % columns) as f64 - (columns - 1) as f64 / 2.0) * pitch_mm,
        y: ((rows - 1) as f64 / 2.0 - (k / columns) as f64) * pitch_mm,
        size: tag_mm,
        rot: 0.0,
    };
    recipe.scene.tags = (0..columns * rows).map(sticker).collect();
    recipe
}
