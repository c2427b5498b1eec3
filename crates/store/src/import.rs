//! An archive taken into a shop, whole or not at all.
//!
//! What is there already stays as it is; what is not is added. First everything is put into a shop of its own
//! that nobody sees, and read back as the program reads it: so a record that could not be shown never comes
//! into the real one.

use crate::archive::{ARCHIVE_FORM, Archive, schema, table_names};
use crate::ids::time;
use crate::open::Change;
use crate::{FileError, Store, StoreError};
use dentwright_job::job_number;
use serde_json::{Map, Value};
use sqlx::AssertSqlSafe;
use sqlx::sqlite::SqliteArguments;
use std::collections::{BTreeMap, HashMap};
use std::path::PathBuf;

/// What came in.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Imported {
    /// Jobs that are new here.
    pub jobs: u64,
    /// Jobs that were here already and stayed as they are.
    pub jobs_there: u64,
    /// Rows of every kind that are new here.
    pub rows: u64,
    /// Jobs whose number was taken here, with the number they got.
    pub renumbered: Vec<(String, String)>,
}

/// Why nothing was taken in.
#[derive(Debug, thiserror::Error)]
pub enum ImportError {
    /// Written by a later version.
    #[error("this archive was written by a later version of Dentwright ({0})")]
    Later(String),
    /// Something in it cannot be.
    #[error("this archive is spoiled: {0}")]
    Spoiled(String),
    /// Two papers of one number.
    #[error("the paper {0} is in both shops and is not the same one")]
    Number(String),
    /// The shop's own record does not answer.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl From<sqlx::Error> for ImportError {
    fn from(error: sqlx::Error) -> Self {
        Self::Store(error.into())
    }
}

/// Columns of each table with the type they were declared with.
type Columns = HashMap<String, HashMap<String, String>>;

impl Store {
    /// Takes an archive in. `files` are its files by hash, in a [scratch folder](crate::Files::scratch), checked.
    ///
    /// # Errors
    /// When the archive is spoiled, of a later version, or has papers under numbers that are taken; then nothing
    /// of it was kept.
    pub async fn import(&self, archive: &Archive, files: BTreeMap<String, PathBuf>) -> Result<Imported, ImportError> {
        if archive.form > ARCHIVE_FORM {
            return Err(ImportError::Later(archive.version.clone()));
        }
        let wanted = archive.files();
        let missing = wanted.iter().find(|(hash, _)| !files.contains_key(*hash) && !self.files().has(hash));
        if let Some((_, name)) = missing {
            return Err(ImportError::Spoiled(format!("the file {name} is missing or damaged")));
        }
        self.rehearse(archive).await?;
        let shelves = self.shelves.clone().read_owned().await;
        let done = self.take_over_all(archive, &files).await;
        drop(shelves);
        if done.is_err() {
            let alone = self.shelves.clone().write_owned().await;
            self.remove_unnamed(wanted.into_keys().collect(), alone).await?;
        }
        done
    }

    async fn take_over_all(
        &self,
        archive: &Archive,
        files: &BTreeMap<String, PathBuf>,
    ) -> Result<Imported, ImportError> {
        let paths: Vec<PathBuf> = files.values().cloned().collect();
        self.on_disk(move |shelf| paths.iter().try_for_each(|path| shelf.take(path).map(|_| ()))).await?;
        let mut change = self.change().await?;
        let imported = fill(&mut change, archive).await?;
        commit(change).await?;
        Ok(imported)
    }

    /// Puts everything into a shop of its own and reads it back as the program reads it.
    async fn rehearse(&self, archive: &Archive) -> Result<(), ImportError> {
        let folder = self.on_disk(crate::Files::scratch).await?;
        let path = folder.path().join("rehearsal");
        let disk = |why: crate::OpenError| FileError::Disk {
            path: path.clone(),
            done: "opened",
            why: std::io::Error::other(why),
        };
        let trial = Store::open(&path).await.map_err(|why| StoreError::File(disk(why)))?;
        let done = async {
            let mut change = trial.change().await?;
            fill(&mut change, archive).await?;
            commit(change).await?;
            trial.read_all().await.map_err(|why| ImportError::Spoiled(why.to_string()))
        };
        let done = done.await;
        trial.close().await;
        done
    }

