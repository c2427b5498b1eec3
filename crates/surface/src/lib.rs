//! The panel as a surface: slopes to height, intended shape, lows and highs.
