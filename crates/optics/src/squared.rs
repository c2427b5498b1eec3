//! The plane on which all tags of a photo are squares of their size.
//!
//! Laid through the distances of single tags the plane is tilted by a few degrees; here all corners tell it together,
//! by how much the squares are foreshortened and by how their size falls off: to a few tenths of a degree.

use crate::locate::{LocateError, PanelTag, panel_plane, plane_through, tags_on};
use crate::pixel::{Camera, Pixel, isometry};
use crate::tags::TagView;
use nalgebra::{Isometry3, Matrix3, Point3, Vector2, Vector3};

/// Gauss and Newton's steps.
const STEPS: usize = 8;
/// For derivatives: rad, mm.
const SMALL: f64 = 1e-5;

/// As [`panel_plane`], then tilted and shifted until the tags are square.
///
/// # Errors
/// As [`panel_plane`].
pub fn squared_plane(
    camera: &Camera,
    tags: &[TagView],
    size_mm: f64,
) -> Result<(Isometry3<f64>, Vec<PanelTag>), LocateError> {
    let (mut plane, _) = panel_plane(camera, tags, size_mm)?;
    let misses = |plane: &Isometry3<f64>| tags.iter().flat_map(|t| miss(camera, plane, t, size_mm)).collect::<Vec<_>>();
    for _ in 0..STEPS {
        let here = misses(&plane);
        let moved =
            |k: usize| isometry(&[0.0, 0.0, f64::from(u8::from(k == 2)) * SMALL, along(k, 0), along(k, 1), 0.0]);
        let by: [Vec<f64>; 3] = std::array::from_fn(|k| misses(&(moved(k) * plane)));
        let (mut normal, mut right) = (Matrix3::zeros(), Vector3::zeros());
        for (i, miss) in here.iter().enumerate() {
            let row = Vector3::from_fn(|k, _| (by[k][i] - miss) / SMALL);
            normal += row * row.transpose();
            right -= row * *miss;
        }
        let step = normal.cholesky().ok_or(LocateError::Degenerate)?.solve(&right);
        plane = isometry(&[0.0, 0.0, step[2], step[0], step[1], 0.0]) * plane;
    }
    let centres: Vec<Vector3<f64>> = tags
        .iter()
        .map(|t| {
            let on = on_plane(camera, &plane, &t.centre());
            (plane.inverse() * Point3::new(on.x, on.y, 0.0)).coords
        })
        .collect();
    let panel_from_camera = plane_through(&centres, size_mm).ok_or(LocateError::Degenerate)?;
    Ok((panel_from_camera, tags_on(camera, &panel_from_camera, tags)))
}

fn along(k: usize, axis: usize) -> f64 {
    if k == axis { SMALL } else { 0.0 }
}

/// Sides and diagonals of a tag on the plane, less what they should be, mm.
fn miss(camera: &Camera, plane: &Isometry3<f64>, tag: &TagView, size_mm: f64) -> [f64; 6] {
    let c = tag.corners.map(|c| on_plane(camera, plane, &c));
    let apart = |a: usize, b: usize| (c[a] - c[b]).norm();
    let diagonal = size_mm * std::f64::consts::SQRT_2;
    [
        apart(0, 1) - size_mm,
        apart(1, 2) - size_mm,
        apart(2, 3) - size_mm,
        apart(3, 0) - size_mm,
        apart(0, 2) - diagonal,
        apart(1, 3) - diagonal,
    ]
}

/// Where a pixel looks on the plane z = 0, mm.
pub(crate) fn on_plane(camera: &Camera, panel_from_camera: &Isometry3<f64>, pixel: &Pixel) -> Vector2<f64> {
    let (o, d) = (panel_from_camera * Point3::origin(), panel_from_camera * camera.ray(pixel));
    let q = o - d * (o.z / d.z);
    Vector2::new(q.x, q.y)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::locate::tag_corners;

    #[test]
    fn the_tilt_is_told_to_tenths_of_a_degree_by_corners_a_tenth_of_a_pixel_off() {
        let camera = Camera { focal_px: 2100.0, size: (1280, 960), k1: 0.0 };
        let camera_from_panel = Isometry3::new(Vector3::new(10.0, 20.0, 695.0), Vector3::new(2.75, 0.02, 0.05));
        let places = [(-135.0, -95.0), (0.0, -100.0), (135.0, -92.0), (-140.0, 10.0), (142.0, 5.0), (5.0, 102.0)];
        let off = |k: usize| 0.1 * (12.9898 * k as f64 + 1.7).sin();
        let view = |(id, (x, y)): (usize, (f64, f64))| {
            let corner = |c: Vector2<f64>| camera.project(&(camera_from_panel * Point3::new(x + c.x, y + c.y, 0.0)));
            let mut k = 8 * id;
            let corners = tag_corners(22.0).map(|c| {
                k += 2;
                corner(c).unwrap() + Pixel::new(off(k), off(k + 1))
            });
            TagView { id, corners }
        };
        let tags: Vec<TagView> = places.into_iter().enumerate().map(view).collect();
        let (found, on) = squared_plane(&camera, &tags, 22.0).unwrap();
        let normal = |pose: &Isometry3<f64>| pose.rotation * Vector3::z();
        let tilt = normal(&found.inverse()).angle(&normal(&camera_from_panel)).to_degrees();
        assert!((1e-4..0.4).contains(&tilt), "{tilt}");
        let apart = |a: usize, b: usize| (on[a].pose[0] - on[b].pose[0]).hypot(on[a].pose[1] - on[b].pose[1]);
        assert!((apart(1, 5) - 202.06).abs() < 1.0 && (apart(3, 4) - 282.04).abs() < 1.0);
    }
}
