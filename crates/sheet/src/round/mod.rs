//! A round piece of sheet about a tip: the shell and its metal with one coordinate left, quick enough to be asked in
//! milliseconds.
//!
//! Marguerre's shallow shell of revolution with von Kármán's membrane terms on cubic splines along the radius,
//! `ε_s = u' + ½(z'² − z₀'²), ε_θ = u/ρ, κ_s = z'' − z₀'', κ_θ = (z' − z₀')/ρ`, layers and metal as in the full shell.
//! What it holds at the start comes from outside, so only changes from there are its own.

mod settle;
#[cfg(test)]
mod tests;

use crate::quadrature::gauss;
use crate::section::{Layers, Section, add_up};
use crate::spline::{Axis, Four};
use crate::strain::Modes;
use crate::yielding::{Memory, Metal};
use nalgebra::{DMatrix, DVector, Matrix3, Vector3};
use std::f64::consts::TAU;

/// Points along the radius in a cell at which a tip may touch, as in the full solve.
const UNDER: usize = 4;

/// Membrane strain and change of curvature of a ring, along and round, as modes.
pub(crate) type Bent = (Modes, Modes);

/// A ring of the sheet.
#[derive(Clone)]
pub(crate) struct Ring {
    pub radius: f64,
    cell: usize,
    shape: Four,
    area: f64,
    /// What the rings' own strains lack of what the sheet holds at the start.
    offset: Bent,
}

/// A place that a tip may touch or a load cover.
#[derive(Clone)]
pub(crate) struct Under {
    /// Distance from the middle, mm.
    pub radius: f64,
    /// Area it stands for, mm².
    pub area: f64,
    cell: usize,
    share: [f64; 4],
}

/// Springs at the rim that stand for the sheet beyond, N/mm and N mm a mm of rim.
#[derive(Clone, Copy)]
pub(crate) struct Rim {
    pub along: f64,
    pub up: f64,
    pub turn: f64,
}

/// A round piece of sheet.
#[derive(Clone)]
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
    /// A rigid tip over these places: pressure and its slope for a place's radius and height.
    Tip(&'a [Under], &'a dyn Fn(f64, f64) -> (f64, f64)),
    /// Forces on the coefficients.
    Forces(&'a DVector<f64>),
    /// A load that sums to one, of the force that brings the mean height of what it covers to this, mm.
    Level(&'a DVector<f64>, f64),
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
        self.held = self.look(&self.start, &Act::Forces(&DVector::zeros(self.now.len())), 0.0).force;
    }

    fn n(&self) -> usize {
        self.axis.splines()
    }

    /// Height at a radius with the coefficients `at`.
    pub fn height(&self, at: &DVector<f64>, radius: f64) -> f64 {
        let cell = self.axis.cell(radius);
        self.sum(&self.axis.at(cell, radius)[0], cell, at)
    }

    fn strain(&self, ring: &Ring, at: &DVector<f64>, with_offset: bool) -> Bent {
        let (n, c, r) = (self.n(), ring.cell, ring.radius);
        let sum = |d: usize, from: usize| (0..4).map(|k| ring.shape[d][k] * at[from + c + k]).sum::<f64>();
        let (u, du, dz, ddz) = (sum(0, 0), sum(1, 0), sum(1, n), sum(2, n));
        let modes = |s: f64, t: f64| Vector3::new(0.5 * (s + t), 0.5 * (s - t), 0.0);
        let own = (modes(du + 0.5 * dz * dz, u / r), modes(ddz, dz / r));
        if with_offset { (own.0 + ring.offset.0, own.1 + ring.offset.1) } else { own }
    }

    /// Forces at a trial shape; `force_of_load` is that of a load whose level is given, N.
    fn look(&self, at: &DVector<f64>, act: &Act, force_of_load: f64) -> Look {
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
        }
        match act {
            Act::Tip(under, tip) => {
                for u in *under {
                    self.add_tip(u, tip(u.radius, self.sum(&u.share, u.cell, at)), &mut pressed, &mut stiffness);
                }
            }
            Act::Forces(forces) => pressed += *forces,
            Act::Level(load, _) => pressed.axpy(force_of_load, *load, 1.0),
        }
        force -= &pressed;
        self.add_rim(at, &mut force, &mut stiffness);
        Look { force, stiffness, memory, pressed }
    }

    fn add_tip(&self, u: &Under, (p, slope): (f64, f64), pressed: &mut DVector<f64>, k: &mut DMatrix<f64>) {
        if p == 0.0 {
            return;
        }
        let at = self.n() + u.cell;
        for a in 0..4 {
            pressed[at + a] += p * u.area * u.share[a];
            for b in 0..4 {
                k[(at + a, at + b)] -= slope * u.area * u.share[a] * u.share[b];
            }
        }
    }

    /// Sum over the heights of a cell.
    fn sum(&self, share: &[f64; 4], cell: usize, at: &DVector<f64>) -> f64 {
        (0..4).map(|k| share[k] * at[self.n() + cell + k]).sum()
    }

    fn add_ring(&self, ring: &Ring, at: &DVector<f64>, section: &Section, f: &mut DVector<f64>, k: &mut DMatrix<f64>) {
        let (n, dz) = (self.n(), self.sum(&ring.shape[1], ring.cell, at));
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

    /// Places under a tip or load of this radius.
    pub fn under(&self, radius: f64) -> Vec<Under> {
        let rule = gauss(UNDER);
        let mut places = Vec::new();
        for (cell, b) in self.axis.breaks.windows(2).enumerate().take_while(|(_, b)| b[0] < radius) {
            let half = 0.5 * (b[1].min(radius) - b[0]);
            for (s, w) in &rule {
                let radius = b[0] + half * (1.0 + s);
                let share = self.axis.at(cell, radius)[0];
                places.push(Under { radius, area: half * w * TAU * radius, cell, share });
            }
        }
        places
    }

    /// Even load within a radius, summing to one.
    pub fn even(&self, radius: f64) -> DVector<f64> {
        let mut load = DVector::zeros(self.now.len());
        let under = self.under(radius);
        let area: f64 = under.iter().map(|u| u.area).sum();
        for u in &under {
            for a in 0..4 {
                load[self.n() + u.cell + a] += u.area / area * u.share[a];
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
