//! What of a job can be changed key by key.

use crate::overview::Shown;
use crate::views::Entry;
use crate::wording::capital;
use crate::wording::say;
use job::listing::{Listed, Otherwise, Said, listed};

/// The groups that are shown, with what they are called there.
const GROUPS: &[(&str, &str)] = &[
    ("", "Job"),
    ("roof", "Roof"),
    ("roof.eaves", "Eaves"),
    ("roof.eaves.sprocket", "Sprockets"),
    ("roof.verge", "Verges"),
    ("roof.upper", "Second pitch"),
    ("roof.walls.*", "Wall"),
    ("roof.walls.*.upper", "Second pitch of wall"),
    ("timber.rafter", "Rafters"),
    ("timber.hip", "Hips"),
    ("timber.valley", "Valleys"),
    ("timber.ridge", "Ridge boards"),
    ("timber.plate", "Wall plates"),
    ("timber.joint", "Splices"),
    ("timber.purlin", "Purlins"),
    ("timber.strut", "Struts"),
    ("timber.collar", "Collars"),
    ("timber.ceiling_joist", "Ceiling joists"),
    ("timber.binder", "Binders"),
    ("timber.hanger", "Hangers"),
    ("timber.angle_tie", "Angle ties"),
    ("timber.dragon_tie", "Dragon ties"),
    ("timber.ladder", "Gable ladders"),
    ("timber.noggin", "Noggins"),
    ("timber.fascia", "Fascia boards"),
    ("timber.soffit", "Soffit boards"),
    ("timber.fillet", "Tilting fillets"),
    ("timber.barge", "Barge boards"),
    ("timber.lay_board", "Lay boards"),
    ("openings.*", "Opening"),
    ("dormers.*", "Dormer"),
    ("bearings.*", "Bearing"),
    ("bench", "On the bench"),
    ("loads", "Loads"),
    ("strength", "Strength"),
    ("order", "Ordering and sawing"),
    ("covering", "Covering"),
    ("stock.*", "Stock"),
    ("yard.*", "Offcut"),
    ("price.*", "Price of"),
    ("programme", "Programme"),
    ("programme.hours", "Hours of work"),
    ("access", "Access"),
    ("record.*", "Record"),
];

/// Keys that are not for changing by themselves.
const LEFT_OUT: &[&str] = &["format", "region"];

/// The entries, by group.
pub(crate) fn of(shown: &Shown<'_>) -> Vec<Entry> {
    let mut out = Vec::new();
    for key in listed().filter(|key| !LEFT_OUT.contains(&key.path)) {
        let Some(title) = title(group_of(key.path)) else { continue };
        if !key.path.contains('*') {
            out.push(entry(shown, &key, key.path.to_owned(), title.to_owned()));
        }
    }
    // What goes by names comes after, name by name.
    let walls = shown.job.walls.iter().map(|wall| wall.letter.clone()).collect();
    for (group, names) in [
        ("roof.walls", walls),
        ("openings", shown.said.names("openings")),
        ("dormers", shown.said.names("dormers")),
        ("bearings", shown.said.names("bearings")),
        ("stock", shown.said.names("stock")),
    ] {
        for name in names {
            for key in listed().filter(|key| key.path.strip_prefix(group).is_some_and(|rest| rest.starts_with(".*"))) {
                let Some(title) = title(group_of(key.path)) else { continue };
                let path = key.path.replacen('*', &name, 1);
                out.push(entry(shown, &key, path, format!("{title} {name}")));
            }
        }
    }
    out
}

fn entry(shown: &Shown<'_>, key: &Listed, path: String, group: String) -> Entry {
    let written = shown.said.value(&path);
    let label = match (&key.otherwise, &written) {
        (Otherwise::Words(words), None) => format!("{} (now {words})", key.meaning),
        _ => key.meaning.to_owned(),
    };
    Entry {
        group: say(shown.words, &group).into_owned(),
        label: say(shown.words, &label).into_owned(),
        said: written.is_some(),
        value: written.unwrap_or_else(|| match &key.otherwise {
            // A group that is not there has no values yet.
            Otherwise::Value(value) if !misses_its_group(shown.said, &path) => value.clone(),
            _ => String::new(),
        }),
        choices: key.choices.iter().map(|&word| word.to_owned()).collect(),
        path,
    }
}

/// Whether a key belongs to a part of the roof that the job does not have.
fn misses_its_group(said: &Said, path: &str) -> bool {
    let group = group_of(path);
    !job::listing::parts_of(group).is_empty() && !said.has(group)
}

fn group_of(path: &str) -> &str {
    path.rsplit_once('.').map_or("", |(group, _)| group)
}

fn title(group: &str) -> Option<&'static str> {
    GROUPS.iter().find(|(path, _)| *path == group).map(|(_, title)| *title)
}

/// What a path names, a short phrase: `Rafters: centres`, `Wall B: pitch`.
pub(crate) fn phrase(path: &str) -> String {
    let words: Vec<&str> = path.split('.').collect();
    let named = |at: usize| words.get(at).copied().unwrap_or_default();
    // The group with its name taken out, as the table has it.
    let (star, name) = match words.as_slice() {
        ["roof", "walls", name, ..] => (2, *name),
        ["openings" | "dormers" | "bearings" | "stock" | "yard" | "price", name, ..] => (1, *name),
        _ => (usize::MAX, ""),
    };
    let pattern = |upto: usize| {
        let part = |k: usize| if k == star { "*" } else { named(k) };
        (0..upto).map(part).collect::<Vec<_>>().join(".")
    };
    let called = |title: &str| if name.is_empty() { title.to_owned() } else { format!("{title} {name}") };
    if let Some(title) = title(&pattern(words.len())).filter(|_| !path.is_empty()) {
        return called(title);
    }
    let last = named(words.len().saturating_sub(1)).replace('_', " ");
    match title(&pattern(words.len().saturating_sub(1))) {
        Some("Job") | None => capital(&last),
        Some(title) => format!("{}: {last}", called(title)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_are_said_in_words() {
        assert_eq!(phrase("timber.rafter.centres"), "Rafters: centres");
        assert_eq!(phrase("roof.walls.B.half_hip"), "Wall B: half hip");
        assert_eq!(phrase("roof.walls.B.upper"), "Second pitch of wall B");
        assert_eq!(phrase("openings.landing.width"), "Opening landing: width");
        assert_eq!(phrase("openings.landing"), "Opening landing");
        assert_eq!(phrase("title"), "Title");
        assert_eq!(phrase(""), "");
    }

    #[test]
    fn every_key_but_those_of_plan_and_ticks_has_a_group_to_be_shown_in() {
        for key in listed().filter(|key| !key.path.starts_with("plan.") && !key.path.starts_with("done.")) {
            assert!(title(group_of(key.path)).is_some(), "{}", key.path);
        }
    }
}
