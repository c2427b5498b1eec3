//! The next round: few moves that together bring the map nearest to level, each proved by full solves.
//!
//! From the candidates' quick answers those are found that together bring the map nearest to level (`together.rs`). The few
//! that change most are solved in full on the planner's sheet (`prove.rs`), which puts their answers right. The lift to ask for
//! is the one after which, the others made too, least is left to do in the mean over what is not known of hand and sheet
//! (`to_go.rs`, `hand.rs`).

use crate::bridge::bridge;
use crate::candidates::{Candidate, candidates, places};
use crate::hand::Hand;
use crate::model::{Model, largest};
use crate::planned::Planned;
use crate::prove::prove;
use crate::sparse::dot;
use crate::tips::Tips;
use crate::to_go::{Chosen, ToGo};
use crate::together::{after, together};
use crate::ways::Ways;
use dentwright_sheet::PaintRow;
use dentwright_surface::{Map, average};
use rayon::prelude::*;

/// A move that should leave less than this share of the finish limit is not thought of; one that is expected to leave less
/// than the other is none.
const WORTH: f64 = 0.3;
const LEAST: f64 = 0.1;
/// The full solve goes on to so many times what is expected to stay.
const FULLER: f64 = 1.4;
/// No further move in a round where fewer are to go.
const GAINS: f64 = 0.4;
/// Places that stand out by more than this share of the limit are asked.
const ASKED: f64 = 0.4;
/// The large shape first: what is to go is reckoned as if the limit were this share of what stands out most, as long as that is
/// more. Against a fine limit a deep low would be left for the little that its lifting raises far around.
const LARGE_FIRST: f64 = 1.0 / 20.0;
/// What one hand in ten may leave, times what the place is off level; and where nothing else is left to do.
const BOLD: [f64; 2] = [1.0, 4.0];
/// How far about a move that was solved in full quick answers are not asked, mm.
const TOLD_MM: f64 = 25.0;
/// Times that moves are looked for in the stead of those that cannot be made.
const TURNS: usize = 2;
/// A move whose own scatter, and what of those before it reaches its place, is more than this many times the limit, or half
/// of what it should leave, is not made without reading: what came of them tells how far to go.
const READ_FIRST: f64 = 1.6;

/// What the technician sets.
#[derive(Debug, Clone)]
pub struct ProposeSettings {
    /// Finish limit, mm.
    pub limit_mm: f64,
    /// Averaging before a place counts, mm.
    pub average_mm: f64,
    /// Moves between two readings at most.
    pub moves: usize,
    /// What may touch the metal.
    pub tips: Tips,
    /// Most equivalent plastic strain a single move may spend.
    pub most_spent: f64,
    /// Paint.
    pub paint: PaintRow,
    /// Whether it is aged or a second coat.
    pub aged: bool,
    /// Temperature of the panel now, °C.
    pub panel_c: f64,
    /// Warmest it may get, °C: the lowest limit that applies.
    pub most_c: f64,
    /// Whether the moves are proved by full solves.
    pub prove: bool,
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
    /// Its one-sigma doubt where it is largest, mm.
    pub sigma_mm: f64,
    /// Whether full solves prove the moves.
    pub proved: bool,
    /// Moves that were left out because the sheet would pop on the way, or nothing would stay.
    pub left_out: usize,
    /// Places that stand out and that nothing reaches, mm.
    pub unreached: Vec<[f64; 2]>,
}

/// The next round from a reading.
pub fn propose(model: &Model, deviation: &Map, hand: &Hand, settings: &ProposeSettings, ways: &Ways) -> Proposal {
    let smooth = average(&bridge(deviation), settings.average_mm);
    let read: Vec<f64> = smooth.values.iter().map(|v| f64::from(*v)).collect();
    let limit_mm = settings.limit_mm.max(LARGE_FIRST * largest(&smooth));
    let asked = places(&smooth, ASKED * limit_mm, model.known.half_mm);
    let all = candidates(model, &smooth, &asked, &settings.tips, ways, settings.limit_mm);
    let reached = |p: &([f64; 2], f64)| p.1 > -settings.limit_mm || all.iter().any(|c| c.at == p.0);
    let unreached = asked.iter().filter(|p| !reached(p)).map(|p| p.0).collect();
    let step_mm = smooth.grid.step_mm;
    let mut seen = Seen { read, limit_mm, cell_mm2: step_mm * step_mm, hand, settings, boldness: BOLD[0] };
    let (all, left_out) = if settings.prove { seen.proved(model, all, &smooth) } else { (all, 0) };
    let proved = all.iter().any(|c| c.proved);
    let may = if proved { (0..all.len()).filter(|k| all[*k].proved).collect() } else { seen.shortlist(&all) };
    let mut pairs = seen.round(&all, may.clone(), &smooth, model.known.thickness_mm);
    if pairs.is_empty() {
        seen.boldness = BOLD[1];
        pairs = seen.round(&all, may, &smooth, model.known.thickness_mm);
    }
    let (expected_mm, sigma_mm) = expected(&pairs, &seen.read);
    let (moves, behind) = pairs.into_iter().unzip();
    Proposal { moves, behind, expected_mm, sigma_mm, proved, left_out, unreached }
}

