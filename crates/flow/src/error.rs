//! Why there is no reading, in the technician's words.

use dentwright_optics::{CaptureError, LocateError, PhotoError, SlidesError};
use thiserror::Error;

/// Why a capture gives no useful reading.
#[derive(Debug, Error)]
pub enum ReadError {
    /// No `capture.toml`.
    #[error("{folder} has no capture.toml")]
    NoCapture {
        /// The folder.
        folder: String,
    },
    /// Its description is wrong.
    #[error("{0}")]
    Capture(#[from] CaptureError),
    /// A photo is not there.
    #[error("the photo {file} is missing")]
    MissingPhoto {
        /// File name.
        file: String,
    },
    /// A photo cannot be decoded.
    #[error("the photo {file} {why}")]
    Photo {
        /// File name.
        file: String,
        /// Why.
        why: PhotoError,
    },
    /// More pixels than can be held.
    #[error("with the photo {file} the capture has more than 2000 megapixels")]
    TooLarge {
        /// File name of the photo that was too much.
        file: String,
    },
    /// Photos of different sizes.
    #[error("the photo {file} is {found}, the panel photo is {expected}")]
    Zoom {
        /// File name.
        file: String,
        /// Its size.
        found: String,
        /// The panel photo's size.
        expected: String,
    },
    /// Poses cannot be found.
    #[error("the photo {file} {why}")]
    Locate {
        /// File name.
        file: String,
        /// Why.
        why: LocateError,
    },
    /// Too few patterns.
    #[error("the patterns along {axis} do not give a phase: {why}")]
    Patterns {
        /// Board axis.
        axis: &'static str,
        /// Why.
        why: String,
    },
    /// The photos of a slid line board do not tell how far it was slid.
    #[error("the slid photos along {axis} do not tell how far the lines went: {why}")]
    Slides {
        /// Board axis.
        axis: &'static str,
        /// Why.
        why: SlidesError,
    },
    /// Only screen captures can be read.
    #[error("this capture has no screen patterns")]
    NotScreen,
    /// The mirrored board was not found.
    #[error("the mirrored patterns cannot be made out on the panel")]
    NothingMirrored,
    /// Lines mirrored twice.
    #[error("the photo {file} shows two sets of lines: front and back mirror the board, as glass and clear plastic do")]
    TwoReflections {
        /// File name.
        file: String,
    },
    /// Lines closer than the photo can tell apart.
    #[error("the lines in the photo {file} stand {px:.1} px apart, which is too fine for the photo")]
    TooFine {
        /// File name.
        file: String,
        /// Pixels a period takes.
        px: f64,
    },
    /// Lines blurred by a lens out of focus.
    #[error("the lines in the photo {file} are out of focus: they keep {percent:.0} % of the coarser lines' contrast")]
    TooSoft {
        /// File name.
        file: String,
        /// Share of the contrast left, percent.
        percent: f64,
    },
    /// Poses do not agree with the photos.
    #[error("tags and mirrored lines do not fit together ({detail})")]
    Inconsistent {
        /// The numbers.
        detail: String,
    },
    /// Stopped by the user.
    #[error("the reading was stopped")]
    Cancelled,
}

impl ReadError {
    /// Short stable name.
    pub fn code(&self) -> &'static str {
        match self {
            Self::NoCapture { .. } => "no_capture",
            Self::Capture(_) => "capture",
            Self::MissingPhoto { .. } => "missing_photo",
            Self::Photo { .. } => "photo",
            Self::TooLarge { .. } => "too_many_pixels",
            Self::Zoom { .. } => "zoom",
            Self::Locate { .. } => "locate",
            Self::Patterns { .. } => "patterns",
            Self::Slides { .. } => "slides",
            Self::NotScreen => "not_screen",
            Self::NothingMirrored => "nothing_mirrored",
            Self::TwoReflections { .. } => "two_reflections",
            Self::TooFine { .. } => "too_fine",
            Self::TooSoft { .. } => "too_soft",
            Self::Inconsistent { .. } => "inconsistent",
            Self::Cancelled => "cancelled",
        }
    }

    /// What to do next.
    pub fn next(&self) -> &'static str {
        match self {
            Self::NoCapture { .. } => "Choose the folder that holds the photos together with their capture.toml.",
            Self::Capture(_) => "Correct that line of capture.toml; the reference page lists every field.",
            Self::MissingPhoto { .. } => "Copy that photo into the folder, or take its line out of capture.toml.",
            Self::Photo { .. } => "Copy it from the phone again; if it stays damaged, take it again.",
            Self::TooLarge { .. } => "Take smaller photos: 12 megapixels show all there is to be seen.",
            Self::Zoom { .. } => "Take all photos but the set-up photo with one zoom and one way up.",
            Self::Locate { .. } => {
                "Stick at least four tag36h11 tags flat around the damage and take the photo so that they, and for the set-up photo the board's tags, are sharp and whole."
            }
            Self::Patterns { .. } => "Take at least four evenly shifted photos of every pattern, each axis.",
            Self::Slides { .. } => {
                "Take 5 to 9 photos of each axis, the board slid on by about a sixth of a pitch between them, phone and panel left alone."
            }
            Self::NotScreen => "Take a screen capture: sine patterns along both axes.",
            Self::TwoReflections { .. } => {
                "Only painted metal can be read. Frame the painted panel alone, without glass or clear plastic."
            }
            Self::TooFine { .. } => "Show fewer periods, stand closer, or take larger photos.",
            Self::TooSoft { .. } => {
                "Close the lens opening, stand farther off, or show fewer periods; focus on the panel."
            }
            Self::NothingMirrored => {
                "Stand so that the screen is mirrored where the damage is, darken the room and expose longer."
            }
            Self::Inconsistent { .. } => {
                "Check the tag size and the board's size in capture.toml, and that nothing moved after the set-up photo."
            }
            Self::Cancelled => "Start it again when you like.",
        }
    }
}
