//! A rehearsal under way: lean a tip on, make a move, warm the panel.

use super::level::{HALF_MM, Level};
use super::score::{Claim, Score, middle, read_right};
use crate::paint::paint_strain;
use dentwright_sheet::{Goal, Kind, Move, Panel, Tip, give_map, leant, paints, perform, quick_rise};
use dentwright_surface::{Grid, Map};
use serde::{Deserialize, Serialize};

/// Step of the maps, mm, and how far from the patch's edge they end: there a tip has no room.
const STEP_MM: f64 = 1.2;
const RIM_MM: f64 = 6.0;
/// Places each way at which the sheet's give is asked.
const GIVES: usize = 9;
/// Distances at which the quick answer's lift is asked.
const RADIUS_STEP_MM: f64 = 1.5;
const RADII: usize = 40;
/// Steps of a move, each with its own rest.
const STEPS: usize = 4;
/// Paint on the panel.
const PAINT: &str = "factory";
/// Places that count as standing out most: this share of the most.
const OUT: f64 = 0.8;

/// What a tip does.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Touch {
    /// Push, pull or tap.
    pub kind: Kind,
    /// Where, x, mm.
    pub x_mm: f64,
    /// Where, y, mm.
    pub y_mm: f64,
    /// What touches.
    pub tip: Tip,
    /// Travel from first touch, mm.
    pub travel_mm: f64,
}

/// The sheet under a tip that leans on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Lean {
    /// Change of height on the rehearsal's grid, mm.
    pub change_mm: Vec<f32>,
    /// Force, N.
    pub force_n: f64,
}

/// A move made.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = RehearsedMove))]
pub struct Made {
    /// What was asked.
    pub touch: Touch,
    /// Temperature of the panel, °C.
    pub temperature_c: f64,
    /// Lift while held, mm.
    pub held_mm: f64,
    /// Lift that stayed, mm.
    pub left_mm: f64,
    /// Largest force, N.
    pub force_n: f64,
    /// Distance of the tip from the nearest place that stood out most its way, mm.
    pub aim_off_mm: f64,
    /// Strain the paint's face took.
    pub paint_strain: f64,
    /// Whether that cracked it.
    pub cracked: bool,
    /// Whether the sheet snapped on the way.
    pub snapped: bool,
    /// Whether the sheet found no rest and stands as before.
    pub lost: bool,
}

/// A rehearsal.
pub struct Rehearsal {
    /// Its level.
    pub level: Level,
    /// What moved the hits.
    pub seed: u64,
    /// Temperature now, °C.
    pub temperature_c: f64,
    /// What has been done.
    pub made: Vec<Made>,
    /// What was read off before the work.
    pub claims: Vec<Claim>,
    panel: Panel,
    give: Option<Map>,
    start: Map,
    spent_before: f64,
}

impl Rehearsal {
    /// Begins one; none where the hits find no rest.
    #[must_use]
    pub fn begin(level: &Level, seed: u64) -> Option<Self> {
        let panel = level.damaged(seed)?;
        let start = Map::from_fn(Self::grid(), |x, y| panel.deviation(x, y));
        Some(Self {
            level: level.clone(),
            seed,
            temperature_c: level.temperature_c,
            made: Vec::new(),
            claims: Vec::new(),
            give: give_map(&panel, GIVES),
            spent_before: panel.max_plastic_strain(),
            panel,
            start,
        })
    }

    /// The grid of all maps.
    #[must_use]
    pub fn grid() -> Grid {
        let half = HALF_MM - RIM_MM;
        let n = 2 * (half / STEP_MM) as usize + 1;
        Grid { x0_mm: -half, y0_mm: -half, step_mm: STEP_MM, nx: n, ny: n }
    }

    /// Deviation now, mm.
    #[must_use]
    pub fn deviation(&self) -> Map {
        Map::from_fn(Self::grid(), |x, y| self.panel.deviation(x, y))
    }

    /// Intended height, mm.
    #[must_use]
    pub fn intended(&self) -> Map {
        Map::from_fn(Self::grid(), |x, y| self.panel.patch.mesh.at(x, y, &self.panel.intended).z)
    }

    /// The sheet under a tip that leans on it from its side with so much lift, mm; nothing of it stays. None off the
    /// panel, or where the sheet does not stand by itself.
    #[must_use]
    pub fn lean(&self, kind: Kind, at: [f64; 2], tip: Tip, lift_mm: f64) -> Option<Lean> {
        let grid = Self::grid();
        let (u, v) = grid.locate(at[0], at[1]);
        if u < 0.0 || v < 0.0 || u > (grid.nx - 1) as f64 || v > (grid.ny - 1) as f64 {
            return None;
        }
        let (change, per_n) = leant(&self.panel, kind, at, &tip, grid)?;
        let times = kind.way() * lift_mm / per_n;
        Some(Lean { change_mm: change.values.iter().map(|v| v * times as f32).collect(), force_n: times.abs() })
    }

