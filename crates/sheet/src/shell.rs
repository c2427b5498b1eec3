//! One place of the sheet: from the surface's derivatives to membrane and bending strain, and back to forces.
//!
//! Kirchhoff-Love kinematics without any limit on the turn (Kiendl, Bletzinger, Linhard and Wüchner
//! 2009): with `x,α` and `x,αβ` the derivatives of the place by the grid's coordinates, the metric is
//! `a_αβ = x,α·x,β` and the curvature `b_αβ = x,αβ·n`. The membrane strain is `½ ln a` in the
//! undeformed sheet's own frame, a layer at `ζ` has `ε = ε_m − ζ(k − k₀)` (Kirchhoff: lines across
//! the sheet stay straight and square to it).

use crate::strain::{LogStrain, Modes};
use nalgebra::{Matrix3, SMatrix, SVector, Vector3};

/// Derivatives of the place: `x,1  x,2  x,11  x,22  x,12`, 15 numbers.
pub type Slopes = [Vector3<f64>; 5];

/// Forces on the 15 numbers of [`Slopes`].
pub type Forces = SVector<f64, 15>;

/// Stiffness between them.
pub type Stiffness = SMatrix<f64, 15, 15>;

/// The undeformed frame at a place.
#[derive(Debug, Clone)]
pub struct Frame {
    /// Square root of the metric: area per unit of grid area.
    pub area: f64,
    /// From covariant `(11, 22, 12)` components to modes in the local frame.
    pub local: Matrix3<f64>,
    /// Modes of the undeformed curvature, 1/mm.
    pub curvature: Modes,
}

/// What the surface's derivatives say at a place.
struct Surface {
    normal: Vector3<f64>,
    /// Contravariant base.
    dual: [Vector3<f64>; 2],
    /// `a^{γδ}` as (11, 22, 12).
    dual_metric: [f64; 3],
    area: f64,
    metric: Vector3<f64>,
    bend: Vector3<f64>,
}

impl Surface {
    fn of(g: &Slopes) -> Option<Self> {
        let cross = g[0].cross(&g[1]);
        let area = cross.norm();
        if !(area > 1e-9) {
            return None;
        }
        let normal = cross / area;
        let metric = Vector3::new(g[0].dot(&g[0]), g[1].dot(&g[1]), g[0].dot(&g[1]));
        let inverse = 1.0 / (area * area);
        let dual_metric = [metric[1] * inverse, metric[0] * inverse, -metric[2] * inverse];
        let dual = [g[0] * dual_metric[0] + g[1] * dual_metric[2], g[0] * dual_metric[2] + g[1] * dual_metric[1]];
        let bend = Vector3::new(g[2].dot(&normal), g[3].dot(&normal), g[4].dot(&normal));
        Some(Self { normal, dual, dual_metric, area, metric, bend })
    }
}

impl Frame {
    /// Frame of the undeformed surface; `None` where it folds over itself.
    pub fn of(g: &Slopes) -> Option<Self> {
        let surface = Surface::of(g)?;
        let e1 = g[0].normalize();
        let e2 = surface.normal.cross(&e1);
        let t = |e: &Vector3<f64>| [e.dot(&surface.dual[0]), e.dot(&surface.dual[1])];
        let (p, q) = (t(&e1), t(&e2));
        let row = |a: [f64; 2], b: [f64; 2]| Vector3::new(a[0] * b[0], a[1] * b[1], a[0] * b[1] + a[1] * b[0]);
        let (r11, r22, r12) = (row(p, p), row(q, q), row(p, q));
        let local =
            Matrix3::from_rows(&[(0.5 * (r11 + r22)).transpose(), (0.5 * (r11 - r22)).transpose(), r12.transpose()]);
        Some(Self { area: surface.area, local, curvature: local * surface.bend })
    }
}

/// Strain of the middle surface and change of curvature at a place, with the way back to forces.
pub struct Bent {
    /// Membrane strain, modes.
    pub membrane: LogStrain,
    /// Change of curvature `k − k₀`, modes, 1/mm.
    pub curvature: Modes,
    surface: Surface,
}

impl Bent {
    /// From the present derivatives; `stretch` is what membrane strain does to curvature (see [`stretch_of`]).
    pub fn of(frame: &Frame, stretch: &Matrix3<f64>, g: &Slopes) -> Option<Self> {
        let surface = Surface::of(g)?;
        let membrane = LogStrain::of(frame.local * surface.metric)?;
        let curvature = stretch * frame.local * surface.bend - frame.curvature;
        Some(Self { membrane, curvature, surface })
    }

