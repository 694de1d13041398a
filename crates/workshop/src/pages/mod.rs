//! The workshop's own pages: where a phone starts, where it is paired, and
//! what the workshop's machine shows. They stand apart from the app, which a
//! device does not have before it is paired.

use crate::certificates::{Authority, CERTIFICATE};
use crate::door::Door;
use crate::headers;
use crate::said::NetworkSaid;
use axum::Router;
use axum::extract::State;
use axum::http::{HeaderName, StatusCode, header};
use axum::middleware::map_response;
use axum::response::{Html, IntoResponse, Response};
use axum::routing::get;
use fast_qr::convert::svg::SvgBuilder;
use fast_qr::convert::{Builder, Shape};
use fast_qr::qr::QRBuilder;

const CSS: &str = include_str!("pages.css");
const PAIR: &str = include_str!("pair.html");
const PAIR_SCRIPT: &str = include_str!("pair.js");
const START: &str = include_str!("start.html");
const WORKSHOP: &str = include_str!("workshop.html");
const WORKSHOP_SCRIPT: &str = include_str!("workshop.js");

/// Modules of blank round a square, so that cameras find it.
const MARGIN: usize = 4;

fn typed(kind: &'static str, text: &'static str) -> Response {
    let headers: [(HeaderName, &str); 2] = [(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, "no-cache")];
    (headers, text).into_response()
}

pub(crate) async fn css() -> Response {
    typed("text/css; charset=utf-8", CSS)
}

pub(crate) async fn pair() -> Html<&'static str> {
    Html(PAIR)
}

pub(crate) async fn pair_script() -> Response {
    typed("text/javascript; charset=utf-8", PAIR_SCRIPT)
}

pub(crate) async fn workshop_script() -> Response {
    typed("text/javascript; charset=utf-8", WORKSHOP_SCRIPT)
}

/// What the workshop's machine shows: the square, and by its script the code and the devices.
pub(crate) async fn workshop(State(door): State<Door>) -> Html<String> {
    let square = door.inside.network.as_ref().and_then(|network| square(&network.start));
    Html(WORKSHOP.replace("{square}", &square.unwrap_or_default()))
}

/// The page on which a phone starts, and the certificate; nothing else is at these addresses.
pub(crate) fn start_router(authority: &Authority, said: Option<&NetworkSaid>) -> Router {
    let fingerprint = authority.fingerprint();
    let links = said.into_iter().flat_map(|said| &said.addresses);
    let links: String = links.map(|address| format!("<li><a href=\"{address}\">{address}</a></li>\n")).collect();
    let page = START.replace("{fingerprint}", &fingerprint).replace("{certificate}", CERTIFICATE);
    let page = page.replace("{addresses}", &links);
    let certificate = authority.certificate().to_vec();
    let file: [(HeaderName, String); 2] = [
        (header::CONTENT_TYPE, "application/x-x509-ca-cert".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{CERTIFICATE}\"")),
    ];
    let certificate_path = format!("/{CERTIFICATE}");
    Router::new()
        .route("/", get(move || async { Html(page) }))
        .route("/pages.css", get(css))
        .route(&certificate_path, get(move || async { (file, certificate) }))
        .fallback(|| async { (StatusCode::NOT_FOUND, "There is nothing at this address. Go to the first page.") })
        .layer(map_response(|mut response: Response| async {
            headers::put(response.headers_mut(), false);
            response
        }))
}

/// An address as a square for a camera, to stand in a page.
fn square(address: &str) -> Option<String> {
    let code = QRBuilder::new(address).build().ok()?;
    let mut picture = SvgBuilder::default();
    Some(picture.shape(Shape::Square).margin(MARGIN).to_str(&code))
}

/// The same in letters, for a terminal.
pub(crate) fn square_in_letters(address: &str) -> Option<String> {
    Some(QRBuilder::new(address).build().ok()?.to_str())
}
