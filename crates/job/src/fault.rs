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

/// Gives lines and columns to faults that only have spans yet.
pub(crate) fn place(list: &mut [Fault], text: &str) {
    list.sort_by_key(|fault| fault.span.start);
    // One walk over the text for all of them, for a file may hold a hundred
    // thousand faults on one line.
    let (mut line, mut column) = (1, 1);
    let mut chars = text.char_indices().peekable();
    for fault in list {
        while let Some((_, c)) = chars.next_if(|(at, c)| at + c.len_utf8() <= fault.span.start) {
            (line, column) = if c == '\n' { (line + 1, 1) } else { (line, column + 1) };
        }
        (fault.line, fault.column) = (line, column);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(byte: usize) -> Fault {
        let span = byte..byte;
        let text = String::new;
        Fault { span, line: 0, column: 0, code: "", what: text(), why: text(), remedy: text(), nearest: None }
    }

    #[test]
    fn places_count_characters_not_bytes() {
        let mut list = [at(10), at(900), at(0), at(4), at(5), at(6), at(7)];
        place(&mut list, "a = 1\n½½ = 2\n");
        let places: Vec<_> = list.iter().map(|fault| (fault.span.start, fault.line, fault.column)).collect();
        let expected = [(0, 1, 1), (4, 1, 5), (5, 1, 6), (6, 2, 1), (7, 2, 1), (10, 2, 3), (900, 3, 1)];
        assert_eq!(places, expected, "7 is inside a character, 900 past the end");
    }
}
