//! The trial: the planner against simple masters on panels it does not know.

use crate::hand::{Hand, Tried};
use crate::masters::{RULES, Rule, work};
use crate::model::{Model, extremes};
use crate::plant::{Damage, Log, Plant};
use crate::propose::{Proposal, ProposeSettings, propose};
use crate::sparse::{Sparse, dot};
use crate::verdict::{Can, Facts, can_be_done};
use dentwright_sheet::paints;
use dentwright_surface::{Map, average};
use rayon::prelude::*;

/// What is tried.
#[derive(Debug, Clone)]
pub struct TrialSettings {
    /// Finish limit, mm.
    pub limit_mm: f64,
    /// Averaging before a place counts, mm.
    pub average_mm: f64,
    /// Moves after which the work is given up.
    pub most_moves: usize,
    /// Moves between two of the planner's readings.
    pub round: usize,
    /// Fine tip and wide tip, radii, mm.
    pub tips_mm: [f64; 2],
}

impl Default for TrialSettings {
    fn default() -> Self {
        Self { limit_mm: 0.02, average_mm: 6.0, most_moves: 40, round: 3, tips_mm: [10.0, 18.0] }
    }
}

/// The true residual may be over the limit by what a reading may be off, mm.
const MET_MM: f64 = 0.002;

/// Who works.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Worker {
    /// The planner.
    Planner,
    /// A simple master.
    Master(Rule),
}

/// What one worker made of one damage.
#[derive(Debug, Clone, Copy)]
pub struct Run {
    /// Which panel.
    pub seed: u64,
    /// Its damage.
    pub damage: Damage,
    /// Greatest deviation before the work, mm.
    pub depth_mm: f64,
    /// Who.
    pub worker: Worker,
    /// Counts.
    pub log: Log,
    /// Largest true residual, mm.
    pub residual_mm: f64,
    /// Plastic strain added.
    pub spent: f64,
    /// Whether the finish limit is met in truth.
    pub met: bool,
    /// Whether the planner said beforehand that it cannot be done.
    pub refused: bool,
    /// Whether the sheet, brought level as it truly is, is an oil can.
    pub beyond: bool,
}

/// What one worker made of all panels.
#[derive(Debug, Clone, Copy)]
pub struct Row {
    /// Who.
    pub worker: Worker,
    /// Panels.
    pub panels: usize,
    /// Panels on which the finish limit is met.
    pub met: usize,
    /// Mean of moves, of readings.
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
}

/// The trial's table, a worker a row.
pub fn table(runs: &[Run]) -> Vec<Row> {
    let row = |worker: Worker| {
        let own: Vec<&Run> = runs.iter().filter(|r| r.worker == worker).collect();
        let n = own.len().max(1) as f64;
        let mean = |of: &dyn Fn(&Run) -> f64| own.iter().map(|r| of(r)).sum::<f64>() / n;
        let mut residuals: Vec<f64> = own.iter().map(|r| r.residual_mm).collect();
        residuals.sort_by(f64::total_cmp);
        let moves = mean(&|r| r.log.moves as f64);
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
        }
    };
    [Worker::Planner].into_iter().chain(RULES.map(Worker::Master)).map(row).collect()
}

/// Lets every worker work on its own copy of so many panels.
pub fn trial(panels: u64, settings: &TrialSettings, heard: &(dyn Fn(&Run) + Sync)) -> Vec<Run> {
    let workers = [Worker::Planner].into_iter().chain(RULES.map(Worker::Master));
    let jobs: Vec<(u64, Worker)> = (0..panels).flat_map(|seed| workers.clone().map(move |w| (seed, w))).collect();
    let runs: Vec<Option<Run>> = jobs
        .into_par_iter()
        .with_max_len(1)
        .map(|(seed, worker)| {
            let run = run(seed, worker, settings)?;
            heard(&run);
            Some(run)
        })
        .collect();
    runs.into_iter().flatten().collect()
}

/// One worker on one panel; none where its hit finds no rest.
pub fn run(seed: u64, worker: Worker, settings: &TrialSettings) -> Option<Run> {
    let mut plant = Plant::draw(seed)?;
    let depth_mm = plant.residual_mm(settings.average_mm);
    let (mut refused, mut beyond) = (false, false);
    match worker {
        Worker::Planner => {
            beyond = plant.beyond_repair().unwrap_or(false);
            refused = plan_and_work(&mut plant, settings);
        }
        Worker::Master(rule) => {
            let (limit, mean) = (settings.limit_mm, settings.average_mm);
            work(&mut plant, rule, limit, mean, settings.tips_mm, settings.most_moves);
        }
    }
    let residual_mm = plant.residual_mm(settings.average_mm);
    Some(Run {
        seed,
        damage: plant.damage,
        depth_mm,
        worker,
        log: plant.log,
        residual_mm,
        spent: plant.spent(),
        met: residual_mm <= settings.limit_mm + MET_MM,
        refused,
        beyond,
    })
}

/// The planner's loop: read, learn, take along, propose, work. Whether it said beforehand that it cannot be done; it
/// works all the same.
fn plan_and_work(plant: &mut Plant, settings: &TrialSettings) -> bool {
    let mut hand = Hand::default();
    let mut map = plant.read();
    let Ok(mut model) = Model::from_reading(&map, &plant.told, &|_| true) else { return false };
    let paint = paints().swap_remove(0);
    let refused = can_be_done(&model, &paint, &Facts { glue: true, ..Facts::default() }).can == Can::No;
    let propose_settings = ProposeSettings {
        limit_mm: settings.limit_mm,
        average_mm: settings.average_mm,
        moves: settings.round,
        tips_mm: settings.tips_mm.to_vec(),
        most_spent: 0.3,
        paint,
        aged: false,
    };
    while plant.log.moves < settings.most_moves {
        let (low, high) = extremes(&average(&map, settings.average_mm));
        if high.max(-low) <= settings.limit_mm {
            break;
        }
        let proposal = propose(&model, &map, &hand, &propose_settings, &|_| true);
        if proposal.moves.is_empty() {
            break;
        }
        for m in &proposal.moves {
            plant.make(m.kind, m.at_mm, m.tip_mm, m.held_mm);
        }
        let next = plant.read();
        let tried = compare(&proposal, &map, &next);
        hand.learn(&tried);
        let _ = model.take(&next, &|_| true)
            || Model::from_reading(&next, &plant.told, &|_| true).is_ok_and(|anew| {
                model = anew;
                true
            });
        map = next;
    }
    refused
}

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
