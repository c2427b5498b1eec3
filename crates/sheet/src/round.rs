//! A round piece of sheet about a tip: the shell and its metal with one coordinate left, quick enough to be asked in
//! milliseconds.
//!
//! Marguerre's shallow shell of revolution with von Kármán's membrane terms on cubic splines along the radius,
//! `ε_s = u' + ½(z'² − z₀'²), ε_θ = u/ρ, κ_s = z'' − z₀'', κ_θ = (z' − z₀')/ρ`, layers and metal as in the full shell.
//! What it holds at the start comes from outside, so only changes from there are its own.

use crate::quadrature::gauss;
use crate::section::{Layers, Section, add_up};
use crate::spline::{Axis, Four};
use crate::strain::Modes;
use crate::yielding::{Memory, Metal};
use nalgebra::{DMatrix, DVector, Dyn, LU, Matrix3, Vector3};
use std::f64::consts::TAU;

/// Newton steps before a shape is given up.
const ROUNDS: usize = 25;
/// Out-of-balance force allowed, N.
const BALANCED_N: f64 = 0.01;

/// Membrane strain and change of curvature of a ring, along and round, as modes.
pub(crate) type Bent = (Modes, Modes);

/// A ring of the sheet.
pub(crate) struct Ring {
    pub radius: f64,
    cell: usize,
    shape: Four,
    area: f64,
    /// What the rings' own strains lack of what the sheet holds at the start.
    offset: Bent,
}

/// Springs at the rim that stand for the sheet beyond, N/mm and N mm a mm of rim.
#[derive(Clone, Copy)]
pub(crate) struct Rim {
    pub along: f64,
    pub up: f64,
    pub turn: f64,
}

/// A round piece of sheet.
pub(crate) struct Round {
    axis: Axis,
    metal: Metal,
    layers: Layers,
    pub rings: Vec<Ring>,
    pub memory: Vec<Memory>,
    pub rim: Rim,
    /// Coefficients: moves along the radius, then heights.
    pub now: DVector<f64>,
    start: DVector<f64>,
    /// Forces that hold the start in balance.
    held: DVector<f64>,
}

