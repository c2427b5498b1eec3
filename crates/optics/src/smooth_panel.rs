//! The panel without its damage: a polynomial, and the ridge of a body line where one is known.

use dentwright_surface::Ridge;
use nalgebra::{Point3, Vector3};
use std::sync::Arc;

/// A smooth panel: polynomial of x and y in units of `scale_mm`, height in mm, and a ridge.
#[derive(Debug, Clone)]
pub struct SmoothPanel {
    /// Length unit, mm.
    pub scale_mm: f64,
    /// Total degree.
    pub degree: usize,
    /// Coefficients, by total degree then by power of y, mm.
    pub c: Vec<f64>,
    /// Body line that comes on top.
    pub ridge: Option<Arc<Ridge>>,
}

impl SmoothPanel {
    /// The flat panel through the tags.
    #[must_use]
    pub fn plane() -> Self {
        Self { scale_mm: 1.0, degree: 0, c: vec![0.0], ridge: None }
    }

    /// How many coefficients a degree has.
    pub fn terms(degree: usize) -> usize {
        (degree + 1) * (degree + 2) / 2
    }

    /// Height (mm) and slopes at a panel position.
    pub fn at(&self, x_mm: f64, y_mm: f64) -> (f64, f64, f64) {
        let (x, y) = (x_mm / self.scale_mm, y_mm / self.scale_mm);
        let (mut z, mut zx, mut zy) = (0.0, 0.0, 0.0);
        // Horner's rule in y, and inside in x; derivatives run along.
        for b in (0..=self.degree).rev() {
            let (mut p, mut px) = (0.0, 0.0);
            for a in (0..=self.degree - b).rev() {
                px = px * x + p;
                p = p * x + self.c[(a + b) * (a + b + 1) / 2 + b];
            }
            zy = zy * y + z;
            z = z * y + p;
            zx = zx * y + px;
        }
        let ridge = self.ridge.as_ref().map_or((0.0, 0.0, 0.0), |r| r.at(x_mm, y_mm));
        (z + ridge.0, zx / self.scale_mm + ridge.1, zy / self.scale_mm + ridge.2)
    }

    /// Two unit vectors square to each other that lie on the panel there, the first one along x seen from above.
    pub(crate) fn tangents(&self, x_mm: f64, y_mm: f64) -> [Vector3<f64>; 2] {
        let (_, zx, zy) = self.at(x_mm, y_mm);
        let ex = Vector3::new(1.0, 0.0, zx).normalize();
        let n = Vector3::new(-zx, -zy, 1.0).normalize();
        [ex, n.cross(&ex)]
    }

    /// What one millimetre of every coefficient adds to height and slopes at a panel position.
    pub(crate) fn shares(&self, x_mm: f64, y_mm: f64) -> impl Iterator<Item = [f64; 3]> {
        let (px, py) = self.powers(x_mm, y_mm);
        let unit = 1.0 / self.scale_mm;
        exponents(self.degree)
            .map(move |(a, b)| [px[a] * py[b], slope(&px, a) * py[b] * unit, px[a] * slope(&py, b) * unit])
    }

    /// Second derivatives xx, xy, yy at a panel position, per mm.
    pub(crate) fn bends(&self, x_mm: f64, y_mm: f64) -> [f64; 3] {
        let (px, py) = self.powers(x_mm, y_mm);
        let mut sum = [0.0; 3];
        for (&c, (a, b)) in self.c.iter().zip(exponents(self.degree)) {
            sum[0] += c * bend(&px, a) * py[b];
            sum[1] += c * slope(&px, a) * slope(&py, b);
            sum[2] += c * px[a] * bend(&py, b);
        }
        let ridge = self.ridge.as_ref().map_or([0.0; 3], |r| r.bends(x_mm, y_mm));
        std::array::from_fn(|k| sum[k] / (self.scale_mm * self.scale_mm) + ridge[k])
    }

    fn powers(&self, x_mm: f64, y_mm: f64) -> (Powers, Powers) {
        let (x, y) = (x_mm / self.scale_mm, y_mm / self.scale_mm);
        let (mut px, mut py) = ([1.0; 9], [1.0; 9]);
        for k in 1..=self.degree {
            px[k] = px[k - 1] * x;
            py[k] = py[k - 1] * y;
        }
        (px, py)
    }

    /// Where a ray meets the panel, and the slopes there: four Newton steps from the plane z = 0.
    pub fn meet(&self, origin: &Point3<f64>, ray: &Vector3<f64>) -> (Point3<f64>, (f64, f64)) {
        let mut s = -origin.z / ray.z;
        let mut hit = origin + ray * s;
        let mut slopes = (0.0, 0.0);
        for _ in 0..4 {
            let (z, zx, zy) = self.at(hit.x, hit.y);
            slopes = (zx, zy);
            s -= (hit.z - z) / (ray.z - zx * ray.x - zy * ray.y);
            hit = origin + ray * s;
        }
        (hit, slopes)
    }
}

/// Powers 0 to 8 of one coordinate.
type Powers = [f64; 9];

/// Exponents of x and y of every coefficient, in their order.
fn exponents(degree: usize) -> impl Iterator<Item = (usize, usize)> {
    (0..=degree).flat_map(|d| (0..=d).map(move |b| (d - b, b)))
}

fn slope(p: &Powers, k: usize) -> f64 {
    if k > 0 { k as f64 * p[k - 1] } else { 0.0 }
}

fn bend(p: &Powers, k: usize) -> f64 {
    if k > 1 { (k * (k - 1)) as f64 * p[k - 2] } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_and_bends_are_the_derivatives() {
        let c: Vec<f64> = (0..SmoothPanel::terms(4)).map(|k| (k as f64 * 1.7).sin()).collect();
        let panel = SmoothPanel { scale_mm: 80.0, degree: 4, c, ridge: None };
        let (x, y, h) = (31.0, -47.0, 1e-4);
        let (z, zx, zy) = panel.at(x, y);
        let sum = panel.shares(x, y).zip(&panel.c).fold([0.0; 3], |s, (v, c)| [0, 1, 2].map(|k| s[k] + v[k] * c));
        assert!((sum[0] - z).abs() + (sum[1] - zx).abs() + (sum[2] - zy).abs() < 1e-12);
        let (right, up) = (panel.at(x + h, y), panel.at(x, y + h));
        let ahead = [(right.1 - zx) / h, (up.1 - zx) / h, (up.2 - zy) / h];
        assert!(ahead.iter().zip(panel.bends(x, y)).all(|(a, b)| (a - b).abs() < 1e-6));
        assert!(((right.0 - z) / h - zx).abs() < 1e-5 && ((up.0 - z) / h - zy).abs() < 1e-5);
    }
}
