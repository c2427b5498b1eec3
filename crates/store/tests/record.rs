//! What is written comes back, and goes with what it belongs to.

mod common;

use common::*;
use dentwright_job::{At, Panel, Shop, Source, Stage};
use dentwright_price::{Charge, Discount, HoursSettings, Kind, Pricing, RiLine, Uplift, UpliftOn};
use dentwright_store::{DamageChange, NewDent, NewReading, StoreError};
use rust_decimal::Decimal;
use uuid::Uuid;

#[tokio::test]
async fn a_job_comes_back_as_it_was_taken_in() {
    let (_folder, store) = shop().await;
    let job = store.take_in(&new_job(), now(), YEAR).await.unwrap();
    assert_eq!((job.number.as_str(), job.stage, job.created), ("2026-001", Stage::TakenIn, now()));
    let new = new_job();
    assert_eq!(
        (&job.customer, &job.car, job.promised, job.promised_time, &job.place, &job.notes),
        (&new.customer, &new.car, new.promised, new.promised_time, &new.place, &new.notes)
    );
    assert_eq!(store.job(job.id).await.unwrap(), job);
    assert_eq!(store.jobs().await.unwrap(), [job]);
}

#[tokio::test]
async fn numbers_count_up_in_their_year_and_are_not_used_twice() {
    let (_folder, store) = shop().await;
    let first = store.take_in(&new_job(), now(), YEAR).await.unwrap();
    store.remove_job(first.id).await.unwrap();
    let mut numbers = Vec::new();
    for year in [YEAR, YEAR, YEAR + 1] {
        numbers.push(store.take_in(&new_job(), now(), year).await.unwrap().number);
    }
    assert_eq!(numbers, ["2026-002", "2026-003", "2027-001"]);
}

#[tokio::test]
async fn a_job_is_changed_and_what_is_not_named_stays() {
    let (_folder, store) = shop().await;
    let (job, _) = job_with_damage(&store).await;
    let before = store.job(job).await.unwrap();
    let edit = |head: &mut dentwright_store::JobHead| {
        head.stage = Stage::InWork;
        head.promised = None;
        head.car.year = None;
        head.car.vin = None;
        head.car.high_voltage = None;
        head.customer.name = "Other (invented)".into();
    };
    let after = store.change_job(job, edit, now()).await.unwrap();
    let mut expected = before.clone();
    (expected.stage, expected.promised) = (Stage::InWork, None);
    (expected.car.year, expected.car.vin, expected.car.high_voltage) = (None, None, None);
    expected.customer.name = "Other (invented)".into();
    assert_eq!(after, expected);
}

#[tokio::test]
async fn damages_and_dents_come_back_in_order() {
    let (_folder, store) = shop().await;
    let (job, damage) = job_with_damage(&store).await;
    let added = store.add_dents(damage, &[by_hand(Kind::Hail), by_hand(Kind::Crease)]).await.unwrap();
    let changed = dentwright_price::Dent { sharpness: None, count: 1, ..dent(Kind::Sharp) };
    let entry = store.change_dent(added[0].id, &changed).await.unwrap();
    assert_eq!((entry.id, &entry.dent, entry.source), (added[0].id, &changed, Source::Hand));
    let moved = DamageChange { at: Some(At::new(1.0, 0.0).unwrap()), ..DamageChange::default() };
    let damage_now = store.change_damage(damage, &moved).await.unwrap();
    assert_eq!((damage_now.at.x(), damage_now.at.y(), damage_now.note.as_str()), (1.0, 0.0, "by the handle"));
    assert_eq!(damage_now.dents, [entry, added[1].clone()]);
    assert_eq!(store.job(job).await.unwrap().damages, [damage_now]);
    store.remove_dent(added[0].id).await.unwrap();
    assert_eq!(store.damage(damage).await.unwrap().1.dents, [added[1].clone()]);
}

