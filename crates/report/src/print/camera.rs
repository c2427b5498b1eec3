//! The sheet that a phone's camera is calibrated with: a grid of tags, the same on every paper.

use super::page::{Page, TOP_MM};
use super::{PrintError, ruler, tag};
use crate::Paper;
use crate::words::Words;
use dentwright_scene::sheet::CameraSheet;

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
