//! Finding the shape in balance: Newton's method with a tip or a load whose level or force is given.

use crate::factor::Factor;
use crate::patch::{Patch, State};
use crate::tip::{Contact, Load, Pressed};
use nalgebra::Vector3;

/// What acts on the patch.
pub enum Drive<'a> {
    /// A rigid tip.
    Contact(&'a Contact),
    /// A patch of even pressure.
    Load(&'a Load),
    /// Nothing: the sheet is left alone.
    Nothing,
}

/// What is given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Given {
    /// Height of the tip, or mean height of what the load covers, mm.
    Level(f64),
    /// Force along the drive's way, N.
    Force(f64),
}

/// How far to go for balance.
#[derive(Debug, Clone, Copy)]
pub struct Tolerance {
    /// Out-of-balance force allowed whatever the load, N.
    pub force_n: f64,
    /// And as a share of the load.
    pub share: f64,
    /// Newton steps before giving up.
    pub rounds: usize,
    /// Drag against movement at the start, N/mm a node: for a sheet that snaps and has to find its other shape. It fades
    /// as the balance nears (switched evolution relaxation, Mulder and van Leer 1985).
    pub drag: f64,
}

impl Default for Tolerance {
    fn default() -> Self {
        Self { force_n: 2e-4, share: 1e-5, rounds: 16, drag: 0.0 }
    }
}

/// Why no balance was found.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum Stopped {
    /// The shape left what the theory can describe.
    #[error("the sheet folds over itself")]
    Folded,
    /// Newton's method did not come to rest.
    #[error("no balance after {rounds} rounds, {out_of_balance_n:.3} N left over")]
    NoBalance {
        /// Rounds tried.
        rounds: usize,
        /// What was left over, N.
        out_of_balance_n: f64,
    },
    /// Step after step did not come to rest.
    #[error("{rounds} rounds went by on steps that did not come to rest")]
    Lost {
        /// Rounds.
        rounds: usize,
    },
    /// More strain than any sheet bears.
    #[error("the metal is strained to over 100 % somewhere: it tears before that")]
    Torn,
}

/// A shape in balance.
pub struct Balance {
    /// Places of the nodes.
    pub places: Vec<Vector3<f64>>,
    /// Memory it leaves.
    pub memory: Vec<crate::yielding::Memory>,
    /// Height of the tip or mean height under the load, mm.
    pub level: f64,
    /// Force along the drive's way, N.
    pub force: f64,
    /// Newton steps taken.
    pub rounds: usize,
    /// Directions of negative stiffness at the last step.
    pub negative: usize,
}

/// Looks for balance from the shape `guess`; `level` and `force` are where the drive stands there. A tip whose
/// level is not yet the one given takes the sheet it touches along in the first step.
pub fn balance(
    patch: &Patch,
    drive: &Drive,
    given: Given,
    guess: &[Vector3<f64>],
    (level, force): (f64, f64),
    tolerance: Tolerance,
) -> Result<Balance, Stopped> {
    let mut at = At { places: guess.to_vec(), level, force };
    if let (Given::Force(f), Drive::Load(_)) = (given, drive) {
        at.force = f;
    }
    let mut now = look(patch, drive, &at)?;
    let (mut negative, mut worst) = (0, 0.0f64);
    for rounds in 0..tolerance.rounds {
        let missing = now.missing(drive, given, &at);
        let allowed = tolerance.force_n + tolerance.share * now.load(&at, drive).abs();
        if rounds > 0 && now.out_of_balance <= allowed && missing.abs() <= now.missing_allowed(given, allowed) {
            let force = now.load(&at, drive);
            let level = if let Drive::Load(load) = drive { load.level(&at.places) } else { at.level };
            return Ok(Balance { places: at.places, memory: now.state.memory, level, force, rounds, negative });
        }
        worst = worst.max(now.out_of_balance);
        let drag = tolerance.drag * (now.out_of_balance / worst.max(1e-30));
        now.slow(&patch.mesh.active, if now.out_of_balance > 100.0 * allowed { drag } else { 0.0 });
        if tolerance.drag > 0.0 {
            // a load whose level is given may hold one direction that gives way itself
            let allowed = matches!((drive, given), (Drive::Load(_), Given::Level(_)));
            now.make_stable(patch, usize::from(allowed), tolerance.drag);
        }
        let step = step(patch, drive, given, &now, &at, missing, &mut negative);
        (at, now) = advance(patch, drive, &at, &now, &step, rounds)?;
    }
    Err(Stopped::NoBalance { rounds: tolerance.rounds, out_of_balance_n: now.out_of_balance })
}

