//! What straight lines look like over a place that bends: how wide, and whether turned over.
//!
//! A low is a hollow mirror. With the board nearer than its focal length lines over it are wider than elsewhere; beyond,
//! they are upside down, and from twice the focal length on narrower. Width alone therefore never tells a low.
//! Mirror equation, paraxial; any textbook of geometrical optics.

use serde::{Deserialize, Serialize};

/// Lines over a place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LinesOver {
    /// Width of a line against the same line over even metal; no bound where the board stands at the focus.
    pub width: f64,
    /// Whether they are upside down: a line moved one way runs the other way there.
    pub turned: bool,
}

/// Lines over a place that is `bend` more hollow than the metal around it (1/mm, low positive), mirrored from a board
/// `board_mm` away into an eye `eye_mm` away.
#[must_use]
pub fn lines_over(bend: f64, board_mm: f64, eye_mm: f64) -> LinesOver {
    // Slope grows by `bend` a mm, the ray turns by twice that: a step s on the panel moves the point met on the board by
    // s ((1 + d/e) − 2 bend d).
    let along_board = 1.0 + board_mm / eye_mm - 2.0 * bend * board_mm;
    let even = 1.0 + board_mm / eye_mm;
    LinesOver { width: (even / along_board).abs(), turned: along_board < 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mirror_equation_holds() {
        // Hollow mirror of focal length 500 mm (bend 1/1000), board at 300 mm, eye at 1500 mm. By 1/o + 1/i = 1/f the
        // image stands at i = -750 mm, 2.5 times the size, seen over 1500 + 750 mm; flat: the same size over 1800 mm.
        let seen = lines_over(1e-3, 300.0, 1500.0);
        assert!((seen.width - (2.5 / 2250.0) / (1.0 / 1800.0)).abs() < 1e-12 && !seen.turned, "{seen:?}");
        // Beyond the focus: board at 2000 mm, image at 666.7 mm before the mirror, a third of the size, upside down.
        let seen = lines_over(1e-3, 2000.0, 1500.0);
        assert!((seen.width - (1.0 / 3.0 / (1500.0 - 2000.0 / 3.0)) / (1.0 / 3500.0)).abs() < 1e-12, "{seen:?}");
        assert!(seen.turned);
    }

    #[test]
    fn a_wide_line_is_not_always_a_low_and_a_low_not_always_wide() {
        assert!(lines_over(1e-3, 300.0, 1000.0).width > 1.0);
        assert!(lines_over(1e-3, 5000.0, 3000.0).width < 1.0, "far behind the focus a low's lines are narrow");
        assert!(lines_over(-1e-3, 300.0, 1000.0).width < 1.0);
    }
}
