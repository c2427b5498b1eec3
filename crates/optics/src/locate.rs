//! First estimate of where everything stands, from tags alone: panel plane, set-up camera, board.

use crate::capture::Capture;
use crate::homography::Homography;
use crate::pixel::{Camera, Pixel};
use crate::squared::on_plane;
use crate::tags::TagView;
use nalgebra::{Isometry3, Matrix3, Rotation3, Translation3, UnitQuaternion, Vector2, Vector3};
use thiserror::Error;

/// A tag lying on the panel.
#[derive(Debug, Clone, Copy)]
pub struct PanelTag {
    /// Number.
    pub id: usize,
    /// Centre x and y (mm) and turn (rad) in the panel frame.
    pub pose: [f64; 3],
}

/// First estimate of the scene, in a panel frame laid through the tags.
#[derive(Debug, Clone)]
pub struct Layout {
    /// Panel frame from the reading camera's frame.
    pub panel_from_camera: Isometry3<f64>,
    /// Set-up camera's frame from the panel frame.
    pub setup_from_panel: Isometry3<f64>,
    /// Panel frame from the board frame.
    pub panel_from_board: Isometry3<f64>,
    /// Tags seen from the reading position.
    pub tags: Vec<PanelTag>,
}

/// Why the poses could not be found.
#[derive(Debug, Error, Clone, PartialEq)]
pub enum LocateError {
    /// Too few of the panel's tags.
    #[error("shows {found} of the panel's tags; at least 4 are needed")]
    PanelTags {
        /// How many were found.
        found: usize,
    },
    /// Too few panel tags seen in both photos.
    #[error("shows {found} of the panel tags that the panel photo shows; at least 4 are needed")]
    SharedTags {
        /// How many were found.
        found: usize,
    },
    /// Too few of the board's tags.
    #[error("shows {found} of the board's tags; at least 3 are needed")]
    BoardTags {
        /// How many were found.
        found: usize,
    },
    /// Tags in a line or behind the camera.
    #[error("shows its tags in a line or too small to tell where they stand")]
    Degenerate,
}

/// Corners of a tag of side `size`, in its own frame, detector order.
pub fn tag_corners(size: f64) -> [Vector2<f64>; 4] {
    let h = 0.5 * size;
    [Vector2::new(h, h), Vector2::new(-h, h), Vector2::new(-h, -h), Vector2::new(h, -h)]
}

/// Lays the panel frame through the tags of the panel photo.
pub fn panel_plane(
    camera: &Camera,
    tags: &[TagView],
    size_mm: f64,
) -> Result<(Isometry3<f64>, Vec<PanelTag>), LocateError> {
    if tags.len() < 4 {
        return Err(LocateError::PanelTags { found: tags.len() });
    }
    let centres: Vec<Vector3<f64>> = tags
        .iter()
        .map(|t| {
            let pairs: Vec<_> = tag_corners(size_mm).into_iter().zip(t.corners).collect();
            plane_pose(camera, &pairs).map(|p| p.translation.vector)
        })
        .collect::<Option<_>>()
        .ok_or(LocateError::Degenerate)?;
    let panel_from_camera = plane_through(&centres, size_mm).ok_or(LocateError::Degenerate)?;
    Ok((panel_from_camera, tags_on(camera, &panel_from_camera, tags)))
}

/// How the tags of a photo lie on the panel's plane.
pub(crate) fn tags_on(camera: &Camera, panel_from_camera: &Isometry3<f64>, tags: &[TagView]) -> Vec<PanelTag> {
    let place = |p: &Pixel| on_plane(camera, panel_from_camera, p);
    let of = |t: &TagView| {
        let (c, along) = (place(&t.centre()), place(&t.corners[0]) - place(&t.corners[1]));
        PanelTag { id: t.id, pose: [c.x, c.y, along.y.atan2(along.x)] }
    };
    tags.iter().map(of).collect()
}

