//! Reads of captures: they wait in the store's queue and run one at a time, each on all cores.

use dentwright_flow::{KnownLens, Progress, ReadError, ReadSettings, WriteError, read, write_reading};
use dentwright_optics::{PhoneZoom, phone_zoom};
use dentwright_store::{Claimed, NewReading, Store, StoreError, StoredCamera, TaskError, TaskState};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use std::collections::HashSet;
use std::path::Path;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::{Arc, Mutex, MutexGuard};
use tokio::sync::Notify;
use tokio::task::JoinHandle;
use uuid::Uuid;

/// The reads of this process.
#[derive(Default)]
pub struct Reads {
    state: Mutex<State>,
    wake: Notify,
    stopping: AtomicBool,
}

#[derive(Default)]
struct State {
    running: Option<Running>,
    /// Cancelled between being claimed and being begun.
    cancelled: HashSet<Uuid>,
}

#[derive(Clone)]
struct Running {
    task: Uuid,
    /// Share done, as the bits of an f32.
    fraction: Arc<AtomicU32>,
    cancel: Arc<AtomicBool>,
}

/// Why a read gives no reading.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// The capture cannot be read.
    #[error(transparent)]
    Read(#[from] ReadError),
    /// The reading cannot be written.
    #[error(transparent)]
    Write(#[from] WriteError),
    /// The record does not answer.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// Something of this program failed.
    #[error("the read broke down: {0}")]
    Broke(String),
}

impl Failure {
    /// As the record keeps it.
    fn told(&self) -> TaskError {
        let (code, next) = match self {
            Self::Read(error) => (error.code(), error.next()),
            Self::Write(_) => ("disk", "Check that the disk is not full and can be written to."),
            Self::Store(_) => ("server", "Start it again; if it stays, restart Dentwright."),
            Self::Broke(_) => ("server", "Take the photos again; if it stays, report these photos as a fault."),
        };
        TaskError { code: code.to_owned(), message: format!("{self}."), next: next.to_owned() }
    }
}

impl Reads {
    /// Begins to work off the queue. What an ended process left running is marked as interrupted.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn start(self: Arc<Self>, store: Store) -> Result<JoinHandle<()>, StoreError> {
        let interrupted = TaskError {
            code: "interrupted".to_owned(),
            message: "Dentwright was closed during this read.".to_owned(),
            next: "The photos are kept; start the read again.".to_owned(),
        };
        store.fail_interrupted(&interrupted, Timestamp::now()).await?;
        Ok(tokio::spawn(async move { self.work_off(&store).await }))
    }

    /// Ends the work; a read that runs is stopped.
    pub fn stop(&self) {
        self.stopping.store(true, Ordering::Relaxed);
        if let Some(running) = &self.state().running {
            running.cancel.store(true, Ordering::Relaxed);
        }
        self.wake.notify_one();
    }

    /// Tells that something was queued.
    pub fn look(&self) {
        self.wake.notify_one();
    }

    /// Share of a running read that is done, 0 to 1.
    pub fn fraction(&self, task: Uuid) -> f64 {
        let state = self.state();
        let running = state.running.as_ref().filter(|running| running.task == task);
        running.map_or(0.0, |running| f64::from(f32::from_bits(running.fraction.load(Ordering::Relaxed))))
    }

    /// Stops a read that runs or is about to.
    pub fn cancel(&self, task: Uuid) {
        let mut state = self.state();
        match &state.running {
            Some(running) if running.task == task => running.cancel.store(true, Ordering::Relaxed),
            _ => {
                state.cancelled.insert(task);
            }
        }
    }

    /// Stops those of these reads that run.
    pub fn cancel_all(&self, tasks: impl Iterator<Item = Uuid>) {
        let running = self.state().running.as_ref().map(|running| running.task);
        tasks.filter(|task| Some(*task) == running).for_each(|task| self.cancel(task));
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(|broken| broken.into_inner())
    }

    /// Makes every reading that waits, then returns.
    async fn work_all(&self, store: &Store) -> Result<(), StoreError> {
        while let Some(claimed) = store.claim_task(Timestamp::now()).await? {
            self.work(store, claimed).await;
        }
        Ok(())
    }

    async fn work_off(&self, store: &Store) {
        while !self.stopping.load(Ordering::Relaxed) {
            match store.claim_task(Timestamp::now()).await {
                Ok(Some(claimed)) => self.work(store, claimed).await,
                Ok(None) => self.wake.notified().await,
                Err(why) => {
                    tracing::error!("the queue of reads cannot be looked at: {why}");
                    self.wake.notified().await;
                }
            }
        }
    }

    async fn work(&self, store: &Store, claimed: Claimed) {
        let running = self.begin(claimed.task);
        let outcome = make_reading(store, claimed, &running).await;
        self.state().running = None;
        let now = Timestamp::now();
        let stopping = self.stopping.load(Ordering::Relaxed);
        let noted = match outcome {
            Ok(_) => Ok(()),
            // It stays as running, which the next start tells as interrupted.
            Err(Failure::Read(ReadError::Cancelled)) if stopping => Ok(()),
            Err(Failure::Read(ReadError::Cancelled)) => {
                store.cancel_task(claimed.task, TaskState::Running, now).await.map(drop)
            }
            // The damage was removed while its photos were read.
            Err(Failure::Store(StoreError::Unknown { .. })) => Ok(()),
            Err(failure) => store.fail_task(claimed.task, &failure.told(), now).await,
        };
        if let Err(why) = noted {
            tracing::error!("the end of a read cannot be noted: {why}");
        }
    }

    fn begin(&self, task: Uuid) -> Running {
        let mut state = self.state();
        let cancelled = state.cancelled.remove(&task);
        let cancel = Arc::new(AtomicBool::new(cancelled));
        let running = Running { task, fraction: Arc::default(), cancel };
        state.running = Some(running.clone());
        running
    }
}

