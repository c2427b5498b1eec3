//! What the metal holds, for the template: sentences with their doubt, and maps of stretch and tension.

use serde_json::{Value, json};
use typst::foundations::Bytes;

use crate::map::{Scale, draw_as};
use crate::view::Setting;
use crate::{Map, MetalState, OilCan, ReportError};

pub(crate) fn metal(metal: &MetalState, with: &mut Setting) -> Result<Value, ReportError> {
    let mut words = Vec::new();
    if let Some(share) = metal.held {
        let share = percent(share, with);
        words.push(with.words.fill("metal-held", &[("share", &share)])?);
    }
    for (key, pair) in [("metal-stretched", metal.stretch), ("metal-bent", metal.bent)] {
        if let Some(pair) = pair {
            words.push(sentence(key, pair.map(|share| percent(share, with)), with)?);
        }
    }
    for (key, pair) in [("metal-pulled", metal.pulled), ("metal-pressed", metal.pressed)] {
        if let Some(pair) = pair {
            words.push(sentence(key, pair.map(|mpa| with.format.number(mpa, 0)), with)?);
        }
    }
    if metal.crown {
        words.push(with.words.say("metal-crown")?);
    }
    for (when, found) in ["now", "level"].into_iter().zip(metal.oil_can) {
        if let Some(found) = found {
            words.push(oil_can(when, &found, with)?);
        }
    }
    let say_share = |share: f64| percent(share, with);
    let say_mpa = |mpa: f64| format!("{}\u{a0}MPa", with.format.number(mpa, 0));
    let stretch = Scale { most: None, unit: 0.01, say: &say_share };
    let tension = Scale { most: None, unit: 1.0, say: &say_mpa };
    let drawn = |map: &Option<Map>, scale| map.as_ref().and_then(|map| draw_as(map, &[], scale, &with.format));
    let pictures = [drawn(&metal.stretch_map, &stretch), drawn(&metal.tension_map, &tension)];
    let mut maps = Vec::new();
    for (key, picture) in ["metal-map-stretch", "metal-map-tension"].into_iter().zip(pictures) {
        if let Some(picture) = picture {
            let mut about = picture.about;
            about["file"] = Value::String(with.pictures.add(Bytes::new(picture.rgb)));
            maps.push(json!({ "title": with.words.say(key)?, "names": ends(key, with)?, "map": about }));
        }
    }
    let [low, high] = metal.thickness_mm.map(|mm| with.format.number(mm, 2));
    let key = format!("sheet-{}", metal.sheet);
    let sheet = with.words.find(&key).unwrap_or_else(|| metal.sheet.clone());
    let ground = [("metal", sheet.as_str()), ("low", &low), ("high", &high)];
    Ok(json!({ "words": words, "maps": maps, "ground": with.words.fill("metal-ground", &ground)? }))
}

/// What the low end, the whole and the high end of a map's colours are called.
fn ends(key: &str, with: &Setting) -> Result<[String; 3], ReportError> {
    Ok([with.words.say(&format!("{key}-low"))?, String::new(), with.words.say(&format!("{key}-high"))?])
}

fn percent(share: f64, with: &Setting) -> String {
    let places = if share.abs() < 0.0095 { 2 } else { 1 };
    format!("{}\u{a0}%", with.format.number(100.0 * share, places))
}

fn sentence(key: &str, [value, doubt]: [String; 2], with: &Setting) -> Result<String, ReportError> {
    with.words.fill(key, &[("value", &value), ("doubt", &doubt)])
}

fn oil_can(when: &str, found: &OilCan, with: &Setting) -> Result<String, ReportError> {
    let key = |how: &str| format!("metal-{when}-{how}");
    match found.pops {
        _ if !found.stable => with.words.say(&key("unstable")),
        None => with.words.say(&key("calm")),
        Some((force, stays)) => {
            let force = force.map(|n| with.format.number(n, if n < 10.0 { 1 } else { 0 }));
            sentence(&key(if stays { "stays" } else { "pops" }), force, with)
        }
    }
}
