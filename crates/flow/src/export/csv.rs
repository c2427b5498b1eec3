//! One line a cell that was read (RFC 4180, points as decimals).

use crate::kept::KeptReading;
use std::fmt::Write as _;

/// `x_mm,y_mm,height_mm,deviation_um,sigma_um`.
pub(super) fn csv(reading: &KeptReading) -> Vec<u8> {
    let grid = reading.height.grid;
    let mut text = String::from("x_mm,y_mm,height_mm,deviation_um,sigma_um\r\n");
    for i in (0..grid.len()).filter(|&i| reading.height.values[i].is_finite()) {
        let (x, y) = grid.position(i);
        let um = |v: f32| 1e3 * v;
        let _ = write!(
            text,
            "{x:.3},{y:.3},{:.5},{:.3},{:.3}\r\n",
            reading.height.values[i],
            um(reading.deviation.values[i]),
            um(reading.sigma.values[i])
        );
    }
    text.into_bytes()
}
