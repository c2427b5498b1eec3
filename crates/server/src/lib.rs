//! The HTTP API and the embedded web app.
