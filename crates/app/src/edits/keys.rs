//! Keys set and taken out.

use super::{Changes, carries};
use crate::entries::phrase;
use crate::opening::Open;
use crate::refusal::Refusal;
use crate::views::KeyGiven;
use job::listing::parts_of;

/// Values longer than this are not said again, characters.
const LONGEST_SAID: usize = 30;

/// Sets a key. A part of the roof that can't be without other keys is put in
/// with their examples, so that one key is enough to start it. Not so what the
/// roof carries: an example would be taken for a figure of the site.
pub(super) fn set(open: &Open, path: &str, value: &str) -> Result<Changes, Refusal> {
    let value = value.trim();
    let said = match value.chars().count() {
        0..=LONGEST_SAID => format!("{} {value}", phrase(path)),
        _ => phrase(path),
    };
    let group = path.rsplit_once('.').map_or("", |(group, _)| group);
    let mut steps = Vec::new();
    if group == carries::LOADS && !open.said.has(group) {
        return carries::set(open, &[KeyGiven { path: path.to_owned(), value: value.to_owned() }]);
    }
    if !group.is_empty() && !open.said.has(group) {
        let others = parts_of(group).into_iter().filter(|(part, _)| part != path);
        steps.extend(others.map(|(part, example)| (part, Some(example.to_owned()))));
    }
    steps.push((path.to_owned(), Some(value.to_owned())));
    Ok(Changes { steps, said })
}

/// Takes a key out. A key that its group can't be without takes the group with it.
pub(super) fn remove(open: &Open, path: &str) -> Result<Changes, Refusal> {
    if !open.said.has(path) {
        return Err(Refusal::new(
            "not-said",
            format!("The job does not say `{path}`: its default holds already"),
            "Nothing needs to be taken out",
        ));
    }
    let group = path.rsplit_once('.').map_or("", |(group, _)| group);
    let needed = parts_of(group).iter().any(|(part, _)| part == path);
    let path = if needed { group } else { path };
    Ok(Changes { steps: vec![(path.to_owned(), None)], said: format!("{} taken out", phrase(path)) })
}
