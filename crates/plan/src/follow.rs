//! The planner's sheet follows the moves that were made: each is made on it too, as far as leaves what was read to have
//! stayed. So it holds what the metal holds, and above all goes as far over before anything more stays; working the new
//! shape in (`mould`) would leave a sheet that gives too soon.

use crate::bridge::bridge;
use crate::hand::Tried;
use crate::model::{Model, largest};
use dentwright_sheet::{NotWorked, Pace, perform_at};
use dentwright_surface::{Map, average};

/// Tries at the travel that leaves what stayed, and how near is near: a share of it, and never nearer than so many mm.
const TRIES: usize = 3;
const NEAR: f64 = 0.1;
const NEAR_MM: f64 = 0.004;
/// What a mm more of travel leaves, at least and at most.
const SLOPES: [f64; 2] = [0.1, 1.0];
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

    /// One move, tried from how the sheet stands until it leaves what stayed; the sheet stays as it is where it finds no rest.
    fn make(&mut self, one: &Tried) {
        let stayed = one.times as f64 * one.left_mm;
        if stayed < NEAR_MM {
            return;
        }
        let start = (self.panel.patch.places.clone(), self.panel.patch.memory.clone());
        let there = self.panel.deviation(one.at_mm[0], one.at_mm[1]);
        let mut travel = one.curve.held(stayed);
        let mut last: Option<[f64; 2]> = None;
        for k in 0..TRIES {
            let wanted = one.act.on_sheet(one.at_mm, one.radius_mm, travel);
            let outcome = perform_at(&mut self.panel, &wanted, Pace::COARSE);
            if !outcome.converged || !outcome.snapped_at_mm.is_empty() {
                self.panel.take_up(start.0, start.1);
                return;
            }
            let left = one.act.way() * (self.panel.deviation(one.at_mm[0], one.at_mm[1]) - there);
            if (left - stayed).abs() < NEAR_MM.max(NEAR * stayed) || k + 1 == TRIES {
                return;
            }
            let slope = last.map_or(0.5, |[t, l]| (left - l) / (travel - t)).clamp(SLOPES[0], SLOPES[1]);
            last = Some([travel, left]);
            travel += ((stayed - left) / slope).clamp(-0.4 * travel, 0.4 * travel);
            self.panel.take_up(start.0.clone(), start.1.clone());
        }
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
