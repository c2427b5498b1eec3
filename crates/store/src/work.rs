//! The work on a damage: plans, moves as they were made, what is behind, when to look again.

use crate::error::known;
use crate::ids::{id, ms, of_json, time};
use crate::row::row;
use crate::{Store, StoreError};
use jiff::Timestamp;
use jiff::civil::Date;
use serde_json::Value;
use uuid::Uuid;

/// A plan to be kept.
#[derive(Debug, Clone, PartialEq)]
pub struct NewPlan {
    /// What was asked.
    pub asked: Value,
    /// The plan.
    pub file: Value,
    /// What the moves before the reading came to; none where none were noted.
    pub came_of: Option<Value>,
    /// The planner's sheet; none where nothing was to be planned.
    pub sheet: Option<Vec<u8>>,
}

/// A plan in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredPlan {
    /// The reading it is of.
    pub reading: Uuid,
    /// When it was made.
    pub created: Timestamp,
    /// What was asked.
    pub asked: Value,
    /// The plan.
    pub file: Value,
    /// What the moves before the reading came to.
    pub came_of: Option<Value>,
}

/// A move in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredMove {
    /// Its id, made where it was noted.
    pub id: Uuid,
    /// The reading it was made after.
    pub reading: Uuid,
    /// When it was made.
    pub made: Timestamp,
    /// What was made.
    pub what: Value,
}

/// What is behind a damage.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredBehind {
    /// The reading over which it was drawn.
    pub reading: Uuid,
    /// The drawing.
    pub side: Value,
}

row! {
    struct PlanRow {
        reading_id: String,
        created: i64,
        asked: String,
        file: String,
        came_of: Option<String>,
    }
}

row! {
    struct MoveRow {
        id: String,
        reading_id: String,
        made: i64,
            what: String,
    }
}

impl Store {
    /// Keeps the plan of a reading in place of what was kept before.
    ///
    /// # Errors
    /// When there is no such reading.
    pub async fn keep_plan(&self, reading: Uuid, new: &NewPlan, now: Timestamp) -> Result<(), StoreError> {
        self.reading(reading).await?;
        sqlx::query(
            "INSERT INTO plan (reading_id, created, asked, file, came_of, sheet) VALUES ($1, $2, $3, $4, $5, $6)
             ON CONFLICT (reading_id) DO UPDATE SET created = excluded.created, asked = excluded.asked,
             file = excluded.file, came_of = excluded.came_of, sheet = excluded.sheet",
        )
        .bind(reading.to_string())
        .bind(ms(now))
        .bind(new.asked.to_string())
        .bind(new.file.to_string())
        .bind(new.came_of.as_ref().map(Value::to_string))
        .bind(&new.sheet)
        .execute(&self.pool)
        .await?;
        Ok(())
    }

