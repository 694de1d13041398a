//! The terms of a dialect, read from `regions/words`, which are compiled in.

use serde::Deserialize;
use std::sync::OnceLock;

/// The words of the American trade.
const US: &str = include_str!("../../../../regions/words/us.toml");

/// The file as written.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Words {
    term: Vec<Term>,
}

/// A term as written.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Term {
    uk: String,
    us: String,
    uk_many: Option<String>,
    us_many: Option<String>,
    #[expect(dead_code, reason = "for who reads the file; reading it checks that every term has one")]
    standing: Standing,
}

/// How a word was come by.
#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Standing {
    /// Usual in the trade.
    CommonPractice,
    /// Believed usual.
    Memory,
}

/// What is said for what.
pub(super) struct Pair {
    /// As the core writes it, in small letters.
    pub(super) from: String,
    /// What is said instead.
    pub(super) to: String,
}

/// The American terms, longest first. A file that can't be read, which a test
/// rules out, has none.
pub(super) fn american() -> &'static [Pair] {
    static PAIRS: OnceLock<Vec<Pair>> = OnceLock::new();
    PAIRS.get_or_init(|| pairs(US).unwrap_or_default())
}

fn pairs(text: &str) -> Result<Vec<Pair>, toml::de::Error> {
    let words: Words = toml::from_str(text)?;
    let mut pairs = Vec::with_capacity(2 * words.term.len());
    for term in words.term {
        pairs.push(Pair { from: term.uk, to: term.us });
        pairs.extend(term.uk_many.zip(term.us_many).map(|(from, to)| Pair { from, to }));
    }
    pairs.sort_by(|a, b| b.from.len().cmp(&a.from.len()).then_with(|| a.from.cmp(&b.from)));
    Ok(pairs)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_words_can_be_read_and_none_stands_twice() {
        let pairs = pairs(US).unwrap();
        assert!(pairs.len() > 80);
        for both in pairs.windows(2) {
            assert!(both[0].from != both[1].from, "{}", both[0].from);
        }
        for pair in &pairs {
            assert!(pair.from.is_ascii() && pair.from == pair.from.to_lowercase(), "{}", pair.from);
            assert!(!pair.to.is_empty(), "{}", pair.from);
        }
    }
}
