//! Live sessions: a screen is the board, a phone is the camera, both in step.
//!
//! Neither device need be paired: a session's code, which the QR picture holds, opens that session and nothing
//! else. Both ask for the state and are answered when it changes (long polling), so that a turn costs a few
//! round trips and no waiting.

mod handlers;
mod sessions;
mod state;

pub use handlers::{__path_again, __path_begin, __path_end, __path_lay_out, __path_photo, __path_shown, __path_state};
pub use handlers::{again, begin, end, lay_out, photo, shown, state};
pub use sessions::Sessions;
