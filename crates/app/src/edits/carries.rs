//! What the roof carries and how strong its timber is, said all at once: a roof with half of its loads has no strength.

use super::{Changes, refused};
use crate::entries::phrase;
use crate::opening::Open;
use crate::refusal::Refusal;
use crate::views::KeyGiven;
use job::edit::EditError;
use job::listing::{Listed, listed, parts_of};

/// The group of what the roof carries.
pub(super) const LOADS: &str = "loads";
/// The group of how strong its timber is.
const STRENGTH: &str = "strength";

/// Sets the keys. What is left empty is taken out, so that its usual value holds.
pub(super) fn set(open: &Open, values: &[KeyGiven]) -> Result<Changes, Refusal> {
    let mut steps: Vec<(String, Option<String>)> = Vec::with_capacity(values.len());
    for KeyGiven { path, value } in values {
        let group = path.rsplit_once('.').map_or("", |(group, _)| group);
        if known(path).is_none() || ![LOADS, STRENGTH].contains(&group) {
            return Err(Refusal::new(
                "no-such-key",
                format!("`{path}` is not a key of loads or strength"),
                "Choose one of the entries that are listed",
            ));
        }
        let value = value.trim();
        match (value.is_empty(), open.said.has(path)) {
            (false, _) => steps.push((path.clone(), Some(value.to_owned()))),
            (true, true) => steps.push((path.clone(), None)),
            (true, false) => {}
        }
    }
    missing(open, &steps)?;
    faulty(open, &steps)?;
    let said = match steps.as_slice() {
        [(path, Some(value))] => format!("{} {value}", phrase(path)),
        _ => "Loads and strength".to_owned(),
    };
    Ok(Changes { steps, said })
}

fn known(path: &str) -> Option<Listed> {
    listed().find(|key| key.path == path)
}

/// The first key that loads can't be without and that nobody says.
fn missing(open: &Open, steps: &[(String, Option<String>)]) -> Result<(), Refusal> {
    let says = |path: &str| match steps.iter().find(|(given, _)| given == path) {
        Some((_, value)) => value.is_some(),
        None => open.said.has(path),
    };
    let parts = parts_of(LOADS);
    // Strength by itself can be said before the loads are.
    if !open.said.has(LOADS) && !steps.iter().any(|(path, _)| path.starts_with("loads.")) {
        return Ok(());
    }
    match parts.iter().find(|(path, _)| !says(path)) {
        None => Ok(()),
        Some((path, example)) => Err(Refusal {
            key: Some(path.clone()),
            ..Refusal::new(
                "load-missing",
                format!("{} is not written", phrase(path)),
                format!("Write it, for example {}: without it nothing can be checked", example.trim_matches('"')),
            )
        }),
    }
}

/// The first key whose value can't be read, found by trying each with the others as they are in an example.
fn faulty(open: &Open, steps: &[(String, Option<String>)]) -> Result<(), Refusal> {
    let tried = |steps: &[(String, Option<String>)]| {
        let each = steps.iter().map(|(path, value)| (path.as_str(), value.as_deref()));
        job::edit::set_all(&open.text, each)
    };
    let Err(EditError::Faults(_)) = tried(steps) else { return Ok(()) };
    for (path, value) in steps {
        let mut alone: Vec<(String, Option<String>)> = parts_of(LOADS)
            .into_iter()
            .filter(|(part, _)| part != path)
            .map(|(part, example)| (part, Some(example.to_owned())))
            .collect();
        alone.push((path.clone(), value.clone()));
        if let Err(error) = tried(&alone) {
            let fault = refused(&error);
            // The line is that of a text which is not there; the key says the place.
            let what = match fault.faults.as_slice() {
                [only] => only.what.clone(),
                _ => fault.what.clone(),
            };
            return Err(Refusal { key: Some(path.clone()), what, faults: Vec::new(), ..fault });
        }
    }
    Ok(())
}
