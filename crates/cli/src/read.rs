//! One capture folder on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_flow::{Progress, ReadSettings, Reading, Stage, read, write_reading};
use dentwright_surface::SpotKind;
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::atomic::AtomicBool;

/// What is read, and where it goes.
#[derive(Args)]
pub struct ReadOptions {
    /// Folder with the photos and capture.toml.
    capture: PathBuf,
    /// Folder to write the reading to.
    #[arg(long)]
    out: PathBuf,
    /// Residual that counts as done, µm.
    #[arg(long, default_value_t = 10.0)]
    finish_limit_um: f64,
    /// Take the still photos of a line board though slid ones are there: the quick look.
    #[arg(long)]
    still: bool,
}

/// Reads a capture and writes its maps, spots and verdict.
pub fn read_command(options: &ReadOptions) -> ExitCode {
    let ReadOptions { capture, out, finish_limit_um, still } = options;
    if !(finish_limit_um.is_finite() && *finish_limit_um > 0.0) {
        return fail("Not read", "the finish limit must be above zero", "Give it in micrometres, for example 10.");
    }
    let settings = ReadSettings { finish_limit_mm: finish_limit_um / 1000.0, still: *still, ..ReadSettings::default() };
    let bar = indicatif::ProgressBar::new(Stage::ALL.len() as u64);
    let progress = |p: Progress| {
        bar.set_position(p.stage as u64);
        bar.set_message(p.stage.name());
    };
    let result = read(capture, &settings, &progress, &AtomicBool::new(false));
    bar.finish_and_clear();
    let reading = match result {
        Ok(reading) => reading,
        Err(error) => return fail("Not read", &error.to_string(), error.next()),
    };
    if let Err(error) = write_reading(&reading, out) {
        return fail("Not read", &error.to_string(), "Choose a folder that can be written to.");
    }
    print!("{}", summary(&reading));
    println!("Written to {}", out.display());
    ExitCode::SUCCESS
}

fn summary(reading: &Reading) -> String {
    let grid = reading.deviation.grid;
    let area_cm2 = reading.deviation.read_fraction() * grid.len() as f64 * grid.step_mm.powi(2) / 100.0;
    let mut text = format!("Read {area_cm2:.0} cm² of the panel, true to scale.\n");
    if reading.spots.is_empty() {
        text += "No low or high stands out.\n";
    }
    for spot in &reading.spots {
        let kind = if spot.kind == SpotKind::Low { "Low " } else { "High" };
        text += &format!(
            "{kind} {:7.1} µm ± {:.1} at x {:.0}, y {:.0} mm, {:.0} x {:.0} mm\n",
            spot.height_mm * 1000.0,
            spot.sigma_mm * 2000.0,
            spot.x_mm,
            spot.y_mm,
            spot.length_mm,
            spot.width_mm
        );
    }
    text += &format!("Finish: {} ({}).\n", verdict(reading), reading.finish.reason);
    text
}

fn verdict(reading: &Reading) -> &'static str {
    match reading.finish.verdict {
        dentwright_surface::Verdict::Done => "done",
        dentwright_surface::Verdict::NotDone => "not done",
        dentwright_surface::Verdict::CannotTell => "cannot tell",
    }
}
