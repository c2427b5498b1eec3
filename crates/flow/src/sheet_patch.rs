//! The piece of a reading that is planned for: the damage with what stands out beside it, as the planner's sheet.

use crate::kept::KeptReading;
use crate::panel_curve::panel_curve;
use dentwright_plan::{Known, Placing};
use dentwright_sheet::MetalRow;
use dentwright_surface::{Grid, Map, average};
use serde::{Deserialize, Serialize};

/// Step of the map that is planned on, mm.
const STEP_MM: f64 = 3.0;
/// The planner's cells are about so large, mm.
const CELL_MM: f64 = 10.0;
/// Sound metal beside the damage, and half the patch at least and at most, mm.
const BESIDE_MM: f64 = 25.0;
const HALF_MM: [f64; 2] = [45.0, 75.0];
/// Spots nearer than this share one patch, mm.
const TOGETHER_MM: f64 = 45.0;

/// A piece of a reading.
pub struct SheetPatch {
    /// How its frame lies in the reading's.
    pub lies: Placing,
    /// Deviation in its own frame, mm.
    pub deviation: Map,
    /// What is taken to be known of the sheet.
    pub known: Known,
    /// How far the intended shape is off the quadratic taken for it, root mean square, mm.
    pub off_mm: f64,
}

/// The sheet a plan goes by.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct PatchFacts {
    /// Name of the metal.
    pub metal: String,
    /// What it is.
    pub says: String,
    /// Where its numbers come from.
    pub source: String,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Middle of the patch on the panel, mm.
    pub at_mm: [f64; 2],
    /// Half its side, mm.
    pub half_mm: f64,
    /// Panel curvature, 1/mm: along x, across, along y.
    pub curvature: [f64; 3],
    /// How far the intended shape is off that, root mean square, mm.
    pub intended_off_mm: f64,
}

/// The patch about a spot of the reading, from 0 in its list.
#[must_use]
pub fn sheet_patch(reading: &KeptReading, spot: usize, metal: &MetalRow, thickness_mm: f64) -> SheetPatch {
    let spots = &reading.file.spots;
    let chosen = &spots[spot].spot;
    let reach = |s: &dentwright_surface::Spot| 0.5 * s.length_mm;
    let near =
        spots.iter().map(|s| &s.spot).filter(|s| (s.x_mm - chosen.x_mm).hypot(s.y_mm - chosen.y_mm) < TOGETHER_MM);
    let far = f64::INFINITY;
    let [x0, x1, y0, y1] = near.fold([far, -far, far, -far], |[x0, x1, y0, y1], s| {
        let r = reach(s);
        [x0.min(s.x_mm - r), x1.max(s.x_mm + r), y0.min(s.y_mm - r), y1.max(s.y_mm + r)]
    });
    let at_mm = [0.5 * (x0 + x1), 0.5 * (y0 + y1)];
    let half_mm = (0.5 * (x1 - x0).max(y1 - y0) + BESIDE_MM).clamp(HALF_MM[0], HALF_MM[1]);
    let (curvature, off_mm) = panel_curve(&reading.height, &reading.deviation, at_mm, half_mm);
    let cells = (2.0 * half_mm / CELL_MM).round() as usize;
    let known = Known::likely(metal, thickness_mm, curvature, half_mm, cells);
    let lies = Placing::at(at_mm);
    SheetPatch { lies, deviation: piece(&reading.deviation, &lies, patch_grid(half_mm)), known, off_mm }
}

impl SheetPatch {
    /// What the plan says of it.
    #[must_use]
    pub fn facts(&self, row: &MetalRow, thickness_mm: f64) -> PatchFacts {
        PatchFacts {
            metal: row.name.clone(),
            says: row.says.clone(),
            source: row.source.clone(),
            thickness_mm,
            at_mm: self.lies.shift_mm,
            half_mm: self.known.half_mm,
            curvature: self.known.curvature,
            intended_off_mm: self.off_mm,
        }
    }
}

/// Cells of a patch on the planner's step.
fn patch_grid(half: f64) -> Grid {
    let n = 2 * (half / STEP_MM).floor() as usize - 1;
    let low = -STEP_MM * (n / 2) as f64;
    Grid { x0_mm: low, y0_mm: low, step_mm: STEP_MM, nx: n, ny: n }
}

/// A deviation in a patch's frame, on its grid; what the reading does not hold stays unread.
pub fn piece(deviation: &Map, lies: &Placing, grid: Grid) -> Map {
    let smooth = average(deviation, STEP_MM);
    Map::from_fn(grid, |x, y| {
        let [x, y] = lies.carry([x, y]);
        smooth.sample(x, y).unwrap_or(f64::NAN)
    })
}
