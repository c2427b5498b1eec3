//! The clock counts what was worked, and nothing that is in doubt.

use dentwright_job::{EntryState, LONGEST_STRETCH_S, TimeEntry, WorkKind, by_kind, on_dents_s};
use jiff::{SignedDuration, Timestamp};
use uuid::Uuid;

fn at(text: &str) -> Timestamp {
    format!("2026-11-{text}Z").parse().unwrap()
}

fn entry(kind: WorkKind, started: &str, stopped: Option<&str>) -> TimeEntry {
    TimeEntry {
        id: Uuid::nil(),
        job: Some(Uuid::nil()),
        technician: Uuid::nil(),
        kind,
        started: at(started),
        stopped: stopped.map(at),
        confirmed: false,
    }
}

#[test]
fn what_is_in_doubt_counts_nowhere_until_it_is_set_right() {
    let now = at("26T08:00:00");
    let sound = entry(WorkKind::Push, "25T08:00:00", Some("25T09:30:00"));
    let back = entry(WorkKind::Push, "25T10:00:00", Some("25T09:00:00"));
    let night = entry(WorkKind::Tap, "25T17:00:00", None);
    assert_eq!((sound.state(now), sound.counted_s(now)), (EntryState::Counted, 5400));
    assert_eq!((back.state(now), back.counted_s(now), back.seconds(now)), (EntryState::Backwards, 0, -3600));
    assert_eq!((night.state(now), night.counted_s(now)), (EntryState::LeftRunning, 0));
    assert_eq!(night.state(at("25T18:00:00")), EntryState::Running);
    // A clock that is behind the start while it runs is one that was set back.
    assert_eq!(night.state(at("25T16:00:00")), EntryState::Backwards);

    let mut long = entry(WorkKind::Push, "25T06:00:00", Some("25T16:00:00"));
    assert_eq!(long.state(now), EntryState::LeftRunning);
    long.confirmed = true;
    assert_eq!((long.state(now), long.counted_s(now)), (EntryState::Counted, 36_000), "a person says so");
    // Nobody can confirm an hour below zero.
    assert_eq!(TimeEntry { confirmed: true, ..back }.counted_s(now), 0);
}

#[test]
fn the_longest_stretch_itself_counts() {
    let started = at("25T06:00:00");
    let until = |seconds| TimeEntry {
        stopped: Some(started + SignedDuration::from_secs(seconds)),
        ..entry(WorkKind::Push, "25T06:00:00", None)
    };
    assert_eq!(until(LONGEST_STRETCH_S).counted_s(started), LONGEST_STRETCH_S);
    assert_eq!(until(LONGEST_STRETCH_S + 1).counted_s(started), 0);
}

#[test]
fn kinds_add_up_and_trim_is_no_work_on_dents() {
    let now = at("26T08:00:00");
    let entries = [
        entry(WorkKind::Trim, "25T08:00:00", Some("25T08:30:00")),
        entry(WorkKind::Push, "25T08:30:00", Some("25T10:00:00")),
        entry(WorkKind::Push, "25T10:30:00", Some("25T11:00:00")),
        entry(WorkKind::Tap, "25T11:00:00", Some("25T11:30:00")),
        entry(WorkKind::Tap, "25T12:00:00", None),
    ];
    let kinds = by_kind(&entries, now);
    assert_eq!(kinds.len(), WorkKind::ALL.len());
    let of = |kind| kinds.iter().find(|one| one.kind == kind).map(|one| (one.seconds, one.share)).unwrap();
    assert_eq!(of(WorkKind::Trim), (1800, 1800.0 / 10_800.0));
    assert_eq!(of(WorkKind::Push), (7200, 7200.0 / 10_800.0));
    assert_eq!(of(WorkKind::Glue), (0, 0.0));
    assert!((kinds.iter().map(|one| one.share).sum::<f64>() - 1.0).abs() < 1e-12);
    assert_eq!(on_dents_s(&entries, now), 9000);
}
