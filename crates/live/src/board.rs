//! A screen as a board: its lit area, and the tags it shows.

use dentwright_optics::{Board, BoardKind, BoardTag};
use thiserror::Error;

/// What a screen says of itself. Pixels are its own, counted from the lit area's upper left corner, y down.
#[derive(Debug, Clone, PartialEq)]
pub struct BoardLayout {
    /// Lit width, px.
    pub width_px: f64,
    /// Lit height, px.
    pub height_px: f64,
    /// Size of a pixel, mm.
    pub mm_per_px: f64,
    /// Its tags.
    pub tags: Vec<ScreenTag>,
}

/// A tag on the screen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ScreenTag {
    /// Number.
    pub id: usize,
    /// Centre, px.
    pub x_px: f64,
    /// Centre, px.
    pub y_px: f64,
    /// Side of the black square, px.
    pub size_px: f64,
}

/// Why a screen cannot be the board.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum LayoutError {
    /// Not a number, or not above zero.
    #[error("the screen's {0} is not a size")]
    Number(&'static str),
    /// Smaller than a phone or larger than a wall.
    #[error("the screen's lit area would be {width_mm:.0} × {height_mm:.0} mm")]
    Size {
        /// Its width, mm.
        width_mm: f64,
        /// Its height, mm.
        height_mm: f64,
    },
    /// Fewer than three tags, or one outside.
    #[error("the screen shows {0} tags inside its lit area; at least 3 are needed")]
    Tags(usize),
}

const LEAST_MM: f64 = 80.0;
const MOST_MM: f64 = 4000.0;
const LEAST_TAGS: usize = 3;

impl BoardLayout {
    /// As `capture.toml` has it.
    ///
    /// # Errors
    /// Sizes that cannot be, or too few tags.
    pub fn board(&self) -> Result<Board, LayoutError> {
        let above_zero =
            |what, value: f64| if value.is_finite() && value > 0.0 { Ok(()) } else { Err(LayoutError::Number(what)) };
        above_zero("width", self.width_px)?;
        above_zero("height", self.height_px)?;
        above_zero("pixel", self.mm_per_px)?;
        let (width_mm, height_mm) = (self.width_px * self.mm_per_px, self.height_px * self.mm_per_px);
        if width_mm.min(height_mm) < LEAST_MM || width_mm.max(height_mm) > MOST_MM {
            return Err(LayoutError::Size { width_mm, height_mm });
        }
        let inside = |t: &&ScreenTag| {
            let half = 0.5 * t.size_px;
            half > 0.0
                && (half..=self.width_px - half).contains(&t.x_px)
                && (half..=self.height_px - half).contains(&t.y_px)
        };
        let tags: Vec<BoardTag> = self.tags.iter().filter(inside).map(|t| self.board_tag(t)).collect();
        if tags.len() < LEAST_TAGS {
            return Err(LayoutError::Tags(tags.len()));
        }
        Ok(Board { kind: BoardKind::Screen, width_mm, height_mm, pitch_mm: None, tags })
    }

    fn board_tag(&self, tag: &ScreenTag) -> BoardTag {
        BoardTag {
            id: tag.id,
            x_mm: (tag.x_px - 0.5 * self.width_px) * self.mm_per_px,
            y_mm: (0.5 * self.height_px - tag.y_px) * self.mm_per_px,
            size_mm: tag.size_px * self.mm_per_px,
        }
    }
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;

    /// The screen of the rendered captures: 708 × 398 mm with tags of 60 mm, at half a millimetre a pixel.
    pub fn layout() -> BoardLayout {
        let tag = |id, x_px, y_px| ScreenTag { id, x_px, y_px, size_px: 120.0 };
        BoardLayout {
            width_px: 1416.0,
            height_px: 796.0,
            mm_per_px: 0.5,
            tags: vec![tag(20, 90.0, 90.0), tag(21, 1326.0, 90.0), tag(22, 1326.0, 706.0), tag(23, 90.0, 706.0)],
        }
    }

    #[test]
    fn pixels_become_the_boards_millimetres() {
        let board = layout().board().unwrap();
        assert_eq!((board.width_mm, board.height_mm), (708.0, 398.0));
        let first = board.tags[0];
        assert_eq!((first.x_mm, first.y_mm, first.size_mm), (-309.0, 154.0, 60.0));
    }

    #[test]
    fn what_is_no_screen_is_refused() {
        let odd = |change: fn(&mut BoardLayout)| {
            let mut layout = layout();
            change(&mut layout);
            layout.board().unwrap_err()
        };
        assert_eq!(odd(|l| l.mm_per_px = f64::NAN), LayoutError::Number("pixel"));
        assert!(matches!(odd(|l| l.mm_per_px = 0.01), LayoutError::Size { .. }));
        assert_eq!(odd(|l| l.tags.truncate(2)), LayoutError::Tags(2));
        assert_eq!(odd(|l| l.tags.iter_mut().for_each(|t| t.x_px = -5.0)), LayoutError::Tags(0));
    }
}
