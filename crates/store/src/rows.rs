//! Rows of the database and what they mean.

use crate::StoreError;
use crate::ids::{id, maybe_id, of_code, of_json, time};
use crate::jobs::JobHead;
use crate::row::row;
use dentwright_job::{At, Car, ChassisNumber, Customer, DentEntry, Source};
use dentwright_price::Dent;
use uuid::Uuid;

row! {
    pub(crate) struct JobRow {
        id: String,
        number: String,
        created: i64,
        stage: String,
        promised: Option<String>,
        promised_time: Option<String>,
        place: String,
        finished: Option<i64>,
        notes: String,
        name: String,
        address: String,
        phone: String,
        email: String,
        vin: Option<String>,
        plate: String,
        make: String,
        model: String,
        year: Option<i64>,
        colour: String,
        paint: String,
        odometer_km: Option<i64>,
        high_voltage: Option<i64>,
        metals: String,
        pricing: Option<String>,
    }
}

impl JobRow {
    pub(crate) fn head(self) -> Result<JobHead, StoreError> {
        let broken = StoreError::broken("job");
        let promised = self.promised.as_deref().map(str::parse).transpose();
        let promised_time = self.promised_time.as_deref().map(str::parse).transpose();
        Ok(JobHead {
            id: id(&self.id)?,
            number: self.number,
            created: time(self.created)?,
            stage: of_code(&self.stage, "stage")?,
            promised: promised.map_err(|why: jiff::Error| broken(why.to_string()))?,
            promised_time: promised_time.map_err(|why: jiff::Error| broken(why.to_string()))?,
            place: self.place,
            finished: self.finished.map(time).transpose()?,
            notes: self.notes,
            customer: Customer { name: self.name, address: self.address, phone: self.phone, email: self.email },
            car: Car {
                vin: self.vin.as_deref().and_then(ChassisNumber::of),
                plate: self.plate,
                make: self.make,
                model: self.model,
                year: self.year.map(whole).transpose().map_err(&broken)?,
                colour: self.colour,
                paint: self.paint,
                odometer_km: self.odometer_km.map(whole).transpose().map_err(&broken)?,
                high_voltage: self.high_voltage.map(|yes| yes != 0),
                metals: of_json(&self.metals, "metals")?,
            },
            pricing: self.pricing.as_deref().map(|text| of_json(text, "quote input")).transpose()?,
        })
    }
}

row! {
    pub(crate) struct DamageRow {
        pub id: String,
        pub job_id: String,
        pub panel: String,
        x: f64,
        y: f64,
        pub note: String,
    }
}

impl DamageRow {
    pub(crate) fn at(&self) -> Result<At, StoreError> {
        At::new(self.x, self.y).map_err(|why| StoreError::Broken { what: "damage", why: why.to_string() })
    }
}

row! {
    pub(crate) struct DentRow {
        id: String,
        pub damage_id: String,
        kind: String,
        length_mm: f64,
        width_mm: f64,
        depth_mm: f64,
        metal: String,
        access: String,
        place: String,
        sharpness: Option<f64>,
        amount: i64,
        reading_id: Option<String>,
        spot: Option<i64>,
        sigma_mm: Option<f64>,
        at_least: i64,
    }
}

impl DentRow {
    pub(crate) fn entry(self) -> Result<DentEntry, StoreError> {
        let broken = StoreError::broken("dent");
        let reading = maybe_id(self.reading_id.as_deref())?;
        let spot = self.spot.map(whole).transpose().map_err(&broken)?;
        Ok(DentEntry {
            id: id(&self.id)?,
            dent: Dent {
                kind: of_code(&self.kind, "kind")?,
                length_mm: self.length_mm,
                width_mm: self.width_mm,
                depth_mm: self.depth_mm,
                metal: of_code(&self.metal, "metal")?,
                access: of_code(&self.access, "access")?,
                place: of_code(&self.place, "place")?,
                sharpness: self.sharpness,
                count: whole(self.amount).map_err(&broken)?,
            },
            source: source(reading, spot, self.sigma_mm, self.at_least != 0),
        })
    }
}

fn source(reading: Option<Uuid>, spot: Option<u32>, sigma_mm: Option<f64>, at_least: bool) -> Source {
    match (reading, spot, sigma_mm) {
        (Some(reading), Some(spot), Some(sigma_mm)) => Source::Reading { reading, spot, sigma_mm, at_least },
        _ => Source::Hand,
    }
}

row! {
    /// A file named by a capture or a reading.
    pub(crate) struct FileRow {
        pub of: String,
        pub name: String,
        pub hash: String,
        pub bytes: i64,
    }
}

fn whole<T: TryFrom<i64>>(value: i64) -> Result<T, String> {
    T::try_from(value).map_err(|_| format!("{value} is out of range"))
}
