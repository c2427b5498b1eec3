//! Jobs and what is below them, as the API shows them.

use dentwright_job::{Capture, Car, ChassisNumber, Customer, Damage, DentEntry, Job, Panel, Source, Stage};
use dentwright_price::{Dent, Metal};
use jiff::civil::{Date, Time};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use utoipa::ToSchema;
use uuid::Uuid;

/// A job with everything below it.
#[derive(Debug, Serialize, ToSchema)]
pub struct JobJson {
    id: Uuid,
    /// Its number, as people say it.
    number: String,
    stage: Stage,
    customer: Customer,
    car: CarJson,
    /// The day it was promised for.
    #[schema(value_type = Option<String>, format = Date, required)]
    promised: Option<Date>,
    /// At what time of that day; none for any.
    #[schema(value_type = Option<String>, required)]
    promised_time: Option<Time>,
    /// Where the car stands.
    place: String,
    notes: String,
    damages: Vec<DamageJson>,
}

/// A car.
#[derive(Debug, Clone, Default, Serialize, Deserialize, ToSchema)]
#[serde(default)]
pub struct CarJson {
    /// The number on the car, whether or not it is a VIN.
    vin: Option<String>,
    plate: String,
    make: String,
    model: String,
    /// Year of building.
    year: Option<i16>,
    colour: String,
    /// What is known of the paint.
    paint: String,
    odometer_km: Option<u32>,
    /// Whether it carries more than 60 V DC; none where nobody has looked.
    high_voltage: Option<bool>,
    /// Metal of the panels that somebody has looked at.
    #[schema(value_type = BTreeMap<String, Metal>)]
    metals: BTreeMap<Panel, Metal>,
}

/// A damaged area of a panel.
#[derive(Debug, Serialize, ToSchema)]
pub struct DamageJson {
    id: Uuid,
    panel: Panel,
    /// Place on the panel as it is drawn, from the left, 0 to 1.
    x: f64,
    /// From the top.
    y: f64,
    note: String,
    dents: Vec<DentEntryJson>,
    /// Hashes of its photos.
    photos: Vec<String>,
    captures: Vec<CaptureJson>,
}

/// A dent, or several alike, in the record.
#[derive(Debug, Serialize, ToSchema)]
pub struct DentEntryJson {
    id: Uuid,
    dent: Dent,
    source: SourceJson,
    /// Whether its depth is a lower bound: part of it was too steep to read.
    at_least: bool,
}

/// Where a dent comes from.
#[derive(Debug, Clone, Copy, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum SourceJson {
    /// Entered by hand.
    Hand,
    /// A spot of a reading.
    Reading,
}

/// A folder of photos that readings are made from.
#[derive(Debug, Serialize, ToSchema)]
pub struct CaptureJson {
    id: Uuid,
    created: String,
    /// How many files it has.
    files: usize,
    /// The last task that read it.
    #[schema(required)]
    task_id: Option<Uuid>,
    readings: Vec<ReadingEntryJson>,
}

/// A reading in a list.
#[derive(Debug, Serialize, ToSchema)]
pub struct ReadingEntryJson {
    id: Uuid,
    created: String,
}

impl From<Job> for JobJson {
    fn from(job: Job) -> Self {
        Self {
            id: job.id,
            number: job.number,
            stage: job.stage,
            customer: job.customer,
            car: job.car.into(),
            promised: job.promised,
            promised_time: job.promised_time,
            place: job.place,
            notes: job.notes,
            damages: job.damages.into_iter().map(DamageJson::from).collect(),
        }
    }
}

impl From<Car> for CarJson {
    fn from(car: Car) -> Self {
        Self {
            vin: car.vin.map(|number| number.as_str().to_owned()),
            plate: car.plate,
            make: car.make,
            model: car.model,
            year: car.year,
            colour: car.colour,
            paint: car.paint,
            odometer_km: car.odometer_km,
            high_voltage: car.high_voltage,
            metals: car.metals,
        }
    }
}

impl From<CarJson> for Car {
    fn from(car: CarJson) -> Self {
        Self {
            vin: car.vin.as_deref().and_then(ChassisNumber::of),
            plate: car.plate,
            make: car.make,
            model: car.model,
            year: car.year,
            colour: car.colour,
            paint: car.paint,
            odometer_km: car.odometer_km,
            high_voltage: car.high_voltage,
            metals: car.metals,
        }
    }
}

impl From<Damage> for DamageJson {
    fn from(damage: Damage) -> Self {
        Self {
            id: damage.id,
            panel: damage.panel,
            x: damage.at.x(),
            y: damage.at.y(),
            note: damage.note,
            dents: damage.dents.into_iter().map(DentEntryJson::from).collect(),
            photos: damage.photos.into_iter().map(|photo| photo.hash).collect(),
            captures: damage.captures.into_iter().map(CaptureJson::from).collect(),
        }
    }
}

impl From<DentEntry> for DentEntryJson {
    fn from(entry: DentEntry) -> Self {
        let source = match entry.source {
            Source::Hand => SourceJson::Hand,
            Source::Reading { .. } => SourceJson::Reading,
        };
        let at_least = matches!(entry.source, Source::Reading { at_least: true, .. });
        Self { id: entry.id, dent: entry.dent, source, at_least }
    }
}

impl From<Capture> for CaptureJson {
    fn from(capture: Capture) -> Self {
        let reading =
            |one: &dentwright_job::ReadingEntry| ReadingEntryJson { id: one.id, created: one.created.to_string() };
        Self {
            id: capture.id,
            created: capture.created.to_string(),
            files: capture.files.len(),
            task_id: capture.task,
            readings: capture.readings.iter().map(reading).collect(),
        }
    }
}
