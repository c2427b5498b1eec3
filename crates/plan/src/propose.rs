//! The next round: few moves that together bring the map nearest to level, each proved by full solves.
//!
//! All candidates' quick answers go into one bounded least-squares problem with a price on every move (`sparse.rs`); the
//! few from which most is expected are solved in full on the planner's sheet (`prove.rs`), which puts their answers right,
//! and the amounts are found anew. How much lift to ask for then follows from what is known of hand and sheet (`hand.rs`).

use crate::act::Act;
use crate::bridge::bridge;
use crate::candidates::{Candidate, candidates, places};
use crate::hand::Hand;
use crate::model::Model;
use crate::planned::Planned;
use crate::prove::prove;
use crate::sparse::{Sparse, dot};
use crate::tips::Tips;
use crate::ways::Ways;
use dentwright_sheet::PaintRow;
use dentwright_surface::{Map, average};
use rayon::prelude::*;

/// Price of a move: as much as the limit over this many cells.
const PRICED_CELLS: f64 = 1.0;
/// How often a move is made at most where once is not enough.
pub const MOST_TIMES: usize = 3;
/// How often cells are weighed, and how much least and most.
const WEIGHED: usize = 4;
const WEIGHTS: [f64; 2] = [0.4, 2.5];
/// Less than this share of the finish limit is not worth a move.
const WORTH: f64 = 0.3;
/// Places that stand out by more than this share of the limit are asked.
const ASKED: f64 = 0.4;
/// A move whose scatter reaches another's place by more than this share of the limit ends the round: the other's amount
/// hangs on what came of it.
const READ_FIRST: f64 = 1.0;

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
    let asked = places(&smooth, ASKED * settings.limit_mm, model.known.half_mm);
    let all = candidates(model, &smooth, &asked, &settings.tips, ways, settings.limit_mm);
    let reached = |p: &([f64; 2], f64)| p.1 > -settings.limit_mm || all.iter().any(|c| c.at == p.0);
    let unreached = asked.iter().filter(|p| !reached(p)).map(|p| p.0).collect();
    let thickness = model.known.thickness_mm;
    let mut chosen = choose(&all, &read, hand, settings);
    chosen.sort_by(|a, b| b.1.total_cmp(&a.1));
    let seen: Vec<(Planned, Candidate)> = (chosen.iter())
        .map(|(c, amount)| (Planned::of(c, *amount, hand, settings, &smooth, thickness), (*c).clone()))
        .collect();
    chosen.truncate(seeing(&seen, &smooth, settings.limit_mm));
    let before = chosen.len();
    let share = hand.mean()[1];
    let tried: Vec<Candidate> = match settings.prove {
        true => chosen.par_iter().filter_map(|(c, amount)| prove(model, c, *amount, share, &smooth)).collect(),
        false => chosen.into_iter().map(|(c, _)| c.clone()).collect(),
    };
    let left_out = before - tried.len();
    let second = amounts(&tried, &read, settings);
    let mut pairs: Vec<(Planned, Candidate)> = (tried.into_iter().zip(second))
        .filter(|(_, amount)| *amount > WORTH * settings.limit_mm)
        .map(|(c, amount)| (Planned::of(&c, amount, hand, settings, &smooth, thickness), c))
        .collect();
    // large shape before detail
    pairs.sort_by(|a, b| (b.0.leaves_mm[0]).total_cmp(&a.0.leaves_mm[0]));
    pairs.truncate(seeing(&pairs, &smooth, settings.limit_mm));
    let proved = settings.prove && !pairs.is_empty();
    if pairs.is_empty() {
        let last = last_resort(&all, &asked, hand, settings);
        pairs.extend(last.map(|(c, amount)| (Planned::of(c, amount, hand, settings, &smooth, thickness), c.clone())));
    }
    let (expected_mm, sigma_mm) = after(&pairs, &read);
    let (moves, behind) = pairs.into_iter().unzip();
    Proposal { moves, behind, expected_mm, sigma_mm, proved, left_out, unreached }
}

/// Where nothing was found that brings all of it nearer: what any master would do, work the place that stands out most,
/// with the tip that scatters least.
fn last_resort<'a>(
    all: &'a [Candidate],
    places: &[([f64; 2], f64)],
    hand: &Hand,
    settings: &ProposeSettings,
) -> Option<(&'a Candidate, f64)> {
    let worst = |(at, height): &([f64; 2], f64)| {
        let there = all.iter().filter(|c| c.at == *at && c.act != Act::Blend);
        let with = there.map(|c| (c, height.abs().min(MOST_TIMES as f64 * c.most_once(settings))));
        let scatter = |(c, amount): &(&Candidate, f64)| c.asked(*amount, hand, settings.limit_mm).1[1];
        with.filter(|(_, amount)| *amount > 0.0).min_by(|a, b| scatter(a).total_cmp(&scatter(b)))
    };
    places.iter().filter(|p| p.1.abs() > settings.limit_mm).find_map(worst)
}