/// What acts on it.
pub(crate) enum Act<'a> {
    /// A rigid tip at this height: pressure and its slope for a ring's radius and height.
    Tip(&'a dyn Fn(f64, f64) -> (f64, f64)),
    /// Forces on the coefficients.
    Forces(&'a DVector<f64>),
}

/// Forces left over and their derivative.
struct Look {
    force: DVector<f64>,
    stiffness: DMatrix<f64>,
    memory: Vec<Memory>,
    /// What the tip presses, on the coefficients.
    pressed: DVector<f64>,
}

impl Round {
    /// A piece out to the end of `axis`, which starts at 0, standing at `height(ρ)`.
    pub fn new(axis: Axis, metal: Metal, layers: Layers, rim: Rim, height: &dyn Fn(f64) -> f64) -> Self {
        let rule = gauss(2);
        let mut rings = Vec::new();
        for (cell, b) in axis.breaks.windows(2).enumerate() {
            for (s, w) in &rule {
                let radius = 0.5 * (b[0] + b[1]) + 0.5 * (b[1] - b[0]) * s;
                let area = 0.5 * (b[1] - b[0]) * w * TAU * radius;
                rings.push(Ring { radius, cell, shape: axis.at(cell, radius), area, offset: Default::default() });
            }
        }
        let n = axis.splines();
        let mut now = DVector::zeros(2 * n);
        let matrix = DMatrix::from_fn(n, n, |i, j| {
            let (g, c) = (axis.greville(i), axis.cell(axis.greville(i)));
            if (c..c + 4).contains(&j) { axis.at(c, g)[0][j - c] } else { 0.0 }
        });
        let heights = DVector::from_fn(n, |i, _| height(axis.greville(i)));
        if let Some(z) = matrix.lu().solve(&heights) {
            now.rows_mut(n, n).copy_from(&z);
        }
        now[n] = now[n + 1]; // level at the middle
        let memory = vec![Memory::default(); rings.len() * layers.len()];
        Self { start: now.clone(), held: DVector::zeros(2 * n), axis, metal, layers, rings, memory, rim, now }
    }

    /// Gives the rings what the sheet holds and takes this for balance.
    pub fn hold(&mut self, strains: &[Bent], memory: Vec<Memory>) {
        self.memory = memory;
        for (i, wanted) in strains.iter().enumerate() {
            let own = self.strain(&self.rings[i], &self.start, false);
            let offset = (wanted.0 - own.0, wanted.1 - own.1);
            self.rings[i].offset = offset;
        }
        self.held = self.look(&self.start, &Act::Forces(&DVector::zeros(self.now.len()))).force;
    }

    fn n(&self) -> usize {
        self.axis.splines()
    }

    /// Height at a radius with the coefficients `at`.
    pub fn height(&self, at: &DVector<f64>, radius: f64) -> f64 {
        let cell = self.axis.cell(radius);
        let shape = self.axis.at(cell, radius)[0];
        (0..4).map(|k| shape[k] * at[self.n() + cell + k]).sum()
    }

    fn slope(&self, ring: &Ring, at: &DVector<f64>) -> f64 {
        (0..4).map(|k| ring.shape[1][k] * at[self.n() + ring.cell + k]).sum()
    }

    fn strain(&self, ring: &Ring, at: &DVector<f64>, with_offset: bool) -> Bent {
        let (n, c, r) = (self.n(), ring.cell, ring.radius);
        let sum = |d: usize, from: usize| (0..4).map(|k| ring.shape[d][k] * at[from + c + k]).sum::<f64>();
        let (u, du, dz, ddz) = (sum(0, 0), sum(1, 0), sum(1, n), sum(2, n));
        let modes = |s: f64, t: f64| Vector3::new(0.5 * (s + t), 0.5 * (s - t), 0.0);
        let own = (modes(du + 0.5 * dz * dz, u / r), modes(ddz, dz / r));
        if with_offset { (own.0 + ring.offset.0, own.1 + ring.offset.1) } else { own }
    }

    fn look(&self, at: &DVector<f64>, act: &Act) -> Look {
        let (n, layers) = (self.n(), self.layers.len());
        let mut memory = self.memory.clone();
        let mut force = -&self.held;
        let mut pressed = DVector::zeros(2 * n);
        let mut stiffness = DMatrix::zeros(2 * n, 2 * n);
        for (i, ring) in self.rings.iter().enumerate() {
            let (membrane, curvature) = self.strain(ring, at, true);
            let range = i * layers..(i + 1) * layers;
            let before = &self.memory[range.clone()];
            let section = add_up(&self.metal, &self.layers, before, &membrane, &curvature, &mut memory[range]);
            self.add_ring(ring, at, &section, &mut force, &mut stiffness);
            if let Act::Tip(tip) = act {
                let (p, slope) = tip(ring.radius, self.height_of(ring, at));
                if p != 0.0 {
                    for a in 0..4 {
                        pressed[n + ring.cell + a] += p * ring.area * ring.shape[0][a];
                        for b in 0..4 {
                            let (i, j) = (n + ring.cell + a, n + ring.cell + b);
                            stiffness[(i, j)] -= slope * ring.area * ring.shape[0][a] * ring.shape[0][b];
                        }
                    }
                }
            }
        }
        if let Act::Forces(forces) = act {
            pressed += *forces;
        }
        force -= &pressed;
        self.add_rim(at, &mut force, &mut stiffness);
        Look { force, stiffness, memory, pressed }
    }

    fn height_of(&self, ring: &Ring, at: &DVector<f64>) -> f64 {
        (0..4).map(|k| ring.shape[0][k] * at[self.n() + ring.cell + k]).sum()
    }

    fn add_ring(&self, ring: &Ring, at: &DVector<f64>, section: &Section, f: &mut DVector<f64>, k: &mut DMatrix<f64>) {
        let (n, dz) = (self.n(), self.slope(ring, at));
        // conjugate modes to forces along and round
        let pair = |m: &Modes| [0.5 * (m[0] + m[1]), 0.5 * (m[0] - m[1])];
        let block = |t: &Matrix3<f64>| {
            let g = |i: usize, j: usize| t[(i, j)];
            let (a, b, c, d) = (g(0, 0), g(0, 1), g(1, 0), g(1, 1));
            [[0.25 * (a + b + c + d), 0.25 * (a - b + c - d)], [0.25 * (a + b - c - d), 0.25 * (a - b - c + d)]]
        };
        let (force, moment) = (pair(&section.force), pair(&section.moment));
        let tangent = section.tangent.each_ref().map(block);
        // rows: ε_s, ε_θ, κ_s, κ_θ by the ring's eight coefficients
        let mut rows = [[0.0; 8]; 4];
        for a in 0..4 {
            let [v, d, dd] = [ring.shape[0][a], ring.shape[1][a], ring.shape[2][a]];
            (rows[0][a], rows[0][4 + a], rows[1][a]) = (d, dz * d, v / ring.radius);
            (rows[2][4 + a], rows[3][4 + a]) = (dd, d / ring.radius);
        }
        let s = |i: usize, j: usize| match (i / 2, j / 2) {
            (0, 0) => tangent[0][i][j],
            (1, 1) => tangent[2][i - 2][j - 2],
            (0, 1) => tangent[1][i][j - 2],
            _ => tangent[1][j][i - 2],
        };
        let load = [force[0], force[1], moment[0], moment[1]];
        let index = |a: usize| if a < 4 { ring.cell + a } else { n + ring.cell + a - 4 };
        let mut turned = [[0.0; 8]; 4];
        for (i, row) in turned.iter_mut().enumerate() {
            for (b, v) in row.iter_mut().enumerate() {
                *v = (0..4).map(|j| s(i, j) * rows[j][b]).sum();
            }
        }
        for a in 0..8 {
            f[index(a)] += ring.area * (0..4).map(|i| rows[i][a] * load[i]).sum::<f64>();
            for b in 0..8 {
                let mut v = (0..4).map(|i| rows[i][a] * turned[i][b]).sum::<f64>();
                if a >= 4 && b >= 4 {
                    v += force[0] * ring.shape[1][a - 4] * ring.shape[1][b - 4];
                }
                k[(index(a), index(b))] += ring.area * v;
            }
        }
    }

    fn add_rim(&self, at: &DVector<f64>, f: &mut DVector<f64>, k: &mut DMatrix<f64>) {
        let (n, last) = (self.n(), self.axis.breaks.len() - 1);
        let a = self.axis.breaks[last];
        let slope = self.axis.at(last - 1, a)[1];
        let change = at - &self.start;
        let length = TAU * a;
        f[n - 1] += length * self.rim.along * change[n - 1];
        k[(n - 1, n - 1)] += length * self.rim.along;
        f[2 * n - 1] += length * self.rim.up * change[2 * n - 1];
        k[(2 * n - 1, 2 * n - 1)] += length * self.rim.up;
        let at_rim = |i: usize| n + last - 1 + i;
        let turn: f64 = (0..4).map(|i| slope[i] * change[at_rim(i)]).sum();
        for i in 0..4 {
            f[at_rim(i)] += length * self.rim.turn * turn * slope[i];
            for j in 0..4 {
                k[(at_rim(i), at_rim(j))] += length * self.rim.turn * slope[i] * slope[j];
            }
        }
    }

    /// Holds the middle: no move along the radius, level.
    fn solve(&self, look: &Look) -> (LU<f64, Dyn, Dyn>, DVector<f64>) {
        let n = self.n();
        let mut k = look.stiffness.clone();
        let mut f = -&look.force;
        let stiff = 1e3 * k[(n + 1, n + 1)].abs().max(k[(1, 1)].abs());
        k[(0, 0)] += stiff;
        f[0] -= stiff * self.now[0];
        let off = self.now[n] - self.now[n + 1];
        for (i, s) in [(n, 1.0), (n + 1, -1.0)] {
            f[i] -= s * stiff * off;
            for (j, t) in [(n, 1.0), (n + 1, -1.0)] {
                k[(i, j)] += s * t * stiff;
            }
        }
        let lu = k.lu();
        let x = lu.solve(&f).unwrap_or_else(|| DVector::zeros(2 * n));
        (lu, x)
    }

    /// Finds balance under what acts and keeps what it leaves; the forces pressed, or none where there is no rest.
    pub fn settle(&mut self, act: &Act) -> Option<DVector<f64>> {
        let mut look = self.look(&self.now, act);
        for round in 0..ROUNDS {
            let (_, step) = self.solve(&look);
            let (size, before) = (self.left_over(&look), look.force.dot(&step));
            let mut share = 1.0;
            let (moved, next) = loop {
                let moved = &self.now + share * &step;
                let next = self.look(&moved, act);
                let after = next.force.dot(&step);
                // a step that goes downhill may end steeper; only a climb means it went too far
                let level = if before < 0.0 { after } else { after.abs() } <= 0.8 * before.abs();
                if round == 0 || level || self.left_over(&next) < size || share < 0.05 {
                    break (moved, next);
                }
                share *= (before / (before - after)).clamp(0.1, 0.6);
            };
            (self.now, look) = (moved, next);
            if self.left_over(&look) < BALANCED_N {
                self.memory = look.memory;
                return Some(look.pressed);
            }
        }
        None
    }

    /// Length of the forces left over, N; what the middle bears itself is none of them.
    fn left_over(&self, look: &Look) -> f64 {
        let n = self.n();
        let square: f64 = (0..2 * n).filter(|i| ![0, n, n + 1].contains(i)).map(|i| look.force[i].powi(2)).sum();
        (square + (look.force[n] + look.force[n + 1]).powi(2)).sqrt()
    }

    /// Move of the middle for a small force `load` on the coefficients that sums to one, mm a newton.
    pub fn give(&self, load: &DVector<f64>) -> f64 {
        let look = self.look(&self.now, &Act::Forces(&DVector::zeros(self.now.len())));
        let (lu, _) = self.solve(&look);
        lu.solve(load).map_or(0.0, |x| x.dot(load))
    }

    /// Even load within a radius, summing to one.
    pub fn even(&self, radius: f64) -> DVector<f64> {
        let mut load = DVector::zeros(self.now.len());
        let within: Vec<&Ring> = self.rings.iter().filter(|r| r.radius <= radius).collect();
        let area: f64 = within.iter().map(|r| r.area).sum();
        for ring in within {
            for a in 0..4 {
                load[self.n() + ring.cell + a] += ring.area / area * ring.shape[0][a];
            }
        }
        load
    }

    /// Sum of forces on the heights, N.
    pub fn total(&self, forces: &DVector<f64>) -> f64 {
        forces.rows(self.n(), self.n()).sum()
    }

    /// Largest strain of the outer face over the start's, tensile.
    pub fn face_strain(&self) -> f64 {
        let half = 0.5 * self.layers.thickness();
        let of = |ring: &Ring, at: &DVector<f64>| {
            let (membrane, curvature) = self.strain(ring, at, true);
            membrane - half * curvature
        };
        let added = |ring: &Ring| {
            let change = of(ring, &self.now) - of(ring, &self.start);
            change[0] + change[1].abs()
        };
        self.rings.iter().map(added).fold(0.0, f64::max)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hardening::Hardening;

    fn plate(hardening: Hardening) -> Round {
        let metal = Metal { e_mpa: 210000.0, nu: 0.3, hardening, kinematic_share: 0.0 };
        let focus = crate::spline::Focus { at: 0.0, reach: 5.0, fine: 1.0 };
        let axis = Axis::new(crate::spline::graded(0.0, 60.0, &[focus], 1.25, 6.0));
        let rim = Rim { along: 1e7, up: 1e7, turn: 1e8 };
        Round::new(axis, metal, Layers::new(0.7, 9), rim, &|_| 0.0)
    }

    /// A clamped disc under an even load within a radius: Timoshenko and Woinowsky-Krieger 1959, closed form.
    #[test]
    fn a_clamped_disc_gives_by_the_closed_form() {
        let mut round = plate(Hardening::Elastic);
        let load = round.even(10.0);
        round.settle(&Act::Forces(&(&load * 0.1))).expect("balance");
        let (a, c, d) = (60.0f64, 10.0f64, 210000.0 * 0.343 / (12.0 * 0.91));
        let known = 0.1 / (16.0 * std::f64::consts::PI * d) * (a * a - c * c * (0.75 + (a / c).ln()));
        let found = round.height(&round.now, 0.0);
        assert!((found / known - 1.0).abs() < 0.01, "{found} {known}");
    }

    /// Pressed 500 N by an even load on 10 mm and let go: CalculiX 2.20 CAX8R solids, `tests/calculix`.
    #[test]
    fn a_pressed_disc_equals_solids() {
        let mut round = plate(Hardening::Swift { k_mpa: 530.0, n: 0.2, yield_mpa: 200.0 });
        let load = round.even(10.0);
        for k in 1..=10 {
            round.settle(&Act::Forces(&(&load * (-50.0 * k as f64)))).expect("balance");
        }
        let held = round.height(&round.now, 0.0);
        for k in (0..5).rev() {
            round.settle(&Act::Forces(&(&load * (-100.0 * k as f64)))).expect("balance");
        }
        let left = round.height(&round.now, 0.0);
        println!("held {held:.4} left {left:.4}, solids -1.7647 -0.5569");
        assert!((held + 1.7647).abs() < 0.03 && (left + 0.5569).abs() < 0.03, "{held} {left}");
    }
}
