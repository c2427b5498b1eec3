//! One photo of a standing line board: its lines followed across the image.
//!
//! **Entry points.** [`carrier`], [`follow`], [`followed_both`]; [`lines_moved`] for two photos.
//!
//! **Idea.** One photo holds three unknowns a pixel (brightness, contrast, phase), so neighbours must tell.
//! First the strongest wave near the expected one is looked for around every place of a lattice (windowed
//! Fourier ridges). Then brightness, contrast and phase are fitted in a small window around every pixel along
//! the wave found so far, and again along the outcome, so that the window follows the lines as they bend.
//!
//! **Limits.** Nothing finer than about half a line's width can be seen. Where the mirror image turns over, the
//! photo looks the same as where it does not (a cosine is even): the turn itself shows as lines that stand
//! still, so what such a place encloses gets no number ([`followed_both`]).
//!
//! **References.** Takeda, Ina, Kobayashi 1982; Kemao 2007 (windowed Fourier ridges and filtering).

mod blur;
mod carrier;
mod follow;
mod lost;
mod moved;

pub use carrier::carrier;
pub use follow::{Followed, follow};
pub use lost::followed_both;
pub use moved::{LinesMoved, lines_moved};
