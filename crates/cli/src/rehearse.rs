//! The planner's trial, on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_flow::rehearse;
use std::path::PathBuf;
use std::process::ExitCode;

/// How many panels, from which seed on, and where the results go.
#[derive(Args)]
pub struct RehearseOptions {
    /// Let the planner and three simple masters work on panels nobody knows.
    #[arg(long, required = true)]
    trial: bool,
    /// Panels.
    #[arg(short, long, default_value_t = 40, value_parser = clap::value_parser!(u64).range(1..=1000))]
    number: u64,
    /// Seed of the first.
    #[arg(long, default_value_t = 1000, value_parser = clap::value_parser!(u64).range(0..1_000_000_000))]
    seed: u64,
    /// Folder for runs.jsonl, trial.json and trial.md; runs that stand there are not made again.
    #[arg(long)]
    out: PathBuf,
}

/// Runs the trial and says its table.
pub fn rehearse_command(options: &RehearseOptions) -> ExitCode {
    let seeds = options.seed..options.seed + options.number;
    let heard = |run: &dentwright_plan::Run| {
        eprintln!(
            "{} {:?} {:?}: {} moves, {:.0} µm left",
            run.seed,
            run.damage,
            run.worker,
            run.log.moves,
            1e3 * run.residual_mm
        );
    };
    match rehearse(seeds, &options.out, &heard) {
        Ok(found) => {
            print!("{}", found.words());
            println!("Written to {}", options.out.display());
            ExitCode::SUCCESS
        }
        Err(error) => fail("Not rehearsed", &error.to_string(), "Choose a folder that can be written to."),
    }
}
