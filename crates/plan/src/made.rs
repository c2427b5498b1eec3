//! What a round of moves came to, planned ones and the technician's own alike.

use crate::act::Act;
use crate::candidates::{Asked, Candidate, IDLE_THICKNESSES, OVER};
use crate::compare::{Stroke, left_by};
use crate::hand::{Hand, Tried};
use crate::model::{Known, Model, largest};
use crate::tool::{Hardness, ToolTip};
use dentwright_sheet::give_map;
use dentwright_surface::{Map, average};
use serde::{Deserialize, Serialize};

/// Places each way at which the sheet's give is asked.
const GIVES: usize = 7;
/// The sheet is asked up to this many times the lift that was meant: hands go farther than they mean to.
const BEYOND: f64 = 1.5;
/// What a tip moves that nothing stays of, mm, one sigma.
const NOTHING_MM: f64 = 0.005;
/// Finer tips than this share of a cell are taken as this large.
const FINEST_CELLS: f64 = 0.7;

/// A move as it was made.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct MadeMove {
    /// What was done.
    pub act: Act,
    /// Place, mm.
    pub at_mm: [f64; 2],
    /// Radius of what touched, mm.
    pub radius_mm: f64,
    /// Lift that was meant, mm, in size.
    pub held_mm: f64,
    /// How often.
    pub times: usize,
}

/// What a move came to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = MoveOutcome))]
pub struct Outcome {
    /// What was foretold to stay of all times together, mm, in size, and its one-sigma doubt.
    pub foretold_mm: [f64; 2],
    /// What stayed, mm, in the same sense.
    pub left_mm: f64,
    /// One-sigma doubt of that, mm.
    pub sigma_mm: f64,
}

/// What a round came to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct RoundOutcome {
    /// Move by move.
    pub moves: Vec<Outcome>,
    /// Largest residual before it, mm.
    pub stood_out_mm: f64,
    /// Largest residual foretold and its one-sigma doubt, mm.
    pub foretold_mm: [f64; 2],
    /// Largest residual found, mm.
    pub found_mm: f64,
    /// What the hand learns from.
    pub tried: Vec<Tried>,
}

/// What moves came to: the sheet and the map before them, the map after them, the hand as it was thought to be. Both maps
/// lie on one grid in the sheet's frame.
#[must_use]
pub fn round_outcome(
    model: &Model,
    before: &Map,
    after: &Map,
    made: &[MadeMove],
    hand: &Hand,
    average_mm: f64,
) -> RoundOutcome {
    let smooth = average(before, average_mm);
    let give = give_map(&model.panel, GIVES);
    let answer = |m: &MadeMove| give.as_ref().and_then(|give| Candidate::made(model, give, &smooth, m));
    let answers: Vec<Option<Candidate>> = made.iter().map(answer).collect();
    let foretold = |(m, c): (&MadeMove, &Option<Candidate>)| match c {
        None => [0.0, NOTHING_MM],
        Some(c) => {
            let [mean, sigma] = hand.there(m.act, m.at_mm).leaves(&c.curve, m.held_mm);
            [m.times as f64 * mean, (m.times as f64).sqrt() * sigma]
        }
    };
    let foretold: Vec<[f64; 2]> = made.iter().zip(&answers).map(foretold).collect();
    let known: Vec<usize> = (0..made.len()).filter(|k| answers[*k].is_some()).collect();
    let strokes: Vec<Stroke> = (known.iter())
        .filter_map(|k| {
            let behind = answers[*k].as_ref()?;
            Some(Stroke { held_mm: made[*k].held_mm, times: made[*k].times, foretold_mm: foretold[*k][0], behind })
        })
        .collect();
    let left = left_by(&strokes, before, after);
    let there = |m: &MadeMove| {
        let at = |map: &Map| map.sample(m.at_mm[0], m.at_mm[1]);
        at(before).zip(at(after)).map_or(0.0, |(a, b)| m.act.way() * (b - a))
    };
    let outcome = |k: usize| {
        let times = made[k].times as f64;
        let told = known.iter().position(|i| *i == k).map(|n| (times * left[n].left_mm, times * left[n].sigma_mm));
        let (left_mm, sigma_mm) = told.unwrap_or((there(&made[k]), NOTHING_MM));
        Outcome { foretold_mm: foretold[k], left_mm, sigma_mm }
    };
    let moves = (0..made.len()).map(outcome).collect();
    let columns: Vec<(&Candidate, [f64; 2])> =
        answers.iter().zip(&foretold).filter_map(|(c, f)| c.as_ref().map(|c| (c, *f))).collect();
    RoundOutcome {
        moves,
        stood_out_mm: largest(&smooth),
        foretold_mm: residual(&smooth, &columns),
        found_mm: largest(&average(after, average_mm)),
        tried: left,
    }
}

/// Largest residual expected, and its doubt where it is largest, mm.
fn residual(map: &Map, moves: &[(&Candidate, [f64; 2])]) -> [f64; 2] {
    let read = |i: &usize| map.values[*i].is_finite();
    let at = |i: usize| f64::from(map.values[i]) + moves.iter().map(|(c, f)| f[0] * c.column[i]).sum::<f64>();
    let worst = (0..map.grid.len()).filter(read).max_by(|a, b| at(*a).abs().total_cmp(&at(*b).abs()));
    let sigma = |i: usize| moves.iter().map(|(c, f)| (f[1] * c.column[i]).powi(2)).sum::<f64>().sqrt();
    worst.map_or([0.0; 2], |i| [at(i).abs(), sigma(i)])
}

impl Candidate {
    /// A move as it was made, with the quick answer to it; none where nothing was to stay.
    fn made(model: &Model, give: &Map, smooth: &Map, m: &MadeMove) -> Option<Self> {
        let Known { half_mm, cells, thickness_mm, .. } = model.known;
        let radius = m.radius_mm.max(FINEST_CELLS * 2.0 * half_mm / cells as f64);
        let tip = ToolTip { name: String::new(), radius, hardness: Hardness::Medium, source: String::new() };
        let there = smooth.sample(m.at_mm[0], m.at_mm[1]).unwrap_or(0.0);
        let reach = (BEYOND * m.held_mm - IDLE_THICKNESSES * thickness_mm) / OVER;
        let height = -m.act.way() * there.abs().max(reach);
        Asked { act: m.act, at: m.at_mm, height, tip: &tip, most_n: f64::INFINITY }.answer(model, give, smooth)
    }
}
