//! A panel to rehearse on: a sheet with parameters nobody is told, hit, then worked by a hand with its own gain and aim, and
//! read with the noise of a reading.
//!
//! The sheet is a full solve on cells of its own. A reading is the true map with the error that readings of rendered photos
//! were measured to have (`docs/trial.md`), some cells lost, and nothing where the metal is too steep to be read. No photos
//! are rendered here.

use crate::act::Act;
use crate::damage::{DAMAGES, Damage};
use crate::dice::Dice;
use crate::level::brought_level;
use crate::model::{Known, Model};
use crate::paint::paint_strain;
use dentwright_sheet::{Hold, MetalRow, Pace, Panel, Springs, metals, perform_at};
use dentwright_surface::{Grid, Map, average};
use serde::{Deserialize, Serialize};

/// Half the patch, mm, and the plant's cells each way.
const HALF_MM: f64 = 45.0;
const CELLS: usize = 14;
/// The planner's cells: others than the plant's.
const PLANNER_CELLS: usize = 12;
/// Edge springs out of the plane over those of a flat sheet that goes on, for one times along it.
const OUT: f64 = 200.0;
/// Step of the maps, mm.
const STEP_MM: f64 = 3.0;
/// Noise of a reading: one sigma of white and of slowly changing error, mm (95th percentile 1 to 2 µm).
const NOISE_MM: [f64; 2] = [0.000_5, 0.000_6];
/// Share of cells a reading loses.
const LOST: f64 = 0.01;
/// Film on the panel, mm.
const FILM_MM: f64 = 0.13;

/// Slope of the deviation over which a mirror image folds and a reading has no number.
const FOLDS: f64 = 0.2;

/// A panel to rehearse on.
pub struct Plant {
    /// Kind of damage.
    pub damage: Damage,
    /// What really is.
    truth: Known,
    /// What the planner is told: the metal's likely values and a nominal thickness.
    pub told: Known,
    /// Gain of the hand, and its scatter a move.
    gain: f64,
    scatter: f64,
    /// One sigma of the aim, mm.
    aim_mm: f64,
    panel: Panel,
    dice: Dice,
    /// Spent before the work.
    spent_before: f64,
    /// What has happened.
    pub log: Log,
}

/// What has happened to a plant.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
pub struct Log {
    /// Moves made.
    pub moves: usize,
    /// Of these, from the front.
    pub taps: usize,
    /// Readings taken.
    pub readings: usize,
    /// Greatest strain on the paint left after any move.
    pub paint_strain: f64,
    /// Moves on which the sheet snapped.
    pub snaps: usize,
    /// Moves that did not come to rest; the sheet stays as it was.
    pub lost: usize,
    /// Moves of which was foretold what they leave, and read what they left.
    pub foretold: usize,
    /// Of these, left within two sigma of it, the reading's doubt counted in.
    pub within: usize,
}

impl Plant {
    /// Draws panel, hand and damage; none where the hit finds no rest.
    pub fn draw(seed: u64) -> Option<Self> {
        let mut dice = Dice::new(seed.wrapping_mul(0x2545_F491_4F6C_DD1D));
        let damage = DAMAGES[seed as usize % DAMAGES.len()];
        let rows: Vec<MetalRow> = metals().into_iter().filter(|m| m.name.ends_with("_panel")).collect();
        let row = &rows[dice.one_of(rows.len())];
        let mut metal = row.likely();
        metal.kinematic_share = dice.between(0.1, 0.8);
        metal.e_mpa = dice.between(row.e_mpa.low, row.e_mpa.high);
        let stronger = dice.between(row.yield_mpa.low, row.yield_mpa.high) / row.yield_mpa.likely;
        metal.hardening = metal.hardening.scaled(stronger);
        let likely = row.thickness_mm.likely;
        let thickness_mm = likely * dice.between(0.93, 1.07);
        let curve = |dice: &mut Dice| -1.0 / dice.between(2500.0, 12000.0);
        let curvature = [curve(&mut dice), 0.0, curve(&mut dice)];
        let springs = Springs::rest_of_panel(2.0 * HALF_MM, thickness_mm, &metal);
        let soft = dice.between(1.0, 6.0);
        let hold = Hold::Spring(springs.stiffer([soft, OUT * soft]));
        let truth = Known { metal, thickness_mm, curvature, half_mm: HALF_MM, hold, cells: CELLS };
        let told = Known::likely(row, likely, curvature, HALF_MM, PLANNER_CELLS);
        let panel = truth.panel()?;
        let (gain, scatter) = (dice.between(0.6, 1.6), dice.between(0.03, 0.08));
        let aim_mm = dice.between(0.5, 2.0);
        let log = Log::default();
        let mut plant = Self { damage, truth, told, gain, scatter, aim_mm, panel, dice, spent_before: 0.0, log };
        damage.strike(&mut plant.panel, &mut plant.dice)?;
        plant.spent_before = plant.panel.max_plastic_strain();
        Some(plant)
    }

