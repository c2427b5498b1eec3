//! How much each of many moves should leave so that together they bring a map nearest to level: bounded least squares with a
//! price on every move (`sparse.rs`). What is over the limit counts more, since the finish is judged by the worst place:
//! cells that would be left over it weigh more when the amounts are found anew.

use crate::candidates::Candidate;
use crate::sparse::Sparse;

/// Price of a move: as much as the limit over this many cells.
const PRICED_CELLS: f64 = 1.0;
/// How often cells are weighed, and how much least and most.
const WEIGHED: usize = 4;
const WEIGHTS: [f64; 2] = [0.4, 2.5];

/// Amounts, mm, none above `most`; `read` is the map, cell by cell, mm.
pub fn together(all: &[Candidate], read: &[f64], most: &[f64], limit_mm: f64) -> Vec<f64> {
    let price = vec![PRICED_CELLS * limit_mm; all.len()];
    let mut weight = vec![1.0; read.len()];
    let mut found = Vec::new();
    for _ in 0..WEIGHED {
        let b: Vec<f64> = read.iter().zip(&weight).map(|(v, w)| -v * w).collect();
        let weighed = |c: &Candidate| c.column.iter().zip(&weight).map(|(v, w)| v * w).collect();
        let columns: Vec<Vec<f64>> = all.iter().map(weighed).collect();
        found = Sparse { columns: &columns, b: &b, price: &price, most }.solve();
        let left = after(all, read, &found);
        let over = |i: usize| (left[i].abs() / limit_mm).clamp(WEIGHTS[0], WEIGHTS[1]);
        weight.iter_mut().enumerate().for_each(|(i, w)| *w = (*w * over(i)).sqrt());
    }
    found
}

/// The map after moves of these amounts.
pub fn after(all: &[Candidate], read: &[f64], amounts: &[f64]) -> Vec<f64> {
    let mut left = read.to_vec();
    for (c, x) in all.iter().zip(amounts).filter(|(_, x)| **x > 0.0) {
        left.iter_mut().zip(&c.column).for_each(|(l, v)| *l += x * v);
    }
    left
}
