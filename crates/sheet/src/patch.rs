//! A piece of panel and what it remembers: forces and stiffness at any shape.

use crate::dissect::Front;
use crate::edges::{Edges, Held, hold};
use crate::factor::Factor;
use crate::mesh::Mesh;
use crate::part::Part;
use crate::section::{Layers, Section, add_up, elastic};
use crate::shell::{Bent, stretch_of};
use crate::stencil::{KEPT, Stencil};
use crate::strain::Modes;
use crate::yielding::{Memory, Metal, equivalent};
use nalgebra::{Matrix3, Vector3};
use rayon::prelude::*;

/// The sheet folded over or turned inside out: the shape asked for cannot be.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("the sheet folds over itself")]
pub struct Folded;

/// A piece of panel.
pub struct Patch {
    /// Cells and undeformed surface.
    pub mesh: Mesh,
    /// Metal.
    pub metal: Metal,
    /// Layers of the thickness.
    pub layers: Layers,
    /// Places held by edges and braces.
    pub held: Vec<Held>,
    /// Present coefficients of the surface.
    pub places: Vec<Vector3<f64>>,
    /// Memory of every layer of every point, layers together.
    pub memory: Vec<Memory>,
    /// What the last settled membrane strain does to curvature, a point.
    pub(crate) stretch: Vec<Matrix3<f64>>,
    pub(crate) order: Front,
}

/// Forces and stiffness of a patch at some shape.
pub struct State {
    /// Force the sheet and what holds it exert against each node, N.
    pub force: Vec<Vector3<f64>>,
    /// Its derivative by the places.
    pub stiffness: Stencil,
    /// Memory that would hold if this shape were kept.
    pub memory: Vec<Memory>,
}

/// Forces of a patch at some shape alone.
pub struct Forces {
    /// Force the sheet and what holds it exert against each node, N.
    pub force: Vec<Vector3<f64>>,
    /// Memory that would hold if this shape were kept.
    pub memory: Vec<Memory>,
}

/// Strains at one point of the sheet.
pub struct Strained {
    /// Membrane strain, modes.
    pub membrane: Modes,
    /// Change of curvature, modes, 1/mm.
    pub curvature: Modes,
    /// Section forces.
    pub section: Section,
}

impl Patch {
    /// A patch at rest without any memory.
    pub fn new(mesh: Mesh, metal: Metal, thickness: f64, layers: usize, edges: &Edges) -> Self {
        let layers = Layers::new(thickness, layers);
        let membrane = metal.e_mpa * thickness;
        let bending = membrane * thickness * thickness / (12.0 * (1.0 - metal.nu * metal.nu));
        let held = hold(&mesh, edges, membrane, bending);
        let order = Front::new(&Stencil::new(mesh.x.splines(), mesh.y.splines()), &mesh.active);
        let memory = vec![Memory::default(); mesh.points.len() * layers.len()];
        let stretch = vec![Matrix3::identity(); mesh.points.len()];
        Self { places: mesh.rest.clone(), mesh, metal, layers, held, memory, stretch, order }
    }

    /// Forces and stiffness at the shape `places`, seen from the remembered state.
    pub fn state(&self, places: &[Vector3<f64>]) -> Result<State, Folded> {
        let mut stiffness = self.no_stiffness();
        let Forces { force, memory } = self.forces(places, Some(&mut stiffness))?;
        Ok(State { force, stiffness, memory })
    }

    /// Room for its stiffness, all zero.
    pub(crate) fn no_stiffness(&self) -> Stencil {
        Stencil::new(self.mesh.x.splines(), self.mesh.y.splines())
    }

    /// Forces at the shape `places`; its stiffness too, where there is room for it. Without, it is a third of the work.
    pub(crate) fn forces(
        &self,
        places: &[Vector3<f64>],
        mut stiffness: Option<&mut Stencil>,
    ) -> Result<Forces, Folded> {
        let ny = self.mesh.y.splines();
        let mut sum = Forces { force: vec![Vector3::zeros(); places.len()], memory: self.memory.clone() };
        let n = self.layers.len();
        let per_chunk = self.mesh.x.cells().div_ceil(2 * rayon::current_num_threads()).max(1);
        let mut jobs = Vec::new();
        let mut rest = sum.memory.as_mut_slice();
        let mut blocks = stiffness.as_mut().map(|s| s.blocks.as_mut_slice());
        for first in (0..self.mesh.x.cells()).step_by(per_chunk) {
            let last = (first + per_chunk).min(self.mesh.x.cells());
            let points = self.mesh.columns[first]..self.mesh.columns[last];
            let (memory, after) = rest.split_at_mut(points.len() * n);
            rest = after;
            let own = blocks.take().map(|b| b.split_at_mut((last - first) * ny * KEPT));
            let (own, after) = own.map_or((None, None), |(own, after)| (Some(own), Some(after)));
            blocks = after;
            jobs.push((Part::new(first, last - first, ny, own), last, points, memory));
        }
        let parts: Vec<_> = jobs
            .into_par_iter()
            .map(|(mut part, last, points, memory)| {
                for (i, next) in points.zip(memory.chunks_mut(n)) {
                    self.add_point(i, places, next, &mut part)?;
                }
                Ok((part.finish(), last))
            })
            .collect::<Result<_, Folded>>()?;
        for ((first, force, over), last) in parts {
            for (to, f) in sum.force[first..].iter_mut().zip(&force) {
                *to += f;
            }
            if let Some(stiffness) = &mut stiffness {
                stiffness.absorb(&over, last * ny);
            }
        }
        self.add_held(places, &mut sum.force, stiffness);
        Ok(sum)
    }

