//! Photos of damages.

use crate::damages::{Scope, hashes};
use crate::error::known;
use crate::ids::{ms, new_id};
use crate::{Store, StoreError};
use dentwright_job::Photo;
use jiff::Timestamp;
use std::path::PathBuf;
use uuid::Uuid;

impl Store {
    /// Files photos of a damage, all or none. Each is a name and a file in a
    /// [scratch folder](crate::Files::scratch), which is gone from there afterwards. The same photo twice is one.
    ///
    /// # Errors
    /// When there is no such damage.
    pub async fn add_photos(
        &self,
        damage: Uuid,
        photos: Vec<(String, PathBuf)>,
        now: Timestamp,
    ) -> Result<Vec<Photo>, StoreError> {
        let shelves = self.shelves.clone().read_owned().await;
        let (names, filed) = self.filed(photos).await?;
        let mut change = self.change().await?;
        let found: Option<String> = sqlx::query_scalar("SELECT id FROM damage WHERE id = $1")
            .bind(damage.to_string())
            .fetch_optional(&mut *change)
            .await?;
        known(found, "damage", damage)?;
        let mut added = Vec::new();
        for (name, file) in names.into_iter().zip(filed) {
            sqlx::query(
                "INSERT INTO photo (id, damage_id, hash, name, bytes, created) VALUES ($1, $2, $3, $4, $5, $6)
                 ON CONFLICT (damage_id, hash) DO NOTHING",
            )
            .bind(new_id().to_string())
            .bind(damage.to_string())
            .bind(&file.hash)
            .bind(&name)
            .bind(i64::try_from(file.bytes).unwrap_or(i64::MAX))
            .bind(ms(now))
            .execute(&mut *change)
            .await?;
            added.push(Photo { hash: file.hash, name });
        }
        change.commit().await?;
        drop(shelves);
        Ok(added)
    }

    /// Takes a photo off a damage; its file goes where nothing else names it.
    ///
    /// # Errors
    /// When the damage has no such photo.
    pub async fn remove_photo(&self, damage: Uuid, hash: &str) -> Result<(), StoreError> {
        let alone = self.shelves.clone().write_owned().await;
        let done = sqlx::query("DELETE FROM photo WHERE damage_id = $1 AND hash = $2")
            .bind(damage.to_string())
            .bind(hash)
            .execute(&self.pool)
            .await?;
        known((done.rows_affected() > 0).then_some(()), "photo of damage", damage)?;
        self.remove_unnamed(vec![hash.to_owned()], alone).await
    }

    /// Whether a file is a photo of some damage, car or capture, so that it may be shown.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn is_photo(&self, hash: &str) -> Result<bool, StoreError> {
        let named: i64 = sqlx::query_scalar(
            "SELECT (SELECT COUNT(*) FROM photo WHERE hash = $1) + (SELECT COUNT(*) FROM job_photo WHERE hash = $1)
                  + (SELECT COUNT(*) FROM capture_file WHERE hash = $1)",
        )
        .bind(hash)
        .fetch_one(&self.pool)
        .await?;
        Ok(named > 0)
    }

    /// Hashes of every file that the record names below a job.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn files_of_job(&self, job: Uuid) -> Result<Vec<String>, StoreError> {
        let mut change = self.change().await?;
        let mut all = hashes(&mut change, Scope::Job(job)).await?;
        all.extend(crate::job_photos::hashes(&mut change, job).await?);
        Ok(all)
    }
}
