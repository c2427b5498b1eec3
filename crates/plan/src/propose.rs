//! The next round: few moves that together bring the map nearest to level, each proved by a full solve.
//!
//! All candidates' quick answers go into one bounded least-squares problem with a price on every move (`sparse.rs`); the
//! few that matter most are solved in full on the planner's sheet, which puts their answers right, and the amounts are
//! found anew. How much lift to ask for then follows from what is known of hand and sheet (`hand.rs`).

use crate::candidates::{Candidate, as_move, candidates, places};
use crate::hand::Hand;
use crate::model::{Model, extremes};
use crate::sparse::{Sparse, dot};
use crate::tool::Hardness;
use dentwright_sheet::{Kind, PaintRow, Risk, face_strain};
use dentwright_surface::{Map, average};
use rayon::prelude::*;
use serde::{Deserialize, Serialize};

/// Price of a move: as much as the limit over this many cells.
const PRICED_CELLS: f64 = 1.0;
/// A full solve puts a quick answer right by this factor at most.
const MOST_PUT_RIGHT: f64 = 3.0;
/// A low at least this wide against its depth, in tips, is moved with the wider tip: large shape first.
const LARGE_MM: f64 = 0.25;
/// Warmths tried for the paint, °C: a shop's working range (common practice).
const WARMTHS: [f64; 4] = [20.0, 30.0, 40.0, 50.0];

/// What the technician sets.
#[derive(Debug, Clone)]
pub struct ProposeSettings {
    /// Finish limit, mm.
    pub limit_mm: f64,
    /// Averaging before a place counts, mm.
    pub average_mm: f64,
    /// Moves between two readings at most.
    pub moves: usize,
    /// Radii of the tips at hand, mm.
    pub tips_mm: Vec<f64>,
    /// Most equivalent plastic strain a single move may spend.
    pub most_spent: f64,
    /// Paint.
    pub paint: PaintRow,
    /// Whether it is aged or a second coat.
    pub aged: bool,
}

/// Why a move.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "why", rename_all = "snake_case")]
pub enum Why {
    /// The large shape first: this deep.
    LargeShape {
        /// Depth, mm.
        depth_mm: f64,
    },
    /// A low left over, this deep.
    Low {
        /// Depth, mm.
        depth_mm: f64,
    },
    /// A crown that holds a low in: this high, the low this deep.
    Crown {
        /// Height, mm.
        height_mm: f64,
        /// Depth of the deepest low near it, mm.
        low_mm: f64,
    },
    /// A high left over, this high.
    High {
        /// Height, mm.
        height_mm: f64,
    },
}

/// What the lines should do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Lines {
    /// The bend over the low opens while held and goes back a little.
    Opens,
    /// The bulge over the high flattens.
    Flattens,
}

/// A move to make.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Planned {
    /// Kind.
    pub kind: Kind,
    /// Place, mm.
    pub at_mm: [f64; 2],
    /// Radius of the tip, mm.
    pub tip_mm: f64,
    /// How hard the tip.
    pub hardness: Hardness,
    /// Lift to hold, mm, in size.
    pub held_mm: f64,
    /// What should stay, mm, in size, and its one-sigma doubt.
    pub leaves_mm: [f64; 2],
    /// Force at the tip, N.
    pub force_n: f64,
    /// Warmth of the paint, °C.
    pub paint_c: f64,
    /// Risk to the paint at that warmth.
    pub paint_risk: Risk,
    /// Equivalent plastic strain spent.
    pub spends: f64,
    /// Why.
    pub why: Why,
    /// What the lines should do.
    pub lines: Lines,
    /// Stop and read again when the place has come up (or down) by this much, mm: half of what is missing more than planned.
    pub stop_at_mm: f64,
}

/// A round of moves, with what it should do.
#[derive(Debug, Clone)]
pub struct Proposal {
    /// Moves in order; none when nothing is to be done or nothing helps.
    pub moves: Vec<Planned>,
    /// Their candidates, answers put right by full solves: what the reading afterwards is compared with.
    pub behind: Vec<Candidate>,
    /// Largest residual expected after the round, mm.
    pub expected_mm: f64,
    /// Moves that were left out because the sheet would pop on the way.
    pub popping: usize,
}

