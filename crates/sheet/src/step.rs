//! One step of a move: to a level or a force, in parts where the whole does not come to rest.

use crate::equilibrium::{Balance, Drive, Given, Stopped, Tolerance, balance};
use crate::moves::Outcome;
use crate::panel::Panel;
use crate::tip::{Contact, Load};
use nalgebra::Vector3;

/// How often a step is halved before it is given up.
const HALVINGS: u32 = 4;
/// Rounds that may be lost on shapes that did not come to rest, a move.
const LOST: usize = 400;
/// Plastic strain at which any body sheet has torn.
const TORN: f64 = 1.0;
/// How well a step is to be in balance: ten times closer changes what is left by under a millionth of a millimetre.
const REST: Tolerance = Tolerance { force_n: 2e-4, share: 1e-4, rounds: 16, drag: 0.0 };
/// How the other shape of a sheet that snaps is looked for.
const SNAP: Tolerance = Tolerance { force_n: 2e-4, share: 1e-5, rounds: 100, drag: 20.0 };

/// What acts.
pub enum Tool {
    /// A rigid tip.
    Contact(Contact),
    /// An even pressure.
    Load(Load),
}

impl Tool {
    /// Level at which it meets a surface, mm.
    pub fn level(&self, panel: &Panel, places: &[Vector3<f64>]) -> f64 {
        match self {
            Self::Contact(contact) => contact.first_touch(&panel.patch.mesh, places),
            Self::Load(load) => load.level(places),
        }
    }

    fn drive(&self) -> Drive<'_> {
        match self {
            Self::Contact(contact) => Drive::Contact(contact),
            Self::Load(load) => Drive::Load(load),
        }
    }
}

/// Where a move stands, and what has come of it so far.
pub struct Step {
    /// What acts.
    pub tool: Tool,
    /// −1 inward, +1 outward.
    pub way: f64,
    /// Level of first touch, mm.
    pub start: f64,
    /// Present level, mm.
    pub level: f64,
    /// Present force along the way, N.
    pub force: f64,
    /// Last change of shape, and of what was given.
    pub trend: Option<(Vec<Vector3<f64>>, f64)>,
    /// Numbers so far.
    pub outcome: Outcome,
    lost: usize,
}

impl Step {
    /// A tool that touches the panel and does not press yet.
    pub fn new(panel: &Panel, tool: Tool, way: f64) -> Self {
        let start = tool.level(panel, &panel.patch.places);
        let outcome = Outcome { curve: vec![[0.0, 0.0]], ..Outcome::default() };
        Self { tool, way, start, level: start, force: 0.0, trend: None, outcome, lost: 0 }
    }

    /// Travel from first touch, mm.
    pub fn travel(&self) -> f64 {
        (self.level - self.start) * self.way
    }

    /// A step to a level, or to `limit` where that force is met before it.
    pub fn go_below(&mut self, panel: &mut Panel, level: f64, limit: f64) -> Result<(), Stopped> {
        let change = level - self.level;
        match self.attempt(panel, Given::Level(level), change) {
            Ok(found) if found.force <= limit * (1.0 + 1e-9) => {
                self.accept(panel, found, change)?;
                self.outcome.curve.push([self.travel(), self.force]);
                Ok(())
            }
            Ok(found) => {
                let share = (limit - self.force) / (found.force - self.force);
                let (places, at) = (&panel.patch.places, self.level + share * change);
                let guess: Vec<_> = places.iter().zip(&found.places).map(|(a, b)| a + share * (b - a)).collect();
                self.trend = Some((guess.iter().zip(places).map(|(b, a)| b - a).collect(), limit - self.force));
                self.level = at;
                self.go(panel, Given::Force(limit))
            }
            Err(_) => self.go(panel, Given::Level(level)),
        }
    }

