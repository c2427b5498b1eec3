//! The whole record as one value, and such a value taken in.
//!
//! Every table goes as it is, row by row, so that what is kept tomorrow goes along without a word here. Numbers
//! with a point are texts, as money is, so that they come back to the last bit. What tells who may come in
//! (devices) and what waits to be read (tasks) stays where it is.

use crate::open::Change;
use crate::{Store, StoreError};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use sqlx::sqlite::SqliteRow;
use sqlx::{AssertSqlSafe, Column, Row, TypeInfo, ValueRef};
use std::collections::{BTreeMap, BTreeSet};
use tokio::sync::OwnedRwLockReadGuard;

/// Form of the archive that this version writes.
pub const ARCHIVE_FORM: u32 = 1;
/// Tables that do not go along.
const LEFT_OUT: [&str; 3] = ["_sqlx_migrations", "device", "task"];

/// The record of a shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Archive {
    /// Form of this file.
    pub form: u32,
    /// Version of the program that wrote it.
    pub version: String,
    /// Number of the last change of the tables that it knows.
    pub schema: i64,
    /// When it was written.
    pub made: Timestamp,
    /// Rows by table.
    pub tables: BTreeMap<String, Vec<Map<String, Value>>>,
}

impl Archive {
    /// Hashes of all files that its rows name, each with what it is called there.
    #[must_use]
    pub fn files(&self) -> BTreeMap<String, String> {
        let mut named = BTreeMap::new();
        for (table, rows) in &self.tables {
            for row in rows {
                let hashes = row.iter().filter(|(column, _)| is_hash(column));
                for hash in hashes.filter_map(|(_, value)| value.as_str()) {
                    named.entry(hash.to_owned()).or_insert_with(|| self.called(table, row, hash));
                }
            }
        }
        named
    }

    /// A path that tells a person what a file is.
    fn called(&self, table: &str, row: &Map<String, Value>, hash: &str) -> String {
        let text = |column: &str| row.get(column).and_then(Value::as_str).unwrap_or_default();
        let name = plain(text("name"));
        if table != "paper_file" {
            let end = name.rsplit_once('.').map_or("", |(_, end)| end);
            return format!("{}/{hash}{}{end}", plain(table), if end.is_empty() { "" } else { "." });
        }
        let is_it = |paper: &&Map<String, Value>| paper.get("id").and_then(Value::as_str) == Some(text("paper_id"));
        let paper = self.tables.get("paper").into_iter().flatten().find(is_it);
        let of_paper = |column: &str| paper.and_then(|paper| paper.get(column)).and_then(Value::as_str);
        let title = of_paper("number").or_else(|| of_paper("kind")).unwrap_or_default();
        format!("papers/{}-{}/{name}", plain(title), plain(text("paper_id")))
    }
}

/// Whether a column names a file.
pub(crate) fn is_hash(column: &str) -> bool {
    column == "hash" || column.ends_with("_hash")
}

/// A text that every system takes as part of a path.
fn plain(text: &str) -> String {
    text.chars().map(|c| if c.is_ascii_alphanumeric() || "._-".contains(c) { c } else { '_' }).collect()
}

impl Store {
    /// The whole record. While the guard is held no file goes that it names.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn archive(
        &self,
        version: &str,
        now: Timestamp,
    ) -> Result<(Archive, OwnedRwLockReadGuard<()>), StoreError> {
        let guard = self.shelves.clone().read_owned().await;
        let mut change = self.change().await?;
        let schema = schema(&mut change).await?;
        let mut tables = BTreeMap::new();
        for table in table_names(&mut change).await? {
            let all = AssertSqlSafe(format!("SELECT * FROM \"{table}\" ORDER BY 1"));
            let rows = sqlx::query(all).fetch_all(&mut *change).await?;
            tables.insert(table, rows.iter().map(told).collect::<Result<_, _>>()?);
        }
        Ok((Archive { form: ARCHIVE_FORM, version: version.to_owned(), schema, made: now, tables }, guard))
    }
}

/// Number of the last change of the tables.
pub(crate) async fn schema(change: &mut Change) -> Result<i64, StoreError> {
    Ok(sqlx::query_scalar("SELECT MAX(version) FROM _sqlx_migrations").fetch_one(&mut **change).await?)
}

/// Tables that go along.
pub(crate) async fn table_names(change: &mut Change) -> Result<BTreeSet<String>, StoreError> {
    let names: Vec<String> =
        sqlx::query_scalar("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
            .fetch_all(&mut **change)
            .await?;
    Ok(names.into_iter().filter(|name| !LEFT_OUT.contains(&name.as_str())).collect())
}

/// A row as JSON.
fn told(row: &SqliteRow) -> Result<Map<String, Value>, StoreError> {
    let mut values = Map::new();
    for (at, column) in row.columns().iter().enumerate() {
        let raw = row.try_get_raw(at)?;
        let kind = raw.type_info().name().to_owned();
        let value = match kind.as_str() {
            _ if raw.is_null() => Value::Null,
            "INTEGER" => row.try_get::<i64, _>(at)?.into(),
            "REAL" => row.try_get::<f64, _>(at)?.to_string().into(),
            "TEXT" => row.try_get::<String, _>(at)?.into(),
            _ => return Err(StoreError::Broken { what: "value", why: format!("{} is a {kind}", column.name()) }),
        };
        values.insert(column.name().to_owned(), value);
    }
    Ok(values)
}
