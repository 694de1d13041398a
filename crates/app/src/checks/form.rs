//! What is asked for before strength can be checked.

use crate::views::{StrengthField, StrengthForm};
use crate::wording::Writing;
use crate::wording::capital;
use job::listing::{Otherwise, Said, listed};

const WORDS: &str = "The job does not say yet what the roof carries. Write these figures, and every timber and joint \
                     is checked.";

/// The figures without which nothing can be checked: path, what it is, where it is to be had from.
const FIELDS: [(&str, &str, &str); 5] = [
    ("loads.covering", "Covering", "What the slopes are covered with."),
    ("loads.snow_zone", "Snow zone, 1 to 5", "From the snow map of the region."),
    ("loads.altitude", "Height of the site above the sea, m", "From a map, to about 10 m."),
    (
        "loads.wind",
        "Peak wind pressure at the ridge, kN/m²",
        "From whoever worked it out for this site. On houses it is mostly 0.5 to 2.",
    ),
    ("strength.class", "Strength class", "As stamped on the timber."),
];

/// The form.
pub(super) fn of(said: &Said, writing: &Writing) -> StrengthForm {
    let field = |(path, label, hint): &(&str, &str, &str)| {
        let key = listed().find(|key| key.path == *path);
        let usual = match key.as_ref().map(|key| &key.otherwise) {
            Some(Otherwise::Value(value)) => value.clone(),
            _ => String::new(),
        };
        let choices = key.map(|key| key.choices).unwrap_or_default();
        let shown = |word: &&str| ((*word).to_owned(), capital(&writing.say(&word.replace('-', " "))));
        StrengthField {
            path: (*path).to_owned(),
            label: writing.say(label),
            hint: writing.say(hint),
            value: said.value(path).unwrap_or(usual),
            choices: choices.iter().map(shown).collect(),
        }
    };
    StrengthForm { words: writing.say(WORDS), fields: FIELDS.iter().map(field).collect() }
}
