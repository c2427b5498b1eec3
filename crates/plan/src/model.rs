//! The sheet as the planner takes it to be: made from a reading and a few facts, taken along from reading to reading.
//!
//! Coarse cells over the patch. The first reading's shape is worked into the undamaged panel, later ones into what the
//! sheet held before, so that what was spent on the way stays spent.

use crate::bridge::bridge;
use dentwright_sheet::{
    Axis, BOTH, Drive, Edges, Given, Hold, Memory, Mesh, Metal, MetalRow, Mould, NotWorked, Outline, Panel, Patch,
    Springs, Tolerance, balance, work_into,
};
use dentwright_surface::{Map, average};
use nalgebra::Vector3;
use serde::{Deserialize, Serialize};

/// Layers across the thickness.
const LAYERS: usize = 5;
/// Rounds of work into the first reading's shape, growing and settling; into a later one's.
const FIRST_ROUNDS: [usize; 2] = [8, 4];
const LATER_ROUNDS: [usize; 2] = [1, 2];
/// Share of the depth below which metal counts as not touched at first.
pub(crate) const TOUCHED: f64 = 0.1;
/// A high of less than this share of the low was raised by the press itself and is not worked in.
const RAISED: f64 = 0.5;

/// What is known of the panel round a damage.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Known {
    /// Metal.
    pub metal: Metal,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Panel curvature, 1/mm, as in [`crate::InnerSide`].
    pub curvature: [f64; 3],
    /// Half the patch, mm; its middle is the frame's.
    pub half_mm: f64,
    /// How the patch is held.
    pub hold: Hold,
    /// Cells each way.
    pub cells: usize,
}

/// The planner's sheet.
pub struct Model {
    /// What it is made from.
    pub known: Known,
    /// As it is taken to stand.
    pub panel: Panel,
    /// How far its shape is off what was read, root mean square over the damage, mm. A shallow dent that springs back whole
    /// cannot be worked in; the sheet is then only what it would be undamaged, which still says how it gives.
    pub misfit_mm: f64,
}

impl Known {
    /// A metal on file at its likely values, held by the rest of a panel.
    pub fn likely(row: &MetalRow, thickness_mm: f64, curvature: [f64; 3], half_mm: f64, cells: usize) -> Self {
        let metal = row.likely();
        let hold = Hold::Spring(Springs::rest_of_curved_panel(2.0 * half_mm, thickness_mm, &metal));
        Self { metal, thickness_mm, curvature, half_mm, hold, cells }
    }

    /// The undamaged panel; none where its shape folds.
    pub fn panel(&self) -> Option<Panel> {
        let [a, b, c] = self.curvature;
        let z = |x: f64, y: f64| 0.5 * (a * x * x + 2.0 * b * x * y + c * y * y);
        let breaks = |k: usize| self.half_mm * (2.0 * k as f64 / self.cells as f64 - 1.0);
        let axis = || Axis::new((0..=self.cells).map(breaks).collect());
        let mesh = Mesh::new(axis(), axis(), Outline::Rectangle, &z, 2)?;
        Some(Panel::new(Patch::new(mesh, self.metal.clone(), self.thickness_mm, LAYERS, &Edges::all(self.hold))))
    }

    /// Stiffness of a mould that smooths what is shorter than four cells, N/mm³.
    pub(crate) fn mould(&self) -> f64 {
        let (t, metal) = (self.thickness_mm, &self.metal);
        let bending = metal.e_mpa * t.powi(3) / (12.0 * (1.0 - metal.nu * metal.nu));
        let cell = 2.0 * self.half_mm / self.cells as f64;
        bending * (std::f64::consts::TAU / (3.0 * cell)).powi(4)
    }
}

impl Model {
    /// From the first reading.
    ///
    /// # Errors
    /// Where there is nothing to plan for, or the caller stopped it.
    pub fn from_reading(deviation: &Map, known: &Known, go_on: &dyn Fn(f64) -> bool) -> Result<Self, NotWorked> {
        let panel = known.panel().ok_or(NotWorked::Nothing)?;
        let mut model = Self { known: known.clone(), panel, misfit_mm: 0.0 };
        let smooth = average(&bridge(deviation), deviation.grid.step_mm);
        let (low, high) = extremes(&smooth);
        let limit = TOUCHED * high.max(-low);
        let raised = if high < -RAISED * low { f64::INFINITY } else { limit };
        let dropped = if -low < RAISED * high { f64::INFINITY } else { limit };
        let touch = |w: f64| if w < -dropped { -1 } else { i8::from(w > raised) };
        model.work(&smooth, &touch, FIRST_ROUNDS, go_on)?;
        Ok(model)
    }

