//! Jobs with their customers and cars.

use crate::damages::{Scope, damages};
use crate::error::known;
use crate::ids::{code, ms, new_id, to_json};
use crate::open::Change;
use crate::rows::JobRow;
use crate::{Store, StoreError};
use dentwright_job::{Car, ChassisNumber, Customer, Job, Stage, job_number};
use dentwright_price::Pricing;
use jiff::Timestamp;
use jiff::civil::{Date, Time};
use uuid::Uuid;

/// What is known when a car is taken in.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct NewJob {
    /// Who brought it.
    pub customer: Customer,
    /// The car.
    pub car: Car,
    /// The day it is promised for.
    pub promised: Option<Date>,
    /// At what time of that day.
    pub promised_time: Option<Time>,
    /// Where the car stands.
    pub place: String,
    /// Notes.
    pub notes: String,
}

/// A job without its damages.
#[derive(Debug, Clone, PartialEq)]
pub struct JobHead {
    /// Its id.
    pub id: Uuid,
    /// Its number.
    pub number: String,
    /// When it was taken in.
    pub created: Timestamp,
    /// How far it has come.
    pub stage: Stage,
    /// Who brought it.
    pub customer: Customer,
    /// The car.
    pub car: Car,
    /// The day it is promised for.
    pub promised: Option<Date>,
    /// At what time of that day.
    pub promised_time: Option<Time>,
    /// Where the car stands.
    pub place: String,
    /// When its work was done; follows the stage.
    pub finished: Option<Timestamp>,
    /// Notes.
    pub notes: String,
    /// What was entered for the quote.
    pub pricing: Option<Pricing>,
}

/// All columns of [`JobRow`]; what follows says which.
macro_rules! jobs {
    ($which:literal) => {
        concat!(
            "SELECT job.id, job.number, job.created, job.stage, job.promised, job.promised_time, job.place,
                    job.finished, job.notes,
                    customer.name, customer.address, customer.phone, customer.email,
                    car.vin, car.plate, car.make, car.model, car.year, car.colour, car.paint, car.odometer_km,
                    car.high_voltage, car.metals, quote_input.value AS pricing
             FROM job
             JOIN customer ON customer.id = job.customer_id
             JOIN car ON car.id = job.car_id
             LEFT JOIN quote_input ON quote_input.job_id = job.id ",
            $which
        )
    };
}

