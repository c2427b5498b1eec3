//! A line board from several sheets, glued edge to edge.
//!
//! A sheet's lines span a whole number of pitches, so the first line of the next sheet goes on where the
//! last one ended. Turned a quarter, the same board serves the other axis.

use super::corners::BOARD_IDS;
use super::page::{Page, SIDE_MM, TOP_MM};
use super::stickers::size_text;
use super::{PrintError, ruler, tag, within};
use crate::Paper;
use crate::words::Words;

/// A board to print.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LineBoard {
    /// One black and one white line together, mm.
    pub pitch_mm: f64,
    /// Sheets side by side.
    pub across: u32,
    /// Sheets one above the other.
    pub down: u32,
    /// Side of the corner tags' black squares, mm.
    pub tag_mm: f64,
}

impl Default for LineBoard {
    /// About as large as a 32-inch screen; 14 mm lines suit half a metre to a metre.
    fn default() -> Self {
        Self { pitch_mm: 14.0, across: 4, down: 2, tag_mm: 60.0 }
    }
}

const LEAST_PITCH_MM: f64 = 2.0;
/// At least three black lines a sheet.
const MOST_PITCH_MM: f64 = 60.0;
const MOST_SHEETS: u32 = 12;

impl LineBoard {
    /// Width and height of the lines on one sheet, mm: whole pitches across, whole centimetres down.
    #[must_use]
    pub fn sheet_mm(&self, paper: Paper) -> (f64, f64) {
        let (wide, high) = Page::new(paper, false).room();
        ((wide / self.pitch_mm).floor() * self.pitch_mm, (high / 10.0).floor() * 10.0)
    }

    /// Width and height of the glued board, mm.
    #[must_use]
    pub fn board_mm(&self, paper: Paper) -> (f64, f64) {
        let (wide, high) = self.sheet_mm(paper);
        (wide * f64::from(self.across), high * f64::from(self.down))
    }

    fn check(&self) -> Result<(), PrintError> {
        within("the pitch in millimetres", self.pitch_mm, LEAST_PITCH_MM, MOST_PITCH_MM)?;
        within("the number of sheets side by side", f64::from(self.across), 1.0, f64::from(MOST_SHEETS))?;
        within("the number of sheets one above the other", f64::from(self.down), 1.0, f64::from(MOST_SHEETS))?;
        within("the tag size in millimetres", self.tag_mm, 20.0, 70.0)?;
        Ok(())
    }

    /// The `[board]` part of a `capture.toml` for the finished board, tags flush with its corners.
    #[must_use]
    pub fn description(&self, paper: Paper) -> String {
        let (w, h) = self.board_mm(paper);
        let inset = tag::WITH_WHITE * self.tag_mm / 2.0;
        let (u, v) = (w / 2.0 - inset, h / 2.0 - inset);
        let mut text =
            format!("[board]\nkind = \"lines\"\nwidth_mm = {w:?}\nheight_mm = {h:?}\npitch_mm = {:?}\n", self.pitch_mm);
        for (id, (x, y)) in BOARD_IDS.into_iter().zip([(-u, v), (u, v), (u, -v), (-u, -v)]) {
            let size = self.tag_mm;
            text += &format!("\n[[board.tags]]\nid = {id}\nx_mm = {x:?}\ny_mm = {y:?}\nsize_mm = {size:?}\n");
        }
        text
    }
}

/// How to put it together, then every sheet.
pub(crate) fn pages(board: &LineBoard, paper: Paper, words: &Words) -> Result<Vec<Page>, PrintError> {
    board.check()?;
    let mut pages = vec![plan(board, paper, words)?];
    for row in 1..=board.down {
        for column in 1..=board.across {
            pages.push(sheet(board, paper, (column, row), words)?);
        }
    }
    Ok(pages)
}

fn sheet(board: &LineBoard, paper: Paper, at: (u32, u32), words: &Words) -> Result<Page, PrintError> {
    let mut page = Page::new(paper, false);
    let (column, row, pitch) = (at.0.to_string(), at.1.to_string(), size_text(board.pitch_mm));
    let title = words.fill("print-lines", &[("pitch", &pitch), ("column", &column), ("row", &row)])?;
    ruler::furnish(&mut page, &title, words)?;
    let (wide, high) = board.sheet_mm(paper);
    page.cut(SIDE_MM, TOP_MM, wide, high);
    for k in 0..(wide / board.pitch_mm).round() as u32 {
        page.fill(SIDE_MM + f64::from(k) * board.pitch_mm, TOP_MM, board.pitch_mm / 2.0, high, false);
    }
    Ok(page)
}

fn plan(board: &LineBoard, paper: Paper, words: &Words) -> Result<Page, PrintError> {
    let mut page = Page::new(paper, false);
    ruler::furnish(&mut page, &words.say("print-lines-plan")?, words)?;
    let (room, _) = page.room();
    let (w, h) = board.board_mm(paper);
    let scale = (room / w).min(90.0 / h);
    let (wide, high) = board.sheet_mm(paper);
    for row in 0..board.down {
        for column in 0..board.across {
            let x = SIDE_MM + f64::from(column) * wide * scale;
            let y = TOP_MM + f64::from(row) * high * scale;
            page.cut(x, y, wide * scale, high * scale);
            page.text(x + wide * scale / 2.0 - 3.0, y + high * scale / 2.0, 9.0, format!("{}·{}", column + 1, row + 1));
        }
    }
    let below = TOP_MM + h * scale + 6.0;
    let (w, h, tag) = (size_text(w), size_text(h), size_text(board.tag_mm));
    let how = words.fill("print-lines-how", &[("width", &w), ("height", &h), ("tag", &tag)])?;
    page.paragraph(SIDE_MM, below, 9.5, room, how);
    page.text(SIDE_MM, below + 34.0, 9.5, "capture.toml");
    for (k, line) in board.description(paper).lines().filter(|line| !line.is_empty()).enumerate() {
        let (column, row) = (k / 15, k % 15);
        page.text(SIDE_MM + 60.0 * column as f64, below + 40.0 + 4.2 * row as f64, 9.0, line);
    }
    Ok(page)
}
