//! Ids, times and codes as the database keeps them.

use crate::StoreError;
use jiff::Timestamp;
use serde::Serialize;
use serde::de::DeserializeOwned;
use uuid::Uuid;

/// A new id; later ones sort after earlier ones.
pub(crate) fn new_id() -> Uuid {
    Uuid::now_v7()
}

pub(crate) fn id(text: &str) -> Result<Uuid, StoreError> {
    Uuid::parse_str(text).map_err(|why| StoreError::Broken { what: "id", why: format!("{text:?}: {why}") })
}

pub(crate) fn maybe_id(text: Option<&str>) -> Result<Option<Uuid>, StoreError> {
    text.map(id).transpose()
}

pub(crate) fn ms(time: Timestamp) -> i64 {
    time.as_millisecond()
}

pub(crate) fn time(ms: i64) -> Result<Timestamp, StoreError> {
    Timestamp::from_millisecond(ms).map_err(|why| StoreError::Broken { what: "time", why: why.to_string() })
}

/// An enum's code: what serde writes for it.
pub(crate) fn code<T: Serialize>(value: &T) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(code)) => code,
        other => unreachable!("an enum without fields is written as a text, not {other:?}"),
    }
}

pub(crate) fn of_code<T: DeserializeOwned>(text: &str, what: &'static str) -> Result<T, StoreError> {
    let value = serde_json::Value::String(text.to_owned());
    serde_json::from_value(value).map_err(|why| StoreError::Broken { what, why: why.to_string() })
}

pub(crate) fn to_json<T: Serialize>(value: &T, what: &'static str) -> Result<String, StoreError> {
    serde_json::to_string(value).map_err(|why| StoreError::Broken { what, why: why.to_string() })
}

pub(crate) fn of_json<T: DeserializeOwned>(text: &str, what: &'static str) -> Result<T, StoreError> {
    serde_json::from_str(text).map_err(|why| StoreError::Broken { what, why: why.to_string() })
}
