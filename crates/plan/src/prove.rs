//! A candidate put right by full solves on the planner's sheet: stroke by stroke, each from where the last let go, until as
//! much stays as was wanted. Letting go and pressing again as far is elastic, so the strokes lie on one curve.

use crate::candidates::Candidate;
use crate::hand::Curve;
use crate::model::Model;
use dentwright_sheet::{Pace, Panel, Quick, perform_at};
use dentwright_surface::Map;

/// Strokes at most, and the share of what is wanted that the first aims at.
const STROKES: usize = 3;
const FIRST: f64 = 0.7;
/// What a mm more of travel leaves, at least and at most, while the next stroke is chosen, mm.
const SLOPES: [f64; 2] = [0.2, 1.0];
/// Strokes go beyond what the quick answers went over by this at most.
const BEYOND: f64 = 1.3;
/// Less than this share of what was wanted is nothing.
const NOTHING: f64 = 0.1;

/// The candidate put right; none where the sheet finds no rest, snaps on the way, or nothing stays.
pub fn prove(model: &Model, c: &Candidate, amount: f64, share: f64, map: &Map) -> Option<Candidate> {
    let wanted = amount / share;
    let (way, before) = (c.act.way(), model.panel.deviation(c.at[0], c.at[1]));
    let furthest = BEYOND * c.curve.corners[c.curve.corners.len() - 1][0];
    let mut panel = model.again()?;
    let (mut corners, mut answers): (Vec<[f64; 2]>, Vec<Quick>) = (Vec::new(), Vec::new());
    let mut held = c.curve.held(FIRST * wanted).min(furthest);
    while corners.len() < STROKES {
        let last = corners.last().copied().unwrap_or([0.0; 2]);
        let outcome = perform_at(&mut panel, &c.act.on_sheet(c.at, c.tip.radius, held - last[1]), Pace::COARSE);
        if !outcome.converged || !outcome.snapped_at_mm.is_empty() {
            return None;
        }
        let left = way * (panel.deviation(c.at[0], c.at[1]) - before);
        let quick = c.nearest(held);
        answers.push(Quick {
            left_mm: way * left,
            force_n: outcome.peak_force_n,
            travel_mm: held,
            spent: outcome.plastic_strain_spent.max(answers.last().map_or(0.0, |a: &Quick| a.spent)),
            ..quick
        });
        corners.push([held, left]);
        if left >= wanted || held >= furthest {
            break;
        }
        let slope = ((left - last[1]) / (held - last[0])).clamp(SLOPES[0], SLOPES[1]);
        held = (held + (1.1 * wanted - left) / slope).min(furthest);
    }
    let [_, left] = *corners.last()?;
    if left < NOTHING * wanted {
        return None;
    }
    let (curve, answers) = with_onset(corners, answers);
    Some(Candidate { curve, answers, column: change(model, &panel, map, left), ..c.clone() })
}

/// The curve with the travel up to which nothing stays.
fn with_onset(mut corners: Vec<[f64; 2]>, mut answers: Vec<Quick>) -> (Curve, Vec<Quick>) {
    let keep: Vec<bool> = (0..corners.len()).map(|k| corners[k][1] > 0.0).collect();
    let mut kept = keep.iter();
    corners.retain(|_| *kept.next().expect("as many"));
    let mut kept = keep.iter();
    answers.retain(|_| *kept.next().expect("as many"));
    let slope = match corners[..] {
        [a, b, ..] if b[0] > a[0] && b[1] > a[1] => (b[1] - a[1]) / (b[0] - a[0]),
        _ => 0.5,
    };
    let [held, left] = corners[0];
    let onset = (held - left / slope).clamp(0.3 * held, 0.98 * held);
    corners.insert(0, [onset, 0.0]);
    answers.insert(0, answers[0]);
    (Curve { corners }, answers)
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
