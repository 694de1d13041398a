//! Why a request was not done, as the app reads it.

use crate::store::StoreError;
use axum::Json;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde::Serialize;

/// Why a request was not done: what is wrong, and what to do.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Refusal {
    #[serde(skip)]
    pub(crate) status: StatusCode,
    code: &'static str,
    what: String,
    remedy: &'static str,
    /// The core's refusals have these too, so that the app can show both alike.
    faults: [(); 0],
}

impl Refusal {
    pub(crate) fn new(status: StatusCode, code: &'static str, what: impl Into<String>, remedy: &'static str) -> Self {
        Self { status, code, what: what.into(), remedy, faults: [] }
    }

    pub(crate) fn not_found() -> Self {
        Self::new(StatusCode::NOT_FOUND, "not-found", "There is nothing at this address", "Go back to the shelf")
    }

    pub(crate) fn not_paired() -> Self {
        Self::new(
            StatusCode::UNAUTHORIZED,
            "not-paired",
            "This device is not paired with the workshop",
            "Type the code that the workshop's machine shows",
        )
    }

    pub(crate) fn bad(what: impl Into<String>) -> Self {
        Self::new(StatusCode::BAD_REQUEST, "not-understood", what, "Load the app again")
    }
}

impl From<StoreError> for Refusal {
    fn from(error: StoreError) -> Self {
        let (status, code) = match error {
            StoreError::Full => (StatusCode::INSUFFICIENT_STORAGE, "disk-full"),
            StoreError::Busy | StoreError::Stopped => (StatusCode::SERVICE_UNAVAILABLE, "try-again"),
            StoreError::SaveReused => (StatusCode::UNPROCESSABLE_ENTITY, "save-reused"),
            _ => (StatusCode::INTERNAL_SERVER_ERROR, "store"),
        };
        Self::new(status, code, error.to_string(), "The work is still on this device; save it again later")
    }
}

impl IntoResponse for Refusal {
    fn into_response(self) -> Response {
        (self.status, Json(self)).into_response()
    }
}
