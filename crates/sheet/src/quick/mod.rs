//! Quick answer to a move: the sheet about the tip taken as round, everything else as springs.
//!
//! The round piece ([`crate::round`]) holds what the full sheet holds, meant over rings, and is carried so that a light push
//! gives as far as it does in the full sheet. What is not round about the place is lost; `docs/checks-metal.md` says how
//! far the answers are from full solves.

mod piece;
mod work;

use crate::moves::Move;
use crate::panel::Panel;
use crate::round::Round;
use crate::tip::{Load, Tip};
use dentwright_surface::{Grid, Map};
use nalgebra::DVector;
use piece::piece;
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;
use work::Work;

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

/// The quick answer to a move; none where the round piece finds no rest, as where the sheet pops. The panel stays as it is.
pub fn quick(panel: &Panel, give: &Map, wanted: &Move) -> Option<Quick> {
    quick_rise(panel, give, wanted, &[]).map(|found| found.0)
}

/// The same, with the lift that stays at given distances from the place, ring's mean, mm; none beyond the round piece.
pub fn quick_rise(panel: &Panel, give: &Map, wanted: &Move, radii_mm: &[f64]) -> Option<(Quick, Vec<f64>)> {
    let (mut round, mut work) = begin(panel, give, wanted)?;
    let before = Before::of(&round);
    work.up(&mut round, panel, wanted)?;
    before.let_go(round, work, wanted, radii_mm)
}

/// Answers to one move at growing travels, mm, from one way up; ends where the piece finds no rest. The goal of `wanted`
/// is passed over.
pub fn quick_climb(
    panel: &Panel,
    give: &Map,
    wanted: &Move,
    travels_mm: &[f64],
    radii_mm: &[f64],
) -> Vec<(Quick, Vec<f64>)> {
    let Some((mut round, mut work)) = begin(panel, give, wanted) else { return Vec::new() };
    let before = Before::of(&round);
    let most = travels_mm.last().copied().unwrap_or(0.0);
    let at = |travel: &f64| {
        work.climb(&mut round, *travel, most)?;
        before.let_go(round.clone(), work.clone(), wanted, radii_mm)
    };
    travels_mm.iter().map_while(at).collect()
}

fn begin(panel: &Panel, give: &Map, wanted: &Move) -> Option<(Round, Work)> {
    let reach = reach(&wanted.tip);
    let round = piece(panel, give, wanted.at, reach)?;
    let work = Work::new(panel, &round, wanted, reach);
    Some((round, work))
}

/// How the piece stood before the move.
struct Before {
    shape: DVector<f64>,
    spent: Vec<f64>,
}

impl Before {
    fn of(round: &Round) -> Self {
        Self { shape: round.now.clone(), spent: round.memory.iter().map(|m| m.spent).collect() }
    }

    /// Lets the held piece go and tells what came of the move.
    fn let_go(&self, mut round: Round, mut work: Work, wanted: &Move, radii_mm: &[f64]) -> Option<(Quick, Vec<f64>)> {
        let (way, reach) = (wanted.kind.way(), reach(&wanted.tip));
        let rise = |round: &Round, r: f64| round.height(&round.now, r) - round.height(&self.shape, r);
        let held_mm = rise(&round, 0.0);
        let (face_strain, force_n, travel_mm) = (round.face_strain(), work.peak_n, work.travel_mm);
        work.down(&mut round)?;
        let outside = round.rings.iter().map(|r| r.radius).filter(|r| *r > reach.max(SHOULDER_MM));
        let (shoulder_mm, shoulder_at_mm) = outside
            .map(|r| (rise(&round, r), r))
            .max_by(|a, b| (way * a.0).total_cmp(&(way * b.0)))
            .unwrap_or((0.0, 0.0));
        let spent = round.memory.iter().zip(&self.spent).map(|(m, s)| m.spent - s).fold(0.0, f64::max);
        let left_mm = rise(&round, 0.0);
        let last = round.rings.last().map_or(0.0, |r| r.radius);
        let rises = radii_mm.iter().map(|r| if *r < last { rise(&round, *r) } else { 0.0 }).collect();
        Some((Quick { held_mm, left_mm, shoulder_mm, shoulder_at_mm, force_n, travel_mm, spent, face_strain }, rises))
    }
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
