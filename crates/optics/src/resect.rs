//! Where a camera stood, from places whose coordinates are known.

use crate::pixel::{Camera, Pixel, isometry, six_numbers};
use nalgebra::{Isometry3, Matrix6, Point3, Vector6};

/// Gauss and Newton's steps; a start within a few degrees settles in four.
const STEPS: usize = 10;
/// For derivatives: mm, rad.
const SMALL: f64 = 1e-5;

/// The pose of a camera (places' frame to camera's) that sees known places at given pixels, by least squares from a
/// `start`, with the root mean square of what is left, px; `None` for fewer than three, or places in a line.
#[must_use]
pub fn resect(camera: &Camera, seen: &[(Point3<f64>, Pixel)], start: &Isometry3<f64>) -> Option<(Isometry3<f64>, f64)> {
    if seen.len() < 3 {
        return None;
    }
    let mut pose = *start;
    for _ in 0..STEPS {
        let (mut normal, mut right) = (Matrix6::zeros(), Vector6::zeros());
        for (place, pixel) in seen {
            let here = camera.project(&(pose * place))?;
            let by: [Pixel; 6] = std::array::from_fn(|k| {
                let mut small = [0.0; 6];
                small[k] = SMALL;
                let there = camera.project(&(isometry(&small) * (pose * place)));
                there.map_or(Pixel::zeros(), |there| (there - here) / SMALL)
            });
            for axis in 0..2 {
                let row = Vector6::from_fn(|k, _| by[k][axis]);
                normal += row * row.transpose();
                right += row * (pixel[axis] - here[axis]);
            }
        }
        let step = normal.cholesky()?.solve(&right);
        pose = isometry(step.as_slice()) * pose;
    }
    let pose = isometry(&six_numbers(&pose));
    let misses = seen.iter().map(|(place, pixel)| camera.project(&(pose * place)).map(|p| (p - pixel).norm_squared()));
    let squares = misses.sum::<Option<f64>>()?;
    Some((pose, (squares / seen.len() as f64).sqrt())).filter(|(_, left)| left.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;
    use nalgebra::Vector3;

    #[test]
    fn a_known_pose_comes_back_from_a_start_some_degrees_off() {
        let camera = Camera { focal_px: 2600.0, size: (1600, 1200), k1: 0.02 };
        let truth = Isometry3::new(Vector3::new(12.0, -30.0, 700.0), Vector3::new(2.7, 0.1, -0.05));
        let places = [(-135.0, -95.0), (0.0, -100.0), (135.0, -92.0), (-140.0, 10.0), (132.0, 95.0)];
        let on_panel = places.map(|(x, y)| Point3::new(x, y, -(x * x + y * y) / 5000.0));
        let seen = on_panel.map(|p| (p, camera.project(&(truth * p)).unwrap()));
        let start = isometry(&[10.0, -10.0, 20.0, 0.05, -0.06, 0.03]) * truth;
        let (pose, left) = resect(&camera, &seen, &start).unwrap();
        assert!(left < 1e-6 && (pose.inverse() * truth).translation.vector.norm() < 1e-6);
        assert!(resect(&camera, &seen[..2], &start).is_none());
    }
}