    /// Forces of a stretching force `n` and moment `m` (conjugate modes), and, where the section's own
    /// `[∂n/∂ε, ∂n/∂κ, ∂m/∂κ]` is given, their stiffness.
    pub fn forces(
        &self,
        frame: &Frame,
        stretch: &Matrix3<f64>,
        g: &Slopes,
        (n, m): (&Modes, &Modes),
        tangent: Option<&[Matrix3<f64>; 3]>,
    ) -> (Forces, Option<Stiffness>) {
        let s = &self.surface;
        let by_metric = self.membrane.first * frame.local;
        let by_bend = stretch * frame.local;
        let n_metric = by_metric.transpose() * n;
        let m_bend = by_bend.transpose() * m;
        let christoffel: [[f64; 2]; 3] = std::array::from_fn(|i| std::array::from_fn(|c| g[2 + i].dot(&s.dual[c])));

        let mut rows = SMatrix::<f64, 6, 15>::zeros();
        for i in 0..3 {
            rows[(0, i)] = 2.0 * g[0][i];
            rows[(1, 3 + i)] = 2.0 * g[1][i];
            rows[(2, i)] = g[1][i];
            rows[(2, 3 + i)] = g[0][i];
            for k in 0..3 {
                rows[(3 + k, 6 + 3 * k + i)] = s.normal[i];
                rows[(3 + k, i)] = -christoffel[k][0] * s.normal[i];
                rows[(3 + k, 3 + i)] = -christoffel[k][1] * s.normal[i];
            }
        }
        let mut load = SVector::<f64, 6>::zeros();
        load.fixed_rows_mut::<3>(0).copy_from(&n_metric);
        load.fixed_rows_mut::<3>(3).copy_from(&m_bend);
        let forces = rows.transpose() * load;
        let Some([nn, nm, mm]) = tangent else { return (forces, None) };

        let mut section = SMatrix::<f64, 6, 6>::zeros();
        let mut curved = by_metric.transpose() * nn * by_metric;
        for k in 0..3 {
            curved += frame.local.transpose() * self.membrane.second[k] * frame.local * n[k];
        }
        let across = by_metric.transpose() * nm * by_bend;
        section.fixed_view_mut::<3, 3>(0, 0).copy_from(&curved);
        section.fixed_view_mut::<3, 3>(0, 3).copy_from(&across);
        section.fixed_view_mut::<3, 3>(3, 0).copy_from(&across.transpose());
        section.fixed_view_mut::<3, 3>(3, 3).copy_from(&(by_bend.transpose() * mm * by_bend));
        let mut stiffness = rows.transpose() * (section * rows);
        self.add_turning(&mut stiffness, &n_metric, &m_bend, &christoffel);
        (forces, Some(stiffness))
    }

    /// Second variation of metric and curvature under the present forces.
    fn add_turning(&self, h: &mut Stiffness, n: &Vector3<f64>, m: &Vector3<f64>, christoffel: &[[f64; 2]; 3]) {
        let s = &self.surface;
        let bar: [f64; 2] = std::array::from_fn(|c| (0..3).map(|k| m[k] * christoffel[k][c]).sum());
        let bend = m.dot(&s.bend);
        for i in 0..3 {
            h[(i, i)] += 2.0 * n[0];
            h[(3 + i, 3 + i)] += 2.0 * n[1];
            h[(i, 3 + i)] += n[2];
            h[(3 + i, i)] += n[2];
        }
        for c in 0..2 {
            let tilt = s.dual[c] * s.normal.transpose();
            for k in 0..3 {
                add(h, 2 + k, c, &(-m[k] * tilt));
                add(h, c, 2 + k, &(-m[k] * tilt.transpose()));
            }
            for d in 0..2 {
                add(h, d, c, &(bar[d] * tilt));
                add(h, c, d, &(bar[d] * tilt.transpose()));
                let dual = if c == d { s.dual_metric[c] } else { s.dual_metric[2] };
                add(h, c, d, &(-bend * dual * s.normal * s.normal.transpose()));
            }
        }
    }
}

fn add(h: &mut Stiffness, row: usize, column: usize, block: &Matrix3<f64>) {
    let mut view = h.fixed_view_mut::<3, 3>(3 * row, 3 * column);
    view += block;
}

/// What a membrane strain does to curvature as a layer feels it: `λ₃ U⁻¹ k U⁻¹`, the sheet being thinner
/// by `λ₃ = e^(−2 ε_m)` (plastic flow keeps volume) and its fibres longer by `U`.
pub fn stretch_of(strain: &Modes) -> Matrix3<f64> {
    // U⁻¹ = e^(−h): modes of the exponential of a plane tensor
    let size = strain[1].hypot(strain[2]);
    let ratio = if size > 1e-12 { size.sinh() / size } else { 1.0 };
    let scale = (-strain[0]).exp();
    let u = Vector3::new(size.cosh(), -strain[1] * ratio, -strain[2] * ratio) * scale;
    // U⁻¹ k U⁻¹ in modes: (u₀+u)(k₀+k)(u₀+u) with products of symmetric plane tensors
    let square = u[1] * u[1] + u[2] * u[2];
    let plain = u[0] * u[0] - square;
    let thin = (-2.0 * strain[0]).exp();
    let (a, b) = (u[1], u[2]);
    Matrix3::new(
        u[0] * u[0] + square,
        2.0 * u[0] * a,
        2.0 * u[0] * b,
        2.0 * u[0] * a,
        plain + 2.0 * a * a,
        2.0 * a * b,
        2.0 * u[0] * b,
        2.0 * a * b,
        plain + 2.0 * b * b,
    ) * thin
}
