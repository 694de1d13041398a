//! Reads values by the table of keys, and collects faults.

use super::group::{From, Group, Read, Value};
use super::number;
use crate::Section;
use crate::fault::{self, Fault, Faults};
use crate::keys::{self, Key, Kind, Preset};
use crate::limits::LONGEST_TEXT;
use crate::nearest::nearest;
use crate::words::{Choice, words};
use core::ops::Range;
use std::collections::BTreeSet;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// Reads values and collects the faults on the way.
pub(super) struct Reader<'t> {
    text: &'t str,
    faults: Vec<Fault>,
    /// Paths of keys that an unknown word was taken for a slip of.
    slips: BTreeSet<String>,
}

impl<'t> Reader<'t> {
    pub(super) fn new(text: &'t str) -> Self {
        Self { text, faults: Vec::new(), slips: BTreeSet::new() }
    }

    /// The text of the file at a place.
    pub(super) fn quote(&self, span: &Range<usize>) -> &'t str {
        self.text.get(span.clone()).unwrap_or("")
    }

    /// Notes a fault. The texts are sentences without their stops.
    pub(super) fn fault(
        &mut self,
        span: &Range<usize>,
        code: &'static str,
        what: impl Into<String>,
        why: impl Into<String>,
        remedy: impl Into<String>,
    ) -> &mut Option<String> {
        let (what, why, remedy) = (what.into(), why.into(), remedy.into());
        let at = self.faults.len();
        self.faults.push(Fault { span: span.clone(), line: 0, column: 0, code, what, why, remedy, nearest: None });
        &mut self.faults[at].nearest
    }

    /// All faults, if there are any.
    pub(super) fn finish(mut self) -> Result<(), Faults> {
        fault::place(&mut self.faults, self.text);
        match Faults::from_list(self.faults) {
            None => Ok(()),
            Some(faults) => Err(faults),
        }
    }

    /// The file as a group.
    pub(super) fn root<'d>(&mut self, document: &'d Spanned<DeTable<'d>>) -> Group<'d> {
        let root = Group { path: String::new(), span: 0..0, table: Some(document.get_ref()) };
        self.check_words(&root);
        root
    }

    /// A group within a group.
    pub(super) fn group<'d>(&mut self, parent: &Group<'d>, word: &str) -> Group<'d> {
        let path = parent.join(word);
        let Some(value) = parent.get(word) else {
            return Group { path, span: parent.span.clone(), table: None };
        };
        let table = value.get_ref().as_table();
        if table.is_none() {
            self.fault(
                &value.span(),
                "wrong-type",
                format!("`{path}` is {}, but it is a group of keys", number::type_words(value.get_ref())),
                "What is meant by it can only be told by name",
                format!("Write it as {{ key = value }}, or under a line [{path}]"),
            );
        }
        let group = Group { path, span: value.span(), table };
        self.check_words(&group);
        group
    }

    /// Reports words in a group that name nothing. Wall letters are left to
    /// whoever knows the walls.
    fn check_words(&mut self, group: &Group<'_>) {
        let known = keys::children(&group.path);
        if known.contains(&"*") {
            return;
        }
        for word in group.table.into_iter().flat_map(DeTable::keys) {
            if known.contains(&word.get_ref().as_ref()) {
                continue;
            }
            let place = if group.path.is_empty() { "a job file".to_owned() } else { format!("`{}`", group.path) };
            let shown = number::shorten(word.get_ref());
            let suggestion = keys::suggest(&group.path, word.get_ref());
            self.slips.extend(suggestion.iter().map(|meant| group.join(meant)));
            *self.fault(
                &word.span(),
                "unknown-key",
                format!("`{shown}` is not a key of {place}"),
                "A key that is not known would be passed over in silence, and the roof be cut without it",
                format!("Take it out, or use one of: {}", known.join(", ")),
            ) = suggestion;
        }
    }

    /// Whether an unknown word was taken for a slip of this key.
    pub(super) fn is_slip(&self, path: &str) -> bool {
        self.slips.contains(path)
    }

    /// The key for a word of a group. Every caller names a key of the table,
    /// which a test of every key shows.
    fn key(group: &Group<'_>, word: &str) -> Option<&'static Key> {
        keys::find(&group.join(word))
    }

    /// Reads a key by a reader of its kind: what is written, or the default.
    /// `None` when the key is left out and has no default of its own.
    pub(super) fn value<T>(
        &mut self,
        group: &Group<'_>,
        word: &str,
        preset: impl FnOnce(Preset) -> Option<T>,
        stand_in: T,
        read: impl FnOnce(&mut Self, &str, &Kind, Value<'_>) -> Option<T>,
    ) -> Option<Read<T>> {
        let key = Self::key(group, word)?;
        let path = group.join(word);
        let Some(value) = group.get(word) else {
            if let Preset::Required(example) = key.preset {
                // A slip of its name was reported already.
                if !self.is_slip(&path) {
                    self.fault(
                        &group.span,
                        "missing-key",
                        format!("`{path}` is missing"),
                        format!("It has no default: {}", number::uncapital(key.meaning)),
                        format!("Write it, such as {word} = {example}"),
                    );
                }
                return Some(Read { value: stand_in, span: group.span.clone(), from: From::Fault });
            }
            return preset(key.preset).map(|value| Read { value, span: group.span.clone(), from: From::Default });
        };
        let span = value.span();
        Some(match read(self, &path, &key.kind, value) {
            Some(value) => Read { value, span, from: From::File },
            None => Read { value: stand_in, span, from: From::Fault },
        })
    }

    /// Reports a value of another type than is wanted.
    pub(super) fn wrong_type(&mut self, path: &str, kind: &Kind, value: Value<'_>) {
        let found = number::type_words(value.get_ref());
        let meaning = keys::find(path).map_or_else(String::new, |key| number::uncapital(key.meaning));
        let why = if meaning.is_empty() { "It cannot be read".to_owned() } else { format!("It says: {meaning}") };
        self.fault(
            &value.span(),
            "wrong-type",
            format!("`{path}` wants {}, but this is {found}", kind.wanted()),
            why,
            kind.remedy(),
        );
    }

    /// A length or pitch; `None` when left out and without a number as default.
    pub(super) fn number(&mut self, group: &Group<'_>, word: &str) -> Option<Read<f64>> {
        let preset = |preset| if let Preset::Number(value) = preset { Some(value) } else { None };
        self.value(group, word, preset, 0.0, |reader, path, kind, value| reader.number_of(path, kind, value))
    }

    /// A choice.
    pub(super) fn choice<T: Choice>(&mut self, group: &Group<'_>, word: &str, stand_in: T) -> Read<T> {
        let preset = |preset| if let Preset::Word(word) = preset { T::from_word(word) } else { None };
        let read = self.value(group, word, preset, stand_in, |reader, path, kind, value| {
            let DeValue::String(given) = value.get_ref() else {
                reader.wrong_type(path, kind, value);
                return None;
            };
            let choice = T::from_word(given);
            if choice.is_none() {
                let known = words::<T>();
                let near = nearest(given, known.iter().copied()).map(str::to_owned);
                let shown = number::shorten(given);
                *reader.fault(
                    &value.span(),
                    "unknown-word",
                    format!("\"{shown}\" is not a choice for `{path}`"),
                    "Guessing would cut the timber another way than was meant",
                    kind.remedy(),
                ) = near;
            }
            choice
        });
        read.unwrap_or(Read { value: stand_in, span: group.span.clone(), from: From::Default })
    }

    /// Yes or no.
    pub(super) fn flag(&mut self, group: &Group<'_>, word: &str) -> Read<bool> {
        let read = self.value(
            group,
            word,
            |preset| Some(matches!(preset, Preset::Flag(true))),
            false,
            |reader, path, kind, value| {
                let flag = value.get_ref().as_bool();
                if flag.is_none() {
                    reader.wrong_type(path, kind, value);
                }
                flag
            },
        );
        read.unwrap_or(Read { value: false, span: group.span.clone(), from: From::Default })
    }

    /// A line of text; `None` when left out and without a default.
    pub(super) fn line(&mut self, group: &Group<'_>, word: &str) -> Option<Read<String>> {
        let preset = |preset| if let Preset::Word(word) = preset { Some(word.to_owned()) } else { None };
        self.value(group, word, preset, String::new(), |reader, path, kind, value| {
            let text = match value.get_ref() {
                DeValue::String(text) => text.to_string(),
                DeValue::Datetime(date) => date.to_string(),
                _ => {
                    reader.wrong_type(path, kind, value);
                    return None;
                }
            };
            let fits = text.chars().count() <= LONGEST_TEXT && !text.chars().any(char::is_control);
            if !fits || text.trim().is_empty() {
                reader.fault(
                    &value.span(),
                    "text-unfit",
                    format!("`{path}` is empty, runs over a line, or is longer than {LONGEST_TEXT} characters"),
                    "It is printed on one line at the head of every sheet",
                    kind.remedy(),
                );
                return None;
            }
            Some(text)
        })
    }

    /// Thickness and depth; `None` when left out and without a default.
    pub(super) fn size(&mut self, group: &Group<'_>, word: &str) -> Option<Read<Section>> {
        let preset = |preset| match preset {
            Preset::Pair([thickness, depth]) => Some(Section { thickness, depth }),
            _ => None,
        };
        let stand_in = Section { thickness: 0.0, depth: 0.0 };
        self.value(group, word, preset, stand_in, |reader, path, kind, value| reader.size_of(path, kind, value))
    }
}
