//! A damage for the template: photos, map, spots, dents, verdict, what was not read.

use dentwright_price::{Access, Kind, Metal, Place};
use serde_json::{Value, json};
use typst::foundations::Bytes;

use crate::change_view::change;
use crate::view::{Setting, lines};
use crate::{Damage, DentRow, Finish, Language, Photo, Reading, ReportError, Spot, Unread, Verdict};
use crate::{map, metal_view};

/// Most spots in the table of one reading; the rest is counted.
const MOST_SPOTS: usize = 12;
/// Shares of unread area below this are not worth a line.
const LEAST_UNREAD: f64 = 0.0005;

pub(crate) fn damage(index: usize, damage: &Damage, with: &mut Setting) -> Result<Value, ReportError> {
    let photos: Vec<Value> = damage.photos.iter().map(|shown| photo(shown, with)).collect::<Result<_, _>>()?;
    let readings: Vec<Value> = damage.readings.iter().map(|one| reading(one, with)).collect::<Result<_, _>>()?;
    let rows = damage.dents.iter().enumerate();
    let dents: Vec<Value> = rows.map(|(index, row)| dent(index, row, with)).collect::<Result<_, _>>()?;
    let count: u64 = damage.dents.iter().map(|row| u64::from(row.dent.count)).sum();
    let last = damage.readings.last().map(|reading| verdict_word(reading.finish.verdict));
    let unit = [("unit", with.format.length_unit())];
    Ok(json!({
        "number": (index + 1).to_string(),
        "panel": panel(&damage.panel, with),
        "note": lines(&damage.note),
        "photos": photos,
        "readings": readings,
        "change": damage.change.as_ref().map(|one| change(one, with)).transpose()?,
        "dents": dents,
        "count": with.format.number(count as f64, 0),
        "finish": last.map(|key| with.words.say(key)).transpose()?,
        "size_head": with.words.fill("dent-size", &unit)?,
        "depth_head": with.words.fill("dent-depth", &unit)?,
    }))
}

/// A panel's name; a code that no language file knows is shown as it is.
pub(crate) fn panel(code: &str, with: &Setting) -> String {
    with.words.find(&format!("panel-{code}")).unwrap_or_else(|| code.to_owned())
}

fn photo(photo: &Photo, with: &mut Setting) -> Result<Value, ReportError> {
    let picture = with.pictures.photo(&photo.image, &with.words)?;
    Ok(json!({ "picture": picture, "caption": photo.caption }))
}

fn dent(index: usize, row: &DentRow, with: &Setting) -> Result<Value, ReportError> {
    let (dent, format, words) = (&row.dent, &with.format, &with.words);
    let depth = match row.at_least {
        true => words.fill("at-least", &[("depth", &format.depth(dent.depth_mm.abs(), None))])?,
        false => format.depth(dent.depth_mm.abs(), row.sigma_mm),
    };
    Ok(json!({
        "number": (index + 1).to_string(),
        "count": format.number(f64::from(dent.count), 0),
        "kind": words.say(kind(dent.kind))?,
        "size": size(dent.length_mm, dent.width_mm, with),
        "depth": depth,
        "place": words.say(place(dent.place))?,
        "metal": words.say(metal(dent.metal))?,
        "access": words.say(access(dent.access))?,
        "source": words.say(if row.measured { "source-measured" } else { "source-hand" })?,
    }))
}

pub(crate) fn size(length_mm: f64, width_mm: f64, with: &Setting) -> String {
    format!("{} × {}", with.format.across(length_mm), with.format.across(width_mm))
}

