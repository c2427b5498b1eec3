//! The paint's texture, reported apart from lows and highs.

use crate::unread::Unread;
use dentwright_surface::{Areal, Band, Map, Mark, areal, bands, marks, texture};
use serde::{Deserialize, Serialize};

/// Texture of a panel: figures and bands on its sound metal, and places that do not match.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct TextureFacts {
    /// Waves up to this length are counted in the figures, mm.
    pub longest_mm: f64,
    /// Figures of sound metal (ISO 25178-2); none where too little of it was read.
    pub areal: Option<Areal>,
    /// What lies in each of the trade's bands, on sound metal.
    pub bands: Vec<Band>,
    /// Places whose texture does not match the panel's, the largest first.
    pub marks: Vec<Mark>,
}

/// Peel ends about here, mm; longer is shape or damage.
const LONGEST_MM: f64 = 10.0;

/// Texture of a deviation; `sound` are the cells that no damage lies on, `unread` says why cells were not read.
pub(crate) fn texture_of(deviation: &Map, sound: &[bool], unread: &[u8]) -> TextureFacts {
    let folded: Vec<bool> = unread.iter().map(|&why| why == Unread::Folded as u8).collect();
    TextureFacts {
        longest_mm: LONGEST_MM,
        areal: areal(&texture(deviation, sound, LONGEST_MM)),
        bands: bands(deviation, sound),
        marks: marks(deviation, &folded),
    }
}
