//! Reads groups under names of the user's own, and groups that say all or
//! nothing.

use super::group::Group;
use super::number::shorten;
use super::reader::Reader;
use crate::keys::{self, Names, is_name};
use crate::limits::{LONGEST_TEXT, MOST_NAMED, MOST_TICKED};
use core::ops::Range;
use toml::de::DeTable;

/// A group under a name of the user's own.
pub(super) struct Named<'d> {
    pub(super) name: String,
    /// Where the name is written.
    pub(super) span: Range<usize>,
    pub(super) group: Group<'d>,
}

impl Reader<'_> {
    /// What is named in a group, in the order of the file.
    pub(super) fn named<'d>(&mut self, root: &Group<'d>, word: &str) -> Vec<Named<'d>> {
        let group = self.group(root, word);
        let mut words: Vec<_> = group.table.into_iter().flat_map(DeTable::keys).collect();
        words.sort_by_key(|word| word.span().start);
        let (most, why) = match word {
            "done" => (MOST_TICKED, "No roof is framed of so many timbers"),
            _ => (MOST_NAMED, "Each is compared with every other, and no roof cut by hand has so many"),
        };
        if let Some(first) = words.get(most) {
            self.fault(
                &first.span(),
                "too-many-named",
                format!("`{word}` holds {} names; {most} is the most", words.len()),
                why,
                "Take out those that are not meant, or split the job",
            );
            words.truncate(most);
        }
        let mut named = Vec::new();
        for name in words {
            if is_name(Names::Own, name.get_ref()) {
                let inner = self.group(&group, name.get_ref());
                named.push(Named { name: name.get_ref().to_string(), span: name.span(), group: inner });
            } else {
                self.fault(
                    &name.span(),
                    "bad-name",
                    format!("\"{}\" is no name that can stand in `{word}`", shorten(name.get_ref())),
                    "It is printed on the sheets and named by other programs, so it is one plain word",
                    format!("Write letters, digits, dashes and underscores, at most {LONGEST_TEXT} of them"),
                );
            }
        }
        named
    }

    /// Whether the file says anything in a group that says all or nothing.
    /// Keys that are missing then are reported.
    pub(super) fn says(&mut self, group: &Group<'_>) -> bool {
        if group.table.is_none_or(DeTable::is_empty) {
            return false;
        }
        for (word, example) in keys::parts(&group.path) {
            if group.get(word).is_none() && !self.is_slip(&group.join(word)) {
                self.fault(
                    &group.span,
                    "part-unfinished",
                    format!("`{}` is written, but its {word} is not", group.path),
                    "Nothing is made without it, and what is said here would be passed over",
                    format!("Write {word} = {example} in it, or take the group out"),
                );
            }
        }
        true
    }
}
