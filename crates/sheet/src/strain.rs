//! Logarithmic strain of the sheet's plane and how it follows the metric.
//!
//! A symmetric plane tensor is carried in three *modes*: half the sum of its diagonal, half the
//! difference, and the off-diagonal; in these, isotropic elasticity and J2 flow are diagonal.
//! Stresses carry the conjugates, `(T₁₁+T₂₂, T₁₁−T₂₂, 2T₁₂)`, so power is the plain dot product.

use nalgebra::{Matrix3, Vector3};

/// Modes `(½(a₁₁+a₂₂), ½(a₁₁−a₂₂), a₁₂)` of a plane strain, or their conjugates for a stress.
pub type Modes = Vector3<f64>;

/// Logarithmic strain `½ ln C` with its first and second derivatives by the modes of `C`.
#[derive(Debug, Clone)]
pub struct LogStrain {
    /// Modes of the strain.
    pub value: Modes,
    /// Rows: strain modes; columns: modes of `C`.
    pub first: Matrix3<f64>,
    /// One symmetric matrix a strain mode.
    pub second: [Matrix3<f64>; 3],
}

impl LogStrain {
    /// From the modes of the right Cauchy-Green tensor `C`; `None` where the sheet is turned inside out.
    pub fn of(c: Modes) -> Option<Self> {
        let (m, c1, c2) = (c[0], c[1], c[2]);
        let d2 = c1 * c1 + c2 * c2;
        let u = m * m - d2;
        if !(m > 0.0 && u > 0.0) {
            return None;
        }
        // ½ ln C = ¼ ln(det C) I + g (C − m I), g = φ(y)/2m, φ(y) = artanh(√y)/√y
        let y = d2 / (m * m);
        let [phi, phi1, phi2] = artanh_ratio(y);
        let f = 0.5 * phi + y * phi1;
        let f1 = 1.5 * phi1 + y * phi2;
        let (m2, m3) = (m * m, m * m * m);
        let g = Radial {
            g: 0.5 * phi / m,
            m: -f / m2,
            d: 0.5 * phi1 / m3,
            mm: 2.0 * (f + y * f1) / m3,
            md: -f1 / (m2 * m2),
            dd: 0.5 * phi2 / (m2 * m3),
        };
        let (iu, iu2) = (0.5 / u, 1.0 / (u * u));
        let (first1, second1) = g.times(c1, c2);
        let (first2, second2) = g.times(c2, c1);
        let swap = |a: Matrix3<f64>| {
            Matrix3::new(
                a[(0, 0)],
                a[(0, 2)],
                a[(0, 1)],
                a[(2, 0)],
                a[(2, 2)],
                a[(2, 1)],
                a[(1, 0)],
                a[(1, 2)],
                a[(1, 1)],
            )
        };
        let first0 = Vector3::new(m * iu, -c1 * iu, -c2 * iu);
        let v = Vector3::new(m, -c1, -c2);
        let second0 = Matrix3::from_diagonal(&Vector3::new(iu, -iu, -iu)) - v * v.transpose() * iu2;
        Some(Self {
            value: Vector3::new(0.25 * u.ln(), c1 * g.g, c2 * g.g),
            first: Matrix3::from_rows(&[
                first0.transpose(),
                first1.transpose(),
                Vector3::new(first2[0], first2[2], first2[1]).transpose(),
            ]),
            second: [second0, second1, swap(second2)],
        })
    }
}

/// `g(m, d²)` and its derivatives.
struct Radial {
    g: f64,
    m: f64,
    d: f64,
    mm: f64,
    md: f64,
    dd: f64,
}

impl Radial {
    /// Derivatives of `a g(m, a² + b²)` by `(m, a, b)`.
    fn times(&self, a: f64, b: f64) -> (Vector3<f64>, Matrix3<f64>) {
        let first = Vector3::new(a * self.m, self.g + 2.0 * a * a * self.d, 2.0 * a * b * self.d);
        let ma = self.m + 2.0 * a * a * self.md;
        let mb = 2.0 * a * b * self.md;
        let aa = 6.0 * a * self.d + 4.0 * a * a * a * self.dd;
        let ab = 2.0 * b * self.d + 4.0 * a * a * b * self.dd;
        let bb = 2.0 * a * self.d + 4.0 * a * b * b * self.dd;
        (first, Matrix3::new(a * self.mm, ma, mb, ma, aa, ab, mb, ab, bb))
    }
}

/// `artanh(√y)/√y` and two derivatives; a series near zero, where the closed form loses its digits.
fn artanh_ratio(y: f64) -> [f64; 3] {
    if y < 0.05 {
        // Σ yᵏ/(2k+1) and its derivatives by Horner's rule
        let mut sum = [0.0; 3];
        for k in (0..12).rev() {
            let k = f64::from(k);
            sum[0] = sum[0] * y + 1.0 / (2.0 * k + 1.0);
            sum[1] = sum[1] * y + (k + 1.0) / (2.0 * k + 3.0);
            sum[2] = sum[2] * y + (k + 1.0) * (k + 2.0) / (2.0 * k + 5.0);
        }
        sum
    } else {
        let root = y.sqrt();
        let phi = root.atanh() / root;
        let phi1 = (1.0 / (1.0 - y) - phi) / (2.0 * y);
        [phi, phi1, (1.0 / ((1.0 - y) * (1.0 - y)) - 3.0 * phi1) / (2.0 * y)]
    }
}
