//! The calendar, read back by a parser that shares nothing with its writer.

use calcard::icalendar::{ICalendar, ICalendarComponentType, ICalendarProperty, ICalendarValue};
use dentwright_report::{Language, PromisedFor, PromisedJob, calendar};
use jiff::Timestamp;
use jiff::civil::date;

fn now() -> Timestamp {
    "2026-11-26T08:09:10Z".parse().unwrap()
}

fn job(id: &str, when: PromisedFor) -> PromisedJob {
    PromisedJob {
        id: id.into(),
        number: "2026-007".into(),
        when,
        car: "Vardo Kombi 4, EX 390 D".into(),
        customer: "Zoë Größe; invented, \\ and more".into(),
        phone: "+00 555 0131".into(),
        place: "Halle 2, hinter dem Tor; links".into(),
        stage: "in_work".into(),
        dents: 41,
        notes: "Schlüssel beim Pförtner.\r\nNicht waschen\u{7}! 老虎 👍 \"quoted\"".into(),
    }
}

fn text(calendar: &ICalendar, component: usize, name: &ICalendarProperty) -> Option<String> {
    let entry = calendar.components[component].entries.iter().find(|entry| entry.name == *name)?;
    match entry.values.first()? {
        ICalendarValue::Text(text) => Some(text.clone()),
        other => Some(format!("{other:?}")),
    }
}

fn events(calendar: &ICalendar) -> Vec<usize> {
    let is_event = |at: &usize| calendar.components[*at].component_type == ICalendarComponentType::VEvent;
    (0..calendar.components.len()).filter(is_event).collect()
}

#[test]
fn another_parser_reads_what_was_promised() {
    let moment = PromisedFor::Moment("2026-11-27T15:30:00Z".parse().unwrap());
    let jobs = [job("a", moment), job("b", PromisedFor::Day(date(2026, 12, 1)))];
    let file = calendar("Linie & Licht (invented)", &jobs, now(), Language::De).unwrap();
    let read = ICalendar::parse(&file).expect("a calendar");
    let [first, second] = events(&read)[..] else { panic!("{file}") };
    let say = |at, name| text(&read, at, &name).unwrap_or_default();
    assert_eq!(say(first, ICalendarProperty::Uid), "a@dentwright.invalid");
    assert_eq!(say(first, ICalendarProperty::Summary), "Vardo Kombi 4, EX 390 D · Zoë Größe; invented, \\ and more");
    assert_eq!(say(first, ICalendarProperty::Location), "Halle 2, hinter dem Tor; links");
    assert_eq!(
        say(first, ICalendarProperty::Description),
        "Auftrag 2026-007, in Arbeit\n41 Dellen\nZoë Größe; invented, \\ and more\n+00 555 0131\n\
         Schlüssel beim Pförtner.\nNicht waschen! 老虎 👍 \"quoted\""
    );
    assert!(file.contains("\r\nDTSTART:20261127T153000Z\r\n"), "{file}");
    assert!(file.contains("\r\nDTSTART;VALUE=DATE:20261201\r\n"), "{file}");
    assert_eq!(file.matches("\r\nDTSTAMP:20261126T080910Z\r\n").count(), 2);
    assert_eq!(say(second, ICalendarProperty::Uid), "b@dentwright.invalid");
}

#[test]
fn lines_end_and_fold_as_the_standard_wants_in_every_language() {
    let long = |k: usize| PromisedJob {
        notes: "ä".repeat(40 + k) + &", ß; \\ 老 👍\n".repeat(k),
        place: " ".repeat(k % 5) + &"x ".repeat(40),
        ..job(&k.to_string(), PromisedFor::Day(date(2026, 12, 1)))
    };
    let jobs: Vec<PromisedJob> = (0..90).map(long).collect();
    for language in Language::ALL {
        let file = calendar("", &jobs, now(), language).unwrap();
        assert!(file.ends_with("END:VCALENDAR\r\n"));
        for line in file.split("\r\n") {
            assert!(line.len() <= 75, "RFC 5545 3.1: {} octets in {line:?}", line.len());
            assert!(!line.contains(['\r', '\n']), "{line:?}");
        }
        let read = ICalendar::parse(&file).expect("a calendar");
        let found = events(&read);
        assert_eq!(found.len(), jobs.len());
        for (at, job) in found.into_iter().zip(&jobs) {
            let said = text(&read, at, &ICalendarProperty::Description).unwrap();
            assert!(said.ends_with(&job.notes), "{said:?} and {:?}", job.notes);
            assert_eq!(text(&read, at, &ICalendarProperty::Location).unwrap(), job.place);
        }
    }
}

#[test]
fn an_empty_day_is_a_calendar_too() {
    let file = calendar("", &[], now(), Language::En).unwrap();
    assert!(events(&ICalendar::parse(&file).expect("a calendar")).is_empty());
    assert!(
        file.starts_with("BEGIN:VCALENDAR\r\n") && file.contains("\r\nVERSION:2.0\r\n") && file.contains("\r\nPRODID:"),
        "{file}"
    );
}
