//! The API as the app uses it, without a network in between.

mod bad_uploads;
mod cameras;
mod changes;
mod client;
mod live;
mod metal;
mod papers;
mod pricing;
mod rehearsals;
mod restart;
mod strangers;
mod values;
mod whole_job;
