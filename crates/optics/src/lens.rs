//! A lens as calibrated: focal lengths, centre, radial and tangential distortion, each with its doubt.
//!
//! Pinhole with Brown's distortion (Brown 1966, "Decentering distortion of lenses"):
//! `x_d = x (1 + k1 r² + k2 r⁴) + 2 p1 x y + p2 (r² + 2x²)`, `y_d` alike, then `u = fx x_d + cx`.

use crate::pixel::{Camera, Pixel};
use nalgebra::{Point3, Vector3};
use serde::{Deserialize, Serialize};

/// How many constants a lens has.
pub(crate) const CONSTANTS: usize = 8;

/// A camera's constants at one zoom and one size of photos, and their one-sigma doubt in the same order.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Calibration {
    /// Photo width and height, px.
    pub size: (usize, usize),
    /// Focal length across and down, px.
    pub focal_px: [f64; 2],
    /// Where the optical axis meets the photo, px (frame of `docs/frames.md`).
    pub centre_px: [f64; 2],
    /// Radial distortion of second and fourth order, in units of the focal length.
    pub radial: [f64; 2],
    /// Tangential distortion.
    pub tangential: [f64; 2],
    /// One-sigma of all eight, in the order above.
    pub sigma: [f64; CONSTANTS],
    /// Root mean square of what is left of the tags' corners, px, each way.
    pub rms_px: f64,
    /// Photos it comes from.
    pub photos: usize,
}

impl Calibration {
    /// Where a point of the camera frame appears; `None` behind the camera.
    #[must_use]
    pub fn project(&self, p: &Point3<f64>) -> Option<Pixel> {
        if p.z <= 1e-6 {
            return None;
        }
        let (x, y) = self.bend(p.x / p.z, p.y / p.z);
        Some(Pixel::new(self.centre_px[0] + self.focal_px[0] * x, self.centre_px[1] + self.focal_px[1] * y))
    }

    /// Unit direction in the camera frame along which a pixel looks, by fixed-point steps.
    #[must_use]
    pub fn ray(&self, p: &Pixel) -> Vector3<f64> {
        let (xd, yd) = ((p.x - self.centre_px[0]) / self.focal_px[0], (p.y - self.centre_px[1]) / self.focal_px[1]);
        let (mut x, mut y) = (xd, yd);
        for _ in 0..UNBEND_STEPS {
            let (bx, by) = self.bend(x, y);
            (x, y) = (x + xd - bx, y + yd - by);
        }
        Vector3::new(x, y, 1.0).normalize()
    }

    fn bend(&self, x: f64, y: f64) -> (f64, f64) {
        let ([k1, k2], [p1, p2]) = (self.radial, self.tangential);
        let r2 = x * x + y * y;
        let stretch = 1.0 + r2 * (k1 + r2 * k2);
        (
            x * stretch + 2.0 * p1 * x * y + p2 * (r2 + 2.0 * x * x),
            y * stretch + p1 * (r2 + 2.0 * y * y) + 2.0 * p2 * x * y,
        )
    }

    /// The same lens at another size of photos, where both sizes show the same picture; `None` where they do not.
    #[must_use]
    pub fn at_size(&self, size: (usize, usize)) -> Option<Self> {
        let (a, b) = (size.0 as f64 / self.size.0 as f64, size.1 as f64 / self.size.1 as f64);
        if (a / b - 1.0).abs() > SAME_SHAPE {
            return None;
        }
        let scale = 0.5 * (a + b);
        let mut scaled = Self { size, ..*self };
        (0..2).for_each(|k| {
            scaled.focal_px[k] *= scale;
            scaled.centre_px[k] *= scale;
        });
        (0..4).for_each(|k| scaled.sigma[k] *= scale);
        scaled.rms_px *= scale;
        Some(scaled)
    }

    /// The nearest camera without offset, second radial and tangential terms: what a reading starts from.
    #[must_use]
    pub fn plain(&self) -> Camera {
        Camera { focal_px: 0.5 * (self.focal_px[0] + self.focal_px[1]), size: self.size, k1: self.radial[0] }
    }

    /// Relative one-sigma of the focal length.
    #[must_use]
    pub fn focal_doubt(&self) -> f64 {
        (self.sigma[0] / self.focal_px[0]).max(self.sigma[1] / self.focal_px[1])
    }

    pub(crate) fn of_constants(c: &[f64], size: (usize, usize)) -> Self {
        Self {
            size,
            focal_px: [c[0], c[1]],
            centre_px: [c[2], c[3]],
            radial: [c[4], c[5]],
            tangential: [c[6], c[7]],
            sigma: [0.0; CONSTANTS],
            rms_px: 0.0,
            photos: 0,
        }
    }
}

/// Each step shrinks the miss about as the distortion is small: tenfold for a phone.
const UNBEND_STEPS: usize = 12;
/// Sides of two photos of one picture agree to this, relative: whole pixels are rounded.
const SAME_SHAPE: f64 = 0.002;

#[cfg(test)]
mod tests {
    use super::*;

    fn lens() -> Calibration {
        let c = [1400.0, 1396.0, 810.0, 590.0, 0.06, -0.09, 4e-4, -3e-4];
        Calibration::of_constants(&c, (1600, 1200))
    }

    #[test]
    fn a_ray_goes_back_to_its_pixel() {
        for (x, y) in [(0.0, 0.0), (1600.0, 1200.0), (30.0, 1100.0), (820.0, 600.0)] {
            let p = Pixel::new(x, y);
            let back = lens().project(&Point3::from(lens().ray(&p) * 700.0)).unwrap();
            assert!((back - p).norm() < 1e-6, "{back}");
        }
    }

    #[test]
    fn half_the_size_sees_the_same() {
        let half = lens().at_size((800, 600)).unwrap();
        let p = Point3::new(120.0, -80.0, 400.0);
        assert!((half.project(&p).unwrap() * 2.0 - lens().project(&p).unwrap()).norm() < 1e-9);
        assert!(lens().at_size((1600, 900)).is_none());
    }
}
