//! Moves that could be made: places that stand out, tips that fit, and the quick answer to each.

use crate::act::Act;
use crate::curve::Curve;
use crate::model::Model;
use crate::tips::Tips;
use crate::tool::ToolTip;
use crate::ways::Ways;
use dentwright_sheet::{Quick, give_map, quick_climb};
use dentwright_surface::Map;
use rayon::prelude::*;

/// Places asked at most.
const PLACES: usize = 10;
/// Places are at least so far apart, mm.
const APART_MM: f64 = 7.0;
/// Places each way at which the sheet's give is asked.
const GIVES: usize = 7;
/// Shares of the greatest travel that are asked.
const SHARES: [f64; 9] = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0];
/// A soft patch goes along this far before anything stays, thicknesses.
pub(crate) const IDLE_THICKNESSES: f64 = 3.2;
/// And then by this many times what is missing.
pub(crate) const OVER: f64 = 1.6;
/// Distances from the tip at which the lift left is asked, mm.
const RADII: usize = 16;
const RADIUS_STEP_MM: f64 = 3.0;
/// Highs up to this many finish limits may be blended.
const BLENDED_LIMITS: f64 = 4.0;

/// A move that could be made, with what the quick answer says of it.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// What is done.
    pub act: Act,
    /// Place, mm.
    pub at: [f64; 2],
    /// What touches.
    pub tip: ToolTip,
    /// Force that can be brought there, N.
    pub most_n: f64,
    /// Lift left by the tip's travel, both in size.
    pub curve: Curve,
    /// Answers at the corners of the curve.
    pub answers: Vec<Quick>,
    /// Change of the map's cells for a lift left of one, outward positive.
    pub column: Vec<f64>,
    /// Whether a full solve stands behind curve and column.
    pub proved: bool,
}

/// Places of the map that stand out by more than `least`, most first, apart from each other.
pub fn places(deviation: &Map, least: f64, half_mm: f64) -> Vec<([f64; 2], f64)> {
    let inner = half_mm - APART_MM;
    let mut all: Vec<([f64; 2], f64)> = (0..deviation.grid.len())
        .map(|i| (deviation.grid.position(i), f64::from(deviation.values[i])))
        .filter(|((x, y), v)| v.abs() > least && x.abs() < inner && y.abs() < inner)
        .map(|((x, y), v)| ([x, y], v))
        .collect();
    all.sort_by(|a, b| b.1.abs().total_cmp(&a.1.abs()));
    let mut chosen: Vec<([f64; 2], f64)> = Vec::new();
    for place in all {
        let far = |p: &([f64; 2], f64)| (p.0[0] - place.0[0]).hypot(p.0[1] - place.0[1]) >= APART_MM;
        if chosen.len() < PLACES && chosen.iter().all(far) {
            chosen.push(place);
        }
    }
    chosen
}

/// Moves at these places: lows pushed, or pulled where nothing reaches from behind; highs tapped, small ones also blended.
pub fn candidates(
    model: &Model,
    deviation: &Map,
    places: &[([f64; 2], f64)],
    tips: &Tips,
    ways: &Ways,
    limit_mm: f64,
) -> Vec<Candidate> {
    let Some(give) = give_map(&model.panel, GIVES) else { return Vec::new() };
    let acts = |at: [f64; 2], height: f64| match (height > 0.0, (ways.behind)(at)) {
        (true, _) if height < BLENDED_LIMITS * limit_mm => vec![(Act::Tap, f64::INFINITY), (Act::Blend, f64::INFINITY)],
        (true, _) => vec![(Act::Tap, f64::INFINITY)],
        (false, Some(force)) => vec![(Act::Push, force)],
        (false, None) => vec![(Act::Pull, f64::INFINITY)],
    };
    let mut asked = Vec::new();
    for (at, height) in places {
        for (act, most_n) in acts(*at, *height) {
            for tip in tips.for_act(act) {
                let holds = if act == Act::Pull { (ways.glue)(tip.radius) } else { Some(most_n) };
                asked.extend(holds.map(|most_n| Asked { act, at: *at, height: *height, tip, most_n }));
            }
        }
    }
    asked.par_iter().filter_map(|one| one.answer(model, &give, deviation)).collect()
}

