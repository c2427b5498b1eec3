//! A session as the screen and the camera see it.

use super::sessions::Live;
use crate::trouble::Trouble;
use axum::http::StatusCode;
use dentwright_job::Language;
use dentwright_live::{Again, BoardLayout, Picture, ScreenTag};
use dentwright_optics::{Axis, Role};
use dentwright_report::BOARD_IDS;
use dentwright_scene::tag::{MODULES, is_white};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// A session under way.
#[derive(Debug, Serialize, ToSchema)]
pub struct LiveState {
    /// Counts the changes; ask with it to be answered when it has grown.
    version: u64,
    language: Language,
    /// Whether a screen is known.
    board: bool,
    /// From 0; equal to `turns` when all is done.
    turn: usize,
    turns: usize,
    /// What is to be shown and shot now.
    #[schema(required)]
    shot: Option<ShotJson>,
    /// Whether the screen shows it.
    shown: bool,
    /// Why the last photo must be taken again.
    #[schema(required)]
    again: Option<Trouble>,
    /// The board's tags.
    tags: Vec<TagModules>,
    /// The read, once the capture is whole.
    #[schema(required)]
    task_id: Option<Uuid>,
}

/// What is shown and shot.
#[derive(Debug, Serialize, ToSchema)]
pub struct ShotJson {
    /// `setup`, `panel` or `pattern`.
    role: &'static str,
    /// The wave; none for the plain board with its tags.
    #[schema(required)]
    wave: Option<Wave>,
}

/// Brightness `1/2 + 1/2 cos(2π(periods·s + shift))`, in light.
#[derive(Debug, Serialize, ToSchema)]
pub struct Wave {
    /// `u` or `v`.
    axis: &'static str,
    periods: u32,
    shift: f64,
}

/// A tag as its modules: rows from the top, 1 for white.
#[derive(Debug, Serialize, ToSchema)]
pub struct TagModules {
    id: usize,
    rows: Vec<String>,
}

/// What a screen says of itself: its lit area in its own pixels, and where its tags are in it.
#[derive(Debug, Deserialize, ToSchema)]
pub struct ScreenJson {
    width_px: f64,
    height_px: f64,
    mm_per_px: f64,
    tags: Vec<ScreenTagJson>,
}

/// A tag on the screen: its centre from the lit area's upper left corner, its side.
#[derive(Debug, Deserialize, ToSchema)]
pub struct ScreenTagJson {
    id: usize,
    x_px: f64,
    y_px: f64,
    size_px: f64,
}

impl From<ScreenJson> for BoardLayout {
    fn from(screen: ScreenJson) -> Self {
        let tag = |t: ScreenTagJson| ScreenTag { id: t.id, x_px: t.x_px, y_px: t.y_px, size_px: t.size_px };
        Self {
            width_px: screen.width_px,
            height_px: screen.height_px,
            mm_per_px: screen.mm_per_px,
            tags: screen.tags.into_iter().map(tag).collect(),
        }
    }
}

impl LiveState {
    /// As it is now.
    pub fn of(live: &Live, language: Language) -> Self {
        let version = *live.version.borrow();
        let inner = live.inner();
        let session = &inner.session;
        Self {
            version,
            language,
            board: session.has_board(),
            turn: session.turn(),
            turns: session.turns(),
            shot: session.shot().map(|shot| ShotJson { role: role(shot.role), wave: wave(shot.picture) }),
            shown: session.is_shown(),
            again: inner.again.as_ref().map(trouble),
            tags: BOARD_IDS.map(modules).into(),
            task_id: inner.taken.map(|(_, task)| task),
        }
    }
}

/// Why a photo must be taken again, as an error.
pub fn trouble(again: &Again) -> Trouble {
    Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, again.code(), format!("{again}."), again.next())
}

fn role(role: Role) -> &'static str {
    match role {
        Role::Setup => "setup",
        Role::Panel => "panel",
        Role::Pattern | Role::Slide | Role::Still => "pattern",
    }
}

fn wave(picture: Picture) -> Option<Wave> {
    match picture {
        Picture::Tags => None,
        Picture::Wave { axis, periods, shift } => {
            Some(Wave { axis: if axis == Axis::U { "u" } else { "v" }, periods, shift })
        }
    }
}

fn modules(id: usize) -> TagModules {
    let middle = |k: i32| (f64::from(k) + 0.5) / f64::from(MODULES) - 0.5;
    let row = |row: i32| {
        (0..MODULES).map(|column| if is_white(id, middle(column), -middle(row)) { '1' } else { '0' }).collect()
    };
    TagModules { id, rows: (0..MODULES).map(row).collect() }
}
