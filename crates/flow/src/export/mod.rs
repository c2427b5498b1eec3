//! A kept reading in the forms that other programs open: bytes in, bytes out.

mod csv;
mod md5;
mod mesh;
mod pack;
pub(crate) mod svg;
mod x3p;

use crate::holes::folds;
use crate::kept::KeptReading;
use crate::picture::map_png;
use dentwright_surface::Spot;

pub use pack::{CAPTURE_FOLDER, READING_FOLDER, pack};

/// A form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// Triangles with deviation and doubt at every corner, binary PLY.
    Ply,
    /// Triangles, binary STL.
    Stl,
    /// Heights on their grid, ISO 25178-72.
    X3p,
    /// One line a cell: x, y, height, deviation, doubt.
    Csv,
    /// The map as a picture, one pixel a cell.
    Png,
    /// The map as a drawing with scale, legend and spots.
    Svg,
}

impl Form {
    /// All of them.
    pub const ALL: [Self; 6] = [Self::Ply, Self::Stl, Self::X3p, Self::Csv, Self::Png, Self::Svg];

    /// Ending of its files, which is also its name.
    #[must_use]
    pub fn ending(self) -> &'static str {
        match self {
            Self::Ply => "ply",
            Self::Stl => "stl",
            Self::X3p => "x3p",
            Self::Csv => "csv",
            Self::Png => "png",
            Self::Svg => "svg",
        }
    }

    /// Media type.
    #[must_use]
    pub fn media(self) -> &'static str {
        match self {
            Self::Ply => "application/octet-stream",
            Self::Stl => "model/stl",
            Self::X3p => "application/zip",
            Self::Csv => "text/csv",
            Self::Png => "image/png",
            Self::Svg => "image/svg+xml",
        }
    }

    /// The form of this name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|form| form.ending() == name)
    }
}

/// Why a reading cannot be written in a form.
#[derive(Debug, thiserror::Error)]
pub enum ExportError {
    /// Nothing was read.
    #[error("this reading holds no surface")]
    Empty,
    /// The picture or archive could not be made.
    #[error("{0}")]
    Encode(String),
}

/// A reading in a form.
///
/// # Errors
/// A reading without a single cell, or a picture that cannot be encoded.
pub fn export(reading: &KeptReading, form: Form) -> Result<Vec<u8>, ExportError> {
    if !reading.height.values.iter().any(|v| v.is_finite()) {
        return Err(ExportError::Empty);
    }
    let spots = || -> Vec<Spot> { reading.file.spots.iter().map(|one| one.spot.clone()).collect() };
    Ok(match form {
        Form::Ply => mesh::ply(reading),
        Form::Stl => mesh::stl(&reading.height),
        Form::X3p => {
            x3p::x3p(&reading.height, &reading.file.version).map_err(|e| ExportError::Encode(e.to_string()))?
        }
        Form::Csv => csv::csv(reading),
        Form::Png => map_png(&reading.deviation, &spots(), &folds(&reading.deviation, &reading.sigma, &reading.unread))
            .map_err(|e| ExportError::Encode(e.to_string()))?,
        Form::Svg => svg::svg(&reading.deviation, &spots()).map_err(|e| ExportError::Encode(e.to_string()))?,
    })
}
