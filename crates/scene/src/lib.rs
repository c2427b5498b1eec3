//! Panels of known shape and their reflections, rendered: the project's own source of truth.
//!
//! # Entry points
//! A [`Recipe`] says what stands where and what goes wrong; [`Recipe::render`] makes a [`Capture`]: photos, their
//! `capture.toml` and the [`Truth`]. [`score()`] lays a reading on a truth. [`demo`] holds the captures of the demo.
//!
//! # Conventions
//! Millimetres; panel frame x right, y up, z toward the viewer; pixel (0, 0) is the corner of the first pixel.
//!
//! # Idea
//! The panel is a formula with exact slopes, so each ray is mirrored by the true normal. Geometry is traced once
//! from the reading position and shaded for every picture on the board.
//!
//! # Limits
//! One reflection, two where the sheet is clear; surroundings of one radiance; one clear coat; no seams. See [`view`].
#![allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)]

pub mod capture;
pub mod demo;
pub mod dent;
pub mod light;
pub mod line;
pub mod mirror;
pub mod noise;
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
pub mod sheet;
pub mod tag;
pub mod truth;
pub mod view;

pub use capture::Capture;
pub use reading::ReadMaps;
pub use recipe::Recipe;
pub use scene::Scene;
pub use score::{Score, score};
pub use truth::Truth;