/// A reading and what it is judged by.
struct Seen<'a> {
    read: Vec<f64>,
    /// What counts as level in this round, mm.
    limit_mm: f64,
    cell_mm2: f64,
    hand: &'a Hand,
    settings: &'a ProposeSettings,
    /// What one hand in ten may leave, times what the place is off level.
    boldness: f64,
}

impl Seen<'_> {
    fn to_go<'r>(&self, read: &'r [f64]) -> ToGo<'r> {
        ToGo { read, limit_mm: self.limit_mm, cell_mm2: self.cell_mm2, boldness: self.boldness }
    }

    /// Amounts of all candidates that together bring a map nearest to level.
    fn amounts(&self, all: &[Candidate], read: &[f64]) -> Vec<f64> {
        // where a full solve stands behind one move, the quick answers round about it are known to say too much or too little
        let told =
            |c: &Candidate| !c.proved && all.iter().any(|p| p.proved && p.act == c.act && apart(p.at, c.at) < TOLD_MM);
        let most = |c: &Candidate| if told(c) { 0.0 } else { c.curve.left(c.most_held(self.settings)) };
        let most: Vec<f64> = all.iter().map(most).collect();
        let mut amounts = together(all, read, &most, self.limit_mm);
        amounts.iter_mut().filter(|x| **x < WORTH * self.limit_mm).for_each(|x| *x = 0.0);
        amounts
    }

    /// The lift to ask for of a candidate where the others are made too, what it leaves, and what is to go after all of them;
    /// none where nothing stays.
    fn weigh(&self, all: &[Candidate], read: &[f64], k: usize) -> Option<(Chosen, [f64; 2])> {
        let mut others = self.amounts(all, read);
        let here = all[k].at;
        others.iter_mut().zip(all).filter(|(_, o)| apart(o.at, here) <= 1.0).for_each(|(x, _)| *x = 0.0);
        self.lift(&after(all, read, &others), &all[k])
    }

    /// The lift to ask for of a candidate, what it leaves, and what is to go after it.
    fn lift(&self, read: &[f64], c: &Candidate) -> Option<(Chosen, [f64; 2])> {
        let to_go = self.to_go(read);
        let hand = self.hand.there(c.act, c.at);
        let most = hand.up_to(c.most_held(self.settings) / hand.mean()[0]);
        let chosen = to_go.lift(c, &hand, most)?;
        let leaves = hand.leaves(&c.curve, chosen.held_mm);
        (leaves[0] > LEAST * self.limit_mm).then_some((chosen, leaves))
    }

    /// Candidates in the order in which they should be made: those that together bring the map nearest to level, the one that
    /// changes most first; where there are none such, the one after which least is to go.
    fn order(&self, all: &[Candidate], read: &[f64], may: &[usize]) -> Vec<usize> {
        let amounts = self.amounts(all, read);
        let changes = |k: usize| amounts[k] * amounts[k] * dot(&all[k].column, &all[k].column);
        let mut order: Vec<usize> = may.iter().copied().filter(|k| amounts[*k] > 0.0).collect();
        order.sort_by(|a, b| changes(*b).total_cmp(&changes(*a)));
        if order.is_empty() {
            let alone = may.par_iter().filter_map(|k| Some((*k, self.lift(read, &all[*k])?.0.to_go)));
            let mut alone: Vec<(usize, f64)> = alone.collect();
            alone.sort_by(|a, b| a.1.total_cmp(&b.1));
            order = alone.into_iter().map(|one| one.0).collect();
        }
        order
    }

    /// The candidates that are to be made solved in full. Where some cannot be made others are looked for in their stead. How
    /// many were left out.
    fn proved(&self, model: &Model, mut all: Vec<Candidate>, map: &Map) -> (Vec<Candidate>, usize) {
        let mut left_out = 0;
        for _ in 0..TURNS {
            let short: Vec<usize> = self.shortlist(&all).into_iter().filter(|k| !all[*k].proved).collect();
            let solve =
                |k: &usize| prove(model, &all[*k], FULLER * self.weigh(&all, &self.read, *k)?.1[0], self.hand, map);
            let solved: Vec<(usize, Option<Candidate>)> = short.par_iter().map(|k| (*k, solve(k))).collect();
            let failed: Vec<usize> = solved.iter().filter(|s| s.1.is_none()).map(|s| s.0).collect();
            solved.into_iter().filter_map(|(k, c)| Some((k, c?))).for_each(|(k, c)| all[k] = c);
            left_out += failed.len();
            if failed.is_empty() {
                break;
            }
            let mut number = 0..;
            all.retain(|_| number.next().is_some_and(|k| !failed.contains(&k)));
        }
        (all, left_out)
    }

    /// The candidates to be solved in full, one a place.
    fn shortlist(&self, all: &[Candidate]) -> Vec<usize> {
        let mut chosen: Vec<usize> = Vec::new();
        for k in self.order(all, &self.read, &(0..all.len()).collect::<Vec<_>>()) {
            if chosen.iter().all(|o| apart(all[*o].at, all[k].at) > 1.0) {
                chosen.push(k);
            }
        }
        chosen.truncate(self.settings.moves);
        chosen
    }

    /// Moves one after another, as far as may be gone without reading.
    fn round(&self, all: &[Candidate], mut may: Vec<usize>, map: &Map, thickness_mm: f64) -> Vec<(Planned, Candidate)> {
        let mut read = self.read.clone();
        let mut pairs: Vec<(Planned, Candidate)> = Vec::new();
        while pairs.len() < self.settings.moves {
            let now = self.to_go(&read).now();
            let next = self.order(all, &read, &may).into_iter().find_map(|k| Some((k, self.weigh(all, &read, k)?)));
            let Some((k, (chosen, leaves))) = next else { break };
            if !pairs.is_empty() && now < GAINS {
                break;
            }
            let c = &all[k];
            may.retain(|o| apart(all[*o].at, c.at) > 1.0);
            read.iter_mut().zip(&c.column).for_each(|(r, v)| *r += leaves[0] * v);
            let hand = self.hand.there(c.act, c.at);
            pairs.push((Planned::of(c, chosen.held_mm, &hand, self.settings, map, thickness_mm), c.clone()));
        }
        pairs.truncate(seeing(&pairs, map, self.limit_mm));
        pairs
    }
}

