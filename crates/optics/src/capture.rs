//! `capture.toml`: what the photos of a capture folder are.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// The whole description.
#[derive(Debug, Clone, Deserialize, Serialize)]
pub struct Capture {
    /// The panel's tags.
    pub panel: PanelTags,
    /// The board.
    pub board: Board,
    /// The photos.
    #[serde(default)]
    pub frames: Vec<Frame>,
}

/// Tags stuck on the panel.
#[derive(Debug, Clone, Deserialize, Serialize)]
pub struct PanelTags {
    /// Only `tag36h11`.
    pub tag_family: String,
    /// Side of the black square, mm.
    pub tag_size_mm: f64,
    /// Ids in use.
    pub tag_ids: Vec<usize>,
}

/// The lit board.
#[derive(Debug, Clone, Deserialize, Serialize)]
pub struct Board {
    /// `screen` or `lines`.
    pub kind: BoardKind,
    /// Lit width, mm.
    pub width_mm: f64,
    /// Lit height, mm.
    pub height_mm: f64,
    /// One black and one white line, mm; kind `lines` only.
    pub pitch_mm: Option<f64>,
    /// Its tags.
    #[serde(default)]
    pub tags: Vec<BoardTag>,
}

/// What shows the pattern.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum BoardKind {
    /// Sine patterns on a screen.
    Screen,
    /// Black and white lines.
    Lines,
}

/// A tag on the board; centre in board coordinates.
#[derive(Debug, Clone, Copy, Deserialize, Serialize)]
pub struct BoardTag {
    /// Id.
    pub id: usize,
    /// Centre, mm right of the middle.
    pub x_mm: f64,
    /// Centre, mm above the middle.
    pub y_mm: f64,
    /// Side of the black square, mm.
    pub size_mm: f64,
}

/// One photo.
#[derive(Debug, Clone, Deserialize, Serialize)]
pub struct Frame {
    /// File name inside the folder.
    pub file: String,
    /// What it shows.
    pub role: Role,
    /// Measured axis.
    pub axis: Option<Axis>,
    /// Periods across the board.
    pub periods: Option<f64>,
    /// Shift in periods.
    pub shift: Option<f64>,
}

/// What a photo shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Role {
    /// From the side: panel and board.
    Setup,
    /// From the reading position.
    Panel,
    /// A screen pattern.
    Pattern,
    /// A slid line board.
    Slide,
    /// A standing line board.
    Still,
}

/// Board axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Axis {
    /// To the right.
    U,
    /// Up.
    V,
}

/// What is wrong with a description.
#[derive(Debug, Error, Clone, PartialEq)]
pub enum CaptureError {
    /// Not TOML, or a field is missing or of the wrong type.
    #[error("capture.toml cannot be understood: {0}")]
    Syntax(String),
    /// Another tag family.
    #[error("capture.toml names the tag family {0:?}; only tag36h11 is read")]
    Family(String),
    /// A number that cannot be.
    #[error("capture.toml: {what} is {value}, it must be above zero")]
    Number {
        /// The field.
        what: &'static str,
        /// Its value.
        value: f64,
    },
    /// A file name that leaves the folder.
    #[error("capture.toml names the file {0:?}, which is not inside the capture folder")]
    Outside(String),
    /// A photo that lacks a field its role needs.
    #[error("capture.toml: the photo {file} needs {field}")]
    Field {
        /// The photo.
        file: String,
        /// What it lacks.
        field: &'static str,
    },
    /// More photos than any capture has.
    #[error("capture.toml names {0} photos; at most {MOST_FRAMES} are read")]
    TooMany(usize),
    /// A role that is absent.
    #[error("capture.toml names no photo with role {0:?}")]
    Missing(&'static str),
}

/// Photos of a capture at most: all are held in memory together.
const MOST_FRAMES: usize = 200;

impl Capture {
    /// Parses and checks a description.
    pub fn parse(text: &str) -> Result<Self, CaptureError> {
        let capture: Self = toml::from_str(text).map_err(|e| CaptureError::Syntax(e.message().to_owned()))?;
        capture.check()?;
        Ok(capture)
    }

    fn check(&self) -> Result<(), CaptureError> {
        if self.panel.tag_family != "tag36h11" {
            return Err(CaptureError::Family(self.panel.tag_family.clone()));
        }
        let positive = |what, value: f64| {
            if value.is_finite() && value > 0.0 { Ok(()) } else { Err(CaptureError::Number { what, value }) }
        };
        positive("panel tag_size_mm", self.panel.tag_size_mm)?;
        positive("board width_mm", self.board.width_mm)?;
        positive("board height_mm", self.board.height_mm)?;
        if self.board.kind == BoardKind::Lines {
            positive("board pitch_mm (kind \"lines\" needs it)", self.board.pitch_mm.unwrap_or_default())?;
        }
        self.board.tags.iter().try_for_each(|t| positive("board tag size_mm", t.size_mm))?;
        if self.frames.len() > MOST_FRAMES {
            return Err(CaptureError::TooMany(self.frames.len()));
        }
        self.frames.iter().try_for_each(Frame::check)?;
        for (role, name) in [(Role::Setup, "setup"), (Role::Panel, "panel")] {
            if !self.frames.iter().any(|f| f.role == role) {
                return Err(CaptureError::Missing(name));
            }
        }
        Ok(())
    }
}

impl Frame {
    fn check(&self) -> Result<(), CaptureError> {
        let plain = !self.file.is_empty() && !self.file.contains(['/', '\\', ':']) && self.file != "..";
        if !plain {
            return Err(CaptureError::Outside(self.file.clone()));
        }
        let needs = |field, present: bool| {
            if present { Ok(()) } else { Err(CaptureError::Field { file: self.file.clone(), field }) }
        };
        if self.role == Role::Pattern {
            needs("axis", self.axis.is_some())?;
            needs("periods above zero", self.periods.is_some_and(|p| p.is_finite() && p > 0.0))?;
            needs("shift", self.shift.is_some_and(f64::is_finite))?;
        }
        if matches!(self.role, Role::Slide | Role::Still) {
            needs("axis", self.axis.is_some())?;
        }
        Ok(())
    }
}
