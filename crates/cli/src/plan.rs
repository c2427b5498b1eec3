//! The next moves from a reading, on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_flow::{KeptReading, PlanSettings, plan_repair, write_plan};
use dentwright_plan::{Drawn, Facts, Hand, InnerSide, Placing, parse_rack};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Which reading, what is known, and where the plan goes.
#[derive(Args)]
pub struct PlanOptions {
    /// Reading folder, or a zip of it.
    reading: PathBuf,
    /// Folder for plan.json, plan.txt and plan.svg.
    #[arg(long)]
    out: PathBuf,
    /// What is behind the panel, TOML (docs/reference.md); left out: whether a bar reaches is not known.
    #[arg(long)]
    inner: Option<PathBuf>,
    /// The shop's tools, TOML; left out: the starter rack.
    #[arg(long)]
    rack: Option<PathBuf>,
    /// How far your lift comes out of what you mean, and its doubt: gain,sigma; left out: 1 ± 0.4, learned from readings.
    #[arg(long, value_parser = hand)]
    hand: Option<Hand>,
    /// Number of the low or high in the reading's list, from 1; left out: the first, which is the deepest.
    #[arg(long, value_parser = clap::value_parser!(u16).range(1..))]
    spot: Option<u16>,
    /// Metal on file.
    #[arg(long, default_value = "steel_bh180_panel")]
    metal: String,
    /// Thickness as measured, mm; left out: the metal's likely one.
    #[arg(long)]
    thickness_mm: Option<f64>,
    /// Paint on file.
    #[arg(long, default_value = "factory")]
    paint: String,
    /// The paint is aged or a second coat.
    #[arg(long)]
    aged: bool,
    /// Temperature of the panel now, °C.
    #[arg(long, default_value_t = 20.0, allow_hyphen_values = true)]
    panel_c: f64,
    /// Warmest the paint may get, °C: the lowest limit that applies.
    #[arg(long, default_value_t = 50.0)]
    most_c: f64,
    /// Glue on file, where a tab may be glued on.
    #[arg(long)]
    glue: Option<String>,
    /// Finish limit, µm; left out: the reading's.
    #[arg(long)]
    finish_limit_um: Option<f64>,
    /// Moves between two readings at most.
    #[arg(long, default_value_t = 3)]
    moves: usize,
    /// Rounds foretold at most.
    #[arg(long, default_value_t = 3)]
    rounds: usize,
    /// A rule of the vehicle maker that forbids the repair, in its words.
    #[arg(long)]
    makers_rule: Option<String>,
    /// What this repair and a conventional one cost: ours,conventional.
    #[arg(long, value_parser = two)]
    costs: Option<(f64, f64)>,
}

fn two(text: &str) -> Result<(f64, f64), String> {
    let wrong = || format!("{text} are not two numbers; write them as 1.1,0.2");
    let (a, b) = text.split_once(',').ok_or_else(wrong)?;
    let number = |v: &str| v.trim().parse::<f64>().ok().filter(|v| v.is_finite() && *v >= 0.0).ok_or_else(wrong);
    Ok((number(a)?, number(b)?))
}

fn hand(text: &str) -> Result<Hand, String> {
    let (gain, sigma) = two(text)?;
    if !(0.3..=2.5).contains(&gain) || !(0.01..=1.0).contains(&sigma) {
        return Err("a hand's gain is 0.3 to 2.5 and its doubt 0.01 to 1".into());
    }
    Ok(Hand::told(gain, sigma))
}

/// Plans, writes the plan, and says it.
pub fn plan_command(options: &PlanOptions) -> ExitCode {
    let reading = match KeptReading::open(&options.reading) {
        Ok(reading) => reading,
        Err(error) => return fail("Not planned", &format!("{}: {error}", options.reading.display()), error.next()),
    };
    let settings = match settings(options) {
        Ok(settings) => settings,
        Err(what) => return fail("Not planned", &what, "Correct that file; docs/reference.md lists every field."),
    };
    let file = match plan_repair(&reading, &settings, None, &|_| true) {
        Ok(made) => made.file,
        Err(error) => return fail("Not planned", &error.to_string(), error.next()),
    };
    if let Err(error) = write_plan(&file, &reading, &options.out) {
        return fail("Not planned", &error.to_string(), "Choose a folder that can be written to.");
    }
    print!("{}", file.words());
    println!("Written to {}", options.out.display());
    ExitCode::SUCCESS
}

fn settings(options: &PlanOptions) -> Result<PlanSettings, String> {
    let usual = PlanSettings::default();
    let behind = options.inner.as_deref().map(|path| {
        let side: InnerSide = toml::from_str(&text(path)?).map_err(|e| format!("{}: {e}", path.display()))?;
        side.check()
            .map_err(|e| format!("{}: {e}", path.display()))
            .map(|()| Drawn { side, lies: Placing::at([0.0; 2]) })
    });
    let rack =
        options.rack.as_deref().map(|path| parse_rack(&text(path)?).map_err(|e| format!("{}: {e}", path.display())));
    Ok(PlanSettings {
        spot: options.spot.map(|n| usize::from(n) - 1),
        metal: options.metal.clone(),
        thickness_mm: options.thickness_mm,
        behind: behind.transpose()?,
        rack: rack.transpose()?.unwrap_or(usual.rack),
        hand: options.hand.clone().unwrap_or(usual.hand),
        paint: options.paint.clone(),
        glue: options.glue.clone(),
        panel_c: options.panel_c,
        most_c: options.most_c,
        limit_mm: options.finish_limit_um.map(|um| 1e-3 * um),
        moves: options.moves,
        rounds: options.rounds,
        facts: Facts {
            makers_rule: options.makers_rule.clone(),
            aged: options.aged,
            costs: options.costs.map(|(ours, conventional)| [ours, conventional]),
            ..Facts::default()
        },
    })
}

fn text(path: &Path) -> Result<String, String> {
    std::fs::read_to_string(path).map_err(|e| format!("{} cannot be opened ({e})", path.display()))
}
