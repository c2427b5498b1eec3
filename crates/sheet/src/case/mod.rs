//! A case on file: a patch, a metal, moves; what comes of them as JSON and maps.

mod build;
mod heights;
mod input;
mod maps;

use crate::moves::{Move, Outcome};
use crate::oil_can::{OilCan, oil_can};
use crate::perform::perform;
use dentwright_surface::Grid;
use input::Case;
use serde::Serialize;
use std::path::{Path, PathBuf};
use std::time::Instant;

/// A case that cannot be run.
#[derive(Debug, thiserror::Error)]
pub enum CaseError {
    /// A file that cannot be read or written.
    #[error("{path}: {source}", path = path.display())]
    File {
        /// The file.
        path: PathBuf,
        /// What the system says.
        source: std::io::Error,
    },
    /// Not the form of a case.
    #[error("the case cannot be read: {0}")]
    Form(#[from] toml::de::Error),
    /// A map that does not fit.
    #[error("{path}: {why}", path = path.display())]
    Map {
        /// The file.
        path: PathBuf,
        /// Why.
        why: String,
    },
    /// Numbers that make no sense.
    #[error("{0}")]
    Wrong(String),
    /// A move that makes no sense.
    #[error("move {number}: {why}")]
    Move {
        /// Counted from 1.
        number: usize,
        /// Why.
        why: String,
    },
}

/// What came of a case.
#[derive(Debug, Clone, Serialize)]
pub struct CaseResult {
    /// All numbers are computed from a model.
    pub word: &'static str,
    /// Move by move; after one that did not converge there are no more.
    pub moves: Vec<MoveResult>,
    /// Stability at the end; none where a move did not converge.
    pub oil_can: Option<OilCan>,
    /// Whether every move converged.
    pub converged: bool,
    /// Newton steps of all moves.
    pub iterations: usize,
    /// Time of all, s.
    pub seconds: f64,
    /// Where the maps' values stand.
    pub grid: Grid,
    /// Cells of the computation, x and y.
    pub cells: [usize; 2],
    /// The program's version.
    pub version: &'static str,
}

/// What came of a move, and its maps.
#[derive(Debug, Clone, Serialize)]
#[serde(untagged)]
pub enum MoveResult {
    /// A move that converged.
    Done {
        /// Its numbers.
        #[serde(flatten)]
        outcome: Outcome,
        /// Its maps.
        maps: Vec<String>,
    },
    /// A move that stopped: no number of it is an answer.
    Stopped {
        /// False.
        converged: bool,
        /// Where and why.
        stopped: String,
        /// `[travel, force]` while in balance.
        curve_until_stopped: Vec<[f64; 2]>,
        /// Newton steps.
        iterations: usize,
        /// Time, s.
        seconds: f64,
    },
}

/// Runs the case file `case` and writes `result.json` and maps into `out`, which is made where it is missing.
pub fn run_case(case: &Path, out: &Path) -> Result<CaseResult, CaseError> {
    let start = Instant::now();
    let file = |path: &Path, source| CaseError::File { path: path.into(), source };
    let text = std::fs::read_to_string(case).map_err(|e| file(case, e))?;
    let input: Case = toml::from_str(&text)?;
    let moves = parse_moves(&input)?;
    let grid = build::grid(&input.patch);
    let mut panel = build::panel(&input, &moves, case.parent().unwrap_or(Path::new(".")))?;
    let off = moves.iter().position(|m| !panel.patch.mesh.holds(m.at[0], m.at[1]));
    if let Some(i) = off {
        return Err(CaseError::Move { number: i + 1, why: "its place is off the patch".into() });
    }
    std::fs::create_dir_all(out).map_err(|e| file(out, e))?;
    let mut result = CaseResult {
        word: "estimate",
        moves: Vec::new(),
        oil_can: None,
        converged: true,
        iterations: 0,
        seconds: 0.0,
        grid,
        cells: [panel.patch.mesh.x.cells(), panel.patch.mesh.y.cells()],
        version: env!("CARGO_PKG_VERSION"),
    };
    for (i, wanted) in moves.iter().enumerate() {
        let outcome = timed(|| perform(&mut panel, wanted));
        result.iterations += outcome.iterations;
        result.converged &= outcome.converged;
        if !outcome.converged {
            result.moves.push(stopped(outcome));
            break;
        }
        let maps = maps::write(&panel, &grid, i + 1, out).map_err(|e| file(out, e))?;
        result.moves.push(MoveResult::Done { outcome, maps });
    }
    if result.converged {
        result.oil_can = oil_can(&panel);
    }
    result.seconds = start.elapsed().as_secs_f64();
    let path = out.join("result.json");
    let json = serde_json::to_string_pretty(&result).expect("plain numbers and words");
    std::fs::write(&path, json).map_err(|e| file(&path, e))?;
    Ok(result)
}

fn parse_moves(input: &Case) -> Result<Vec<Move>, CaseError> {
    let numbered = input.moves.iter().enumerate();
    numbered.map(|(i, m)| m.parse().map_err(|why| CaseError::Move { number: i + 1, why })).collect()
}

fn timed(work: impl FnOnce() -> Outcome) -> Outcome {
    let start = Instant::now();
    let mut outcome = work();
    outcome.seconds = start.elapsed().as_secs_f64();
    outcome
}

fn stopped(outcome: Outcome) -> MoveResult {
    MoveResult::Stopped {
        converged: false,
        stopped: outcome.stopped.unwrap_or_default(),
        curve_until_stopped: outcome.curve,
        iterations: outcome.iterations,
        seconds: outcome.seconds,
    }
}
