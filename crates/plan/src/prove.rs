//! A candidate put right by full solves on the planner's sheet: stroke by stroke, each from where the last let go, until as
//! much stays as was wanted. Letting go and pressing again as far is elastic, so the strokes lie on one curve.

use crate::candidates::Candidate;
use crate::curve::Curve;
use crate::hand::Hand;
use crate::model::Model;
use dentwright_sheet::{Pace, Panel, Quick, perform_at};
use dentwright_surface::Map;

/// Strokes at most, and the share of what is wanted that the first aims at.
const STROKES: usize = 6;
const FIRST: f64 = 0.6;
/// Strokes that may find no rest.
const LOST: usize = 2;
/// A stroke that leaves more than this many times what is wanted says little of it: it is taken back.
const TOO_MUCH: f64 = 1.7;
/// Enough of what is wanted for the strokes to end.
const ENOUGH: f64 = 0.8;
/// What a mm more of travel leaves, at least and at most, while the next stroke is chosen, mm.
const SLOPES: [f64; 2] = [0.15, 1.0];
/// Strokes go beyond what the quick answers went over by this at most.
const BEYOND: f64 = 1.3;
/// A stroke that leaves nothing is gone beyond by this at least.
const FURTHER: f64 = 1.3;
/// So many sigmas of the hand's gain further than asked are solved too, and at most this share of the lift.
const OVER: f64 = 1.5;
const OVER_MOST: f64 = 0.6;
/// Less than this is nothing, mm.
const NOTHING_MM: f64 = 0.001;

/// The candidate put right; none where the sheet finds no rest, snaps on the way, or nothing stays.
pub fn prove(model: &Model, c: &Candidate, amount: f64, hand: &Hand, map: &Map) -> Option<Candidate> {
    let wanted = amount / hand.mean()[1];
    let mut proof = Proof { model, c, map, panel: model.again()?, strokes: Vec::new(), under: [0.0; 2] };
    proof.up_to(wanted);
    proof.beyond(1.0 + (OVER * hand.sigma()[0] / hand.mean()[0]).min(OVER_MOST));
    put_right(c, proof.strokes, wanted)
}

/// Strokes made at one place of a copy of the sheet.
struct Proof<'a> {
    model: &'a Model,
    c: &'a Candidate,
    map: &'a Map,
    panel: Panel,
    strokes: Vec<Stroke>,
    /// Travel and lift left of the furthest stroke that was not taken back.
    under: [f64; 2],
}

/// What a stroke came to: all that stays up to it, by the travel it went to.
struct Stroke {
    held: f64,
    left: f64,
    answer: Quick,
    column: Vec<f64>,
}

impl Proof<'_> {
    /// Strokes further and further until as much stays as is wanted.
    fn up_to(&mut self, wanted: f64) {
        let curve = &self.c.curve;
        let mut furthest = BEYOND * curve.corners[curve.corners.len() - 1][0];
        let mut held = curve.held(FIRST * wanted).min(furthest);
        let mut lost = 0;
        while self.strokes.len() < STROKES && lost <= LOST {
            let start = (self.panel.patch.places.clone(), self.panel.patch.memory.clone());
            let (stroke, rests) = self.stroke(held);
            let left = stroke.left;
            if rests {
                self.strokes.push(stroke);
            } else {
                (furthest, lost) = (held, lost + 1);
            }
            if !rests || left > TOO_MUCH * wanted {
                // too far: less, above what is known to be too little
                self.panel.take_up(start.0, start.1);
                held = 0.5 * (held + self.under[0].max(0.5 * held));
                continue;
            }
            let slope = ((left - self.under[1]) / (held - self.under[0])).clamp(SLOPES[0], SLOPES[1]);
            self.under = [held, left.max(0.0)];
            if left >= ENOUGH * wanted || held >= furthest {
                break;
            }
            let over = self.strokes.iter().map(|s| s.held).filter(|h| *h > held).fold(f64::INFINITY, f64::min);
            // where nothing stays at all the way is further than the quick answers said
            let next = (held + (wanted - left) / slope).max(if left < NOTHING_MM { FURTHER * held } else { 0.0 });
            held = if next < over { next.min(furthest) } else { 0.5 * (held + over) };
        }
    }

    /// One stroke so many times as far as the furthest: what comes of it where the hand goes further than asked. A sheet that
    /// finds no rest there, or snaps, counts as gone over by as much as the place is off level.
    fn beyond(&mut self, times: f64) {
        let end = times * self.under[0];
        if self.under[0] > 0.0 && self.strokes.iter().all(|s| s.held < 0.95 * end) {
            let (mut stroke, rests) = self.stroke(end);
            if !rests {
                stroke.left = stroke.left.max(self.under[1] + self.there(&self.model.panel).abs());
            }
            self.strokes.push(stroke);
        }
    }

    /// A stroke to a travel from where the last let go, and whether the sheet comes to rest on its way and after it.
    fn stroke(&mut self, held: f64) -> (Stroke, bool) {
        let c = self.c;
        let wanted = c.act.on_sheet(c.at, c.tip.radius, held - self.under[1]);
        let outcome = perform_at(&mut self.panel, &wanted, Pace::COARSE);
        let left = c.act.way() * (self.there(&self.panel) - self.there(&self.model.panel));
        let (force_n, spent) = (outcome.peak_force_n, outcome.plastic_strain_spent);
        let answer = Quick { left_mm: c.act.way() * left, force_n, travel_mm: held, spent, ..c.nearest(held) };
        let column = change(self.model, &self.panel, self.map, left);
        (Stroke { held, left, answer, column }, outcome.converged && outcome.snapped_at_mm.is_empty())
    }

    fn there(&self, panel: &Panel) -> f64 {
        panel.deviation(self.c.at[0], self.c.at[1])
    }
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
    let most = 0.99 * held;
    corners.insert(0, [(held - left / slope).clamp(idle.max(0.3 * held).min(most), most), 0.0]);
    answers.insert(0, answers[0]);
    Some(Candidate { curve: Curve { corners }, answers, column, proved: true, ..c.clone() })
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

#[cfg(test)]
mod tests {
    use super::*;

    /// A stroke that leaves nothing just short of one that leaves something bounds where the curve begins.
    #[test]
    fn a_curve_begins_between_the_last_idle_stroke_and_the_first_that_works() {
        let push = Candidate::pushed(vec![[1.0, 0.0], [2.0, 0.5]], vec![1.0]);
        let answer = push.answers[0];
        let begins = |idle: f64| {
            let stroke = |[held, left]: [f64; 2]| Stroke { held, left, answer, column: vec![1.0] };
            let strokes = [[idle, 0.0], [1.0, 0.02], [1.4, 0.2]].map(stroke).into();
            let proved = put_right(&push, strokes, 0.2).expect("a curve");
            assert_eq!(proved.curve.corners[1..], [[1.0, 0.02], [1.4, 0.2]]);
            proved.curve.corners[0][0]
        };
        assert!((begins(0.5) - 0.02f64.mul_add(-0.4 / 0.18, 1.0)).abs() < 1e-12, "{}", begins(0.5));
        assert!((begins(0.97) - 0.97).abs() < 1e-12, "{}", begins(0.97));
        assert!((begins(0.999) - 0.99).abs() < 1e-12, "{}", begins(0.999));
    }
}
