//! The trial's table.

use crate::trial::{Run, Worker};
use serde::{Deserialize, Serialize};

/// What one worker made of the panels that can be repaired.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Row {
    /// Who.
    pub worker: Worker,
    /// Panels.
    pub panels: usize,
    /// Panels on which the finish limit is met.
    pub met: usize,
    /// Mean of moves.
    pub moves: f64,
    /// Mean of readings.
    pub readings: f64,
    /// Share of moves from the front.
    pub taps: f64,
    /// Median of the largest true residual, mm.
    pub residual_mm: f64,
    /// Mean of the plastic strain added.
    pub spent: f64,
    /// Largest strain left on the paint after any move.
    pub paint_strain: f64,
    /// Moves on which the sheet snapped.
    pub snaps: usize,
    /// Share of moves that left what was foretold within two sigma; none where nothing was foretold.
    pub within: Option<f64>,
}

/// Whether what cannot be repaired was told.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Refusals {
    /// Panels that, brought level as they truly are, are oil cans.
    pub beyond: usize,
    /// Of these, refused.
    pub refused: usize,
    /// Panels that can be repaired.
    pub repairable: usize,
    /// Of these, refused wrongly.
    pub wrongly: usize,
}

/// A worker a row, over the panels of which a planner's run says that they can be repaired.
#[must_use]
pub fn table(runs: &[Run]) -> Vec<Row> {
    let beyond = |seed: u64| runs.iter().any(|r| r.seed == seed && r.beyond);
    let known = |seed: u64| runs.iter().any(|r| r.seed == seed && r.worker == Worker::Planner);
    let able: Vec<&Run> = runs.iter().filter(|r| known(r.seed) && !beyond(r.seed)).collect();
    Worker::all().map(|worker| row(worker, &able)).into_iter().filter(|r| r.panels > 0).collect()
}

fn row(worker: Worker, runs: &[&Run]) -> Row {
    let own: Vec<&&Run> = runs.iter().filter(|r| r.worker == worker).collect();
    let n = own.len().max(1) as f64;
    let mean = |of: &dyn Fn(&Run) -> f64| own.iter().map(|r| of(r)).sum::<f64>() / n;
    let mut residuals: Vec<f64> = own.iter().map(|r| r.residual_mm).collect();
    residuals.sort_by(f64::total_cmp);
    let moves = mean(&|r| r.log.moves as f64);
    let foretold: usize = own.iter().map(|r| r.log.foretold).sum();
    Row {
        worker,
        panels: own.len(),
        met: own.iter().filter(|r| r.met).count(),
        moves,
        readings: mean(&|r| r.log.readings as f64),
        taps: mean(&|r| r.log.taps as f64) / moves.max(1.0),
        residual_mm: residuals.get(residuals.len() / 2).copied().unwrap_or(f64::NAN),
        spent: mean(&|r| r.spent),
        paint_strain: own.iter().map(|r| r.log.paint_strain).fold(0.0, f64::max),
        snaps: own.iter().map(|r| r.log.snaps).sum(),
        within: (foretold > 0).then(|| own.iter().map(|r| r.log.within).sum::<usize>() as f64 / foretold as f64),
    }
}

/// What the planner said beforehand, against the truth.
#[must_use]
pub fn refusals(runs: &[Run]) -> Refusals {
    let own = runs.iter().filter(|r| r.worker == Worker::Planner);
    own.fold(Refusals::default(), |sum, r| Refusals {
        beyond: sum.beyond + usize::from(r.beyond),
        refused: sum.refused + usize::from(r.beyond && r.refused),
        repairable: sum.repairable + usize::from(!r.beyond),
        wrongly: sum.wrongly + usize::from(!r.beyond && r.refused),
    })
}
