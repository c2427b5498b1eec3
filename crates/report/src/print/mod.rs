//! Sheets to print at true scale: tag stickers, the board's corner tags, a line board, the camera sheet.
//!
//! Everything is laid out here in millimetres from the page's top left corner; the template only sets it.
//! Every page carries two rulers, since a printer that fits the page to its margins changes both ways
//! of the sheet, and not always alike.

mod camera;
mod corners;
mod lines;
mod page;
mod ruler;
mod stickers;
mod tag;

pub use corners::BOARD_IDS;
pub use lines::LineBoard;
pub use stickers::{PANEL_IDS, STICKER_MM};

use crate::render::{EvictAfter, pdf};
use crate::words::Words;
use crate::world::ReportWorld;
use crate::{Language, Paper, Report, ReportError};
use page::Page;
use serde_json::json;
use typst::foundations::Bytes;

/// What is printed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Sheet {
    /// Tags to stick on the panel, to cut out.
    Stickers {
        /// Side of the black square, mm.
        size_mm: f64,
    },
    /// Tags for the corners of a board.
    Corners {
        /// Side of the black square, mm.
        size_mm: f64,
    },
    /// Black and white lines to print and glue.
    Lines(LineBoard),
    /// The sheet that a phone's camera is calibrated with.
    Camera,
}

/// Why a sheet cannot be printed.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PrintError {
    /// A size that does not fit the paper, or that no camera could make out.
    #[error("{what} is {value}, but must be from {least} to {most} on this paper")]
    Size {
        /// Which size.
        what: &'static str,
        /// As asked for.
        value: f64,
        /// Smallest.
        least: f64,
        /// Largest.
        most: f64,
    },
    /// The sheet cannot be set.
    #[error(transparent)]
    Report(#[from] ReportError),
}

impl PrintError {
    /// What to do.
    #[must_use]
    pub fn next(&self) -> &'static str {
        match self {
            Self::Size { .. } => "Choose a size within these bounds, or larger paper.",
            Self::Report(_) => "Report this as a fault of the program.",
        }
    }
}

/// Makes a sheet. The same values give the same bytes.
///
/// # Errors
/// A size that does not fit.
pub fn print_sheet(sheet: Sheet, language: Language, paper: Paper) -> Result<Report, PrintError> {
    let words = Words::new(language)?;
    let pages = match sheet {
        Sheet::Stickers { size_mm } => stickers::pages(size_mm, paper, &words)?,
        Sheet::Corners { size_mm } => corners::pages(size_mm, paper, &words)?,
        Sheet::Lines(board) => lines::pages(&board, paper, &words)?,
        Sheet::Camera => vec![camera::page(paper, &words)?],
    };
    Ok(set(&pages, language, &words)?)
}

fn set(pages: &[Page], language: Language, words: &Words) -> Result<Report, ReportError> {
    let _evict = EvictAfter;
    let data = json!({
        "title": words.say("print-title")?,
        "lang": language.code(),
        "pages": pages,
    });
    let world = ReportWorld::new("sheet.typ", [("data.json".to_owned(), Bytes::from_string(data.to_string()))]);
    pdf(&world)
}

/// A size within bounds.
fn within(what: &'static str, value: f64, least: f64, most: f64) -> Result<f64, PrintError> {
    let fits = (least..=most).contains(&value);
    if fits { Ok(value) } else { Err(PrintError::Size { what, value, least, most }) }
}
