//! A line board slid by unknown amounts: photos to steps, steps to phases, phases to board points.
//!
//! **Entry points.** [`find_slides`], [`slid_phase`], [`line_field`].
//!
//! **Idea.** The photos themselves tell how far the board went between them: what is alike in two photos
//! depends on the step between them alone. With steps and the lines' profile known each pixel stands alone, as
//! with a screen. One pitch does not tell which line a pixel sees: the phase is unwrapped over the region and
//! its one order taken from the board's tags in the mirror image, else from where the tags say the board is.
//!
//! **Limits.** Four photos at least, three different places of the lines; areas cut off from the main one are
//! joined to it only where the panel in between is smooth.
//!
//! **References.** Greivenkamp 1984; Wang and Han 2004; Vargas, Quiroga, Belenguer 2011.

mod covariance;
mod decode;
mod field;
mod profile;
mod steps;
mod tiles;
mod waves;

pub use decode::{SlidPhase, slid_phase};
pub use field::{LineField, line_field};
pub use profile::Profile;
pub use steps::{LEAST_PHOTOS, Slides, SlidesError, find_slides};