    /// The grid of the maps.
    fn grid() -> Grid {
        let n = (2.0 * (HALF_MM - STEP_MM) / STEP_MM) as usize + 1;
        Grid { x0_mm: -HALF_MM + STEP_MM, y0_mm: -HALF_MM + STEP_MM, step_mm: STEP_MM, nx: n, ny: n }
    }

    /// The true map of deviation.
    pub fn true_map(&self) -> Map {
        Map::from_fn(Self::grid(), |x, y| self.panel.deviation(x, y))
    }

    /// A reading.
    pub fn read(&mut self) -> Map {
        self.log.readings += 1;
        let mut map = self.true_map();
        let slow = [0; 6].map(|_| self.dice.normal() * NOISE_MM[1] / 2.0);
        for i in 0..map.grid.len() {
            let (x, y) = map.grid.position(i);
            let (u, v) = (x / HALF_MM, y / HALF_MM);
            let wave = slow[0] + slow[1] * u + slow[2] * v + slow[3] * (2.0 * u).sin() + slow[4] * (2.0 * v).sin();
            let noise = self.dice.normal() * NOISE_MM[0] + wave + slow[5] * u * v;
            map.values[i] += noise as f32;
            if self.steep(x, y) || self.dice.between(0.0, 1.0) < LOST {
                map.values[i] = f32::NAN;
            }
        }
        map
    }

    /// Whether the metal is too steep here to be read.
    fn steep(&self, x: f64, y: f64) -> bool {
        let d = |dx: f64, dy: f64| self.panel.deviation(x + dx, y + dy);
        (d(1.0, 0.0) - d(-1.0, 0.0)).hypot(d(0.0, 1.0) - d(0.0, -1.0)) > 2.0 * FOLDS
    }

    /// The hand makes a move it was asked for.
    pub fn make(&mut self, act: Act, at: [f64; 2], tip_mm: f64, held_mm: f64) {
        let at = at.map(|c| (c + self.aim_mm * self.dice.normal()).clamp(5.0 - HALF_MM, HALF_MM - 5.0));
        let held = held_mm * self.gain * (1.0 + self.scatter * self.dice.normal()).max(0.3);
        let (places, memory) = (self.panel.patch.places.clone(), self.panel.patch.memory.clone());
        let outcome = perform_at(&mut self.panel, &act.on_sheet(at, tip_mm, held), Pace::COARSE);
        self.log.moves += 1;
        self.log.taps += usize::from(act.way() < 0.0);
        if !outcome.converged {
            self.panel.take_up(places, memory);
            self.log.lost += 1;
        }
        self.log.snaps += usize::from(!outcome.snapped_at_mm.is_empty());
        self.log.paint_strain = self.log.paint_strain.max(paint_strain(&self.panel, FILM_MM));
    }

    /// Plastic strain added since the hit, most worked layer.
    pub fn spent(&self) -> f64 {
        self.panel.max_plastic_strain() - self.spent_before
    }

    /// Largest true residual, averaged as a reading is, mm.
    pub fn residual_mm(&self, average_mm: f64) -> f64 {
        let map = average(&self.true_map(), average_mm);
        map.values.iter().fold(0.0f64, |m, v| m.max(f64::from(v.abs())))
    }

    /// Whether the sheet, brought level as it truly is, does not stay so or pops under a finger.
    pub fn beyond_repair(&self) -> bool {
        let Some(mut panel) = self.truth.panel() else { return false };
        panel.take_up(self.panel.patch.places.clone(), self.panel.patch.memory.clone());
        let model = Model { known: self.truth.clone(), panel, misfit_mm: 0.0 };
        brought_level(&model).is_some_and(|level| level.pops())
    }
}
