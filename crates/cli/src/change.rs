//! Readings of one damage compared on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_flow::{Compared, KeptReading, SeriesEntry, compare, series, write_change};
use dentwright_surface::{LaidBy, Way};
use std::path::PathBuf;
use std::process::ExitCode;

/// Which readings, and where the change goes.
#[derive(Args)]
pub struct ChangeOptions {
    /// Reading folders (or zips of them) of one damage, oldest first; the last two are compared, all make the series.
    #[arg(required = true, num_args = 2..)]
    readings: Vec<PathBuf>,
    /// Folder to write the change to.
    #[arg(long)]
    out: PathBuf,
    /// Compare the last with the first instead of the one before it.
    #[arg(long)]
    whole: bool,
}

/// Compares readings and writes what changed.
pub fn change_command(options: &ChangeOptions) -> ExitCode {
    let mut readings = Vec::new();
    for path in &options.readings {
        match KeptReading::open(path) {
            Ok(reading) => readings.push(reading),
            Err(error) => return fail("Not compared", &format!("{}: {error}", path.display()), error.next()),
        }
    }
    let last = readings.len() - 1;
    let first = if options.whole { 0 } else { last - 1 };
    let compared = match compare(&readings[first], &readings[last]) {
        Ok(compared) => compared,
        Err(error) => return fail("Not compared", &error.to_string(), error.next()),
    };
    let entries: Vec<SeriesEntry> = series(&readings).iter().map(SeriesEntry::from).collect();
    if let Err(error) = write_change(&compared, &entries, &options.out) {
        return fail("Not compared", &error.to_string(), "Choose a folder that can be written to.");
    }
    print!("{}{}", summary(&compared), curve(options, &entries));
    println!("Written to {}", options.out.display());
    ExitCode::SUCCESS
}

fn summary(compared: &Compared) -> String {
    let mut text = match compared.laying.by {
        LaidBy::Tags { count, moved: 0 } => format!("Laid on each other by {count} tags"),
        LaidBy::Tags { count, moved } => format!("Laid on each other by {count} tags; {moved} were stuck elsewhere"),
        LaidBy::Shape { likeness } => {
            format!(
                "The tags were replaced; laid on each other by the paint's texture, {:.0} % alike",
                100.0 * likeness
            )
        }
    };
    text += &format!(", to ± {:.2} mm.\n", 2.0 * compared.laying.place_sigma_mm);
    if compared.change.worked.is_empty() {
        text += "Nothing changed beyond the doubt.\n";
    }
    for w in &compared.change.worked {
        let way = if w.way == Way::Better { "Better" } else { "Worse " };
        text += &format!(
            "{way} {:+7.1} µm ± {:.1} at x {:.0}, y {:.0} mm: from {:.1} to {:.1} µm, {:.0} mm²\n",
            w.change_mm * 1e3,
            w.sigma_mm * 2e3,
            w.x_mm,
            w.y_mm,
            w.before_mm * 1e3,
            w.after_mm * 1e3,
            w.area_mm2
        );
    }
    let (up, down) = (compared.change.raised, compared.change.lowered);
    text += &format!(
        "Moved up {:.1} ± {:.1} mm³, down {:.1} ± {:.1} mm³.\n",
        up.mm3,
        2.0 * up.sigma_mm3,
        down.mm3,
        2.0 * down.sigma_mm3
    );
    text
}

/// What was left, reading by reading.
fn curve(options: &ChangeOptions, entries: &[SeriesEntry]) -> String {
    let line = |(path, e): (&PathBuf, &SeriesEntry)| {
        let r = e.residual;
        let laid = if e.laying.is_some() { "" } else { " (not laid on the last)" };
        format!(
            "{}: largest {:.1} µm ± {:.1}, {:.1} ± {:.1} mm³ left{laid}\n",
            path.display(),
            r.largest_mm * 1e3,
            r.sigma_mm * 2e3,
            r.volume.mm3,
            2.0 * r.volume.sigma_mm3
        )
    };
    options.readings.iter().zip(entries).map(line).collect()
}
