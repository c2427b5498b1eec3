//! What stands where: the panel, its tags and dents, the cameras, the board.
//!
//! One plain description, the same that lies beside every set of photos as `truth.json`. Panel frame: x right, y up,
//! z out of the panel toward the viewer; millimetres; angles in degrees, counter-clockwise.

use crate::dent::Dent;
use crate::line::BodyLine;
use serde::{Deserialize, Serialize};

/// A panel, the board it mirrors, the cameras that see both.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scene {
    /// Width of the panel along x, mm.
    #[serde(default = "default_w")]
    pub w: f64,
    /// Height of the panel along y, mm.
    #[serde(default = "default_h")]
    pub h: f64,
    /// Grid step of the truth maps, mm (not of the traced shape, which is exact).
    #[serde(default = "default_step")]
    pub step: f64,
    /// Picks the orange peel and the sensor's noise.
    #[serde(default)]
    pub seed: u64,
    /// Picks the orange peel alone, so that one panel can be photographed twice; `seed` where absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub peel_seed: Option<u64>,
    /// Orange peel between 1 and 8 mm wavelength, rms height in mm.
    #[serde(default)]
    pub peel: f64,
    /// Radius of the panel's curvature along x, mm; positive bulges toward the viewer.
    #[serde(rename = "Rx")]
    pub rx: f64,
    /// Radius along y, mm.
    #[serde(rename = "Ry")]
    pub ry: f64,
    /// Curvature that changes along the panel: height added per mm³, `[x³, x²y, xy², y³]`.
    #[serde(default, skip_serializing_if = "is_zero4")]
    pub cubic: [f64; 4],
    /// Height added per mm⁴, `[x⁴, x²y², y⁴]`.
    #[serde(default, skip_serializing_if = "is_zero3")]
    pub quartic: [f64; 3],
    /// Diffuse reflectance of the paint under the clear coat, red, green, blue.
    pub paint: [f64; 3],
    /// Tags stuck on the panel; eight around its middle where none are said.
    #[serde(default = "default_tags")]
    pub tags: Vec<Sticker>,
    /// The reading position.
    #[serde(default = "default_cam")]
    pub cam: CameraPose,
    /// The set-up photo's position.
    #[serde(default = "default_setup_cam")]
    pub setup_cam: CameraPose,
    /// The lit board.
    #[serde(default = "default_board")]
    pub board: BoardPose,
    /// Damage.
    #[serde(default)]
    pub dents: Vec<Dent>,
    /// Pressed lines of the panel.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub bodylines: Vec<BodyLine>,
}

/// A tag36h11 sticker on the panel.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sticker {
    /// Number of the tag.
    pub id: usize,
    /// Centre, panel frame, mm.
    pub x: f64,
    /// Centre, panel frame, mm.
    pub y: f64,
    /// Side of the black square, mm.
    pub size: f64,
    /// Turn, degrees.
    #[serde(default)]
    pub rot: f64,
}

/// Where a camera stands and what it looks at, panel frame.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CameraPose {
    /// Centre of the lens, mm.
    pub pos: [f64; 3],
    /// A point on the optical axis, mm.
    pub at: [f64; 3],
    /// A direction that is up in the photo.
    #[serde(default = "default_up")]
    pub up: [f64; 3],
    /// Horizontal field of view, degrees.
    pub fov: f64,
    /// Radius of the lens opening, mm.
    #[serde(default = "default_aperture")]
    pub aperture: f64,
    /// Distance that is sharp, mm; the distance to `at` where absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub focus: Option<f64>,
    /// Radial distortion of second and fourth order, in units of the focal length.
    #[serde(default, skip_serializing_if = "is_zero2")]
    pub distortion: [f64; 2],
    /// Offset of the optical axis from the photo's middle, share of the width, right and down.
    #[serde(default, skip_serializing_if = "is_zero2")]
    pub axis_offset: [f64; 2],
}

/// The lit board: where its middle is and what it faces, panel frame.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoardPose {
    /// Middle of the lit area, mm.
    pub pos: [f64; 3],
    /// A point straight in front of it, mm.
    pub at: [f64; 3],
    /// A direction that is up on the board.
    #[serde(default = "default_up")]
    pub up: [f64; 3],
    /// Lit width, mm.
    pub w: f64,
    /// Lit height, mm.
    pub h: f64,
    /// Tags at the corners: top left, top right, bottom right, bottom left.
    pub ids: Vec<usize>,
    /// Side of a board tag's black square, mm.
    pub tag: f64,
    /// One black and one white line together, mm.
    #[serde(default = "default_pitch")]
    pub pitch: f64,
}

impl BoardPose {
    /// Centres of the corner tags in the board's frame, with their numbers: `(id, u, v)` in mm.
    /// Each lies a quarter of its side away from the board's edges.
    #[must_use]
    pub fn tag_centres(&self) -> Vec<(usize, f64, f64)> {
        let u = self.w / 2.0 - 0.75 * self.tag;
        let v = self.h / 2.0 - 0.75 * self.tag;
        let corners = [(-u, v), (u, v), (u, -v), (-u, -v)];
        self.ids.iter().copied().zip(corners).map(|(id, (u, v))| (id, u, v)).collect()
    }
}

/// Eight tags of 22 mm around a panel of 340 by 260 mm.
fn default_tags() -> Vec<Sticker> {
    let places = [
        [-135.0, -95.0, 3.0],
        [0.0, -100.0, -4.0],
        [135.0, -92.0, 8.0],
        [-140.0, 10.0, 90.0],
        [142.0, 5.0, -85.0],
        [-130.0, 98.0, 5.0],
        [5.0, 102.0, 0.0],
        [132.0, 95.0, -6.0],
    ];
    let sticker = |(id, [x, y, rot]): (usize, [f64; 3])| Sticker { id, x, y, size: 22.0, rot };
    places.into_iter().enumerate().map(sticker).collect()
}
/// Looking slightly up at the panel from 70 cm.
fn default_cam() -> CameraPose {
    let (up, aperture) = (default_up(), default_aperture());
    let (pos, at) = ([20.0, -270.0, 640.0], [0.0; 3]);
    CameraPose { pos, at, up, fov: 34.0, aperture, focus: None, distortion: [0.0; 2], axis_offset: [0.0; 2] }
}
/// From the left, panel and board both in sight.
fn default_setup_cam() -> CameraPose {
    let (pos, at) = ([-880.0, -260.0, 430.0], [-70.0, 200.0, 280.0]);
    CameraPose { pos, at, fov: 66.0, aperture: 0.6, ..default_cam() }
}
/// A 32-inch screen above the camera.
fn default_board() -> BoardPose {
    let (pos, at, up) = ([0.0, 270.0, 520.0], [0.0, 10.0, 0.0], default_up());
    BoardPose { pos, at, up, w: 708.0, h: 398.0, ids: vec![20, 21, 22, 23], tag: 60.0, pitch: default_pitch() }
}
fn default_w() -> f64 {
    340.0
}
fn default_h() -> f64 {
    260.0
}
fn default_step() -> f64 {
    0.5
}
fn default_up() -> [f64; 3] {
    [0.0, 1.0, 0.0]
}
/// A phone's lens: about 6 mm focal length at f/1.8 opens 1.7 mm.
fn default_aperture() -> f64 {
    0.85
}
fn default_pitch() -> f64 {
    14.0
}
fn is_zero2(v: &[f64; 2]) -> bool {
    v == &[0.0; 2]
}
fn is_zero3(v: &[f64; 3]) -> bool {
    v == &[0.0; 3]
}
fn is_zero4(v: &[f64; 4]) -> bool {
    v == &[0.0; 4]
}
