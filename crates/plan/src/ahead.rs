//! One round after another: what is expected of each, and where the next begins.

use crate::custom::{Departure, departures, trade_order};
use crate::foresee::{Foreseen, foresee};
use crate::model::{Model, largest};
use crate::plan::{Asked, Placed, Plan, ReadAgain, Round};
use crate::propose::{Proposal, ProposeSettings, propose};
use crate::tooling::{Reachable, holds};
use crate::ways::Ways;
use dentwright_surface::{Map, average};

/// The trade's order is kept where another one is better by less than this share of the finish limit.
const ALIKE: f64 = 0.25;

/// How the panel is expected to stand after the rounds so far.
pub struct Ahead {
    /// The map, mm.
    pub map: Map,
    variance: Vec<f64>,
}

impl Ahead {
    /// As it was read.
    pub fn of(map: &Map) -> Self {
        Self { map: map.clone(), variance: vec![0.0; map.grid.len()] }
    }

    /// One more round; the model goes on to what it leaves. None where nothing helps.
    pub fn round(
        &mut self,
        model: &mut Model,
        asked: &Asked,
        reachable: &Reachable,
        first: bool,
        made: &mut Plan,
    ) -> Option<Round> {
        let settings = ProposeSettings { prove: first, ..asked.settings.clone() };
        let behind = |at: [f64; 2]| reachable.force(at);
        let warm = settings.panel_c.max(30.0);
        let tab = |radius: f64| asked.glue.map(|g| holds(g, radius, warm)[0]);
        let ways = Ways { behind: &behind, glue: &tab };
        let proposal = propose(model, &self.map, asked.hand, &settings, &ways);
        if first {
            made.unreached_mm.clone_from(&proposal.unreached);
        }
        if proposal.moves.is_empty() {
            return None;
        }
        let smooth = average(&self.map, settings.average_mm);
        let before_mm = largest(&smooth);
        let (order, foreseen, departed) = ordered(model, &self.map, &proposal, asked);
        if first {
            made.departures = departures(&proposal.moves, &proposal.behind, &smooth, settings.limit_mm);
            made.departures.extend(departed);
        }
        for (m, c) in proposal.moves.iter().zip(&proposal.behind) {
            self.variance.iter_mut().zip(&c.column).for_each(|(v, k)| *v += (m.leaves_mm[1] * k).powi(2));
        }
        let mut expected_mm = proposal.expected_mm;
        if let Some(foreseen) = foreseen {
            expected_mm = foreseen.largest_mm;
            self.map = foreseen.map;
            model.panel = foreseen.panel;
        }
        let after = average(&self.map, settings.average_mm);
        let worst = (0..after.grid.len()).filter(|i| after.values[*i].is_finite());
        let worst = worst.max_by(|a, b| after.values[*a].abs().total_cmp(&after.values[*b].abs()));
        let sigma_mm = worst.map_or(0.0, |i| self.variance[i].sqrt());
        let placed = |k: usize| {
            let planned = proposal.moves[k].clone();
            let tooling = reachable.tooling(&planned, asked.glue);
            Placed { planned, tooling }
        };
        let level = expected_mm <= settings.limit_mm;
        Some(Round {
            moves: order.into_iter().map(placed).collect(),
            before_mm,
            expected_mm,
            sigma_mm,
            proved: proposal.proved,
            left_out: proposal.left_out,
            read_again: if level { ReadAgain::ShouldBeLevel } else { ReadAgain::DoubtGrows },
        })
    }
}

/// The better of two orders played through in full: the largest move first, or as the trade does it, which is kept where
/// both come to the same.
fn ordered(
    model: &Model,
    map: &Map,
    proposal: &Proposal,
    asked: &Asked,
) -> (Vec<usize>, Option<Foreseen>, Option<Departure>) {
    let moves = &proposal.moves;
    let play =
        |order: &[usize]| foresee(model, map, order.iter().map(|k| &moves[*k]), asked.hand, asked.settings.average_mm);
    let (by_size, trade): (Vec<usize>, _) = ((0..moves.len()).collect(), trade_order(moves));
    let as_trade = play(&trade);
    if by_size == trade {
        return (trade, as_trade, None);
    }
    match (play(&by_size), as_trade) {
        (Some(ours), Some(theirs)) if ours.largest_mm < theirs.largest_mm - ALIKE * asked.settings.limit_mm => {
            let (planned_mm, trade_mm) = (ours.largest_mm, theirs.largest_mm);
            (by_size, Some(ours), Some(Departure::CrownsFirst { planned_mm, trade_mm }))
        }
        (Some(ours), None) => (by_size, Some(ours), None),
        (_, theirs) => (trade, theirs, None),
    }
}
