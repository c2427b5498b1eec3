//! A simulated panel to learn on: it answers by the sheet's laws, and nothing but its mirrored lines tells how it stands.
//!
//! A tip leant on lightly lifts the lines over it (the sheet's elastic answer); a move is answered at once by the quick
//! answer and then solved in full. The score is taken against the truth, which the learner never sees while working.
//!
//! Limits: one patch of panel on coarse cells; a blow is a slow press; heat is the panel's one temperature.

mod level;
mod lines;
mod play;
mod score;

pub use level::{Hit, LEVELS_TOML, Level, Line, levels};
pub use lines::{LinesOver, lines_over};
pub use play::{Lean, Made, Rehearsal, Touch};
pub use score::{Claim, Height, Score, read_right};
