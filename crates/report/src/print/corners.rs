//! Tags for the corners of a board.

use super::page::{Page, SIDE_MM, TOP_MM};
use super::stickers::size_text;
use super::{PrintError, ruler, tag, within};
use crate::Paper;
use crate::words::Words;

/// Ids of a board's tags: top left, top right, bottom right, bottom left as seen by someone facing it.
pub const BOARD_IDS: [usize; 4] = [20, 21, 22, 23];
const CORNERS: [&str; 4] = ["print-top-left", "print-top-right", "print-bottom-right", "print-bottom-left"];
/// The set-up photo is taken from farther off than the others.
const LEAST_MM: f64 = 20.0;
/// Two must fit beside one another.
const MOST_MM: f64 = 70.0;
const GAP_MM: f64 = 6.0;
const LABEL_MM: f64 = 6.0;

/// One page with the four tags, lying as they will on the board.
pub(crate) fn pages(size_mm: f64, paper: Paper, words: &Words) -> Result<Vec<Page>, PrintError> {
    let size_mm = within("the tag size in millimetres", size_mm, LEAST_MM, MOST_MM)?;
    let mut page = Page::new(paper, false);
    let size = size_text(size_mm);
    ruler::furnish(&mut page, &words.fill("print-corners", &[("size", &size)])?, words)?;
    let side = size_mm * tag::WITH_WHITE;
    let places = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)];
    for ((id, (column, row)), corner) in BOARD_IDS.into_iter().zip(places).zip(CORNERS) {
        let x = SIDE_MM + column * (side + GAP_MM);
        let y = TOP_MM + row * (side + LABEL_MM + GAP_MM);
        let rim = (side - size_mm) / 2.0;
        page.cut(x, y, side, side);
        tag::draw(&mut page, id, x + rim, y + rim, size_mm);
        page.text(x, y + side + 0.8, 9.0, format!("{id} · {}", words.say(corner)?));
    }
    let below = TOP_MM + 2.0 * (side + LABEL_MM + GAP_MM) + 4.0;
    let (wide, _) = page.room();
    page.paragraph(SIDE_MM, below, 9.5, wide, words.say("print-corners-how")?);
    Ok(vec![page])
}