    /// Reads everything once; the first thing that cannot be understood is the error.
    async fn read_all(&self) -> Result<(), StoreError> {
        for job in self.jobs().await? {
            let readings = job.damages.iter().flat_map(|damage| &damage.captures).flat_map(|capture| &capture.readings);
            for reading in readings {
                self.reading(reading.id).await?;
            }
        }
        self.shop().await?.check().map_err(|why| StoreError::Broken { what: "shop", why: why.to_string() })?;
        self.hours().await?.check().map_err(|why| StoreError::Broken { what: "hours", why: why.to_string() })?;
        self.billing().await?.check().map_err(|why| StoreError::Broken { what: "billing", why: why.to_string() })?;
        for (_, job) in self.finished().await? {
            job.check().map_err(|why| StoreError::Broken { what: "worked time", why: why.to_string() })?;
        }
        for stored in self.hail_tables().await? {
            stored.table.check().map_err(|why| StoreError::Broken { what: "hail table", why: why.to_string() })?;
        }
        self.papers(None).await?;
        self.times(None).await?;
        self.crew().await?;
        self.cameras().await?;
        Ok(())
    }
}

/// Ends a change; rows that name what is not there are found here.
async fn commit(change: Change) -> Result<(), ImportError> {
    match change.commit().await {
        Err(sqlx::Error::Database(why)) if why.is_foreign_key_violation() => {
            Err(ImportError::Spoiled("a part of it belongs to something that is not in it".to_owned()))
        }
        other => Ok(other?),
    }
}

async fn fill(change: &mut Change, archive: &Archive) -> Result<Imported, ImportError> {
    if archive.schema > schema(change).await? {
        return Err(ImportError::Later(archive.version.clone()));
    }
    let columns = columns(change).await?;
    sqlx::query("PRAGMA defer_foreign_keys = ON").execute(&mut **change).await?;
    let mut imported = Imported::default();
    let renumbered = renumber(change, archive).await?;
    for (table, rows) in &archive.tables {
        let known = columns.get(table).ok_or_else(|| ImportError::Spoiled(format!("nobody knows its {table}")))?;
        for row in rows.iter().filter(|_| counter(table).is_none()) {
            let new = insert(change, table, known, &renamed(table, row, &renumbered)).await?;
            imported.rows += new;
            if table == "job" {
                imported.jobs += new;
                imported.jobs_there += 1 - new.min(1);
            }
        }
    }
    imported.renumbered = renumbered.into_values().collect();
    Ok(imported)
}

/// Tables that count, with their key's columns: the higher count stands.
fn counter(table: &str) -> Option<&'static str> {
    match table {
        "job_count" => Some(
            "INSERT INTO job_count (year, last) VALUES ($1, $2) ON CONFLICT (year) DO UPDATE SET last = MAX(last, excluded.last)",
        ),
        "paper_count" => Some(
            "INSERT INTO paper_count (year, last, series) VALUES ($1, $2, $3) ON CONFLICT (series, year) DO UPDATE SET last = MAX(last, excluded.last)",
        ),
        _ => None,
    }
}

async fn count_up(change: &mut Change, sql: &'static str, row: &Map<String, Value>) -> Result<(), ImportError> {
    let number = |column: &str| row.get(column).and_then(Value::as_i64);
    let (Some(year), Some(last)) = (number("year"), number("last")) else {
        return Err(ImportError::Spoiled("a count is no number".to_owned()));
    };
    let query = sqlx::query(sql).bind(year).bind(last);
    match row.get("series").and_then(Value::as_str) {
        Some(series) => query.bind(series.to_owned()).execute(&mut **change).await?,
        None => query.execute(&mut **change).await?,
    };
    Ok(())
}

/// Counts on to the higher count of both shops, so that no number is given twice. Answers with jobs that are not
/// here but whose number is, by id: the number they had and the one they get.
async fn renumber(change: &mut Change, archive: &Archive) -> Result<BTreeMap<String, (String, String)>, ImportError> {
    for (table, rows) in &archive.tables {
        if let Some(count) = counter(table) {
            for row in rows {
                count_up(change, count, row).await?;
            }
        }
    }
    let mut renumbered = BTreeMap::new();
    for row in archive.tables.get("job").into_iter().flatten() {
        let (Some(id), Some(number)) = (text(row, "id"), text(row, "number")) else {
            return Err(ImportError::Spoiled("a job has no number".to_owned()));
        };
        let taken: Option<String> = sqlx::query_scalar(
            "SELECT number FROM job WHERE number = $1 AND id <> $2 AND NOT EXISTS (SELECT 1 FROM job WHERE id = $2)",
        )
        .bind(number)
        .bind(id)
        .fetch_optional(&mut **change)
        .await?;
        if taken.is_some() {
            let created = time(row.get("created").and_then(Value::as_i64).unwrap_or_default())?;
            let next = next_number(change, number, created).await?;
            renumbered.insert(id.to_owned(), (number.to_owned(), next));
        }
    }
    for row in archive.tables.get("paper").into_iter().flatten() {
        let (Some(id), Some(number)) = (text(row, "id"), text(row, "number")) else { continue };
        let other: Option<String> = sqlx::query_scalar("SELECT number FROM paper WHERE number = $1 AND id <> $2")
            .bind(number)
            .bind(id)
            .fetch_optional(&mut **change)
            .await?;
        if let Some(number) = other {
            return Err(ImportError::Number(number));
        }
    }
    Ok(renumbered)
}