#[tokio::test]
async fn settings_come_back() {
    let (_folder, store) = shop().await;
    assert_eq!(store.shop().await.unwrap(), Shop::default());
    let named = Shop { name: "Linden (invented)".into(), hourly_rate: "101.50".parse().unwrap(), ..Shop::default() };
    store.save_shop(&named, now()).await.unwrap();
    store.save_shop(&named, now()).await.unwrap();
    let shop = store.shop().await.unwrap();
    assert_eq!((shop.hourly_rate.to_string().as_str(), &shop), ("101.50", &named));
    assert_eq!(store.hours().await.unwrap(), HoursSettings::default());
    let slower = HoursSettings { base_hours: 0.75, ..HoursSettings::default() };
    store.save_hours(&slower, now()).await.unwrap();
    assert_eq!(store.hours().await.unwrap(), slower);
}

#[tokio::test]
async fn what_was_entered_for_a_quote_comes_back_to_the_cent() {
    let (_folder, store) = shop().await;
    let (job, _) = job_with_damage(&store).await;
    let pricing = Pricing {
        ri_lines: vec![
            RiLine { what: "door card".into(), charge: Charge::Hours("0.80".parse().unwrap()) },
            RiLine { what: "lamp".into(), charge: Charge::Amount("60.10".parse().unwrap()) },
        ],
        uplifts: vec![Uplift { what: "aluminium".into(), percent: Decimal::from(25), on: UpliftOn::Dents }],
        discount: Some(Discount::Percent("2.5".parse().unwrap())),
        ..Shop::default().pricing()
    };
    for _ in 0..2 {
        assert!(store.save_pricing(job, &pricing, None, now()).await.unwrap());
    }
    assert_eq!(store.job(job).await.unwrap().pricing, Some(pricing.clone()));
    // saved by another since it was read: nothing is lost
    let since = store.pricing_saved(job).await.unwrap();
    let other = Pricing { discount: None, ..pricing.clone() };
    assert!(!store.save_pricing(job, &other, Some(since - 1), now()).await.unwrap());
    assert_eq!(store.job(job).await.unwrap().pricing, Some(pricing.clone()));
    assert!(store.save_pricing(job, &other, Some(since), now()).await.unwrap());
    assert_eq!(store.job(job).await.unwrap().pricing, Some(other));
    assert!(matches!(
        store.save_pricing(Uuid::nil(), &pricing, None, now()).await,
        Err(StoreError::Unknown { what: "job", .. })
    ));
}

#[tokio::test]
async fn photos_are_filed_once_and_go_with_the_last_that_names_them() {
    let (folder, store) = shop().await;
    let (job, damage) = job_with_damage(&store).await;
    let (_, other) = job_with_damage(&store).await;
    let (_scratch, files) = uploaded(&store, &[("a.jpg", b"one"), ("b.jpg", b"two"), ("again.jpg", b"one")]);
    let photos = store.add_photos(damage, files, now()).await.unwrap();
    let (_scratch, files) = uploaded(&store, &[("c.jpg", b"two")]);
    store.add_photos(other, files, now()).await.unwrap();
    let kept = store.damage(damage).await.unwrap().1.photos;
    assert_eq!(kept.iter().map(|photo| photo.name.as_str()).collect::<Vec<_>>(), ["a.jpg", "b.jpg"]);
    assert_eq!(store.files().read(&photos[1].hash).unwrap(), b"two");

    store.remove_job(job).await.unwrap();
    assert!(!store.files().has(&photos[0].hash), "nothing names it any more");
    assert!(store.files().has(&photos[1].hash), "the other job still names it");
    store.remove_photo(other, &photos[1].hash).await.unwrap();
    assert_eq!(files_below(&folder.path().join("files")), [] as [std::path::PathBuf; 0]);
}

