//! The files of the app: a fixed table, so that no request reaches the file system.

use axum::body::Body;
use axum::http::{HeaderMap, HeaderValue, Method, Response, StatusCode, header};
use sha2::{Digest, Sha256};
use std::borrow::Cow;
use std::collections::HashMap;

/// Folder of files whose names change with what is in them.
const NAMED_BY_CONTENT: &str = "assets/";
/// The page itself.
const PAGE: &str = "index.html";

/// The files of the app, by their paths below the root.
#[derive(Debug, Default)]
pub struct Assets(HashMap<String, Asset>);

#[derive(Debug)]
struct Asset {
    bytes: Cow<'static, [u8]>,
    kind: &'static str,
    tag: HeaderValue,
    keeping: &'static str,
}

impl FromIterator<(String, Cow<'static, [u8]>)> for Assets {
    fn from_iter<I: IntoIterator<Item = (String, Cow<'static, [u8]>)>>(files: I) -> Self {
        Self(files.into_iter().map(|(path, bytes)| (path.clone(), Asset::new(&path, bytes))).collect())
    }
}

impl Asset {
    fn new(path: &str, bytes: Cow<'static, [u8]>) -> Self {
        let digest: [u8; 32] = Sha256::digest(&bytes).into();
        // Weak, for one tag stands for the plain and the compressed form.
        let tag = format!("W/\"{}\"", crate::random::hex(digest.get(..16).unwrap_or_default()));
        let keeping = match path.starts_with(NAMED_BY_CONTENT) {
            true => "public, max-age=31536000, immutable",
            false => "no-cache",
        };
        let tag = HeaderValue::from_str(&tag).unwrap_or_else(|_| HeaderValue::from_static(""));
        Self { bytes, kind: kind_of(path), tag, keeping }
    }
}

/// What a file is, by its name.
fn kind_of(path: &str) -> &'static str {
    match path.rsplit('.').next().unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "json" | "map" => "application/json",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "ttf" => "font/ttf",
        "txt" | "toml" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

impl Assets {
    /// The answer to a request for a path, if there is such a file.
    pub(crate) fn answer(&self, method: &Method, path: &str, headers: &HeaderMap) -> Option<Response<Body>> {
        let path = path.strip_prefix('/')?;
        let asset = self.0.get(if path.is_empty() { PAGE } else { path })?;
        let known = headers.get(header::IF_NONE_MATCH).and_then(|tags| tags.to_str().ok());
        let same = known.is_some_and(|tags| tags.split(',').any(|tag| tag.trim().as_bytes() == asset.tag.as_bytes()));
        let body = match (same, method == Method::HEAD, &asset.bytes) {
            (true, ..) | (_, true, _) => Body::empty(),
            (.., Cow::Borrowed(bytes)) => Body::from(*bytes),
            (.., Cow::Owned(bytes)) => Body::from(bytes.clone()),
        };
        let mut response = Response::new(body);
        *response.status_mut() = if same { StatusCode::NOT_MODIFIED } else { StatusCode::OK };
        let headers = response.headers_mut();
        headers.insert(header::CONTENT_TYPE, HeaderValue::from_static(asset.kind));
        headers.insert(header::CACHE_CONTROL, HeaderValue::from_static(asset.keeping));
        headers.insert(header::ETAG, asset.tag.clone());
        Some(response)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn assets() -> Assets {
        let file = |path: &str, text: &'static str| (path.to_owned(), Cow::Borrowed(text.as_bytes()));
        [file("index.html", "<p>"), file("assets/core-1a.wasm", "\0asm"), file("sw.js", "1")].into_iter().collect()
    }

    #[test]
    fn files_come_with_their_kind_and_how_long_to_keep_them() {
        let (assets, none) = (assets(), HeaderMap::new());
        let header = |path: &str, name: header::HeaderName| {
            let response = assets.answer(&Method::GET, path, &none).unwrap();
            response.headers().get(name).unwrap().to_str().unwrap().to_owned()
        };
        assert_eq!(header("/", header::CONTENT_TYPE), "text/html; charset=utf-8");
        assert_eq!(header("/assets/core-1a.wasm", header::CONTENT_TYPE), "application/wasm");
        assert!(header("/assets/core-1a.wasm", header::CACHE_CONTROL).contains("immutable"));
        assert_eq!(header("/sw.js", header::CACHE_CONTROL), "no-cache");
    }

    #[test]
    fn what_is_known_is_not_sent_again() {
        let (assets, mut headers) = (assets(), HeaderMap::new());
        let tag = assets.answer(&Method::GET, "/", &headers).unwrap().headers().get(header::ETAG).unwrap().clone();
        headers.insert(header::IF_NONE_MATCH, tag);
        assert_eq!(assets.answer(&Method::GET, "/", &headers).unwrap().status(), StatusCode::NOT_MODIFIED);
        assert_eq!(assets.answer(&Method::GET, "/sw.js", &headers).unwrap().status(), StatusCode::OK);
    }

    #[test]
    fn nothing_else_is_there() {
        let (assets, none) = (assets(), HeaderMap::new());
        for path in ["", "index.html", "//index.html", "/../Cargo.toml", "/assets/../index.html", "/assets", "/%2e%2e"]
        {
            assert!(assets.answer(&Method::GET, path, &none).is_none(), "{path}");
        }
    }
}
