//! One step of Newton's method: where the stiffness says the balance is, and how much of the way to go.

use crate::equilibrium::{Drive, Given, Stopped};
use crate::factor::Factor;
use crate::look::{At, Look, look};
use crate::patch::Patch;
use nalgebra::Vector3;

/// A change of the shape, three numbers a node, and of where the drive stands.
pub(crate) struct Step {
    places: Vec<f64>,
    level: f64,
    force: f64,
}

/// The step from a look to where the balance would be, were the stiffness to stay.
pub(crate) fn step(
    patch: &Patch,
    drive: &Drive,
    given: Given,
    now: &Look,
    at: &At,
    missing: f64,
    factor: &Factor,
) -> Step {
    let mut a: Vec<f64> = now.force.iter().flat_map(|f| [-f.x, -f.y, -f.z]).collect();
    hold_idle(patch, &mut a);
    factor.solve(&mut a);
    let mut step = Step { places: a, level: 0.0, force: 0.0 };
    match (given, drive, &now.pressed) {
        (Given::Level(_), Drive::Load(load), _) => {
            let mut b = vec![0.0; 3 * at.places.len()];
            for (node, share) in &load.share {
                b[3 * node + 2] = load.way * share;
            }
            factor.solve(&mut b);
            let along = |v: &[f64]| load.share.iter().map(|(n, s)| s * v[3 * n + 2]).sum::<f64>();
            step.force = (missing - along(&step.places)) / along(&b);
            for (p, b) in step.places.iter_mut().zip(&b) {
                *p += step.force * b;
            }
        }
        (_, Drive::Contact(contact), Some(pressed)) if missing != 0.0 => {
            let mut b = vec![0.0; 3 * at.places.len()];
            for (node, k) in &pressed.coupling {
                for c in 0..3 {
                    b[3 * node + c] += k[c];
                }
            }
            let column = b.clone();
            factor.solve(&mut b);
            let dot = |v: &[f64]| column.iter().zip(v).map(|(c, v)| c * v).sum::<f64>();
            let give = pressed.by_level_twice - dot(&b);
            step.level = match given {
                Given::Level(_) => missing,
                Given::Force(_) => (contact.way * missing - dot(&step.places)) / give,
            };
            for (p, b) in step.places.iter_mut().zip(&b) {
                *p -= step.level * b;
            }
        }
        _ => {}
    }
    step
}

/// Nodes without sheet stay where they are.
fn hold_idle(patch: &Patch, x: &mut [f64]) {
    for (n, active) in patch.mesh.active.iter().enumerate() {
        if !active {
            x[3 * n..3 * n + 3].fill(0.0);
        }
    }
}

/// Takes the step, or less of it where the whole would shoot past the balance along it.
pub(crate) fn advance(
    patch: &Patch,
    drive: &Drive,
    at: &At,
    now: &Look,
    step: &Step,
    (rounds, stiff): (usize, bool),
) -> Result<(At, Look), Stopped> {
    let power = |look: &Look| {
        look.force
            .iter()
            .enumerate()
            .map(|(n, f)| f.x * step.places[3 * n] + f.y * step.places[3 * n + 1] + f.z * step.places[3 * n + 2])
            .sum::<f64>()
    };
    let before = power(now);
    let mut share = 1.0;
    let mut last = Err(Stopped::Folded);
    for _ in 0..5 {
        let mut next = at.clone();
        for (n, p) in next.places.iter_mut().enumerate() {
            *p += share * Vector3::new(step.places[3 * n], step.places[3 * n + 1], step.places[3 * n + 2]);
        }
        next.level += share * step.level;
        next.force += share * step.force;
        match look(patch, drive, &next, stiff) {
            Err(stopped) => {
                share *= 0.25;
                last = Err(stopped);
            }
            Ok(look) => {
                let after = power(&look);
                // a step that goes downhill may end steeper; only a climb means it went too far
                let level = if before < 0.0 { after } else { after.abs() } <= 0.8 * before.abs();
                let calm = rounds == 0 || level || look.out_of_balance < now.out_of_balance;
                last = Ok((next, look));
                if calm {
                    break;
                }
                share *= (before / (before - after)).clamp(0.1, 0.6);
            }
        }
    }
    last
}
