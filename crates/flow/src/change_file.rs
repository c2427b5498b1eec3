//! `change.json` and its maps: what two readings or a whole repair say.

use crate::compare::{Compared, SeriesStep};
use crate::picture::{range_of, small_png};
use crate::reading_file::GridFacts;
use crate::write::{WriteError, put};
use dentwright_surface::{Laying, Residual, Volume, Worked};
use serde::{Deserialize, Serialize};
use std::path::Path;

/// What changed between two readings. Places in the later reading's frame.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct ChangeFile {
    /// How the earlier reading lies on the later one.
    pub laying: Laying,
    /// Grid of the maps, the later reading's.
    pub grid: GridFacts,
    /// File names of the maps.
    pub maps: ChangeMaps,
    /// Areas that changed, the most changed first.
    pub worked: Vec<Worked>,
    /// Volume that came up.
    pub raised: Volume,
    /// Volume that went down.
    pub lowered: Volume,
    /// What was left before, on what both readings show.
    pub before: Residual,
    /// What is left now, on what both readings show.
    pub after: Residual,
    /// Share of the later reading's cells that the earlier one read too.
    pub common_fraction: f64,
    /// Version of the program.
    pub version: String,
}

/// Names of the maps of a change.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct ChangeMaps {
    /// Later less earlier deviation, mm.
    pub change: String,
    /// Its one-sigma doubt, mm.
    pub sigma: String,
    /// The earlier deviation laid on the later grid, mm.
    pub before: String,
}

/// A reading of a series.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct SeriesEntry {
    /// How it lies on the last reading; none where neither tags nor texture tell.
    pub laying: Option<Laying>,
    /// What was left of the damage.
    pub residual: Residual,
}

impl From<&SeriesStep> for SeriesEntry {
    fn from(step: &SeriesStep) -> Self {
        Self { laying: step.laying, residual: step.residual }
    }
}

impl Compared {
    /// The change as its JSON file.
    #[must_use]
    pub fn file(&self) -> ChangeFile {
        let grid = self.change.map.grid;
        ChangeFile {
            laying: self.laying,
            grid: GridFacts { x0_mm: grid.x0_mm, y0_mm: grid.y0_mm, step_mm: grid.step_mm, nx: grid.nx, ny: grid.ny },
            maps: ChangeMaps {
                change: "change.npy".into(),
                sigma: "change_sigma.npy".into(),
                before: "before.npy".into(),
            },
            worked: self.change.worked.clone(),
            raised: self.change.raised,
            lowered: self.change.lowered,
            before: self.before,
            after: self.after,
            common_fraction: self.change.common_fraction,
            version: env!("CARGO_PKG_VERSION").into(),
        }
    }
}

/// The file of a change, of a whole series where there are more than two readings.
#[derive(Debug, Serialize)]
struct Whole<'a> {
    #[serde(flatten)]
    change: ChangeFile,
    series: &'a [SeriesEntry],
}

/// Writes a change and its series into `dir`, all or nothing: `change.json`, `change.npy`, `change_sigma.npy`,
/// `before.npy`, `change.png`.
///
/// # Errors
/// A file that cannot be written.
pub fn write_change(compared: &Compared, series: &[SeriesEntry], dir: &Path) -> Result<(), WriteError> {
    let whole = Whole { change: compared.file(), series };
    let json = serde_json::to_vec_pretty(&whole).map_err(|e| WriteError::Encode(e.to_string()))?;
    let change = &compared.change;
    let png = small_png(&change.map, range_of(&change.map)).map_err(|e| WriteError::Encode(e.to_string()))?;
    let files = [
        ("change.npy", change.map.to_npy()),
        ("change_sigma.npy", change.sigma.to_npy()),
        ("before.npy", change.before.to_npy()),
        ("change.png", png),
        ("change.json", json),
    ];
    put(&files, dir)
}
