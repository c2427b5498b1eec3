//! A move on the round piece: up by travel, down again by travel, and let go, as in the full solve.

use crate::moves::{Goal, Move};
use crate::panel::Panel;
use crate::round::{Act, Round, Under};
use crate::tip::Tip;
use nalgebra::DVector;

/// Overlap over which touching sets in, mm, as in the full solve.
const ROUNDING: f64 = 0.002;
/// Steps to the goal and back.
const STEPS: usize = 8;
const BACK: usize = 4;
/// Parts a step is cut into where the whole finds no rest.
const PARTS: [i32; 3] = [1, 2, 4];
/// Share of the peak force below which the tip is taken away altogether.
const LET_GO: f64 = 0.02;
/// Force met within this share of the one asked for.
const NEAR: f64 = 0.01;

#[derive(Clone)]
enum Tool {
    /// A rigid tip over these places.
    Tip(Vec<Under>),
    /// An even load that sums to one.
    Load(DVector<f64>),
}

/// Where a move stands.
#[derive(Clone)]
pub(super) struct Work {
    tool: Tool,
    /// Radius of a ball to the sheet's middle, mm; none for a flat face.
    ball: Option<f64>,
    way: f64,
    /// Pressure a mm of overlap, N/mm³.
    stiffness: f64,
    thickness: f64,
    /// Level of first touch, mm.
    start: f64,
    /// Travel from there, mm.
    pub travel_mm: f64,
    /// Force along the way, N, and the largest so far.
    force: f64,
    pub peak_n: f64,
    /// Last change of shape and of travel.
    trend: Option<(DVector<f64>, f64)>,
}

impl Work {
    /// A tool of radius `reach` that touches and does not press yet.
    pub fn new(panel: &Panel, round: &Round, wanted: &Move, reach: f64) -> Self {
        let (e, thickness, way) = (panel.patch.metal.e_mpa, panel.patch.layers.thickness(), wanted.kind.way());
        let ball = match wanted.tip {
            Tip::Sphere { radius_mm } => Some(radius_mm + 0.5 * thickness),
            _ => None,
        };
        let tool = if wanted.even() { Tool::Load(round.even(reach)) } else { Tool::Tip(round.under(reach)) };
        let start = match &tool {
            Tool::Load(load) => load.dot(&round.now),
            Tool::Tip(under) => {
                let meets = |u: &Under| way * round.height(&round.now, u.radius) + back(ball, u.radius);
                way * under.iter().map(meets).fold(f64::INFINITY, f64::min)
            }
        };
        let (stiffness, trend) = (e / thickness, None);
        Self { tool, ball, way, stiffness, thickness, start, travel_mm: 0.0, force: 0.0, peak_n: 0.0, trend }
    }

    /// To the goal. A goal from the intended surface is reckoned from the deviation under the tip's middle.
    pub fn up(&mut self, round: &mut Round, panel: &Panel, wanted: &Move) -> Option<()> {
        let end = match wanted.goal {
            Goal::Travel(travel) => travel,
            Goal::To(to) => self.way * (to - panel.deviation(wanted.at[0], wanted.at[1])),
            Goal::Force(force) => return self.up_to_force(round, force),
        };
        (1..=STEPS).filter(|_| end > 0.0).try_for_each(|k| self.go(round, end * k as f64 / STEPS as f64))
    }

    /// From where it stands to a travel, in strides of those that lead to `most`.
    pub fn climb(&mut self, round: &mut Round, end: f64, most: f64) -> Option<()> {
        let from = self.travel_mm;
        let steps = (STEPS as f64 * (end - from) / most).ceil().max(1.0) as usize;
        (1..=steps).try_for_each(|k| self.go(round, from + (end - from) * k as f64 / steps as f64))
    }

    /// Towards the force by travel, which also passes where the sheet gives way.
    fn up_to_force(&mut self, round: &mut Round, force: f64) -> Option<()> {
        let mut stride = 0.1 * self.thickness;
        for _ in 0..6 * STEPS {
            let (travel, before) = (self.travel_mm, self.force);
            self.go(round, travel + stride)?;
            if self.force >= (1.0 - NEAR) * force {
                return Some(());
            }
            let slope = ((self.force - before) / stride).max(1e-3);
            let missing = (force - self.force) / slope;
            stride = missing.min(force / slope / STEPS as f64).clamp(0.01 * self.thickness, self.thickness);
        }
        None
    }

