//! What the app asks of the workshop, as JSON under `/api/1/`.

mod devices;
mod hello;
mod jobs;
mod pair;
mod take;

use crate::door::Door;
use crate::guard::guard;
use crate::pages;
use crate::refusal::Refusal;
use axum::Router;
use axum::extract::{DefaultBodyLimit, Request, State};
use axum::http::{Method, StatusCode};
use axum::middleware;
use axum::response::{IntoResponse, Response};
use axum::routing::{any, delete, get, post};
use std::time::Duration;
use tower::limit::GlobalConcurrencyLimitLayer;
use tower_http::compression::CompressionLayer;
use tower_http::timeout::TimeoutLayer;

/// Longest body of a request, bytes. A job is as long as a job file may be;
/// written as JSON, its quotes and line ends take two bytes instead of one.
pub(crate) const LONGEST_BODY: usize = 2 * job::LARGEST_FILE;

/// Longest time for one request, its body included.
const LONGEST_TIME: Duration = Duration::from_secs(30);

/// Most requests in work at a time; others wait for their turn.
const AT_A_TIME: usize = 256;

/// All that is behind a door.
pub(crate) fn router(door: Door) -> Router {
    let mut router = Router::new()
        .route("/api/1/hello", get(hello::hello))
        .route("/api/1/jobs", get(jobs::shelf))
        .route("/api/1/jobs/{id}", get(jobs::job).put(jobs::save).delete(jobs::take_off))
        .route("/api/1/jobs/{id}/history", get(jobs::history))
        .route("/api/1/jobs/{id}/history/{revision}", get(jobs::text))
        .route("/api/{*rest}", any(nothing))
        .route("/pages.css", get(pages::css));
    router = if door.network {
        router
            .route("/api/1/pair", post(pair::pair))
            .route("/pair", get(pages::pair))
            .route("/pair.js", get(pages::pair_script))
    } else {
        router
            .route("/api/1/pairing", get(pair::pairing))
            .route("/api/1/devices", get(devices::devices))
            .route("/api/1/devices/{id}", delete(devices::forget))
            .route("/workshop", get(pages::workshop))
            .route("/workshop.js", get(pages::workshop_script))
    };
    router
        .fallback(asset)
        .layer(DefaultBodyLimit::max(LONGEST_BODY))
        .layer(TimeoutLayer::with_status_code(StatusCode::REQUEST_TIMEOUT, LONGEST_TIME))
        .layer(GlobalConcurrencyLimitLayer::new(AT_A_TIME))
        .layer(CompressionLayer::new())
        .layer(middleware::from_fn_with_state(door.clone(), guard))
        .with_state(door)
}

async fn nothing() -> Refusal {
    Refusal::not_found()
}

async fn asset(State(door): State<Door>, request: Request) -> Response {
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        return Refusal::not_found().into_response();
    }
    let found = door.inside.assets.answer(request.method(), request.uri().path(), request.headers());
    found.unwrap_or_else(|| Refusal::not_found().into_response())
}
