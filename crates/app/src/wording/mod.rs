//! Whose words: the core writes British ones, and these are said in another
//! dialect by its list of terms. Only what the core writes is to be said; the
//! user's own words, the title first of all, stay as they are.

mod terms;
mod writing;

use crate::views::Dialect;
use roof::solution::MemberKind;
use std::borrow::Cow;
use terms::{Pair, american};
pub(crate) use writing::Writing;

/// What a timber is, with a capital.
#[must_use]
pub fn kind(dialect: Dialect, kind: MemberKind) -> String {
    capital(&say(dialect, kind.name()))
}

/// The text with a capital at its start.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The text in the words of a dialect.
///
/// Terms are whole words, the longest first, with their capital kept. Marks
/// such as `Collar-2` and what stands between backticks are left alone.
#[must_use]
pub fn say(dialect: Dialect, text: &str) -> Cow<'_, str> {
    match dialect {
        Dialect::Uk => Cow::Borrowed(text),
        Dialect::Us => by_terms(american(), text),
    }
}

fn by_terms<'t>(terms: &[Pair], text: &'t str) -> Cow<'t, str> {
    let mut said = String::new();
    // What of the text is in `said` already.
    let mut done = 0;
    let mut before = None;
    let mut quoted = false;
    let mut skip_to = 0;
    for (at, char) in text.char_indices() {
        if char == '`' {
            quoted = !quoted;
        }
        if at >= skip_to && !quoted && char.is_alphabetic() && !joins(before) {
            let rest = text.get(at..).unwrap_or_default();
            if let Some(term) = terms.iter().find(|term| starts_with(rest, &term.from)) {
                said.push_str(text.get(done..at).unwrap_or_default());
                push_like(&mut said, &term.to, char);
                done = at + term.from.len();
                skip_to = done;
            }
        }
        before = Some(char);
    }
    if done == 0 {
        return Cow::Borrowed(text);
    }
    said.push_str(text.get(done..).unwrap_or_default());
    Cow::Owned(said)
}

/// Whether a character makes one word of what stands on its two sides.
fn joins(char: Option<char>) -> bool {
    char.is_some_and(|char| char.is_alphanumeric() || matches!(char, '-' | '_'))
}

/// Whether a text starts with a term as a whole word.
fn starts_with(text: &str, term: &str) -> bool {
    let Some(head) = text.get(..term.len()) else { return false };
    let mut letters = head.bytes().zip(term.bytes());
    let first = letters.next().is_some_and(|(a, b)| a.eq_ignore_ascii_case(&b));
    let after = text.get(term.len()..).and_then(|rest| rest.chars().next());
    first && letters.all(|(a, b)| a == b) && !joins(after)
}

/// Adds a term with a capital where the old one had one.
fn push_like(said: &mut String, term: &str, old: char) {
    let mut chars = term.chars();
    match chars.next() {
        Some(first) if old.is_uppercase() => said.extend(first.to_uppercase().chain(chars)),
        _ => said.push_str(term),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn us(text: &str) -> Cow<'_, str> {
        say(Dialect::Us, text)
    }

    #[test]
    fn terms_are_said_with_their_capitals_and_plurals() {
        assert_eq!(us("Wall plate of wall B"), "Top plate of wall B");
        assert_eq!(us("trimming rafters and trimmers are doubled"), "trimmer rafters and headers are doubled");
        assert_eq!(us("no more than 600 mm apart from centre to centre."), "no more than 600 mm apart on center.");
        assert_eq!(us("The verges; an upstand of 12"), "The rakes; a height above plate of 12");
        assert_eq!(us("jack rafter"), "jack rafter");
        assert_eq!(say(Dialect::Uk, "wall plate"), "wall plate");
    }

    #[test]
    fn marks_keys_and_parts_of_words_stay() {
        for text in ["Collar-2 on Binder-1a", "`timber.rafter.centres`", "converge", "Trimmer_1", "7200", "", "–½"] {
            assert_eq!(us(text), text);
        }
    }

    #[test]
    fn every_kind_of_timber_has_its_term() {
        use MemberKind as K;
        let kinds = [
            [K::CommonRafter, K::CrownRafter, K::JackRafter, K::ValleyJack, K::CrippleRafter],
            [K::HipRafter, K::ValleyRafter, K::RidgeBoard, K::WallPlate, K::Purlin],
            [K::Strut, K::SolePlate, K::Collar, K::CeilingJoist, K::Binder],
            [K::Hanger, K::AngleTie, K::DragonTie, K::Trimmer, K::TrimmingRafter],
            [K::GableLadder, K::Noggin, K::Sprocket, K::Fascia, K::Soffit],
            [K::TiltingFillet, K::BargeBoard, K::LayBoard, K::Stud, K::FishPlate],
        ];
        for kind in kinds.into_iter().flatten().chain([K::Wedge]) {
            let name = kind.name();
            assert!(american().iter().any(|term| term.from == name), "{name} is not in the list");
            assert!(american().iter().any(|term| term.from == format!("{name}s")), "{name}s are not in the list");
        }
    }

    #[test]
    fn saying_twice_changes_nothing_more() {
        for term in american() {
            for text in [term.from.clone(), term.to.clone(), format!("The {} and {}s.", term.from, term.to)] {
                let once = us(&text).into_owned();
                assert_eq!(us(&once), once, "{text}");
            }
        }
    }
}
