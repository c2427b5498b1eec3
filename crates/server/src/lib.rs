//! HTTP API and the embedded web app.
//!
//! # Entry points
//! [`Server::open`] opens a shop's folder, [`Server::run`] serves it; [`openapi`] describes the API.
//!
//! # Conventions
//! JSON in and out, money and percentages as decimal texts, times in UTC after RFC 3339, lengths in
//! mm. What goes wrong is answered as `{code, message, next}`: a short stable name, what is wrong
//! with what, and what to do.
//!
//! # Idea
//! `router.rs` is the contents page; a handler parses, calls the store or a pure crate,
//! answers. Reads of captures wait in the store's queue and run one at a time beside the handlers.
//!
//! # Limits
//! Plain HTTP, and beside it HTTPS under a certificate of our own: on the shop's own network only. One shop a process. At most 400 MB an upload, 60 MB a file.
//!
//! # References
//! HTTP semantics: RFC 9110. Certificates: RFC 5280. Cookies: RFC 6265. Multipart forms: RFC 7578. Zip: APPNOTE.TXT 6.3.

mod app;
mod archive;
mod assets;
mod behinds;
mod bill;
mod books;
mod calendar;
mod cameras;
mod captures;
mod cautions;
mod changes;
mod crew;
mod damages;
mod dents;
mod door;
mod erasure;
mod exports;
mod gauges;
mod guard;
mod hail_tables;
mod job_json;
mod jobs;
mod learned;
mod lines;
mod live;
mod merges;
mod metal;
mod metal_work;
mod pair;
mod paper_issue;
mod papers;
mod pay;
mod photos;
mod picture;
mod plan_json;
mod plan_work;
mod plans;
mod quote;
mod readings;
mod reads;
mod rehearsal_json;
mod rehearsal_work;
mod rehearsals;
mod report;
mod report_data;
mod router;
mod serve;
mod sheets;
mod shop;
mod tables;
mod take_in;
mod taps;
mod tasks;
#[cfg(test)]
mod tests;
mod times;
mod tips;
mod tls;
mod trouble;
mod under_way;
mod unpack;
mod upload;
mod vin;

pub use dentwright_store::OpenError;
pub use readings::take_spots;
pub use reads::read_waiting;
pub use router::openapi;
pub use serve::{ServeError, ServeSettings, Server};
pub use trouble::Trouble;
