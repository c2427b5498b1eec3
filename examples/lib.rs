//! Numbered programs, from slopes to a finished repair; each ends in an assertion.
//!
//! `cargo run --release -p examples --example 01_slopes_to_height`, and so on.
