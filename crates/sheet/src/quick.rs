//! Quick answer to a move: the sheet about the tip taken as round, everything else as springs.
//!
//! The round piece ([`crate::round`]) holds what the full sheet holds, meant over rings, and is carried so that a light push
//! gives as far as it does in the full sheet. What is not round about the place is lost; `docs/checks-metal.md` says how
//! far the answers are from full solves.

use crate::moves::{Goal, Move};
use crate::panel::Panel;
use crate::round::{Act, Bent, Rim, Round};
use crate::spline::{Axis, Focus, graded};
use crate::strain::Modes;
use crate::tip::{Load, Tip};
use crate::yielding::Memory;
use dentwright_surface::{Grid, Map};
use nalgebra::DVector;
use serde::{Deserialize, Serialize};
use std::f64::consts::{PI, TAU};

/// Directions in which a ring is asked.
const AROUND: usize = 12;
/// Overlap over which touching sets in, mm.
const ROUNDING: f64 = 0.002;
/// Steps to the goal and back.
const STEPS: usize = 8;
const BACK: usize = 4;
/// Radius of the light push that says how far the sheet gives, mm.
const LIGHT_MM: f64 = 5.0;
/// Nearer than this to the tip's middle there is no shoulder, mm.
const SHOULDER_MM: f64 = 6.0;

/// What a move does, quickly. Heights are changes, outward positive, mm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = QuickAnswer))]
pub struct Quick {
    /// Lift of the place while held.
    pub held_mm: f64,
    /// Lift that stays.
    pub left_mm: f64,
    /// Largest lift that stays outside the tip, ring's mean.
    pub shoulder_mm: f64,
    /// How far out that is.
    pub shoulder_at_mm: f64,
    /// Largest force, N.
    pub force_n: f64,
    /// Travel from first touch, mm.
    pub travel_mm: f64,
    /// Equivalent plastic strain added, most worked layer.
    pub spent: f64,
    /// Largest strain of the outer face the move adds while held: what the paint feels.
    pub face_strain: f64,
}

/// How far the sheet gives under a light push, mm a newton, on `n` places each way over the panel; asked once a state.
pub fn give_map(panel: &Panel, n: usize) -> Option<Map> {
    let patch = &panel.patch;
    let state = patch.state(&patch.places).ok()?;
    let factor = patch.factor(&state);
    let (bx, by) = (&patch.mesh.x.breaks, &patch.mesh.y.breaks);
    let step_mm = ((bx[bx.len() - 1] - bx[0]).min(by[by.len() - 1] - by[0])) / (n as f64 + 1.0);
    let grid = Grid { x0_mm: bx[0] + step_mm, y0_mm: by[0] + step_mm, step_mm, nx: n, ny: n };
    let give = |x: f64, y: f64| {
        let load = Load::new(&patch.mesh, &Tip::Disc { radius_mm: LIGHT_MM }, [x, y], 1.0);
        let mut answer = vec![0.0; 3 * patch.places.len()];
        load.share.iter().for_each(|(n, s)| answer[3 * n + 2] = *s);
        factor.solve(&mut answer);
        load.share.iter().map(|(n, s)| s * answer[3 * n + 2]).sum()
    };
    Some(Map::from_fn(grid, give))
}

/// The quick answer to a move; none where the round piece finds no rest, as where the sheet pops.
pub fn quick(panel: &Panel, give: &Map, wanted: &Move) -> Option<Quick> {
    let way = wanted.kind.way();
    let reach = reach(&wanted.tip);
    let mut round = piece(panel, give, wanted.at, reach)?;
    let start = round.now.clone();
    let spent = round.memory.iter().map(|m| m.spent).collect::<Vec<_>>();
    let work = Work { e: panel.patch.metal.e_mpa, t: panel.patch.layers.thickness(), reach, way, wanted };
    let (pressed, travel) = if wanted.even() { work.pull(&mut round)? } else { work.press(&mut round)? };
    let force = round.total(&pressed).abs();
    let held_mm = round.height(&round.now, 0.0) - round.height(&start, 0.0);
    let face_strain = round.face_strain();
    for k in (0..BACK).rev() {
        round.settle(&Act::Forces(&(&pressed * (k as f64 / BACK as f64))))?;
    }
    let rise = |r: f64| round.height(&round.now, r) - round.height(&start, r);
    let outside = round.rings.iter().map(|r| r.radius).filter(|r| *r > reach.max(SHOULDER_MM));
    let (shoulder_mm, shoulder_at_mm) =
        outside.map(|r| (rise(r), r)).max_by(|a, b| (way * a.0).total_cmp(&(way * b.0))).unwrap_or((0.0, 0.0));
    let added = round.memory.iter().zip(&spent).map(|(m, s)| m.spent - s).fold(0.0, f64::max);
    Some(Quick {
        held_mm,
        left_mm: rise(0.0),
        shoulder_mm,
        shoulder_at_mm,
        force_n: force,
        travel_mm: travel,
        spent: added,
        face_strain,
    })
}

