//! Holes of a reading bridged, so that the sheet can be worked into it: each takes the mean of what lies around it, as a
//! skin stretched over it would. What is bridged is a guess, and shallower than a low that was too steep to read.

use dentwright_surface::Map;

/// Rounds at most; a hole of some thirty cells across has settled by then.
const ROUNDS: usize = 400;

/// The map with every hole bridged; all zero where nothing was read.
#[must_use]
pub fn bridge(map: &Map) -> Map {
    let (nx, ny) = (map.grid.nx, map.grid.ny);
    let holes: Vec<usize> = (0..map.grid.len()).filter(|i| !map.values[*i].is_finite()).collect();
    let mut values = map.values.clone();
    let near = |i: usize| {
        let (x, y) = (i % nx, i / nx);
        let beside =
            [(x > 0, i.wrapping_sub(1)), (x + 1 < nx, i + 1), (y > 0, i.wrapping_sub(nx)), (y + 1 < ny, i + nx)];
        beside.into_iter().filter(|b| b.0).map(|b| b.1)
    };
    for _ in 0..ROUNDS {
        let mut change = 0.0f32;
        for i in &holes {
            let (sum, n) =
                near(*i).filter(|k| values[*k].is_finite()).fold((0.0, 0), |(s, n), k| (s + values[k], n + 1));
            if n > 0 {
                let next = sum / n as f32;
                change = change.max(if values[*i].is_finite() { (next - values[*i]).abs() } else { 1.0 });
                values[*i] = next;
            }
        }
        if change < 1e-5 {
            break;
        }
    }
    values.iter_mut().filter(|v| !v.is_finite()).for_each(|v| *v = 0.0);
    Map { grid: map.grid, values }
}

#[cfg(test)]
mod tests {
    use super::*;
    use dentwright_surface::Grid;

    /// A plane is its own bridge (mean value property of harmonic functions).
    #[test]
    fn a_hole_in_a_plane_is_filled_with_the_plane() {
        let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 2.0, nx: 15, ny: 12 };
        let plane = Map::from_fn(grid, |x, y| 0.1 * x - 0.03 * y);
        let mut holed = plane.clone();
        for i in 0..grid.len() {
            let (x, y) = grid.position(i);
            if (x - 14.0).hypot(y - 10.0) < 7.0 {
                holed.values[i] = f32::NAN;
            }
        }
        let off = bridge(&holed).values.iter().zip(&plane.values).map(|(a, b)| (a - b).abs()).fold(0.0, f32::max);
        assert!(off < 2e-3, "{off}");
    }
}
