//! Whether sound metal around an area tells its level.
//!
//! The intended shape under damage is carried over from the sound metal around it. Where an area that stands out hangs
//! on by a neck, between a tag and the end of what was read, nothing beyond it holds the shape: the deviation there
//! may as well be the shape's own error. A dent that the end of the reading cuts in half has sound metal along more
//! than half of its outline, one in a corner along more than two fifths.

use crate::grid::Map;
use crate::regions::areas;

/// Share of an area's outline that must border on sound metal. A guess below that of a dent cut by a corner.
const LEAST_SHARE: f64 = 1.0 / 3.0;

/// Raises the doubt of areas that sound metal does not enclose to the largest deviation found in them.
pub(crate) fn doubt_the_open(doubt: &mut Map, deviation: impl Fn(usize) -> f32, sound: &[bool]) {
    let grid = doubt.grid;
    let left_out: Vec<bool> = (0..grid.len()).map(|i| !sound[i] && deviation(i).is_finite()).collect();
    for area in areas(&left_out, &grid) {
        let (mut closed, mut open) = (0usize, 0usize);
        for &i in &area {
            for next in grid.beside(i) {
                match next {
                    Some(k) if sound[k] => closed += 1,
                    Some(k) if left_out[k] => {}
                    _ => open += 1,
                }
            }
        }
        if (closed as f64) < LEAST_SHARE * (closed + open) as f64 {
            let most = area.iter().map(|&i| deviation(i).abs()).fold(0.0, f32::max);
            area.iter().for_each(|&i| doubt.values[i] = doubt.values[i].max(most));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::Grid;

    /// Doubt at a place that stands out 9 µm, in a reading whose unread cells are given.
    fn doubt_at(out: impl Fn(usize, usize) -> bool, unread: impl Fn(usize, usize) -> bool, at: (usize, usize)) -> f32 {
        let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 1.0, nx: 60, ny: 60 };
        let xy = |i: usize| (i % 60, i / 60);
        let deviation = |i: usize| {
            let (x, y) = xy(i);
            if unread(x, y) {
                f32::NAN
            } else if out(x, y) {
                -0.009
            } else {
                0.0
            }
        };
        let sound: Vec<bool> = (0..grid.len()).map(|i| deviation(i) == 0.0).collect();
        let mut doubt = Map { grid, values: vec![0.001; grid.len()] };
        doubt_the_open(&mut doubt, deviation, &sound);
        doubt.values[at.1 * 60 + at.0]
    }

    #[test]
    fn only_what_hangs_on_by_a_neck_is_doubted() {
        let round = |cx: f64, cy: f64| move |x: usize, y: usize| (x as f64 - cx).hypot(y as f64 - cy) < 12.0;
        let none = |_: usize, _: usize| false;
        assert_eq!(doubt_at(round(30.0, 30.0), none, (30, 30)), 0.001);
        assert_eq!(doubt_at(round(30.0, 0.0), none, (30, 2)), 0.001, "cut in half by the end");
        assert_eq!(doubt_at(round(0.0, 0.0), none, (2, 2)), 0.001, "in a corner");
        // Ten millimetres between a tag and the end of the panel, twenty long, held at one end.
        let tag = |x: usize, y: usize| (30..50).contains(&x) && y < 20;
        assert_eq!(doubt_at(|x, y| x >= 50 && y < 20, tag, (55, 3)), 0.009);
    }
}
