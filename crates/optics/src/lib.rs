//! Photos of a mirrored board to slopes of the panel.
