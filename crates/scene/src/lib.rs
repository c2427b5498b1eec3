//! Panels of known shape and their reflections, rendered.
//!
//! **Entry points.** [`Scene`] says what stands where; [`Truth`] holds its maps; [`score`] lays a reading on it.
#![allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)]

pub mod dent;
pub mod line;
pub mod mirror;
pub mod noise;
pub mod npy;
pub mod peel;
pub mod pose;
pub mod reading;
pub mod scene;
pub mod score;
pub mod shape;
pub mod truth;

pub use reading::ReadMaps;
pub use scene::Scene;
pub use score::{Score, score};
pub use truth::Truth;
