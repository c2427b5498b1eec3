//! How the command line says that something did not work.

use std::process::ExitCode;

/// One line of what is wrong with what, one of what to do.
pub fn fail(done: &str, what: &str, next: &str) -> ExitCode {
    eprintln!("{done}: {what}.\n{next}");
    ExitCode::FAILURE
}
