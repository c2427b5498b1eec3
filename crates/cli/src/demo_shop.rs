//! Three jobs at different stages. Everything here is invented: no such shop, people, plates or cars
//! exist. Nothing of the readings is: the photos are rendered from panels of known shape, then read like
//! any others.

use anyhow::{Context, Result};
use dentwright_job::{At, Car, ChassisNumber, Customer, Job, Panel, Shop, Source, Stage};
use dentwright_price::{Access, Charge, Dent, Kind, Metal, Place, Pricing, RiLine, Sundry, Uplift, UpliftOn};
use dentwright_scene::demo::{self, Demo};
use dentwright_server::{read_waiting, take_spots};
use dentwright_store::{NewDamage, NewDent, NewJob, Store};
use jiff::{SignedDuration, Timestamp, tz::TimeZone};
use rust_decimal::Decimal;
use std::path::PathBuf;
use uuid::Uuid;

/// Fills an empty shop.
pub async fn fill(store: &Store) -> Result<()> {
    let now = Timestamp::now();
    store.save_shop(&shop(), now).await?;
    let door = take_in(store, kombi(), now).await?;
    let bonnet = take_in(store, tavro(), now).await?;
    let wing = take_in(store, hilde(), now).await?;
    println!("Rendering and reading six captures of panels whose shape is known …");
    fill_door(store, &door, now).await.context("the job with the door")?;
    fill_bonnet(store, &bonnet, now).await.context("the job with the bonnet")?;
    fill_wing(store, &wing, now).await.context("the job with the wing")?;
    Ok(())
}

/// Two dings on a door, measured before, between the rounds and after: finished.
async fn fill_door(store: &Store, job: &Job, now: Timestamp) -> Result<()> {
    let note = "Car park. The lower one sits close to the body line.";
    let door = mark(store, job, Panel::FrontDoorLeft, (0.55, 0.62), note, now).await?;
    let before = measure(store, door, "demo_door_before", now).await?;
    take_spots(store, before).await?;
    for round in ["demo_door_round_1", "demo_door_round_2", "demo_door_after"] {
        measure(store, door, round, now).await?;
    }
    let trim = RiLine { what: "Door card, left front".into(), charge: Charge::Hours(Decimal::new(8, 1)) };
    let clips = Sundry { what: "Clips for the door card".into(), amount: Decimal::new(6_50, 2) };
    let pricing = Pricing { ri_lines: vec![trim], sundries: vec![clips], ..shop().pricing() };
    store.save_pricing(job.id, &pricing, None, now).await?;
    store.change_job(job.id, |head| head.stage = Stage::Finished, now).await?;
    Ok(())
}

/// Hail on an aluminium bonnet, quoted; the roof counted by hand.
async fn fill_bonnet(store: &Store, job: &Job, now: Timestamp) -> Result<()> {
    let bonnet = mark(store, job, Panel::Bonnet, (0.45, 0.4), "Hail. Insulation comes off for access.", now).await?;
    let reading = measure(store, bonnet, "demo_bonnet_hail", now).await?;
    take_spots(store, reading).await?;
    let roof = mark(store, job, Panel::Roof, (0.5, 0.35), "Counted under the lamp.", now).await?;
    let hail = |width_mm: f64, depth_mm: f64, count| Dent {
        kind: Kind::Hail,
        length_mm: width_mm,
        width_mm,
        depth_mm,
        metal: Metal::Steel,
        access: Access::TrimOff,
        place: Place::Flat,
        sharpness: None,
        count,
    };
    let dents = [hail(10.0, 0.3, 14), hail(20.0, 0.6, 9), hail(30.0, 1.0, 2)];
    store.add_dents(roof, &dents.map(|dent| NewDent { dent, source: Source::Hand })).await?;
    let lining = RiLine { what: "Headlining".into(), charge: Charge::Hours(Decimal::new(3, 0)) };
    let uplift =
        Uplift { what: "Aluminium bonnet, edge dents".into(), percent: Decimal::new(10, 0), on: UpliftOn::Dents };
    let pricing = Pricing { ri_lines: vec![lining], uplifts: vec![uplift], ..shop().pricing() };
    store.save_pricing(job.id, &pricing, None, now).await?;
    store.change_job(job.id, |head| head.stage = Stage::Quoted, now).await?;
    Ok(())
}

/// A wing with a low and its crown, just taken in and measured.
async fn fill_wing(store: &Store, job: &Job, now: Timestamp) -> Result<()> {
    let wing = mark(store, job, Panel::FrontWingRight, (0.6, 0.3), "Leaned on by a ladder.", now).await?;
    measure(store, wing, "demo_wing_crown", now).await?;
    Ok(())
}

