//! What every handler may use.

use crate::books::Memory;
use crate::changes::Changes;
use crate::door::Door;
use crate::live::Sessions;
use crate::metal_work::Metals;
use crate::reads::Reads;
use crate::rehearsal_work::Rehearsals;
use crate::under_way::Queue;
use dentwright_store::Store;
use jiff::Timestamp;
use std::sync::Arc;

/// The open shop. Cheap to clone.
#[derive(Clone)]
pub struct App {
    /// The record.
    pub store: Store,
    /// Reads that wait or run.
    pub reads: Arc<Reads>,
    /// Comparisons of late.
    pub changes: Arc<Changes>,
    /// States of metal that are worked out.
    pub metals: Arc<Metals>,
    /// Plans that are worked out, by reading.
    pub plans: Arc<Queue>,
    /// Rehearsals under way.
    pub rehearsals: Arc<Rehearsals>,
    /// Who may come in.
    pub door: Arc<Door>,
    /// Live sessions.
    pub live: Arc<Sessions>,
    /// Papers are issued one after the other, so that two together do not give back more than was billed.
    pub issuing: Arc<tokio::sync::Mutex<()>>,
    /// The shop's hours as they were last worked out.
    pub memory: Arc<Memory>,
    /// The shop's own authority, PEM; none where there is no encrypted door.
    pub authority: Option<Arc<str>>,
}

impl App {
    /// A shop that was opened; nothing is under way yet.
    pub fn of(store: Store, door: Door, authority: Option<Arc<str>>) -> Self {
        Self {
            store,
            reads: Arc::default(),
            changes: Arc::default(),
            metals: Arc::default(),
            plans: Arc::default(),
            rehearsals: Arc::default(),
            door: Arc::new(door),
            live: Arc::default(),
            issuing: Arc::default(),
            memory: Arc::default(),
            authority,
        }
    }

    /// The one place that asks the clock.
    pub fn now(&self) -> Timestamp {
        Timestamp::now()
    }
}
