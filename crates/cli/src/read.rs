//! One capture folder on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_flow::{
    GAUGE_DOUBT_MM, GaugeAsked, KeptReading, Progress, ReadSettings, ReadingFile, Stage, gauged, read, write_kept,
};
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
    /// A depth measured by hand, as `X,Y,DEPTH[,DOUBT[,SPAN[,ANGLE]]]` in mm (above zero for a low, below for a high;
    /// doubt two sigma, 0.05 if not given; span of the gauge's feet, 0 against the sound metal all round; how the feet
    /// stood, 0 side by side, 90 one above the other). May be given again.
    #[arg(long, value_name = "X,Y,DEPTH", value_parser = gauge_of, allow_hyphen_values = true)]
    gauge: Vec<GaugeAsked>,
}

fn gauge_of(text: &str) -> Result<GaugeAsked, String> {
    let numbers: Result<Vec<f64>, _> = text.split(',').map(|one| one.trim().parse::<f64>()).collect();
    let told = numbers.ok().filter(|all| (3..=6).contains(&all.len()));
    let all = told.ok_or("give it as X,Y,DEPTH or X,Y,DEPTH,DOUBT,SPAN,ANGLE in mm, for example -20,5,1.35")?;
    let or = |k: usize, usual: f64| all.get(k).copied().unwrap_or(usual);
    Ok(GaugeAsked {
        x_mm: all[0],
        y_mm: all[1],
        height_mm: -all[2],
        doubt_mm: or(3, GAUGE_DOUBT_MM),
        span_mm: or(4, 0.0),
        angle_deg: or(5, 0.0),
    })
}

/// Reads a capture and writes its maps, spots and verdict.
pub fn read_command(options: &ReadOptions) -> ExitCode {
    let ReadOptions { capture, out, finish_limit_um, finish_slope_mrad, finish_scale_mm, still, gauge } = options;
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
        Ok(reading) => KeptReading::just_made(reading),
        Err(error) => return fail("Not read", &error.to_string(), error.next()),
    };
    let reading = match (!gauge.is_empty()).then(|| gauged(&reading, gauge)) {
        None => reading,
        Some(Ok(joined)) => joined,
        Some(Err(error)) => return fail("Not read", &error.to_string(), error.next()),
    };
    if let Err(error) = write_kept(&reading, out) {
        return fail("Not read", &error.to_string(), "Choose a folder that can be written to.");
    }
    print!("{}", summary(&reading.file));
    println!("Written to {}", out.display());
    ExitCode::SUCCESS
}

fn summary(reading: &ReadingFile) -> String {
    let grid = &reading.grid;
    let area_cm2 = reading.read_fraction * (grid.nx * grid.ny) as f64 * grid.step_mm.powi(2) / 100.0;
    let mut text = format!("Read {area_cm2:.0} cm² of the panel, true to scale.\n");
    if reading.spots.is_empty() {
        text += "No low or high stands out.\n";
    }
    for one in &reading.spots {
        let spot = &one.spot;
        let kind = if spot.kind == SpotKind::Low { "Low " } else { "High" };
        let far = match spot.at_least_mm {
            Some(mm) => format!("at least {:.1} µm", mm * 1000.0),
            None => format!("{:7.1} µm ± {:.1}", spot.height_mm * 1000.0, spot.sigma_mm * 2000.0),
        };
        text += &format!(
            "{kind} {far} at x {:.0}, y {:.0} mm, {:.0} x {:.0} mm: {}\n",
            spot.x_mm,
            spot.y_mm,
            spot.length_mm,
            spot.width_mm,
            one.finish.map_or("not judged", |finish| said(finish.verdict))
        );
    }
    for (number, fold) in reading.folds.iter().enumerate() {
        let what = match fold.kind {
            _ if reading.spots.iter().any(|one| one.spot.folds.contains(&number)) => "part of the low or high above",
            Some(SpotKind::Low) => "part of a low",
            Some(SpotKind::High) => "part of a high",
            None => "whether low or high its rim does not tell",
        };
        text += &format!(
            "Too steep to read at x {:.0}, y {:.0} mm, {:.0} mm across: {what}. Bring the board closer, or measure there.\n",
            fold.x_mm, fold.y_mm, fold.across_mm
        );
    }
    for note in reading.notes.iter().filter(|note| note.code.starts_with("gauge")) {
        text += &format!("{}.\n", capital(&note.text));
    }
    text += &format!("Finish: {} ({}).\n", said(reading.finish.verdict), reading.finish.reason);
    if let Some(settle) = &reading.finish.settle {
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

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// A verdict in words.
fn said(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Done => "done",
        Verdict::NotDone => "not done",
        Verdict::CannotTell => "cannot tell",
    }
}
