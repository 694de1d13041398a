//! Keys set and taken out.

use super::{Changes, Step};
use crate::entries::phrase;
use crate::opening::Open;
use job::listing::parts_of;

/// Values longer than this are not said again, characters.
const LONGEST_SAID: usize = 30;

/// Sets a key. A part of the roof that can't be without other keys is put in
/// with their examples, so that one key is enough to start it.
pub(super) fn set(open: &Open, path: &str, value: &str) -> Changes {
    let value = value.trim();
    let said = match value.chars().count() {
        0..=LONGEST_SAID => format!("{} {value}", phrase(path)),
        _ => phrase(path),
    };
    let group = path.rsplit_once('.').map_or("", |(group, _)| group);
    let mut steps = Vec::new();
    if !group.is_empty() && !open.said.has(group) {
        let others = parts_of(group).into_iter().filter(|(part, _)| part != path);
        steps.extend(others.map(|(part, example)| Step::Set(part, example.to_owned())));
    }
    steps.push(Step::Set(path.to_owned(), value.to_owned()));
    Changes { steps, said }
}

/// Takes a key out. A key that its group can't be without takes the group with it.
pub(super) fn remove(open: &Open, path: &str) -> Changes {
    let group = path.rsplit_once('.').map_or("", |(group, _)| group);
    let needed = open.said.has(path) && parts_of(group).iter().any(|(part, _)| part == path);
    let path = if needed { group } else { path };
    Changes { steps: vec![Step::Remove(path.to_owned())], said: format!("{} taken out", phrase(path)) }
}
