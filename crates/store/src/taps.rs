//! Dents counted on devices, one after another, and sent together when there is network.
//!
//! A tap adds to the line of its damage that is alike, so that two devices that count at one car add up in
//! whatever order they arrive. What arrives twice counts once.

use crate::error::known;
use crate::ids::{code, ms, new_id};
use crate::open::Change;
use crate::{Store, StoreError};
use dentwright_job::{Job, Panel};
use dentwright_price::{Dent, DentError};
use jiff::Timestamp;
use uuid::Uuid;

/// Dents counted, or taken back.
#[derive(Debug, Clone, PartialEq)]
pub struct Tap {
    /// Its id, made on the device.
    pub id: Uuid,
    /// The damage it belongs to; made where it is not there yet.
    pub damage: Uuid,
    /// Where that damage is.
    pub panel: Panel,
    /// What was counted; its own count does not matter.
    pub dent: Dent,
    /// How many; below zero where they are taken back.
    pub by: i32,
}

/// Why taps were not counted; none of them was.
#[derive(Debug, thiserror::Error)]
pub enum CountError {
    /// The record does not take them.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A line would hold what no dents can be.
    #[error(transparent)]
    Dent(#[from] DentError),
}

impl From<sqlx::Error> for CountError {
    fn from(error: sqlx::Error) -> Self {
        Self::Store(error.into())
    }
}

impl Store {
    /// Counts taps of a job, all or none, those left out that were counted before.
    ///
    /// # Errors
    /// When there is no such job, a damage is another job's, or a line would be none that can be priced.
    pub async fn count(&self, job: Uuid, taps: &[Tap], now: Timestamp) -> Result<Job, CountError> {
        let mut change = self.change().await?;
        let found: Option<String> = sqlx::query_scalar("SELECT id FROM job WHERE id = $1")
            .bind(job.to_string())
            .fetch_optional(&mut *change)
            .await?;
        known(found, "job", job)?;
        for tap in taps {
            if is_new(&mut change, tap.id, now).await? {
                there_is(&mut change, job, tap, now).await?;
                add(&mut change, tap).await?;
            }
        }
        change.commit().await?;
        Ok(self.job(job).await?)
    }
}

/// Whether nothing came under this id before; from now on it has.
pub(crate) async fn is_new(change: &mut Change, id: Uuid, now: Timestamp) -> Result<bool, StoreError> {
    let done = sqlx::query("INSERT INTO seen (id, at) VALUES ($1, $2) ON CONFLICT (id) DO NOTHING")
        .bind(id.to_string())
        .bind(ms(now))
        .execute(&mut **change)
        .await?;
    Ok(done.rows_affected() > 0)
}

/// Makes the damage where it is not there yet, or not any more.
async fn there_is(change: &mut Change, job: Uuid, tap: &Tap, now: Timestamp) -> Result<(), StoreError> {
    let of: Option<String> = sqlx::query_scalar(
        "INSERT INTO damage (id, job_id, panel, x, y, note, created) VALUES ($1, $2, $3, 0.5, 0.5, '', $4)
         ON CONFLICT (id) DO UPDATE SET panel = damage.panel RETURNING job_id",
    )
    .bind(tap.damage.to_string())
    .bind(job.to_string())
    .bind(tap.panel.code())
    .bind(ms(now))
    .fetch_optional(&mut **change)
    .await?;
    known(of.filter(|of| *of == job.to_string()).map(|_| ()), "damage", tap.damage)
}

/// Adds to the line that is alike, or begins one; a line of none goes.
async fn add(change: &mut Change, tap: &Tap) -> Result<(), CountError> {
    let line: Option<(String, i64)> = alike(
        sqlx::query_as(
            "SELECT id, amount FROM dent WHERE damage_id = $1 AND kind = $2 AND length_mm = $3 AND width_mm = $4
            AND depth_mm = $5 AND metal = $6 AND access = $7 AND place = $8 AND reading_id IS NULL
            AND (sharpness = $9 OR (sharpness IS NULL AND $9 IS NULL)) ORDER BY id LIMIT 1",
        ),
        tap,
    )
    .fetch_optional(&mut **change)
    .await?;
    let had = line.as_ref().map_or(0, |(_, amount)| *amount);
    let many = had + i64::from(tap.by);
    if many > 0 {
        Dent { count: u32::try_from(many).unwrap_or(u32::MAX), ..tap.dent.clone() }.check()?;
    }
    match line {
        Some((id, _)) if many > 0 => {
            sqlx::query("UPDATE dent SET amount = $2 WHERE id = $1").bind(id).bind(many).execute(&mut **change).await?;
        }
        Some((id, _)) => {
            sqlx::query("DELETE FROM dent WHERE id = $1").bind(id).execute(&mut **change).await?;
        }
        None if many > 0 => {
            let insert = sqlx::query_as::<_, (String,)>(
                "INSERT INTO dent (damage_id, kind, length_mm, width_mm, depth_mm, metal, access, place, sharpness, id, amount)
                 VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11) RETURNING id",
            );
            alike(insert, tap).bind(new_id().to_string()).bind(many).fetch_one(&mut **change).await?;
        }
        None => {}
    }
    Ok(())
}

type Asked<'q, T> = sqlx::query::QueryAs<'q, sqlx::Sqlite, T, <sqlx::Sqlite as sqlx::Database>::Arguments>;

/// Binds what makes dents alike, `$1` to `$9`.
fn alike<'q, T>(query: Asked<'q, T>, tap: &Tap) -> Asked<'q, T> {
    let dent = &tap.dent;
    query
        .bind(tap.damage.to_string())
        .bind(code(&dent.kind))
        .bind(dent.length_mm)
        .bind(dent.width_mm)
        .bind(dent.depth_mm)
        .bind(code(&dent.metal))
        .bind(code(&dent.access))
        .bind(code(&dent.place))
        .bind(dent.sharpness)
}
