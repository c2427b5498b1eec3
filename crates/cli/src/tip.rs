//! Where the tip stands, on the command line.

use crate::failure::fail;
use clap::Args;
use dentwright_flow::{AimFacts, KeptReading, TipFile, TipFrame, TipPhoto, TipSettings, find_tip, write_tip};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Two photos, and where the answer goes.
#[derive(Args)]
pub struct TipOptions {
    /// Photo of the lines before.
    before: PathBuf,
    /// Photo while the tip is leaned on lightly, from the same place.
    loaded: PathBuf,
    /// Folder to write tip.json and the marked photo to.
    #[arg(long)]
    out: PathBuf,
    /// Where the tip should stand: x,y in mm.
    #[arg(long, allow_hyphen_values = true, value_parser = place)]
    aim: Option<[f64; 2]>,
    /// Reading of this panel (folder or zip): places are then told in its frame, and its curve is known.
    #[arg(long)]
    reading: Option<PathBuf>,
    /// Side of the tags' black squares, mm, where there is no reading.
    #[arg(long, default_value_t = TipSettings::default().tag_mm)]
    tag_mm: f64,
}

fn place(text: &str) -> Result<[f64; 2], String> {
    let numbers: Vec<f64> =
        text.split(',').filter_map(|n| n.trim().parse().ok()).filter(|n: &f64| n.is_finite()).collect();
    numbers.try_into().map_err(|_| "give two numbers in mm, for example 12.5,-8".into())
}

/// Finds the tip and writes what is told of it.
pub fn tip_command(options: &TipOptions) -> ExitCode {
    let failed = |what: &str, next: &str| fail("Not found", what, next);
    if !(options.tag_mm.is_finite() && options.tag_mm > 0.0) {
        return failed("the tags' side must be above zero", "Measure the black square of a tag, in mm.");
    }
    let reading = match options.reading.as_deref().map(KeptReading::open).transpose() {
        Ok(reading) => reading,
        Err(error) => return failed(&error.to_string(), error.next()),
    };
    let opened = |path: &Path| {
        let unread = |why: std::io::Error| format!("the photo {} cannot be opened ({why})", path.display());
        std::fs::read(path).map_err(unread)
    };
    let (before, loaded) = match opened(&options.before).and_then(|b| Ok((b, opened(&options.loaded)?))) {
        Ok(both) => both,
        Err(what) => return failed(&what, "Give two photos: before, and while the tip is leaned on."),
    };
    let names = [&options.before, &options.loaded].map(|p| p.display().to_string());
    let settings = TipSettings { tag_mm: options.tag_mm, aim_mm: options.aim, ..TipSettings::default() };
    let [before, loaded] = [(&names[0], &before), (&names[1], &loaded)].map(|(name, bytes)| TipPhoto { name, bytes });
    let tip = match find_tip(before, loaded, &settings, reading.as_ref()) {
        Ok(tip) => tip,
        Err(error) => return failed(&error.to_string(), error.next()),
    };
    if let Err(error) = write_tip(&tip, &options.out) {
        return failed(&error.to_string(), "Choose a folder that can be written to.");
    }
    print!("{}", summary(&tip.file));
    println!("Written to {}", options.out.display());
    ExitCode::SUCCESS
}

fn summary(tip: &TipFile) -> String {
    let [x, y] = tip.place_mm;
    let frame = match tip.frame {
        TipFrame::Reading => "in the reading's frame",
        TipFrame::Tags => "from the middle of the tags, x to the photo's right, y up",
    };
    let mut text = format!("The tip stands at x {x:.1}, y {y:.1} mm, ± {:.1} ({frame}).\n", 2.0 * tip.largest_sigma_mm);
    if let Some(aim) = &tip.aim {
        text += &against(aim);
    }
    text += &format!("Beside it the lines moved by {:.2} of their spacing", tip.lines_moved);
    text += &format!("; the camera had moved by {:.1} px, which was undone.\n", tip.camera_moved_px);
    text
}

fn against(aim: &AimFacts) -> String {
    let side = |v: f64, plus: &str, minus: &str| format!("{:.1} mm {}", v.abs(), if v < 0.0 { minus } else { plus });
    let (across, up) = (side(aim.off_mm[0], "right", "left"), side(aim.off_mm[1], "above", "below"));
    let off = format!("{:.1} mm ± {:.1} from the aim", aim.distance_mm, 2.0 * aim.sigma_mm);
    if aim.distance_mm < 2.0 * aim.sigma_mm {
        return format!("It is {off}: on the aim as far as can be told.\n");
    }
    format!("It is {off}: {across} and {up} of it, at {:.0}°.\n", aim.direction_deg)
}
