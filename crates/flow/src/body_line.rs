//! How a body line of a kept reading runs, drawn by a finger.

use crate::kept::KeptReading;
use dentwright_surface::{IntendedSettings, LineReport, Map, drawn_line, intended_shape, line_report};
use thiserror::Error;

/// Why nothing can be said of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum LineError {
    /// A stroke too short to tell a direction.
    #[error("the line is too short")]
    Short,
    /// Nothing bends there.
    #[error("no body line runs there, or too little of it was read")]
    NoLine,
}

impl LineError {
    /// What to do next.
    #[must_use]
    pub fn next(&self) -> &'static str {
        "Draw along the body line, over the damage and a hand's breadth of sound line on either side."
    }
}

/// How the line drawn from one place to another (panel frame, mm) runs: brought onto the ridge beside it, the
/// intended shape fitted once more with it kept.
///
/// # Errors
/// A stroke too short, or no ridge there.
pub fn body_line(reading: &KeptReading, from: (f64, f64), to: (f64, f64)) -> Result<LineReport, LineError> {
    let (line, ends) = drawn_line(&reading.height, from, to).ok_or(LineError::Short)?;
    let intended = intended_shape(&reading.height, &IntendedSettings { line: Some(line), ..Default::default() });
    let values = reading.height.values.iter().zip(&intended.shape.values).map(|(h, s)| h - s).collect();
    let deviation = Map { grid: reading.height.grid, values };
    line_report(&reading.height, &deviation, &reading.sigma, &line, ends).ok_or(LineError::NoLine)
}
