//! Cameras and boards as frames: panel point to pixel, pixel to ray, panel point to board point.

use crate::scene::{BoardPose, CameraPose};
use nalgebra::Vector3;

/// A pinhole camera with radial distortion. Pixel `(0, 0)` is the corner of the first pixel, y goes down.
#[derive(Debug, Clone)]
pub struct Camera {
    /// Centre of the lens, panel frame, mm.
    pub eye: Vector3<f64>,
    right: Vector3<f64>,
    down: Vector3<f64>,
    ahead: Vector3<f64>,
    /// Focal length, pixels.
    pub focal_px: f64,
    centre: [f64; 2],
    distortion: [f64; 2],
}

impl Camera {
    /// A camera whose photos have this size in pixels.
    #[must_use]
    pub fn new(pose: &CameraPose, width: usize, height: usize) -> Self {
        let eye = Vector3::from(pose.pos);
        let ahead = (Vector3::from(pose.at) - eye).normalize();
        let right = ahead.cross(&Vector3::from(pose.up)).normalize();
        let w = width as f64;
        let [off_x, off_y] = pose.axis_offset;
        Self {
            eye,
            right,
            down: ahead.cross(&right),
            ahead,
            focal_px: w / 2.0 / (pose.fov.to_radians() / 2.0).tan(),
            centre: [w / 2.0 + off_x * w, height as f64 / 2.0 + off_y * w],
            distortion: pose.distortion,
        }
    }

    /// Direction a pixel looks along; one long along the optical axis.
    #[must_use]
    pub fn ray(&self, px: f64, py: f64) -> Vector3<f64> {
        let bent = [(px - self.centre[0]) / self.focal_px, (py - self.centre[1]) / self.focal_px];
        let [x, y] = self.straighten(bent);
        self.ahead + self.right * x + self.down * y
    }

    /// Where a point is seen; `None` behind the camera.
    #[must_use]
    pub fn pixel(&self, point: &Vector3<f64>) -> Option<[f64; 2]> {
        let to = point - self.eye;
        let far = to.dot(&self.ahead);
        if far <= 0.0 {
            return None;
        }
        let (x, y) = (to.dot(&self.right) / far, to.dot(&self.down) / far);
        let stretch = self.stretch(x * x + y * y);
        Some([self.centre[0] + self.focal_px * x * stretch, self.centre[1] + self.focal_px * y * stretch])
    }

    /// Two directions across the optical axis, along which a lens opening extends.
    #[must_use]
    pub fn across(&self) -> [Vector3<f64>; 2] {
        [self.right, self.down]
    }

    /// Distance along the optical axis.
    #[must_use]
    pub fn depth(&self, point: &Vector3<f64>) -> f64 {
        (point - self.eye).dot(&self.ahead)
    }

    fn stretch(&self, r2: f64) -> f64 {
        1.0 + r2 * (self.distortion[0] + r2 * self.distortion[1])
    }

    /// Undoes the distortion by fixed-point steps, which shrink the miss tenfold and more for mild lenses.
    fn straighten(&self, bent: [f64; 2]) -> [f64; 2] {
        if self.distortion == [0.0; 2] {
            return bent;
        }
        let mut at = bent;
        for _ in 0..12 {
            let stretch = self.stretch(at[0] * at[0] + at[1] * at[1]);
            at = [bent[0] / stretch, bent[1] / stretch];
        }
        at
    }
}

/// The board as a plane with axes `u` (right) and `v` (up) as seen by someone facing its lit side.
#[derive(Debug, Clone)]
pub struct Board {
    /// Middle of the lit area, panel frame, mm.
    pub middle: Vector3<f64>,
    /// Unit vector to the right.
    pub u: Vector3<f64>,
    /// Unit vector up.
    pub v: Vector3<f64>,
    /// Unit vector out of the lit side.
    pub out: Vector3<f64>,
    /// Half width and half height, mm.
    pub half: [f64; 2],
}

impl Board {
    /// A board where its pose says.
    #[must_use]
    pub fn new(pose: &BoardPose) -> Self {
        let middle = Vector3::from(pose.pos);
        let out = (Vector3::from(pose.at) - middle).normalize();
        let u = Vector3::from(pose.up).cross(&out).normalize();
        Self { middle, u, v: out.cross(&u), out, half: [pose.w / 2.0, pose.h / 2.0] }
    }

    /// Where a ray meets the board's plane from its lit side: `(u, v, distance along the ray)`.
    #[must_use]
    pub fn meet(&self, from: &Vector3<f64>, along: &Vector3<f64>) -> Option<[f64; 3]> {
        let against = along.dot(&self.out);
        if against >= 0.0 {
            return None;
        }
        let t = (self.middle - from).dot(&self.out) / against;
        let at = from + along * t - self.middle;
        (t > 0.0).then(|| [at.dot(&self.u), at.dot(&self.v), t])
    }

    /// Whether a board point lies in the lit area.
    #[must_use]
    pub fn holds(&self, u: f64, v: f64) -> bool {
        u.abs() <= self.half[0] && v.abs() <= self.half[1]
    }

    /// Whether the board stands between two points.
    #[must_use]
    pub fn hides(&self, from: &Vector3<f64>, to: &Vector3<f64>) -> bool {
        let along = to - from;
        let across = along.dot(&self.out);
        if across == 0.0 {
            return false;
        }
        let t = (self.middle - from).dot(&self.out) / across;
        let at = from + along * t - self.middle;
        (0.0..1.0).contains(&t) && self.holds(at.dot(&self.u), at.dot(&self.v))
    }

    /// A board point in the panel frame.
    #[must_use]
    pub fn point(&self, u: f64, v: f64) -> Vector3<f64> {
        self.middle + self.u * u + self.v * v
    }
}

/// Direction a mirror with unit normal `n` sends `along` to.
#[must_use]
pub fn mirrored(along: &Vector3<f64>, n: &Vector3<f64>) -> Vector3<f64> {
    along - n * (2.0 * along.dot(n))
}
