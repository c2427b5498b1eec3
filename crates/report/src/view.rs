//! What the templates see: every text ready to be set, nothing left to work out.
//!
//! It is handed over as JSON, so that entered text arrives in typst as string values. A string
//! value is set as it is; it is never read as markup or code.

use serde_json::{Map as JsonMap, Value, json};
use typst::foundations::Bytes;

use crate::cautions::in_words;
use crate::format::Format;
use crate::pictures::Pictures;
use crate::settable::settable;
use crate::words::Words;
use crate::world::TEMPLATES;
use crate::{Car, DentRow, Paper, ReportData, ReportError, Shop, car, damage_view, method_view, quote_view};

/// What all parts of the view are made with.
pub(crate) struct Setting<'a> {
    pub(crate) words: Words,
    pub(crate) format: Format,
    pub(crate) pictures: Pictures<'a>,
}

/// The files of one report: `data.json`, the drawn car, maps and photos.
pub(crate) fn files(data: &ReportData) -> Result<Vec<(String, Bytes)>, ReportError> {
    files_with(data, |_, _| Ok(()))
}

/// The same, with what `add` puts into the view.
pub(crate) fn files_with<'a>(
    data: &'a ReportData,
    add: impl FnOnce(&mut Value, &Setting<'a>) -> Result<(), ReportError>,
) -> Result<Vec<(String, Bytes)>, ReportError> {
    let mut with = Setting {
        words: Words::new(data.language)?,
        format: Format { language: data.language, unit: data.length_unit },
        pictures: Pictures::new(&data.images),
    };
    let mut view = view(data, &mut with)?;
    add(&mut view, &with)?;
    settable(&mut view);
    let marks: Vec<car::Mark> =
        data.damages.iter().enumerate().map(|(index, damage)| (damage.panel.as_str(), damage.at, index + 1)).collect();
    let mut files = with.pictures.into_files();
    files.push(("car.svg".to_owned(), Bytes::from_string(car::draw(&marks))));
    files.push(("data.json".to_owned(), Bytes::from_string(view.to_string())));
    Ok(files)
}

fn view(data: &ReportData, with: &mut Setting) -> Result<Value, ReportError> {
    let title = if data.quote.is_some() { "title" } else { "title-report" };
    let damages = data.damages.iter().enumerate();
    let damages: Vec<Value> =
        damages.map(|(index, damage)| damage_view::damage(index, damage, with)).collect::<Result<_, _>>()?;
    Ok(json!({
        "words": template_words(&with.words)?,
        "paper": match data.paper { Paper::A4 => "a4", Paper::Letter => "us-letter" },
        "lang": data.language.code(),
        "title": with.words.say(title)?,
        "number": data.number,
        "numbers": if data.number.is_empty() { vec![] } else { vec![[with.words.say("job-number")?, data.number.clone()]] },
        "date": with.format.date(data.date, &with.words)?,
        "shop": shop(&data.shop, &with.words)?,
        "customer": {
            "name": data.customer.name,
            "lines": filled([lines(&data.customer.address), vec![data.customer.phone.clone(), data.customer.email.clone()]].concat()),
        },
        "car": car_rows(&data.car, with)?,
        "car_title": data.car.title,
        "car_note": data.car.vin_note,
        "damages": damages,
        "quote": data.quote.as_ref().map(|quote| quote_view::quote(quote, dents(data), with)).transpose()?,
        "cautions": cautions(&data.cautions, &with.words),
        "methods": method_view::methods(data, with)?,
        "notes": lines(&data.notes),
    }))
}

/// The texts of all keys that the templates ask for by `t("key")`.
fn template_words(words: &Words) -> Result<JsonMap<String, Value>, ReportError> {
    template_keys().map(|key| Ok((key.to_owned(), Value::String(words.say(key)?)))).collect()
}

/// The keys in `t("key")` of all templates, where `t` stands alone as a name.
pub(crate) fn template_keys() -> impl Iterator<Item = &'static str> {
    TEMPLATES.into_iter().flat_map(|(_, text)| {
        text.match_indices("t(\"").filter_map(|(at, call)| {
            let before = text[..at].chars().next_back();
            let alone = !before.is_some_and(|letter| letter.is_alphanumeric() || "-_.".contains(letter));
            let (key, _) = text[at + call.len()..].split_once('"')?;
            alone.then_some(key)
        })
    })
}

fn shop(shop: &Shop, words: &Words) -> Result<Value, ReportError> {
    let mut more = Vec::new();
    for (key, value) in [("phone", &shop.phone), ("email", &shop.email), ("tax-id", &shop.tax_id)] {
        if !value.is_empty() {
            more.push(format!("{} {value}", words.say(key)?));
        }
    }
    Ok(json!({ "name": shop.name, "address": lines(&shop.address), "more": more }))
}

/// Label and value of everything known about the car.
fn car_rows(car: &Car, with: &Setting) -> Result<Vec<[String; 2]>, ReportError> {
    let words = &with.words;
    let odometer = car.odometer_km.map(|km| with.format.number(f64::from(km), 0));
    let odometer = odometer.map(|km| words.fill("kilometres", &[("km", &km)])).transpose()?;
    let rows = [
        ("plate", car.plate.clone()),
        ("vin", car.vin.clone()),
        ("year", car.year.map(|year| year.to_string()).unwrap_or_default()),
        ("odometer", odometer.unwrap_or_default()),
        ("colour", car.colour.clone()),
        ("paint", car.paint.clone()),
    ];
    let known = rows.into_iter().filter(|(_, value)| !value.is_empty());
    known.map(|(key, value)| Ok([words.say(key)?, value])).collect()
}

fn cautions(codes: &[String], words: &Words) -> Vec<Value> {
    let known = codes.iter().filter_map(|code| in_words(code, words));
    known.map(|caution| json!({ "title": caution.title, "text": caution.text })).collect()
}

/// The lines of an entered text, empty ones left out.
pub(crate) fn lines(text: &str) -> Vec<String> {
    filled(text.lines().map(|line| line.trim().to_owned()).collect())
}

fn filled(texts: Vec<String>) -> Vec<String> {
    texts.into_iter().filter(|text| !text.is_empty()).collect()
}

/// The dents of the whole car, in the order of their damages.
fn dents(data: &ReportData) -> impl Iterator<Item = &DentRow> {
    data.damages.iter().flat_map(|damage| &damage.dents)
}
