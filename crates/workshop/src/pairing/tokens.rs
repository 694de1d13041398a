//! The tokens of paired devices, known by their hashes only.

use axum::http::{HeaderMap, header};
use sha2::{Digest, Sha256};
use std::sync::{PoisonError, RwLock};
use subtle::{Choice, ConstantTimeEq};

/// The cookie that holds the token. Browsers take a cookie of this prefix only
/// over TLS, for this very host.
pub(crate) const COOKIE: &str = "__Host-seatcut";

/// The hash of a token, as it is kept. Tokens are 128 random bits, so a plain
/// hash can't be turned back.
pub(crate) fn hash(token: &str) -> [u8; 32] {
    Sha256::digest(token.as_bytes()).into()
}

/// The token that a request shows.
pub(crate) fn token_of(headers: &HeaderMap) -> Option<&str> {
    let cookies = headers.get_all(header::COOKIE).iter().filter_map(|value| value.to_str().ok());
    let mut pairs = cookies.flat_map(|cookies| cookies.split(';')).filter_map(|pair| pair.trim().split_once('='));
    pairs.find(|(name, _)| *name == COOKIE).map(|(_, token)| token)
}

/// The hashes of all tokens that let in.
#[derive(Debug, Default)]
pub(crate) struct Tokens(RwLock<Vec<[u8; 32]>>);

impl Tokens {
    pub(crate) fn set(&self, hashes: Vec<[u8; 32]>) {
        *self.0.write().unwrap_or_else(PoisonError::into_inner) = hashes;
    }

    /// Whether a token lets in. Looks at all of them, however early one fits.
    pub(crate) fn let_in(&self, token: &str) -> bool {
        let shown = hash(token);
        let known = self.0.read().unwrap_or_else(PoisonError::into_inner);
        known.iter().fold(Choice::from(0), |found, hash| found | hash.ct_eq(&shown)).into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_known_tokens_let_in() {
        let tokens = Tokens::default();
        assert!(!tokens.let_in("") && !tokens.let_in("a"));
        tokens.set(vec![hash("a"), hash("b")]);
        assert!(tokens.let_in("a") && tokens.let_in("b") && !tokens.let_in("c") && !tokens.let_in(""));
        tokens.set(vec![hash("b")]);
        assert!(!tokens.let_in("a"));
    }

    #[test]
    fn the_token_is_found_among_other_cookies() {
        let mut headers = HeaderMap::new();
        assert_eq!(token_of(&headers), None);
        headers.append(header::COOKIE, "x=1; seatcut=no".parse().unwrap());
        assert_eq!(token_of(&headers), None);
        headers.append(header::COOKIE, "y=2; __Host-seatcut=abc; z=3".parse().unwrap());
        assert_eq!(token_of(&headers), Some("abc"));
    }
}
