//! The commented example: every key with its default.

use crate::keys::{self, GROUPS, Key, Kind, Preset, keys, parts, with_names};
use crate::limits::{LONGEST_STATEMENT, PLACE, SECTION};

/// Width of comments, characters.
const WIDTH: usize = 88;

/// A whole job file with every key, its meaning, what may be written and its
/// default. Keys without a default are commented out; those that must be
/// written have a value of our own invention.
///
/// Made from the table of keys that reading goes by, so the two agree.
///
/// ```
/// let job = job::read(job::defaults_toml())?;
/// assert_eq!(job.timber.rafter.centres, 400.0);
/// # Ok::<(), job::Faults>(())
/// ```
#[must_use]
pub fn defaults_toml() -> String {
    let mut text = String::new();
    comment(
        &mut text,
        "A job with every key. Lengths are millimetres, or texts with a unit: \"8.4\u{a0}m\", \"27'\u{a0}6\u{a0}1/2\\\"\".",
    );
    comment(
        &mut text,
        "Pitches are degrees, or texts: \"40°\", \"6:12\". Keys that stand at their default may be left out.",
    );
    let mut done = "";
    for key in keys() {
        let group = key.path.rsplit_once('.').map_or("", |(group, _)| group);
        if group != done {
            open_groups(&mut text, done, group);
            done = group;
        }
        one_key(&mut text, key, group);
    }
    text
}

/// Writes the heads of groups down to the one that follows.
fn open_groups(text: &mut String, done: &str, group: &str) {
    let inside = |path: &str, of: &str| of == path || of.strip_prefix(path).is_some_and(|rest| rest.starts_with('.'));
    // What goes by a name stands under the head of all such names.
    for (path, meaning) in GROUPS.iter().filter(|(path, _)| !path.contains('*')) {
        if inside(path, group) && !inside(path, done) {
            text.push_str(&format!("\n[{path}]\n"));
            comment(text, &format!("{meaning}."));
        }
    }
}

fn one_key(text: &mut String, key: &Key, group: &str) {
    text.push('\n');
    let (value, default) = match key.preset {
        Preset::Required(example) => (example.to_owned(), "no default".to_owned()),
        Preset::Part(example) => (example.to_owned(), "default: none".to_owned()),
        Preset::Otherwise(otherwise, example) => (example.to_owned(), format!("default: {}", unbroken(otherwise))),
        other => {
            let value = preset_toml(other);
            let default = format!("default: {}", unbroken(&value));
            (value, default)
        }
    };
    let allowed = allowed(&key.kind).replace(" mm", "\u{a0}mm");
    comment(text, &format!("{}. {allowed}; {default}.", key.meaning));
    let named = key.path.contains('*');
    let head = key.path.split_once(".*").map_or(group, |(head, _)| head);
    let path = with_names(key.path);
    let word = if head.is_empty() { path.as_str() } else { path.get(head.len() + 1..).unwrap_or_default() };
    let off = named || matches!(key.preset, Preset::Otherwise(..)) || parts(group).next().is_some();
    text.push_str(&format!("{}{word} = {value}\n", if off { "# " } else { "" }));
}

/// The default of a key as TOML, or its example.
pub(crate) fn key_toml(path: &str) -> String {
    keys::find(path).map_or_else(String::new, |key| preset_toml(key.preset))
}

/// A default as TOML, or the example of a key without one.
pub(crate) fn preset_toml(preset: Preset) -> String {
    match preset {
        Preset::Required(example) | Preset::Part(example) | Preset::Otherwise(_, example) => example.to_owned(),
        Preset::Number(number) => number.to_string(),
        Preset::Pair([a, b]) => format!("[{a}, {b}]"),
        Preset::Word(word) => format!("\"{word}\""),
        Preset::Flag(flag) => flag.to_string(),
        Preset::Empty => "[]".to_owned(),
    }
}

/// What may be written, a phrase that starts with a capital.
pub(crate) fn allowed(kind: &Kind) -> String {
    match kind {
        Kind::Format => keys::FORMAT.to_string(),
        Kind::Text => "A text on one line".to_owned(),
        Kind::Statement => format!("A text of up to {LONGEST_STATEMENT} characters"),
        Kind::Date => "A day, as 2027-03-01".to_owned(),
        Kind::Dates => "Days in brackets, as [2027-03-26]".to_owned(),
        Kind::Months(limits, unit) => {
            format!("A number from {} to {} {unit}, or twelve in brackets", limits.least, limits.most)
        }
        Kind::Folder => "Small letters, digits and dashes".to_owned(),
        Kind::Length(limits) => format!("A length from {} mm to {} mm", limits.least, limits.most),
        Kind::Lengths(limits) => format!("Lengths from {} mm to {} mm, rising", limits.least, limits.most),
        Kind::Sides(limits) => format!("Lengths from {} mm to {} mm, one for each wall", limits.least, limits.most),
        Kind::Angle(limits) => format!("An angle from {}° to {}°", limits.least, limits.most),
        Kind::Letters => "Letters of corners".to_owned(),
        Kind::Count(limits) => format!("A whole number from {} to {}", limits.least, limits.most),
        Kind::Figures(limits, unit) => {
            format!("Numbers from {} to {} {unit}", limits.least, limits.most).trim_end().to_owned()
        }
        Kind::Figure(limits, unit) => {
            format!("A number from {} to {} {unit}", limits.least, limits.most).trim_end().to_owned()
        }
        Kind::Wall => "The letter of a wall".to_owned(),
        Kind::Point => format!("A place [x, y], within {} m", PLACE.most / 1000.0),
        Kind::Pitch(limits) => format!("A pitch from {}° to {}°", limits.least, limits.most),
        Kind::Word(words) => keys::either(&words()),
        Kind::Flag => "true or false".to_owned(),
        Kind::Size => format!("Two lengths, each from {} mm to {} mm", SECTION.least, SECTION.most),
        Kind::Corners => format!("Corners [x, y], at least three, within {} m", PLACE.most / 1000.0),
        Kind::Loops => "Lists of corners".to_owned(),
    }
}

/// The text with blanks that comments are not broken at.
fn unbroken(text: &str) -> String {
    text.replace(' ', "\u{a0}")
}

/// Writes a comment, broken to the width.
pub(crate) fn comment(text: &mut String, words: &str) {
    let mut line = "#".to_owned();
    for word in words.split(' ') {
        if line.len() > 1 && line.chars().count() + 1 + word.chars().count() > WIDTH {
            text.push_str(&line);
            text.push('\n');
            line = "#".to_owned();
        }
        line.push(' ');
        line.push_str(&word.replace('\u{a0}', " "));
    }
    text.push_str(&line);
    text.push('\n');
}
