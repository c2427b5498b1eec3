//! Where a round parts from what the trade does as a rule. The rules are common practice, no published source; the reasons
//! are computed.

use crate::candidates::Candidate;
use crate::placing::Placing;
use crate::planned::Planned;
use dentwright_surface::Map;
use serde::{Deserialize, Serialize};

/// Two lows are tied when bringing one up moves the other by more than this share.
const TIED: f64 = 0.15;
/// Of two tied dents the first is brought up by this share before the second is begun.
const NINE_TENTHS: f64 = 0.9;
/// Lows farther apart are not one pair, mm.
const PAIR_MM: f64 = 45.0;
/// Between two dents the metal is up by at least this share of the shallower.
const SADDLE: f64 = 0.7;
/// A crown stands out by more than this many finish limits, and lies this near to a low, mm.
const CROWN_LIMITS: f64 = 2.0;
const CROWN_NEAR_MM: f64 = 30.0;

/// A rule of the trade that the plan does not follow, and why.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "rule", rename_all = "snake_case")]
pub enum Departure {
    /// Crowns are tapped before the low is pushed; here the low comes first.
    CrownsFirst {
        /// Largest residual after the round as planned and as the trade would order it, mm.
        planned_mm: f64,
        /// As the trade would.
        trade_mm: f64,
    },
    /// A crown beside the low is not tapped in this round, since the pushes themselves move it.
    CrownLeft {
        /// Place, mm.
        at_mm: [f64; 2],
        /// Height, mm.
        height_mm: f64,
        /// What the round's moves change there, mm.
        changes_mm: f64,
    },
    /// Both of two tied dents are worked in one round, the first not brought to nine tenths before.
    TiedTogether {
        /// The second's place moves by this share of what the first comes up.
        tie: f64,
        /// Share of its depth by which the first is brought up.
        first_share: f64,
    },
}

impl Departure {
    /// Brings its place to another frame.
    pub fn carry(&mut self, to: &Placing) {
        if let Self::CrownLeft { at_mm, .. } = self {
            *at_mm = to.carry(*at_mm);
        }
    }
}

/// Whether a move lowers.
pub fn lowers(p: &Planned) -> bool {
    p.act.way() < 0.0
}

/// The order of the trade: what lowers crowns first, then the largest.
pub fn trade_order(moves: &[Planned]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..moves.len()).collect();
    order.sort_by(|a, b| {
        let key = |k: usize| (!lowers(&moves[k]), -moves[k].leaves_mm[0]);
        key(*a).0.cmp(&key(*b).0).then(key(*a).1.total_cmp(&key(*b).1))
    });
    order
}

/// What the round as it stands parts from, order aside; `map` is the reading, smoothed.
pub fn departures(moves: &[Planned], behind: &[Candidate], map: &Map, limit_mm: f64) -> Vec<Departure> {
    tied(moves, behind, map).into_iter().chain(crown_left(moves, behind, map, limit_mm)).collect()
}

fn tied(moves: &[Planned], behind: &[Candidate], map: &Map) -> Option<Departure> {
    let lows: Vec<usize> = (0..moves.len()).filter(|k| !lowers(&moves[*k])).collect();
    let pairs = lows.iter().enumerate().flat_map(|(n, a)| lows[n + 1..].iter().map(move |b| (*a, *b)));
    let one = |(a, b): (usize, usize)| {
        let apart = apart(moves[a].at_mm, moves[b].at_mm);
        let tie = behind[a].at_place(map, moves[b].at_mm).abs();
        let first_share = moves[a].leaves_mm[0] / moves[a].depth().max(1e-9);
        let middle = [0, 1].map(|k| 0.5 * (moves[a].at_mm[k] + moves[b].at_mm[k]));
        let between = -map.sample(middle[0], middle[1]).unwrap_or(0.0);
        let two = between < SADDLE * moves[a].depth().min(moves[b].depth());
        let is = two && apart < PAIR_MM && tie > TIED && first_share < NINE_TENTHS;
        is.then_some(Departure::TiedTogether { tie, first_share })
    };
    pairs.into_iter().find_map(one)
}

fn crown_left(moves: &[Planned], behind: &[Candidate], map: &Map, limit_mm: f64) -> Option<Departure> {
    let first = moves.iter().find(|m| !lowers(m))?;
    let near = |i: &usize| {
        let (x, y) = map.grid.position(*i);
        apart([x, y], first.at_mm) < CROWN_NEAR_MM && map.values[*i].is_finite()
    };
    let highest = (0..map.grid.len()).filter(near).max_by(|a, b| map.values[*a].total_cmp(&map.values[*b]))?;
    let height_mm = f64::from(map.values[highest]);
    let (x, y) = map.grid.position(highest);
    if height_mm < CROWN_LIMITS * limit_mm || moves.iter().any(lowers) {
        return None;
    }
    let changes_mm = moves.iter().zip(behind).map(|(m, c)| m.leaves_mm[0] * c.at_place(map, [x, y])).sum();
    Some(Departure::CrownLeft { at_mm: [x, y], height_mm, changes_mm })
}

fn apart(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}
