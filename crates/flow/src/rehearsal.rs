//! The planner's trial, kept run by run, so that one that was stopped goes on where it stood.

use crate::write::WriteError;
use dentwright_plan::{Refusals, Row, Run, TrialSettings, Worker, refusals, run, table};
use rayon::prelude::*;
use serde::{Deserialize, Serialize};
use std::io::Write;
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::Mutex;

/// File of the runs, a line of JSON each.
const RUNS: &str = "runs.jsonl";

/// `trial.json`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TrialFile {
    /// First seed, and the one after the last.
    pub seeds: [u64; 2],
    /// Finish limit, mm.
    pub limit_mm: f64,
    /// Moves after which a panel is given up.
    pub most_moves: usize,
    /// A worker a row, over the panels that can be repaired.
    pub table: Vec<Row>,
    /// Whether what cannot be repaired was told.
    pub refusals: Refusals,
    /// Panels whose hit found no rest; they are not among the runs.
    pub not_drawn: usize,
    /// Version of the program.
    pub version: String,
}

/// Lets the planner and the masters work on the panels of these seeds, and lays down `runs.jsonl`, `trial.json` and
/// `trial.md`. Runs that stand in `runs.jsonl` are not made again; `heard` hears every new one.
///
/// # Errors
/// The disk says no.
pub fn rehearse(seeds: Range<u64>, dir: &Path, heard: &(dyn Fn(&Run) + Sync)) -> Result<TrialFile, WriteError> {
    let disk = |path: PathBuf| move |why| WriteError::Disk { path, why };
    std::fs::create_dir_all(dir).map_err(disk(dir.to_owned()))?;
    let path = dir.join(RUNS);
    let text = std::fs::read_to_string(&path).unwrap_or_default();
    let kept: Vec<Run> = text.lines().filter_map(|l| serde_json::from_str(l).ok()).collect();
    let kept: Vec<Run> = kept.into_iter().filter(|r| seeds.contains(&r.seed)).collect();
    let done = |seed: u64, worker: Worker| kept.iter().any(|r| r.seed == seed && r.worker == worker);
    let jobs: Vec<(u64, Worker)> =
        seeds.clone().flat_map(|s| Worker::all().map(|w| (s, w))).filter(|(s, w)| !done(*s, *w)).collect();
    let file = std::fs::OpenOptions::new().create(true).append(true).open(&path).map_err(disk(path.clone()))?;
    let file = Mutex::new(file);
    let settings = TrialSettings::default();
    let made: Vec<Option<Run>> = (jobs.into_par_iter().with_max_len(1))
        .map(|(seed, worker)| {
            let Some(run) = run(seed, worker, &settings) else { return Ok(None) };
            let line = serde_json::to_string(&run).map_err(|e| WriteError::Encode(e.to_string()))?;
            writeln!(file.lock().expect("no one panics holding it"), "{line}").map_err(disk(path.clone()))?;
            heard(&run);
            Ok(Some(run))
        })
        .collect::<Result<_, WriteError>>()?;
    let not_drawn = made.iter().filter(|r| r.is_none()).count() / Worker::all().len();
    let runs: Vec<Run> = kept.into_iter().chain(made.into_iter().flatten()).collect();
    let found = TrialFile {
        seeds: [seeds.start, seeds.end],
        limit_mm: settings.limit_mm,
        most_moves: settings.most_moves,
        table: table(&runs),
        refusals: refusals(&runs),
        not_drawn,
        version: env!("CARGO_PKG_VERSION").into(),
    };
    let json = serde_json::to_vec_pretty(&found).map_err(|e| WriteError::Encode(e.to_string()))?;
    for (name, bytes) in [("trial.json", json), ("trial.md", found.words().into_bytes())] {
        std::fs::write(dir.join(name), bytes).map_err(disk(dir.join(name)))?;
    }
    Ok(found)
}

impl TrialFile {
    /// The table in Markdown.
    #[must_use]
    pub fn words(&self) -> String {
        let mut text = format!(
            "Panels {} to {}, limit {:.0} µm, given up after {} moves.\n\n\
             | who | panels | limit met | moves | readings | taps | left, median | plastic strain spent | paint strain, most | snaps |\n\
             |---|---|---|---|---|---|---|---|---|---|\n",
            self.seeds[0],
            self.seeds[1] - 1,
            1e3 * self.limit_mm,
            self.most_moves
        );
        for r in &self.table {
            let who = match r.worker {
                Worker::Planner => "planner".to_owned(),
                Worker::Master(rule) => format!("{rule:?}"),
            };
            text += &format!(
                "| {who} | {} | {} | {:.1} | {:.1} | {:.0} % | {:.0} µm | {:.3} | {:.3} | {} |\n",
                r.panels,
                r.met,
                r.moves,
                r.readings,
                100.0 * r.taps,
                1e3 * r.residual_mm,
                r.spent,
                r.paint_strain,
                r.snaps
            );
        }
        let r = self.refusals;
        text + &format!(
            "\nBeyond repair: {}, of these refused {}. Repairable: {}, of these refused wrongly {}.\n",
            r.beyond, r.refused, r.repairable, r.wrongly
        )
    }
}