/// Radius of the disc a tip is taken for: the ball itself, else the same area.
fn reach(tip: &Tip) -> f64 {
    match *tip {
        Tip::Sphere { radius_mm } | Tip::Disc { radius_mm } => radius_mm,
        Tip::Rectangle { width_mm: a, height_mm: b } | Tip::Strip { length_mm: a, width_mm: b, .. } => {
            (a * b / PI).sqrt()
        }
        Tip::Point => 1.5,
    }
}

/// The round piece about a place with what the sheet holds there.
fn piece(panel: &Panel, give: &Map, at: [f64; 2], reach: f64) -> Option<Round> {
    let patch = &panel.patch;
    let (t, metal) = (patch.layers.thickness(), patch.metal.clone());
    // the disc of the patch's area, wherever the place is; what of it lies beyond an edge is taken as the edge is
    let (bx, by) = (&patch.mesh.x.breaks, &patch.mesh.y.breaks);
    let sides = [bx[bx.len() - 1] - bx[0], by[by.len() - 1] - by[0]];
    let far = (sides[0] * sides[1] / PI).sqrt();
    let focus = Focus { at: 0.0, reach: 0.6 * reach, fine: (0.15 * reach).max(0.8 * t) };
    let axis = Axis::new(graded(0.0, far, &[focus], 1.25, far / 10.0));
    let edge = patch.held.first().map(|held| held.springs());
    let stiff = metal.e_mpa * t;
    let of = |spring: f64| spring.min(stiff);
    let rim = edge.map_or(Rim { along: 0.0, up: stiff, turn: 0.0 }, |s| Rim {
        along: of(s.in_plane),
        up: stiff,
        turn: s.turning.min(stiff),
    });
    let mean = |r: f64| {
        let height = |k: usize| {
            let (s, c) = (TAU * (k as f64 + 0.5) / AROUND as f64).sin_cos();
            patch.mesh.at(at[0] + r * c, at[1] + r * s, &patch.places).z
        };
        (0..AROUND).map(height).sum::<f64>() / AROUND as f64
    };
    let mut round = Round::new(axis, metal, patch.layers.clone(), rim, &mean);
    let (strains, memory) = rings(panel, at, &round)?;
    round.hold(&strains, memory);
    let wanted = give.sample(at[0], at[1]).or_else(|| nearest(give, at))?;
    let own = round.give(&round.even(LIGHT_MM));
    let length = TAU * far;
    round.rim.up = if wanted > own { (1.0 / (wanted - own) / length).min(stiff) } else { stiff };
    Some(round)
}

fn nearest(map: &Map, at: [f64; 2]) -> Option<f64> {
    let g = map.grid;
    let hold = |v: f64, low: f64, n: usize| v.clamp(low + 1e-6, low + (n - 1) as f64 * g.step_mm - 1e-6);
    map.sample(hold(at[0], g.x0_mm, g.nx), hold(at[1], g.y0_mm, g.ny))
}

/// Pressure at an overlap, MPa, and its slope, MPa/mm; it sets in over a little way, as in the full solve.
fn pressure(stiffness: f64, overlap: f64) -> (f64, f64) {
    let s = (overlap + ROUNDING).max(0.0);
    if overlap >= ROUNDING {
        (stiffness * overlap, stiffness)
    } else {
        (stiffness * s * s / (4.0 * ROUNDING), stiffness * s / (2.0 * ROUNDING))
    }
}

/// What the full sheet holds, meant over every ring of the piece.
fn rings(panel: &Panel, at: [f64; 2], round: &Round) -> Option<(Vec<Bent>, Vec<Memory>)> {
    let patch = &panel.patch;
    let (mesh, n) = (&patch.mesh, patch.layers.len());
    let (mut strains, mut memory) = (Vec::new(), Vec::new());
    for ring in &round.rings {
        let mut bent: Bent = Default::default();
        let mut mean = vec![Memory::default(); n];
        for k in 0..AROUND {
            let turn = TAU * (k as f64 + 0.5) / AROUND as f64;
            let (s, c) = turn.sin_cos();
            let i = mesh.nearest_point(at[0] + ring.radius * c, at[1] + ring.radius * s)?;
            let here = patch.strained(i).ok()?;
            let (s2, c2) = (2.0 * turn).sin_cos();
            let local = |m: &Modes| Modes::new(m[0], c2 * m[1] + s2 * m[2], 0.0) / AROUND as f64;
            bent.0 += local(&here.membrane);
            bent.1 += local(&here.curvature);
            for (to, from) in mean.iter_mut().zip(&patch.memory[i * n..(i + 1) * n]) {
                to.plastic += local(&from.plastic);
                to.back += local(&from.back);
                to.spent += from.spent / AROUND as f64;
            }
        }
        strains.push(bent);
        memory.extend(mean);
    }
    Some((strains, memory))
}

