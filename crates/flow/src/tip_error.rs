//! Why it cannot be told where a tip stands.

use dentwright_optics::PhotoError;
use thiserror::Error;

/// Why there is no place.
#[derive(Debug, Error)]
pub enum TipError {
    /// A photo cannot be opened.
    #[error("the photo {file} {why}")]
    Photo {
        /// File name.
        file: String,
        /// Why.
        why: PhotoError,
    },
    /// Two sizes.
    #[error("the two photos are of different sizes")]
    Sizes,
    /// Too few tags, or tags in a line.
    #[error("the photo before shows {found} tags that tell where the panel is; at least 4 are needed, not in a line")]
    Tags {
        /// How many were found.
        found: usize,
    },
    /// Too few tags of the reading.
    #[error("the photo before shows {found} of the reading's tags; at least 4 are needed")]
    TagsOfReading {
        /// How many were found.
        found: usize,
    },
    /// Tags stuck elsewhere.
    #[error("the tags do not stand where the reading has them")]
    OtherTags,
    /// The camera moved.
    #[error("the camera moved too far between the photos: {0}")]
    Moved(String),
    /// No lines.
    #[error("no lines are mirrored in the photo before")]
    NoLines,
    /// Nothing rose.
    #[error("the lines did not move more than noise does ({lobe:.3} of their spacing at most, noise is {noise:.3})")]
    Faint {
        /// Largest change of the best place, line spacings.
        lobe: f64,
        /// Spread of what is left, line spacings.
        noise: f64,
    },
    /// Lost lines.
    #[error("something rose, but the lines around it cannot be followed")]
    Hidden,
    /// Not two lobes across the lines.
    #[error("the lines moved, but not as over a tip: {0}")]
    NotATip(&'static str),
}

impl TipError {
    /// What to do next.
    #[must_use]
    pub fn next(&self) -> &'static str {
        match self {
            Self::Photo { .. } => "Give two JPEG or PNG photos as the phone wrote them.",
            Self::Sizes => "Take both photos with the same phone at the same zoom.",
            Self::Tags { .. } => "Stick at least four tags around the place, so that the photo shows them all.",
            Self::TagsOfReading { .. } | Self::OtherTags => {
                "Give the reading that was taken since the tags were stuck, or no reading."
            }
            Self::Moved(_) => "Stand the phone on a tripod or wedge it, and take both photos with a timer.",
            Self::NoLines => "Stand the board so that its lines are mirrored where the tip is.",
            Self::Faint { .. } => {
                "Lean on the tip a little more, or move the board so that its lines run over the place; if it stays \
                 so, the tip is outside the picture, or where the lines close into rings."
            }
            Self::Hidden => "Bring the board closer, or lean on the tip less, until the lines stay apart there.",
            Self::NotATip(_) => "Keep the board, the light and your other hand still, and lean on the tip alone.",
        }
    }
}
