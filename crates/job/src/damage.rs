//! One damaged area of one panel, with everything that was entered, photographed and read of it.

use crate::Panel;
use dentwright_price::Dent;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A damaged area of a panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Damage {
    /// Its id.
    pub id: Uuid,
    /// Where it is.
    pub panel: Panel,
    /// Where on the panel.
    pub at: At,
    /// Note, as entered.
    pub note: String,
    /// Its dents, in the order of entry.
    pub dents: Vec<DentEntry>,
    /// Its photos, in the order of entry.
    pub photos: Vec<Photo>,
    /// Its captures with their readings, oldest first.
    pub captures: Vec<Capture>,
}

/// A place on a panel as it is drawn: right and down, 0 to 1 of the panel's box.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct At {
    x: f64,
    y: f64,
}

/// A place that is not on the panel.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("the place on the panel is {x}, {y}, but both must be from 0 to 1")]
pub struct AtError {
    /// As given.
    pub x: f64,
    /// As given.
    pub y: f64,
}

impl At {
    /// A place on the panel.
    ///
    /// # Errors
    /// When one of the two is not from 0 to 1.
    pub fn new(x: f64, y: f64) -> Result<Self, AtError> {
        let on = |v: f64| (0.0..=1.0).contains(&v);
        if on(x) && on(y) { Ok(Self { x, y }) } else { Err(AtError { x, y }) }
    }

    /// From the left.
    #[must_use]
    pub fn x(self) -> f64 {
        self.x
    }

    /// From the top.
    #[must_use]
    pub fn y(self) -> f64 {
        self.y
    }
}

/// A dent, or several alike, in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct DentEntry {
    /// Its id.
    pub id: Uuid,
    /// What is priced.
    pub dent: Dent,
    /// Where it comes from.
    pub source: Source,
}

/// Where a dent comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Source {
    /// Entered by hand.
    Hand,
    /// A spot of a reading.
    Reading {
        /// The reading.
        reading: Uuid,
        /// Place of the spot in the reading's list, from 0.
        spot: u32,
        /// One standard deviation of the depth, mm.
        sigma_mm: f64,
        /// Whether the depth is a lower bound: part of the spot was too steep to read.
        at_least: bool,
    },
}

/// A photo, filed under its content.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// BLAKE3 of the file, 64 hexadecimal digits.
    pub hash: String,
    /// File name as it came.
    pub name: String,
}

/// A folder of photos that a reading can be made from.
#[derive(Debug, Clone, PartialEq)]
pub struct Capture {
    /// Its id.
    pub id: Uuid,
    /// When it arrived.
    pub created: Timestamp,
    /// Its files.
    pub files: Vec<CaptureFile>,
    /// The last task that read it, if any.
    pub task: Option<Uuid>,
    /// Readings made of it, oldest first.
    pub readings: Vec<ReadingEntry>,
}

/// A file of a capture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CaptureFile {
    /// Name inside the capture folder.
    pub name: String,
    /// BLAKE3 of the file.
    pub hash: String,
    /// Size, bytes.
    pub bytes: u64,
}

/// A reading in a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ReadingEntry {
    /// Its id.
    pub id: Uuid,
    /// When it was made.
    pub created: Timestamp,
}
