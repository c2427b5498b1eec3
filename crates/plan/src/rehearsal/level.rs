//! Levels of the rehearsal: which panel, which damage, and the panel made from them.

use crate::dice::Dice;
use dentwright_sheet::{
    Axis, Edges, Goal, Hold, Kind, Mesh, MetalRow, Move, Outline, Panel, Patch, Springs, Tip, metals, perform,
};
use serde::{Deserialize, Serialize};

/// The levels that come with the program; invented panels.
pub const LEVELS_TOML: &str = include_str!("../../levels.toml");

/// Half the patch, mm, and its cells each way.
pub(super) const HALF_MM: f64 = 48.0;
const CELLS: usize = 11;
/// Cells that lie across the soft part of a body line.
const LINE_CELLS: usize = 5;
/// Layers across the thickness.
const LAYERS: usize = 5;
/// A level.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Level {
    /// Name.
    pub name: String,
    /// Metal on file.
    pub metal: String,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Radii of the panel along x and y, mm.
    pub radius_mm: [f64; 2],
    /// Temperature it is found at, °C.
    pub temperature_c: f64,
    /// Largest deviation that counts as done, µm.
    pub finish_um: f64,
    /// Body line.
    #[serde(default)]
    pub line: Option<Line>,
    /// What hit it, in order.
    pub hits: Vec<Hit>,
}

/// A body line along y.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Line {
    /// Where, x in mm.
    pub at_mm: f64,
    /// Angle between its sides, degrees.
    pub angle_deg: f64,
    /// Width over which it is rounded, mm.
    pub soft_mm: f64,
}

/// A hit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hit {
    /// Where, mm.
    pub at_mm: [f64; 2],
    /// How far a seed may move that, mm.
    pub spread_mm: f64,
    /// What hit.
    pub tip: Tip,
    /// How deep it went while it touched, mm.
    pub depth_mm: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Levels {
    level: Vec<Level>,
}

/// All levels in order.
///
/// # Panics
/// Never: the file that comes along is checked by a test.
pub fn levels() -> Vec<Level> {
    toml::from_str::<Levels>(LEVELS_TOML).expect("levels.toml is well formed").level
}

impl Level {
    /// Intended height, mm.
    pub fn intended(&self, x: f64, y: f64) -> f64 {
        let [rx, ry] = self.radius_mm;
        let line = self.line.map_or(0.0, |line| {
            let soft = 0.5 * line.soft_mm;
            // a roof with a round ridge
            -(0.5 * line.angle_deg.to_radians()).tan() * ((x - line.at_mm).hypot(soft) - soft)
        });
        line - 0.5 * (x * x / rx + y * y / ry)
    }

    /// The panel as it was before it was hit; none where the level names no metal on file.
    fn sound(&self) -> Option<Panel> {
        let row: MetalRow = metals().into_iter().find(|row| row.name == self.metal)?;
        let metal = row.likely();
        let hold = Hold::Spring(Springs::rest_of_curved_panel(2.0 * HALF_MM, self.thickness_mm, &metal));
        let y = Axis::new(even(-HALF_MM, HALF_MM, CELLS));
        let z = |x: f64, y: f64| self.intended(x, y);
        let mesh = Mesh::new(Axis::new(self.across()), y, Outline::Rectangle, &z, 2)?;
        Some(Panel::new(Patch::new(mesh, metal, self.thickness_mm, LAYERS, &Edges::all(hold))))
    }

    /// Ends of the cells along x: finer where the body line is.
    fn across(&self) -> Vec<f64> {
        let Some(line) = self.line else { return even(-HALF_MM, HALF_MM, CELLS) };
        let (low, high) = (line.at_mm - line.soft_mm, line.at_mm + line.soft_mm);
        let cell = 2.0 * HALF_MM / CELLS as f64;
        let cells = |span: f64| (span / cell).ceil().max(1.0) as usize;
        let mut ends = even(-HALF_MM, low, cells(low + HALF_MM));
        ends.extend(&even(low, high, LINE_CELLS)[1..]);
        ends.extend(&even(high, HALF_MM, cells(HALF_MM - high))[1..]);
        ends
    }

    /// The panel, hit; the seed moves the hits a little, so that no place is learnt by heart. None where a hit finds no
    /// rest.
    pub(super) fn damaged(&self, seed: u64) -> Option<Panel> {
        let mut dice = Dice::new(seed);
        let mut panel = self.sound()?;
        for hit in &self.hits {
            let at = hit.at_mm.map(|c| c + dice.between(-hit.spread_mm, hit.spread_mm));
            let goal = Goal::To(-hit.depth_mm);
            let wanted = Move { kind: Kind::Press, at, tip: hit.tip, bonded: false, goal, steps: 6 };
            if !perform(&mut panel, &wanted).converged {
                return None;
            }
        }
        Some(panel)
    }
}

fn even(from: f64, to: f64, cells: usize) -> Vec<f64> {
    (0..=cells).map(|k| from + (to - from) * k as f64 / cells as f64).collect()
}
