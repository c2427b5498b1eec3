//! The projective map between two views of a plane.

use nalgebra::{DMatrix, Matrix3, Vector2, Vector3};

/// Maps points of one plane to another, up to scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Homography(pub Matrix3<f64>);

impl Homography {
    /// From four or more pairs of points by the normalised direct linear transform (Hartley and Zisserman,
    /// algorithm 4.2); `None` when they do not determine it.
    pub fn fit(pairs: &[(Vector2<f64>, Vector2<f64>)]) -> Option<Self> {
        if pairs.len() < 4 {
            return None;
        }
        let (from, to) = (normaliser(pairs.iter().map(|p| p.0))?, normaliser(pairs.iter().map(|p| p.1))?);
        let mut a = DMatrix::zeros((2 * pairs.len()).max(9), 9);
        for (k, (p, q)) in pairs.iter().enumerate() {
            let (p, q) = (from * p.push(1.0), to * q.push(1.0));
            let (x, y, u, v) = (p.x, p.y, q.x, q.y);
            a.row_mut(2 * k).copy_from_slice(&[x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y, -u]);
            a.row_mut(2 * k + 1).copy_from_slice(&[0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y, -v]);
        }
        let svd = a.svd(false, true);
        let least = svd.singular_values.imin();
        let h = svd.v_t?.row(least).transpose();
        let normalised = Matrix3::from_row_slice(h.as_slice());
        Some(Self(to.try_inverse()? * normalised * from))
    }

    /// Where a point goes; `None` when it goes to infinity.
    pub fn map(&self, p: &Vector2<f64>) -> Option<Vector2<f64>> {
        let q: Vector3<f64> = self.0 * p.push(1.0);
        (q.z.abs() > 1e-12).then(|| q.xy() / q.z)
    }
}

/// Moves points to mean zero and mean distance √2.
fn normaliser(points: impl Iterator<Item = Vector2<f64>> + Clone) -> Option<Matrix3<f64>> {
    let n = points.clone().count() as f64;
    let mean = points.clone().sum::<Vector2<f64>>() / n;
    let spread = points.map(|p| (p - mean).norm()).sum::<f64>() / n;
    let scale = std::f64::consts::SQRT_2 / spread;
    scale.is_finite().then(|| Matrix3::new(scale, 0.0, -scale * mean.x, 0.0, scale, -scale * mean.y, 0.0, 0.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_known_map_comes_back() {
        let h = Homography(Matrix3::new(1.1, 0.1, 30.0, -0.2, 0.9, 12.0, 1e-4, -2e-4, 1.0));
        let points = [(0.0, 0.0), (900.0, 30.0), (20.0, 700.0), (850.0, 800.0), (400.0, 300.0)];
        let pairs: Vec<_> = points.iter().map(|&(x, y)| Vector2::new(x, y)).map(|p| (p, h.map(&p).unwrap())).collect();
        let found = Homography::fit(&pairs).unwrap();
        let p = Vector2::new(333.0, 555.0);
        assert!((found.map(&p).unwrap() - h.map(&p).unwrap()).norm() < 1e-9);
        assert_eq!(Homography::fit(&pairs[..3]), None);
    }
}