/// The next round from a reading.
pub fn propose(
    model: &Model,
    deviation: &Map,
    hand: &Hand,
    settings: &ProposeSettings,
    reaches: &(dyn Fn([f64; 2]) -> bool + Sync),
) -> Proposal {
    let smooth = average(deviation, settings.average_mm);
    let read: Vec<f64> = smooth.values.iter().map(|v| if v.is_finite() { f64::from(*v) } else { 0.0 }).collect();
    let asked = places(&smooth, 0.4 * settings.limit_mm, model.known.half_mm);
    let mut all = candidates(model, &smooth, &asked, &settings.tips_mm, reaches);
    all.retain(|c| !c.curve.corners.is_empty());
    let first = amounts(&all, &read, settings);
    let mut ranked: Vec<usize> = (0..all.len()).filter(|j| first[*j] > 0.2 * settings.limit_mm).collect();
    let gain = |j: usize| first[j] * (dot(&all[j].column, &read.iter().map(|v| -v).collect::<Vec<_>>()));
    ranked.sort_by(|a, b| gain(*b).total_cmp(&gain(*a)));
    // one move a place: its better tip
    let mut taken: Vec<[f64; 2]> = Vec::new();
    ranked.retain(|j| {
        let [x, y] = all[*j].at;
        let new = taken.iter().all(|t| (t[0] - x).hypot(t[1] - y) > 1.0);
        taken.push(all[*j].at);
        new
    });
    ranked.truncate(settings.moves);
    let before = ranked.len();
    let mut behind: Vec<Candidate> =
        ranked.par_iter().filter_map(|j| proved(model, &all[*j], first[*j], hand, &smooth)).collect();
    let popping = before - behind.len();
    let second = amounts(&behind, &read, settings);
    let kept: Vec<usize> = (0..behind.len()).filter(|j| second[*j] > 0.0).collect();
    let deepest = -extremes(&smooth).0;
    let mut pairs: Vec<(Planned, Candidate)> = kept
        .iter()
        .map(|j| (planned(&behind[*j], second[*j], hand, settings, &smooth, deepest), behind[*j].clone()))
        .collect();
    // large shape before detail, outward before inward where both are as large
    pairs.sort_by(|a, b| (b.0.leaves_mm[0]).total_cmp(&a.0.leaves_mm[0]));
    let mut after = read;
    for (p, c) in &pairs {
        after.iter_mut().zip(&c.column).for_each(|(a, v)| *a += p.leaves_mm[0] * v);
    }
    behind.clear();
    let (moves, behind) = pairs.into_iter().unzip();
    let expected_mm = after.iter().fold(0.0f64, |m, v| m.max(v.abs()));
    Proposal { moves, behind, expected_mm, popping }
}

fn amounts(all: &[Candidate], read: &[f64], settings: &ProposeSettings) -> Vec<f64> {
    let b: Vec<f64> = read.iter().map(|v| -v).collect();
    let columns: Vec<Vec<f64>> = all.iter().map(|c| c.column.clone()).collect();
    let most: Vec<f64> = all.iter().map(|c| most(c, settings)).collect();
    let price = vec![PRICED_CELLS * settings.limit_mm; all.len()];
    Sparse { columns: &columns, b: &b, price: &price, most: &most }.solve()
}

/// Greatest lift left a move may leave, mm: within what was asked and what may be spent.
fn most(c: &Candidate, settings: &ProposeSettings) -> f64 {
    let within = c.curve.corners.iter().zip(&c.answers).filter(|(_, a)| a.spent <= settings.most_spent);
    within.map(|(corner, _)| corner[1]).fold(0.0, f64::max)
}

