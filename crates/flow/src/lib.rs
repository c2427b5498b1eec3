//! The story in a few short functions: read, quote, hand over.
