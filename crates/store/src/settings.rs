//! The shop's settings and the hours settings.

use crate::ids::{ms, of_json, to_json};
use crate::{Store, StoreError};
use dentwright_job::{Billing, Shop};
use dentwright_price::HoursSettings;
use jiff::Timestamp;
use serde::Serialize;
use serde::de::DeserializeOwned;

impl Store {
    /// The shop; a nameless one until it was saved.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn shop(&self) -> Result<Shop, StoreError> {
        Ok(self.setting("shop").await?.unwrap_or_default())
    }

    /// Saves the shop, which has passed its check.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn save_shop(&self, shop: &Shop, now: Timestamp) -> Result<(), StoreError> {
        self.save_setting("shop", shop, now).await
    }

    /// The hours settings; the shipped ones until others were saved.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn hours(&self) -> Result<HoursSettings, StoreError> {
        Ok(self.setting("hours").await?.unwrap_or_default())
    }

    /// Saves the hours settings, which have passed their check.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn save_hours(&self, hours: &HoursSettings, now: Timestamp) -> Result<(), StoreError> {
        self.save_setting("hours", hours, now).await
    }

    /// How the shop bills; an empty form until it was saved.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn billing(&self) -> Result<Billing, StoreError> {
        Ok(self.setting("billing").await?.unwrap_or_default())
    }

    /// Saves how the shop bills, which has passed its check.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn save_billing(&self, billing: &Billing, now: Timestamp) -> Result<(), StoreError> {
        self.save_setting("billing", billing, now).await
    }

    pub(crate) async fn setting<T: DeserializeOwned>(&self, name: &'static str) -> Result<Option<T>, StoreError> {
        let found: Option<String> = sqlx::query_scalar("SELECT value FROM setting WHERE name = $1")
            .bind(name)
            .fetch_optional(&self.pool)
            .await?;
        found.map(|text| of_json(&text, name)).transpose()
    }

    pub(crate) async fn save_setting<T: Serialize>(
        &self,
        name: &'static str,
        value: &T,
        now: Timestamp,
    ) -> Result<(), StoreError> {
        sqlx::query(
            "INSERT INTO setting (name, value, changed) VALUES ($1, $2, $3)
             ON CONFLICT (name) DO UPDATE SET value = excluded.value, changed = excluded.changed",
        )
        .bind(name)
        .bind(to_json(value, name)?)
        .bind(ms(now))
        .execute(&self.pool)
        .await?;
        Ok(())
    }

    pub(crate) async fn forget_setting(&self, name: &'static str) -> Result<(), StoreError> {
        sqlx::query("DELETE FROM setting WHERE name = $1").bind(name).execute(&self.pool).await?;
        Ok(())
    }
}
