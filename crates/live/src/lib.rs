//! A capture taken step by step: a screen shows, a camera shoots, each photo is judged before the next pattern.
//!
//! # Entry points
//! A [`Session`] is told where the screen's tags are ([`BoardLayout`]), that a picture is up, and what was shot;
//! it answers with what comes next. Its [`Session::description`] is the finished capture's `capture.toml`.
//!
//! # Conventions
//! Board frame and pixels as `docs/frames.md` says. Turns count from zero: set-up photo, panel photo, patterns.
//!
//! # Idea
//! The camera may be slow, the screen may lag, a hand may touch the tripod. So nothing is timed: a turn ends when
//! its photo shows something new, is as sharp as the others and stands where they stood.
//!
//! # Limits
//! A photo that fails three times is kept if the reading can undo what is wrong with it; else the run starts again
//! from the panel photo. Whether a screen has finished changing is left to the camera's waiting time.

mod board;
mod check;
mod plan;
mod session;

pub use board::{BoardLayout, LayoutError, ScreenTag};
pub use check::Again;
pub use plan::{Picture, Shot, plan};
pub use session::{Session, Taken};
