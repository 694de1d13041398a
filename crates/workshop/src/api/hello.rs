//! The first call: what this is, and whether the device is known here.

use crate::door::Door;
use crate::pairing::token_of;
use axum::Json;
use axum::extract::State;
use axum::http::HeaderMap;
use serde::Serialize;

/// What the workshop says first.
#[derive(Debug, Serialize)]
pub(super) struct Hello {
    name: &'static str,
    version: &'static str,
    /// Whether this device may do everything else.
    paired: bool,
    /// Whether devices have to be paired at this address.
    needs_pairing: bool,
}

pub(super) async fn hello(State(door): State<Door>, headers: HeaderMap) -> Json<Hello> {
    let known = token_of(&headers).is_some_and(|token| door.inside.tokens.let_in(token));
    Json(Hello {
        name: "seatcut",
        version: env!("CARGO_PKG_VERSION"),
        paired: known || !door.network,
        needs_pairing: door.network,
    })
}