#[derive(Clone)]
struct At {
    places: Vec<Vector3<f64>>,
    level: f64,
    force: f64,
}

/// Forces at a trial shape.
struct Look {
    state: State,
    pressed: Option<Pressed>,
    /// Length of the vector of forces left over, N.
    out_of_balance: f64,
}

struct Step {
    places: Vec<f64>,
    level: f64,
    force: f64,
}

impl Look {
    /// Force of the drive along its way, N.
    fn load(&self, at: &At, drive: &Drive) -> f64 {
        match (drive, &self.pressed) {
            (Drive::Contact(contact), Some(pressed)) => contact.way * pressed.by_level,
            _ => at.force,
        }
    }

    /// Adds a drag to the stiffness.
    fn slow(&mut self, active: &[bool], drag: f64) {
        if drag > 0.0 {
            for node in (0..active.len()).filter(|n| active[*n]) {
                self.state.stiffness.add(node, node, &[drag, 0.0, 0.0, 0.0, drag, 0.0, 0.0, 0.0, drag]);
            }
        }
    }

    /// Adds drag until no more directions give way than are allowed, so that a step goes downhill.
    fn make_stable(&mut self, patch: &Patch, allowed: usize, first: f64) {
        let mut drag = 0.05 * first;
        while drag < 1e4 * first && Factor::new(&patch.order, &self.state.stiffness).negative() > allowed {
            self.slow(&patch.mesh.active, drag);
            drag *= 3.0;
        }
    }

    /// How much of what is given is not there yet: mm of level or N of force.
    fn missing(&self, drive: &Drive, given: Given, at: &At) -> f64 {
        match (given, drive) {
            (Given::Level(l), Drive::Load(load)) => l - load.level(&at.places),
            (Given::Level(l), Drive::Contact(_)) => l - at.level,
            (Given::Force(f), Drive::Contact(_)) => f - self.load(at, drive),
            _ => 0.0,
        }
    }

    fn missing_allowed(&self, given: Given, allowed: f64) -> f64 {
        match given {
            Given::Level(_) => 1e-9,
            Given::Force(_) => allowed,
        }
    }
}

fn look(patch: &Patch, drive: &Drive, at: &At) -> Result<Look, Stopped> {
    let mut state = patch.state(&at.places).map_err(|_| Stopped::Folded)?;
    let mut pressed = None;
    match drive {
        Drive::Contact(contact) => {
            let (force, stiffness) = (&mut state.force, &mut state.stiffness);
            pressed = Some(contact.add(&patch.mesh, &at.places, at.level, force, stiffness));
        }
        Drive::Load(load) => {
            for (node, share) in &load.share {
                state.force[*node].z -= load.way * at.force * share;
            }
        }
        Drive::Nothing => {}
    }
    let active = patch.mesh.active.iter().zip(&state.force).filter(|(a, _)| **a);
    let out_of_balance = active.map(|(_, f)| f.norm_squared()).sum::<f64>().sqrt();
    if !out_of_balance.is_finite() {
        return Err(Stopped::Folded);
    }
    Ok(Look { state, pressed, out_of_balance })
}

fn step(patch: &Patch, drive: &Drive, given: Given, now: &Look, at: &At, missing: f64, negative: &mut usize) -> Step {
    let factor = Factor::new(&patch.order, &now.state.stiffness);
    *negative = factor.negative();
    let mut a: Vec<f64> = now.state.force.iter().flat_map(|f| [-f.x, -f.y, -f.z]).collect();
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
fn advance(
    patch: &Patch,
    drive: &Drive,
    at: &At,
    now: &Look,
    step: &Step,
    rounds: usize,
) -> Result<(At, Look), Stopped> {
    let power = |look: &Look| {
        look.state
            .force
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
        match look(patch, drive, &next) {
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
