//! A body line of a reading looked along on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_flow::{KeptReading, body_line};
use std::path::PathBuf;
use std::process::ExitCode;

/// Which reading, and where the line runs.
#[derive(Args)]
pub struct LineOptions {
    /// Reading folder, or a zip of it.
    reading: PathBuf,
    /// Where the line begins: x,y in the reading's panel frame, mm.
    #[arg(long, value_parser = place, allow_hyphen_values = true)]
    from: (f64, f64),
    /// Where it ends.
    #[arg(long, value_parser = place, allow_hyphen_values = true)]
    to: (f64, f64),
}

/// A place written as `x,y`.
fn place(text: &str) -> Result<(f64, f64), String> {
    let wrong = || format!("{text} is no place; write x,y in mm, for example -40,12.5");
    let (x, y) = text.split_once(',').ok_or_else(wrong)?;
    let number = |v: &str| v.trim().parse::<f64>().ok().filter(|v| v.is_finite()).ok_or_else(wrong);
    Ok((number(x)?, number(y)?))
}

/// Says how the line runs, station by station.
pub fn line_command(options: &LineOptions) -> ExitCode {
    let reading = match KeptReading::open(&options.reading) {
        Ok(reading) => reading,
        Err(error) => return fail("Not told", &format!("{}: {error}", options.reading.display()), error.next()),
    };
    let report = match body_line(&reading, options.from, options.to) {
        Ok(report) => report,
        Err(error) => return fail("Not told", &error.to_string(), error.next()),
    };
    println!("The panel turns by {:.1} mrad over 24 mm across the line.", report.turn_mrad.abs());
    println!("along, mm   height, µm      sideways, mm    sharpness");
    for s in &report.stations {
        println!(
            "{:9.1} {:+7.1} ± {:4.1}  {:+6.2} ± {:4.2}  {:5.2} ± {:4.2}",
            s.along_mm,
            1e3 * s.height_mm,
            2e3 * s.height_sigma_mm,
            s.sideways_mm,
            2.0 * s.sideways_sigma_mm,
            s.sharpness,
            2.0 * s.sharpness_sigma
        );
    }
    ExitCode::SUCCESS
}
