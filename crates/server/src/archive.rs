//! The whole shop as one zip, and such a zip taken in.
//!
//! `dentwright.json` is the record; beside it lie the photos, maps and papers, each once. A file is known by its
//! content, not by its name, so that a zip that was repacked elsewhere opens too and a changed file does not.

use crate::app::App;
use crate::captures::FilesForm;
use crate::trouble::{Answer, Trouble};
use crate::unpack::checked_names;
use crate::upload::{MOST_PHOTO_BYTES, Received, receive_up_to};
use axum::Json;
use axum::body::Body;
use axum::extract::{Multipart, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use dentwright_store::{Archive, Files, ImportError, Imported};
use futures_util::stream::{StreamExt, unfold};
use jiff::tz::TimeZone;
use serde::Serialize;
use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, BufWriter, Read, Write};
use std::path::{Path, PathBuf};
use tempfile::TempDir;
use tokio::io::AsyncReadExt;
use utoipa::ToSchema;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

/// Name of the record in an archive.
const RECORD: &str = "dentwright.json";
/// Most that an archive may hold, bytes: some hundred jobs with all their photos.
const MOST_ARCHIVE_BYTES: u64 = 32 << 30;
/// Most that its record may hold, bytes.
const MOST_RECORD_BYTES: u64 = 1 << 30;
/// Most files in it.
const MOST_ARCHIVE_FILES: usize = 500_000;
/// Bytes sent at once.
const CHUNK: usize = 1 << 16;

/// What came in with an archive.
#[derive(Debug, Serialize, ToSchema)]
pub struct ImportedJson {
    /// Jobs that are new here.
    jobs: u64,
    /// Jobs that were here already and stayed as they are.
    jobs_there: u64,
    /// Jobs whose number was taken here, with the number they got.
    renumbered: Vec<Renumbered>,
}

/// A job under another number.
#[derive(Debug, Serialize, ToSchema)]
pub struct Renumbered {
    was: String,
    is: String,
}

impl From<Imported> for ImportedJson {
    fn from(imported: Imported) -> Self {
        let renumbered = imported.renumbered.into_iter().map(|(was, is)| Renumbered { was, is }).collect();
        Self { jobs: imported.jobs, jobs_there: imported.jobs_there, renumbered }
    }
}

/// The whole shop as one zip: record, photos, maps, papers. Devices that were let in are not in it.
#[utoipa::path(get, path = "/api/archive.zip", operation_id = "archive",
    responses((status = 200, content_type = "application/zip")))]
pub async fn get(State(app): State<App>) -> Answer<Response> {
    let scratch = app.store.files().scratch()?;
    let path = scratch.path().join("archive.zip");
    let (archive, guard) = app.store.archive(env!("CARGO_PKG_VERSION"), app.now()).await?;
    let (files, to) = (app.store.files().clone(), path.clone());
    let packed = tokio::task::spawn_blocking(move || pack(&archive, &files, &to)).await;
    packed.map_err(|why| Trouble::own("packing the shop", why))??;
    drop(guard);
    let day = app.now().to_zoned_datetime(TimeZone::system()).date();
    let name = format!("attachment; filename=\"dentwright-{day}.zip\"");
    let heads = [(header::CONTENT_TYPE, "application/zip".to_owned()), (header::CONTENT_DISPOSITION, name)];
    Ok((heads, stream(scratch, &path).await?).into_response())
}

/// Take an archive in, whole or not at all. What is here already stays as it is.
#[utoipa::path(post, path = "/api/archive", operation_id = "import",
    request_body(content = FilesForm, content_type = "multipart/form-data"),
    responses((status = 200, body = ImportedJson), (status = 409, body = Trouble), (status = 422, body = Trouble)))]
pub async fn import(State(app): State<App>, form: Multipart) -> Answer<Json<ImportedJson>> {
    let scratch = app.store.files().scratch()?;
    let received = receive_up_to(MOST_ARCHIVE_BYTES, form, scratch.path()).await?;
    let folder = scratch.path().to_owned();
    let unpacked = tokio::task::spawn_blocking(move || match &received[..] {
        [one] => unpack(one, &folder),
        _ => Err(spoiled("several files came")),
    });
    let (archive, files) = unpacked.await.map_err(|why| Trouble::own("unpacking the archive", why))??;
    Ok(Json(app.store.import(&archive, files).await?.into()))
}

