//! Whole reports, read back from the pages that typst set.

use std::collections::BTreeSet;

use fluent_bundle::FluentResource;

use crate::render::{lay_out, text_of};
use crate::view::template_keys;
use crate::words::{Words, texts};
use crate::*;

use crate::sample::sample;

/// The same without spaces and line ends, since a line may break anywhere.
fn packed(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_whitespace()).collect()
}

fn english() -> ReportData {
    sample(Language::En, LengthUnit::Mm, Paper::A4)
}

fn assert_says(text: &str, wanted: &[&str]) {
    let text = packed(text);
    for wanted in wanted {
        assert!(text.contains(&packed(wanted)), "not in the report: {wanted}");
    }
}

#[test]
fn a_report_says_everything_that_it_was_given() {
    let data = english();
    let quote = data.quote.clone().unwrap();
    let text = text_of(&data);
    assert_says(&text, &["Line & Light Dent Repair", "Mara Invented", "1M8GDM9AXKP042788", "64,310 km"]);
    assert_says(&text, &["1 · Front door, left", "2 · Roof", "0.412 ± 0.002", "31 × 27", "trim off", "body line"]);
    assert_says(&text, &["Not finished", "finish limit of 5 µm", "97% of the mirrored area was read"]);
    assert_says(&text, &["50 mm", "−500 µm", "500 µm", "A tag sticks here", "Bring the board closer"]);
    let money = format::Format { language: Language::En, unit: LengthUnit::Mm };
    for amount in [quote.net, quote.tax, quote.gross, quote.gross_low, quote.gross_high] {
        assert_says(&text, &[&money.money(amount, "EUR")]);
    }
    assert_says(&text, &["This is an estimate, not a promise", "Percentages add"]);
    assert_says(&text, &["25 of 26 used", "screen_11.jpg (moved 3 px against the others)", "step_mm = 0.5"]);
    assert_says(
        &text,
        &[&format!("Page 1 of {}", report(&data).unwrap().pages), "25 November 2026", "cannot be shown"],
    );
}

#[test]
fn german_has_german_words_and_numbers() {
    let data = sample(Language::De, LengthUnit::Mm, Paper::A4);
    let text = text_of(&data);
    assert_says(&text, &["Kostenvoranschlag", "Tür vorn links", "25. November 2026", "0,412 ± 0,002"]);
    assert_says(&text, &["Nicht fertig", "97 %", "Seite 1 von"]);
    assert!(!packed(&text).contains("Deviation"));
}

#[test]
fn inches_on_letter_paper() {
    let data = sample(Language::En, LengthUnit::Inch, Paper::Letter);
    assert_says(&text_of(&data), &["0.20 mil", "2 in", "Size, in", "0.0162 ± 0.0001"]);
    let size = lay_out(&data).unwrap().pages()[0].frame.size();
    assert_eq!((size.x.to_pt().round(), size.y.to_pt().round()), (612.0, 792.0));
}

/// Entered text that would do harm or vanish if it were read as typst, JSON or Fluent.
const HOSTILE: [&str; 8] = [
    "#panic(\"x\")",
    "*x* _y_ `z` $a/b$",
    "#import \"style.typ\": *",
    "\"], \"shop\": {",
    "{ $unit } { -term }",
    "</text><script>",
    "= Heading @ref <label>",
    "\\u{41} \\ // no comment /* at all",
];

#[test]
fn entered_text_is_never_read_as_markup() {
    for hostile in HOSTILE {
        let mut data = english();
        let text = || hostile.to_owned();
        data.shop = Shop { name: text(), address: text(), phone: text(), email: text(), tax_id: text() };
        data.customer = Customer { name: text(), address: text(), phone: text(), email: text() };
        data.car = Car { title: text(), plate: text(), vin: text(), vin_note: text(), ..data.car };
        (data.number, data.notes) = (text(), text());
        data.images[0].name = text();
        let damage = &mut data.damages[0];
        (damage.panel, damage.note) = (text(), text());
        damage.photos = vec![
            Photo { image: text(), caption: text() },
            Photo { image: format!("missing {hostile}"), caption: String::new() },
        ];
        let reading = &mut damage.readings[0];
        reading.finish.reason = text();
        (reading.camera, reading.version) = (text(), text());
        reading.settings = vec![(text(), text())];
        reading.unread[0] = Unread { code: text(), text: text(), next: text(), fraction: 0.1 };
        data.quote.as_mut().unwrap().lines[0].what = text();

        let pages = text_of(&data);
        // Set letter for letter in every one of the places above.
        let seen = packed(&pages).matches(&packed(hostile)).count();
        assert!(seen >= 20, "{hostile}: seen {seen} times");
        assert!(report(&data).unwrap().pdf.starts_with(b"%PDF"));
    }
}

#[test]
fn an_empty_job_still_makes_a_page() {
    let data = ReportData {
        language: Language::En,
        length_unit: LengthUnit::Mm,
        paper: Paper::A4,
        date: jiff::civil::date(2026, 1, 2),
        number: String::new(),
        shop: Shop::default(),
        customer: Customer::default(),
        car: Car::default(),
        damages: vec![],
        quote: None,
        cautions: vec!["no_such_caution".into()],
        notes: String::new(),
        images: vec![],
    };
    assert_eq!(report(&data).unwrap().pages, 1);
    let text = text_of(&data);
    assert_says(&text, &["Damage report", "No damage has been recorded", "nothing was measured by photo"]);
    assert!(!text.contains("estimate") && !text.contains("Cautions"));
}

