//! Three simple masters to compare with. Each looks at the lines after every move, pushes the deepest place its rule allows
//! (or taps the highest), and learns how far over it must go from what came of its last moves.

use crate::act::Act;
use crate::model::largest;
use crate::plant::Plant;
use dentwright_surface::{Map, average};
use serde::{Deserialize, Serialize};

/// A rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Rule {
    /// The deepest low first, highs when no low is left.
    DeepestFirst,
    /// Lows from the outside in, highs when no low is left.
    OutsideIn,
    /// Crowns first wherever they stand out, then the deepest low.
    CrownsFirst,
}

/// All of them.
pub const RULES: [Rule; 3] = [Rule::DeepestFirst, Rule::OutsideIn, Rule::CrownsFirst];

/// A low deeper than this is pushed with the wide tip, mm.
const WIDE_OVER_MM: f64 = 0.25;
/// What a master thinks springs back before anything stays, mm, at first.
const SPRINGS_BACK_MM: f64 = 0.5;
/// How much of a miss is learned.
const LEARNS: f64 = 0.6;

/// Works until the reading is within the limit or so many moves were made.
pub fn work(plant: &mut Plant, rule: Rule, limit_mm: f64, average_mm: f64, tips_mm: [f64; 2], most: usize) {
    let mut over = [SPRINGS_BACK_MM; 4]; // pushes and taps, fine tip and wide
    let mut map = average(&plant.read(), average_mm);
    while plant.log.moves < most {
        if largest(&map) <= limit_mm {
            return;
        }
        let (at, height) = choose(&map, rule, limit_mm);
        let wide = height.abs() > WIDE_OVER_MM;
        let tip = tips_mm[usize::from(wide)];
        let act = if height < 0.0 { Act::Push } else { Act::Tap };
        let over = &mut over[2 * usize::from(height > 0.0) + usize::from(wide)];
        plant.make(act, at, tip, height.abs() + *over);
        let next = average(&plant.read(), average_mm);
        let there = |m: &Map| m.sample(at[0], at[1]);
        if let (Some(a), Some(b)) = (there(&map), there(&next)) {
            let got = act.way() * (b - a);
            *over = (*over + LEARNS * (height.abs() - got)).clamp(0.0, 3.0);
        }
        map = next;
    }
}

/// The place the rule works on, and how far it stands out.
fn choose(map: &Map, rule: Rule, limit_mm: f64) -> ([f64; 2], f64) {
    let read = |i: &usize| map.values[*i].is_finite();
    let cells: Vec<usize> = (0..map.grid.len()).filter(read).collect();
    let value = |i: usize| f64::from(map.values[i]);
    let place = |i: usize| {
        let (x, y) = map.grid.position(i);
        ([x, y], value(i))
    };
    let lowest = *cells.iter().min_by(|a, b| value(**a).total_cmp(&value(**b))).expect("cells that were read");
    let highest = *cells.iter().max_by(|a, b| value(**a).total_cmp(&value(**b))).expect("cells that were read");
    let (low, high) = (-value(lowest), value(highest));
    match rule {
        Rule::CrownsFirst if high > limit_mm.max(0.15 * low) => place(highest),
        _ if low <= limit_mm => place(highest),
        Rule::OutsideIn => {
            let ([x0, y0], _) = place(lowest);
            let far = |i: usize| {
                let ([x, y], _) = place(i);
                (x - x0).hypot(y - y0)
            };
            let lows = cells.iter().filter(|i| -value(**i) > limit_mm.max(0.3 * low));
            place(*lows.max_by(|a, b| far(**a).total_cmp(&far(**b))).unwrap_or(&lowest))
        }
        _ => place(lowest),
    }
}
