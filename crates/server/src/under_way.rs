//! Long work of this process, one piece at a time: how far, and stopping one.

use crate::trouble::Trouble;
use std::collections::HashMap;
use std::future::Future;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Arc, Mutex, MutexGuard};
use uuid::Uuid;

/// Work by what it is for; each takes all cores, so that one waits for the other.
#[derive(Default)]
pub struct Queue {
    under_way: Mutex<HashMap<Uuid, UnderWay>>,
    turn: tokio::sync::Mutex<()>,
}

/// A piece of work.
#[derive(Clone, Default)]
pub struct UnderWay {
    fraction: Arc<AtomicU64>,
    /// Told to stop.
    pub cancel: Arc<AtomicBool>,
    /// Why it has ended without an answer.
    pub failed: Option<Trouble>,
}

impl UnderWay {
    /// Share done, 0 to 1.
    pub fn fraction(&self) -> f64 {
        f64::from_bits(self.fraction.load(Ordering::Relaxed))
    }

    /// Says how far it is.
    pub fn is_at(&self, share: f64) {
        self.fraction.store(share.to_bits(), Ordering::Relaxed);
    }

    /// Whether it was told to stop.
    pub fn stopped(&self) -> bool {
        self.cancel.load(Ordering::Relaxed)
    }
}

impl Queue {
    /// Work that runs, waits or has failed.
    pub fn of(&self, of: Uuid) -> Option<UnderWay> {
        lock(&self.under_way).get(&of).cloned()
    }

    /// Stops it, or forgets that it failed.
    pub fn cancel(&self, of: Uuid) {
        if let Some(work) = lock(&self.under_way).remove(&of) {
            work.cancel.store(true, Ordering::Relaxed);
        }
    }

    /// Begins a piece of work; what was begun for the same before is stopped.
    pub fn begin<F>(self: &Arc<Self>, of: Uuid, work: impl FnOnce(UnderWay) -> F + Send + 'static)
    where
        F: Future<Output = Result<(), Trouble>> + Send + 'static,
    {
        self.cancel(of);
        let mine = UnderWay::default();
        lock(&self.under_way).insert(of, mine.clone());
        let own = Arc::clone(self);
        tokio::spawn(async move {
            let _turn = own.turn.lock().await;
            let outcome = if mine.stopped() { Ok(()) } else { work(mine.clone()).await };
            let mut under_way = lock(&own.under_way);
            let still = under_way.get(&of).is_some_and(|one| Arc::ptr_eq(&one.cancel, &mine.cancel));
            match outcome {
                _ if !still => {} // stopped, or begun anew
                Ok(()) => drop(under_way.remove(&of)),
                Err(trouble) => drop(under_way.insert(of, UnderWay { failed: Some(trouble), ..mine.clone() })),
            }
        });
    }
}

/// What a lock holds, also where somebody panicked holding it.
pub fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(|broken| broken.into_inner())
}
