//! Photos of the car as it came, for the places of the checklist.

use crate::error::known;
use crate::ids::{ms, new_id, of_code};
use crate::open::Change;
use crate::{Store, StoreError};
use dentwright_job::{Photo, Shot};
use jiff::Timestamp;
use std::path::PathBuf;
use uuid::Uuid;

impl Store {
    /// Files photos of a car, all or none; each as [`Store::add_photos`] takes them. The same photo twice is one.
    ///
    /// # Errors
    /// When there is no such job.
    pub async fn add_job_photos(
        &self,
        job: Uuid,
        shot: Shot,
        photos: Vec<(String, PathBuf)>,
        now: Timestamp,
    ) -> Result<(), StoreError> {
        let shelves = self.shelves.clone().read_owned().await;
        let (names, filed) = self.filed(photos).await?;
        let mut change = self.change().await?;
        let found: Option<String> = sqlx::query_scalar("SELECT id FROM job WHERE id = $1")
            .bind(job.to_string())
            .fetch_optional(&mut *change)
            .await?;
        known(found, "job", job)?;
        for (name, file) in names.into_iter().zip(filed) {
            sqlx::query(
                "INSERT INTO job_photo (id, job_id, shot, hash, name, bytes, created)
                 VALUES ($1, $2, $3, $4, $5, $6, $7) ON CONFLICT (job_id, shot, hash) DO NOTHING",
            )
            .bind(new_id().to_string())
            .bind(job.to_string())
            .bind(shot.code())
            .bind(&file.hash)
            .bind(&name)
            .bind(i64::try_from(file.bytes).unwrap_or(i64::MAX))
            .bind(ms(now))
            .execute(&mut *change)
            .await?;
        }
        change.commit().await?;
        drop(shelves);
        Ok(())
    }

    /// Photos of the checklist, in the order of entry.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn job_photos(&self, job: Uuid) -> Result<Vec<(Shot, Photo)>, StoreError> {
        let rows: Vec<(String, String, String)> =
            sqlx::query_as("SELECT shot, hash, name FROM job_photo WHERE job_id = $1 ORDER BY id")
                .bind(job.to_string())
                .fetch_all(&self.pool)
                .await?;
        let one = |(shot, hash, name): (String, String, String)| Ok((of_code(&shot, "shot")?, Photo { hash, name }));
        rows.into_iter().map(one).collect()
    }

    /// Takes a photo off the checklist; its file goes where nothing else names it.
    ///
    /// # Errors
    /// When the job has no such photo.
    pub async fn remove_job_photo(&self, job: Uuid, shot: Shot, hash: &str) -> Result<(), StoreError> {
        let alone = self.shelves.clone().write_owned().await;
        let done = sqlx::query("DELETE FROM job_photo WHERE job_id = $1 AND shot = $2 AND hash = $3")
            .bind(job.to_string())
            .bind(shot.code())
            .bind(hash)
            .execute(&self.pool)
            .await?;
        known((done.rows_affected() > 0).then_some(()), "photo of job", job)?;
        self.remove_unnamed(vec![hash.to_owned()], alone).await
    }
}

/// Files of the checklist.
pub(crate) async fn hashes(change: &mut Change, job: Uuid) -> Result<Vec<String>, StoreError> {
    let query = sqlx::query_scalar("SELECT hash FROM job_photo WHERE job_id = $1");
    Ok(query.bind(job.to_string()).fetch_all(&mut **change).await?)
}
