//! States of metal worked out, and dents kept ready for moves.

use crate::trouble::Trouble;
use crate::under_way::{Queue, UnderWay, lock};
use dentwright_flow::{KnownMetal, MetalError, MetalSettings, know_metal};
use dentwright_sheet::{Dent, NotWorked, give_map};
use dentwright_store::{NewMetal, Store, StoreError};
use dentwright_surface::{Grid, Map};
use jiff::Timestamp;
use std::sync::{Arc, Mutex};
use uuid::Uuid;

/// Places each way at which a dent's give is asked.
const GIVES: usize = 21;
/// Dents kept ready.
const READY: usize = 4;

/// The work of this process on metals.
#[derive(Default)]
pub struct Metals {
    /// What is under way, by reading.
    pub queue: Arc<Queue>,
    ready: Mutex<Vec<(Uuid, Arc<Ready>)>>,
}

/// A dent that moves can be tried on.
pub struct Ready {
    /// The dent.
    pub dent: Dent,
    /// How far it gives.
    pub give: Map,
}

/// Maps of a reading, as filed.
pub struct ReadingMaps {
    /// Where they stand.
    pub grid: Grid,
    /// Height, deviation and doubt, NPY.
    pub files: [Vec<u8>; 3],
}

impl Metals {
    /// Begins to find out what the metal of a reading holds; what was begun before is stopped.
    pub fn begin(self: &Arc<Self>, store: Store, reading: Uuid, maps: ReadingMaps, settings: MetalSettings) {
        let own = Arc::clone(self);
        self.queue.begin(reading, move |work| async move { own.work(&store, reading, maps, settings, work).await });
    }

    async fn work(
        &self,
        store: &Store,
        reading: Uuid,
        maps: ReadingMaps,
        settings: MetalSettings,
        work: UnderWay,
    ) -> Result<(), Trouble> {
        let known = tokio::task::spawn_blocking(move || know(&maps, &settings, &work)).await;
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
    know_metal(&height, &deviation, &sigma, settings, &|share| work.is_at(share), &work.cancel).map_err(told)
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
