//! What each move of a round left, told from the readings before and after it.

use crate::hand::Tried;
use crate::propose::Proposal;
use crate::sparse::{Sparse, dot};
use dentwright_surface::Map;

/// What each move of a round left, from two readings: amounts of the predicted changes that explain the measured one.
pub fn compare(proposal: &Proposal, before: &Map, after: &Map) -> Vec<Tried> {
    let change: Vec<f64> = before
        .values
        .iter()
        .zip(&after.values)
        .map(|(a, b)| if (b - a).is_finite() { f64::from(b - a) } else { 0.0 })
        .collect();
    let columns: Vec<Vec<f64>> = proposal.behind.iter().map(|c| c.column.clone()).collect();
    let n = columns.len();
    let sparse = Sparse { columns: &columns, b: &change, price: &vec![0.0; n], most: &vec![f64::INFINITY; n] };
    let amounts = sparse.solve();
    let mut left = change.clone();
    columns.iter().zip(&amounts).for_each(|(c, a)| left.iter_mut().zip(c).for_each(|(l, v)| *l -= a * v));
    proposal
        .moves
        .iter()
        .zip(&proposal.behind)
        .zip(amounts)
        .map(|((m, c), amount)| {
            // what the prediction's shape does not explain, where the move acts
            let misfit = (dot(
                &left.iter().map(|v| v * v).collect::<Vec<_>>(),
                &c.column.iter().map(|v| v * v).collect::<Vec<_>>(),
            ) / dot(&c.column, &c.column).max(1e-12))
            .sqrt();
            let sigma = (misfit.powi(2) + (0.15 * m.leaves_mm[0]).powi(2) + 0.002f64.powi(2)).sqrt();
            Tried { held_mm: m.held_mm, curve: c.curve.clone(), left_mm: amount, sigma_mm: sigma }
        })
        .collect()
}
