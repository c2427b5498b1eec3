//! States of metal under way: one at a time, each on all cores, how far, and stopping one.

use crate::trouble::Trouble;
use dentwright_flow::{KnownMetal, MetalError, MetalSettings, know_metal};
use dentwright_sheet::{Dent, NotWorked, give_map};
use dentwright_store::{NewMetal, Store, StoreError};
use dentwright_surface::{Grid, Map};
use jiff::Timestamp;
use std::collections::HashMap;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Arc, Mutex, MutexGuard};
use uuid::Uuid;

/// Places each way at which a dent's give is asked.
const GIVES: usize = 21;
/// Dents kept ready for moves.
const READY: usize = 4;

/// The work of this process on metals.
#[derive(Default)]
pub struct Metals {
    under_way: Mutex<HashMap<Uuid, UnderWay>>,
    /// One at a time: each takes all cores.
    turn: tokio::sync::Mutex<()>,
    ready: Mutex<Vec<(Uuid, Arc<Ready>)>>,
}

/// A dent that moves can be tried on.
pub struct Ready {
    /// The dent.
    pub dent: Dent,
    /// How far it gives.
    pub give: Map,
}

/// Work on the metal of a reading.
#[derive(Clone, Default)]
pub struct UnderWay {
    fraction: Arc<AtomicU64>,
    cancel: Arc<AtomicBool>,
    /// Why it has ended without an answer.
    pub failed: Option<Trouble>,
}

impl UnderWay {
    /// Share done, 0 to 1.
    pub fn fraction(&self) -> f64 {
        f64::from_bits(self.fraction.load(Ordering::Relaxed))
    }
}

/// Maps of a reading, as filed.
pub struct ReadingMaps {
    /// Where they stand.
    pub grid: Grid,
    /// Height, deviation and doubt, NPY.
    pub files: [Vec<u8>; 3],
}

impl Metals {
    /// Work on a reading's metal that runs, waits or has failed.
    pub fn of(&self, reading: Uuid) -> Option<UnderWay> {
        lock(&self.under_way).get(&reading).cloned()
    }

    /// Stops it, or forgets that it failed.
    pub fn cancel(&self, reading: Uuid) {
        if let Some(work) = lock(&self.under_way).remove(&reading) {
            work.cancel.store(true, Ordering::Relaxed);
        }
    }

    /// Begins to find out what the metal of a reading holds; what was begun before is stopped.
    pub fn begin(self: &Arc<Self>, store: Store, reading: Uuid, maps: ReadingMaps, settings: MetalSettings) {
        self.cancel(reading);
        let work = UnderWay::default();
        lock(&self.under_way).insert(reading, work.clone());
        let own = Arc::clone(self);
        tokio::spawn(async move {
            let _turn = own.turn.lock().await;
            let outcome = own.work(&store, reading, maps, settings, &work).await;
            let mut under_way = lock(&own.under_way);
            let mine = under_way.get(&reading).is_some_and(|one| Arc::ptr_eq(&one.cancel, &work.cancel));
            match outcome {
                _ if !mine => {} // stopped, or begun anew
                Ok(()) => drop(under_way.remove(&reading)),
                Err(trouble) => drop(under_way.insert(reading, UnderWay { failed: Some(trouble), ..work.clone() })),
            }
        });
    }

    async fn work(
        &self,
        store: &Store,
        reading: Uuid,
        maps: ReadingMaps,
        settings: MetalSettings,
        work: &UnderWay,
    ) -> Result<(), Trouble> {
        let running = work.clone();
        let known = tokio::task::spawn_blocking(move || know(&maps, &settings, &running)).await;
        let known = known.map_err(|why| Trouble::own("working out the metal", why))??;
        let facts = serde_json::to_string(&known.facts).map_err(|why| Trouble::own("writing the metal down", why))?;
        let maps = known.maps.iter().map(|(name, map)| ((*name).to_owned(), map.to_npy())).collect();
        let new = NewMetal { facts, state: known.dent.pack(), maps };
        lock(&self.ready).retain(|(id, _)| *id != reading);
        store.keep_metal(reading, &new, Timestamp::now()).await?;
        Ok(())
    }

    /// The dent of a reading, ready for moves.
    ///
    /// # Errors
    /// When its metal is not known yet.
    pub async fn ready(&self, store: &Store, reading: Uuid) -> Result<Arc<Ready>, Trouble> {
        let found = lock(&self.ready).iter().find(|(id, _)| *id == reading).map(|(_, ready)| Arc::clone(ready));
        if let Some(found) = found {
            return Ok(found);
        }
        let bytes = match store.metal_state(reading).await {
            Err(StoreError::Unknown { .. }) => {
                return Err(Trouble::unknown("what the metal of this reading holds is not worked out yet"));
            }
            other => other?,
        };
        let ready = tokio::task::spawn_blocking(move || {
            let dent = Dent::unpack(&bytes).ok()?;
            let give = give_map(&dent.panel, GIVES)?;
            Some(Ready { dent, give })
        });
        let ready = ready.await.map_err(|why| Trouble::own("making the dent ready", why))?;
        let ready =
            Arc::new(ready.ok_or_else(|| Trouble::own("making the dent ready", "its state is not understood"))?);
        let mut all = lock(&self.ready);
        all.truncate(READY - 1);
        all.insert(0, (reading, Arc::clone(&ready)));
        Ok(ready)
    }
}

fn know(maps: &ReadingMaps, settings: &MetalSettings, work: &UnderWay) -> Result<KnownMetal, Trouble> {
    let grid = maps.grid;
    let load = |file: &Vec<u8>| Map::from_npy(grid, file).map_err(|why| Trouble::own("reading a map", why));
    let [height, deviation, sigma] = maps.files.each_ref().map(load);
    let (height, deviation, sigma) = (height?, deviation?, sigma?);
    let progress = |share: f64| work.fraction.store(share.to_bits(), Ordering::Relaxed);
    know_metal(&height, &deviation, &sigma, settings, &progress, &work.cancel).map_err(told)
}

/// As the app shows it.
pub fn told(error: MetalError) -> Trouble {
    match error {
        MetalError::NotWorked(NotWorked::Nothing) => refused(error, "Choose a spot that stands out of its doubt."),
        MetalError::NotWorked(NotWorked::NoRest { .. } | NotWorked::NotReached { .. }) => refused(
            error,
            "Try another thickness or metal, or a smaller spot; a dent this sharp may be beyond the model.",
        ),
        MetalError::NotWorked(NotWorked::Cancelled) => refused(error, "Start it again when wanted."),
        MetalError::NoSuchMetal(_) | MetalError::Thickness(_) => Trouble::entered(error),
    }
}

fn refused(error: MetalError, next: &str) -> Trouble {
    Trouble::new(axum::http::StatusCode::UNPROCESSABLE_ENTITY, "metal", format!("{error}."), next)
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(|broken| broken.into_inner())
}
