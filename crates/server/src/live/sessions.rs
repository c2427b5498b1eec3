//! The sessions of this process.

use dentwright_live::{Again, Session};
use dentwright_store::Files;
use jiff::{SignedDuration, Timestamp};
use std::collections::HashMap;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, MutexGuard};
use tempfile::TempDir;
use tokio::sync::watch;
use uuid::Uuid;

/// A session that nobody has touched for so long is over.
const HOURS: i64 = 2;

/// All sessions, by their codes.
#[derive(Default)]
pub struct Sessions {
    all: Mutex<HashMap<String, Arc<Live>>>,
}

/// One session with what it has taken so far.
pub struct Live {
    /// The damage it is for.
    pub damage: Uuid,
    inner: Mutex<Inner>,
    /// Counts the changes.
    pub version: watch::Sender<u64>,
}

/// What changes in a session.
pub struct Inner {
    /// What is up, what comes next.
    pub session: Session,
    /// Where photos wait until the capture is whole.
    pub folder: TempDir,
    /// Why the last photo must be taken again.
    pub again: Option<Again>,
    /// The capture and its task, once it is whole.
    pub taken: Option<(Uuid, Uuid)>,
    used: Timestamp,
}

impl Sessions {
    /// Begins a session; an earlier one of the same damage ends.
    ///
    /// # Errors
    /// When no folder can be made for its photos.
    pub fn begin(
        &self,
        code: &str,
        damage: Uuid,
        tag_mm: f64,
        files: &Files,
        now: Timestamp,
    ) -> Result<(), dentwright_store::FileError> {
        let folder = files.scratch()?;
        let inner = Inner { session: Session::new(tag_mm), folder, again: None, taken: None, used: now };
        let live = Arc::new(Live { damage, inner: Mutex::new(inner), version: watch::channel(1).0 });
        let mut all = self.all();
        all.retain(|_, other| other.damage != damage && !other.is_over(now));
        all.insert(code.to_owned(), live);
        Ok(())
    }

    /// A session by its code, as typed or scanned.
    pub fn get(&self, code: &str, now: Timestamp) -> Option<Arc<Live>> {
        let live = self.all().get(code).filter(|live| !live.is_over(now)).cloned()?;
        live.inner().used = now;
        Some(live)
    }

    /// Ends a session; its photos go, unless they have become a capture.
    pub fn end(&self, code: &str) {
        if let Some(live) = self.all().remove(code) {
            live.changed();
        }
    }

    fn all(&self) -> MutexGuard<'_, HashMap<String, Arc<Live>>> {
        self.all.lock().unwrap_or_else(|broken| broken.into_inner())
    }
}

impl Live {
    /// What changes in it.
    pub fn inner(&self) -> MutexGuard<'_, Inner> {
        self.inner.lock().unwrap_or_else(|broken| broken.into_inner())
    }

    /// Tells everyone who waits.
    pub fn changed(&self) {
        self.version.send_modify(|version| *version += 1);
    }

    fn is_over(&self, now: Timestamp) -> bool {
        now.duration_since(self.inner().used) > SignedDuration::from_hours(HOURS)
    }
}

impl Inner {
    /// Where the photo of a turn lies.
    pub fn path(&self, turn: usize) -> PathBuf {
        self.folder.path().join(format!("{turn}.jpg"))
    }
}
