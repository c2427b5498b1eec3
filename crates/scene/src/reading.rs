//! A reading as far as a score needs it: its tags and its maps.

use dentwright_surface::{NpyError, read_npy};
use nalgebra::Vector3;
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};
use thiserror::Error;

/// Maps of a reading in its own panel frame, mm; NaN where not read, rows go up.
#[derive(Debug, Clone)]
pub struct ReadMaps {
    /// Columns.
    pub nx: usize,
    /// Rows.
    pub ny: usize,
    /// Place of the first column and row.
    pub origin: [f64; 2],
    /// Distance between cells.
    pub step: f64,
    /// Against the intended shape, positive is high.
    pub deviation: Vec<f32>,
    /// Height in the panel frame.
    pub height: Vec<f32>,
    /// Standard deviation said for `deviation`.
    pub sigma: Vec<f32>,
    /// Tag centres by number.
    pub tags: Vec<(usize, Vector3<f64>)>,
    /// Lows and highs found.
    pub spots: Vec<ReadSpot>,
}

/// A low or high of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct ReadSpot {
    /// Place, mm.
    pub x_mm: f64,
    /// Place, mm.
    pub y_mm: f64,
    /// Signed height, negative for a low.
    pub height_mm: f64,
}

/// Why a reading's files cannot be used.
#[derive(Debug, Error)]
pub enum ReadingError {
    /// A file cannot be opened.
    #[error("{0}: {1}")]
    File(PathBuf, std::io::Error),
    /// `reading.json` lacks what is needed.
    #[error("{0}: {1}")]
    Json(PathBuf, serde_json::Error),
    /// A map is no array of the grid's size.
    #[error("{0}: not a map of the grid's size")]
    Size(PathBuf),
    /// A map cannot be read.
    #[error("{0}: {1}")]
    Array(PathBuf, NpyError),
}

#[derive(Deserialize)]
struct ReadingJson {
    panel_tags: Vec<TagJson>,
    grid: GridJson,
    #[serde(default)]
    spots: Vec<ReadSpot>,
}

#[derive(Deserialize)]
struct TagJson {
    id: usize,
    x_mm: f64,
    y_mm: f64,
    z_mm: f64,
}

#[derive(Deserialize)]
struct GridJson {
    x0_mm: f64,
    y0_mm: f64,
    step_mm: f64,
    nx: usize,
    ny: usize,
}

impl ReadMaps {
    /// Reads `reading.json`, `deviation.npy`, `height.npy` and `sigma.npy` of a folder.
    ///
    /// # Errors
    /// Missing or broken files.
    pub fn read(folder: &Path) -> Result<Self, ReadingError> {
        let path = folder.join("reading.json");
        let text = std::fs::read_to_string(&path).map_err(|e| ReadingError::File(path.clone(), e))?;
        let json: ReadingJson = serde_json::from_str(&text).map_err(|e| ReadingError::Json(path, e))?;
        let cells = json.grid.nx * json.grid.ny;
        let map = |name: &str| -> Result<Vec<f32>, ReadingError> {
            let path = folder.join(name);
            let bytes = std::fs::read(&path).map_err(|e| ReadingError::File(path.clone(), e))?;
            let array = read_npy(&bytes).map_err(|e| ReadingError::Array(path.clone(), e))?;
            if array.values.len() != cells {
                return Err(ReadingError::Size(path));
            }
            Ok(array.values.into_iter().map(|v| v as f32).collect())
        };
        Ok(Self {
            nx: json.grid.nx,
            ny: json.grid.ny,
            origin: [json.grid.x0_mm, json.grid.y0_mm],
            step: json.grid.step_mm,
            deviation: map("deviation.npy")?,
            height: map("height.npy")?,
            sigma: map("sigma.npy")?,
            tags: json.panel_tags.iter().map(|t| (t.id, Vector3::new(t.x_mm, t.y_mm, t.z_mm))).collect(),
            spots: json.spots,
        })
    }

    /// Place of a cell.
    #[must_use]
    pub fn place(&self, i: usize, j: usize) -> [f64; 2] {
        [self.origin[0] + i as f64 * self.step, self.origin[1] + j as f64 * self.step]
    }

    /// The cell nearest a place.
    #[must_use]
    pub fn cell(&self, x: f64, y: f64) -> Option<usize> {
        let i = ((x - self.origin[0]) / self.step).round();
        let j = ((y - self.origin[1]) / self.step).round();
        let inside = i >= 0.0 && j >= 0.0 && i < self.nx as f64 && j < self.ny as f64;
        inside.then(|| j as usize * self.nx + i as usize)
    }
}
