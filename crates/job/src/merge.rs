//! Edits of fields that several devices made, laid together.
//!
//! Every edit names the value that its device last knew. Where the record still holds it, the edit is
//! made; where it holds what the edit wants, nothing is to be done; else two people meant different things,
//! and both values are handed back for one of them to choose. So edits of different fields never meet, in
//! whatever order they arrive.

use serde::{Deserialize, Serialize};
use serde_json::Value;

/// An edit of one field.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Edit {
    /// Which: a JSON pointer (RFC 6901) into the record, such as `/customer/phone`.
    pub field: String,
    /// The value that the device last knew.
    #[cfg_attr(feature = "schema", schema(value_type = Object))]
    pub base: Value,
    /// What it shall be.
    #[cfg_attr(feature = "schema", schema(value_type = Object))]
    pub to: Value,
}

/// Two values for one field.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Clash {
    /// Which field.
    pub field: String,
    /// What this device wanted.
    #[cfg_attr(feature = "schema", schema(value_type = Object))]
    pub mine: Value,
    /// What the record holds, which stays until somebody chooses.
    #[cfg_attr(feature = "schema", schema(value_type = Object))]
    pub theirs: Value,
}

/// A field that the record does not have.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("a job has no field {0:?}")]
pub struct NoSuchField(pub String);

/// Makes the edits that can be made; the others come back. A field holds `null` where nothing is known.
///
/// # Errors
/// When an edit names a field that is neither in the record nor in one of its `open` objects (whose names are
/// not all known beforehand, such as the metals of panels); the record may then hold some of the edits.
///
/// ```
/// use dentwright_job::{Edit, merge};
/// use serde_json::json;
/// let mut record = json!({ "phone": "1", "plate": "EX 1" });
/// let edit = |field: &str, base, to| Edit { field: field.into(), base, to };
/// let clashes = merge(&mut record, &[edit("/phone", json!("1"), json!("2")), edit("/plate", json!(""), json!("EX 2"))], &[]);
/// assert_eq!(record, json!({ "phone": "2", "plate": "EX 1" }));
/// assert_eq!(clashes.unwrap()[0].theirs, json!("EX 1"));
/// ```
pub fn merge(record: &mut Value, edits: &[Edit], open: &[&str]) -> Result<Vec<Clash>, NoSuchField> {
    let mut clashes = Vec::new();
    for edit in edits {
        let place = place(record, &edit.field, open).ok_or_else(|| NoSuchField(edit.field.clone()))?;
        if *place == edit.base {
            *place = edit.to.clone();
        } else if *place != edit.to {
            clashes.push(Clash { field: edit.field.clone(), mine: edit.to.clone(), theirs: place.clone() });
        }
    }
    Ok(clashes)
}

fn place<'a>(record: &'a mut Value, field: &str, open: &[&str]) -> Option<&'a mut Value> {
    let (parent, name) = field.rsplit_once('/')?;
    if open.contains(&parent) && !name.is_empty() {
        return Some(record.pointer_mut(parent)?.as_object_mut()?.entry(name).or_insert(Value::Null));
    }
    record.pointer_mut(field)
}
