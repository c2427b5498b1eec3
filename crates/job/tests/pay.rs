//! The pay sheet, by amounts worked by hand.

use dentwright_job::{DoneJob, Pay, PayPeriod, Technician, TimeEntry, WorkKind, pay_sheet};
use jiff::Timestamp;
use rust_decimal::Decimal;
use uuid::Uuid;

fn at(text: &str) -> Timestamp {
    format!("2026-{text}Z").parse().unwrap()
}

fn somebody(nth: u128, pay: Pay) -> Technician {
    Technician { id: Uuid::from_u128(nth), name: format!("{nth}"), pay, gone: false }
}

fn entry(job: u128, technician: u128, started: &str, stopped: &str) -> TimeEntry {
    TimeEntry {
        id: Uuid::nil(),
        job: Some(Uuid::from_u128(job)),
        technician: Uuid::from_u128(technician),
        kind: WorkKind::Push,
        started: at(started),
        stopped: Some(at(stopped)),
        confirmed: false,
    }
}

fn done(id: u128, labour: &str, split: Option<&str>) -> DoneJob {
    let amount = |text: &str| text.parse::<Decimal>().unwrap();
    DoneJob {
        id: Uuid::from_u128(id),
        number: format!("2026-{id:03}"),
        labour: amount(labour),
        split: split.map(amount),
    }
}

fn november() -> PayPeriod {
    PayPeriod { from: at("11-01T00:00:00"), until: at("12-01T00:00:00") }
}

fn dec(text: &str) -> Decimal {
    text.parse().unwrap()
}

#[test]
fn hours_are_paid_once_and_within_the_period() {
    let crew = [somebody(1, Pay::Hour { rate: dec("28.50") })];
    let entries = [
        entry(7, 1, "10-31T23:00:00", "11-01T01:00:00"), // an hour of it is November's
        entry(7, 1, "11-03T08:00:00", "11-03T10:00:00"),
        entry(8, 1, "11-03T09:30:00", "11-03T10:20:00"), // thirty minutes of it run beside the one before
        entry(8, 1, "11-04T10:00:00", "11-04T09:00:00"), // set back: counts nowhere
        entry(8, 1, "11-04T17:00:00", "11-05T08:00:00"), // overnight: counts nowhere
        entry(8, 2, "11-06T08:00:00", "11-06T12:00:00"), // somebody else's
    ];
    let sheet = pay_sheet(&crew, &entries, &[], november(), at("12-02T00:00:00"), 2);
    // 1 h + 2 h + 20 min at 28.50: 95.00
    assert_eq!((sheet[0].clocked_s, sheet[0].pay), (12_000, Some(dec("95.00"))));
}

#[test]
fn labour_is_shared_by_the_time_on_the_job() {
    let crew = [
        somebody(1, Pay::Share { percent: dec("40") }),
        somebody(2, Pay::Share { percent: dec("50") }),
        somebody(3, Pay::None),
    ];
    let entries = [
        entry(7, 1, "10-30T08:00:00", "10-30T10:00:00"), // before the period, yet on a job done within it
        entry(7, 2, "11-02T08:00:00", "11-02T09:00:00"),
        entry(9, 3, "11-02T08:00:00", "11-02T09:00:00"),
    ];
    let jobs = [done(7, "900.00", None), done(8, "500.00", None)];
    let sheet = pay_sheet(&crew, &entries, &jobs, november(), at("12-02T00:00:00"), 2);
    // 900 × 2/3 × 40 % = 240; 900 × 1/3 × 50 % = 150
    assert_eq!(sheet.iter().map(|row| row.pay).collect::<Vec<_>>(), [Some(dec("240.00")), Some(dec("150.00")), None]);
    assert_eq!(sheet[0].jobs[0].number, "2026-007");
    assert_eq!((sheet[0].clocked_s, sheet[2].jobs.len()), (0, 0));
}

#[test]
fn a_quote_that_shares_net_shares_it_to_the_cent() {
    let crew: Vec<Technician> = (1..=3).map(|nth| somebody(nth, Pay::Share { percent: dec("10") })).collect();
    let entries: Vec<TimeEntry> = (1..=3).map(|nth| entry(7, nth, "11-02T08:00:00", "11-02T09:00:00")).collect();
    for (pool, coin) in [("100.00", 2), ("0.01", 2), ("1000", 0), ("99.999", 3)] {
        let jobs = [done(7, "400", Some(pool))];
        let sheet = pay_sheet(&crew, &entries, &jobs, november(), at("12-02T00:00:00"), coin);
        let pays: Vec<Decimal> = sheet.iter().filter_map(|row| row.pay).collect();
        assert_eq!(pays.iter().sum::<Decimal>(), dec(pool), "{pays:?}");
        let (least, most) = (pays.iter().min().unwrap(), pays.iter().max().unwrap());
        assert!(most - least <= Decimal::new(1, coin), "equal time, equal parts but for a coin: {pays:?}");
    }
}

#[test]
fn who_has_gone_is_there_only_where_they_worked() {
    let gone = Technician { gone: true, ..somebody(1, Pay::Hour { rate: dec("30") }) };
    let idle = pay_sheet(std::slice::from_ref(&gone), &[], &[], november(), at("12-02T00:00:00"), 2);
    assert!(idle.is_empty());
    let entries = [entry(7, 1, "11-02T08:00:00", "11-02T09:00:00")];
    let sheet = pay_sheet(&[gone], &entries, &[], november(), at("12-02T00:00:00"), 2);
    assert_eq!(sheet[0].pay, Some(dec("30.00")));
}