impl Store {
    /// Takes a car in; the job's number is the next of its year.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn take_in(&self, new: &NewJob, now: Timestamp, year: i16) -> Result<Job, StoreError> {
        self.take_in_as(new_id(), new, now, year).await
    }

    /// Takes a car in under an id that a device made without network; what is sent twice is one job.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn take_in_as(&self, id: Uuid, new: &NewJob, now: Timestamp, year: i16) -> Result<Job, StoreError> {
        let mut change = self.change().await?;
        let there: Option<String> = sqlx::query_scalar("SELECT id FROM job WHERE id = $1")
            .bind(id.to_string())
            .fetch_optional(&mut *change)
            .await?;
        if there.is_some() {
            drop(change);
            return self.job(id).await;
        }
        let nth: i64 = sqlx::query_scalar(
            "INSERT INTO job_count (year, last) VALUES ($1, 1)
             ON CONFLICT (year) DO UPDATE SET last = job_count.last + 1 RETURNING last",
        )
        .bind(i64::from(year))
        .fetch_one(&mut *change)
        .await?;
        let head = JobHead {
            id,
            number: job_number(year, u32::try_from(nth).unwrap_or(u32::MAX)),
            created: now,
            stage: Stage::TakenIn,
            customer: new.customer.clone(),
            car: new.car.clone(),
            promised: new.promised,
            promised_time: new.promised_time,
            place: new.place.clone(),
            finished: None,
            notes: new.notes.clone(),
            pricing: None,
        };
        insert(&mut change, &head, now).await?;
        change.commit().await?;
        Ok(head.with(Vec::new()))
    }

    /// A job with everything that belongs to it.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn job(&self, job: Uuid) -> Result<Job, StoreError> {
        let row: Option<JobRow> =
            sqlx::query_as(jobs!("WHERE job.id = $1")).bind(job.to_string()).fetch_optional(&self.pool).await?;
        let head = known(row, "job", job)?.head()?;
        let damages = damages(&self.pool, Scope::Job(job)).await?.into_iter().map(|(_, damage)| damage).collect();
        Ok(head.with(damages))
    }

    /// All jobs with everything that belongs to them, the latest first.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn jobs(&self) -> Result<Vec<Job>, StoreError> {
        let rows: Vec<JobRow> = sqlx::query_as(jobs!("ORDER BY job.id DESC")).fetch_all(&self.pool).await?;
        let mut of_job: std::collections::HashMap<Uuid, Vec<_>> = std::collections::HashMap::new();
        for (job, damage) in damages(&self.pool, Scope::All).await? {
            of_job.entry(job).or_default().push(damage);
        }
        let with_damages = |row: JobRow| {
            let head = row.head()?;
            let damages = of_job.remove(&head.id).unwrap_or_default();
            Ok(head.with(damages))
        };
        rows.into_iter().map(with_damages).collect()
    }

    /// Changes a job's head; nobody changes it in between. The id, number and pricing stay; when it was finished
    /// follows from its stage.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn change_job(
        &self,
        job: Uuid,
        edit: impl FnOnce(&mut JobHead) + Send,
        now: Timestamp,
    ) -> Result<Job, StoreError> {
        let mut change = self.change().await?;
        let row: Option<JobRow> =
            sqlx::query_as(jobs!("WHERE job.id = $1")).bind(job.to_string()).fetch_optional(&mut *change).await?;
        let mut head = known(row, "job", job)?.head()?;
        edit(&mut head);
        update(&mut change, job, &head, now).await?;
        change.commit().await?;
        self.job(job).await
    }

    /// When what a job's quote is made from was last saved, ms; 0 where it never was.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn pricing_saved(&self, job: Uuid) -> Result<i64, StoreError> {
        let saved: Option<i64> = sqlx::query_scalar("SELECT changed FROM quote_input WHERE job_id = $1")
            .bind(job.to_string())
            .fetch_optional(&self.pool)
            .await?;
        Ok(saved.unwrap_or(0))
    }

    /// Saves what a job's quote is made from; whether it was saved. Nothing is saved where it was saved elsewhere since
    /// `since`, ms, when it was read; none saves it whatever was there.
    ///
    /// # Errors
    /// When there is no such job.
    pub async fn save_pricing(
        &self,
        job: Uuid,
        pricing: &Pricing,
        since: Option<i64>,
        now: Timestamp,
    ) -> Result<bool, StoreError> {
        let done = sqlx::query(
            "INSERT INTO quote_input (job_id, value, changed) SELECT job.id, $2, $3 FROM job WHERE job.id = $1
             ON CONFLICT (job_id) DO UPDATE SET value = excluded.value, changed = excluded.changed
             WHERE $4 IS NULL OR quote_input.changed = $4",
        )
        .bind(job.to_string())
        .bind(to_json(pricing, "quote input")?)
        .bind(ms(now))
        .bind(since)
        .execute(&self.pool)
        .await?;
        if done.rows_affected() == 0 {
            self.job(job).await?;
        }
        Ok(done.rows_affected() > 0)
    }

    /// Removes a job, its customer and car, and the files that nothing else names. Papers with a number stay,
    /// since the law wants them kept.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn remove_job(&self, job: Uuid) -> Result<(), StoreError> {
        let alone = self.shelves.clone().write_owned().await;
        let mut change = self.change().await?;
        let mut hashes = crate::damages::hashes(&mut change, Scope::Job(job)).await?;
        hashes.extend(crate::job_photos::hashes(&mut change, job).await?);
        hashes.extend(crate::papers::remove_unnumbered(&mut change, job).await?);
        let row: Option<(String, String)> =
            sqlx::query_as("DELETE FROM job WHERE id = $1 RETURNING customer_id, car_id")
                .bind(job.to_string())
                .fetch_optional(&mut *change)
                .await?;
        let (customer, car) = known(row, "job", job)?;
        sqlx::query("DELETE FROM customer WHERE id = $1").bind(customer).execute(&mut *change).await?;
        sqlx::query("DELETE FROM car WHERE id = $1").bind(car).execute(&mut *change).await?;
        change.commit().await?;
        self.remove_unnamed(hashes, alone).await
    }
}