async fn take_in(store: &Store, new: NewJob, now: Timestamp) -> Result<Job> {
    Ok(store.take_in(&new, now, now.to_zoned_datetime(TimeZone::system()).year()).await?)
}

async fn mark(store: &Store, job: &Job, panel: Panel, at: (f64, f64), note: &str, now: Timestamp) -> Result<Uuid> {
    let new = NewDamage { panel, at: At::new(at.0, at.1)?, note: note.to_owned() };
    Ok(store.add_damage(job.id, &new, now).await?.id)
}

/// Renders a capture, files it, reads it.
async fn measure(store: &Store, damage: Uuid, recipe: &str, now: Timestamp) -> Result<Uuid> {
    let one = *demo::ALL.iter().find(|one| one.recipe == recipe).context("there is no such demo capture")?;
    let scratch = store.files().scratch()?;
    let folder = scratch.path().to_owned();
    let files = tokio::task::spawn_blocking(move || photos(&one, folder)).await??;
    let (_, task) = store.add_capture(damage, files, now).await?;
    read_waiting(store).await?;
    let task = store.task(task).await?;
    let why = task.error.map(|error| error.message).unwrap_or_default();
    task.reading.with_context(|| format!("{recipe} was not read: {why}"))
}

/// The photos and their description, without the truth beside them.
fn photos(one: &Demo, folder: PathBuf) -> Result<Vec<(String, PathBuf)>> {
    one.render()?.write_photos(&folder)?;
    let mut files = Vec::new();
    for entry in std::fs::read_dir(&folder)? {
        let entry = entry?;
        files.push((entry.file_name().to_string_lossy().into_owned(), entry.path()));
    }
    Ok(files)
}

fn shop() -> Shop {
    Shop {
        name: "Linden Dent Works (invented)".into(),
        address: "Example Street 1\n00000 Invented Town".into(),
        phone: "+00 555 0100".into(),
        email: "shop@example.org".into(),
        tax_id: "XX 000 000 000".into(),
        ..Shop::default()
    }
}

fn customer(name: &str, address: &str, phone: &str) -> Customer {
    Customer { name: name.into(), address: address.into(), phone: phone.into(), email: String::new() }
}

fn in_days(days: i64) -> Option<jiff::civil::Date> {
    Some((Timestamp::now() + SignedDuration::from_hours(24 * days)).to_zoned_datetime(TimeZone::system()).date())
}

fn kombi() -> NewJob {
    NewJob {
        customer: customer("Ada Lindqvist (invented)", "Example Street 12\n00000 Invented Town", "+00 555 0131"),
        car: Car {
            // The worked example of 49 CFR 565, on no car of ours.
            vin: ChassisNumber::of("1M8GDM9AXKP042788"),
            plate: "EX 204 A".into(),
            make: "Vardo".into(),
            model: "Kombi 4".into(),
            year: Some(2023),
            colour: "deep blue, metallic".into(),
            paint: "clear coat over metallic, 112 to 124 µm, no repaint seen".into(),
            odometer_km: Some(48_210),
            high_voltage: Some(false),
            ..Car::default()
        },
        promised: in_days(1),
        promised_time: Some(jiff::civil::time(16, 0, 0, 0)),
        place: "hall, bay 1".into(),
        ..NewJob::default()
    }
}

fn tavro() -> NewJob {
    NewJob {
        customer: customer("Tomas Brandt (invented)", "Example Lane 3\n00000 Invented Town", "+00 555 0118"),
        car: Car {
            plate: "EX 118 C".into(),
            make: "Tavro".into(),
            model: "City".into(),
            year: Some(2024),
            colour: "silver".into(),
            paint: "118 µm".into(),
            odometer_km: Some(12_940),
            high_voltage: Some(true),
            metals: [(Panel::Bonnet, Metal::Aluminium)].into(),
            ..Car::default()
        },
        promised: in_days(4),
        place: "yard".into(),
        notes: "Insurer pays; the customer wants the hours line by line.".into(),
        ..NewJob::default()
    }
}

fn hilde() -> NewJob {
    NewJob {
        customer: customer("Ines Ferrer (invented)", "", "+00 555 0177"),
        car: Car {
            plate: "EX 077 K".into(),
            make: "Hilde".into(),
            model: "Tourer".into(),
            year: Some(2021),
            colour: "black".into(),
            odometer_km: Some(97_500),
            ..Car::default()
        },
        ..NewJob::default()
    }
}