fn apart(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

impl Candidate {
    /// Greatest lift the sheet may be given, mm: within what was asked of it, the force that can be brought there, and what
    /// may be spent.
    fn most_held(&self, settings: &ProposeSettings) -> f64 {
        let may = |a: &dentwright_sheet::Quick| a.spent <= settings.most_spent && a.force_n <= self.most_n;
        let within = self.curve.corners.iter().zip(&self.answers).take_while(|(_, a)| may(a));
        within.map(|(corner, _)| corner[0]).last().unwrap_or(0.0)
    }
}

/// How many moves may be made before a reading: up to the first of which it is not well enough known what it leaves.
fn seeing(pairs: &[(Planned, Candidate)], map: &Map, limit_mm: f64) -> usize {
    let blind = |k: &usize| {
        let at = pairs[*k].0.at_mm;
        let off: f64 = pairs[..*k].iter().map(|(p, c)| (p.leaves_mm[1] * c.at_place(map, at)).powi(2)).sum();
        off.sqrt().hypot(pairs[*k].0.leaves_mm[1]) > READ_FIRST * limit_mm.max(0.5 * pairs[*k].0.leaves_mm[0])
    };
    (1..pairs.len()).find(blind).unwrap_or(pairs.len())
}

/// Largest residual expected after the moves, and its doubt there, mm.
fn expected(pairs: &[(Planned, Candidate)], read: &[f64]) -> (f64, f64) {
    let at = |i: usize| read[i] + pairs.iter().map(|(p, c)| p.leaves_mm[0] * c.column[i]).sum::<f64>();
    let worst = (0..read.len()).max_by(|a, b| at(*a).abs().total_cmp(&at(*b).abs()));
    let doubt = |i: usize| pairs.iter().map(|(p, c)| (p.leaves_mm[1] * c.column[i]).powi(2)).sum::<f64>().sqrt();
    worst.map_or((0.0, 0.0), |i| (at(i).abs(), doubt(i)))
}