/// Goes from one travel to another, in halves where it finds no rest.
fn in_parts(
    round: &mut Round,
    [from, to]: [f64; 2],
    at: &dyn Fn(&mut Round, f64) -> Option<DVector<f64>>,
) -> Option<DVector<f64>> {
    let start = (round.now.clone(), round.memory.clone());
    for parts in [1, 2, 4] {
        let mut pressed = None;
        for k in 1..=parts {
            pressed = at(round, from + (to - from) * f64::from(k) / f64::from(parts));
            if pressed.is_none() {
                break;
            }
        }
        if pressed.is_some() {
            return pressed;
        }
        (round.now, round.memory) = start.clone();
    }
    None
}

struct Work<'a> {
    e: f64,
    t: f64,
    reach: f64,
    way: f64,
    wanted: &'a Move,
}

impl Work<'_> {
    /// How far the tip's face stands back at a radius, mm; none where it has no face.
    fn back(&self, r: f64) -> Option<f64> {
        match self.wanted.tip {
            Tip::Sphere { radius_mm } => {
                let radius = radius_mm + 0.5 * self.t;
                (r < radius).then(|| radius - (radius * radius - r * r).sqrt())
            }
            _ => (r <= self.reach).then_some(0.0),
        }
    }

    /// A rigid tip to its goal: the forces it presses and its travel.
    fn press(&self, round: &mut Round) -> Option<(DVector<f64>, f64)> {
        let way = self.way;
        let touch = round
            .rings
            .iter()
            .filter_map(|r| self.back(r.radius).map(|back| way * round.height(&round.now, r.radius) + back));
        let start = way * touch.fold(f64::INFINITY, f64::min);
        let at = |round: &mut Round, travel: f64| {
            let level = start + way * travel;
            let tip = |r: f64, z: f64| {
                let Some(back) = self.back(r) else { return (0.0, 0.0) };
                let (pressure, slope) = pressure(self.e / self.t, way * (level - z) - back);
                (way * pressure, -slope)
            };
            round.settle(&Act::Tip(&tip))
        };
        let stop = match self.wanted.goal {
            Goal::Travel(travel) => travel,
            Goal::To(to) => way * (to + round.height(&round.now, 0.0) - start),
            Goal::Force(force) => return self.to_force(round, force, &at),
        };
        let mut pressed = None;
        let mut trend = DVector::zeros(round.now.len());
        for k in 1..=STEPS {
            let before = round.now.clone();
            if k > 2 {
                round.now += &trend;
            }
            let [from, to] = [k - 1, k].map(|k| stop * k as f64 / STEPS as f64);
            pressed = Some(in_parts(round, [from, to], &at)?);
            trend = &round.now - before;
        }
        Some((pressed?, stop))
    }

    /// Goes on until the tip gives this force.
    fn to_force(
        &self,
        round: &mut Round,
        force: f64,
        at: &dyn Fn(&mut Round, f64) -> Option<DVector<f64>>,
    ) -> Option<(DVector<f64>, f64)> {
        let (mut travel, mut gained, mut stride) = (0.0, 0.0, 0.1 * self.t);
        for _ in 0..6 * STEPS {
            let pressed = in_parts(round, [travel, travel + stride], at)?;
            travel += stride;
            let now = round.total(&pressed).abs();
            if (now / force - 1.0).abs() < 0.01 || now >= force {
                return Some((pressed, travel));
            }
            let slope = ((now - gained) / stride).max(1e-3);
            gained = now;
            stride = ((force - now) / slope * 1.002).min(force / slope / STEPS as f64).clamp(0.01 * self.t, self.t);
        }
        None
    }

    /// An even pull or push to its goal.
    fn pull(&self, round: &mut Round) -> Option<(DVector<f64>, f64)> {
        let load = round.even(self.reach) * self.way;
        let level = |round: &Round| load.dot(&round.now);
        let start = level(round);
        let (mut force, mut per_mm) = (0.0, 1.0 / round.give(&round.even(self.reach)));
        for k in 1..=STEPS {
            let share = k as f64 / STEPS as f64;
            match self.wanted.goal {
                Goal::Force(f) => {
                    force = f * share;
                    round.settle(&Act::Forces(&(&load * force)))?;
                }
                Goal::To(travel) | Goal::Travel(travel) => {
                    let tries = if k == STEPS { 5 } else { 2 };
                    for _ in 0..tries {
                        let before = (force, level(round));
                        force += per_mm * (start + travel.abs() * share - before.1);
                        round.settle(&Act::Forces(&(&load * force)))?;
                        let moved = level(round) - before.1;
                        if moved.abs() > 1e-6 && (force - before.0) / moved > 0.0 {
                            per_mm = (force - before.0) / moved;
                        }
                    }
                }
            }
        }
        let travel = level(round) - start;
        Some((load * force, travel))
    }
}