    fn add_point(
        &self,
        i: usize,
        places: &[Vector3<f64>],
        next: &mut [Memory],
        part: &mut Part<'_>,
    ) -> Result<(), Folded> {
        let point = &self.mesh.points[i];
        let g = self.mesh.slopes(point.node, &point.shape, places);
        let bent = Bent::of(&point.frame, &self.stretch[i], &g).ok_or(Folded)?;
        let section = self.section(i, &bent, next);
        let tangent = part.stiff().then_some(&section.tangent);
        let (force, stiffness) =
            bent.forces(&point.frame, &self.stretch[i], &g, (&section.force, &section.moment), tangent);
        part.add(point.node, &point.shape, point.area, &force, stiffness.as_ref());
        Ok(())
    }

    fn section(&self, i: usize, bent: &Bent, next: &mut [Memory]) -> Section {
        let n = self.layers.len();
        if !self.mesh.points[i].sheet {
            return elastic(&self.metal, self.layers.thickness(), &bent.membrane.value, &bent.curvature);
        }
        let memory = &self.memory[i * n..(i + 1) * n];
        if self.is_elastic(memory, &bent.membrane.value, &bent.curvature) {
            return elastic(&self.metal, self.layers.thickness(), &bent.membrane.value, &bent.curvature);
        }
        add_up(&self.metal, &self.layers, memory, &bent.membrane.value, &bent.curvature, next)
    }

    /// Whether a section without memory stays elastic: its stress is straight across the thickness and the
    /// equivalent stress convex, so the faces decide.
    fn is_elastic(&self, memory: &[Memory], membrane: &Modes, curvature: &Modes) -> bool {
        let k = self.metal.stiffness();
        let limit = self.metal.hardening.yield_mpa();
        let half = 0.5 * self.layers.thickness();
        memory.iter().all(|m| m.spent == 0.0 && m.plastic == Modes::zeros())
            && [-half, half].iter().all(|z| equivalent(&k.component_mul(&(membrane - *z * curvature))) <= limit)
    }

    fn add_held(&self, places: &[Vector3<f64>], sum: &mut [Vector3<f64>], mut stencil: Option<&mut Stencil>) {
        for held in &self.held {
            let nodes = self.mesh.nodes(held.node);
            let at = self.mesh.value(held.node, &held.shape, places);
            let g = self.mesh.slopes(held.node, &held.shape, places);
            let (force, stiffness) = held.forces(&at, &g);
            for (i, row) in nodes.into_iter().enumerate() {
                sum[row] += (0..3).map(|a| held.shape[a][i] * force[a]).sum::<Vector3<f64>>();
                let Some(stencil) = &mut stencil else { continue };
                for (j, column) in nodes.into_iter().enumerate() {
                    let mut block = Matrix3::zeros();
                    for a in 0..3 {
                        for b in 0..3 {
                            block += held.shape[a][i] * held.shape[b][j] * stiffness[a][b];
                        }
                    }
                    stencil.add(row, column, &columns(&block));
                }
            }
        }
    }

    /// The stiffness of a state, factored.
    pub fn factor(&self, state: &State) -> Factor<'_> {
        Factor::new(&self.order, &state.stiffness)
    }

    /// Strains and section forces of point `i` at the present shape.
    pub fn strained(&self, i: usize) -> Result<Strained, Folded> {
        let point = &self.mesh.points[i];
        let g = self.mesh.slopes(point.node, &point.shape, &self.places);
        let bent = Bent::of(&point.frame, &self.stretch[i], &g).ok_or(Folded)?;
        let mut next = vec![Memory::default(); self.layers.len()];
        let section = self.section(i, &bent, &mut next);
        Ok(Strained { membrane: bent.membrane.value, curvature: bent.curvature, section })
    }

    /// Keeps a shape: the memory becomes what it would leave.
    pub fn keep(&mut self, places: Vec<Vector3<f64>>, memory: Vec<Memory>) {
        self.places = places;
        self.memory = memory;
        let n = self.layers.len();
        for (i, point) in self.mesh.points.iter().enumerate() {
            // an elastic place keeps its stretch at one, so that its energy is a function of shape alone
            if self.memory[i * n..(i + 1) * n].iter().any(|m| m.spent > 0.0) {
                let g = self.mesh.slopes(point.node, &point.shape, &self.places);
                if let Some(bent) = Bent::of(&point.frame, &self.stretch[i], &g) {
                    self.stretch[i] = stretch_of(&bent.membrane.value);
                }
            }
        }
    }
}

/// A 3×3 block as the stencil keeps it.
pub fn columns(block: &Matrix3<f64>) -> [f64; 9] {
    std::array::from_fn(|i| block.as_slice()[i])
}