    /// Takes a later reading along, as far as it can be worked in.
    ///
    /// # Errors
    /// Where the caller stopped it.
    pub fn take(&mut self, deviation: &Map, go_on: &dyn Fn(f64) -> bool) -> Result<(), NotWorked> {
        let smooth = average(&bridge(deviation), deviation.grid.step_mm);
        self.work(&smooth, &|_| BOTH, LATER_ROUNDS, go_on)
    }

    fn work(
        &mut self,
        shape: &Map,
        touch: &dyn Fn(f64) -> i8,
        rounds: [usize; 2],
        go_on: &dyn Fn(f64) -> bool,
    ) -> Result<(), NotWorked> {
        let at = |x: f64, y: f64| shape.sample(x, y).unwrap_or(0.0);
        let mould = Mould {
            shape: &at,
            touch: &|x, y| touch(at(x, y)),
            stiffness: self.known.mould(),
            rounds,
            enough_mm: 0.01 * largest(shape),
        };
        let edges = self.panel.patch.held.clone();
        let (places, memory) = (self.panel.patch.places.clone(), self.panel.patch.memory.clone());
        let done = work_into(&mut self.panel, &mould, go_on);
        self.panel.patch.held = edges;
        match done {
            Ok(worked) => self.misfit_mm = worked.misfit_mm,
            Err(NotWorked::NotReached { .. }) if let_go(&mut self.panel) => self.nearer(shape, places, memory),
            Err(NotWorked::NotReached { .. } | NotWorked::NoRest { .. }) => {
                self.panel.take_up(places, memory);
                self.misfit_mm = self.off(shape);
            }
            Err(other) => return Err(other),
        }
        Ok(())
    }

    /// Stays as it stands, or goes back to how it stood, whichever is nearer to a shape: let go short of it a sheet may
    /// snap far off.
    fn nearer(&mut self, shape: &Map, places: Vec<Vector3<f64>>, memory: Vec<Memory>) {
        let (now, here) = (self.off(shape), (self.panel.patch.places.clone(), self.panel.patch.memory.clone()));
        self.panel.take_up(places, memory);
        self.misfit_mm = self.off(shape);
        if now < self.misfit_mm {
            self.panel.take_up(here.0, here.1);
            self.misfit_mm = now;
        }
    }

    /// How far the sheet is off a shape where that stands out, root mean square, mm.
    pub(crate) fn off(&self, shape: &Map) -> f64 {
        let limit = TOUCHED * largest(shape);
        let cell = |i: usize| {
            let (x, y) = shape.grid.position(i);
            let (w, half) = (f64::from(shape.values[i]), self.known.half_mm);
            (w.abs() > limit && x.abs() < half && y.abs() < half).then(|| (self.panel.deviation(x, y) - w).powi(2))
        };
        let squares: Vec<f64> = (0..shape.grid.len()).filter_map(cell).collect();
        (squares.iter().sum::<f64>() / squares.len().max(1) as f64).sqrt()
    }

    /// The same sheet once more.
    pub fn again(&self) -> Option<Panel> {
        let mut panel = self.known.panel()?;
        panel.take_up(self.panel.patch.places.clone(), self.panel.patch.memory.clone());
        Some(panel)
    }
}

/// Lets a sheet go that was left held; whether it found rest.
fn let_go(panel: &mut Panel) -> bool {
    let tolerance = Tolerance { force_n: 2e-3, share: 1e-5, rounds: 60, drag: 0.0 };
    let places = panel.patch.places.clone();
    match balance(&panel.patch, &Drive::Nothing, Given::Force(0.0), &places, (0.0, 0.0), tolerance) {
        Ok(free) => {
            panel.stable = free.negative == 0;
            panel.patch.keep(free.places, free.memory);
            true
        }
        Err(_) => false,
    }
}

/// How far a map stands out at most, either way, mm.
pub(crate) fn largest(map: &Map) -> f64 {
    let (low, high) = extremes(map);
    high.max(-low)
}

/// Lowest and highest value read, mm.
pub fn extremes(map: &Map) -> (f64, f64) {
    let read = map.values.iter().filter(|v| v.is_finite()).map(|v| f64::from(*v));
    read.fold((0.0, 0.0), |(low, high), v| (v.min(low), v.max(high)))
}