    /// Back: a tip by travel until little force is left, a load by force; then let go.
    pub fn down(&mut self, round: &mut Round) -> Option<()> {
        let nothing = DVector::zeros(round.now.len());
        match &self.tool {
            Tool::Tip(_) => self.draw_back(round)?,
            Tool::Load(load) => {
                let peak = self.way * self.force;
                for share in (1..BACK).rev().map(|k| k as f64 / BACK as f64) {
                    let forces = load * (peak * share);
                    round.settle(&Act::Forces(&forces)).or_else(|| round.snap(&Act::Forces(&forces)))?;
                }
            }
        }
        round.settle(&Act::Forces(&nothing)).or_else(|| round.snap(&Act::Forces(&nothing))).map(|_| ())
    }

    fn draw_back(&mut self, round: &mut Round) -> Option<()> {
        let peak = self.force;
        // unloading is stiffer than loading
        let mut slope = 2.0 * peak / self.travel_mm.max(1e-6);
        self.trend = None;
        for _ in 0..4 * BACK {
            if self.force <= LET_GO * peak {
                break;
            }
            let before = (self.travel_mm, self.force);
            self.go(round, self.travel_mm - peak / BACK as f64 / slope)?;
            let (moved, dropped) = (before.0 - self.travel_mm, before.1 - self.force);
            slope = if dropped > 1e-3 * peak { dropped / moved } else { 0.5 * slope };
        }
        Some(())
    }

    /// To a travel: at once, in parts, and where that finds no rest, to another shape.
    fn go(&mut self, round: &mut Round, to: f64) -> Option<()> {
        let (start, from) = ((round.now.clone(), round.memory.clone()), self.travel_mm);
        for parts in PARTS {
            let part = |k: i32| from + (to - from) * f64::from(k) / f64::from(parts);
            if (1..=parts).try_for_each(|k| self.step(round, part(k), false)).is_some() {
                return Some(());
            }
            (round.now, round.memory) = start.clone();
            (self.travel_mm, self.trend) = (from, None);
        }
        self.step(round, to, true)
    }

    /// One step, from a guess of the shape.
    fn step(&mut self, round: &mut Round, to: f64, snaps: bool) -> Option<()> {
        let (start, by) = (round.now.clone(), to - self.travel_mm);
        match &self.trend {
            Some((shape, last)) => round.now += shape * (by / last).clamp(-2.0, 2.0),
            None if snaps => {}
            None => self.follow(round, by),
        }
        let pressed = self.acting(to, &mut |act| if snaps { round.snap(act) } else { round.settle(act) })?;
        self.force = self.way * round.total(&pressed);
        self.peak_n = self.peak_n.max(self.force);
        self.trend = (!snaps).then(|| (&round.now - start, by));
        self.travel_mm = to;
        Some(())
    }

    /// Lets the sheet that is touched go along with the tip, as far as its stiffness says.
    fn follow(&self, round: &mut Round, by: f64) {
        self.acting(self.travel_mm, &mut |act| round.follow(act, self.way * by));
    }

    /// What acts with the tool at a travel.
    fn acting<T>(&self, travel: f64, then: &mut dyn FnMut(&Act) -> T) -> T {
        let level = self.start + self.way * travel;
        let tip = |r: f64, z: f64| {
            let (pressure, slope) = self.pressure(self.way * (level - z) - back(self.ball, r));
            (self.way * pressure, -slope)
        };
        match &self.tool {
            Tool::Tip(under) => then(&Act::Tip(under, &tip)),
            Tool::Load(load) => then(&Act::Level(load, level)),
        }
    }

    /// Pressure at an overlap, MPa, and its slope, MPa/mm; it sets in over a little way, as in the full solve.
    fn pressure(&self, overlap: f64) -> (f64, f64) {
        if overlap >= ROUNDING {
            return (self.stiffness * overlap, self.stiffness);
        }
        let s = (overlap + ROUNDING).max(0.0);
        (self.stiffness * s * s / (4.0 * ROUNDING), self.stiffness * s / (2.0 * ROUNDING))
    }
}

/// How far a tip's face stands back at a distance from its middle, mm.
fn back(ball: Option<f64>, r: f64) -> f64 {
    ball.map_or(0.0, |radius| radius - (radius * radius - r * r).max(0.0).sqrt())
}