/// Makes every reading that waits in a shop which nobody serves.
///
/// # Errors
/// When the record cannot be used. A read that fails is noted in the record.
pub async fn read_waiting(store: &Store) -> Result<(), StoreError> {
    Reads::default().work_all(store).await
}

/// From the queue to a kept reading.
async fn make_reading(store: &Store, claimed: Claimed, running: &Running) -> Result<Uuid, Failure> {
    let scratch = store.files().scratch().map_err(StoreError::from)?;
    let (photos, out) = (scratch.path().join("capture"), scratch.path().join("reading"));
    std::fs::create_dir(&photos).map_err(|why| Failure::Broke(why.to_string()))?;
    store.lay_out(claimed.capture, &photos).await?;
    let finish = store.shop().await?.finish_limit();
    let lenses = known_lenses(store, &photos).await?;
    let settings = ReadSettings { finish, lenses, ..ReadSettings::default() };
    let running = running.clone();
    let work = move || read_and_write(&photos, &out, &settings, &running);
    let new = tokio::task::spawn_blocking(work).await.map_err(|why| Failure::Broke(why.to_string()))??;
    Ok(store.keep_reading(claimed.task, new, Timestamp::now()).await?)
}

fn read_and_write(
    photos: &Path,
    out: &Path,
    settings: &ReadSettings,
    running: &Running,
) -> Result<NewReading, Failure> {
    let progress = |p: Progress| running.fraction.store(p.done.to_bits(), Ordering::Relaxed);
    let reading = read(photos, settings, &progress, &running.cancel)?;
    write_reading(&reading, out)?;
    reading_of_folder(out).map_err(|why| Failure::Broke(why.to_string()))
}

/// Calibrated lenses of the phone that took the photos, the newest of each zoom first.
pub async fn known_lenses(store: &Store, photos: &Path) -> Result<Vec<KnownLens>, Failure> {
    let cameras = store.cameras().await?;
    if cameras.is_empty() {
        return Ok(Vec::new());
    }
    let broke = |why: std::io::Error| Failure::Broke(why.to_string());
    let mut phone = None;
    for entry in std::fs::read_dir(photos).map_err(broke)? {
        phone = phone_zoom(&std::fs::read(entry.map_err(broke)?.path()).map_err(broke)?);
        if phone.is_some() {
            break;
        }
    }
    let Some(PhoneZoom { phone, .. }) = phone else { return Ok(Vec::new()) };
    let lens = |one: StoredCamera| {
        let calibration = serde_json::from_value(one.camera.value).ok()?;
        let made = one.created.to_zoned_datetime(TimeZone::system()).date().to_string();
        Some(KnownLens { calibration, focal_35mm: one.camera.focal_35mm, made })
    };
    Ok(cameras.into_iter().filter(|one| one.camera.phone == phone).filter_map(lens).collect())
}

/// What `write_reading` has written, for the record: the facts as text, the maps as files.
pub fn reading_of_folder(folder: &Path) -> std::io::Result<NewReading> {
    let facts = std::fs::read_to_string(folder.join("reading.json"))?;
    let json: serde_json::Value = serde_json::from_str(&facts)?;
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        if name != "reading.json" {
            files.push((name, entry.path()));
        }
    }
    let version = json["version"].as_str().unwrap_or_default().to_owned();
    Ok(NewReading { version, settings: json["settings"].clone(), facts, files })
}
