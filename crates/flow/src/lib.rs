//! The story in a few short functions.
//!
//! **Entry points.** [`read`] makes a [`Reading`] of a capture folder; [`write_reading`] lays it down.
//!
//! **Idea.** Each line of [`read`] is a stage; each stage consumes what the last one gave.

mod board;
mod doubt;
mod error;
mod gather;
mod npy;
mod patterns;
mod picture;
mod read;
mod reading_file;
mod settle;
mod stand;
mod still;
mod unread;
mod write;

pub use error::ReadError;
pub use gather::check_folder;
pub use npy::{MapFile, read_map};
pub use read::{Progress, ReadSettings, Reading, Stage, read};
pub use reading_file::{
    CameraFacts, FrameFacts, GridFacts, Maps, Note, PanelTagPlace, PhotoFacts, ReadingFile, SpotFacts, UnreadFacts,
};
pub use settle::FrameCheck;
pub use stand::StandFacts;
pub use unread::Unread;
pub use write::{WriteError, write_reading};