/// The few from which most is expected, one a place, with their amounts.
fn choose<'a>(
    all: &'a [Candidate],
    read: &[f64],
    hand: &Hand,
    settings: &ProposeSettings,
) -> Vec<(&'a Candidate, f64)> {
    let first = amounts(all, read, settings);
    let wanted: Vec<f64> = read.iter().map(|v| -v).collect();
    let gain = |c: &Candidate, amount: f64| {
        let (_, [mean, sigma]) = c.asked(amount, hand, settings.limit_mm);
        let square = dot(&c.column, &c.column);
        2.0 * mean * dot(&c.column, &wanted) - (mean * mean + sigma * sigma) * square
    };
    let worth = |(_, amount): &(&Candidate, f64)| *amount > WORTH * settings.limit_mm;
    let mut ranked: Vec<(&Candidate, f64, f64)> =
        all.iter().zip(first).filter(worth).map(|(c, amount)| (c, amount, gain(c, amount))).collect();
    ranked.sort_by(|a, b| b.2.total_cmp(&a.2));
    let mut chosen: Vec<(&Candidate, f64)> = Vec::new();
    for (c, amount, _) in ranked {
        let new = chosen.iter().all(|(o, _)| (o.at[0] - c.at[0]).hypot(o.at[1] - c.at[1]) > 1.0);
        if new && chosen.len() < settings.moves {
            chosen.push((c, amount));
        }
    }
    chosen
}

/// Amounts that bring the map nearest to level, where what is over the limit counts more: the finish is judged by the
/// largest place, so cells that would be left over it weigh more when they are found anew.
fn amounts(all: &[Candidate], read: &[f64], settings: &ProposeSettings) -> Vec<f64> {
    let most: Vec<f64> = all.iter().map(|c| MOST_TIMES as f64 * c.most_once(settings)).collect();
    let price = vec![PRICED_CELLS * settings.limit_mm; all.len()];
    let mut weight = vec![1.0; read.len()];
    let mut found = Vec::new();
    for _ in 0..WEIGHED {
        let b: Vec<f64> = read.iter().zip(&weight).map(|(v, w)| -v * w).collect();
        let weighed = |c: &Candidate| c.column.iter().zip(&weight).map(|(v, w)| v * w).collect();
        let columns: Vec<Vec<f64>> = all.iter().map(weighed).collect();
        found = Sparse { columns: &columns, b: &b, price: &price, most: &most }.solve();
        let left = |i: usize| read[i] + all.iter().zip(&found).map(|(c, x)| x * c.column[i]).sum::<f64>();
        let over = |i: usize| (left(i).abs() / settings.limit_mm).clamp(WEIGHTS[0], WEIGHTS[1]);
        weight.iter_mut().enumerate().for_each(|(i, w)| *w = (*w * over(i)).sqrt());
    }
    found
}

impl Candidate {
    /// Greatest lift one stroke may leave, mm: within what was asked, the force that can be brought there, and what may be
    /// spent.
    pub fn most_once(&self, settings: &ProposeSettings) -> f64 {
        let may = |a: &dentwright_sheet::Quick| a.spent <= settings.most_spent && a.force_n <= self.most_n;
        let within = self.curve.corners.iter().zip(&self.answers).filter(|(_, a)| may(a));
        within.map(|(corner, _)| corner[1]).fold(0.0, f64::max)
    }

    /// The lift to ask for so that `amount` stays, and what that leaves: mean and one sigma, mm. Never beyond what was
    /// asked of the sheet.
    pub fn asked(&self, amount: f64, hand: &Hand, limit_mm: f64) -> (f64, [f64; 2]) {
        let last = self.curve.corners[self.curve.corners.len() - 1][0];
        let held = hand.ask(&self.curve, amount, last / hand.mean()[0], limit_mm);
        (held, hand.leaves(&self.curve, held))
    }
}

/// How many moves may be made before a reading: up to the first whose amount hangs on the scatter of those before it.
fn seeing(pairs: &[(Planned, Candidate)], map: &Map, limit_mm: f64) -> usize {
    let blind = |k: &usize| {
        let at = pairs[*k].0.at_mm;
        let off: f64 = pairs[..*k].iter().map(|(p, c)| (p.leaves_mm[1] * c.at_place(map, at)).powi(2)).sum();
        off.sqrt() > READ_FIRST * limit_mm.max(0.5 * pairs[*k].0.leaves_mm[0])
    };
    (1..pairs.len()).find(blind).unwrap_or(pairs.len())
}

/// Largest residual expected after the moves, and its doubt there, mm.
fn after(pairs: &[(Planned, Candidate)], read: &[f64]) -> (f64, f64) {
    let at = |i: usize| read[i] + pairs.iter().map(|(p, c)| p.leaves_mm[0] * c.column[i]).sum::<f64>();
    let worst = (0..read.len()).max_by(|a, b| at(*a).abs().total_cmp(&at(*b).abs()));
    let doubt = |i: usize| pairs.iter().map(|(p, c)| (p.leaves_mm[1] * c.column[i]).powi(2)).sum::<f64>().sqrt();
    worst.map_or((0.0, 0.0), |i| (at(i).abs(), doubt(i)))
}