/// The candidate with its answer put right by a full solve on the planner's sheet; none where that finds no rest or the
/// sheet snaps on the way.
fn proved(model: &Model, c: &Candidate, amount: f64, hand: &Hand, map: &Map) -> Option<Candidate> {
    let held = c.curve.held(amount / hand.mean()[1]);
    let (outcome, after) = model.try_move(&as_move(c.kind, c.at, c.tip_mm, held))?;
    if !outcome.snapped_at_mm.is_empty() {
        return None;
    }
    let (way, before) = (c.kind.way(), model.panel.deviation(c.at[0], c.at[1]));
    let left = way * (outcome.at_tip_left_mm - before);
    let quick = c.curve.left(held);
    let mut right = c.clone();
    if left > 0.1 * quick {
        let factor = (left / quick).clamp(1.0 / MOST_PUT_RIGHT, MOST_PUT_RIGHT);
        right.curve.corners.iter_mut().for_each(|corner| corner[1] *= factor);
        let change = |i: usize| {
            let (x, y) = map.grid.position(i);
            let holds = x.abs() < model.known.half_mm && y.abs() < model.known.half_mm;
            if holds { (after.deviation(x, y) - model.panel.deviation(x, y)) / left } else { 0.0 }
        };
        right.column = (0..map.grid.len()).map(change).collect();
    } else {
        right.curve.corners.iter_mut().for_each(|corner| corner[1] /= MOST_PUT_RIGHT);
    }
    Some(right)
}

fn planned(c: &Candidate, amount: f64, hand: &Hand, settings: &ProposeSettings, map: &Map, deepest: f64) -> Planned {
    // never beyond what was asked of the sheet
    let held = hand.ask(&c.curve, amount, c.curve.corners[c.curve.corners.len() - 1][0] / hand.mean()[0]);
    let leaves = hand.leaves(&c.curve, held);
    let k = c.curve.corners.iter().position(|corner| corner[0] >= hand.mean()[0] * held);
    let answer = c.answers[k.unwrap_or(c.answers.len() - 1)];
    let height = map.sample(c.at[0], c.at[1]).unwrap_or(0.0);
    let why = match c.kind {
        Kind::Tap | Kind::Press if deepest > height => Why::Crown { height_mm: height, low_mm: deepest },
        Kind::Tap | Kind::Press => Why::High { height_mm: height },
        _ if -height > LARGE_MM => Why::LargeShape { depth_mm: -height },
        _ => Why::Low { depth_mm: -height },
    };
    let risk = |warm: &f64| settings.paint.risk(answer.face_strain, *warm, settings.aged).risk;
    let paint_c = *WARMTHS.iter().find(|w| risk(w) == Risk::Low).unwrap_or(&WARMTHS[WARMTHS.len() - 1]);
    let hardness = match c.tip_mm {
        r if r >= 14.0 => Hardness::Soft,
        r if r >= 8.0 => Hardness::Medium,
        _ => Hardness::Hard,
    };
    Planned {
        kind: c.kind,
        at_mm: c.at,
        tip_mm: c.tip_mm,
        hardness,
        held_mm: held,
        leaves_mm: leaves,
        force_n: answer.force_n,
        paint_c,
        paint_risk: risk(&paint_c),
        spends: answer.spent,
        why,
        lines: if c.kind.way() > 0.0 { Lines::Opens } else { Lines::Flattens },
        stop_at_mm: leaves[0] + 0.5 * (height.abs() - leaves[0]).abs(),
    }
}

/// Strain on the paint's outer face where it is greatest as the panel stands.
pub fn paint_strain(panel: &dentwright_sheet::Panel, film_mm: f64) -> f64 {
    let t = panel.patch.layers.thickness();
    let of = |i: usize| {
        let s = panel.patch.strained(i).ok()?;
        let bent = s.curvature[0].abs() + s.curvature[1].hypot(s.curvature[2]);
        Some(face_strain(dentwright_sheet::largest(&s.membrane).max(0.0), bent, t, film_mm))
    };
    panel.sheet_points().filter_map(of).fold(0.0, f64::max)
}
