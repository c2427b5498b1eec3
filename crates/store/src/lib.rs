//! The record on disk: SQLite and photo files by content hash.
