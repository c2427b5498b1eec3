//! A move to make, with what a master would tell the apprentice about it.

use crate::act::Act;
use crate::candidates::Candidate;
use crate::hand::Hand;
use crate::propose::ProposeSettings;
use crate::tool::ToolTip;
use dentwright_sheet::Risk;
use dentwright_surface::Map;
use serde::{Deserialize, Serialize};

/// A low at least this deep is large shape, which comes before detail, mm.
const LARGE_MM: f64 = 0.25;
/// A low nearer than this to a high is held by it, mm.
const NEAR_MM: f64 = 30.0;
/// Warmths tried for the paint, °C: a shop's working range (common practice).
const WARMTHS: [f64; 4] = [20.0, 30.0, 40.0, 50.0];

/// Why a move.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = MoveWhy))]
#[serde(tag = "why", rename_all = "snake_case")]
pub enum Why {
    /// The large shape first: this deep.
    LargeShape {
        /// Depth, mm.
        depth_mm: f64,
    },
    /// A low left over, this deep.
    Low {
        /// Depth, mm.
        depth_mm: f64,
    },
    /// A crown that holds a low in.
    Crown {
        /// Height, mm.
        height_mm: f64,
        /// Depth of the deepest low near it, mm.
        low_mm: f64,
        /// How far that low comes up by this move alone, mm; negative where it goes deeper.
        low_comes_up_mm: f64,
    },
    /// A high left over, this high.
    High {
        /// Height, mm.
        height_mm: f64,
    },
}

/// What the lines should do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = LinesDo))]
#[serde(rename_all = "snake_case")]
pub enum Lines {
    /// The bend over the low opens while held, past straight where it must be pushed over, and goes back a little.
    Opens,
    /// The bulge over the high flattens.
    Flattens,
}

/// A move to make.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Planned {
    /// What is done.
    pub act: Act,
    /// Place, mm.
    pub at_mm: [f64; 2],
    /// What touches.
    pub tip: ToolTip,
    /// How often, each time as far.
    pub times: usize,
    /// Travel of the tip from first touch, mm, in size: the lift to hold.
    pub held_mm: f64,
    /// Where the place stands while held, outward positive from the intended surface, mm.
    pub while_held_mm: f64,
    /// What should stay of all times together, mm, in size, and its one-sigma doubt.
    pub leaves_mm: [f64; 2],
    /// Force at the tip, N.
    pub force_n: f64,
    /// Warmth of the paint, °C.
    pub paint_c: f64,
    /// Risk to the paint at that warmth.
    pub paint_risk: Risk,
    /// Strain the move puts on the paint's face.
    pub paint_strain: f64,
    /// Equivalent plastic strain spent.
    pub spends: f64,
    /// Why.
    #[serde(flatten)]
    pub why: Why,
    /// What the lines should do.
    pub lines: Lines,
    /// Stop and read again when the place has come up (or down) by this much, mm: half of what is missing more than planned.
    pub stop_at_mm: f64,
}

impl Planned {
    /// How far its place stands out before the move, mm, in size.
    #[must_use]
    pub fn depth(&self) -> f64 {
        match self.why {
            Why::LargeShape { depth_mm } | Why::Low { depth_mm } => depth_mm,
            Why::Crown { height_mm, .. } | Why::High { height_mm } => height_mm,
        }
    }

    /// A candidate as a move with this lift to ask for, mm; `map` is the reading, smoothed. Once: the same lift a second
    /// time is elastic nearly all the way, since the sheet gives in only where it went last.
    pub fn of(c: &Candidate, held: f64, hand: &Hand, settings: &ProposeSettings, map: &Map, thickness_mm: f64) -> Self {
        let answer = c.nearest(hand.mean()[0] * held);
        let height = map.sample(c.at[0], c.at[1]).unwrap_or(0.0);
        let strain = answer.face_strain * (1.0 + 2.0 * settings.paint.film_mm / thickness_mm);
        let risk = |warm: &f64| settings.paint.risk(strain, *warm, settings.aged).risk;
        let warm: Vec<f64> = WARMTHS.into_iter().filter(|w| *w <= settings.most_c).collect();
        let suits = warm.iter().find(|w| risk(w) == Risk::Low).or(warm.last()).copied();
        let paint_c = suits.unwrap_or(WARMTHS[0]).max(settings.panel_c.min(settings.most_c));
        let leaves = hand.leaves(&c.curve, held);
        Self {
            act: c.act,
            at_mm: c.at,
            tip: c.tip.clone(),
            times: 1,
            held_mm: held,
            while_held_mm: height + c.act.way() * held,
            leaves_mm: leaves,
            force_n: answer.force_n,
            paint_c,
            paint_risk: risk(&paint_c),
            paint_strain: strain,
            spends: answer.spent,
            why: why(c, height, leaves[0], map),
            lines: if c.act.way() > 0.0 { Lines::Opens } else { Lines::Flattens },
            stop_at_mm: leaves[0] + 0.5 * (height.abs() - leaves[0]).abs(),
        }
    }
}

fn why(c: &Candidate, height: f64, leaves: f64, map: &Map) -> Why {
    if c.act.way() > 0.0 {
        let depth_mm = -height;
        return if depth_mm > LARGE_MM { Why::LargeShape { depth_mm } } else { Why::Low { depth_mm } };
    }
    let near = |i: &usize| {
        let (x, y) = map.grid.position(*i);
        (x - c.at[0]).hypot(y - c.at[1]) < NEAR_MM && map.values[*i].is_finite()
    };
    let lowest = (0..map.grid.len()).filter(near).min_by(|a, b| map.values[*a].total_cmp(&map.values[*b]));
    let low = lowest.map_or(0.0, |i| -f64::from(map.values[i]));
    if low <= height {
        return Why::High { height_mm: height };
    }
    let (x, y) = map.grid.position(lowest.unwrap_or(0));
    Why::Crown { height_mm: height, low_mm: low, low_comes_up_mm: leaves * c.at_place(map, [x, y]) }
}
