//! The one door through which every text leaves the core, in the words of the
//! dialect that the user wants.

use crate::views::Dialect;
use roof::solution::MemberKind;
use std::borrow::Cow;

/// A text in the words of a dialect.
pub(crate) fn say(words: Dialect, text: &str) -> Cow<'_, str> {
    match words {
        Dialect::Uk | Dialect::Us => Cow::Borrowed(text),
    }
}

/// What a timber is, with a capital.
pub(crate) fn kind(words: Dialect, kind: MemberKind) -> String {
    capital(&say(words, kind.name()))
}

/// The text with a capital at its start.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
