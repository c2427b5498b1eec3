//! The planner's sheet follows the moves that were made: each is made on it too, as far as leaves what was read to have
//! stayed. So it holds what the metal holds, and above all goes as far over before anything more stays; working the new
//! shape in (`mould`) would leave a sheet that gives too soon.

use crate::bridge::bridge;
use crate::hand::Tried;
use crate::model::{Model, largest};
use dentwright_sheet::{NotWorked, Pace, perform_at};
use dentwright_surface::{Map, average};

/// Tries at the travel that leaves what stayed, and how near is near: a share of it, and never nearer than so many mm.
const TRIES: usize = 5;
const NEAR: f64 = 0.1;
const NEAR_MM: f64 = 0.004;
/// What a mm more of travel leaves, about, before two tries tell it.
const SLOPE: f64 = 0.5;
/// The reading is worked in where the sheet is off it by more than this, mm, or by this share of what stands out.
const OFF_MM: f64 = 0.06;
const OFF: f64 = 0.6;

impl Model {
    /// Follows the moves, and takes the reading after them along where the sheet is still far off it, or no move is known.
    ///
    /// # Errors
    /// Where the caller stopped it.
    pub fn follow(&mut self, made: &[Tried], deviation: &Map, go_on: &dyn Fn(f64) -> bool) -> Result<(), NotWorked> {
        if made.is_empty() {
            return self.take(deviation, go_on);
        }
        made.iter().for_each(|one| self.make(one));
        let smooth = average(&bridge(deviation), deviation.grid.step_mm);
        self.misfit_mm = self.off(&smooth);
        if self.misfit_mm > OFF_MM.max(OFF * largest(&smooth)) { self.take(deviation, go_on) } else { Ok(()) }
    }

    /// One move, tried from how the sheet stands until it leaves what stayed, and the try that came nearest kept; the sheet
    /// stays as it is where it finds no rest.
    fn make(&mut self, one: &Tried) {
        let stayed = one.times as f64 * one.left_mm;
        if stayed < NEAR_MM {
            return;
        }
        let start = (self.panel.patch.places.clone(), self.panel.patch.memory.clone());
        let there = self.panel.deviation(one.at_mm[0], one.at_mm[1]);
        let mut travel = one.curve.held(stayed);
        let (mut under, mut over) = ([0.0, 0.0], None);
        let mut best = (stayed, start.clone());
        for _ in 0..TRIES {
            let wanted = one.act.on_sheet(one.at_mm, one.radius_mm, travel);
            let outcome = perform_at(&mut self.panel, &wanted, Pace::COARSE);
            if outcome.converged && outcome.snapped_at_mm.is_empty() {
                let left = one.act.way() * (self.panel.deviation(one.at_mm[0], one.at_mm[1]) - there);
                let off = (left - stayed).abs();
                if off < best.0 {
                    best = (off, (self.panel.patch.places.clone(), self.panel.patch.memory.clone()));
                }
                if off < NEAR_MM.max(NEAR * stayed) {
                    break;
                }
                if left < stayed {
                    under = [travel, left]
                } else {
                    over = Some([travel, left])
                }
                travel = between(under, over, stayed);
            } else {
                // too far for the sheet: less, above what it bore
                travel = 0.5 * (travel + under[0].max(0.5 * travel));
            }
            self.panel.take_up(start.0.clone(), start.1.clone());
        }
        let (places, memory) = best.1;
        self.panel.take_up(places, memory);
    }
}

/// Travel that should leave `stayed`, from one that leaves less and, where there is one, one that leaves more: on the line
/// through both, well between them.
fn between(under: [f64; 2], over: Option<[f64; 2]>, stayed: f64) -> f64 {
    let missing = stayed - under[1];
    match over {
        Some(over) => {
            let share = missing / (over[1] - under[1]);
            under[0] + share.clamp(0.15, 0.85) * (over[0] - under[0])
        }
        None => under[0] + (missing / SLOPE).min(0.4 * under[0]),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::act::Act;
    use crate::curve::Curve;
    use crate::plant::Plant;

    /// The sheet keeps at the place what the panel kept, and is left alone where nothing stayed.
    #[test]
    fn the_sheet_keeps_what_the_panel_kept() {
        let mut plant = Plant::draw(1).unwrap();
        let map = plant.read();
        let mut model = Model::from_reading(&map, &plant.told, &|_| true).unwrap();
        let low = (0..map.grid.len()).filter(|i| map.values[*i].is_finite());
        let low = low.min_by(|a, b| map.values[*a].total_cmp(&map.values[*b])).unwrap();
        let (x, y) = map.grid.position(low);
        let curve = Curve { corners: vec![[0.8, 0.0], [1.8, 0.5]] };
        let tried = |left_mm: f64| Tried {
            act: Act::Push,
            at_mm: [x, y],
            radius_mm: 18.0,
            times: 1,
            held_mm: 1.0,
            curve: curve.clone(),
            left_mm,
            sigma_mm: 0.01,
        };
        let before = model.panel.deviation(x, y);
        model.make(&tried(0.0));
        assert!((model.panel.deviation(x, y) - before).abs() < 1e-12);
        model.make(&tried(0.15));
        let kept = model.panel.deviation(x, y) - before;
        assert!((kept - 0.15).abs() < 0.05, "{kept}");
    }
}