#[tokio::test]
async fn a_capture_is_read_and_its_spots_become_dents_once() {
    let (_folder, store) = shop().await;
    let (job, damage) = job_with_damage(&store).await;
    let (_scratch, files) = uploaded(&store, &[("capture.toml", b"[panel]"), ("panel.jpg", b"jpeg")]);
    let (capture, task) = store.add_capture(damage, files, now()).await.unwrap();
    let out = tempfile::tempdir().unwrap();
    store.lay_out(capture, out.path()).await.unwrap();
    assert_eq!(std::fs::read(out.path().join("panel.jpg")).unwrap(), b"jpeg");

    assert_eq!(
        store.claim_task(now()).await.unwrap().map(|claimed| (claimed.task, claimed.capture)),
        Some((task, capture))
    );
    let (_scratch, maps) = uploaded(&store, &[("map.png", b"png")]);
    let new = NewReading {
        version: "0.1.0".into(),
        settings: serde_json::json!({ "finish_limit_mm": 0.01 }),
        facts: "{\"spots\":[]}".into(),
        files: maps,
    };
    let reading = store.keep_reading(task, new.clone(), now()).await.unwrap();
    let kept = store.reading(reading).await.unwrap();
    assert_eq!(
        (kept.capture, kept.damage, &kept.version, &kept.settings),
        (capture, damage, &new.version, &new.settings)
    );
    assert_eq!((kept.facts.as_str(), kept.files[0].0.as_str()), (new.facts.as_str(), "map.png"));
    let listed = store.job(job).await.unwrap().damages[0].captures[0].clone();
    assert_eq!((listed.task, listed.readings[0].id, listed.files.len()), (Some(task), reading, 2));

    let spot = |spot| NewDent {
        dent: dent(Kind::Round),
        source: Source::Reading { reading, spot, sigma_mm: 0.001, at_least: false },
    };
    assert_eq!(store.add_dents(damage, &[spot(0), spot(1)]).await.unwrap().len(), 2);
    let second = store.add_dents(damage, &[spot(0), spot(1), spot(2)]).await.unwrap();
    assert_eq!(second.iter().map(|entry| entry.source).collect::<Vec<_>>(), [spot(2).source]);
    assert_eq!(store.add_dents(damage, &[by_hand(Kind::Round), by_hand(Kind::Round)]).await.unwrap().len(), 2);

    store.remove_job(job).await.unwrap();
    assert!(matches!(store.reading(reading).await, Err(StoreError::Unknown { .. })));
    assert!(matches!(store.task(task).await, Err(StoreError::Unknown { .. })));
    assert!(!store.files().has(&kept.files[0].1));
}

#[tokio::test]
async fn unknown_ids_are_named() {
    let (_folder, store) = shop().await;
    let id = Uuid::from_u128(7);
    let unknown = |error: StoreError| match error {
        StoreError::Unknown { what, id } => (what, id),
        other => panic!("{other}"),
    };
    assert_eq!(unknown(store.job(id).await.unwrap_err()), ("job", id));
    assert_eq!(unknown(store.remove_job(id).await.unwrap_err()), ("job", id));
    assert_eq!(unknown(store.change_job(id, |_| (), now()).await.unwrap_err()), ("job", id));
    assert_eq!(unknown(store.add_damage(id, &new_damage(Panel::Roof), now()).await.unwrap_err()), ("job", id));
    assert_eq!(unknown(store.add_dents(id, &[by_hand(Kind::Hail)]).await.unwrap_err()), ("damage", id));
    assert_eq!(unknown(store.change_dent(id, &dent(Kind::Hail)).await.unwrap_err()), ("dent", id));
    assert_eq!(unknown(store.remove_dent(id).await.unwrap_err()), ("dent", id));
    assert_eq!(unknown(store.remove_damage(id).await.unwrap_err()), ("damage", id));
    assert_eq!(unknown(store.add_capture(id, Vec::new(), now()).await.unwrap_err()), ("damage", id));
    assert_eq!(unknown(store.add_task(id, now()).await.unwrap_err()), ("capture", id));
    assert_eq!(unknown(store.task(id).await.unwrap_err()), ("task", id));
    assert_eq!(unknown(store.reading(id).await.unwrap_err()), ("reading", id));
}
