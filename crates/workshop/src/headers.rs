//! What every answer tells the browser to allow and to forbid.

use axum::http::{HeaderMap, HeaderName, HeaderValue, header};

/// What pages may load and do: only what comes from here, and no script in the page itself.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; \
    base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// Headers of every answer.
const ALWAYS: [(HeaderName, &str); 6] = [
    (header::CONTENT_SECURITY_POLICY, POLICY),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "no-referrer"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    (
        HeaderName::from_static("permissions-policy"),
        "camera=(), microphone=(), geolocation=(), payment=(), usb=(), serial=(), midi=()",
    ),
];

/// Puts the headers on an answer. Over TLS, browsers are told to come by TLS for half a year.
pub(crate) fn put(headers: &mut HeaderMap, tls: bool) {
    for (name, value) in ALWAYS {
        headers.insert(name, HeaderValue::from_static(value));
    }
    if tls {
        headers.insert(header::STRICT_TRANSPORT_SECURITY, HeaderValue::from_static("max-age=15768000"));
    }
    // What the API says is never kept; files of the app say themselves how long they are.
    headers.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
}
