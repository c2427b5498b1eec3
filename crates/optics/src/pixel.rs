//! Pixels and cameras.
//!
//! Pixel frame: x right, y down, origin at the *outer corner* of the first pixel, so the centre of the
//! first pixel is (0.5, 0.5). Camera frame: x right, y down, z forward.

use nalgebra::{Isometry3, Point3, Vector2, Vector3};

/// A place in a photo, px.
pub type Pixel = Vector2<f64>;

/// A pinhole camera with one radial distortion term, principal point at the centre of the photo.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Camera {
    /// Focal length, px.
    pub focal_px: f64,
    /// Photo width and height, px.
    pub size: (usize, usize),
    /// Radial distortion: `x_d = x (1 + k1 r²)` in normalised coordinates.
    pub k1: f64,
}

impl Camera {
    /// Where a point of the camera frame appears; `None` behind the camera.
    pub fn project(&self, p: &Point3<f64>) -> Option<Pixel> {
        if p.z <= 1e-6 {
            return None;
        }
        let (x, y) = (p.x / p.z, p.y / p.z);
        let d = self.focal_px * (1.0 + self.k1 * (x * x + y * y));
        Some(Pixel::new(0.5 * self.size.0 as f64 + d * x, 0.5 * self.size.1 as f64 + d * y))
    }

    /// Unit direction in the camera frame along which a pixel looks.
    pub fn ray(&self, p: &Pixel) -> Vector3<f64> {
        let xd = (p.x - 0.5 * self.size.0 as f64) / self.focal_px;
        let yd = (p.y - 0.5 * self.size.1 as f64) / self.focal_px;
        let (mut x, mut y) = (xd, yd);
        for _ in 0..5 {
            let s = 1.0 + self.k1 * (x * x + y * y);
            (x, y) = (xd / s, yd / s);
        }
        Vector3::new(x, y, 1.0).normalize()
    }
}

/// A rigid motion from six numbers: translation (mm), then rotation vector (rad).
pub fn isometry(p: &[f64]) -> Isometry3<f64> {
    Isometry3::new(Vector3::new(p[0], p[1], p[2]), Vector3::new(p[3], p[4], p[5]))
}

/// The six numbers of a rigid motion, inverse of [`isometry`].
pub fn six_numbers(m: &Isometry3<f64>) -> [f64; 6] {
    let (t, r) = (m.translation.vector, m.rotation.scaled_axis());
    [t.x, t.y, t.z, r.x, r.y, r.z]
}
