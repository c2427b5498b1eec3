//! The trial: the planner against simple masters on panels it does not know.

use crate::compare::compare;
use crate::damage::Damage;
use crate::hand::Hand;
use crate::masters::{RULES, Rule, work};
use crate::model::{Model, largest};
use crate::plant::{Log, Plant};
use crate::propose::{ProposeSettings, propose};
use crate::tips::Tips;
use crate::verdict::{Can, Facts, can_be_done};
use crate::ways::Ways;
use crate::went_over::went_over;
use dentwright_sheet::paints;
use dentwright_surface::average;
use rayon::prelude::*;
use serde::{Deserialize, Serialize};

/// What is tried.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct TrialSettings {
    /// Finish limit, mm.
    pub limit_mm: f64,
    /// Averaging before a place counts, mm.
    pub average_mm: f64,
    /// Moves after which the work is given up.
    pub most_moves: usize,
    /// Moves between two of the planner's readings at most.
    pub round: usize,
    /// Fine tip and wide tip, radii, mm.
    pub tips_mm: [f64; 2],
}

impl Default for TrialSettings {
    fn default() -> Self {
        Self { limit_mm: 0.02, average_mm: 6.0, most_moves: 30, round: 3, tips_mm: [10.0, 18.0] }
    }
}

/// The true residual may be over the limit by what a reading may be off, mm.
const MET_MM: f64 = 0.002;

/// Who works.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Worker {
    /// The planner.
    Planner,
    /// A simple master.
    Master(Rule),
}

impl Worker {
    /// All of them, the planner first.
    pub fn all() -> [Self; 4] {
        let [a, b, c] = RULES.map(Self::Master);
        [Self::Planner, a, b, c]
    }
}

/// What one worker made of one damage.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
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
    /// Whether the sheet, brought level as it truly is, is an oil can; told with the planner's run alone.
    pub beyond: bool,
}

/// Lets workers work on their own copies of so many panels from a seed on.
pub fn trial(
    seeds: std::ops::Range<u64>,
    workers: &[Worker],
    settings: &TrialSettings,
    heard: &(dyn Fn(&Run) + Sync),
) -> Vec<Run> {
    let jobs: Vec<(u64, Worker)> = seeds.flat_map(|seed| workers.iter().map(move |w| (seed, *w))).collect();
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
            beyond = plant.beyond_repair();
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

/// What the planner goes by in a trial.
fn settings_of(settings: &TrialSettings) -> ProposeSettings {
    ProposeSettings {
        limit_mm: settings.limit_mm,
        average_mm: settings.average_mm,
        moves: settings.round,
        tips: Tips::even(&settings.tips_mm),
        most_spent: 0.3,
        paint: paints().swap_remove(0),
        aged: false,
        panel_c: 20.0,
        most_c: 50.0,
        prove: true,
    }
}

/// The planner's loop: read, learn, take along, propose, work. Whether it said beforehand that it cannot be done; it
/// works all the same.
fn plan_and_work(plant: &mut Plant, settings: &TrialSettings) -> bool {
    let mut hand = Hand::default();
    let mut map = plant.read();
    let Ok(mut model) = Model::from_reading(&map, &plant.told, &|_| true) else { return false };
    let propose_settings = settings_of(settings);
    let facts = Facts { glue: true, ..Facts::default() };
    let refused = can_be_done(&model, &propose_settings.paint, &facts).can == Can::No;
    while plant.log.moves < settings.most_moves {
        let stands_out = largest(&average(&map, settings.average_mm));
        if stands_out <= settings.limit_mm {
            break;
        }
        let proposal = propose(&model, &map, &hand, &propose_settings, &Ways::open());
        if proposal.moves.is_empty() {
            break;
        }
        for m in &proposal.moves {
            (0..m.times).for_each(|_| plant.make(m.act, m.at_mm, m.tip.radius, m.held_mm));
        }
        let next = plant.read();
        let tried = compare(&proposal, &map, &next);
        for (m, one) in proposal.moves.iter().zip(&tried) {
            let off = one.times as f64 * one.left_mm - m.leaves_mm[0];
            plant.log.foretold += 1;
            plant.log.within += usize::from(off.abs() <= 2.0 * m.leaves_mm[1].hypot(one.sigma_mm));
        }
        hand.learn(&tried);
        let _ = model.follow(&tried, &next, &|_| true);
        map = next;
        if went_over(stands_out, largest(&average(&map, settings.average_mm))).is_some() {
            break;
        }
    }
    refused
}
