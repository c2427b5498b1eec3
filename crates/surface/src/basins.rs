//! An area parted into basins, one around each extreme that stands out from the saddle to the next.
//!
//! Cells are flooded from the extreme down (Vincent and Soille 1991, with prominence in place of markers): a cell
//! joins the basin of its neighbours; where two basins meet, the lower one stays its own if its extreme exceeds
//! the meeting place by enough, else the higher one takes it.

use crate::grid::Grid;
use std::collections::HashMap;

/// Parts an area (flat indices). `size` is what is flooded, positive; a basin stays where the saddle lies under
/// its extreme by at least the share `prominence`.
pub(crate) fn basins(area: &[usize], grid: &Grid, size: impl Fn(usize) -> f64, prominence: f64) -> Vec<Vec<usize>> {
    let mut order = area.to_vec();
    order.sort_by(|&a, &b| size(b).total_cmp(&size(a)).then(a.cmp(&b)));
    let mut basin_of: HashMap<usize, usize> = HashMap::with_capacity(area.len());
    // Of every basin: its extreme, and the basin that took it.
    let mut extremes: Vec<f64> = Vec::new();
    let mut taken: Vec<usize> = Vec::new();
    for &cell in &order {
        let mut around: Vec<usize> =
            neighbours(cell, grid).filter_map(|n| basin_of.get(&n)).map(|&b| root(&taken, b)).collect();
        around.sort_by(|&a, &b| extremes[b].total_cmp(&extremes[a]).then(a.cmp(&b)));
        around.dedup();
        let Some(&highest) = around.first() else {
            basin_of.insert(cell, extremes.len());
            taken.push(extremes.len());
            extremes.push(size(cell));
            continue;
        };
        for &other in &around[1..] {
            if size(cell) > (1.0 - prominence) * extremes[other] {
                taken[other] = highest;
            }
        }
        basin_of.insert(cell, highest);
    }
    let mut out: HashMap<usize, Vec<usize>> = HashMap::new();
    for &cell in &order {
        out.entry(root(&taken, basin_of[&cell])).or_default().push(cell);
    }
    let mut out: Vec<(usize, Vec<usize>)> = out.into_iter().collect();
    out.sort_by_key(|b| b.0);
    out.into_iter().map(|b| b.1).collect()
}

fn root(taken: &[usize], mut basin: usize) -> usize {
    while taken[basin] != basin {
        basin = taken[basin];
    }
    basin
}

fn neighbours(cell: usize, grid: &Grid) -> impl Iterator<Item = usize> {
    let (x, y, nx, ny) = (cell % grid.nx, cell / grid.nx, grid.nx, grid.ny);
    let near = (-1i64..=1).flat_map(|dy| (-1i64..=1).map(move |dx| (dx, dy))).filter(|d| *d != (0, 0));
    near.filter_map(move |(dx, dy)| {
        let (x, y) = (x.checked_add_signed(dx as isize)?, y.checked_add_signed(dy as isize)?);
        (x < nx && y < ny).then_some(y * nx + x)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts(second: f64, apart: f64) -> Vec<usize> {
        let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 1.0, nx: 80, ny: 30 };
        let bump = |x: f64, y: f64, at: f64| (-((x - at).powi(2) + (y - 15.0).powi(2)) / 50.0).exp();
        let size = |i: usize| {
            let (x, y) = grid.position(i);
            bump(x, y, 25.0) + second * bump(x, y, 25.0 + apart)
        };
        let area: Vec<usize> = (0..grid.len()).filter(|&i| size(i) > 0.02).collect();
        let parts = basins(&area, &grid, size, 0.3);
        assert_eq!(parts.iter().map(Vec::len).sum::<usize>(), area.len());
        parts.iter().map(Vec::len).collect()
    }

    #[test]
    fn two_bumps_part_where_the_saddle_is_low_and_not_where_it_is_high() {
        assert_eq!(parts(0.4, 25.0).len(), 2);
        assert_eq!(parts(0.8, 9.0).len(), 1);
    }
}
