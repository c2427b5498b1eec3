//! A shop in a folder of its own, and things to put in it.

#![allow(dead_code, reason = "each test takes what it needs")]

use dentwright_job::{At, Car, ChassisNumber, Customer, Panel, Source};
use dentwright_price::{Access, Dent, Kind, Metal, Place};
use dentwright_store::{NewDamage, NewDent, NewJob, Store};
use jiff::Timestamp;
use std::path::PathBuf;
use tempfile::TempDir;
use uuid::Uuid;

pub const YEAR: i16 = 2026;

pub fn now() -> Timestamp {
    "2026-11-25T08:00:00Z".parse().unwrap()
}

pub async fn shop() -> (TempDir, Store) {
    let folder = tempfile::tempdir().unwrap();
    let store = Store::open(folder.path()).await.unwrap();
    (folder, store)
}

pub fn new_job() -> NewJob {
    NewJob {
        customer: Customer {
            name: "Zoë Größe (invented)".into(),
            address: "Example Street 1\nExample Town".into(),
            phone: "000".into(),
            email: "zoe@example.org".into(),
        },
        car: Car {
            vin: ChassisNumber::of("1M8GDM9AXKP042788"),
            plate: "EX 1".into(),
            make: "Vardo".into(),
            model: "Kombi '4'; --".into(),
            year: Some(2021),
            colour: "blue".into(),
            paint: "115 to 130 µm".into(),
            odometer_km: Some(48_200),
            high_voltage: Some(true),
            metals: [(Panel::Bonnet, Metal::Aluminium)].into(),
        },
        promised: Some(jiff::civil::date(2026, 11, 27)),
        promised_time: Some(jiff::civil::time(16, 30, 0, 0)),
        place: "hall 2, by the door".into(),
        notes: "old: \"none\" 👍".into(),
    }
}

pub fn new_damage(panel: Panel) -> NewDamage {
    NewDamage { panel, at: At::new(0.25, 0.75).unwrap(), note: "by the handle".into() }
}

pub fn dent(kind: Kind) -> Dent {
    Dent {
        kind,
        length_mm: 25.5,
        width_mm: 20.25,
        depth_mm: 0.1 + 0.2,
        metal: Metal::HighStrengthSteel,
        access: Access::GlueOnly,
        place: Place::BodyLine,
        sharpness: Some(0.125),
        count: 7,
    }
}

pub fn by_hand(kind: Kind) -> NewDent {
    NewDent { dent: dent(kind), source: Source::Hand }
}

/// Files in a scratch folder, as an upload leaves them.
pub fn uploaded(store: &Store, files: &[(&str, &[u8])]) -> (TempDir, Vec<(String, PathBuf)>) {
    let scratch = store.files().scratch().unwrap();
    let listed = files.iter().enumerate().map(|(k, (name, bytes))| {
        let path = scratch.path().join(k.to_string());
        std::fs::write(&path, bytes).unwrap();
        ((*name).to_owned(), path)
    });
    let listed = listed.collect();
    (scratch, listed)
}

pub async fn job_with_damage(store: &Store) -> (Uuid, Uuid) {
    let job = store.take_in(&new_job(), now(), YEAR).await.unwrap();
    let damage = store.add_damage(job.id, &new_damage(Panel::Bonnet), now()).await.unwrap();
    (job.id, damage.id)
}

/// Files below a folder.
pub fn files_below(folder: &std::path::Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if entry.is_dir() { found.extend(files_below(&entry)) } else { found.push(entry) }
    }
    found.sort();
    found
}