    /// What a move would leave, at once and only about: the change on the grid. None where there is no quick answer.
    #[must_use]
    pub fn quick(&self, touch: &Touch) -> Option<Map> {
        let radii: Vec<f64> = (0..RADII).map(|k| RADIUS_STEP_MM * k as f64).collect();
        let (_, rises) = quick_rise(&self.panel, self.give.as_ref()?, &touch.as_move(), &radii)?;
        let at = |x: f64, y: f64| {
            let far = (x - touch.x_mm).hypot(y - touch.y_mm) / RADIUS_STEP_MM;
            let k = far as usize;
            match (rises.get(k), rises.get(k + 1)) {
                (Some(a), Some(b)) => a + (b - a) * far.fract(),
                _ => 0.0,
            }
        };
        Some(Map::from_fn(Self::grid(), at))
    }

    /// Makes a move.
    pub fn make(&mut self, touch: &Touch) -> Made {
        let before = self.panel.deviation(touch.x_mm, touch.y_mm);
        let aim_off_mm = aim_off(&self.deviation(), touch);
        let (places, memory) = (self.panel.patch.places.clone(), self.panel.patch.memory.clone());
        let paint = paints().into_iter().find(|row| row.name == PAINT);
        let film = paint.as_ref().map_or(0.0, |row| row.film_mm);
        let strained_before = paint_strain(&self.panel, film);
        let wanted = touch.as_move();
        let quick = self.give.as_ref().and_then(|give| quick_rise(&self.panel, give, &wanted, &[]));
        let outcome = perform(&mut self.panel, &wanted);
        let lost = !outcome.converged;
        if lost {
            self.panel.take_up(places, memory);
        }
        let t = self.panel.patch.layers.thickness();
        let while_held = quick.map_or(0.0, |(q, _)| q.face_strain.abs() * (1.0 + 2.0 * film / t));
        let strain = while_held.max((paint_strain(&self.panel, film) - strained_before).abs());
        let cracked = paint.is_some_and(|row| strain > row.takes(self.temperature_c, false)[1]);
        let made = Made {
            touch: *touch,
            temperature_c: self.temperature_c,
            held_mm: if lost { 0.0 } else { outcome.at_tip_held_mm - before },
            left_mm: self.panel.deviation(touch.x_mm, touch.y_mm) - before,
            force_n: outcome.peak_force_n,
            aim_off_mm,
            paint_strain: strain,
            cracked,
            snapped: !outcome.snapped_at_mm.is_empty(),
            lost,
        };
        self.give = give_map(&self.panel, GIVES);
        self.made.push(made.clone());
        made
    }

    /// The score as it stands.
    #[must_use]
    pub fn score(&self) -> Score {
        let least_mm = 1e-3 * self.level.finish_um;
        let right = read_right(&self.claims, &self.start, least_mm);
        let reading = (!right.is_empty()).then(|| right.iter().filter(|r| **r).count() as f64 / right.len() as f64);
        let left_um = 1e3 * self.deviation().values.iter().fold(0.0f32, |most, v| most.max(v.abs()));
        let left_um = f64::from(left_um);
        let cracked = self.made.iter().any(|m| m.cracked);
        Score {
            reading,
            aim_off_mm: middle(self.made.iter().map(|m| m.aim_off_mm).collect()),
            moves: self.made.len(),
            from_front: self.made.iter().filter(|m| m.touch.kind.way() < 0.0).count(),
            strain_spent: self.panel.max_plastic_strain() - self.spent_before,
            left_um,
            finish_um: self.level.finish_um,
            finished: left_um <= self.level.finish_um && !cracked,
            snaps: self.made.iter().filter(|m| m.snapped).count(),
            cracked,
        }
    }
}

impl Touch {
    fn as_move(&self) -> Move {
        let at = [self.x_mm, self.y_mm];
        Move { kind: self.kind, at, tip: self.tip, bonded: false, goal: Goal::Travel(self.travel_mm), steps: STEPS }
    }
}

/// Distance of a tip from the nearest cell that stands out most in the sense the tip corrects, mm.
fn aim_off(deviation: &Map, touch: &Touch) -> f64 {
    let way = touch.kind.way();
    let out = |i: usize| -way * f64::from(deviation.values[i]);
    let most = (0..deviation.grid.len()).map(out).fold(0.0, f64::max);
    let near = (0..deviation.grid.len()).filter(|&i| out(i) >= OUT * most).map(|i| {
        let (x, y) = deviation.grid.position(i);
        (x - touch.x_mm).hypot(y - touch.y_mm)
    });
    near.fold(f64::INFINITY, f64::min)
}
