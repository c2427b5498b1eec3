//! Tags to stick on the panel.

use super::page::{Page, SIDE_MM, TOP_MM};
use super::{PrintError, ruler, tag, within};
use crate::Paper;
use crate::words::Words;
use std::ops::Range;

/// Ids of tags for panels; those above belong to boards and to the camera sheet.
pub const PANEL_IDS: Range<usize> = 0..20;
/// Usual side of a sticker's black square, mm.
pub const STICKER_MM: f64 = 22.0;
/// Smaller tags span too few pixels of a phone's photo from reading distance; common practice.
const LEAST_MM: f64 = 8.0;
const MOST_MM: f64 = 100.0;
/// Between two stickers, with the number under each.
const GAP_MM: f64 = 5.0;
const LABEL_MM: f64 = 4.0;

/// As many pages as twenty stickers take.
pub(crate) fn pages(size_mm: f64, paper: Paper, words: &Words) -> Result<Vec<Page>, PrintError> {
    let size_mm = within("the tag size in millimetres", size_mm, LEAST_MM, MOST_MM)?;
    let (wide, high) = Page::new(paper, false).room();
    let side = size_mm * tag::WITH_WHITE;
    let fit = |room: f64, each: f64| ((room + GAP_MM) / (each + GAP_MM)) as usize;
    let (columns, rows) = (fit(wide, side), fit(high, side + LABEL_MM));
    let ids: Vec<usize> = PANEL_IDS.collect();
    let size = size_text(size_mm);
    let title = words.fill("print-stickers", &[("size", &size)])?;
    let page = |ids: &[usize]| {
        let mut page = Page::new(paper, false);
        ruler::furnish(&mut page, &title, words)?;
        for (k, id) in ids.iter().enumerate() {
            let x = SIDE_MM + (k % columns) as f64 * (side + GAP_MM);
            let y = TOP_MM + (k / columns) as f64 * (side + LABEL_MM + GAP_MM);
            let rim = (side - size_mm) / 2.0;
            page.cut(x, y, side, side);
            tag::draw(&mut page, *id, x + rim, y + rim, size_mm);
            page.text(x, y + side + 0.6, 7.0, format!("{id} · {size} mm"));
        }
        Ok(page)
    };
    ids.chunks((columns * rows).max(1)).map(page).collect()
}

/// A size as it is written: no zeros that say nothing.
pub(crate) fn size_text(size_mm: f64) -> String {
    let text = format!("{size_mm:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
