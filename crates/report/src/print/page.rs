//! A page as plain shapes, in millimetres from its top left corner.

use crate::Paper;
use serde::Serialize;

/// A page and what is on it, in the order of drawing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct Page {
    pub width: f64,
    pub height: f64,
    pub marks: Vec<Mark>,
}

/// One shape.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
pub(crate) enum Mark {
    /// A filled rectangle.
    Box { x: f64, y: f64, w: f64, h: f64, white: bool },
    /// A thin line; grey ones are for cutting.
    Line { x: f64, y: f64, dx: f64, dy: f64, thick: f64, grey: bool },
    /// A line of text, its upper left corner; `wide` above zero breaks it there.
    Text { x: f64, y: f64, size: f64, wide: f64, text: String },
}

/// What printers leave white at the edges, with room for the rulers: left and right, top, bottom.
pub(crate) const SIDE_MM: f64 = 14.0;
pub(crate) const TOP_MM: f64 = 16.0;
pub(crate) const BOTTOM_MM: f64 = 28.0;

impl Page {
    /// An empty page, upright or lying.
    pub fn new(paper: Paper, lying: bool) -> Self {
        // ISO 216; ANSI/ASME Y14.1 size A.
        let (w, h) = match paper {
            Paper::A4 => (210.0, 297.0),
            Paper::Letter => (215.9, 279.4),
        };
        let (width, height) = if lying { (h, w) } else { (w, h) };
        Self { width, height, marks: Vec::new() }
    }

    /// Width and height between the margins.
    pub fn room(&self) -> (f64, f64) {
        (self.width - 2.0 * SIDE_MM, self.height - TOP_MM - BOTTOM_MM)
    }

    pub fn fill(&mut self, x: f64, y: f64, w: f64, h: f64, white: bool) {
        self.marks.push(Mark::Box { x, y, w, h, white });
    }

    pub fn line(&mut self, from: (f64, f64), by: (f64, f64), thick: f64, grey: bool) {
        self.marks.push(Mark::Line { x: from.0, y: from.1, dx: by.0, dy: by.1, thick, grey });
    }

    /// A rectangle to cut along.
    pub fn cut(&mut self, x: f64, y: f64, w: f64, h: f64) {
        const THICK: f64 = 0.15;
        for (from, by) in [((x, y), (w, 0.0)), ((x, y + h), (w, 0.0)), ((x, y), (0.0, h)), ((x + w, y), (0.0, h))] {
            self.line(from, by, THICK, true);
        }
    }

    pub fn text(&mut self, x: f64, y: f64, size_pt: f64, text: impl Into<String>) {
        self.marks.push(Mark::Text { x, y, size: size_pt, wide: 0.0, text: text.into() });
    }

    /// Text that breaks at a width.
    pub fn paragraph(&mut self, x: f64, y: f64, size_pt: f64, wide: f64, text: impl Into<String>) {
        self.marks.push(Mark::Text { x, y, size: size_pt, wide, text: text.into() });
    }
}