fn pack(archive: &Archive, files: &Files, to: &Path) -> Answer<()> {
    let own = |why: &dyn std::fmt::Display| Trouble::own("packing the shop", why);
    let file = File::create(to).map_err(|why| own(&why))?;
    let mut zip = ZipWriter::new(BufWriter::new(file));
    let small = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    zip.start_file(RECORD, small.large_file(true)).map_err(|why| own(&why))?;
    serde_json::to_writer(&mut zip, archive).map_err(|why| own(&why))?;
    // Photos and papers are packed already.
    let as_is = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
    for (hash, name) in archive.files() {
        let bytes = files.read(&hash)?;
        zip.start_file(name, as_is).map_err(|why| own(&why))?;
        zip.write_all(&bytes).map_err(|why| own(&why))?;
    }
    zip.finish().and_then(|mut out| Ok(out.flush()?)).map_err(|why| own(&why))
}

/// A file as a body; its folder goes when it was sent.
async fn stream(folder: TempDir, path: &Path) -> Answer<Body> {
    let file = tokio::fs::File::open(path).await.map_err(|why| Trouble::own("sending the shop", why))?;
    let next = async |(mut file, folder): (tokio::fs::File, TempDir)| {
        let mut chunk = vec![0; CHUNK];
        match file.read(&mut chunk).await {
            Ok(0) => None,
            Ok(read) => {
                chunk.truncate(read);
                Some((Ok(chunk), (file, folder)))
            }
            Err(why) => Some((Err(why), (file, folder))),
        }
    };
    // What packs the answer on its way asks again after the end.
    Ok(Body::from_stream(unfold((file, folder), next).fuse()))
}

/// The record, and the files by the hash of their content.
fn unpack(zip: &Received, folder: &Path) -> Answer<(Archive, BTreeMap<String, PathBuf>)> {
    let file = File::open(&zip.path).map_err(|why| Trouble::own("opening the zip", why))?;
    let mut packed = ZipArchive::new(file).map_err(|why| spoiled(&format!("it cannot be opened ({why})")))?;
    if packed.len() > MOST_ARCHIVE_FILES {
        return Err(spoiled("it has too many files"));
    }
    let names = checked_names(&mut packed, &zip.name)?;
    let record = names.iter().find(|(_, name)| name.rsplit('/').next() == Some(RECORD));
    let (at, _) = record.ok_or_else(|| spoiled(&format!("it has no {RECORD}")))?;
    let mut text = Vec::new();
    let entry = packed.by_index(*at).map_err(|why| spoiled(&why.to_string()))?;
    entry.take(MOST_RECORD_BYTES).read_to_end(&mut text).map_err(|why| spoiled(&why.to_string()))?;
    let archive: Archive =
        serde_json::from_slice(&text).map_err(|why| spoiled(&format!("its {RECORD} cannot be read ({why})")))?;
    let (mut files, mut left) = (BTreeMap::new(), MOST_ARCHIVE_BYTES);
    for (other, name) in names.iter().filter(|(other, _)| other != at) {
        let entry = packed.by_index(*other).map_err(|why| spoiled(&format!("{name}: {why}")))?;
        let path = folder.join(format!("unpacked-{other}"));
        let (hash, bytes) =
            write(entry, &path, left.min(MOST_PHOTO_BYTES)).map_err(|why| spoiled(&format!("{name}: {why}")))?;
        left -= bytes;
        files.insert(hash, path);
    }
    let wanted = archive.files();
    files.retain(|hash, _| wanted.contains_key(hash));
    Ok((archive, files))
}

/// Writes an entry out: its hash and size.
fn write(mut entry: impl Read, path: &Path, most: u64) -> io::Result<(String, u64)> {
    let (mut file, mut hasher, mut chunk) = (File::create(path)?, blake3::Hasher::new(), vec![0; CHUNK]);
    loop {
        let read = entry.read(&mut chunk)?;
        if read == 0 {
            return Ok((hasher.finalize().to_hex().to_string(), hasher.count()));
        }
        hasher.update(&chunk[..read]);
        if hasher.count() > most {
            return Err(io::Error::other(format!("more than {} MB", most >> 20)));
        }
        file.write_all(&chunk[..read])?;
    }
}

fn spoiled(why: &str) -> Trouble {
    let message = format!("This archive cannot be taken in: {why}.");
    let next = "Nothing of it was kept. Save it again where it comes from, or take an older copy.";
    Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "archive", message, next)
}

impl From<ImportError> for Trouble {
    fn from(error: ImportError) -> Self {
        match error {
            ImportError::Store(error) => error.into(),
            ImportError::Spoiled(why) => spoiled(&why),
            ImportError::Later(version) => Self::new(
                StatusCode::UNPROCESSABLE_ENTITY,
                "archive_later",
                format!("This archive was written by a later version of Dentwright ({version})."),
                "Nothing of it was kept. Bring this Dentwright to that version first.",
            ),
            ImportError::Number(number) => Self::new(
                StatusCode::CONFLICT,
                "archive_number",
                format!("The paper {number} is in both shops, and is not the same one."),
                "Nothing was taken in: numbers of invoices cannot be changed. Open this archive in a shop of its own.",
            ),
        }
    }
}