/// A move that the sheet is asked about.
pub(crate) struct Asked<'a> {
    /// What is done.
    pub act: Act,
    /// Place, mm.
    pub at: [f64; 2],
    /// How far it stands out, mm.
    pub height: f64,
    /// What touches.
    pub tip: &'a ToolTip,
    /// Force that can be brought there, N.
    pub most_n: f64,
}

impl Asked<'_> {
    /// The quick answer; none where nothing stays.
    pub fn answer(&self, model: &Model, give: &Map, deviation: &Map) -> Option<Candidate> {
        let (way, size) = (self.act.way(), self.height.abs());
        let most = OVER * size + IDLE_THICKNESSES * model.known.thickness_mm;
        let radii: Vec<f64> = (0..RADII).map(|k| k as f64 * RADIUS_STEP_MM).collect();
        let wanted = self.act.on_sheet(self.at, self.tip.radius, most);
        let travels = SHARES.map(|s| s * most);
        let (mut corners, mut answers, mut rise): (Vec<[f64; 2]>, _, _) = (Vec::new(), Vec::new(), Vec::new());
        for (answer, rises) in quick_climb(&model.panel, give, &wanted, &travels, &radii) {
            let (held, left) = (answer.travel_mm, way * answer.left_mm);
            let last = corners.last().copied().unwrap_or([0.0; 2]);
            if held <= last[0] || left <= last[1] {
                continue; // nothing stays yet
            }
            corners.push([held, left]);
            answers.push(answer);
            rise = rises.iter().map(|r| r / answer.left_mm).collect();
            if left > size {
                break;
            }
        }
        // what is held before anything stays
        let first = *corners.first()?;
        if corners.len() == 1 || first[1] > 0.005 {
            let slope = corners.get(1).map_or(0.5, |next| (next[1] - first[1]) / (next[0] - first[0]));
            corners.insert(0, [(first[0] - first[1] / slope).clamp(0.5 * first[0], 0.98 * first[0]), 0.0]);
            answers.insert(0, answers[0]);
        }
        let column = spread(deviation, self.at, &rise, way);
        let (act, at, tip, most_n) = (self.act, self.at, self.tip.clone(), self.most_n);
        Some(Candidate { act, at, tip, most_n, curve: Curve { corners }, answers, column, proved: false })
    }
}

/// A rise by distance laid on the cells of a map.
fn spread(map: &Map, at: [f64; 2], rise: &[f64], way: f64) -> Vec<f64> {
    let cell = |i: usize| {
        let (x, y) = map.grid.position(i);
        let r = (x - at[0]).hypot(y - at[1]) / RADIUS_STEP_MM;
        let k = r as usize;
        if k + 1 >= rise.len() { 0.0 } else { way * (rise[k] + (r - k as f64) * (rise[k + 1] - rise[k])) }
    };
    (0..map.grid.len()).map(cell).collect()
}

impl Candidate {
    /// The answer at the corner nearest to a travel.
    pub fn nearest(&self, held: f64) -> Quick {
        let far = |k: &usize| (self.curve.corners[*k][0] - held).abs();
        let k = (0..self.answers.len()).min_by(|a, b| far(a).total_cmp(&far(b))).unwrap_or(0);
        self.answers[k]
    }

    /// Change at a cell of the map, or 0 beside it.
    pub fn at_place(&self, map: &Map, [x, y]: [f64; 2]) -> f64 {
        let (fx, fy) = map.grid.locate(x, y);
        let (ix, iy) = (fx.round(), fy.round());
        let on = ix >= 0.0 && iy >= 0.0 && (ix as usize) < map.grid.nx && (iy as usize) < map.grid.ny;
        if on { self.column[iy as usize * map.grid.nx + ix as usize] } else { 0.0 }
    }
}

#[cfg(test)]
impl Candidate {
    /// A push at the middle, told by its curve and its change of the map alone.
    pub(crate) fn pushed(corners: Vec<[f64; 2]>, column: Vec<f64>) -> Self {
        let answer = Quick {
            held_mm: 0.0,
            left_mm: 0.0,
            shoulder_mm: 0.0,
            shoulder_at_mm: 0.0,
            force_n: 0.0,
            travel_mm: 0.0,
            spent: 0.0,
            face_strain: 0.0,
        };
        Self {
            act: Act::Push,
            at: [0.0; 2],
            tip: crate::tips::Tips::even(&[10.0]).push.swap_remove(0),
            most_n: f64::INFINITY,
            answers: vec![answer; corners.len()],
            curve: Curve { corners },
            column,
            proved: false,
        }
    }
}
