//! The API as the app uses it, without a network in between.

mod bad_uploads;
mod cameras;
mod changes;
mod client;
mod devices;
mod live;
mod papers;
mod pricing;
mod restart;
mod strangers;
mod values;
mod whole_job;
