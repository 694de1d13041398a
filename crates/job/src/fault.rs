//! What can be wrong with a job file, each fault with its place.

use core::fmt;
use core::ops::Range;

/// One fault in a job file.
///
/// `Display` gives one plain paragraph: the place, what is wrong, why it
/// matters, what to do, and the nearest right word if there is one.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Fault {
    /// The bytes of the text that are at fault.
    pub span: Range<usize>,
    /// Line of the start of the span, from 1.
    pub line: usize,
    /// Column of the start of the span, from 1, counted in characters.
    pub column: usize,
    /// Short name of the rule that is broken, such as `unknown-key`. Stable:
    /// other programs may rely on it.
    pub code: &'static str,
    /// What is wrong.
    pub what: String,
    /// Why it matters.
    pub why: String,
    /// What to do about it.
    pub remedy: String,
    /// The nearest right word, when what was written looks like a slip.
    pub nearest: Option<String>,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Line {}, column {}: {}. {}. {}.", self.line, self.column, self.what, self.why, self.remedy)?;
        match &self.nearest {
            Some(nearest) => write!(f, " Did you mean `{nearest}`?"),
            None => Ok(()),
        }
    }
}

impl core::error::Error for Fault {}

/// Every fault found in a job file, in the order of the text. Never empty.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Faults(Vec<Fault>);

impl Faults {
    /// Puts faults in the order of the text. `None` when there are none.
    pub(crate) fn from_list(mut list: Vec<Fault>) -> Option<Self> {
        list.sort_by(|a, b| (a.span.start, a.span.end, a.code).cmp(&(b.span.start, b.span.end, b.code)));
        if list.is_empty() { None } else { Some(Self(list)) }
    }

    /// The faults in the order of the text.
    #[must_use]
    pub fn as_slice(&self) -> &[Fault] {
        &self.0
    }

    /// Goes through the faults in the order of the text.
    pub fn iter(&self) -> core::slice::Iter<'_, Fault> {
        self.0.iter()
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, fault) in self.0.iter().enumerate() {
            if n > 0 {
                f.write_str("\n")?;
            }
            write!(f, "{fault}")?;
        }
        Ok(())
    }
}

impl core::error::Error for Faults {}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Self {
        Self(vec![fault])
    }
}

impl IntoIterator for Faults {
    type Item = Fault;
    type IntoIter = std::vec::IntoIter<Fault>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a> IntoIterator for &'a Faults {
    type Item = &'a Fault;
    type IntoIter = core::slice::Iter<'a, Fault>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

/// Finds lines and columns in a text.
pub(crate) struct Places<'t> {
    text: &'t str,
    /// Byte at which each line starts.
    starts: Vec<usize>,
}

impl<'t> Places<'t> {
    pub(crate) fn new(text: &'t str) -> Self {
        let after_breaks = text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n').map(|(at, _)| at + 1);
        Self { text, starts: core::iter::once(0).chain(after_breaks).collect() }
    }

    /// Line and column of a byte, both from 1. A byte inside a character
    /// counts as the character, one past the end as the end.
    pub(crate) fn of(&self, byte: usize) -> (usize, usize) {
        let line = self.starts.partition_point(|start| *start <= byte).max(1);
        let start = self.starts.get(line - 1).copied().unwrap_or(0);
        let before = self.text.get(start..).unwrap_or("").char_indices();
        (line, 1 + before.take_while(|(at, c)| start + at + c.len_utf8() <= byte).count())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_count_characters_not_bytes() {
        let places = Places::new("a = 1\n½½ = 2\n");
        assert_eq!(places.of(0), (1, 1));
        assert_eq!(places.of(4), (1, 5));
        assert_eq!(places.of(6), (2, 1));
        assert_eq!(places.of(10), (2, 3));
        assert_eq!(places.of(7), (2, 1), "inside a character");
        assert_eq!(places.of(900).0, 3);
    }
}