fn reading(reading: &Reading, with: &mut Setting) -> Result<Value, ReportError> {
    let picture = reading.map.as_ref().and_then(|map| map::draw(map, &reading.spots, None, &with.format));
    let map = picture.map(|picture| {
        let mut about = picture.about;
        about["file"] = Value::String(with.pictures.add(Bytes::new(picture.rgb)));
        about
    });
    let photo = reading.photo.as_ref().map(|name| with.pictures.photo(name, &with.words)).transpose()?;
    let date = reading.date.map(|date| with.format.date(date, &with.words)).transpose()?;
    let taken = date.map(|date| with.words.fill("map-taken", &[("date", &date)])).transpose()?;
    let more = reading.spots.len().saturating_sub(MOST_SPOTS);
    let more_count = more.to_string();
    let unit = [("unit", with.format.length_unit())];
    let shown = reading.spots.iter().take(MOST_SPOTS).enumerate();
    Ok(json!({
        "map": map,
        "photo": photo,
        "taken": taken,
        "absolute": reading.absolute,
        "finish": finish(&reading.finish, reading.read_fraction, with)?,
        "spots": shown.map(|(index, one)| spot(index, one, with)).collect::<Result<Vec<_>, _>>()?,
        "more": (more > 0).then(|| with.words.fill("spots-more", &[("count", &more_count)])).transpose()?,
        "size_head": with.words.fill("spot-size", &unit)?,
        "height_head": with.words.fill("spot-height", &unit)?,
        "metal": reading.metal.as_ref().map(|metal| metal_view::metal(metal, with)).transpose()?,
        "unread": reading.unread.iter().filter(|part| part.fraction >= LEAST_UNREAD).map(|part| unread(part, with)).collect::<Vec<_>>(),
    }))
}

fn spot(index: usize, spot: &Spot, with: &Setting) -> Result<Value, ReportError> {
    let kind = if spot.height_mm < 0.0 { "spot-low" } else { "spot-high" };
    let height = match spot.at_least_mm {
        Some(mm) => with.words.fill("at-least", &[("depth", &with.format.depth(mm.abs(), None))])?,
        None => with.format.depth(spot.height_mm, Some(spot.sigma_mm)),
    };
    Ok(json!({
        "number": (index + 1).to_string(),
        "kind": with.words.say(kind)?,
        "size": size(spot.length_mm, spot.width_mm, with),
        "height": height,
    }))
}

fn finish(finish: &Finish, read_fraction: f64, with: &Setting) -> Result<Value, ReportError> {
    let word = verdict_word(finish.verdict);
    let limit = with.format.height(finish.limit_mm);
    let share = with.format.percent(read_fraction);
    Ok(json!({
        "code": word,
        "title": with.words.say(word)?,
        "text": with.words.fill(verdict_text(finish.verdict), &[("limit", &limit)])?,
        "reason": reason(&finish.reason, with.format.language),
        "read": with.words.fill("verdict-read", &[("share", &share)])?,
    }))
}

fn unread(unread: &Unread, with: &Setting) -> Value {
    let key = format!("unread-{}", unread.code);
    let text = with.words.find(&key).unwrap_or_else(|| unread.text.clone());
    let next = with.words.find(&format!("{key}-next")).unwrap_or_else(|| unread.next.clone());
    json!({ "share": with.format.percent(unread.fraction), "text": text, "next": next })
}

/// A reading writes its reason in English: a sentence of an English paper, and of no other, which says the
/// same in its own words.
fn reason(text: &str, language: Language) -> String {
    if language == Language::En { sentence(text) } else { String::new() }
}

/// Words as a sentence: a capital first, a full stop last.
pub(crate) fn sentence(text: &str) -> String {
    let mut letters = text.trim_end_matches('.').chars();
    letters.next().map_or_else(String::new, |first| format!("{}{}.", first.to_uppercase(), letters.as_str()))
}

fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Done => "verdict-done",
        Verdict::NotDone => "verdict-not-done",
        Verdict::CannotTell => "verdict-cannot-tell",
    }
}

fn verdict_text(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Done => "verdict-done-text",
        Verdict::NotDone => "verdict-not-done-text",
        Verdict::CannotTell => "verdict-cannot-tell-text",
    }
}

fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Round => "kind-round",
        Kind::Hail => "kind-hail",
        Kind::Soft => "kind-soft",
        Kind::Sharp => "kind-sharp",
        Kind::Crease => "kind-crease",
        Kind::High => "kind-high",
    }
}

fn metal(metal: Metal) -> &'static str {
    match metal {
        Metal::Steel => "metal-steel",
        Metal::HighStrengthSteel => "metal-high_strength_steel",
        Metal::Aluminium => "metal-aluminium",
    }
}

fn access(access: Access) -> &'static str {
    match access {
        Access::Open => "access-open",
        Access::TrimOff => "access-trim_off",
        Access::Braced => "access-braced",
        Access::GlueOnly => "access-glue_only",
        Access::None => "access-none",
    }
}

fn place(place: Place) -> &'static str {
    match place {
        Place::Flat => "place-flat",
        Place::BodyLine => "place-body_line",
        Place::Edge => "place-edge",
        Place::Rail => "place-rail",
    }
}
