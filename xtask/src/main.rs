//! Chores of the workspace.
//!
//! **Entry points.** `cargo xtask check` runs every check and test, the same as CI. `cargo xtask demo`
//! builds everything, reads rendered captures and serves the app.
//!
//! **Conventions.** One release profile for all of it, so that nothing is compiled twice. A step that fails
//! ends the run and names the command that repeats it alone.

mod browser;
mod check;
mod demo;
mod licences;
mod links;
mod python;
mod run;
mod spdx;
mod tally;
mod tools;
mod web;

use anyhow::Result;
use clap::{Parser, Subcommand};
use std::path::PathBuf;
use std::process::ExitCode;

/// Chores of the workspace.
#[derive(Parser)]
#[command(name = "cargo xtask")]
struct Arguments {
    #[command(subcommand)]
    chore: Chore,
}

#[derive(Subcommand)]
enum Chore {
    /// Run every check and test, as CI does.
    Check {
        /// Begin at the step of this name (as the headings show it).
        #[arg(long)]
        from: Option<String>,
    },
    /// Build everything, fill a demo shop and serve it.
    Demo(demo::DemoOptions),
}

fn main() -> ExitCode {
    let outcome = match Arguments::parse().chore {
        Chore::Check { from } => check::check(from.as_deref()),
        Chore::Demo(options) => demo::demo(&options),
    };
    outcome.unwrap_or_else(|why| {
        eprintln!("\n{why:#}");
        ExitCode::FAILURE
    })
}

/// The folder of the workspace.
fn root() -> Result<PathBuf> {
    let here = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    Ok(here.parent().map(PathBuf::from).unwrap_or(here))
}
