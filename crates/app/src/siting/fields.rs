//! Keys of the job that are typed in at the place that they bear upon.

use crate::opening::Open;
use crate::views::{SiteField, SiteForm};
use crate::wording::Writing;
use crate::wording::capital;
use job::listing::{Otherwise, listed};

/// A key, what it is called here, and how it is typed.
pub(super) type Asked = (&'static str, &'static str, SiteForm);

/// The fields of some keys.
pub(super) fn of(open: &Open, asked: &[Asked], writing: &Writing) -> Vec<SiteField> {
    asked.iter().map(|(path, label, form)| field(open, path, label, *form, writing)).collect()
}

fn field(open: &Open, path: &str, label: &str, form: SiteForm, writing: &Writing) -> SiteField {
    let key = listed().find(|key| key.path == path);
    let written = open.said.value(path);
    let (usual, hint) = match key.as_ref().map(|key| &key.otherwise) {
        Some(Otherwise::Value(value)) => (value.clone(), ""),
        Some(Otherwise::Words(words)) => (String::new(), *words),
        _ => (String::new(), ""),
    };
    let choices = key.map(|key| key.choices).unwrap_or_default();
    let shown = |word: &&str| {
        let text = match *word {
            "true" => "yes".to_owned(),
            "false" => "no".to_owned(),
            word => word.replace('-', " "),
        };
        ((*word).to_owned(), capital(&writing.say(&text)))
    };
    let said = written.is_some();
    SiteField {
        path: path.to_owned(),
        label: writing.say_first(label),
        hint: if said { String::new() } else { writing.say_first(hint) },
        value: written.unwrap_or(usual),
        said,
        form,
        choices: choices.iter().map(shown).collect(),
    }
}
