//! A candidate put right by full solves on the planner's sheet: stroke by stroke, each from where the last let go, until as
//! much stays as was wanted. Letting go and pressing again as far is elastic, so the strokes lie on one curve.

use crate::candidates::Candidate;
use crate::curve::Curve;
use crate::model::Model;
use dentwright_sheet::{Pace, Panel, Quick, perform_at};
use dentwright_surface::Map;

/// Strokes at most, and the share of what is wanted that the first aims at.
const STROKES: usize = 5;
const FIRST: f64 = 0.6;
/// A stroke that leaves more than this many times what is wanted says little of it: it is taken back.
const TOO_MUCH: f64 = 1.7;
/// Enough of what is wanted for the strokes to end.
const ENOUGH: f64 = 0.8;
/// What a mm more of travel leaves, at least and at most, while the next stroke is chosen, mm.
const SLOPES: [f64; 2] = [0.15, 1.0];
/// Strokes go beyond what the quick answers went over by this at most.
const BEYOND: f64 = 1.3;
/// Less than this is nothing, mm.
const NOTHING_MM: f64 = 0.001;

/// The candidate put right; none where the sheet finds no rest, snaps on the way, or nothing stays.
pub fn prove(model: &Model, c: &Candidate, amount: f64, share: f64, map: &Map) -> Option<Candidate> {
    let wanted = amount / share;
    let (way, before) = (c.act.way(), model.panel.deviation(c.at[0], c.at[1]));
    let furthest = BEYOND * c.curve.corners[c.curve.corners.len() - 1][0];
    let mut panel = model.again()?;
    let (mut strokes, mut under): (Vec<Stroke>, [f64; 2]) = (Vec::new(), [0.0; 2]);
    let mut held = c.curve.held(FIRST * wanted).min(furthest);
    while strokes.len() < STROKES {
        let start = (panel.patch.places.clone(), panel.patch.memory.clone());
        let outcome = perform_at(&mut panel, &c.act.on_sheet(c.at, c.tip.radius, held - under[1]), Pace::COARSE);
        if !outcome.converged || !outcome.snapped_at_mm.is_empty() {
            return None;
        }
        let left = way * (panel.deviation(c.at[0], c.at[1]) - before);
        let (force_n, spent) = (outcome.peak_force_n, outcome.plastic_strain_spent);
        let answer = Quick { left_mm: way * left, force_n, travel_mm: held, spent, ..c.nearest(held) };
        strokes.push(Stroke { held, left, answer, column: change(model, &panel, map, left) });
        if left > TOO_MUCH * wanted {
            panel.take_up(start.0, start.1);
            held = 0.5 * (held + under[0].max(0.5 * held));
            continue;
        }
        let slope = ((left - under[1]) / (held - under[0])).clamp(SLOPES[0], SLOPES[1]);
        under = [held, left.max(0.0)];
        if left >= ENOUGH * wanted || held >= furthest {
            break;
        }
        let over = strokes.iter().map(|s| s.held).filter(|h| *h > held).fold(f64::INFINITY, f64::min);
        let next = held + (wanted - left) / slope;
        held = if next < over { next.min(furthest) } else { 0.5 * (held + over) };
    }
    put_right(c, strokes, wanted)
}

/// What a stroke came to: all that stays up to it, by the travel it went to.
struct Stroke {
    held: f64,
    left: f64,
    answer: Quick,
    column: Vec<f64>,
}

/// The candidate with the curve through the strokes, and the change of the map by the one nearest to what is wanted.
fn put_right(c: &Candidate, mut strokes: Vec<Stroke>, wanted: f64) -> Option<Candidate> {
    strokes.sort_by(|a, b| a.held.total_cmp(&b.held));
    let idle = strokes.iter().filter(|s| s.left <= NOTHING_MM).map(|s| s.held).fold(0.0, f64::max);
    strokes.retain(|s| s.left > NOTHING_MM && s.held > idle);
    let (mut corners, mut answers): (Vec<[f64; 2]>, Vec<Quick>) = (Vec::new(), Vec::new());
    for s in &strokes {
        if corners.last().is_none_or(|l: &[f64; 2]| s.left > l[1]) {
            corners.push([s.held, s.left]);
            answers.push(s.answer);
        }
    }
    let off = |s: &&Stroke| (s.left / wanted).ln().abs();
    let column = strokes.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?.column.clone();
    let slope = match corners[..] {
        [a, b, ..] => (b[1] - a[1]) / (b[0] - a[0]),
        _ => 0.5,
    };
    let [held, left] = corners[0];
    // the travel up to which nothing stays
    corners.insert(0, [(held - left / slope).clamp(idle.max(0.3 * held), 0.99 * held), 0.0]);
    answers.insert(0, answers[0]);
    Some(Candidate { curve: Curve { corners }, answers, column, ..c.clone() })
}

/// Change of the map's cells for a lift left of one.
fn change(model: &Model, after: &Panel, map: &Map, left: f64) -> Vec<f64> {
    let half = model.known.half_mm;
    let cell = |i: usize| {
        let (x, y) = map.grid.position(i);
        let holds = x.abs() < half && y.abs() < half;
        if holds { (after.deviation(x, y) - model.panel.deviation(x, y)) / left } else { 0.0 }
    };
    (0..map.grid.len()).map(cell).collect()
}
