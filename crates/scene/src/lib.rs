//! Panels of known shape and their reflections, rendered.