/// The next number of a job's year, past all that were given in either shop.
async fn next_number(change: &mut Change, number: &str, created: jiff::Timestamp) -> Result<String, ImportError> {
    let of_number = number.split_once('-').and_then(|(year, _)| year.parse::<i16>().ok());
    let year = of_number.unwrap_or_else(|| created.to_zoned_datetime(jiff::tz::TimeZone::UTC).year());
    let nth: i64 = sqlx::query_scalar(
        "INSERT INTO job_count (year, last) VALUES ($1, 1)
         ON CONFLICT (year) DO UPDATE SET last = job_count.last + 1 RETURNING last",
    )
    .bind(i64::from(year))
    .fetch_one(&mut **change)
    .await?;
    Ok(job_number(year, u32::try_from(nth).unwrap_or(u32::MAX)))
}

/// A row with its job's new number; worked time is kept under it too.
fn renamed(table: &str, row: &Map<String, Value>, to: &BTreeMap<String, (String, String)>) -> Map<String, Value> {
    let mut row = row.clone();
    let key = match table {
        "job" => "id",
        "finished" => "job_id",
        _ => return row,
    };
    let Some((_, number)) = text(&row, key).and_then(|id| to.get(id)) else { return row };
    if table == "job" {
        row.insert("number".to_owned(), number.as_str().into());
    } else if let Some(mut value) = text(&row, "value").and_then(|json| serde_json::from_str::<Value>(json).ok()) {
        value["what"] = number.as_str().into();
        row.insert("value".to_owned(), value.to_string().into());
    }
    row
}

fn text<'a>(row: &'a Map<String, Value>, column: &str) -> Option<&'a str> {
    row.get(column).and_then(Value::as_str)
}

async fn columns(change: &mut Change) -> Result<Columns, ImportError> {
    let mut of_table = Columns::new();
    for table in table_names(change).await? {
        let known: Vec<(String, String)> = sqlx::query_as("SELECT name, type FROM pragma_table_info($1)")
            .bind(&table)
            .fetch_all(&mut **change)
            .await?;
        of_table.insert(table, known.into_iter().collect());
    }
    Ok(of_table)
}

/// Adds a row where it is not there; how many were added.
async fn insert(
    change: &mut Change,
    table: &str,
    known: &HashMap<String, String>,
    row: &Map<String, Value>,
) -> Result<u64, ImportError> {
    let spoiled = |column: &str| ImportError::Spoiled(format!("{column} of a {table} cannot be understood"));
    if let Some(odd) = row.keys().find(|column| !known.contains_key(*column)) {
        return Err(spoiled(odd));
    }
    let names: Vec<String> = row.keys().map(|column| format!("\"{column}\"")).collect();
    let places: Vec<String> = (1..=row.len()).map(|at| format!("${at}")).collect();
    let sql =
        format!("INSERT INTO \"{table}\" ({}) VALUES ({}) ON CONFLICT DO NOTHING", names.join(", "), places.join(", "));
    let mut query = sqlx::query(AssertSqlSafe(sql));
    for (column, value) in row {
        query = bind(query, &known[column], value).ok_or_else(|| spoiled(column))?;
    }
    match query.execute(&mut **change).await {
        Ok(done) => Ok(done.rows_affected()),
        Err(sqlx::Error::Database(why)) => Err(ImportError::Spoiled(format!("a {table} is incomplete ({why})"))),
        Err(other) => Err(other.into()),
    }
}

type Query<'q> = sqlx::query::Query<'q, sqlx::Sqlite, SqliteArguments>;

/// Binds a value as its column was declared; none where it is of another kind.
fn bind<'q>(query: Query<'q>, declared: &str, value: &Value) -> Option<Query<'q>> {
    Some(match (declared, value) {
        (_, Value::Null) => query.bind(None::<i64>),
        ("BIGINT" | "INTEGER", Value::Number(number)) => query.bind(number.as_i64()?),
        ("DOUBLE PRECISION" | "REAL", Value::String(text)) => {
            query.bind(text.parse::<f64>().ok().filter(|number| number.is_finite())?)
        }
        ("TEXT", Value::String(text)) => query.bind(text.clone()),
        _ => return None,
    })
}
