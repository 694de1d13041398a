//! A group of keys in the file, and values read from it.

use crate::keys;
use core::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// A value with the place it was written at.
pub(super) type Value<'d> = &'d Spanned<DeValue<'d>>;

/// A group of keys, such as `[roof]`; it may be left out of the file.
pub(super) struct Group<'d> {
    /// Its path, with dots; empty for the whole file.
    pub(super) path: String,
    /// Its place in the text: that of the group it would stand in when it is
    /// left out.
    pub(super) span: Range<usize>,
    /// What is written in it.
    pub(super) table: Option<&'d DeTable<'d>>,
}

impl<'d> Group<'d> {
    /// The path of a key in it.
    pub(super) fn join(&self, word: &str) -> String {
        keys::join(&self.path, word)
    }

    /// What is written for a key.
    pub(super) fn get(&self, word: &str) -> Option<Value<'d>> {
        self.table?.get(word)
    }
}

/// Where a value came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum From {
    /// Left out of the file: the default.
    Default,
    /// Written in the file.
    File,
    /// Written wrong, which is reported; the value stands in for it, and
    /// nothing further is to be said about it.
    Fault,
}

/// A value that was read, or what stands in for it.
#[derive(Clone, Debug)]
pub(super) struct Read<T> {
    pub(super) value: T,
    pub(super) span: Range<usize>,
    pub(super) from: From,
}

impl<T> Read<T> {
    /// Whether the value can be relied upon.
    pub(super) fn is_sound(&self) -> bool {
        self.from != From::Fault
    }

    /// Whether the file says so.
    pub(super) fn is_written(&self) -> bool {
        self.from == From::File
    }
}
