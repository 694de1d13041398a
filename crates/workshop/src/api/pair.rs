//! Pairing: the code on one side, the token on the other.

use super::{devices, take};
use crate::door::Door;
use crate::pairing::{COOKIE, Tried, hash};
use crate::random::hex_128;
use crate::refusal::Refusal;
use crate::said::Said;
use axum::Json;
use axum::extract::State;
use axum::extract::rejection::JsonRejection;
use axum::http::{HeaderName, StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::{Deserialize, Serialize};
use std::time::{Duration, Instant};

/// How long a browser keeps the token without being used, s: the longest that browsers allow.
const KEPT_SECONDS: u64 = 400 * 24 * 3600;

/// What a device sends to be paired.
#[derive(Deserialize)]
pub(super) struct PairBody {
    code: String,
    #[serde(default)]
    device: String,
}

/// What the page of the workshop's machine shows.
#[derive(Debug, Serialize)]
pub(super) struct PairingBody {
    /// The code; none while the workshop is not on the network.
    code: Option<String>,
    /// How long it holds, s.
    seconds: u64,
    /// Where a phone starts.
    start: Option<String>,
    /// Where the app is.
    addresses: Vec<String>,
    /// SHA-256 of the authority's certificate.
    fingerprint: Option<String>,
}

pub(super) async fn pairing(State(door): State<Door>) -> Json<PairingBody> {
    let Some(network) = &door.inside.network else {
        return Json(PairingBody { code: None, seconds: 0, start: None, addresses: Vec::new(), fingerprint: None });
    };
    let code = door.inside.pairing().code(Instant::now());
    let seconds = code.as_ref().map_or(0, |(_, holds)| holds.as_secs());
    Json(PairingBody {
        code: code.map(|(code, _)| code),
        seconds,
        start: Some(network.start.clone()),
        addresses: network.addresses.clone(),
        fingerprint: Some(network.fingerprint.clone()),
    })
}

pub(super) async fn pair(
    State(door): State<Door>,
    body: Result<Json<PairBody>, JsonRejection>,
) -> Result<Response, Refusal> {
    let body = take::body(body)?;
    let tried = door.inside.pairing().try_code(&body.code, Instant::now());
    match tried {
        Tried::Right => {}
        Tried::TooSoon(wait) => return Ok(too_soon(wait)),
        other => {
            if other == Tried::Ended {
                door.inside.tell(&Said::Tried);
            }
            if matches!(other, Tried::Ended | Tried::Expired) {
                door.inside.tell_code();
            }
            return Err(refused(other));
        }
    }
    let token = hex_128().ok_or_else(|| refused(Tried::NoCode))?;
    let name = take::name(&body.device);
    door.inside.store.pair(hash(&token), name.clone()).await?;
    devices::renew(&door).await?;
    door.inside.tell(&Said::Paired { name });
    door.inside.tell_code();
    let cookie = format!("{COOKIE}={token}; Path=/; Max-Age={KEPT_SECONDS}; HttpOnly; Secure; SameSite=Strict");
    let headers: [(HeaderName, String); 1] = [(header::SET_COOKIE, cookie)];
    Ok((headers, Json(serde_json::json!({ "paired": true }))).into_response())
}

fn too_soon(wait: Duration) -> Response {
    let refusal = Refusal::new(
        StatusCode::TOO_MANY_REQUESTS,
        "too-soon",
        "Codes were tried too fast",
        "Wait half a minute and type the code that is shown then",
    );
    let seconds = wait.as_secs() + 1;
    ([(header::RETRY_AFTER, seconds.to_string())], refusal).into_response()
}

fn refused(tried: Tried) -> Refusal {
    let (status, code, what) = match tried {
        Tried::Expired => (StatusCode::FORBIDDEN, "code-expired", "The code was no longer good; there is a new one"),
        Tried::Ended => (StatusCode::FORBIDDEN, "code-ended", "The code was wrong too often; there is a new one"),
        Tried::NoCode => (StatusCode::SERVICE_UNAVAILABLE, "no-code", "The workshop's machine can make no code now"),
        _ => (StatusCode::FORBIDDEN, "wrong-code", "The code is wrong"),
    };
    Refusal::new(status, code, what, "Type the eight digits that the workshop's machine shows now")
}
