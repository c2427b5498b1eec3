//! A round played through on the planner's sheet in full: in the order in which it would be made, each move from what the
//! last one left.

use crate::hand::Hand;
use crate::model::Model;
use crate::planned::Planned;
use dentwright_sheet::{Pace, Panel, perform_at};
use dentwright_surface::{Map, average};

/// What a round comes to.
pub struct Foreseen {
    /// The sheet after it.
    pub panel: Panel,
    /// The map after it: the reading and what the moves change on the sheet, mm.
    pub map: Map,
    /// Largest residual, averaged over the finish scale, mm.
    pub largest_mm: f64,
}

/// Plays moves in their order; none where one finds no rest or the sheet snaps.
pub fn foresee<'a>(
    model: &Model,
    map: &Map,
    moves: impl Iterator<Item = &'a Planned>,
    hand: &Hand,
    average_mm: f64,
) -> Option<Foreseen> {
    let gain = hand.mean()[0];
    let mut panel = model.again()?;
    for m in moves {
        for _ in 0..m.times {
            let outcome =
                perform_at(&mut panel, &m.act.on_sheet(m.at_mm, m.tip.radius, gain * m.held_mm), Pace::COARSE);
            if !outcome.converged || !outcome.snapped_at_mm.is_empty() {
                return None;
            }
        }
    }
    let half = model.known.half_mm;
    let change = |x: f64, y: f64| panel.deviation(x, y) - model.panel.deviation(x, y);
    let mut after = map.clone();
    for i in 0..after.grid.len() {
        let (x, y) = after.grid.position(i);
        if x.abs() < half && y.abs() < half {
            after.values[i] += change(x, y) as f32;
        }
    }
    let largest =
        average(&after, average_mm).values.iter().filter(|v| v.is_finite()).fold(0.0f32, |m, v| m.max(v.abs()));
    Some(Foreseen { panel, map: after, largest_mm: f64::from(largest) })
}
