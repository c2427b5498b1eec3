//! Before and after for the template: the change map, what got better and worse, the series of the repair.

use serde_json::{Value, json};
use std::fmt::Write as _;
use typst::foundations::Bytes;

use crate::map;
use crate::view::Setting;
use crate::{Change, ReportError, SeriesStep, Worked};

/// Most areas in the table; the rest is counted in the sums.
const MOST_AREAS: usize = 10;

pub(crate) fn change(change: &Change, with: &mut Setting) -> Result<Value, ReportError> {
    let picture = change.map.as_ref().and_then(|map| map::draw(map, &[], None, &with.format));
    let map = picture.map(|picture| {
        let mut about = picture.about;
        about["file"] = Value::String(with.pictures.add(Bytes::new(picture.rgb)));
        about
    });
    let volume =
        |(mm3, sigma): (f64, f64)| format!("{} ± {}", with.format.number(mm3, 1), with.format.number(2.0 * sigma, 1));
    let up = [("up", volume(change.raised_mm3)), ("down", volume(change.lowered_mm3))];
    let up: Vec<(&str, &str)> = up.iter().map(|(name, text)| (*name, text.as_str())).collect();
    let moved = with.words.fill("change-moved", &up)?;
    let laid = with.words.say(if change.by_tags { "change-by-tags" } else { "change-by-texture" })?;
    let rows = change.worked.iter().take(MOST_AREAS).map(|one| area(one, with)).collect::<Result<Vec<_>, _>>()?;
    Ok(json!({ "map": map, "moved": moved, "laid": laid, "areas": rows, "series": series(&change.series, with)? }))
}

fn area(one: &Worked, with: &Setting) -> Result<Value, ReportError> {
    Ok(json!({
        "way": with.words.say(if one.better { "change-better" } else { "change-worse" })?,
        "before": with.format.height(one.before_mm),
        "after": with.format.height(one.after_mm),
        "change": doubted(one.change_mm, one.sigma_mm, with),
    }))
}

/// A height with twice its standard deviation.
fn doubted(mm: f64, sigma_mm: f64, with: &Setting) -> String {
    format!("{} ± {}", with.format.height(mm), with.format.height(2.0 * sigma_mm))
}

/// Small maps of one range in a row, and the curve of what was left; nothing for fewer than two readings.
fn series(steps: &[SeriesStep], with: &mut Setting) -> Result<Value, ReportError> {
    if steps.len() < 2 {
        return Ok(Value::Null);
    }
    let most = steps.iter().map(|step| step.largest_mm.abs()).fold(0.01, f64::max);
    let mut shown = Vec::new();
    for step in steps {
        let picture = step.map.as_ref().and_then(|map| map::draw(map, &[], Some(most), &with.format));
        let small = picture.map(|p| {
            let file = with.pictures.add(Bytes::new(p.rgb));
            json!({ "file": file, "nx": p.about["nx"], "ny": p.about["ny"], "aspect": p.about["aspect"] })
        });
        let date = step.date.map(|date| with.format.date(date, &with.words)).transpose()?;
        let left = doubted(step.largest_mm, step.sigma_mm, with);
        shown.push(
            json!({ "map": small, "date": date, "left": left, "volume": with.format.number(step.volume_mm3, 1) }),
        );
    }
    let file = with.pictures.add(Bytes::from_string(curve(steps)));
    Ok(json!({ "steps": shown, "curve": file }))
}

/// The volume that was left, reading by reading, on a scale of powers of ten: a repair goes through three of them.
fn curve(steps: &[SeriesStep]) -> String {
    const W: f64 = 340.0;
    const H: f64 = 110.0;
    let (left, right, top, bottom) = (34.0, 10.0, 8.0, 10.0);
    let most = steps.iter().map(|s| s.volume_mm3).fold(1.0, f64::max).log10().ceil();
    let least = most - DECADES;
    let x = |k: usize| left + (W - left - right) * k as f64 / (steps.len() - 1) as f64;
    let y = |v: f64| top + (H - top - bottom) * (most - v.max(10f64.powf(least)).log10()) / DECADES;
    let mut svg = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {W} {H}" width="{W}" height="{H}" font-family="Libertinus Serif" font-size="8">"#
    );
    for k in 0..=DECADES as i32 {
        let value = 10f64.powf(most - f64::from(k));
        let at = y(value);
        let _ = write!(
            svg,
            r##"<path d="M{left} {at:.1}H{:.1}" stroke="#c9d1d4" stroke-width="0.6"/><text x="{:.1}" y="{:.1}" text-anchor="end" fill="#5b6b73">{value}</text>"##,
            W - right,
            left - 4.0,
            at + 2.6
        );
    }
    let places: Vec<String> =
        steps.iter().enumerate().map(|(k, s)| format!("{:.1} {:.1}", x(k), y(s.volume_mm3))).collect();
    let _ = write!(svg, r##"<path d="M{}" fill="none" stroke="#17505c" stroke-width="1.6"/>"##, places.join("L"));
    for (k, s) in steps.iter().enumerate() {
        let (at, high, low) =
            (x(k), y(s.volume_mm3 + 2.0 * s.volume_sigma_mm3), y(s.volume_mm3 - 2.0 * s.volume_sigma_mm3));
        let _ = write!(
            svg,
            r##"<path d="M{at:.1} {high:.1}V{low:.1}" stroke="#17505c" stroke-width="1"/><circle cx="{at:.1}" cy="{:.1}" r="2.6" fill="#17505c"/>"##,
            y(s.volume_mm3)
        );
    }
    svg + "</svg>"
}

/// Powers of ten that the curve shows.
const DECADES: f64 = 4.0;
