//! One capture folder on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_flow::{Progress, ReadSettings, Reading, Stage, read, write_reading};
use dentwright_surface::{FinishLimit, SettleCode, SpotKind, Verdict};
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
    /// Deviation that counts as done, µm.
    #[arg(long, default_value_t = 10.0)]
    finish_limit_um: f64,
    /// Slope of the deviation that counts as done, mrad (µm per mm).
    #[arg(long, default_value_t = 1.0)]
    finish_slope_mrad: f64,
    /// Waves shorter than this are texture, mm.
    #[arg(long, default_value_t = 5.0)]
    finish_scale_mm: f64,
    /// Take the still photos of a line board though slid ones are there: the quick look.
    #[arg(long)]
    still: bool,
}

/// Reads a capture and writes its maps, spots and verdict.
pub fn read_command(options: &ReadOptions) -> ExitCode {
    let ReadOptions { capture, out, finish_limit_um, finish_slope_mrad, finish_scale_mm, still } = options;
    if ![finish_limit_um, finish_slope_mrad, finish_scale_mm].into_iter().all(|v| v.is_finite() && *v > 0.0) {
        let next = "Give micrometres, milliradians and millimetres, for example 10, 1 and 5.";
        return fail("Not read", "the finish limit must be above zero", next);
    }
    let finish =
        FinishLimit { depth_mm: finish_limit_um / 1e3, slope: finish_slope_mrad / 1e3, scale_mm: *finish_scale_mm };
    let settings = ReadSettings { finish, still: *still, ..ReadSettings::default() };
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
    for (spot, finish) in reading.spots.iter().zip(&reading.spot_finish) {
        let kind = if spot.kind == SpotKind::Low { "Low " } else { "High" };
        text += &format!(
            "{kind} {:7.1} µm ± {:.1} at x {:.0}, y {:.0} mm, {:.0} x {:.0} mm: {}\n",
            spot.height_mm * 1000.0,
            spot.sigma_mm * 2000.0,
            spot.x_mm,
            spot.y_mm,
            spot.length_mm,
            spot.width_mm,
            said(finish.verdict)
        );
    }
    text += &format!("Finish: {} ({}).\n", said(reading.finish.verdict), reading.finish.reason);
    if let Some(settle) = reading.finish.settle {
        let doubt = |v: Option<f64>| v.map_or_else(String::new, |mm| format!("{:.1}", 2e3 * mm));
        let next = match settle.code {
            SettleCode::LessDoubt => format!(
                "a reading with ± {} µm there instead of ± {} would tell",
                doubt(settle.needed_sigma_mm),
                doubt(settle.sigma_mm)
            ),
            SettleCode::AtTheLimit => "it lies at the limit; work it once more, or take it as not done".into(),
            SettleCode::ReadTheRest => "read what was not read there".into(),
            SettleCode::Closer => "bring the board closer to read it".into(),
        };
        text += &format!("At x {:.0}, y {:.0} mm: {next}.\n", settle.x_mm, settle.y_mm);
    }
    text
}

/// A verdict in words.
fn said(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Done => "done",
        Verdict::NotDone => "not done",
        Verdict::CannotTell => "cannot tell",
    }
}
