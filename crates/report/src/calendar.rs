//! Promised jobs as a calendar file (RFC 5545), for whatever calendar the shop looks at.
//!
//! One VEVENT for each job: at its hour in UTC, so that no time zone has to be described, or over the whole
//! day where no hour was promised. Escaping is the `icalendar` crate's. So is its folding, but for a last piece of
//! 75 octets, which its leading blank makes too long: lines are folded anew. Control characters, which RFC 5545
//! 3.1 does not allow in a text, are left out before.

use crate::words::Words;
use crate::{Language, ReportError};
use icalendar::{Calendar, Component, Event, EventLike, Property};
use jiff::Timestamp;
use jiff::civil::Date;

/// Media type of a calendar file.
pub const CALENDAR_MEDIA: &str = "text/calendar; charset=utf-8";

/// When a job was promised for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PromisedFor {
    /// Some time of that day.
    Day(Date),
    /// That moment.
    Moment(Timestamp),
}

/// A job in the calendar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PromisedJob {
    /// What tells it from every other, for as long as it is there.
    pub id: String,
    /// Its number.
    pub number: String,
    /// When.
    pub when: PromisedFor,
    /// Car and plate.
    pub car: String,
    /// The customer's name.
    pub customer: String,
    /// The customer's telephone.
    pub phone: String,
    /// Where the car stands.
    pub place: String,
    /// Code of the stage it has come to.
    pub stage: String,
    /// Dents, counted one by one.
    pub dents: u64,
    /// Notes.
    pub notes: String,
}

/// The calendar of a shop; `now` is when it was written.
///
/// # Errors
/// When a text is missing in the language's file.
pub fn calendar(shop: &str, jobs: &[PromisedJob], now: Timestamp, language: Language) -> Result<String, ReportError> {
    let words = Words::new(language)?;
    let name = if shop.is_empty() { "Dentwright" } else { shop };
    let mut whole = Calendar::empty();
    whole.append_property(Property::new("VERSION", "2.0"));
    whole.append_property(Property::new("PRODID", "-//Dentwright//Dentwright//EN"));
    whole.append_property(Property::new("CALSCALE", "GREGORIAN"));
    whole.append_property(Property::new("METHOD", "PUBLISH"));
    whole.name(&words.fill("calendar-name", &[("shop", &clean(name))])?);
    for job in jobs {
        whole.push(event(job, now, &words)?);
    }
    Ok(folded(&whole.to_string()))
}

fn event(job: &PromisedJob, now: Timestamp, words: &Words) -> Result<Event, ReportError> {
    let car = if job.car.is_empty() { &job.number } else { &job.car };
    let title = [car, &job.customer].into_iter().filter(|text| !text.is_empty()).cloned().collect::<Vec<_>>();
    let mut event = Event::new();
    event
        .uid(&format!("{}@dentwright.invalid", job.id))
        .append_property(Property::new("DTSTAMP", utc(now)))
        .append_property(start(job.when))
        .summary(&clean(&title.join(" · ")))
        .description(&clean(&description(job, words)?));
    if matches!(job.when, PromisedFor::Day(_)) {
        // A promise for some time of the day keeps no hour of it busy.
        event.append_property(Property::new("TRANSP", "TRANSPARENT"));
    }
    if !job.place.is_empty() {
        event.location(&clean(&job.place));
    }
    Ok(event.done())
}

fn description(job: &PromisedJob, words: &Words) -> Result<String, ReportError> {
    let stage = words.say(&format!("calendar-stage-{}", job.stage))?;
    let mut lines = vec![words.fill("calendar-job", &[("number", &job.number), ("stage", &stage)])?];
    if job.dents > 0 {
        lines.push(words.fill("calendar-dents", &[("count", &job.dents.to_string())])?);
    }
    lines.extend([&job.customer, &job.phone, &job.notes].into_iter().filter(|text| !text.is_empty()).cloned());
    Ok(lines.join("\n"))
}

fn start(when: PromisedFor) -> Property {
    match when {
        PromisedFor::Day(day) => {
            Property::new("DTSTART", day.strftime("%Y%m%d").to_string()).add_parameter("VALUE", "DATE").done()
        }
        PromisedFor::Moment(moment) => Property::new("DTSTART", utc(moment)),
    }
}

/// Form 2 of RFC 5545 3.3.5.
fn utc(moment: Timestamp) -> String {
    moment.strftime("%Y%m%dT%H%M%SZ").to_string()
}

/// Longest line without its end, octets: RFC 5545 3.1.
const LINE: usize = 75;

/// Folds every line anew: at most 75 octets, the blank before a continued line among them.
fn folded(file: &str) -> String {
    let mut out = String::with_capacity(file.len() + file.len() / LINE * 3);
    let mut room = LINE;
    for line in file.replace("\r\n ", "").split_terminator("\r\n") {
        for letter in line.chars() {
            if letter.len_utf8() > room {
                out.push_str("\r\n ");
                room = LINE - 1;
            }
            out.push(letter);
            room -= letter.len_utf8();
        }
        out.push_str("\r\n");
        room = LINE;
    }
    out
}

/// A text without control characters; lines end as RFC 5545 wants them escaped.
fn clean(text: &str) -> String {
    text.replace("\r\n", "\n").replace('\r', "\n").chars().filter(|c| *c == '\n' || !c.is_control()).collect()
}
