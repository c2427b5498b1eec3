//! The sheet that a phone's camera is calibrated with: a grid of tags, the same on every paper.

use super::page::{Page, TOP_MM};
use super::{PrintError, ruler, tag};
use crate::Paper;
use crate::words::Words;

/// Where the tags of the camera sheet lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CameraSheet {
    /// Id of the upper left tag; the others follow row by row.
    pub first: usize,
    /// Tags in a row.
    pub columns: usize,
    /// Rows.
    pub rows: usize,
    /// Side of a black square, mm.
    pub tag_mm: f64,
    /// From one tag to the next, both ways, mm.
    pub pitch_mm: f64,
}

impl CameraSheet {
    /// The one there is.
    pub const OURS: Self = Self { first: 24, columns: 8, rows: 5, tag_mm: 24.0, pitch_mm: 33.0 };
}

pub(crate) fn page(paper: Paper, words: &Words) -> Result<Page, PrintError> {
    let mut page = Page::new(paper, true);
    ruler::furnish(&mut page, &words.say("print-camera")?, words)?;
    let sheet = CameraSheet::OURS;
    let wide = (sheet.columns - 1) as f64 * sheet.pitch_mm + sheet.tag_mm;
    let left = (page.width - wide) / 2.0 + 2.0;
    for k in 0..sheet.columns * sheet.rows {
        let x = left + (k % sheet.columns) as f64 * sheet.pitch_mm;
        let y = TOP_MM + 4.0 + (k / sheet.columns) as f64 * sheet.pitch_mm;
        tag::draw(&mut page, sheet.first + k, x, y, sheet.tag_mm);
    }
    Ok(page)
}
