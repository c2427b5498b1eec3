//! A capture that came as a zip.
//!
//! Everything in a zip is a claim: names may reach out of the folder, sizes may lie, entries may be
//! links. Names are checked before anything is written, sizes are counted while it is.

use crate::trouble::{Answer, Trouble};
use crate::upload::{MOST_BYTES, MOST_FILES, MOST_PHOTO_BYTES, Received, file_too_large, safe_name, twice};
use axum::http::StatusCode;
use dentwright_flow::{CAPTURE_FOLDER, READING_FOLDER};
use std::fs::File;
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use zip::ZipArchive;
use zip::read::ZipFile;

/// Name of a capture's description.
pub const DESCRIPTION: &str = "capture.toml";

/// Unpacks the capture in a zip: the files that lie beside its `capture.toml`, or all of them where it
/// has none. Subfolders and what computers add by themselves are left out.
pub fn unpack(zip: &Received, folder: &Path) -> Answer<Vec<Received>> {
    let file = File::open(&zip.path).map_err(|why| Trouble::own("opening the zip", why))?;
    let mut archive = ZipArchive::new(file).map_err(|why| bad(&zip.name, &format!("cannot be opened ({why})")))?;
    if archive.len() > MOST_FILES {
        return Err(bad(&zip.name, &format!("has more than {MOST_FILES} entries")));
    }
    let names = checked_names(&mut archive, &zip.name)?;
    let home =
        names.iter().filter(|(_, name)| is_description(name)).map(|(_, name)| parent(name)).min_by_key(|p| p.len());
    let home = home.map(str::to_owned);
    let mut received: Vec<Received> = Vec::new();
    let mut left = MOST_BYTES;
    for (at, name) in names.iter().filter(|(_, name)| home.as_deref().is_none_or(|home| parent(name) == home)) {
        let Some(short) = safe_name(name).filter(|short| !short.starts_with('.')) else { continue };
        if received.iter().any(|one| one.name == short) {
            return Err(twice(&short));
        }
        let entry = archive.by_index(*at).map_err(|why| bad(&zip.name, &format!("is damaged at {name} ({why})")))?;
        let path = folder.join(format!("unpacked-{at}"));
        left -= write(entry, &short, &path, left, &zip.name)?;
        received.push(Received { name: short, path });
    }
    Ok(received)
}

/// Files by name and where they lie.
pub type Named = Vec<(String, PathBuf)>;

/// Unpacks a packed reading into `reading/` and `capture/` of a folder: the files of both.
pub fn unpack_reading(zip: &Received, folder: &Path) -> Answer<(Named, Named)> {
    let file = File::open(&zip.path).map_err(|why| Trouble::own("opening the zip", why))?;
    let mut archive = ZipArchive::new(file).map_err(|why| bad(&zip.name, &format!("cannot be opened ({why})")))?;
    if archive.len() > MOST_FILES {
        return Err(bad(&zip.name, &format!("has more than {MOST_FILES} entries")));
    }
    let names = checked_names(&mut archive, &zip.name)?;
    let mut left = MOST_BYTES;
    let mut of = |home: &str| -> Answer<Named> {
        let into = folder.join(home);
        std::fs::create_dir_all(&into).map_err(|why| Trouble::own("unpacking the zip", why))?;
        let mut files = Vec::new();
        for (at, name) in names.iter().filter(|(_, name)| parent(name) == home.trim_end_matches('/')) {
            let Some(short) = safe_name(name).filter(|short| !short.starts_with('.')) else { continue };
            let entry =
                archive.by_index(*at).map_err(|why| bad(&zip.name, &format!("is damaged at {name} ({why})")))?;
            let path = into.join(&short);
            left -= write(entry, &short, &path, left, &zip.name)?;
            files.push((short, path));
        }
        Ok(files)
    };
    Ok((of(READING_FOLDER)?, of(CAPTURE_FOLDER)?))
}

/// Places and names of the files, none of which reaches out of the folder.
pub fn checked_names(archive: &mut ZipArchive<File>, zip: &str) -> Answer<Vec<(usize, String)>> {
    let mut names = Vec::new();
    for at in 0..archive.len() {
        let entry = archive.by_index_raw(at).map_err(|why| bad(zip, &format!("is damaged ({why})")))?;
        let name = entry.name().map_err(|why| bad(zip, &format!("is damaged ({why})")))?.replace('\\', "/");
        let reaches_out = name.starts_with('/') || name.contains(':') || name.split('/').any(|part| part == "..");
        if reaches_out || entry.is_symlink() {
            return Err(bad(zip, &format!("names a file outside its folder: {name}")));
        }
        if entry.encrypted() {
            return Err(bad(zip, "is locked with a password"));
        }
        if entry.is_file() && !name.starts_with("__MACOSX/") {
            names.push((at, name));
        }
    }
    Ok(names)
}

fn write(entry: ZipFile<'_, File>, name: &str, path: &Path, left: u64, zip: &str) -> Answer<u64> {
    let most = MOST_PHOTO_BYTES.min(left);
    let mut file = File::create(path).map_err(|why| Trouble::own("unpacking the zip", why))?;
    let bytes = io::copy(&mut entry.take(most + 1), &mut file)
        .map_err(|why| bad(zip, &format!("is damaged at {name} ({why})")))?;
    if bytes > most {
        return Err(file_too_large(name, MOST_PHOTO_BYTES));
    }
    Ok(bytes)
}

fn is_description(name: &str) -> bool {
    name.rsplit('/').next() == Some(DESCRIPTION)
}

fn parent(name: &str) -> &str {
    name.rsplit_once('/').map_or("", |(parent, _)| parent)
}

fn bad(zip: &str, why: &str) -> Trouble {
    let next = "Zip the capture folder again and send that zip. Nothing of this one was kept.";
    Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "bad_zip", format!("{zip} {why}."), next)
}