/// The panel frame laid through points of the camera's frame: origin in their mean, z out of their plane toward the
/// camera, x along the photo's. `None` where they lie in a line, nearer to one than `least_mm`.
pub(crate) fn plane_through(points: &[Vector3<f64>], least_mm: f64) -> Option<Isometry3<f64>> {
    let mean = points.iter().sum::<Vector3<f64>>() / points.len() as f64;
    let spread = points.iter().map(|c| (c - mean) * (c - mean).transpose()).sum::<Matrix3<f64>>();
    let eigen = spread.symmetric_eigen();
    let mut order = [0, 1, 2];
    order.sort_by(|&a, &b| eigen.eigenvalues[a].total_cmp(&eigen.eigenvalues[b]));
    if eigen.eigenvalues[order[1]] < least_mm * least_mm {
        return None;
    }
    let mut z: Vector3<f64> = eigen.eigenvectors.column(order[0]).into();
    if z.dot(&mean) > 0.0 {
        z = -z;
    }
    let x = (Vector3::x() - z * z.x).normalize();
    let y = z.cross(&x);
    let rotation = Rotation3::from_matrix_unchecked(Matrix3::from_rows(&[x.transpose(), y.transpose(), z.transpose()]));
    let rotation = UnitQuaternion::from_rotation_matrix(&rotation);
    Some(Isometry3::from_parts(Translation3::from(-(rotation * mean)), rotation))
}

/// Set-up camera and board, once the panel plane is known.
pub fn setup_and_board(
    camera: &Camera,
    views: &[TagView],
    panel_tags: &[PanelTag],
    capture: &Capture,
) -> Result<(Isometry3<f64>, Isometry3<f64>), LocateError> {
    let mut pairs = Vec::new();
    for tag in panel_tags {
        let Some(view) = views.iter().find(|v| v.id == tag.id) else { continue };
        let turn = nalgebra::Rotation2::new(tag.pose[2]);
        let corners = tag_corners(capture.panel.tag_size_mm).map(|c| turn * c + Vector2::new(tag.pose[0], tag.pose[1]));
        pairs.extend(corners.into_iter().zip(view.corners));
    }
    if pairs.len() < 16 {
        return Err(LocateError::SharedTags { found: pairs.len() / 4 });
    }
    let setup_from_panel = plane_pose(camera, &pairs).ok_or(LocateError::Degenerate)?;
    let mut board_pairs = Vec::new();
    for tag in &capture.board.tags {
        let Some(view) = views.iter().find(|v| v.id == tag.id) else { continue };
        let corners = tag_corners(tag.size_mm).map(|c| c + Vector2::new(tag.x_mm, tag.y_mm));
        board_pairs.extend(corners.into_iter().zip(view.corners));
    }
    if board_pairs.len() < 12 {
        return Err(LocateError::BoardTags { found: board_pairs.len() / 4 });
    }
    let setup_from_board = plane_pose(camera, &board_pairs).ok_or(LocateError::Degenerate)?;
    Ok((setup_from_panel, setup_from_panel.inverse() * setup_from_board))
}

/// Pose of a plane from four or more of its points: normalised direct linear transform, then the
/// rotation nearest to its first two columns (Zhang 2000, section 3.1).
pub fn plane_pose(camera: &Camera, pairs: &[(Vector2<f64>, Pixel)]) -> Option<Isometry3<f64>> {
    let on_image = |pixel: &Pixel| {
        let ray = camera.ray(pixel);
        Vector2::new(ray.x / ray.z, ray.y / ray.z)
    };
    let pairs: Vec<_> = pairs.iter().map(|(p, pixel)| (*p, on_image(pixel))).collect();
    let h = Homography::fit(&pairs)?.0;
    let columns: [Vector3<f64>; 3] = std::array::from_fn(|c| h.column(c).into());
    let size = 0.5 * (columns[0].norm() + columns[1].norm());
    if !(size > 1e-12) {
        return None;
    }
    let sign = if columns[2].z < 0.0 { -1.0 } else { 1.0 };
    let [r1, r2, t] = columns.map(|c| c * (sign / size));
    let near = Matrix3::from_columns(&[r1, r2, r1.cross(&r2)]).svd(true, true);
    let rotation = near.u? * near.v_t?;
    if rotation.determinant() < 0.0 || t.z <= 0.0 {
        return None;
    }
    let rotation = UnitQuaternion::from_rotation_matrix(&Rotation3::from_matrix_unchecked(rotation));
    Some(Isometry3::from_parts(Translation3::from(t), rotation))
}
