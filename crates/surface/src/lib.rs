//! The panel as a surface: slopes to height, intended shape, lows and highs.
//!
//! **Entry points.** [`integrate()`], [`intended_shape`], [`find_spots`], [`judge`].
//!
//! **Conventions.** Panel frame: x right, y up, z out of the panel toward the viewer; millimetres;
//! NaN where nothing was read. Deviation is height minus intended shape, so a low is negative.
//!
//! **Idea.** Height comes from slopes by weighted least squares; what the panel was meant to be comes
//! from a smooth surface fitted to the sound metal around the damage; what is left is damage.
//!
//! **Limits.** A long bow of the whole patch cannot be told from the panel's own shape.

mod average;
mod basins;
mod contradicted;
mod finish;
mod frame;
mod grid;
mod integrate;
mod intended;
mod line;
mod regions;
mod ridge;
mod spots;

pub use average::{average, local_mean};
pub use contradicted::contradicted;
pub use finish::{Finish, Verdict, judge};
pub use grid::{Grid, Map, SlopeMap};
pub use integrate::{IntegrateSettings, integrate};
pub use intended::{Intended, IntendedSettings, intended_shape};
pub use line::{BodyLine, find_body_line};
pub use regions::{areas, widen};
pub use ridge::Ridge;
pub use spots::{Spot, SpotKind, SpotSettings, find_spots};
