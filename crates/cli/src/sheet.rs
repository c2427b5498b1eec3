//! Moves on a patch of sheet metal, tried on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_sheet::{CaseError, CaseResult, MoveResult, run_case};
use std::path::PathBuf;
use std::process::ExitCode;

/// Which case, and where its answer goes.
#[derive(Args)]
pub struct SheetOptions {
    /// Case file: patch, metal, moves (docs/reference.md).
    case: PathBuf,
    /// Folder for result.json and the maps.
    #[arg(long)]
    out: PathBuf,
}

/// Runs a case, says what came of each move, and fails where one did not converge.
pub fn sheet_command(options: &SheetOptions) -> ExitCode {
    let result = match run_case(&options.case, &options.out) {
        Ok(result) => result,
        Err(error) => return fail("Not computed", &error.to_string(), next(&error)),
    };
    print!("{}", summary(&result));
    println!("Written to {}", options.out.display());
    if result.converged {
        return ExitCode::SUCCESS;
    }
    let what = "the last move found no balance; no number of it is an answer";
    fail("Stopped", what, "Give it more steps, a smaller travel, or a finer patch.")
}

fn next(error: &CaseError) -> &'static str {
    match error {
        CaseError::File { .. } => "Check the name of the file, and that the folder can be written to.",
        CaseError::Form(_) => "Correct that line of the case file; docs/reference.md lists every field.",
        CaseError::Map { .. } => "Give a map of the patch's own grid, NPY, float.",
        CaseError::Wrong(_) | CaseError::Move { .. } => "Correct that number in the case file.",
    }
}

/// A model's numbers, one line a move.
fn summary(result: &CaseResult) -> String {
    let mut text = String::from("Computed from a model of the metal; see docs/theory.md for its doubt.\n");
    for (number, one) in result.moves.iter().enumerate() {
        let said = match one {
            MoveResult::Done { outcome, .. } => {
                format!("peak force {:.0} N, {:+.3} mm left at the tip", outcome.peak_force_n, outcome.at_tip_left_mm)
            }
            MoveResult::Stopped { stopped, .. } => format!("stopped: {stopped}"),
        };
        text += &format!("Move {}: {said}\n", number + 1);
    }
    text
}