    /// All plans of the shop, in the order in which they were made.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn plans(&self) -> Result<Vec<StoredPlan>, StoreError> {
        let all = "SELECT reading_id, created, asked, file, came_of FROM plan ORDER BY created, reading_id";
        let rows: Vec<PlanRow> = sqlx::query_as(all).fetch_all(&self.pool).await?;
        rows.into_iter().map(PlanRow::stored).collect()
    }

    /// The plan of a reading; none where none was made.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn plan(&self, reading: Uuid) -> Result<Option<StoredPlan>, StoreError> {
        let one = "SELECT reading_id, created, asked, file, came_of FROM plan WHERE reading_id = $1";
        let row: Option<PlanRow> = sqlx::query_as(one).bind(reading.to_string()).fetch_optional(&self.pool).await?;
        row.map(PlanRow::stored).transpose()
    }

    /// The planner's sheet of a reading's plan; none where there is none.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn planned_sheet(&self, reading: Uuid) -> Result<Option<Vec<u8>>, StoreError> {
        let row: Option<(Option<Vec<u8>>,)> = sqlx::query_as("SELECT sheet FROM plan WHERE reading_id = $1")
            .bind(reading.to_string())
            .fetch_optional(&self.pool)
            .await?;
        Ok(row.and_then(|(sheet,)| sheet))
    }

    /// Notes a move that was made; noting it again changes nothing.
    ///
    /// # Errors
    /// When there is no such reading.
    pub async fn note_move(&self, noted: &StoredMove) -> Result<(), StoreError> {
        self.reading(noted.reading).await?;
        sqlx::query(
            "INSERT INTO made_move (id, reading_id, made, move) VALUES ($1, $2, $3, $4) ON CONFLICT (id) DO NOTHING",
        )
        .bind(noted.id.to_string())
        .bind(noted.reading.to_string())
        .bind(ms(noted.made))
        .bind(noted.what.to_string())
        .execute(&self.pool)
        .await?;
        Ok(())
    }

    /// Takes a noted move back; nothing happens where there is none.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn take_back_move(&self, made: Uuid) -> Result<(), StoreError> {
        sqlx::query("DELETE FROM made_move WHERE id = $1").bind(made.to_string()).execute(&self.pool).await?;
        Ok(())
    }

    /// Moves made on a damage, oldest first.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn made_moves(&self, damage: Uuid) -> Result<Vec<StoredMove>, StoreError> {
        let rows: Vec<MoveRow> = sqlx::query_as(
            "SELECT made_move.id, made_move.reading_id, made_move.made, made_move.move AS what FROM made_move
             JOIN reading ON reading.id = made_move.reading_id JOIN capture ON capture.id = reading.capture_id
             WHERE capture.damage_id = $1 ORDER BY made_move.made, made_move.id",
        )
        .bind(damage.to_string())
        .fetch_all(&self.pool)
        .await?;
        rows.into_iter().map(MoveRow::stored).collect()
    }

    /// Day on which a damage is to be read again; none where none was set.
    ///
    /// # Errors
    /// When there is no such damage.
    pub async fn look_again(&self, damage: Uuid) -> Result<Option<Date>, StoreError> {
        let row: Option<(Option<String>,)> = sqlx::query_as("SELECT look_again FROM damage WHERE id = $1")
            .bind(damage.to_string())
            .fetch_optional(&self.pool)
            .await?;
        let (day,) = known(row, "damage", damage)?;
        let broken = |why: jiff::Error| StoreError::Broken { what: "day", why: why.to_string() };
        day.map(|day| day.parse().map_err(broken)).transpose()
    }

    /// Sets the day on which a damage is to be read again.
    ///
    /// # Errors
    /// When there is no such damage.
    pub async fn set_look_again(&self, damage: Uuid, day: Option<Date>) -> Result<(), StoreError> {
        let done = sqlx::query("UPDATE damage SET look_again = $2 WHERE id = $1")
            .bind(damage.to_string())
            .bind(day.map(|day| day.to_string()))
            .execute(&self.pool)
            .await?;
        known((done.rows_affected() > 0).then_some(()), "damage", damage)
    }

    /// What is behind a damage; none where it was not drawn.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn behind(&self, damage: Uuid) -> Result<Option<StoredBehind>, StoreError> {
        let row: Option<(String, String)> = sqlx::query_as("SELECT reading_id, side FROM behind WHERE damage_id = $1")
            .bind(damage.to_string())
            .fetch_optional(&self.pool)
            .await?;
        let stored = |(reading, side): (String, String)| {
            Ok(StoredBehind { reading: id(&reading)?, side: of_json(&side, "drawing of what is behind")? })
        };
        row.map(stored).transpose()
    }

    /// Keeps what is behind a damage, in place of what was drawn before.
    ///
    /// # Errors
    /// When there is no such damage or reading.
    pub async fn draw_behind(&self, damage: Uuid, drawn: &StoredBehind) -> Result<(), StoreError> {
        self.damage(damage).await?;
        self.reading(drawn.reading).await?;
        sqlx::query(
            "INSERT INTO behind (damage_id, reading_id, side) VALUES ($1, $2, $3)
             ON CONFLICT (damage_id) DO UPDATE SET reading_id = excluded.reading_id, side = excluded.side",
        )
        .bind(damage.to_string())
        .bind(drawn.reading.to_string())
        .bind(drawn.side.to_string())
        .execute(&self.pool)
        .await?;
        Ok(())
    }

    /// Forgets what was drawn behind a damage.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn forget_behind(&self, damage: Uuid) -> Result<(), StoreError> {
        sqlx::query("DELETE FROM behind WHERE damage_id = $1").bind(damage.to_string()).execute(&self.pool).await?;
        Ok(())
    }

    /// The shop's tools; none where it works with the starter rack.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn rack(&self) -> Result<Option<Value>, StoreError> {
        self.setting("rack").await
    }

    /// Saves the shop's tools, which have passed their check; none for the starter rack.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn save_rack(&self, rack: Option<&Value>, now: Timestamp) -> Result<(), StoreError> {
        match rack {
            Some(rack) => self.save_setting("rack", rack, now).await,
            None => self.forget_setting("rack").await,
        }
    }
}

impl PlanRow {
    fn stored(self) -> Result<StoredPlan, StoreError> {
        Ok(StoredPlan {
            reading: id(&self.reading_id)?,
            created: time(self.created)?,
            asked: of_json(&self.asked, "plan")?,
            file: of_json(&self.file, "plan")?,
            came_of: self.came_of.map(|text| of_json(&text, "plan")).transpose()?,
        })
    }
}

impl MoveRow {
    fn stored(self) -> Result<StoredMove, StoreError> {
        Ok(StoredMove {
            id: id(&self.id)?,
            reading: id(&self.reading_id)?,
            made: time(self.made)?,
            what: of_json(&self.what, "move")?,
        })
    }
}
