//! Puts figures of one version into the text of the other, where they belong.

use crate::figures::{Path, Step};
use toml_edit::{Decor, DocumentMut, InlineTable, Item, Table, TableLike, Value};

/// The text of `onto` with the figures at `paths` as they are in `from`. None
/// where something else stands where one belongs.
pub(crate) fn into(onto: &DocumentMut, from: &DocumentMut, base: &DocumentMut, paths: &[Path]) -> Option<String> {
    let mut onto = onto.clone();
    for path in paths {
        let place = Place { table: onto.as_table_mut(), in_braces: false };
        let (from, base) = (from.as_table(), base.as_table());
        let is_there = get(from, &path.0);
        if is_there { put(place, from, Some(base), &path.0)? } else { take(place.table, Some(from), &path.0)? }
    }
    Some(onto.to_string())
}

/// A group that is written to, and whether it stands in braces.
struct Place<'d> {
    table: &'d mut dyn TableLike,
    in_braces: bool,
}

/// Whether anything stands at a path. Places in lists are there when their list is, for lists are split only when they
/// are equally long.
fn get(table: &dyn TableLike, path: &[Step]) -> bool {
    match path {
        [Step::Key(word)] => table.contains_key(word),
        [Step::Key(word), Step::At(_), ..] => table.contains_key(word),
        [Step::Key(word), rest @ ..] => {
            table.get(word).and_then(Item::as_table_like).is_some_and(|inner| get(inner, rest))
        }
        _ => false,
    }
}

fn put(place: Place<'_>, from: &dyn TableLike, base: Option<&dyn TableLike>, path: &[Step]) -> Option<()> {
    let [Step::Key(word), rest @ ..] = path else { return None };
    let new = from.get(word)?;
    let old_base = base.and_then(|base| base.get(word));
    match rest {
        [] => put_here(place, word, new, from, old_base),
        [Step::At(_), ..] => {
            let list = place.table.get_mut(word)?.as_value_mut()?;
            replace_in_list(list, new.as_value()?, rest)
        }
        [Step::Key(_), ..] => {
            if !place.table.contains_key(word) {
                let group = empty_like(new, place.in_braces);
                insert(&mut Place { table: &mut *place.table, in_braces: place.in_braces }, from, word, group);
            }
            let item = place.table.get_mut(word)?;
            let in_braces = item.is_inline_table();
            let inner = Place { table: item.as_table_like_mut()?, in_braces };
            put(inner, new.as_table_like()?, old_base.and_then(Item::as_table_like), rest)
        }
    }
}

/// Replaces or adds what stands under a word. Blanks and comments around it
/// stay, unless only the other version changed them.
fn put_here(mut place: Place<'_>, word: &str, new: &Item, from: &dyn TableLike, base: Option<&Item>) -> Option<()> {
    match (place.table.get_mut(word), new) {
        (Some(Item::Value(old)), Item::Value(new)) => {
            let mut new = new.clone();
            let untouched = base.and_then(Item::as_value).is_some_and(|base| same_decor(base.decor(), old.decor()));
            if place.in_braces || !untouched {
                *new.decor_mut() = old.decor().clone();
            }
            *old = new;
        }
        (Some(_), _) => {
            place.table.remove(word);
            insert(&mut place, from, word, loose(new.clone()));
        }
        (None, _) => insert(&mut place, from, word, loose(new.clone())),
    }
    Some(())
}

fn same_decor(one: &Decor, other: &Decor) -> bool {
    let parts = |decor: &Decor| {
        [decor.prefix(), decor.suffix()].map(|part| part.and_then(|part| part.as_str()).unwrap_or_default().to_owned())
    };
    parts(one) == parts(other)
}

/// Replaces one element of a list. The blanks and comments around it stay.
fn replace_in_list(list: &mut Value, new: &Value, path: &[Step]) -> Option<()> {
    let [Step::At(place), rest @ ..] = path else { return None };
    let old = list.as_array_mut()?.get_mut(*place)?;
    let new = new.as_array()?.get(*place)?;
    if !rest.is_empty() {
        return replace_in_list(old, new, rest);
    }
    let decor = old.decor().clone();
    *old = new.clone();
    *old.decor_mut() = decor;
    Some(())
}

/// A group with nothing in it yet, laid out like another.
fn empty_like(other: &Item, in_braces: bool) -> Item {
    match other {
        Item::Table(other) if !in_braces => {
            let mut table = Table::new();
            *table.decor_mut() = other.decor().clone();
            table.set_implicit(other.is_implicit());
            table.set_dotted(other.is_dotted());
            Item::Table(table)
        }
        Item::Value(Value::InlineTable(other)) if !in_braces => {
            let mut table = InlineTable::new();
            *table.decor_mut() = other.decor().clone();
            Item::Value(table.into())
        }
        _ => Item::Value(InlineTable::new().into()),
    }
}

/// An item whose groups have no place of their own in the file yet, so that they come after what is there.
fn loose(mut item: Item) -> Item {
    if let Item::Table(table) = &mut item {
        table.set_position(None);
    }
    item
}

/// Adds an item at the end of a group, with the comment above it.
fn insert(place: &mut Place<'_>, from: &dyn TableLike, word: &str, item: Item) {
    if !place.in_braces {
        match from.key(word) {
            Some(key) => {
                place.table.entry_format(key).or_insert(item);
            }
            None => {
                place.table.insert(word, item);
            }
        }
        return;
    }
    let Ok(mut value) = item.into_value() else { return };
    value.decor_mut().clear();
    // The blank behind the last value belongs before the brace.
    if let Some((_, last)) = place.table.iter_mut().last()
        && let Some(last) = last.as_value_mut()
        && let Some(behind) = last.decor().suffix().cloned()
    {
        last.decor_mut().set_suffix("");
        value.decor_mut().set_prefix(" ");
        value.decor_mut().set_suffix(behind);
    }
    place.table.insert(word, Item::Value(value));
}

/// Takes out what stands at a path, and the groups that are left empty by it
/// and that the other version has not.
fn take(table: &mut dyn TableLike, from: Option<&dyn TableLike>, path: &[Step]) -> Option<()> {
    let [Step::Key(word), rest @ ..] = path else { return None };
    let other = from.and_then(|from| from.get(word));
    if rest.is_empty() {
        return table.remove(word).map(|_| ());
    }
    let inner = table.get_mut(word)?.as_table_like_mut()?;
    take(inner, other.and_then(Item::as_table_like), rest)?;
    if inner.is_empty() && other.is_none() {
        table.remove(word);
    }
    Some(())
}
