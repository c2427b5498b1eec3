//! Worked time as the clock noted it, or a hand.
//!
//! What a clock says may be wrong: a device's clock is set back, or nobody pressed stop in the evening. Such
//! an entry keeps what was noted, is said to be in doubt, and counts nowhere until a person has set it right.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What was worked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum WorkKind {
    /// Lows brought up from behind.
    Push,
    /// Highs tapped down, blends.
    Tap,
    /// Pulls from the front.
    Glue,
    /// Trim off and on.
    Trim,
    /// Reading the panel, by photos or by eye.
    Reading,
    /// The last small work, polish, corrosion protection, a look round with the customer.
    Finish,
}

impl WorkKind {
    /// All kinds, in the order of a job.
    pub const ALL: [Self; 6] = [Self::Trim, Self::Reading, Self::Push, Self::Tap, Self::Glue, Self::Finish];

    /// Whether it is work on dents, from which their hours are learned. Trim is not.
    #[must_use]
    pub fn is_on_dents(self) -> bool {
        self != Self::Trim
    }
}

/// A stretch of work.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TimeEntry {
    /// Its id.
    pub id: Uuid,
    /// On which job; none where that was removed.
    pub job: Option<Uuid>,
    /// Whose.
    pub technician: Uuid,
    /// What.
    pub kind: WorkKind,
    /// From when.
    pub started: Timestamp,
    /// Until when; none while it runs. As noted, so that it may lie before the start.
    pub stopped: Option<Timestamp>,
    /// Whether a person says that it is right as it stands.
    pub confirmed: bool,
}

/// How an entry stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum EntryState {
    /// It runs.
    Running,
    /// It counts.
    Counted,
    /// It ends before it begins: the clock was set back.
    Backwards,
    /// Longer than anybody works at a stretch: left running, most likely overnight.
    LeftRunning,
}

/// Longest stretch of one kind of work that is taken without asking, s: 8 h. Common practice, no published
/// source: a working day has breaks, and a night is longer.
pub const LONGEST_STRETCH_S: i64 = 8 * 3600;

impl TimeEntry {
    /// From start to stop, or to `now` while it runs, s; below zero where the clock was set back.
    #[must_use]
    pub fn seconds(&self, now: Timestamp) -> i64 {
        self.stopped.unwrap_or(now).duration_since(self.started).as_secs()
    }

    /// How it stands.
    #[must_use]
    pub fn state(&self, now: Timestamp) -> EntryState {
        let seconds = self.seconds(now);
        match (self.stopped, self.confirmed) {
            _ if seconds < 0 => EntryState::Backwards,
            (_, false) if seconds > LONGEST_STRETCH_S => EntryState::LeftRunning,
            (None, _) => EntryState::Running,
            (Some(_), _) => EntryState::Counted,
        }
    }

    /// What counts of it, s: nothing while it runs or is in doubt.
    #[must_use]
    pub fn counted_s(&self, now: Timestamp) -> i64 {
        if self.state(now) == EntryState::Counted { self.seconds(now) } else { 0 }
    }
}

/// Worked time by kind.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct WorkedByKind {
    /// What.
    pub kind: WorkKind,
    /// How long, s.
    pub seconds: i64,
    /// Its share of all that counts, 0 to 1.
    pub share: f64,
}

/// Worked time by kind, every kind once in the order of a job.
///
/// ```
/// use dentwright_job::{WorkKind, by_kind};
/// assert!(by_kind(&[], jiff::Timestamp::UNIX_EPOCH).iter().all(|one| one.seconds == 0 && one.share == 0.0));
/// ```
#[must_use]
pub fn by_kind(entries: &[TimeEntry], now: Timestamp) -> Vec<WorkedByKind> {
    let sum = |kind: WorkKind| entries.iter().filter(|one| one.kind == kind).map(|one| one.counted_s(now)).sum::<i64>();
    let all: i64 = WorkKind::ALL.into_iter().map(sum).sum();
    let row = |kind| {
        let seconds = sum(kind);
        WorkedByKind { kind, seconds, share: if all > 0 { seconds as f64 / all as f64 } else { 0.0 } }
    };
    WorkKind::ALL.into_iter().map(row).collect()
}

/// Worked time on dents, without trim, s: what hours are learned from.
#[must_use]
pub fn on_dents_s(entries: &[TimeEntry], now: Timestamp) -> i64 {
    entries.iter().filter(|one| one.kind.is_on_dents()).map(|one| one.counted_s(now)).sum()
}
