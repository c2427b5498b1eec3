//! How each reading was made, so that it can be made again.

use serde_json::{Value, json};

use crate::damage_view::{panel, sentence};
use crate::view::Setting;
use crate::{Frame, Language, Note, Reading, ReportData, ReportError};

pub(crate) fn methods(data: &ReportData, with: &Setting) -> Result<Vec<Value>, ReportError> {
    let mut methods = Vec::new();
    for (index, damage) in data.damages.iter().enumerate() {
        for reading in &damage.readings {
            let title = format!("{} · {}", index + 1, panel(&damage.panel, with));
            methods.push(json!({ "title": title, "rows": rows(reading, with)? }));
        }
    }
    Ok(methods)
}

fn rows(reading: &Reading, with: &Setting) -> Result<Vec<[String; 2]>, ReportError> {
    let words = &with.words;
    let scale = words.say(if reading.absolute { "scale-absolute" } else { "scale-relative" })?;
    let settings: Vec<String> = reading.settings.iter().map(|(name, value)| format!("{name} = {value}")).collect();
    let rows = [
        ("method-photos", photos(&reading.frames, with)?),
        ("method-scale", scale),
        ("method-camera", reading.camera.clone()),
        ("method-version", reading.version.clone()),
        ("method-settings", settings.join("; ")),
        ("method-notes", notes(&reading.notes, with)),
    ];
    let known = rows.into_iter().filter(|(_, text)| !text.is_empty());
    known.map(|(key, text)| Ok([words.say(key)?, text])).collect()
}

/// Remarks as sentences, in the paper's language where it has their code.
fn notes(notes: &[Note], with: &Setting) -> String {
    let english = with.format.language == Language::En;
    let own = |note: &Note| with.words.find(&format!("note-{}", note.code)).filter(|_| !english);
    let sentences: Vec<String> = notes.iter().map(|note| own(note).unwrap_or_else(|| sentence(&note.text))).collect();
    sentences.join(" ")
}

/// How many photos were used, and each one that was dropped, with its reason.
fn photos(frames: &[Frame], with: &Setting) -> Result<String, ReportError> {
    if frames.is_empty() {
        return Ok(String::new());
    }
    let used = frames.iter().filter(|frame| frame.used).count().to_string();
    let mut text = with.words.fill("method-used", &[("used", &used), ("all", &frames.len().to_string())])?;
    for frame in frames.iter().filter(|frame| !frame.used) {
        text.push_str(&format!("; {}: {}", with.words.say("method-dropped")?, frame.file));
        if !frame.note.is_empty() {
            text.push_str(&format!(" ({})", frame.note));
        }
    }
    Ok(text)
}
