//! Files by the hash of their content.
//!
//! A file is durable before it has its name: it lies in `tmp`, its content is hashed and synced, and
//! then it is renamed. So a name is there with the whole content or not at all.

use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use tempfile::TempDir;

/// Hexadecimal digits of a BLAKE3 hash.
const HASH_DIGITS: usize = 64;
/// Bytes read at once.
const CHUNK: usize = 1 << 16;

/// The files of a shop.
#[derive(Debug, Clone)]
pub struct Files {
    files: PathBuf,
    tmp: PathBuf,
}

/// A file that is filed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Filed {
    /// BLAKE3 of its content, 64 hexadecimal digits.
    pub hash: String,
    /// Its size, bytes.
    pub bytes: u64,
}

/// Why a file cannot be filed or read.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// The disk says no.
    #[error("the file {path} cannot be {done}: {why}")]
    Disk {
        /// Which.
        path: PathBuf,
        /// `read`, `written` and so on.
        done: &'static str,
        /// Why.
        why: io::Error,
    },
    /// No such file.
    #[error("there is no file {0}")]
    Unknown(String),
    /// Its content is not what it was filed under.
    #[error("the file {0} is damaged: its content is no longer what was filed")]
    Damaged(String),
}

impl Files {
    /// Opens the files of a folder, and clears away what an ended process left half-written.
    ///
    /// # Errors
    /// When a folder cannot be made or cleared.
    pub fn open(folder: &Path) -> Result<Self, FileError> {
        let files = Self { files: folder.join("files"), tmp: folder.join("tmp") };
        if files.tmp.exists() {
            fs::remove_dir_all(&files.tmp).map_err(disk(&files.tmp, "cleared"))?;
        }
        for path in [&files.files, &files.tmp] {
            fs::create_dir_all(path).map_err(disk(path, "made"))?;
        }
        Ok(files)
    }

    /// A folder for what is on its way, on the same disk as the files; it goes when it is dropped.
    ///
    /// # Errors
    /// When it cannot be made.
    pub fn scratch(&self) -> Result<TempDir, FileError> {
        tempfile::tempdir_in(&self.tmp).map_err(disk(&self.tmp, "made"))
    }

    /// Files these bytes.
    ///
    /// # Errors
    /// When the disk says no.
    pub fn put(&self, bytes: &[u8]) -> Result<Filed, FileError> {
        let scratch = self.scratch()?;
        let path = scratch.path().join("file");
        let mut file = File::create(&path).map_err(disk(&path, "written"))?;
        file.write_all(bytes).map_err(disk(&path, "written"))?;
        drop(file);
        self.take(&path)
    }

    /// Files the file at `path`, which must be on the same disk (such as in [`Files::scratch`]) and
    /// is gone from there afterwards.
    ///
    /// # Errors
    /// When the disk says no.
    pub fn take(&self, path: &Path) -> Result<Filed, FileError> {
        let filed = hash_of(path)?;
        let target = self.path(&filed.hash);
        if hash_of(&target).is_ok_and(|there| there == filed) {
            fs::remove_file(path).map_err(disk(path, "removed"))?;
            return Ok(filed);
        }
        sync(path)?;
        let shelf = target.parent().unwrap_or(&self.files);
        fs::create_dir_all(shelf).map_err(disk(shelf, "made"))?;
        fs::rename(path, &target).map_err(disk(&target, "put in place"))?;
        sync(shelf)?;
        sync(&self.files)?;
        Ok(filed)
    }

    /// Writes bytes into a scratch folder, from where they are taken.
    ///
    /// # Errors
    /// When the disk says no.
    pub fn write(&self, path: &Path, bytes: &[u8]) -> Result<(), FileError> {
        fs::write(path, bytes).map_err(disk(path, "written"))
    }

    /// The content of a file, which is checked against its hash.
    ///
    /// # Errors
    /// When there is none, or it is damaged.
    pub fn read(&self, hash: &str) -> Result<Vec<u8>, FileError> {
        let path = self.known(hash)?;
        let bytes = fs::read(&path).map_err(disk(&path, "read"))?;
        if blake3::hash(&bytes).to_hex().as_str() != hash {
            return Err(FileError::Damaged(hash.to_owned()));
        }
        Ok(bytes)
    }

    /// Copies a file out, checked against its hash.
    ///
    /// # Errors
    /// When there is none, it is damaged, or `to` cannot be written.
    pub fn copy(&self, hash: &str, to: &Path) -> Result<(), FileError> {
        let bytes = self.read(hash)?;
        fs::write(to, bytes).map_err(disk(to, "written"))
    }

    /// Whether there is a file under this hash.
    #[must_use]
    pub fn has(&self, hash: &str) -> bool {
        self.known(hash).is_ok()
    }

    /// Removes a file; one that is gone already is no error.
    ///
    /// # Errors
    /// When the disk says no.
    pub fn remove(&self, hash: &str) -> Result<(), FileError> {
        match self.known(hash) {
            Ok(path) => fs::remove_file(&path).map_err(disk(&path, "removed")),
            Err(_) => Ok(()),
        }
    }

    fn known(&self, hash: &str) -> Result<PathBuf, FileError> {
        let form = hash.len() == HASH_DIGITS && hash.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
        let path = form.then(|| self.path(hash)).filter(|path| path.is_file());
        path.ok_or_else(|| FileError::Unknown(hash.to_owned()))
    }

    fn path(&self, hash: &str) -> PathBuf {
        self.files.join(&hash[..2]).join(hash)
    }
}

fn hash_of(path: &Path) -> Result<Filed, FileError> {
    let mut file = File::open(path).map_err(disk(path, "read"))?;
    let (mut hasher, mut chunk) = (blake3::Hasher::new(), vec![0; CHUNK]);
    loop {
        let read = file.read(&mut chunk).map_err(disk(path, "read"))?;
        if read == 0 {
            break;
        }
        hasher.update(&chunk[..read]);
    }
    Ok(Filed { hash: hasher.finalize().to_hex().to_string(), bytes: hasher.count() })
}

/// Waits until a file or folder is on the disk. A system that cannot open folders syncs them itself.
fn sync(path: &Path) -> Result<(), FileError> {
    match File::open(path).and_then(|file| file.sync_all()) {
        Err(why) if path.is_file() => Err(FileError::Disk { path: path.to_owned(), done: "synced", why }),
        _ => Ok(()),
    }
}

fn disk(path: &Path, done: &'static str) -> impl FnOnce(io::Error) -> FileError {
    let path = path.to_owned();
    move |why| FileError::Disk { path, done, why }
}
