//! What a plan leaves for the next reading's: the planner's sheet, where it lies, and the map it was planned on.

use crate::sheet_patch::SheetPatch;
use dentwright_plan::{Model, Placing};
use dentwright_surface::{Grid, Map};
use serde::{Deserialize, Serialize};

/// The planner's sheet of a damage, taken along from reading to reading.
pub struct PlannedSheet {
    /// How its frame lies in the reading's.
    pub lies: Placing,
    /// How far the intended shape is off the quadratic taken for it, root mean square, mm.
    pub off_mm: f64,
    /// Deviation in its own frame, mm.
    pub map: Map,
    /// The sheet as it stands at the reading.
    pub model: Model,
}

/// Bytes that hold no sheet of this version.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("these bytes hold no planned sheet of this version")]
pub struct NotASheet;

#[derive(Serialize, Deserialize)]
struct Header {
    lies: Placing,
    off_mm: f64,
    grid: [f64; 3],
    cells: [usize; 2],
}

impl PlannedSheet {
    /// As bytes: a head of JSON, its length before it, the map, the sheet.
    ///
    /// # Panics
    /// Never: plain numbers.
    #[must_use]
    pub fn pack(&self) -> Vec<u8> {
        let g = self.map.grid;
        let header =
            Header { lies: self.lies, off_mm: self.off_mm, grid: [g.x0_mm, g.y0_mm, g.step_mm], cells: [g.nx, g.ny] };
        let header = serde_json::to_vec(&header).expect("plain numbers");
        let mut bytes = (header.len() as u32).to_le_bytes().to_vec();
        bytes.extend(header);
        bytes.extend(self.map.values.iter().flat_map(|v| v.to_le_bytes()));
        bytes.extend(self.model.pack());
        bytes
    }

    /// Out of bytes.
    ///
    /// # Errors
    /// Where another version wrote them.
    pub fn unpack(bytes: &[u8]) -> Result<Self, NotASheet> {
        let length = bytes.get(..4).and_then(|b| b.try_into().ok()).map(u32::from_le_bytes).ok_or(NotASheet)?;
        let (header, rest) = bytes[4..].split_at_checked(length as usize).ok_or(NotASheet)?;
        let Header { lies, off_mm, grid: [x0_mm, y0_mm, step_mm], cells: [nx, ny] } =
            serde_json::from_slice(header).map_err(|_| NotASheet)?;
        let (map, sheet) = rest.split_at_checked(4 * nx.saturating_mul(ny)).ok_or(NotASheet)?;
        let values = map.chunks_exact(4).map(|c| f32::from_le_bytes([c[0], c[1], c[2], c[3]])).collect();
        let map = Map { grid: Grid { x0_mm, y0_mm, step_mm, nx, ny }, values };
        let model = Model::unpack(sheet).map_err(|_| NotASheet)?;
        Ok(Self { lies, off_mm, map, model })
    }

    /// The patch it goes by, and its sheet.
    pub(crate) fn into_patch(self) -> (SheetPatch, Model) {
        let Self { lies, off_mm, map, model } = self;
        (SheetPatch { lies, deviation: map, known: model.known.clone(), off_mm }, model)
    }

    /// Whether a place of the reading is well inside, with sound metal beside it.
    pub(crate) fn holds(&self, lies: Placing, place: [f64; 2]) -> bool {
        let [x, y] = lies.back(place);
        x.abs().max(y.abs()) < self.model.known.half_mm - EDGE_MM
    }
}

/// Damage nearer to the edge of the sheet than this asks for a sheet of its own, mm.
const EDGE_MM: f64 = 15.0;
