//! A reading that was kept, opened again: from its folder, from a zip of it, or file by file.

use crate::read::Reading;
use crate::reading_file::{GridFacts, ReadingFile};
use dentwright_surface::{Grid, Map, Measured, NpyError, TagPlace, read_npy};
use std::borrow::Cow;
use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};
use thiserror::Error;

/// A kept reading with its maps.
#[derive(Debug, Clone)]
pub struct KeptReading {
    /// `reading.json`.
    pub file: ReadingFile,
    /// Deviation from the intended shape, mm.
    pub deviation: Map,
    /// Its one-sigma doubt, mm.
    pub sigma: Map,
    /// Height in the panel frame, mm.
    pub height: Map,
    /// Why a cell was not read.
    pub unread: Vec<u8>,
}

/// Why a kept reading cannot be opened.
#[derive(Debug, Error)]
pub enum KeptError {
    /// A file is not there or cannot be read.
    #[error("{path} cannot be opened ({why})")]
    File {
        /// Which.
        path: PathBuf,
        /// What the system says.
        why: String,
    },
    /// `reading.json` is not the form of a reading.
    #[error("reading.json cannot be understood ({0})")]
    Json(#[from] serde_json::Error),
    /// A map does not fit.
    #[error("{name}: {why}")]
    Map {
        /// Its name.
        name: String,
        /// Why.
        why: NpyError,
    },
    /// A grid that no reading has.
    #[error("reading.json has a grid that cannot be")]
    Grid,
}

impl KeptError {
    /// What to do next.
    #[must_use]
    pub fn next(&self) -> &'static str {
        "Give the folder that a reading was written to, or a zip of it, with reading.json and its maps."
    }
}

/// Cells above which a grid is a mistake rather than a panel.
const MOST_CELLS: usize = 64_000_000;
/// Most that one file of a zip may hold, bytes: a map of [`MOST_CELLS`].
const MOST_BYTES: u64 = 4 * MOST_CELLS as u64 + 4096;

impl KeptReading {
    /// Opens a reading's folder, or a zip of it.
    ///
    /// # Errors
    /// The first file that is missing or does not fit.
    pub fn open(path: &Path) -> Result<Self, KeptError> {
        if path.is_dir() { Self::of(|name| read_file(&path.join(name))) } else { Self::of_zip(path) }
    }

    fn of_zip(path: &Path) -> Result<Self, KeptError> {
        let wrong = |why: String| KeptError::File { path: path.to_owned(), why };
        let file = File::open(path).map_err(|e| wrong(e.to_string()))?;
        let mut zip = zip::ZipArchive::new(file).map_err(|e| wrong(e.to_string()))?;
        let names: Vec<String> = zip.file_names().flatten().map(Cow::into_owned).collect();
        let home = names.iter().find_map(|n| n.strip_suffix("reading.json")).map(str::to_owned);
        let home = home.ok_or_else(|| wrong("there is no reading.json in it".into()))?;
        Self::of(|name| {
            let entry = zip.by_name(&format!("{home}{name}")).map_err(|e| wrong(format!("{name}: {e}")))?;
            let mut bytes = Vec::new();
            entry.take(MOST_BYTES).read_to_end(&mut bytes).map_err(|e| wrong(format!("{name}: {e}")))?;
            Ok(bytes)
        })
    }

    /// Puts a reading together from its files by name.
    ///
    /// # Errors
    /// The first file that is missing or does not fit.
    pub fn of(mut file: impl FnMut(&str) -> Result<Vec<u8>, KeptError>) -> Result<Self, KeptError> {
        let facts: ReadingFile = serde_json::from_slice(&file("reading.json")?)?;
        let grid = facts.grid.grid().ok_or(KeptError::Grid)?;
        let fits = |name: &str| {
            let name = name.to_owned();
            move |why| KeptError::Map { name, why }
        };
        let mut map = |name: &str| Map::from_npy(grid, &file(name)?).map_err(fits(name));
        let (deviation, sigma, height) =
            (map(&facts.maps.deviation)?, map(&facts.maps.sigma)?, map(&facts.maps.height)?);
        let codes = read_npy(&file(&facts.maps.unread)?).map_err(fits(&facts.maps.unread))?;
        if codes.values.len() != grid.len() {
            return Err(KeptError::Grid);
        }
        let unread = codes.values.iter().map(|v| *v as u8).collect();
        Ok(Self { file: facts, deviation, sigma, height, unread })
    }

    /// A reading that was just made, as if it had been kept.
    #[must_use]
    pub fn just_made(reading: Reading) -> Self {
        let file = reading.file(reading.scene.camera.size);
        let Reading { deviation, sigma, height, unread, .. } = reading;
        Self { file, deviation, sigma, height, unread }
    }

    /// Deviation and doubt.
    #[must_use]
    pub fn measured(&self) -> Measured<'_> {
        Measured { deviation: &self.deviation, sigma: &self.sigma }
    }

    /// Where its tags lie.
    #[must_use]
    pub fn tags(&self) -> Vec<TagPlace> {
        self.file.panel_tags.iter().map(|t| TagPlace { id: t.id, x_mm: t.x_mm, y_mm: t.y_mm }).collect()
    }
}

impl GridFacts {
    /// The grid, if a reading can have it.
    #[must_use]
    pub fn grid(&self) -> Option<Grid> {
        let &Self { x0_mm, y0_mm, step_mm, nx, ny } = self;
        let cells = nx.checked_mul(ny)?;
        let sane = nx > 1 && ny > 1 && cells <= MOST_CELLS && step_mm > 0.0 && (x0_mm + y0_mm + step_mm).is_finite();
        sane.then_some(Grid { x0_mm, y0_mm, step_mm, nx, ny })
    }
}

fn read_file(path: &Path) -> Result<Vec<u8>, KeptError> {
    std::fs::read(path).map_err(|e| KeptError::File { path: path.to_owned(), why: e.to_string() })
}
