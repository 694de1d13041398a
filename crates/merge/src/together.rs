//! Faults that come about only when two versions are put together.

use crate::figures::{Path, Step};
use toml_edit::{Document, TableLike};

/// The faults of a merged text that neither version has: where, and what is
/// wrong and what to do.
pub(crate) fn new_faults(ours: &str, theirs: &str, merged: &str) -> Vec<(Path, String)> {
    let Err(faults) = job::read(merged) else { return Vec::new() };
    let known: Vec<job::Fault> =
        [ours, theirs].into_iter().filter_map(|text| job::read(text).err()).flatten().collect();
    let is_new = |fault: &&job::Fault| !known.iter().any(|old| (old.code, &old.what) == (fault.code, &fault.what));
    let document = Document::parse(merged).ok();
    let place = |fault: &job::Fault| {
        let mut path = Path::default();
        let found = document.as_ref().is_some_and(|document| find(document.as_table(), fault.span.start, &mut path));
        if found { path } else { Path::default() }
    };
    let words = |fault: &job::Fault| format!("{}. {}. {}.", fault.what, fault.why, fault.remedy);
    faults.iter().filter(is_new).map(|fault| (place(fault), words(fault))).collect()
}

/// The path of the figure that a byte of the text belongs to.
fn find(table: &dyn TableLike, byte: usize, path: &mut Path) -> bool {
    for (word, item) in table.iter() {
        path.0.push(Step::Key(word.to_owned()));
        let inside = item.as_table_like().is_some_and(|inner| find(inner, byte, path));
        let spans = [item.span(), table.key(word).and_then(toml_edit::Key::span)];
        if inside || spans.iter().flatten().any(|span| span.contains(&byte)) {
            return true;
        }
        path.0.pop();
    }
    false
}
