//! The smoothest surface through scattered heights, and what smoothness does not know.
//!
//! Of all surfaces that meet the heights as they are doubted, the thin plate spline bends least
//! (∬ z_xx² + 2 z_xy² + z_yy²). It is also the best guess (kriging) for a surface of which a plane is unknown and whose
//! covariance is `τ² r² ln r` between places `r` apart, so the same equations give the doubt of the guess (Duchon 1977;
//! Wahba, Spline Models for Observational Data, 1990, chapter 2; Cressie, Statistics for Spatial Data, 1993, section 5.4).
//!
//! Limits: dense equations, for hundreds of points, not thousands; a surface much rougher than `τ` says is outside its
//! doubt.

use nalgebra::{DMatrix, DVector, Dyn, LU};

/// A height at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Pin {
    /// Place, mm.
    pub at: (f64, f64),
    /// Height, mm.
    pub z_mm: f64,
    /// One-sigma doubt of the height, mm.
    pub sigma_mm: f64,
}

/// A thin plate through pins, ready to be asked.
pub(crate) struct ThinPlate {
    pins: Vec<Pin>,
    /// Where places are counted from, and the length that is 1: keeps the equations well scaled.
    origin: (f64, f64),
    unit_mm: f64,
    tau2: f64,
    equations: LU<f64, Dyn, Dyn>,
    weights: DVector<f64>,
}

/// Unknown terms of the plane.
const PLANE: usize = 3;

impl ThinPlate {
    /// Lays a plate of roughness `tau2` (mm², over the length `unit_mm`) on at least three pins that are not in line.
    /// None where they are.
    pub fn new(pins: Vec<Pin>, unit_mm: f64, tau2: f64) -> Option<Self> {
        let n = pins.len();
        let origin = pins.iter().fold((0.0, 0.0), |s, p| (s.0 + p.at.0 / n as f64, s.1 + p.at.1 / n as f64));
        let mut a = DMatrix::zeros(n + PLANE, n + PLANE);
        for i in 0..n {
            for j in 0..i {
                let k = tau2 * bend(distance(pins[i].at, pins[j].at) / unit_mm);
                (a[(i, j)], a[(j, i)]) = (k, k);
            }
            a[(i, i)] = pins[i].sigma_mm.powi(2);
            for (k, v) in plane(pins[i].at, origin, unit_mm).into_iter().enumerate() {
                (a[(i, n + k)], a[(n + k, i)]) = (v, v);
            }
        }
        let heights = DVector::from_fn(n + PLANE, |i, _| pins.get(i).map_or(0.0, |p| p.z_mm));
        let equations = a.lu();
        let weights = equations.solve(&heights).filter(|w| w.iter().all(|v| v.is_finite()))?;
        Some(Self { pins, origin, unit_mm, tau2, equations, weights })
    }

    /// Height and its one-sigma doubt at a place, mm.
    pub fn at(&self, place: (f64, f64)) -> (f64, f64) {
        let n = self.pins.len();
        let mut k = DVector::zeros(n + PLANE);
        for (i, pin) in self.pins.iter().enumerate() {
            k[i] = self.tau2 * bend(distance(pin.at, place) / self.unit_mm);
        }
        plane(place, self.origin, self.unit_mm).into_iter().enumerate().for_each(|(j, v)| k[n + j] = v);
        let left = self.equations.solve(&k).map_or(f64::INFINITY, |w| -w.dot(&k));
        (self.weights.dot(&k), left.max(0.0).sqrt())
    }
}

/// Roughness under which pins are most likely, their doubts left aside (restricted maximum likelihood: what is left of
/// the heights when the plane is taken out). None with too few pins or pins in line.
pub(crate) fn roughness(pins: &[Pin], unit_mm: f64) -> Option<f64> {
    let n = pins.len();
    if n <= PLANE {
        return None;
    }
    let bare = pins.iter().map(|p| Pin { sigma_mm: 0.0, ..*p }).collect();
    let plate = ThinPlate::new(bare, unit_mm, 1.0)?;
    // zᵀ K⁻¹ z on the space without planes is zᵀ w, since the weights are orthogonal to every plane.
    let energy: f64 = pins.iter().zip(plate.weights.iter()).map(|(p, w)| p.z_mm * w).sum();
    (energy.is_finite() && energy > 0.0).then(|| energy / (n - PLANE) as f64)
}

fn distance(a: (f64, f64), b: (f64, f64)) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

fn plane(at: (f64, f64), origin: (f64, f64), unit_mm: f64) -> [f64; PLANE] {
    [1.0, (at.0 - origin.0) / unit_mm, (at.1 - origin.1) / unit_mm]
}

/// r² ln r.
fn bend(r: f64) -> f64 {
    if r > 0.0 { r * r * r.ln() } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rows<const N: usize>(bytes: &[u8]) -> Vec<[f64; N]> {
        let all: Vec<f64> = bytes.as_chunks::<8>().0.iter().map(|b| f64::from_le_bytes(*b)).collect();
        all.as_chunks::<N>().0.to_vec()
    }

    fn pins() -> Vec<Pin> {
        let pin = |[x, y, z_mm, sigma_mm]: [f64; 4]| Pin { at: (x, y), z_mm, sigma_mm };
        let bytes = include_bytes!("../../../tests/reference/thin_plate_pins_60x4.f64");
        rows(bytes).into_iter().map(pin).collect()
    }

    /// SciPy's spline on the same pins (tests/reference/thin_plate.py): unit 10 mm, roughness 0.2 mm.
    #[test]
    fn equals_scipy() {
        let plate = ThinPlate::new(pins(), 10.0, 0.04).unwrap();
        for [x, y, z] in rows(include_bytes!("../../../tests/reference/thin_plate_answer_40x3.f64")) {
            let off_mm = plate.at((x, y)).0 - z;
            assert!(off_mm.abs() < 1e-8, "{off_mm} mm off at {x}, {y}; heights reach 1.4 mm");
        }
    }

    /// A plane is met exactly, and a plate of twice the roughness is said to be twice as uncertain.
    #[test]
    fn a_plane_is_no_bend_and_doubt_grows_with_roughness() {
        let flat: Vec<Pin> =
            pins().into_iter().map(|p| Pin { z_mm: 0.3 + 0.02 * p.at.0 - 0.01 * p.at.1, sigma_mm: 0.0, ..p }).collect();
        let plate = |tau: f64| ThinPlate::new(flat.clone(), 10.0, tau * tau).unwrap();
        let (z, doubt) = plate(0.2).at((1.0, 4.5));
        assert!((z - (0.3 + 0.02 - 0.045)).abs() < 1e-9, "{z}");
        assert!((plate(0.4).at((1.0, 4.5)).1 / doubt - 2.0).abs() < 1e-6);
        assert!(roughness(&flat, 10.0).is_none_or(|tau2| tau2 < 1e-18));
    }

    #[test]
    fn pins_in_line_hold_no_plate() {
        let line: Vec<Pin> = (0..6).map(|k| Pin { at: (f64::from(k), 0.0), z_mm: 0.0, sigma_mm: 0.0 }).collect();
        assert!(ThinPlate::new(line, 5.0, 1.0).is_none());
    }
}
