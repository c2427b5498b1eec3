//! What went wrong, as the app shows it.

use axum::Json;
use axum::extract::rejection::{JsonRejection, PathRejection, QueryRejection};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use dentwright_flow::{CompareError, ReadError};
use dentwright_store::{FileError, StoreError};
use serde::Serialize;
use utoipa::ToSchema;

/// An error: what is wrong, and what to do.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Trouble {
    #[serde(skip)]
    status: StatusCode,
    /// Short stable name.
    code: String,
    /// What is wrong with what.
    message: String,
    /// What to do.
    next: String,
}

/// What a handler gives.
pub type Answer<T> = Result<T, Trouble>;

impl Trouble {
    /// An error with its words.
    pub fn new(status: StatusCode, code: &str, message: impl ToString, next: &str) -> Self {
        Self { status, code: code.to_owned(), message: message.to_string(), next: next.to_owned() }
    }

    /// Something entered cannot be.
    pub fn entered(message: impl ToString) -> Self {
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, "value", message, "Correct it and try again.")
    }

    /// Something of this program failed; the details go to the log, not over the network.
    pub fn own(what: &str, why: impl std::fmt::Display) -> Self {
        tracing::error!("{what}: {why}");
        let message = format!("{what} did not work");
        let next = "Try again; if it stays, restart Dentwright. What was saved before is safe.";
        Self::new(StatusCode::INTERNAL_SERVER_ERROR, "server", message, next)
    }

    /// Nothing is there.
    pub fn unknown(message: impl ToString) -> Self {
        let next = "It may have been removed on another device. Go back and load the list again.";
        Self::new(StatusCode::NOT_FOUND, "unknown", message, next)
    }

    fn unreadable(status: StatusCode, why: String) -> Self {
        Self::new(status, "request", why, "Load the page again.")
    }
}

impl std::fmt::Display for Trouble {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}", self.message, self.next)
    }
}

impl std::error::Error for Trouble {}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        (self.status, Json(self)).into_response()
    }
}

impl From<StoreError> for Trouble {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::Unknown { .. } | StoreError::File(FileError::Unknown(_)) => Self::unknown(error),
            StoreError::File(FileError::Damaged(_)) => {
                let next = "The disk may be failing. Copy the shop folder now, and restore this file from a backup.";
                Self::new(StatusCode::INTERNAL_SERVER_ERROR, "damaged", error, next)
            }
            StoreError::File(FileError::Disk { .. }) => {
                let next = "Check that the disk is not full and can be written to.";
                Self::new(StatusCode::INSUFFICIENT_STORAGE, "disk", error, next)
            }
            StoreError::Database(_) | StoreError::Broken { .. } => Self::own("reading or writing the record", error),
        }
    }
}

impl From<FileError> for Trouble {
    fn from(error: FileError) -> Self {
        StoreError::File(error).into()
    }
}

impl From<ReadError> for Trouble {
    fn from(error: ReadError) -> Self {
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, error.code(), format!("{error}."), error.next())
    }
}

impl From<CompareError> for Trouble {
    fn from(error: CompareError) -> Self {
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, error.code(), format!("{error}."), error.next())
    }
}

impl From<JsonRejection> for Trouble {
    fn from(rejection: JsonRejection) -> Self {
        Self::unreadable(rejection.status(), rejection.body_text())
    }
}

impl From<PathRejection> for Trouble {
    fn from(_: PathRejection) -> Self {
        Self::unknown("there is nothing under this address")
    }
}

impl From<QueryRejection> for Trouble {
    fn from(rejection: QueryRejection) -> Self {
        Self::unreadable(rejection.status(), rejection.body_text())
    }
}

/// [`axum::Json`], whose refusal is a [`Trouble`].
#[derive(axum::extract::FromRequest)]
#[from_request(via(axum::Json), rejection(Trouble))]
pub struct Body<T>(pub T);

/// [`axum::extract::Path`], whose refusal is a [`Trouble`].
#[derive(axum::extract::FromRequestParts)]
#[from_request(via(axum::extract::Path), rejection(Trouble))]
pub struct At<T>(pub T);

/// [`axum::extract::Query`], whose refusal is a [`Trouble`].
#[derive(axum::extract::FromRequestParts)]
#[from_request(via(axum::extract::Query), rejection(Trouble))]
pub struct Asked<T>(pub T);
