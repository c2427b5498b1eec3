//! Calibrated cameras: added, never changed.

use crate::error::known;
use crate::ids::{id, ms, new_id, of_json, time};
use crate::row::row;
use crate::{Store, StoreError};
use jiff::Timestamp;
use uuid::Uuid;

/// A calibration to be kept.
#[derive(Debug, Clone, PartialEq)]
pub struct NewCamera {
    /// Maker and model, as photos name them.
    pub phone: String,
    /// 35 mm equivalent focal length, mm.
    pub focal_35mm: u32,
    /// Photo width and height, px.
    pub size_px: (u32, u32),
    /// The calibration, JSON.
    pub value: serde_json::Value,
}

/// A calibration in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredCamera {
    /// Its id.
    pub id: Uuid,
    /// When it was made.
    pub created: Timestamp,
    /// What was kept.
    pub camera: NewCamera,
}

row! {
    struct Row {
        id: String,
        phone: String,
        focal_35mm: i64,
        width_px: i64,
        height_px: i64,
        created: i64,
        value: String,
    }
}

impl Store {
    /// Keeps a calibration.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn add_camera(&self, new: &NewCamera, now: Timestamp) -> Result<Uuid, StoreError> {
        let camera = new_id();
        sqlx::query(
            "INSERT INTO camera (id, phone, focal_35mm, width_px, height_px, created, value)
             VALUES ($1, $2, $3, $4, $5, $6, $7)",
        )
        .bind(camera.to_string())
        .bind(&new.phone)
        .bind(i64::from(new.focal_35mm))
        .bind(i64::from(new.size_px.0))
        .bind(i64::from(new.size_px.1))
        .bind(ms(now))
        .bind(new.value.to_string())
        .execute(&self.pool)
        .await?;
        Ok(camera)
    }

    /// All calibrations, newest first.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn cameras(&self) -> Result<Vec<StoredCamera>, StoreError> {
        let rows: Vec<Row> = sqlx::query_as(
            "SELECT id, phone, focal_35mm, width_px, height_px, created, value FROM camera ORDER BY id DESC",
        )
        .fetch_all(&self.pool)
        .await?;
        rows.into_iter().map(stored).collect()
    }

    /// The newest calibration of a phone at a zoom; none where it was not calibrated.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn camera_of(&self, phone: &str, focal_35mm: u32) -> Result<Option<StoredCamera>, StoreError> {
        let row: Option<Row> = sqlx::query_as(
            "SELECT id, phone, focal_35mm, width_px, height_px, created, value FROM camera
             WHERE phone = $1 AND focal_35mm = $2 ORDER BY id DESC LIMIT 1",
        )
        .bind(phone)
        .bind(i64::from(focal_35mm))
        .fetch_optional(&self.pool)
        .await?;
        row.map(stored).transpose()
    }

    /// Removes a calibration.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn remove_camera(&self, camera: Uuid) -> Result<(), StoreError> {
        let done = sqlx::query("DELETE FROM camera WHERE id = $1").bind(camera.to_string()).execute(&self.pool).await?;
        known((done.rows_affected() > 0).then_some(()), "camera", camera)
    }
}

fn stored(row: Row) -> Result<StoredCamera, StoreError> {
    let px = |value: i64| u32::try_from(value).unwrap_or_default();
    let camera = NewCamera {
        phone: row.phone,
        focal_35mm: px(row.focal_35mm),
        size_px: (px(row.width_px), px(row.height_px)),
        value: of_json(&row.value, "calibration")?,
    };
    Ok(StoredCamera { id: id(&row.id)?, created: time(row.created)?, camera })
}
