//! How the words and figures of a job are written on the screen.

use super::{capital, say};
use crate::views::Dialect;
use job::written::Lengths;

/// How figures and words are written. The rooms that write figures of their own add to it.
#[derive(Clone, Debug)]
pub(crate) struct Writing {
    /// How lengths are shown.
    pub(crate) lengths: Lengths,
    /// Whose words are shown.
    pub(crate) words: Dialect,
    /// The sign of the currency, where money is written.
    pub(crate) currency: String,
}

impl Writing {
    /// Where no money is written.
    pub(crate) const fn new(lengths: Lengths, words: Dialect) -> Self {
        Self { lengths, words, currency: String::new() }
    }

    /// A text of the core in the words that are shown.
    pub(crate) fn say(&self, text: &str) -> String {
        say(self.words, text).into_owned()
    }

    /// The same with a capital.
    pub(crate) fn say_first(&self, text: &str) -> String {
        capital(&say(self.words, text))
    }

    /// A text of the core as a sentence: with a capital, and a stop at its end.
    pub(crate) fn sentence(&self, text: &str) -> String {
        let text = self.say_first(text);
        if text.is_empty() || text.ends_with(['.', '!', '?']) { text } else { format!("{text}.") }
    }

    /// A length, mm, with its unit.
    pub(crate) fn length(&self, mm: f64) -> String {
        self.lengths.write_with_unit(mm)
    }

    /// A section, mm, with its unit.
    pub(crate) fn section(&self, thickness_mm: f64, depth_mm: f64) -> String {
        let section = self.lengths.section(thickness_mm, depth_mm);
        if self.lengths == Lengths::Millimetres { format!("{section} mm") } else { section }
    }
}
