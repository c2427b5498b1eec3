//! Panels of known shape and their reflections, rendered.
//!
//! **Entry points.** [`Scene`] says what stands where; [`Truth`] holds its maps; [`score`] lays a reading on it.
#![allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)]

pub mod capture;
pub mod dent;
pub mod light;
pub mod line;
pub mod mirror;
pub mod noise;
pub mod npy;
pub mod peel;
pub mod photo;
pub mod picture;
pub mod pose;
pub mod reading;
pub mod recipe;
pub mod recipes;
pub mod scene;
pub mod score;
pub mod sensor;
pub mod shape;
pub mod tag;
pub mod truth;
pub mod view;

pub use capture::Capture;
pub use reading::ReadMaps;
pub use recipe::Recipe;
pub use scene::Scene;
pub use score::{Score, score};
pub use truth::Truth;
