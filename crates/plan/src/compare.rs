//! What each move of a round left, told from the readings before and after it.

use crate::candidates::Candidate;
use crate::hand::Tried;
use crate::propose::Proposal;
use crate::sparse::{Sparse, dot};
use dentwright_surface::Map;

/// Shapes of what moves leave are off by this share of it.
const SHAPE: f64 = 0.15;
/// What a reading after another may be off by, mm.
const READ_MM: f64 = 0.002;

/// A move that was made, with what the sheet was thought to do.
pub struct Stroke<'a> {
    /// Lift that was meant each time, mm, in size.
    pub held_mm: f64,
    /// How often.
    pub times: usize,
    /// What was foretold to stay of all times together, mm.
    pub foretold_mm: f64,
    /// Its quick answer.
    pub behind: &'a Candidate,
}

/// What each move of a proposed round left, each time.
#[must_use]
pub fn compare(proposal: &Proposal, before: &Map, after: &Map) -> Vec<Tried> {
    let pairs = proposal.moves.iter().zip(&proposal.behind);
    let stroke = |(m, behind)| {
        let m: &crate::planned::Planned = m;
        Stroke { held_mm: m.held_mm, times: m.times, foretold_mm: m.leaves_mm[0], behind }
    };
    left_by(&pairs.map(stroke).collect::<Vec<_>>(), before, after)
}

/// What each of these moves left, each time: amounts of the foretold changes that explain the measured one.
#[must_use]
pub fn left_by(strokes: &[Stroke], before: &Map, after: &Map) -> Vec<Tried> {
    let change = |(a, b): (&f32, &f32)| if (b - a).is_finite() { f64::from(b - a) } else { 0.0 };
    let change: Vec<f64> = before.values.iter().zip(&after.values).map(change).collect();
    let columns: Vec<Vec<f64>> = strokes.iter().map(|s| s.behind.column.clone()).collect();
    let n = columns.len();
    let sparse = Sparse { columns: &columns, b: &change, price: &vec![0.0; n], most: &vec![f64::INFINITY; n] };
    let amounts = sparse.solve();
    let mut left = change;
    columns.iter().zip(&amounts).for_each(|(c, a)| left.iter_mut().zip(c).for_each(|(l, v)| *l -= a * v));
    let squares = |v: &[f64]| v.iter().map(|v| v * v).collect::<Vec<f64>>();
    let unexplained = squares(&left);
    let tried = |(s, amount): (&Stroke, f64)| {
        // what the foretold shape does not explain, where the move acts
        let column = squares(&s.behind.column);
        let misfit = (dot(&unexplained, &column) / column.iter().sum::<f64>().max(1e-12)).sqrt();
        let sigma = (misfit.powi(2) + (SHAPE * s.foretold_mm).powi(2) + READ_MM.powi(2)).sqrt();
        let times = s.times.max(1) as f64;
        Tried {
            act: s.behind.act,
            at_mm: s.behind.at,
            radius_mm: s.behind.tip.radius,
            times: s.times.max(1),
            held_mm: s.held_mm,
            curve: s.behind.curve.clone(),
            left_mm: amount / times,
            sigma_mm: sigma / times,
        }
    };
    strokes.iter().zip(amounts).map(tried).collect()
}
