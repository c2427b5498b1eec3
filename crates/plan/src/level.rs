//! The sheet brought level, before anybody does it: does it stay, and does it pop.
//!
//! Held level from both sides, its metal free to slide along the mould, it is asked without the mould whether it would stay:
//! where its stiffness has lost a direction it buckles out again, whatever the work (more surface than the place has room for;
//! Timoshenko and Gere, Theory of Elastic Stability). Where it would, it is worked level and pressed lightly until it pops.

use crate::model::{Model, TOUCHED, largest};
use dentwright_sheet::{BOTH, Mould, NotWorked, OilCan, Panel, hold_in, oil_can, work_into};
use dentwright_surface::{Grid, Map};
use std::cell::Cell;

/// Rounds while it is worked level.
const ROUNDS: [usize; 2] = [5, 3];
/// After so many no work will leave it level: what is nearly flat springs back whole, ever further over.
const MOST_ROUNDS: usize = 16;
/// A sheet that pops at less than this under a finger is an oil can, N: common practice.
const FINGER_N: f64 = 30.0;

/// A sheet brought level.
#[derive(Debug, Clone, PartialEq)]
pub enum Leveled {
    /// It buckles out again.
    Buckles,
    /// It stays; how it pops, none where no work on the computed sheet leaves it level.
    Stays(Option<OilCan>),
}

impl Leveled {
    /// Whether it is an oil can: it does not stay, or pops under a finger.
    pub fn pops(&self) -> bool {
        match self {
            Self::Stays(None) => false,
            Self::Stays(Some(oil)) if oil.stable => oil.pops_at_n.is_some_and(|n| n <= FINGER_N),
            _ => true,
        }
    }

    /// Force at which it pops, N; none where it does not, or does not stay at all.
    pub fn pops_at_n(&self) -> Option<f64> {
        match self {
            Self::Stays(Some(oil)) if oil.stable => oil.pops_at_n,
            _ => None,
        }
    }
}

/// Brings a copy of the sheet level; none where it cannot be held so.
pub fn brought_level(model: &Model) -> Option<Leveled> {
    let mut held = model.again()?;
    with_mould(model, |mould| hold_in(&mut held, mould)).ok()?;
    let state = held.patch.state(&held.patch.places).ok()?;
    if held.patch.factor(&state).negative() > 0 {
        return Some(Leveled::Buckles);
    }
    Some(Leveled::Stays(level(model).ok().and_then(|panel| oil_can(&panel))))
}

/// A copy of the sheet worked level and let go; the stretch stays in it.
///
/// # Errors
/// Where the planner finds no work that leaves it level.
pub fn level(model: &Model) -> Result<Panel, NotWorked> {
    let mut panel = model.again().ok_or(NotWorked::Nothing)?;
    let rounds = Cell::new(0);
    let go_on = |_| rounds.replace(rounds.get() + 1) < MOST_ROUNDS;
    with_mould(model, |mould| work_into(&mut panel, mould, &go_on))?;
    Ok(panel)
}

/// Does something with a mould that is level where the sheet stands out.
fn with_mould<T>(model: &Model, work: impl FnOnce(&Mould) -> T) -> T {
    let (half_mm, n) = (model.known.half_mm, 2 * model.known.cells + 1);
    let grid = Grid { x0_mm: -half_mm, y0_mm: -half_mm, step_mm: 2.0 * half_mm / (n as f64 - 1.0), nx: n, ny: n };
    let now = Map::from_fn(grid, |x, y| model.panel.deviation(x, y));
    let limit = TOUCHED * largest(&now);
    let stands_out = |x: f64, y: f64| now.sample(x, y).is_some_and(|w| w.abs() > limit);
    work(&Mould {
        shape: &|_, _| 0.0,
        touch: &|x, y| if stands_out(x, y) { BOTH } else { 0 },
        stiffness: model.known.mould(),
        rounds: ROUNDS,
        enough_mm: 0.02 * limit / TOUCHED,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::damage::Damage;
    use crate::plant::Plant;

    /// Metal that a hard sharp hit has stretched has no room to lie level; what a shallow hit has left has. The planner's
    /// sheet, made from a reading, says of both what the true one does.
    #[test]
    fn stretched_metal_buckles_out_again_and_a_shallow_hit_does_not() {
        for (seed, damage) in [(7, Damage::Stretched), (0, Damage::Round), (3, Damage::Crease)] {
            let mut plant = Plant::draw(seed).unwrap();
            assert_eq!(plant.damage, damage);
            let stretched = damage == Damage::Stretched;
            assert_eq!(plant.beyond_repair(), stretched, "{damage:?}");
            let map = plant.read();
            let model = Model::from_reading(&map, &plant.told, &|_| true).unwrap();
            assert_eq!(brought_level(&model).expect("held").pops(), stretched, "{damage:?} as it was read");
        }
    }
}
