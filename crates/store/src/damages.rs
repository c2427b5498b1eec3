//! Damages and everything below them.

use crate::captures::captures;
use crate::error::known;
use crate::ids::{id, ms, new_id, of_code};
use crate::open::Change;
use crate::rows::{DamageRow, DentRow};
use crate::{Store, StoreError};
use dentwright_job::{At, Capture, Damage, DentEntry, Panel, Photo};
use jiff::Timestamp;
use sqlx::SqlitePool;
use std::collections::HashMap;
use tokio::sync::OwnedRwLockWriteGuard;
use uuid::Uuid;

/// A damage that is marked.
#[derive(Debug, Clone, PartialEq)]
pub struct NewDamage {
    /// Where.
    pub panel: Panel,
    /// Where on the panel.
    pub at: At,
    /// Note.
    pub note: String,
}

/// What is changed of a damage; none stays as it is.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct DamageChange {
    /// Where.
    pub panel: Option<Panel>,
    /// Where on the panel.
    pub at: Option<At>,
    /// Note.
    pub note: Option<String>,
}

/// Whose rows are meant.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Scope {
    All,
    Job(Uuid),
    Damage(Uuid),
}

/// A query over rows below damages, for a scope: once for each, since the text must be known beforehand.
macro_rules! scoped {
    ($scope:expr, $select:literal, $order:literal) => {
        match $scope {
            Scope::All => sqlx::query_as(concat!($select, " ", $order)),
            Scope::Job(job) => {
                sqlx::query_as(concat!($select, " WHERE damage.job_id = $1 ", $order)).bind(job.to_string())
            }
            Scope::Damage(damage) => {
                sqlx::query_as(concat!($select, " WHERE damage.id = $1 ", $order)).bind(damage.to_string())
            }
        }
    };
}
pub(crate) use scoped;

impl Store {
    /// Marks a damage.
    ///
    /// # Errors
    /// When there is no such job.
    pub async fn add_damage(&self, job: Uuid, new: &NewDamage, now: Timestamp) -> Result<Damage, StoreError> {
        self.add_damage_as(new_id(), job, new, now).await
    }

    /// Marks a damage under an id that a device made without network; what is sent twice is one damage.
    ///
    /// # Errors
    /// When there is no such job.
    pub async fn add_damage_as(
        &self,
        damage: Uuid,
        job: Uuid,
        new: &NewDamage,
        now: Timestamp,
    ) -> Result<Damage, StoreError> {
        let there: Option<String> = sqlx::query_scalar("SELECT id FROM damage WHERE id = $1 AND job_id = $2")
            .bind(damage.to_string())
            .bind(job.to_string())
            .fetch_optional(&self.pool)
            .await?;
        if there.is_some() {
            return Ok(self.damage(damage).await?.1);
        }
        let done = sqlx::query(
            "INSERT INTO damage (id, job_id, panel, x, y, note, created)
             SELECT $2, job.id, $3, $4, $5, $6, $7 FROM job WHERE job.id = $1",
        )
        .bind(job.to_string())
        .bind(damage.to_string())
        .bind(new.panel.code())
        .bind(new.at.x())
        .bind(new.at.y())
        .bind(&new.note)
        .bind(ms(now))
        .execute(&self.pool)
        .await?;
        known((done.rows_affected() > 0).then_some(()), "job", job)?;
        Ok(self.damage(damage).await?.1)
    }

    /// A damage with everything below it, and its job.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn damage(&self, damage: Uuid) -> Result<(Uuid, Damage), StoreError> {
        known(damages(&self.pool, Scope::Damage(damage)).await?.pop(), "damage", damage)
    }

    /// Changes a damage.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn change_damage(&self, damage: Uuid, to: &DamageChange) -> Result<Damage, StoreError> {
        let done = sqlx::query(
            "UPDATE damage SET panel = COALESCE($2, panel), x = COALESCE($3, x), y = COALESCE($4, y),
                    note = COALESCE($5, note) WHERE id = $1",
        )
        .bind(damage.to_string())
        .bind(to.panel.map(Panel::code))
        .bind(to.at.map(At::x))
        .bind(to.at.map(At::y))
        .bind(to.note.as_deref())
        .execute(&self.pool)
        .await?;
        known((done.rows_affected() > 0).then_some(()), "damage", damage)?;
        Ok(self.damage(damage).await?.1)
    }

    /// Removes a damage, what is below it, and the files that nothing else names.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn remove_damage(&self, damage: Uuid) -> Result<(), StoreError> {
        let alone = self.shelves.clone().write_owned().await;
        let mut change = self.change().await?;
        let hashes = hashes(&mut change, Scope::Damage(damage)).await?;
        let done =
            sqlx::query("DELETE FROM damage WHERE id = $1").bind(damage.to_string()).execute(&mut *change).await?;
        known((done.rows_affected() > 0).then_some(()), "damage", damage)?;
        change.commit().await?;
        self.remove_unnamed(hashes, alone).await
    }

    /// Removes those files that nothing in the record names any more.
    pub(crate) async fn remove_unnamed(
        &self,
        hashes: Vec<String>,
        alone: OwnedRwLockWriteGuard<()>,
    ) -> Result<(), StoreError> {
        let mut unnamed = Vec::new();
        for hash in hashes {
            let named: i64 = sqlx::query_scalar(
                "SELECT (SELECT COUNT(*) FROM photo WHERE hash = $1)
                      + (SELECT COUNT(*) FROM job_photo WHERE hash = $1)
                      + (SELECT COUNT(*) FROM capture_file WHERE hash = $1)
                      + (SELECT COUNT(*) FROM reading_file WHERE hash = $1)
                      + (SELECT COUNT(*) FROM paper_file WHERE hash = $1)",
            )
            .bind(&hash)
            .fetch_one(&self.pool)
            .await?;
            if named == 0 {
                unnamed.push(hash);
            }
        }
        let done = self.on_disk(move |files| unnamed.iter().try_for_each(|hash| files.remove(hash))).await;
        drop(alone);
        done
    }
}

