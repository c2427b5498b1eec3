//! Carrying out a move: up in steps, down again, and let go.

use crate::equilibrium::{Given, Stopped};
use crate::moves::{Goal, Move, Outcome};
use crate::panel::Panel;
use crate::step::{Step, Tool};
use crate::tip::{Contact, Load};

/// Steps in a row on which the force may fall on the way to a force that is asked for.
const FALLEN: usize = 100;
/// How long the steps of a move are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pace {
    /// Longest step, in thicknesses: longer ones follow the turning of plastic flow too coarsely.
    pub stride: f64,
    /// Steps of unloading at least.
    pub unloading: usize,
}

impl Pace {
    /// For answers that stand.
    pub const FINE: Self = Self { stride: 0.4, unloading: 6 };
    /// For many trials of which each is read afterwards: strides twice as long, with which a push back over 7 mm needs 2 %
    /// less force than it should.
    pub const COARSE: Self = Self { stride: 0.8, unloading: 3 };
}
/// Share of the peak force below which the tip is taken away altogether.
const LET_GO: f64 = 0.02;

/// Carries out `wanted` on the panel, which keeps what it leaves. Where no balance is found the panel stays at the
/// last shape that was in balance and the outcome says so.
pub fn perform(panel: &mut Panel, wanted: &Move) -> Outcome {
    perform_at(panel, wanted, Pace::FINE)
}

/// The same in steps of a given length.
pub fn perform_at(panel: &mut Panel, wanted: &Move, pace: Pace) -> Outcome {
    let before: Vec<f64> = panel.patch.memory.iter().map(|m| m.spent).collect();
    let mut work = Work::new(panel, wanted, pace);
    let result = work.up(panel, wanted).and_then(|()| work.held(panel)).and_then(|()| work.down(panel, wanted));
    let mut outcome = work.step.outcome;
    outcome.converged = result.is_ok();
    outcome.stopped = result.err();
    panel.describe_left(wanted, &mut outcome);
    let spent = panel.patch.memory.iter().zip(&before).map(|(m, b)| m.spent - b);
    outcome.plastic_strain_spent = spent.fold(0.0, f64::max);
    outcome
}

struct Work {
    step: Step,
    at: [f64; 2],
    pace: Pace,
}

impl Work {
    fn new(panel: &Panel, wanted: &Move, pace: Pace) -> Self {
        let (patch, way) = (&panel.patch, wanted.kind.way());
        let tool = if wanted.even() {
            Tool::Load(Load::new(&patch.mesh, &wanted.tip, wanted.at, way))
        } else {
            let (t, e) = (patch.layers.thickness(), patch.metal.e_mpa);
            Tool::Contact(Contact::new(&patch.mesh, &wanted.tip, wanted.at, way, t, e))
        };
        Self { step: Step::new(panel, tool, way), at: wanted.at, pace }
    }

    fn up(&mut self, panel: &mut Panel, wanted: &Move) -> Result<(), String> {
        let steps = wanted.steps.max(1);
        let end = match wanted.goal {
            Goal::To(to) => self.step.tool.level(panel, &panel.intended) + to,
            Goal::Travel(travel) => self.step.start + self.step.way * travel,
            Goal::Force(force) => return self.up_to_force(panel, force, steps),
        };
        if !((end - self.step.start) * self.step.way > 0.0) {
            return Ok(()); // the tip never reaches the sheet
        }
        let stride = self.pace.stride * panel.patch.layers.thickness();
        let steps = steps.max(((end - self.step.start).abs() / stride).ceil().min(2000.0) as usize);
        for k in 1..=steps {
            let next = self.step.start + (end - self.step.start) * k as f64 / steps as f64;
            self.step.go(panel, Given::Level(next)).map_err(|why| self.say("loading", why))?;
        }
        Ok(())
    }

    fn up_to_force(&mut self, panel: &mut Panel, force: f64, steps: usize) -> Result<(), String> {
        if let Tool::Contact(_) = self.step.tool {
            // a tip that barely touches, so that a force has something to act on
            let first = self.step.start + self.step.way * 0.01 * panel.patch.layers.thickness();
            self.step.go_below(panel, first, force).map_err(|why| self.say("first touch", why))?;
        }
        // towards the force by travel, which also passes where the sheet gives way
        let thickness = panel.patch.layers.thickness();
        let mut stride = 0.05 * thickness;
        let mut fallen = 0;
        while self.step.force < force * (1.0 - 1e-6) {
            let before = (self.step.level, self.step.force);
            self.step
                .go_below(panel, before.0 + self.step.way * stride, force)
                .map_err(|why| self.say("loading", why))?;
            let (moved, gained) = ((self.step.level - before.0).abs(), self.step.force - before.1);
            let wanted = if gained > 0.0 { moved * force / steps as f64 / gained } else { thickness };
            stride = wanted.clamp(0.5 * stride, 2.0 * stride).min(self.pace.stride * thickness);
            fallen = if gained > 0.0 { 0 } else { fallen + 1 };
            if fallen > FALLEN {
                return Err(format!(
                    "the sheet gives way at {:.1} N and never bears {force} N",
                    self.step.outcome.peak_force_n
                ));
            }
        }
        Ok(())
    }

    fn held(&mut self, panel: &Panel) -> Result<(), String> {
        self.step.outcome.at_tip_held_mm = panel.deviation(self.at[0], self.at[1]);
        self.step.outcome.max_membrane_strain_held = panel.max_membrane_strain();
        Ok(())
    }

    fn down(&mut self, panel: &mut Panel, wanted: &Move) -> Result<(), String> {
        let peak = self.step.force;
        let steps = (wanted.steps / 3).max(self.pace.unloading);
        self.step.trend = None;
        let mut slope = self.first_unloading_slope(peak);
        for k in 0..4 * steps {
            if self.step.force <= LET_GO * peak {
                break;
            }
            let before = (self.step.level, self.step.force);
            let given = match self.step.tool {
                Tool::Load(_) => Given::Force((peak * (1.0 - (k + 1) as f64 / steps as f64)).max(0.0)),
                Tool::Contact(_) => Given::Level(self.step.level - self.step.way * peak / steps as f64 / slope),
            };
            self.step.go(panel, given).map_err(|why| self.say("unloading", why))?;
            let (moved, dropped) = ((self.step.level - before.0).abs(), before.1 - self.step.force);
            if moved > 1e-9 && dropped > 1e-3 * peak {
                slope = dropped / moved;
            } else {
                slope *= 0.5;
            }
        }
        self.step.let_go(panel).map_err(|why| self.say("letting go", why))
    }

    /// Twice the slope of the way up near the top, N/mm: unloading is stiffer than loading.
    fn first_unloading_slope(&self, peak: f64) -> f64 {
        let travel = (self.step.level - self.step.start).abs().max(1e-6);
        let before = self.step.outcome.curve.iter().rev().find(|p| p[1] < 0.9 * peak && p[0] < travel);
        before.map_or(peak / travel, |[x, f]| (2.0 * (peak - f) / (travel - x)).max(peak / travel))
    }

    fn say(&self, when: &str, why: Stopped) -> String {
        format!("{when}, tip at {:.3} mm of travel and {:.2} N: {why}", self.step.travel(), self.step.force)
    }
}
