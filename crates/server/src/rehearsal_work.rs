//! Rehearsals under way, each with its panel; one that is not in memory is made again from its moves.

use crate::trouble::{Answer, Trouble};
use crate::under_way::lock;
use dentwright_plan::{Level, Made, Rehearsal, levels};
use dentwright_store::Store;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::sync::{Arc, Mutex};
use uuid::Uuid;

/// Panels kept in memory.
const MOST: usize = 8;

/// A rehearsal that one request at a time works on.
#[derive(Clone)]
pub struct Play(Arc<tokio::sync::Mutex<Rehearsal>>);

/// All of them.
#[derive(Default)]
pub struct Rehearsals {
    all: Mutex<Vec<(Uuid, Play)>>,
    /// Making one again is nobody else's at the time.
    again: tokio::sync::Mutex<()>,
}

impl Play {
    /// A new panel, hit.
    pub async fn begin(level: Level, seed: u64) -> Answer<Rehearsal> {
        let begun = tokio::task::spawn_blocking(move || Rehearsal::begin(&level, seed)).await;
        let begun = begun.map_err(|why| Trouble::own("making the panel", why))?;
        begun.ok_or_else(|| Trouble::own("making the panel", "the hits find no rest"))
    }

    /// Waits for its turn.
    pub async fn lock(&self) -> tokio::sync::MutexGuard<'_, Rehearsal> {
        self.0.lock().await
    }

    /// The same, to be carried elsewhere.
    pub async fn lock_owned(self) -> tokio::sync::OwnedMutexGuard<Rehearsal> {
        self.0.lock_owned().await
    }

    /// A computation on it, away from the network's threads.
    pub async fn with<T: Send + 'static>(self, work: impl FnOnce(&Rehearsal) -> T + Send + 'static) -> Answer<T> {
        let play = self.lock_owned().await;
        tokio::task::spawn_blocking(move || work(&play)).await.map_err(|why| Trouble::own("rehearsing", why))
    }
}

impl Rehearsals {
    /// Keeps one in memory.
    pub fn keep(&self, id: Uuid, rehearsal: Rehearsal) -> Play {
        let play = Play(Arc::new(tokio::sync::Mutex::new(rehearsal)));
        let mut all = lock(&self.all);
        all.retain(|(one, _)| *one != id);
        all.truncate(MOST - 1);
        all.insert(0, (id, play.clone()));
        play
    }

    /// Drops one from memory.
    pub fn forget(&self, id: Uuid) {
        lock(&self.all).retain(|(one, _)| *one != id);
    }

    fn in_memory(&self, id: Uuid) -> Option<Play> {
        lock(&self.all).iter().find(|(one, _)| *one == id).map(|(_, play)| play.clone())
    }

    /// The one under an id.
    pub async fn of(&self, store: &Store, id: Uuid) -> Answer<Play> {
        if let Some(found) = self.in_memory(id) {
            return Ok(found);
        }
        let _mine = self.again.lock().await;
        if let Some(found) = self.in_memory(id) {
            return Ok(found);
        }
        let stored = store.rehearsal(id).await?;
        let gone = || Trouble::own("making the panel again", format!("no level is called {}", stored.level));
        let level = levels().into_iter().find(|level| level.name == stored.level).ok_or_else(gone)?;
        let made: Vec<Made> = of_json(stored.made)?;
        let claims = of_json(stored.claims)?;
        let mut begun = Play::begin(level, stored.seed).await?;
        begun.claims = claims;
        let again = tokio::task::spawn_blocking(move || {
            for one in made {
                begun.temperature_c = one.temperature_c;
                begun.make(&one.touch);
            }
            begun
        });
        let again = again.await.map_err(|why| Trouble::own("making the panel again", why))?;
        Ok(self.keep(id, again))
    }
}

/// As it is kept.
pub fn as_json(value: &impl Serialize) -> Answer<serde_json::Value> {
    serde_json::to_value(value).map_err(|why| Trouble::own("writing a rehearsal down", why))
}

/// As it was kept.
pub fn of_json<T: DeserializeOwned>(value: serde_json::Value) -> Answer<T> {
    serde_json::from_value(value).map_err(|why| Trouble::own("understanding an earlier rehearsal", why))
}
