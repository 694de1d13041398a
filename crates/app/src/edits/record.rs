//! What people on site write in place of a statement of a paper, or in answer to its questions.

use super::Changes;
use crate::opening::Open;
use crate::refusal::Refusal;
use crate::views::{Edit, RecordGiven};

/// Writes a text under the name of its statement; an empty one is taken out.
pub(super) fn set(open: &Open, given: &RecordGiven) -> Result<Changes, Refusal> {
    let RecordGiven { name, text } = given;
    let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_');
    if name.is_empty() || !name.chars().all(plain) {
        return Err(Refusal::new(
            "no-such-record",
            format!("No statement is called `{name}`"),
            "Open the papers again, and write it there",
        ));
    }
    let group = format!("record.{name}");
    let text = text.trim();
    if text.is_empty() {
        if !open.said.has(&group) {
            return Err(Refusal::new("not-said", "Nothing is written there yet", "Nothing needs to be taken out"));
        }
        return Ok(Changes { steps: vec![(group, None)], said: format!("Record {name} taken out") });
    }
    Ok(Changes { steps: vec![(format!("{group}.text"), Some(quoted(text)))], said: format!("Record {name}") })
}

/// Whether an edit has to do with putting up only, so that the roof need not be built anew.
pub(super) fn leaves_the_roof(edit: &Edit) -> bool {
    match edit {
        Edit::Record(_) => true,
        Edit::Set { path, .. } | Edit::Remove { path } => crate::siting::is_about_site(path),
        _ => false,
    }
}

/// A text as TOML writes it in one line, whatever stands in it.
fn quoted(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\t' => out.push(' '),
            // Signs that nobody sees: a job file has none.
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out.push('"');
    out
}
