//! What is recorded while a car is taken in: old damage, paint readings, what was signed.
//!
//! Ids are made on the device, so that what is sent again after a lost answer is the same.

use crate::error::known;
use crate::ids::{code, id, ms, new_id, of_code, of_json, time, to_json};
use crate::{Store, StoreError};
use dentwright_job::{At, OldDamage, PaintReading};
use jiff::Timestamp;
use serde_json::Value;
use uuid::Uuid;

type OldRow = (String, String, f64, f64, String, String);

impl Store {
    /// Old damage of a job, in the order of entry.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn old_damages(&self, job: Uuid) -> Result<Vec<OldDamage>, StoreError> {
        let rows: Vec<OldRow> =
            sqlx::query_as("SELECT id, panel, x, y, kind, note FROM old_damage WHERE job_id = $1 ORDER BY created, id")
                .bind(job.to_string())
                .fetch_all(&self.pool)
                .await?;
        let one = |(own, panel, x, y, kind, note): OldRow| {
            let at = At::new(x, y).map_err(|why| StoreError::Broken { what: "old damage", why: why.to_string() })?;
            Ok(OldDamage { id: id(&own)?, panel: of_code(&panel, "panel")?, at, kind: of_code(&kind, "kind")?, note })
        };
        rows.into_iter().map(one).collect()
    }

    /// Marks old damage, or changes the mark.
    ///
    /// # Errors
    /// When there is no such job, or the id is another job's.
    pub async fn save_old_damage(&self, job: Uuid, old: &OldDamage, now: Timestamp) -> Result<(), StoreError> {
        let done = sqlx::query(
            "INSERT INTO old_damage (id, job_id, panel, x, y, kind, note, created)
             SELECT $1, job.id, $3, $4, $5, $6, $7, $8 FROM job WHERE job.id = $2
             ON CONFLICT (id) DO UPDATE SET panel = excluded.panel, x = excluded.x, y = excluded.y,
                kind = excluded.kind, note = excluded.note WHERE old_damage.job_id = excluded.job_id",
        )
        .bind(old.id.to_string())
        .bind(job.to_string())
        .bind(old.panel.code())
        .bind(old.at.x())
        .bind(old.at.y())
        .bind(code(&old.kind))
        .bind(&old.note)
        .bind(ms(now))
        .execute(&self.pool)
        .await?;
        known((done.rows_affected() > 0).then_some(()), "job", job)
    }

    /// Takes a mark of old damage away; nothing happens where it is gone.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn remove_old_damage(&self, job: Uuid, old: Uuid) -> Result<(), StoreError> {
        let query = sqlx::query("DELETE FROM old_damage WHERE job_id = $1 AND id = $2");
        query.bind(job.to_string()).bind(old.to_string()).execute(&self.pool).await?;
        Ok(())
    }

    /// Paint readings of a job, in the order of entry.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn paint_readings(&self, job: Uuid) -> Result<Vec<PaintReading>, StoreError> {
        let rows: Vec<(String, String, f64)> =
            sqlx::query_as("SELECT id, panel, um FROM paint_reading WHERE job_id = $1 ORDER BY created, id")
                .bind(job.to_string())
                .fetch_all(&self.pool)
                .await?;
        let one = |(own, panel, um): (String, String, f64)| {
            Ok(PaintReading { id: id(&own)?, panel: of_code(&panel, "panel")?, um })
        };
        rows.into_iter().map(one).collect()
    }

    /// Keeps a paint reading, which has passed its check.
    ///
    /// # Errors
    /// When there is no such job, or the id is another job's.
    pub async fn save_paint_reading(&self, job: Uuid, read: &PaintReading, now: Timestamp) -> Result<(), StoreError> {
        let done = sqlx::query(
            "INSERT INTO paint_reading (id, job_id, panel, um, created)
             SELECT $1, job.id, $3, $4, $5 FROM job WHERE job.id = $2
             ON CONFLICT (id) DO UPDATE SET panel = excluded.panel, um = excluded.um
                WHERE paint_reading.job_id = excluded.job_id",
        )
        .bind(read.id.to_string())
        .bind(job.to_string())
        .bind(read.panel.code())
        .bind(read.um)
        .bind(ms(now))
        .execute(&self.pool)
        .await?;
        known((done.rows_affected() > 0).then_some(()), "job", job)
    }

    /// Takes a paint reading back; nothing happens where it is gone.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn remove_paint_reading(&self, job: Uuid, read: Uuid) -> Result<(), StoreError> {
        let query = sqlx::query("DELETE FROM paint_reading WHERE job_id = $1 AND id = $2");
        query.bind(job.to_string()).bind(read.to_string()).execute(&self.pool).await?;
        Ok(())
    }

    /// Keeps what was signed at the car; under an id that came before, nothing is changed.
    ///
    /// # Errors
    /// When there is no such job.
    pub async fn keep_signed(
        &self,
        job: Uuid,
        own: Option<Uuid>,
        value: &Value,
        now: Timestamp,
    ) -> Result<(), StoreError> {
        let own = own.unwrap_or_else(new_id).to_string();
        let query = sqlx::query(
            "INSERT INTO signed (id, job_id, created, value) SELECT $1, job.id, $3, $4 FROM job WHERE job.id = $2
             ON CONFLICT (id) DO NOTHING",
        );
        query
            .bind(&own)
            .bind(job.to_string())
            .bind(ms(now))
            .bind(to_json(value, "signed paper")?)
            .execute(&self.pool)
            .await?;
        let kept: Option<String> = sqlx::query_scalar("SELECT id FROM signed WHERE id = $1 AND job_id = $2")
            .bind(&own)
            .bind(job.to_string())
            .fetch_optional(&self.pool)
            .await?;
        known(kept.map(|_| ()), "job", job)
    }

    /// What was signed last, and when it arrived.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn signed(&self, job: Uuid) -> Result<Option<(Timestamp, Value)>, StoreError> {
        let row: Option<(i64, String)> = sqlx::query_as(
            "SELECT created, value FROM signed WHERE job_id = $1 ORDER BY created DESC, id DESC LIMIT 1",
        )
        .bind(job.to_string())
        .fetch_optional(&self.pool)
        .await?;
        row.map(|(created, text)| Ok((time(created)?, of_json(&text, "signed paper")?))).transpose()
    }
}
