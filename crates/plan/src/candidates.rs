//! Moves that could be made: places that stand out, tips that fit, and the quick answer to each.

use crate::hand::Curve;
use crate::model::Model;
use dentwright_sheet::{Goal, Kind, Move, Quick, Tip, give_map, quick_rise};
use dentwright_surface::Map;
use rayon::prelude::*;

/// Places asked at most.
const PLACES: usize = 16;
/// Places are at least so far apart, mm.
const APART_MM: f64 = 7.0;
/// Places each way at which the sheet's give is asked.
const GIVES: usize = 7;
/// Shares of the greatest travel that are asked.
const SHARES: [f64; 4] = [0.3, 0.5, 0.75, 1.0];
/// A soft patch goes along this far before anything stays, thicknesses.
const IDLE_THICKNESSES: f64 = 3.2;
/// Distances from the tip at which the lift left is asked, mm.
const RADII: usize = 16;
const RADIUS_STEP_MM: f64 = 3.0;

/// A move that could be made, with what the quick answer says of it.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// Kind.
    pub kind: Kind,
    /// Place, mm.
    pub at: [f64; 2],
    /// Radius of the tip, mm.
    pub tip_mm: f64,
    /// Lift left by lift held, both in size.
    pub curve: Curve,
    /// Answers at the corners of the curve.
    pub answers: Vec<Quick>,
    /// Change of the map's cells for a lift left of one, outward positive.
    pub column: Vec<f64>,
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

/// Moves at these places with these tips; pulled instead of pushed where nothing reaches from behind.
pub fn candidates(
    model: &Model,
    deviation: &Map,
    places: &[([f64; 2], f64)],
    tips_mm: &[f64],
    reaches: &(dyn Fn([f64; 2]) -> bool + Sync),
) -> Vec<Candidate> {
    let Some(give) = give_map(&model.panel, GIVES) else { return Vec::new() };
    let asked: Vec<_> = places.iter().flat_map(|p| tips_mm.iter().map(move |tip| (*p, *tip))).collect();
    let one = |((at, height), tip): &(([f64; 2], f64), f64)| {
        let kind = match *height {
            h if h > 0.0 => Kind::Tap,
            _ if reaches(*at) => Kind::Push,
            _ => Kind::Pull,
        };
        candidate(model, &give, deviation, (*at, *height), *tip, kind)
    };
    asked.par_iter().filter_map(one).collect()
}

/// The move as the sheet's solvers take it.
pub fn as_move(kind: Kind, at: [f64; 2], tip_mm: f64, travel_mm: f64) -> Move {
    let tip = if kind == Kind::Pull { Tip::Disc { radius_mm: tip_mm } } else { Tip::Sphere { radius_mm: tip_mm } };
    Move { kind, at, tip, bonded: false, goal: Goal::Travel(travel_mm), steps: 3 }
}

fn candidate(
    model: &Model,
    give: &Map,
    deviation: &Map,
    (at, height): ([f64; 2], f64),
    tip_mm: f64,
    kind: Kind,
) -> Option<Candidate> {
    let most = 1.6 * height.abs() + IDLE_THICKNESSES * model.known.thickness_mm;
    let radii: Vec<f64> = (0..RADII).map(|k| k as f64 * RADIUS_STEP_MM).collect();
    let way = kind.way();
    let (mut corners, mut answers, mut rise) = (Vec::new(), Vec::new(), Vec::new());
    for share in SHARES {
        let Some((answer, rises)) = quick_rise(&model.panel, give, &as_move(kind, at, tip_mm, share * most), &radii)
        else {
            break; // it pops or folds from here on
        };
        let (held, left) = (way * answer.held_mm, way * answer.left_mm);
        let last = corners.last().copied().unwrap_or([0.0; 2]);
        if held <= last[0] || left <= last[1] {
            continue; // nothing stays yet
        }
        corners.push([held, left]);
        answers.push(answer);
        rise = rises.iter().map(|r| r / answer.left_mm).collect();
        if left > height.abs() {
            break;
        }
    }
    // what is held before anything stays
    let first = *corners.first()?;
    let idle = 0.5 * first[0];
    if corners.len() == 1 || first[1] > 0.02 {
        corners.insert(0, [idle, 0.0]);
        answers.insert(0, answers[0]);
    }
    let column = (0..deviation.grid.len())
        .map(|i| {
            let (x, y) = deviation.grid.position(i);
            let r = (x - at[0]).hypot(y - at[1]) / RADIUS_STEP_MM;
            let k = r as usize;
            if k + 1 >= rise.len() { 0.0 } else { way * (rise[k] + (r - k as f64) * (rise[k + 1] - rise[k])) }
        })
        .collect();
    Some(Candidate { kind, at, tip_mm, curve: Curve { corners }, answers, column })
}
