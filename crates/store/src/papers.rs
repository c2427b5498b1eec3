//! Papers that were issued: kept with the hash of their bytes, never changed.

use crate::error::known;
use crate::files::Filed;
use crate::ids::{id, maybe_id, ms, new_id, of_json, time};
use crate::open::Change;
use crate::row::row;
use crate::{Store, StoreError};
use jiff::Timestamp;
use serde_json::Value;
use uuid::Uuid;

/// What is issued.
#[derive(Debug, Clone, PartialEq)]
pub struct NewPaper {
    /// Of which job.
    pub job: Uuid,
    /// Its kind's code, such as `invoice`.
    pub kind: String,
    /// Letter of the series that it is numbered in; none for a paper without a number.
    pub series: Option<String>,
    /// Its language's code.
    pub language: String,
    /// The paper that it follows.
    pub follows: Option<Uuid>,
}

/// A paper as it was made: what from, and its files by name.
#[derive(Debug, Clone, PartialEq)]
pub struct MadePaper {
    /// What it was made from, JSON.
    pub facts: Value,
    /// File names and bytes.
    pub files: Vec<(String, Vec<u8>)>,
}

/// A paper in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredPaper {
    /// Its id.
    pub id: Uuid,
    /// Of which job; none where that was removed.
    pub job: Option<Uuid>,
    /// Its kind's code.
    pub kind: String,
    /// Its number, if it has one.
    pub number: Option<String>,
    /// Its language's code.
    pub language: String,
    /// When it was issued.
    pub created: Timestamp,
    /// The paper that it follows.
    pub follows: Option<Uuid>,
    /// What it was made from.
    pub facts: Value,
    /// Its files.
    pub files: Vec<PaperFile>,
}

/// A file of a paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PaperFile {
    /// Its name.
    pub name: String,
    /// BLAKE3 of its bytes.
    pub hash: String,
    /// Its size, bytes.
    pub bytes: u64,
}

/// Why a paper was not issued. Its number was not taken.
#[derive(Debug, thiserror::Error)]
pub enum IssueError<E> {
    /// It could not be made.
    #[error("the paper cannot be made: {0}")]
    Made(E),
    /// It could not be kept.
    #[error(transparent)]
    Store(#[from] StoreError),
}

row! {
    struct Row {
        id: String,
        job_id: Option<String>,
        kind: String,
        number: Option<String>,
        language: String,
        created: i64,
        follows: Option<String>,
        facts: String,
    }
}

/// All columns of a [`Row`]; what follows says which.
macro_rules! papers {
    ($which:literal) => {
        concat!("SELECT id, job_id, kind, number, language, created, follows, facts FROM paper ", $which)
    };
}

/// Number of the nth paper of a series and year.
///
/// ```
/// assert_eq!(dentwright_store::paper_number("I", 2026, 42), "I-2026-0042");
/// ```
#[must_use]
pub fn paper_number(series: &str, year: i16, nth: i64) -> String {
    format!("{series}-{year}-{nth:04}")
}

impl Store {
    /// Issues a paper: takes the next number of its series, has it made with it, and keeps it, all or nothing.
    /// Another paper of the shop waits meanwhile, so that no number is given twice and none is left out; whatever else
    /// is written does not wait while it is made.
    ///
    /// # Errors
    /// When it cannot be made or kept; then the number goes to the next paper.
    pub async fn issue_paper<E: Send + 'static>(
        &self,
        new: &NewPaper,
        now: Timestamp,
        year: i16,
        make: impl FnOnce(Option<String>) -> Result<MadePaper, E> + Send + 'static,
    ) -> Result<StoredPaper, IssueError<E>> {
        let _one = self.issuing.lock().await;
        let number = match &new.series {
            Some(series) => Some(self.number_to_come(series, year).await?),
            None => None,
        };
        let of_paper = number.clone();
        let made = tokio::task::spawn_blocking(move || make(of_paper)).await;
        let stopped = |why: tokio::task::JoinError| StoreError::Broken { what: "paper", why: why.to_string() };
        let made = made.map_err(stopped)?.map_err(IssueError::Made)?;
        let shelves = self.shelves.clone().read_owned().await;
        let filed = self.file_all(made.files).await?;
        let paper = StoredPaper {
            id: new_id(),
            job: Some(new.job),
            kind: new.kind.clone(),
            number,
            language: new.language.clone(),
            created: now,
            follows: new.follows,
            facts: made.facts,
            files: filed
                .into_iter()
                .map(|(name, file)| PaperFile { name, hash: file.hash, bytes: file.bytes })
                .collect(),
        };
        let mut change = self.change().await?;
        if let Some(series) = &new.series {
            let taken = next_number(&mut change, series, year).await?;
            if paper.number.as_ref() != Some(&taken) {
                let why = format!("{taken} came before it; issue the paper again");
                return Err(StoreError::Broken { what: "number of a paper", why }.into());
            }
        }
        insert(&mut change, &paper).await?;
        change.commit().await.map_err(StoreError::from)?;
        drop(shelves);
        Ok(paper)
    }

    /// The number that the next paper of a series gets.
    async fn number_to_come(&self, series: &str, year: i16) -> Result<String, StoreError> {
        let last: Option<i64> = sqlx::query_scalar("SELECT last FROM paper_count WHERE series = $1 AND year = $2")
            .bind(series)
            .bind(i64::from(year))
            .fetch_optional(&self.pool)
            .await?;
        Ok(paper_number(series, year, last.unwrap_or(0) + 1))
    }