    /// One step, cut in halves where it does not come to rest.
    pub fn go(&mut self, panel: &mut Panel, given: Given) -> Result<(), Stopped> {
        let (from, to) = match given {
            Given::Level(l) => (self.level, l),
            Given::Force(f) => (self.force, f),
        };
        let again = |value: f64| match given {
            Given::Level(_) => Given::Level(value),
            Given::Force(_) => Given::Force(value),
        };
        let mut parts = 1u32;
        let mut done = 0u32;
        while done < parts {
            let value = |k: u32| from + (to - from) * f64::from(k) / f64::from(parts);
            let change = value(done + 1) - value(done);
            match self.attempt(panel, again(value(done + 1)), change) {
                Ok(found) => {
                    self.accept(panel, found, change)?;
                    done += 1;
                }
                Err(Stopped::Lost { rounds }) => return Err(Stopped::Lost { rounds }),
                Err(_) if parts >= 1 << HALVINGS => {
                    self.trend = None;
                    let found = self.find(panel, again(value(done + 1)), &panel.patch.places, self.level, SNAP)?;
                    self.accept(panel, found, change)?;
                    self.outcome.snapped_at_mm.push(self.travel());
                    self.trend = None;
                    done += 1;
                }
                Err(_) => {
                    self.trend = None;
                    (parts, done) = (2 * parts, 2 * done);
                }
            }
        }
        self.outcome.curve.push([self.travel(), self.force]);
        Ok(())
    }

    fn attempt(&mut self, panel: &Panel, given: Given, change: f64) -> Result<Balance, Stopped> {
        let patch = &panel.patch;
        let mut guess = patch.places.clone();
        let mut level = self.level;
        if let Some((shape, by)) = &self.trend {
            let share = (change / by).clamp(-2.0, 2.0);
            for (g, s) in guess.iter_mut().zip(shape) {
                *g += share * s;
            }
            if let Given::Level(l) = given {
                level = l;
            }
        }
        self.find(panel, given, &guess, level, REST)
    }

    /// The sheet with nothing touching it any more.
    pub fn let_go(&mut self, panel: &mut Panel) -> Result<(), Stopped> {
        let force_n = 2e-4 + 1e-6 * self.outcome.peak_force_n;
        let (gentle, snap) = (Tolerance { rounds: 40, ..Tolerance::default() }, SNAP);
        let mut free = Err(Stopped::Folded);
        for tolerance in [gentle, snap] {
            let places = &panel.patch.places;
            let tolerance = Tolerance { force_n, ..tolerance };
            free = balance(&panel.patch, &Drive::Nothing, Given::Force(0.0), places, (0.0, 0.0), tolerance);
            if free.is_ok() {
                break;
            }
        }
        let free = free?;
        self.outcome.iterations += free.rounds;
        panel.stable = free.negative == 0;
        panel.patch.keep(free.places, free.memory);
        self.level = self.tool.level(panel, &panel.patch.places);
        self.force = 0.0;
        self.outcome.curve.push([self.travel(), 0.0]);
        Ok(())
    }

    fn find(
        &mut self,
        panel: &Panel,
        given: Given,
        guess: &[Vector3<f64>],
        level: f64,
        tolerance: Tolerance,
    ) -> Result<Balance, Stopped> {
        if self.lost >= LOST {
            return Err(Stopped::Lost { rounds: self.lost });
        }
        let found = balance(&panel.patch, &self.tool.drive(), given, guess, (level, self.force), tolerance);
        match &found {
            Ok(found) => self.outcome.iterations += found.rounds,
            Err(_) => {
                self.outcome.iterations += tolerance.rounds;
                self.lost += tolerance.rounds;
            }
        }
        found
    }

    fn accept(&mut self, panel: &mut Panel, found: Balance, change: f64) -> Result<(), Stopped> {
        let moved = found.places.iter().zip(&panel.patch.places).map(|(b, a)| b - a).collect();
        self.trend = Some((moved, change));
        (self.level, self.force) = (found.level, found.force);
        self.outcome.peak_force_n = self.outcome.peak_force_n.max(found.force);
        panel.stable = found.negative == 0;
        panel.patch.keep(found.places, found.memory);
        if panel.max_plastic_strain() > TORN { Err(Stopped::Torn) } else { Ok(()) }
    }
}
