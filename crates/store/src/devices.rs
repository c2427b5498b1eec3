//! Devices that were paired.

use crate::ids::ms;
use crate::{Store, StoreError};
use jiff::Timestamp;

impl Store {
    /// Remembers a device by the hash of what it holds, until a time.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn add_device(&self, token_hash: &str, now: Timestamp, until: Timestamp) -> Result<(), StoreError> {
        sqlx::query("INSERT INTO device (token_hash, created, until) VALUES ($1, $2, $3)")
            .bind(token_hash)
            .bind(ms(now))
            .bind(ms(until))
            .execute(&self.pool)
            .await?;
        sqlx::query("DELETE FROM device WHERE until < $1").bind(ms(now)).execute(&self.pool).await?;
        Ok(())
    }

    /// Whether a device was paired and its time is not over.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn knows_device(&self, token_hash: &str, now: Timestamp) -> Result<bool, StoreError> {
        let found: Option<i64> = sqlx::query_scalar("SELECT until FROM device WHERE token_hash = $1")
            .bind(token_hash)
            .fetch_optional(&self.pool)
            .await?;
        Ok(found.is_some_and(|until| until > ms(now)))
    }

    /// Forgets all devices.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn forget_devices(&self) -> Result<(), StoreError> {
        sqlx::query("DELETE FROM device").execute(&self.pool).await?;
        Ok(())
    }
}