    /// Papers of a job, oldest first; without a job all papers of the shop.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn papers(&self, job: Option<Uuid>) -> Result<Vec<StoredPaper>, StoreError> {
        let rows: Vec<Row> = match job {
            Some(job) => {
                let of_job = sqlx::query_as(papers!("WHERE job_id = $1 ORDER BY id"));
                of_job.bind(job.to_string()).fetch_all(&self.pool).await?
            }
            None => sqlx::query_as(papers!("ORDER BY id")).fetch_all(&self.pool).await?,
        };
        let mut papers = Vec::new();
        for row in rows {
            papers.push(self.stored_paper(row).await?);
        }
        Ok(papers)
    }

    /// A paper.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn paper(&self, paper: Uuid) -> Result<StoredPaper, StoreError> {
        let row: Option<Row> =
            sqlx::query_as(papers!("WHERE id = $1")).bind(paper.to_string()).fetch_optional(&self.pool).await?;
        self.stored_paper(known(row, "paper", paper)?).await
    }

    /// The bytes of a paper's file, which are checked against their hash.
    ///
    /// # Errors
    /// When there is no such paper or file, or it is damaged.
    pub async fn paper_file(&self, paper: Uuid, name: &str) -> Result<Vec<u8>, StoreError> {
        let found: Option<String> = sqlx::query_scalar("SELECT hash FROM paper_file WHERE paper_id = $1 AND name = $2")
            .bind(paper.to_string())
            .bind(name)
            .fetch_optional(&self.pool)
            .await?;
        let hash = known(found, "file of paper", paper)?;
        self.on_disk(move |files| files.read(&hash)).await
    }

    async fn stored_paper(&self, row: Row) -> Result<StoredPaper, StoreError> {
        let files: Vec<(String, String, i64)> =
            sqlx::query_as("SELECT name, hash, bytes FROM paper_file WHERE paper_id = $1 ORDER BY name")
                .bind(&row.id)
                .fetch_all(&self.pool)
                .await?;
        let file = |(name, hash, bytes)| PaperFile { name, hash, bytes: u64::try_from(bytes).unwrap_or_default() };
        Ok(StoredPaper {
            id: id(&row.id)?,
            job: maybe_id(row.job_id.as_deref())?,
            kind: row.kind,
            number: row.number,
            language: row.language,
            created: time(row.created)?,
            follows: maybe_id(row.follows.as_deref())?,
            facts: of_json(&row.facts, "paper")?,
            files: files.into_iter().map(file).collect(),
        })
    }

    async fn file_all(&self, files: Vec<(String, Vec<u8>)>) -> Result<Vec<(String, Filed)>, StoreError> {
        self.on_disk(move |shelf| {
            let scratch = shelf.scratch()?;
            let put = |(index, (name, bytes)): (usize, (String, Vec<u8>))| {
                let path = scratch.path().join(index.to_string());
                shelf.write(&path, &bytes)?;
                Ok((name, shelf.take(&path)?))
            };
            files.into_iter().enumerate().map(put).collect()
        })
        .await
    }
}

/// Takes the next number of a series.
async fn next_number(change: &mut Change, series: &str, year: i16) -> Result<String, StoreError> {
    let nth: i64 = sqlx::query_scalar(
        "INSERT INTO paper_count (series, year, last) VALUES ($1, $2, 1)
         ON CONFLICT (series, year) DO UPDATE SET last = paper_count.last + 1 RETURNING last",
    )
    .bind(series)
    .bind(i64::from(year))
    .fetch_one(&mut **change)
    .await?;
    Ok(paper_number(series, year, nth))
}

async fn insert(change: &mut Change, paper: &StoredPaper) -> Result<(), StoreError> {
    sqlx::query(
        "INSERT INTO paper (id, job_id, kind, number, language, created, follows, facts)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
    )
    .bind(paper.id.to_string())
    .bind(paper.job.map(|job| job.to_string()))
    .bind(&paper.kind)
    .bind(&paper.number)
    .bind(&paper.language)
    .bind(ms(paper.created))
    .bind(paper.follows.map(|other| other.to_string()))
    .bind(paper.facts.to_string())
    .execute(&mut **change)
    .await?;
    for file in &paper.files {
        sqlx::query("INSERT INTO paper_file (paper_id, name, hash, bytes) VALUES ($1, $2, $3, $4)")
            .bind(paper.id.to_string())
            .bind(&file.name)
            .bind(&file.hash)
            .bind(i64::try_from(file.bytes).unwrap_or(i64::MAX))
            .execute(&mut **change)
            .await?;
    }
    Ok(())
}

/// Takes a job's papers without a number away, before the job itself goes; hashes of their files.
pub(crate) async fn remove_unnumbered(change: &mut Change, job: Uuid) -> Result<Vec<String>, StoreError> {
    let hashes: Vec<String> = sqlx::query_scalar(
        "SELECT paper_file.hash FROM paper_file JOIN paper ON paper.id = paper_file.paper_id
         WHERE paper.job_id = $1 AND paper.number IS NULL",
    )
    .bind(job.to_string())
    .fetch_all(&mut **change)
    .await?;
    sqlx::query("DELETE FROM paper WHERE job_id = $1 AND number IS NULL")
        .bind(job.to_string())
        .execute(&mut **change)
        .await?;
    Ok(hashes)
}