impl JobHead {
    fn with(self, damages: Vec<dentwright_job::Damage>) -> Job {
        Job {
            id: self.id,
            number: self.number,
            created: self.created,
            stage: self.stage,
            customer: self.customer,
            car: self.car,
            promised: self.promised,
            promised_time: self.promised_time,
            place: self.place,
            finished: self.finished,
            notes: self.notes,
            damages,
            pricing: self.pricing,
        }
    }
}

async fn insert(change: &mut Change, head: &JobHead, now: Timestamp) -> Result<(), StoreError> {
    let (customer, car) = (new_id().to_string(), new_id().to_string());
    sqlx::query("INSERT INTO customer (id, name, address, phone, email) VALUES ($1, '', '', '', '')")
        .bind(&customer)
        .execute(&mut **change)
        .await?;
    sqlx::query(
        "INSERT INTO car (id, plate, make, model, colour, paint, metals) VALUES ($1, '', '', '', '', '', '{}')",
    )
    .bind(&car)
    .execute(&mut **change)
    .await?;
    sqlx::query(
        "INSERT INTO job (id, number, created, changed, stage, customer_id, car_id, notes)
         VALUES ($1, $2, $3, $4, $5, $6, $7, '')",
    )
    .bind(head.id.to_string())
    .bind(&head.number)
    .bind(ms(head.created))
    .bind(ms(now))
    .bind(code(&head.stage))
    .bind(customer)
    .bind(car)
    .execute(&mut **change)
    .await?;
    update(change, head.id, head, now).await
}

async fn update(change: &mut Change, job: Uuid, head: &JobHead, now: Timestamp) -> Result<(), StoreError> {
    let job = job.to_string();
    sqlx::query(
        "UPDATE job SET changed = $2, stage = $3, promised = $4, notes = $5, promised_time = $6, place = $7,
                finished = CASE WHEN $8 = 1 THEN COALESCE(finished, $2) END
         WHERE id = $1",
    )
    .bind(&job)
    .bind(ms(now))
    .bind(code(&head.stage))
    .bind(head.promised.map(|day| day.to_string()))
    .bind(&head.notes)
    .bind(head.promised_time.map(|time| time.to_string()))
    .bind(&head.place)
    .bind(i64::from(head.stage >= Stage::Finished))
    .execute(&mut **change)
    .await?;
    sqlx::query(
        "UPDATE customer SET name = $2, address = $3, phone = $4, email = $5
         WHERE id = (SELECT customer_id FROM job WHERE job.id = $1)",
    )
    .bind(&job)
    .bind(&head.customer.name)
    .bind(&head.customer.address)
    .bind(&head.customer.phone)
    .bind(&head.customer.email)
    .execute(&mut **change)
    .await?;
    let car = &head.car;
    sqlx::query(
        "UPDATE car SET vin = $2, plate = $3, make = $4, model = $5, year = $6, colour = $7, paint = $8,
                odometer_km = $9, high_voltage = $10, metals = $11
         WHERE id = (SELECT car_id FROM job WHERE job.id = $1)",
    )
    .bind(&job)
    .bind(car.vin.as_ref().map(ChassisNumber::as_str))
    .bind(&car.plate)
    .bind(&car.make)
    .bind(&car.model)
    .bind(car.year.map(i64::from))
    .bind(&car.colour)
    .bind(&car.paint)
    .bind(car.odometer_km.map(i64::from))
    .bind(car.high_voltage.map(i64::from))
    .bind(to_json(&car.metals, "metals")?)
    .execute(&mut **change)
    .await?;
    Ok(())
}
