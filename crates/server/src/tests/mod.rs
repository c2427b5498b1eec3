//! The API as the app uses it, without a network in between.

mod archive;
mod bad_uploads;
mod cameras;
mod changes;
mod client;
mod day;
mod devices;
mod erasure;
mod gauges;
mod live;
mod metal;
mod papers;
mod plans;
mod pricing;
mod rehearsals;
mod restart;
mod strangers;
mod tables;
mod values;
mod whole_job;
