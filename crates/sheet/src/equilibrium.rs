//! Finding the shape in balance: Newton's method with a tip or a load whose level or force is given. Once it closes in,
//! the last steps are taken with the stiffness of the step before (the chord method, Kelley 1995), which needs forces
//! alone.

use crate::look::{At, look};
use crate::newton::{advance, step};
use crate::patch::Patch;
use crate::tip::{Contact, Load};
use crate::yielding::Memory;
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
    pub memory: Vec<Memory>,
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
    let mut now = look(patch, drive, &at, true)?;
    let mut factor = None;
    let mut closing = f64::INFINITY;
    let (mut negative, mut worst) = (0, 0.0f64);
    for rounds in 0..tolerance.rounds {
        let missing = now.missing(drive, given, &at);
        let allowed = tolerance.force_n + tolerance.share * now.load(&at, drive).abs();
        if rounds > 0 && now.out_of_balance <= allowed && missing.abs() <= now.missing_allowed(given, allowed) {
            let force = now.load(&at, drive);
            let level = if let Drive::Load(load) = drive { load.level(&at.places) } else { at.level };
            return Ok(Balance { places: at.places, memory: now.memory, level, force, rounds, negative });
        }
        let last = now.out_of_balance;
        let close = tolerance.drag == 0.0 && closing <= CLOSING && last * closing.powi(CHORDS) <= allowed;
        if let Some(factor) = factor.as_ref().filter(|_| close) {
            let step = step(patch, drive, given, &now, &at, missing, factor);
            let next = advance(patch, drive, &at, &now, &step, (rounds, false))?;
            if next.1.out_of_balance < CLOSING * last {
                closing = next.1.out_of_balance / last;
                (at, now) = next;
                continue;
            }
        }
        if now.stiffness.is_none() {
            now = look(patch, drive, &at, true)?;
        }
        worst = worst.max(now.out_of_balance);
        let drag = tolerance.drag * (now.out_of_balance / worst.max(1e-30));
        now.slow(&patch.mesh.active, if now.out_of_balance > 100.0 * allowed { drag } else { 0.0 });
        if tolerance.drag > 0.0 {
            // a load whose level is given may hold one direction that gives way itself
            let allowed = matches!((drive, given), (Drive::Load(_), Given::Level(_)));
            now.make_stable(patch, usize::from(allowed), tolerance.drag);
        }
        // where the step to come will close in enough, the one after it needs forces alone
        let foreseen = closing.powf(1.5);
        let enough = foreseen <= CLOSING && last * foreseen.powi(1 + CHORDS) <= 0.1 * allowed;
        let stiff = tolerance.drag > 0.0 || !enough;
        let factor = now.factor(patch, &mut factor);
        negative = factor.negative();
        let step = step(patch, drive, given, &now, &at, missing, factor);
        (at, now) = advance(patch, drive, &at, &now, &step, (rounds, stiff))?;
        closing = now.out_of_balance / last;
    }
    Err(Stopped::NoBalance { rounds: tolerance.rounds, out_of_balance_n: now.out_of_balance })
}

/// What of the forces out of balance a step may leave for the next to be taken with the same stiffness.
const CLOSING: f64 = 0.1;
/// Steps with the same stiffness at most, as far as can be foreseen.
const CHORDS: i32 = 2;
