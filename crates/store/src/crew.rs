//! Who works in the shop.

use crate::error::known;
use crate::ids::{id, ms, new_id, of_json, to_json};
use crate::open::Change;
use crate::row::row;
use crate::{Store, StoreError};
use dentwright_job::{Pay, Technician};
use jiff::Timestamp;
use uuid::Uuid;

row! {
    struct Row {
        id: String,
        name: String,
        pay: String,
        gone: i64,
    }
}

impl Store {
    /// Everybody, in the order in which they came, those too who have gone.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn crew(&self) -> Result<Vec<Technician>, StoreError> {
        let rows: Vec<Row> =
            sqlx::query_as("SELECT id, name, pay, gone FROM technician ORDER BY id").fetch_all(&self.pool).await?;
        rows.into_iter().map(stored).collect()
    }

    /// Takes somebody in.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn add_technician(&self, name: &str, pay: Pay, now: Timestamp) -> Result<Technician, StoreError> {
        let mut change = self.change().await?;
        let new = insert(&mut change, name, pay, now).await?;
        change.commit().await?;
        Ok(new)
    }

    /// Changes somebody's name, pay, or whether they still work here.
    ///
    /// # Errors
    /// When there is nobody under this id.
    pub async fn change_technician(&self, to: &Technician) -> Result<(), StoreError> {
        let done = sqlx::query("UPDATE technician SET name = $2, pay = $3, gone = $4 WHERE id = $1")
            .bind(to.id.to_string())
            .bind(&to.name)
            .bind(to_json(&to.pay, "pay")?)
            .bind(i64::from(to.gone))
            .execute(&self.pool)
            .await?;
        known((done.rows_affected() > 0).then_some(()), "technician", to.id)
    }
}

/// The technician under this id; without one the first of the crew, who is made where there is none yet.
pub(crate) async fn somebody(change: &mut Change, wanted: Option<Uuid>, now: Timestamp) -> Result<Uuid, StoreError> {
    let found: Option<String> = match wanted {
        Some(wanted) => {
            sqlx::query_scalar("SELECT id FROM technician WHERE id = $1")
                .bind(wanted.to_string())
                .fetch_optional(&mut **change)
                .await?
        }
        None => {
            sqlx::query_scalar("SELECT id FROM technician ORDER BY gone, id LIMIT 1")
                .fetch_optional(&mut **change)
                .await?
        }
    };
    match (found, wanted) {
        (Some(found), _) => id(&found),
        (None, Some(wanted)) => known(None, "technician", wanted),
        (None, None) => Ok(insert(change, "", Pay::None, now).await?.id),
    }
}

async fn insert(change: &mut Change, name: &str, pay: Pay, now: Timestamp) -> Result<Technician, StoreError> {
    let new = Technician { id: new_id(), name: name.to_owned(), pay, gone: false };
    sqlx::query("INSERT INTO technician (id, name, pay, gone, created) VALUES ($1, $2, $3, 0, $4)")
        .bind(new.id.to_string())
        .bind(&new.name)
        .bind(to_json(&new.pay, "pay")?)
        .bind(ms(now))
        .execute(&mut **change)
        .await?;
    Ok(new)
}

fn stored(row: Row) -> Result<Technician, StoreError> {
    Ok(Technician { id: id(&row.id)?, name: row.name, pay: of_json(&row.pay, "pay")?, gone: row.gone != 0 })
}
