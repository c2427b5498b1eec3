//! Carrying out a move: up in steps, down again, and let go.

use crate::equilibrium::{Balance, Drive, Given, Stopped, Tolerance, balance};
use crate::moves::{Goal, Move, Outcome};
use crate::panel::Panel;
use crate::tip::{Contact, Load};
use nalgebra::Vector3;

/// How often a step is halved before it is given up.
const HALVINGS: u32 = 4;
/// How the other shape of a sheet that snaps is looked for.
const SNAP: Tolerance = Tolerance { force_n: 2e-4, share: 1e-5, rounds: 100, drag: 20.0 };
/// Steps of unloading at least.
const UNLOADING: usize = 6;
/// Share of the peak force below which the tip is taken away altogether.
const LET_GO: f64 = 0.02;

/// Carries out `wanted` on the panel, which keeps what it leaves. Where no balance is found the panel stays at the
/// last shape that was in balance and the outcome says so.
pub fn perform(panel: &mut Panel, wanted: &Move) -> Outcome {
    let mut work = Work::new(panel, wanted);
    let result = work.up(panel, wanted).and_then(|()| work.held(panel)).and_then(|()| work.down(panel, wanted));
    let mut outcome = work.outcome;
    outcome.converged = result.is_ok();
    outcome.stopped = result.err();
    panel.describe_left(wanted, &mut outcome);
    outcome
}

enum Tool {
    Contact(Contact),
    Load(Load),
}

impl Tool {
    fn drive(&self) -> Drive<'_> {
        match self {
            Self::Contact(contact) => Drive::Contact(contact),
            Self::Load(load) => Drive::Load(load),
        }
    }
}

struct Work {
    tool: Tool,
    way: f64,
    at: [f64; 2],
    /// Level of first touch.
    start: f64,
    level: f64,
    force: f64,
    /// Last change of shape, and of what was given.
    trend: Option<(Vec<Vector3<f64>>, f64)>,
    outcome: Outcome,
}

impl Work {
    fn new(panel: &Panel, wanted: &Move) -> Self {
        let (patch, way) = (&panel.patch, wanted.kind.way());
        let tool = if wanted.even() {
            Tool::Load(Load::new(&patch.mesh, &wanted.tip, wanted.at, way))
        } else {
            let (t, e) = (patch.layers.thickness(), patch.metal.e_mpa);
            Tool::Contact(Contact::new(&patch.mesh, &wanted.tip, wanted.at, way, t, e))
        };
        let start = level(&tool, panel, &patch.places);
        let outcome = Outcome { curve: vec![[0.0, 0.0]], ..Outcome::default() };
        Self { tool, way, at: wanted.at, start, level: start, force: 0.0, trend: None, outcome }
    }

    fn up(&mut self, panel: &mut Panel, wanted: &Move) -> Result<(), String> {
        let steps = wanted.steps.max(1);
        let end = match wanted.goal {
            Goal::To(to) => level(&self.tool, panel, &panel.intended) + to,
            Goal::Travel(travel) => self.start + self.way * travel,
            Goal::Force(force) => return self.up_to_force(panel, force, steps),
        };
        if !((end - self.start) * self.way > 0.0) {
            return Ok(()); // the tip never reaches the sheet
        }
        for k in 1..=steps {
            let next = self.start + (end - self.start) * k as f64 / steps as f64;
            self.go(panel, Given::Level(next)).map_err(|why| self.say("loading", why))?;
        }
        Ok(())
    }

    fn up_to_force(&mut self, panel: &mut Panel, force: f64, steps: usize) -> Result<(), String> {
        if let Tool::Contact(_) = self.tool {
            // a tip that barely touches, so that a force has something to act on
            let first = self.start + self.way * 0.01 * panel.patch.layers.thickness();
            self.go(panel, Given::Level(first)).map_err(|why| self.say("first touch", why))?;
        }
        // towards the force by travel, which also passes where the sheet gives way
        let thickness = panel.patch.layers.thickness();
        let mut stride = 0.05 * thickness;
        let mut fallen = 0;
        while self.force < force * (1.0 - 1e-6) {
            let before = (self.level, self.force);
            self.go_below(panel, before.0 + self.way * stride, force).map_err(|why| self.say("loading", why))?;
            let (moved, gained) = ((self.level - before.0).abs(), self.force - before.1);
            let wanted = if gained > 0.0 { moved * force / steps as f64 / gained } else { thickness };
            stride = wanted.clamp(0.5 * stride, 2.0 * stride).min(thickness);
            fallen = if gained > 0.0 { 0 } else { fallen + 1 };
            if fallen > 200 {
                return Err(format!(
                    "the sheet gives way at {:.1} N and never bears {force} N",
                    self.outcome.peak_force_n
                ));
            }
        }
        Ok(())
    }

