//! Who is let through a door.

use crate::door::Door;
use crate::headers;
use crate::pairing::token_of;
use crate::refusal::Refusal;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};

/// Where a device is paired.
pub(crate) const PAIR_PAGE: &str = "/pair";

/// What a device may see before it is paired: the page on which it is, its
/// parts, and the two calls that it makes.
const BEFORE_PAIRING: [&str; 5] = [PAIR_PAGE, "/pair.js", "/pages.css", "/api/1/hello", "/api/1/pair"];

/// What browsers ask for without showing their cookies. It is the same for everybody.
fn is_public(path: &str) -> bool {
    BEFORE_PAIRING.contains(&path) || path == "/manifest.webmanifest" || path.starts_with("/icons/")
}

/// Looks at every request before anything else does.
pub(crate) async fn guard(State(door): State<Door>, request: Request, next: Next) -> Response {
    let mut response = match refuse(&door, request.method(), request.uri().path(), request.headers()) {
        Some(refused) => refused,
        None => next.run(request).await,
    };
    headers::put(response.headers_mut(), door.network);
    response
}

fn refuse(door: &Door, method: &Method, path: &str, headers: &HeaderMap) -> Option<Response> {
    // A page of another site that had its name point here still asks for its own name.
    let mut hosts = headers.get_all(header::HOST).iter();
    let host = hosts.next().and_then(|host| host.to_str().ok());
    if hosts.next().is_some() || !host.is_some_and(|host| door.is_host(host)) {
        let refusal = Refusal::new(
            StatusCode::MISDIRECTED_REQUEST,
            "other-host",
            "The workshop does not answer under this address",
            "Open it at the address that it shows",
        );
        return Some(refusal.into_response());
    }
    if is_foreign(door, method, path, headers) {
        let refusal = Refusal::new(
            StatusCode::FORBIDDEN,
            "other-site",
            "A page of another site asked for this",
            "Open the app at the address that the workshop shows",
        );
        return Some(refusal.into_response());
    }
    if !door.network || is_public(path) {
        return None;
    }
    if token_of(headers).is_some_and(|token| door.inside.tokens.let_in(token)) {
        return None;
    }
    let wants_page = *method == Method::GET && matches!(path, "/" | "/index.html");
    Some(if wants_page { Redirect::to(PAIR_PAGE).into_response() } else { Refusal::not_paired().into_response() })
}

/// Whether a page of another site made the browser ask for this.
fn is_foreign(door: &Door, method: &Method, path: &str, headers: &HeaderMap) -> bool {
    let text = |name: &str| headers.get(name).map(|value| value.to_str().unwrap_or_default());
    let reads = matches!(*method, Method::GET | Method::HEAD);
    let site = text("sec-fetch-site");
    if reads {
        // Links from elsewhere may lead to the app, but its data is for its own pages.
        return path.starts_with("/api/") && site == Some("cross-site");
    }
    match text("origin") {
        Some(origin) => !door.is_ours(origin),
        // Browsers name the origin of all that writes. What names none is a program on this machine, or has a token.
        None => site.is_some_and(|site| !matches!(site, "same-origin" | "none")),
    }
}
