//! Puts values into a document and takes them out, keeping its layout.

use super::EditError;
use crate::keys::join;
use toml_edit::{InlineTable, Item, Table, TableLike, Value};

/// A group in the document, and whether it stands in braces.
pub(super) struct Place<'d> {
    table: &'d mut dyn TableLike,
    in_braces: bool,
}

impl<'d> Place<'d> {
    /// The document as a group.
    pub(super) fn root(table: &'d mut Table) -> Self {
        Self { table, in_braces: false }
    }

    fn inner(self, word: &str) -> Option<Self> {
        let item = self.table.get_mut(word)?;
        let in_braces = item.is_inline_table();
        item.as_table_like_mut().map(|table| Self { table, in_braces })
    }
}

/// Puts a value at a path below a group.
pub(super) fn put(mut place: Place<'_>, group: &str, path: &str, value: Value) -> Result<(), EditError> {
    let Some((word, rest)) = path.split_once('.') else {
        put_here(&mut place, path, value);
        return Ok(());
    };
    let path = join(group, word);
    if !place.table.contains_key(word) {
        // In a file of our own, walls have a head to themselves and smaller
        // groups stand in braces on one line.
        let in_braces = place.in_braces || place.table.is_dotted() || (!group.is_empty() && path != "roof.walls");
        let new = if in_braces { Item::Value(InlineTable::new().into()) } else { Item::Table(Table::new()) };
        insert(&mut place, word, new);
    }
    match place.inner(word) {
        Some(inner) => put(inner, &path, rest, value),
        None => Err(EditError::NotAGroup { path }),
    }
}

/// Replaces or adds a value. The blanks and comments around an old value stay.
fn put_here(place: &mut Place<'_>, word: &str, mut value: Value) {
    match place.table.get_mut(word) {
        Some(Item::Value(old)) => {
            *value.decor_mut() = old.decor().clone();
            *old = value;
        }
        Some(other) => *other = Item::Value(value),
        None => insert(place, word, Item::Value(value)),
    }
}

/// Adds an item at the end of a group.
fn insert(place: &mut Place<'_>, word: &str, mut item: Item) {
    // In braces, the blank behind the last value belongs before the brace.
    let last = if place.in_braces { place.table.iter_mut().last() } else { None };
    if let Some((_, last)) = last
        && let (Some(last), Some(new)) = (last.as_value_mut(), item.as_value_mut())
    {
        let behind = last.decor().suffix().cloned();
        if let Some(behind) = behind.filter(|behind| behind.as_str().is_some_and(is_blank)) {
            last.decor_mut().set_suffix("");
            new.decor_mut().set_prefix(" ");
            new.decor_mut().set_suffix(behind);
        }
    }
    place.table.insert(word, item);
}

/// Takes out what is at a path. `false` if nothing is there.
pub(super) fn take(mut place: Place<'_>, path: &str) -> bool {
    let Some((word, rest)) = path.split_once('.') else { return take_here(&mut place, path) };
    let outer = Place { table: &mut *place.table, in_braces: place.in_braces };
    let Some(inner) = outer.inner(word) else { return false };
    if !take(inner, rest) {
        return false;
    }
    let left = place.table.get(word);
    let prunes = |item: &Item| item.is_inline_table() || item.as_table().is_some_and(Table::is_dotted);
    if left.is_some_and(|item| prunes(item) && item.as_table_like().is_some_and(TableLike::is_empty)) {
        take_here(&mut place, word);
    }
    true
}

fn take_here(place: &mut Place<'_>, word: &str) -> bool {
    let was_last = place.table.iter().last().is_some_and(|(key, _)| key == word);
    let Some(old) = place.table.remove(word) else { return false };
    if was_last && place.in_braces {
        let behind = old.as_value().and_then(|value| value.decor().suffix().cloned());
        let last = place.table.iter_mut().last();
        if let (Some((_, item)), Some(behind)) = (last, behind)
            && let Some(value) = item.as_value_mut()
        {
            value.decor_mut().set_suffix(behind);
        }
    }
    true
}

fn is_blank(text: &str) -> bool {
    text.trim().is_empty()
}
