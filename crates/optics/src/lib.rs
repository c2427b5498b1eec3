//! Photos of a mirrored board to slopes of the panel.
//!
//! **Entry points.** [`decode`], [`Capture::parse`], [`find_tags`], [`demodulate()`], [`unwrap()`],
//! [`refine`], [`slopes_on`].
//!
//! **Conventions.** Millimetres, radians, frames as `docs/frames.md` says.
//!
//! **Idea.** Every pixel knows which board point it mirrors; with the poses known the surface normal is
//! the bisector of the way to the camera and the way to the board.
//!
//! **Limits.** One reflecting surface; no number where the lines cannot be resolved.

mod bundle;
mod calibrate;
mod capture;
mod contrast;
mod demodulate;
mod families;
mod homography;
mod lens;
mod level;
mod locate;
mod mask;
mod mirror;
mod mirrored;
mod orders;
mod phone;
mod photo;
mod pixel;
mod register;
mod resect;
mod response;
mod shown;
mod slid;
mod slopes;
mod smooth_panel;
mod squared;
mod steps;
mod still;
mod tags;
mod unwrap;

pub use bundle::{BundleSettings, Mirrored, Scene, refine};
pub use calibrate::{CalibrateError, LEAST_PHOTOS as LEAST_CALIBRATION_PHOTOS, TagSheet, calibrate, calibrate_views};
pub use capture::{Axis, Board, BoardKind, BoardTag, Capture, CaptureError, Frame, PanelTags, Role};
pub use contrast::Contrast;
pub use demodulate::{Phase, demodulate};
pub use families::two_families;
pub use homography::Homography;
pub use lens::Calibration;
pub use locate::{Layout, LocateError, PanelTag, panel_plane, plane_pose, setup_and_board, tag_corners};
pub use mirror::predict;
pub use mirrored::{BoardField, board_field};
pub use phone::{PhoneZoom, phone_zoom};
pub use photo::{Photo, PhotoError, decode};
pub use pixel::{Camera, Pixel, isometry, six_numbers};
pub use register::{Drift, brought_back, drift};
pub use resect::resect;
pub use response::{DEFAULT_GAMMA, estimate_gamma, linear_table};
pub use shown::{Shown, shown_steps, shown_steps_at};
pub use slid::{LEAST_PHOTOS, LineField, Profile, SlidPhase, Slides, SlidesError, find_slides, line_field, slid_phase};
pub use slopes::{bisector, grid_over, slopes_on};
pub use smooth_panel::SmoothPanel;
pub use squared::squared_plane;
pub use steps::Steps;
pub use still::{Followed, LinesMoved, carrier, follow, followed_both, lines_moved};
pub use tags::{TagView, every_tag, find_planar_tags, find_tags};
pub use unwrap::unwrap;