#[test]
fn broken_pictures_and_maps_leave_the_rest_standing() {
    let mut data = english();
    data.images[0].bytes.truncate(400);
    data.images[1].bytes = b"not a picture".to_vec();
    data.images[2].bytes.clear();
    for reading in &mut data.damages[0].readings {
        reading.map.as_mut().unwrap().nx = 7;
        reading.spots[0].sigma_mm = f64::NAN;
    }
    data.damages[1].at = (f64::NAN, 9.0);
    let text = text_of(&data);
    assert_says(&text, &["“door photo” cannot be shown", "“panel” cannot be shown", "Lows and highs"]);
    assert!(!packed(&text).contains(&packed("Deviation from the intended shape")));
}

#[test]
fn hundreds_of_dents_and_spots_fill_pages_and_not_more() {
    let mut data = english();
    data.damages[1].dents = (0..400).map(|_| data.damages[1].dents[0].clone()).collect();
    let reading = &mut data.damages[0].readings[0];
    reading.spots = (0..300).map(|_| reading.spots[1].clone()).collect();
    let pages = report(&data).unwrap().pages;
    assert!((8..20).contains(&pages), "{pages}");
    assert_says(&text_of(&data), &["and 288 smaller ones"]);
}

#[test]
fn the_same_values_make_the_same_bytes() {
    assert_eq!(report(&english()).unwrap(), report(&english()).unwrap());
}

#[test]
fn all_languages_have_the_same_keys_and_places() {
    let keys = |language: Language| -> BTreeSet<String> {
        let text = texts(language).join("\n");
        let resource = FluentResource::try_new(text.clone()).unwrap();
        assert!(resource.entries().count() > 250);
        text.lines()
            .filter(|line| !line.starts_with('#'))
            .filter_map(|line| line.split_once(" = "))
            .map(|(key, value)| {
                let mut places: Vec<&str> = value.split("{ $").skip(1).filter_map(|p| p.split(' ').next()).collect();
                places.sort_unstable();
                format!("{key} {places:?}")
            })
            .collect()
    };
    let english = keys(Language::En);
    for language in Language::ALL {
        let there = keys(language);
        let (missing, more): (Vec<_>, Vec<_>) =
            (english.difference(&there).collect(), there.difference(&english).collect());
        assert!(missing.is_empty() && more.is_empty(), "{language:?} lacks {missing:?}, has also {more:?}");
    }
}

/// Keys in templates; those in Rust are strings given to `say` or `fill`, or made from codes.
#[test]
fn every_key_that_is_used_exists_and_every_key_is_used() {
    let sources = [
        include_str!("calendar.rs"),
        include_str!("view.rs"),
        include_str!("change_view.rs"),
        include_str!("damage_view.rs"),
        include_str!("quote_view.rs"),
        include_str!("method_view.rs"),
        include_str!("pictures.rs"),
        include_str!("cautions.rs"),
        include_str!("format.rs"),
        include_str!("print/mod.rs"),
        include_str!("print/ruler.rs"),
        include_str!("print/stickers.rs"),
        include_str!("print/corners.rs"),
        include_str!("print/lines.rs"),
        include_str!("print/camera.rs"),
        include_str!("papers/bill.rs"),
        include_str!("papers/evidence.rs"),
        include_str!("papers/finish.rs"),
        include_str!("papers/of_quote.rs"),
        include_str!("papers/order.rs"),
        include_str!("papers/set.rs"),
    ];
    let words = Words::new(Language::En).unwrap();
    let of_templates: BTreeSet<&str> = template_keys().collect();
    assert!(of_templates.len() > 25);
    for key in &of_templates {
        assert!(words.say(key).is_ok(), "a template asks for {key}");
    }
    let made = [
        "month-",
        "panel-",
        "unread-",
        "caution-",
        "paper-",
        "consent-",
        "supplement-",
        "means-",
        "note-",
        "old-",
        "metal-",
        "sheet-",
        "calendar-stage-",
    ];
    for key in texts(Language::En)
        .into_iter()
        .flat_map(str::lines)
        .filter(|line| !line.starts_with('#'))
        .filter_map(|line| Some(line.split_once(" = ")?.0))
    {
        let quoted = format!("\"{key}\"");
        let used = of_templates.contains(key)
            || sources.iter().any(|source| source.contains(&quoted))
            || made.iter().any(|start| key.starts_with(start));
        assert!(used, "nobody uses {key}");
    }
}

#[test]
fn every_code_has_words_in_all_languages() {
    for language in Language::ALL {
        let words = Words::new(language).unwrap();
        for panel in car::codes() {
            assert!(words.find(&format!("panel-{panel}")).is_some(), "{panel}");
        }
        for code in ["not_mirrored", "tag", "clipped", "low_contrast", "folded", "inconsistent", "not_followed"] {
            assert!(words.find(&format!("unread-{code}")).is_some(), "{code}");
            assert!(words.find(&format!("unread-{code}-next")).is_some(), "{code}");
        }
        for month in 1..=12 {
            assert!(words.find(&format!("month-{month}")).is_some(), "{month}");
        }
        for code in CAUTION_CODES {
            assert!(caution(code, language).unwrap().is_some(), "{code}");
        }
        assert!(!cautions_always(language).unwrap().is_empty());
    }
}

/// Makers' waiting times differ tenfold, so none is ever shown.
#[test]
fn no_caution_names_a_waiting_time() {
    for language in Language::ALL {
        for code in ["airbag_curtain", "airbag_seat_pillar", "high_voltage"] {
            let text = caution(code, language).unwrap().unwrap().text.to_lowercase();
            assert!(!["minut", "second", "sekund", "segundo", " min"].iter().any(|word| text.contains(word)), "{text}");
        }
    }
}
