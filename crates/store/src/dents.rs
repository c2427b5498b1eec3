//! Dents.

use crate::error::known;
use crate::ids::{code, new_id};
use crate::open::Change;
use crate::rows::DentRow;
use crate::{Store, StoreError};
use dentwright_job::{DentEntry, Source};
use dentwright_price::Dent;
use uuid::Uuid;

/// A dent that is entered or taken from a reading.
#[derive(Debug, Clone, PartialEq)]
pub struct NewDent {
    /// The dent, which has passed its check.
    pub dent: Dent,
    /// Where it comes from.
    pub source: Source,
}

impl Store {
    /// Adds dents to a damage, all or none. Spots that are dents already are left out.
    ///
    /// # Errors
    /// When there is no such damage.
    pub async fn add_dents(&self, damage: Uuid, new: &[NewDent]) -> Result<Vec<DentEntry>, StoreError> {
        let mut change = self.change().await?;
        let found: Option<String> = sqlx::query_scalar("SELECT id FROM damage WHERE id = $1")
            .bind(damage.to_string())
            .fetch_optional(&mut *change)
            .await?;
        known(found, "damage", damage)?;
        let mut added = Vec::new();
        for one in new {
            let entry = DentEntry { id: new_id(), dent: one.dent.clone(), source: one.source };
            if insert(&mut change, damage, &entry).await? {
                added.push(entry);
            }
        }
        change.commit().await?;
        Ok(added)
    }

    /// Changes a dent; where it comes from stays. A depth that is changed is no lower bound any more.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn change_dent(&self, id: Uuid, to: &Dent) -> Result<DentEntry, StoreError> {
        let row: Option<DentRow> = sqlx::query_as(
            "UPDATE dent SET at_least = CASE WHEN depth_mm = $5 THEN at_least ELSE 0 END,
                    kind = $2, length_mm = $3, width_mm = $4, depth_mm = $5, metal = $6, access = $7,
                    place = $8, sharpness = $9, amount = $10 WHERE id = $1 RETURNING *",
        )
        .bind(id.to_string())
        .bind(code(&to.kind))
        .bind(to.length_mm)
        .bind(to.width_mm)
        .bind(to.depth_mm)
        .bind(code(&to.metal))
        .bind(code(&to.access))
        .bind(code(&to.place))
        .bind(to.sharpness)
        .bind(i64::from(to.count))
        .fetch_optional(&self.pool)
        .await?;
        known(row, "dent", id)?.entry()
    }

    /// Removes a dent.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn remove_dent(&self, id: Uuid) -> Result<(), StoreError> {
        let done = sqlx::query("DELETE FROM dent WHERE id = $1").bind(id.to_string()).execute(&self.pool).await?;
        known((done.rows_affected() > 0).then_some(()), "dent", id)
    }
}

/// Whether it is new.
async fn insert(change: &mut Change, damage: Uuid, entry: &DentEntry) -> Result<bool, StoreError> {
    let (reading, spot, sigma_mm, at_least) = match entry.source {
        Source::Hand => (None, None, None, false),
        Source::Reading { reading, spot, sigma_mm, at_least } => {
            (Some(reading.to_string()), Some(i64::from(spot)), Some(sigma_mm), at_least)
        }
    };
    let dent = &entry.dent;
    let done = sqlx::query(
        "INSERT INTO dent (id, damage_id, kind, length_mm, width_mm, depth_mm, metal, access, place, sharpness, amount,
                           reading_id, spot, sigma_mm, at_least)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15)
         ON CONFLICT (reading_id, spot) DO NOTHING",
    )
    .bind(entry.id.to_string())
    .bind(damage.to_string())
    .bind(code(&dent.kind))
    .bind(dent.length_mm)
    .bind(dent.width_mm)
    .bind(dent.depth_mm)
    .bind(code(&dent.metal))
    .bind(code(&dent.access))
    .bind(code(&dent.place))
    .bind(dent.sharpness)
    .bind(i64::from(dent.count))
    .bind(reading)
    .bind(spot)
    .bind(sigma_mm)
    .bind(i64::from(at_least))
    .execute(&mut **change)
    .await?;
    Ok(done.rows_affected() > 0)
}