/// Damages with everything below them, each with its job, in the order of entry.
pub(crate) async fn damages(pool: &SqlitePool, scope: Scope) -> Result<Vec<(Uuid, Damage)>, StoreError> {
    let rows: Vec<DamageRow> = scoped!(
        scope,
        "SELECT damage.id, damage.job_id, damage.panel, damage.x, damage.y, damage.note FROM damage",
        "ORDER BY damage.id"
    )
    .fetch_all(pool)
    .await?;
    let mut dents = dents(pool, scope).await?;
    let mut photos = photos(pool, scope).await?;
    let mut captures = captures(pool, scope).await?;
    let with_all = |row: DamageRow| {
        let damage = Damage {
            id: id(&row.id)?,
            panel: of_code(&row.panel, "panel")?,
            at: row.at()?,
            dents: dents.remove(&row.id).unwrap_or_default(),
            photos: photos.remove(&row.id).unwrap_or_default(),
            captures: captures.remove(&row.id).unwrap_or_default(),
            note: row.note,
        };
        Ok((id(&row.job_id)?, damage))
    };
    rows.into_iter().map(with_all).collect()
}

/// What belongs to each damage, by the damage's id as the database writes it.
pub(crate) type OfDamage<T> = HashMap<String, Vec<T>>;

async fn dents(pool: &SqlitePool, scope: Scope) -> Result<OfDamage<DentEntry>, StoreError> {
    let rows: Vec<DentRow> =
        scoped!(scope, "SELECT dent.* FROM dent JOIN damage ON damage.id = dent.damage_id", "ORDER BY dent.id")
            .fetch_all(pool)
            .await?;
    let mut of_damage = OfDamage::new();
    for row in rows {
        of_damage.entry(row.damage_id.clone()).or_default().push(row.entry()?);
    }
    Ok(of_damage)
}

async fn photos(pool: &SqlitePool, scope: Scope) -> Result<OfDamage<Photo>, StoreError> {
    let rows: Vec<(String, String, String)> = scoped!(
        scope,
        "SELECT photo.damage_id, photo.hash, photo.name FROM photo JOIN damage ON damage.id = photo.damage_id",
        "ORDER BY photo.id"
    )
    .fetch_all(pool)
    .await?;
    let mut of_damage = OfDamage::new();
    for (damage, hash, name) in rows {
        of_damage.entry(damage).or_default().push(Photo { hash, name });
    }
    Ok(of_damage)
}

/// Every file below these damages.
pub(crate) async fn hashes(change: &mut Change, scope: Scope) -> Result<Vec<String>, StoreError> {
    let rows: Vec<(String,)> = scoped!(
        scope,
        "SELECT file.hash FROM damage JOIN (
             SELECT damage_id, hash FROM photo
             UNION SELECT capture.damage_id, capture_file.hash FROM capture
                   JOIN capture_file ON capture_file.capture_id = capture.id
             UNION SELECT capture.damage_id, reading_file.hash FROM capture
                   JOIN reading ON reading.capture_id = capture.id
                   JOIN reading_file ON reading_file.reading_id = reading.id
         ) AS file ON file.damage_id = damage.id",
        ""
    )
    .fetch_all(&mut **change)
    .await?;
    Ok(rows.into_iter().map(|(hash,)| hash).collect())
}

/// Captures in a list, in one place so that the type is spelled once.
pub(crate) type Captures = OfDamage<Capture>;
