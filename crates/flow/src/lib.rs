//! The story in a few short functions.
//!
//! **Entry points.** [`read`] makes a [`Reading`] of a capture folder; [`write_reading`] lays it down; a
//! [`KeptReading`] opens it again, [`compare()`] and [`series`] tell what changed, [`export`] gives it to other programs;
//! [`know_metal`] says what its metal holds, [`try_move`] what a move would do there, [`plan_repair`] what to do next;
//! [`gauged`] joins depths measured by hand to it; [`find_tip`] says where the tip behind the panel stands.
//!
//! **Idea.** Each line of [`read`] is a stage; each stage consumes what the last one gave.

mod board;
mod body_line;
mod came_of;
mod change_file;
mod compare;
mod doubt;
mod error;
mod export;
mod gather;
mod gauge;
mod gauge_file;
mod gauge_words;
mod holes;
mod kept;
mod known_lens;
mod lines;
mod metal;
mod metal_facts;
mod metal_file;
mod on_photo;
mod panel_curve;
mod patterns;
mod picture;
mod plan;
mod plan_file;
mod plan_reasons;
mod plan_words;
mod planned_sheet;
mod read;
mod reading_file;
mod rehearsal;
mod settle;
mod sheet_patch;
mod stand;
mod still;
mod texture;
mod tip;
mod tip_error;
mod tip_file;
mod tip_ground;
mod try_move;
mod unread;
mod unread_words;
mod warming;
mod write;

pub use body_line::{LineError, body_line};
pub use came_of::{CameOf, Worked};
pub use change_file::{ChangeFile, ChangeMaps, SeriesEntry, write_change};
pub use compare::{CompareError, Compared, SeriesStep, compare, lay, series};
pub use error::ReadError;
pub use export::{CAPTURE_FOLDER, ExportError, Form, READING_FOLDER, export, pack};
pub use gather::check_folder;
pub use gauge::{GaugeError, gauged};
pub use gauge_file::{Agreement, GAUGE_DOUBT_MM, GaugeAsked, GaugeFacts};
pub use kept::{KeptError, KeptReading};
pub use known_lens::{CameraSource, KnownLens};
pub use metal::{KnownMetal, MetalError, MetalSettings, know_metal};
pub use metal_file::{Check, Doubtful, Forced, MetalFile, OilCanFacts, Place, SheetFacts};
pub use on_photo::on_photo;
pub use plan::{PlanError, PlanMade, PlanSettings, plan_repair};
pub use plan_file::{Caution, PlanFile, write_plan};
pub use planned_sheet::{NotASheet, PlannedSheet};
pub use read::{Progress, ReadSettings, Reading, Stage, read};
pub use reading_file::{
    CameraFacts, FrameFacts, GridFacts, Maps, Note, PanelTagPlace, PhotoFacts, ReadingFile, SpotFacts, UnreadFacts,
};
pub use rehearsal::{TrialFile, rehearse};
pub use settle::FrameCheck;
pub use sheet_patch::{PatchFacts, SheetPatch, sheet_patch};
pub use stand::StandFacts;
pub use texture::TextureFacts;
pub use tip::{Tip, TipPhoto, TipSettings, find_tip};
pub use tip_error::TipError;
pub use tip_file::{AimFacts, TipFile, TipFrame, TipTag, write_tip};
pub use try_move::{Asked, AskedError, BarAsked, LeverFacts, MoveFacts, Tried, try_move};
pub use unread::Unread;
pub use warming::{Backing, Warmed, Warmer, Warming, cooling};
pub use write::{WriteError, write_kept, write_reading};
