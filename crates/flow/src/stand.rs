//! Where camera and board stood, for whoever wants to look at the panel as the camera did.

use dentwright_optics::Scene;
use nalgebra::{Point3, Vector3};
use serde::{Deserialize, Serialize};

/// Camera and board in the panel frame, mm and unit vectors.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct StandFacts {
    /// The reading camera's centre.
    pub eye_mm: [f64; 3],
    /// To the right in the photo.
    pub right: [f64; 3],
    /// Down in the photo.
    pub down: [f64; 3],
    /// Into the photo.
    pub ahead: [f64; 3],
    /// Middle of the board's lit area.
    pub board_mm: [f64; 3],
    /// To the board's right.
    pub board_u: [f64; 3],
    /// Up on the board.
    pub board_v: [f64; 3],
    /// Lit width and height.
    pub board_size_mm: [f64; 2],
}

impl StandFacts {
    /// From the solved scene and the board's size.
    pub(crate) fn of(scene: &Scene, board_size_mm: [f64; 2]) -> Self {
        let (camera, board) = (scene.layout.panel_from_camera, scene.layout.panel_from_board);
        let axis = |v: Vector3<f64>| <[f64; 3]>::from(v);
        let place = |p: Point3<f64>| [p.x, p.y, p.z];
        Self {
            eye_mm: place(camera * Point3::origin()),
            right: axis(camera * Vector3::x()),
            down: axis(camera * Vector3::y()),
            ahead: axis(camera * Vector3::z()),
            board_mm: place(board * Point3::origin()),
            board_u: axis(board * Vector3::x()),
            board_v: axis(board * Vector3::y()),
            board_size_mm,
        }
    }
}
