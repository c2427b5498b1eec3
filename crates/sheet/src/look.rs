//! Forces and stiffness at a trial shape, with the drive's own.

use crate::equilibrium::{Drive, Given, Stopped};
use crate::factor::Factor;
use crate::patch::{Forces, Patch};
use crate::stencil::Stencil;
use crate::tip::Pressed;
use crate::yielding::Memory;
use nalgebra::Vector3;

/// A trial shape, and where the drive stands.
#[derive(Clone)]
pub(crate) struct At {
    pub places: Vec<Vector3<f64>>,
    pub level: f64,
    pub force: f64,
}

/// Forces at a trial shape.
pub(crate) struct Look {
    pub force: Vec<Vector3<f64>>,
    pub memory: Vec<Memory>,
    /// None where forces alone were asked.
    pub stiffness: Option<Stencil>,
    pub pressed: Option<Pressed>,
    /// Length of the vector of forces left over, N.
    pub out_of_balance: f64,
}

impl Look {
    /// Force of the drive along its way, N.
    pub fn load(&self, at: &At, drive: &Drive) -> f64 {
        match (drive, &self.pressed) {
            (Drive::Contact(contact), Some(pressed)) => contact.way * pressed.by_level,
            _ => at.force,
        }
    }

    /// Adds a drag to the stiffness.
    pub fn slow(&mut self, active: &[bool], drag: f64) {
        if let Some(stiffness) = self.stiffness.as_mut().filter(|_| drag > 0.0) {
            for node in (0..active.len()).filter(|n| active[*n]) {
                stiffness.add(node, node, &[drag, 0.0, 0.0, 0.0, drag, 0.0, 0.0, 0.0, drag]);
            }
        }
    }

    /// Adds drag until no more directions give way than are allowed, so that a step goes downhill.
    pub fn make_stable(&mut self, patch: &Patch, allowed: usize, first: f64) {
        let mut drag = 0.05 * first;
        let mut factor = None;
        while drag < 1e4 * first && self.factor(patch, &mut factor).negative() > allowed {
            self.slow(&patch.mesh.active, drag);
            drag *= 3.0;
        }
    }

    /// Its stiffness factored, in the room of a factor that is no longer needed.
    pub fn factor<'f, 'p>(&self, patch: &'p Patch, room: &'f mut Option<Factor<'p>>) -> &'f Factor<'p> {
        let stiffness = self.stiffness.as_ref().expect("looked at with its stiffness");
        match room {
            Some(factor) => factor.renew(stiffness),
            None => *room = Some(Factor::new(&patch.order, stiffness)),
        }
        room.as_ref().expect("just made")
    }

    /// How much of what is given is not there yet: mm of level or N of force.
    pub fn missing(&self, drive: &Drive, given: Given, at: &At) -> f64 {
        match (given, drive) {
            (Given::Level(l), Drive::Load(load)) => l - load.level(&at.places),
            (Given::Level(l), Drive::Contact(_)) => l - at.level,
            (Given::Force(f), Drive::Contact(_)) => f - self.load(at, drive),
            _ => 0.0,
        }
    }

    pub fn missing_allowed(&self, given: Given, allowed: f64) -> f64 {
        match given {
            Given::Level(_) => 1e-9,
            Given::Force(_) => allowed,
        }
    }
}

pub(crate) fn look(patch: &Patch, drive: &Drive, at: &At, stiff: bool) -> Result<Look, Stopped> {
    let mut stiffness = stiff.then(|| patch.no_stiffness());
    let Forces { mut force, memory } = patch.forces(&at.places, stiffness.as_mut()).map_err(|_| Stopped::Folded)?;
    let mut pressed = None;
    match drive {
        Drive::Contact(contact) => {
            pressed = Some(contact.add(&patch.mesh, &at.places, at.level, &mut force, stiffness.as_mut()));
        }
        Drive::Load(load) => {
            for (node, share) in &load.share {
                force[*node].z -= load.way * at.force * share;
            }
        }
        Drive::Nothing => {}
    }
    let active = patch.mesh.active.iter().zip(&force).filter(|(a, _)| **a);
    let out_of_balance = active.map(|(_, f)| f.norm_squared()).sum::<f64>().sqrt();
    if !out_of_balance.is_finite() {
        return Err(Stopped::Folded);
    }
    Ok(Look { force, memory, stiffness, pressed, out_of_balance })
}
