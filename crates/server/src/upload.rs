//! Files of a multipart form, streamed to disk as they come.

use crate::trouble::{Answer, Trouble};
use axum::extract::Multipart;
use axum::extract::multipart::{Field, MultipartError};
use axum::http::StatusCode;
use std::path::{Path, PathBuf};
use tokio::fs::File;
use tokio::io::AsyncWriteExt;

/// Most that one upload may hold, bytes: 26 photos of a large phone with room to spare.
pub const MOST_BYTES: u64 = 400 << 20;
/// Most that one photo may hold, bytes.
pub const MOST_PHOTO_BYTES: u64 = 60 << 20;
/// Most files in one upload.
pub const MOST_FILES: usize = 500;
const LONGEST_NAME: usize = 200;

/// A file that came, under the name it had.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Received {
    /// Its name, without folders.
    pub name: String,
    /// Where it lies now.
    pub path: PathBuf,
}

/// Takes the files of a form into a folder. Zips may be as large as the whole upload.
pub async fn receive(form: Multipart, folder: &Path) -> Answer<Vec<Received>> {
    receive_up_to(MOST_BYTES, form, folder).await
}

/// The same, with a limit of its own.
pub async fn receive_up_to(limit: u64, mut form: Multipart, folder: &Path) -> Answer<Vec<Received>> {
    let mut received: Vec<Received> = Vec::new();
    let mut left = limit;
    while let Some(field) = form.next_field().await.map_err(|why| broken(&why))? {
        let Some(given) = field.file_name().map(str::to_owned) else { continue };
        let name = safe_name(&given).ok_or_else(|| odd_name(&given))?;
        if received.iter().any(|one| one.name == name) {
            return Err(twice(&name));
        }
        if received.len() >= MOST_FILES {
            return Err(too_large("many_files", format!("This upload has more than {MOST_FILES} files.")));
        }
        let path = folder.join(received.len().to_string());
        left -= take(field, &name, &path, left, limit).await?;
        received.push(Received { name, path });
    }
    if received.is_empty() {
        let next = "Choose the photos of one capture, or a zip of its folder.";
        return Err(Trouble::new(StatusCode::BAD_REQUEST, "no_files", "No file came with this upload.", next));
    }
    Ok(received)
}

async fn take(mut field: Field<'_>, name: &str, path: &Path, left: u64, limit: u64) -> Answer<u64> {
    let disk = |why| Trouble::own("keeping the upload", why);
    let most = if is_zip(name) { limit } else { MOST_PHOTO_BYTES };
    let mut file = File::create(path).await.map_err(disk)?;
    let mut bytes = 0;
    while let Some(chunk) = field.chunk().await.map_err(|why| broken(&why))? {
        bytes += chunk.len() as u64;
        if bytes > most {
            return Err(file_too_large(name, most));
        }
        if bytes > left {
            return Err(too_large("too_large", format!("These files have more than {} MB together.", limit >> 20)));
        }
        file.write_all(&chunk).await.map_err(disk)?;
    }
    file.flush().await.map_err(disk)?;
    Ok(bytes)
}

/// Whether a file is a zip, by its name.
pub fn is_zip(name: &str) -> bool {
    name.to_ascii_lowercase().ends_with(".zip")
}

/// The last part of a path as browsers send it; none where that is no name of a file.
pub fn safe_name(given: &str) -> Option<String> {
    let name = given.rsplit(['/', '\\']).next().unwrap_or_default();
    let odd = name.is_empty() || name == "." || name == ".." || name.len() > LONGEST_NAME;
    (!odd && !name.chars().any(char::is_control)).then(|| name.to_owned())
}

/// A file that is larger than any photo.
pub fn file_too_large(name: &str, most: u64) -> Trouble {
    too_large("photo_too_large", format!("{name} has more than {} MB.", most >> 20))
}

fn too_large(code: &str, message: String) -> Trouble {
    let next = "Choose only the photos of this capture, as the phone took them.";
    Trouble::new(StatusCode::PAYLOAD_TOO_LARGE, code, message, next)
}

fn broken(why: &MultipartError) -> Trouble {
    let next = "Check the connection and send the files again; nothing of them was kept.";
    Trouble::new(why.status(), "upload", format!("The upload broke off: {}.", why.body_text()), next)
}

/// Two files of one name.
pub fn twice(name: &str) -> Trouble {
    let next = "Send one capture at a time.";
    Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "twice", format!("There are two files named {name}."), next)
}

fn odd_name(given: &str) -> Trouble {
    let message = format!("{:?} is no name for a file.", given.chars().take(60).collect::<String>());
    Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "file_name", message, "Rename the file and send it again.")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_lose_their_folders() {
        assert_eq!(safe_name("a/b/panel.jpg").as_deref(), Some("panel.jpg"));
        assert_eq!(safe_name(r"C:\photos\panel.jpg").as_deref(), Some("panel.jpg"));
        for odd in ["", "a/", "..", "../..", "a\0b", "a\nb"] {
            assert_eq!(safe_name(odd), None, "{odd:?}");
        }
    }
}
