//! `cargo xtask accept`: what the tests produce now becomes what they expect.

use crate::run::{Call, closing, heading};
use crate::{root, web};
use anyhow::Result;
use std::process::ExitCode;

/// Variable that makes our own golden tests write instead of compare.
const ACCEPT: &str = "DENTWRIGHT_ACCEPT";

/// Runs the tests with goldens written instead of compared, writes the API client, lists what changed.
pub fn accept() -> Result<ExitCode> {
    let root = root()?;
    let since = heading("goldens");
    web::install(&root)?;
    web::build(&root)?;
    let tests = Call::new(&root, "cargo test --release --workspace --no-fail-fast");
    let outcome = tests.variable(ACCEPT, "1").variable("INSTA_UPDATE", "always").run_counted()?;
    Call::new(&root, "cargo build --release --package dentwright-cli").run()?;
    Call::new(&root.join("web"), "npm run api").run()?;
    closing("goldens", since, "taken");
    println!("\nChanged, to be looked at before they are committed:");
    Call::new(&root, "git status --short").run()?;
    Ok(if outcome.succeeded { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