    /// A step to a level, or to `limit` where that force is met before it.
    fn go_below(&mut self, panel: &mut Panel, level: f64, limit: f64) -> Result<(), Stopped> {
        let change = level - self.level;
        match self.attempt(panel, Given::Level(level), change) {
            Ok(found) if found.force <= limit * (1.0 + 1e-9) => {
                self.accept(panel, found, change);
                self.outcome.curve.push([(self.level - self.start) * self.way, self.force]);
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

    fn held(&mut self, panel: &Panel) -> Result<(), String> {
        self.outcome.at_tip_held_mm = panel.deviation(self.at[0], self.at[1]);
        self.outcome.max_membrane_strain_held = panel.max_membrane_strain();
        Ok(())
    }

    fn down(&mut self, panel: &mut Panel, wanted: &Move) -> Result<(), String> {
        let peak = self.force;
        let steps = (wanted.steps / 3).max(UNLOADING);
        self.trend = None;
        let mut slope = self.first_unloading_slope(peak);
        for k in 0..4 * steps {
            if self.force <= LET_GO * peak {
                break;
            }
            let before = (self.level, self.force);
            let given = match self.tool {
                Tool::Load(_) => Given::Force((peak * (1.0 - (k + 1) as f64 / steps as f64)).max(0.0)),
                Tool::Contact(_) => Given::Level(self.level - self.way * peak / steps as f64 / slope),
            };
            self.go(panel, given).map_err(|why| self.say("unloading", why))?;
            let (moved, dropped) = ((self.level - before.0).abs(), before.1 - self.force);
            if moved > 1e-9 && dropped > 1e-3 * peak {
                slope = dropped / moved;
            } else {
                slope *= 0.5;
            }
        }
        self.let_go(panel).map_err(|why| self.say("letting go", why))
    }

    /// Twice the slope of the way up near the top, N/mm: unloading is stiffer than loading.
    fn first_unloading_slope(&self, peak: f64) -> f64 {
        let travel = (self.level - self.start).abs().max(1e-6);
        let before = self.outcome.curve.iter().rev().find(|p| p[1] < 0.9 * peak && p[0] < travel);
        before.map_or(peak / travel, |[x, f]| (2.0 * (peak - f) / (travel - x)).max(peak / travel))
    }

    fn let_go(&mut self, panel: &mut Panel) -> Result<(), Stopped> {
        let tolerance =
            Tolerance { rounds: 40, force_n: 2e-4 + 1e-6 * self.outcome.peak_force_n, ..Tolerance::default() };
        let places = panel.patch.places.clone();
        let free = balance(&panel.patch, &Drive::Nothing, Given::Force(0.0), &places, (0.0, 0.0), tolerance)?;
        self.outcome.iterations += free.rounds;
        panel.stable = free.negative == 0;
        panel.patch.keep(free.places, free.memory);
        let travel = (level(&self.tool, panel, &panel.patch.places) - self.start) * self.way;
        self.outcome.curve.push([travel, 0.0]);
        Ok(())
    }

    /// One step, cut in halves where it does not come to rest.
    fn go(&mut self, panel: &mut Panel, given: Given) -> Result<(), Stopped> {
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
                    self.accept(panel, found, change);
                    done += 1;
                }
                Err(_) if parts >= 1 << HALVINGS => {
                    self.trend = None;
                    let found = self.find(panel, again(value(done + 1)), &panel.patch.places, self.level, SNAP)?;
                    self.outcome.snapped_at_mm.push((found.level - self.start) * self.way);
                    self.accept(panel, found, change);
                    self.trend = None;
                    done += 1;
                }
                Err(_) => {
                    self.trend = None;
                    (parts, done) = (2 * parts, 2 * done);
                }
            }
        }
        self.outcome.curve.push([(self.level - self.start) * self.way, self.force]);
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
        self.find(panel, given, &guess, level, Tolerance::default())
    }

    fn find(
        &mut self,
        panel: &Panel,
        given: Given,
        guess: &[Vector3<f64>],
        level: f64,
        tolerance: Tolerance,
    ) -> Result<Balance, Stopped> {
        let found = balance(&panel.patch, &self.tool.drive(), given, guess, (level, self.force), tolerance);
        if let Ok(found) = &found {
            self.outcome.iterations += found.rounds;
        }
        found
    }

    fn accept(&mut self, panel: &mut Panel, found: Balance, change: f64) {
        let moved = found.places.iter().zip(&panel.patch.places).map(|(b, a)| b - a).collect();
        self.trend = Some((moved, change));
        (self.level, self.force) = (found.level, found.force);
        self.outcome.peak_force_n = self.outcome.peak_force_n.max(found.force);
        panel.stable = found.negative == 0;
        panel.patch.keep(found.places, found.memory);
    }

    fn say(&self, when: &str, why: Stopped) -> String {
        format!(
            "{when}, tip at {:.3} mm of travel and {:.2} N: {why}",
            (self.level - self.start) * self.way,
            self.force
        )
    }
}

/// Level at which the tool meets a surface.
fn level(tool: &Tool, panel: &Panel, places: &[Vector3<f64>]) -> f64 {
    match tool {
        Tool::Contact(contact) => contact.first_touch(&panel.patch.mesh, places),
        Tool::Load(load) => load.level(places),
    }
}
