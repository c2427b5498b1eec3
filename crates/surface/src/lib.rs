//! The panel as a surface: slopes to height, intended shape, lows and highs, what changed, whether it is done.
//!
//! **Entry points.** [`integrate()`], [`intended_shape`], [`find_spots`], [`fill`], [`judge()`], [`change()`], [`bands`],
//! [`marks()`].
//!
//! **Conventions.** Panel frame: x right, y up, z out of the panel toward the viewer; millimetres;
//! NaN where nothing was read. Deviation is height minus intended shape, so a low is negative.
//!
//! **Idea.** Height comes from slopes by weighted least squares; what the panel was meant to be comes
//! from a smooth surface fitted to the sound metal around the damage; what is left is damage.
//!
//! **Limits.** A long bow of the whole patch cannot be told from the panel's own shape.

mod areal;
mod average;
mod basins;
mod bump;
mod bump_search;
mod change;
mod contradicted;
mod enclosed;
mod finish;
mod fold;
mod fourier;
mod frame;
mod gauge;
mod gauss;
mod grid;
mod integrate;
mod intended;
mod judge;
mod laying;
mod likeness;
mod line;
mod line_report;
mod marks;
mod multigrid;
mod normal;
mod npy;
mod regions;
mod ridge;
mod samples;
mod spots;
mod thin_plate;

pub use areal::{Areal, BANDS_MM, Band, areal, bands, texture};
pub use average::{average, local_mean};
pub use bump::{Bump, BumpSettings, SlopeChange, find_bump};
pub use change::{Change, ChangeSettings, Measured, Residual, Volume, Way, Worked, change, residual};
pub use contradicted::contradicted;
pub use finish::{Finish, FinishLimit, Hole, Settle, SettleCode, SpotFinish, Verdict};
pub use fold::Fold;
pub use gauge::{Depth, Filled, cell_at, fill, hole_at};
pub use gauss::{between, longer_than};
pub use grid::{Grid, Map, SlopeMap};
pub use integrate::{IntegrateSettings, integrate};
pub use intended::{Intended, IntendedSettings, intended_shape};
pub use judge::{SURE, judge};
pub use laying::{LaidBy, Laying, TagPlace, lay_by_tags};
pub use likeness::lay_by_shape;
pub use line::{BodyLine, find_body_line};
pub use line_report::{LineReport, Station, drawn_line, line_report};
pub use marks::{Mark, MarkKind, TEXTURE_MM, marks};
pub use npy::{Array, NpyError, npy_f32, npy_f64, npy_u8, read_npy};
pub use regions::{areas, rings, widen};
pub use ridge::Ridge;
pub use spots::{Spot, SpotKind, SpotSettings, find_spots};
