//! The JSON Schema of the job file, for editors that complete and check.

mod shape;

use crate::example::{allowed, preset_toml};
use crate::keys::{GROUPS, Key, Kind, Names, Preset, children, join, keys, named, parts};
use serde_json::{Map, Value, json};

/// The JSON Schema (2020-12) of a job file.
///
/// It knows the keys, their types, ranges, words and defaults. Rules that join
/// keys, and those on the shape of the plan, only [`crate::read`] knows.
#[must_use]
pub fn schema() -> Value {
    let mut schema = schemars::schema_for!(shape::JobFile).to_value();
    annotate(&mut schema, "");
    for (group, meaning) in GROUPS {
        annotate(&mut schema, group);
        if let Some(property) = property(&mut schema, group) {
            property.insert("description".to_owned(), json!(format!("{meaning}.")));
        }
        if let Some(names) = named(group) {
            annotate(&mut schema, &join(group, "*"));
            let pattern = match names {
                Names::Walls => "^[A-Z]+$",
                Names::Pairs => "^[A-Z]+ *- *[A-Z]+$",
                Names::Own => "^[A-Za-z0-9_-]+$",
            };
            if let Some(property) = property(&mut schema, group) {
                property.insert("propertyNames".to_owned(), json!({ "pattern": pattern }));
            }
        }
    }
    for key in keys() {
        if let Some(property) = property(&mut schema, key.path) {
            describe(property, key);
        }
    }
    corners_or_sides(&mut schema);
    schema
}

/// The plan is given by its corners or by what was measured.
fn corners_or_sides(schema: &mut Value) {
    let place = pointer(schema, "plan");
    if let Some(plan) = schema.pointer_mut(&place).and_then(Value::as_object_mut) {
        plan.remove("required");
        plan.insert("oneOf".to_owned(), json!([{ "required": ["corners"] }, { "required": ["sides"] }]));
    }
}

/// Says which keys of a group must be written: always, or as soon as anything
/// else is.
fn annotate(schema: &mut Value, group: &str) {
    // What is named need not be there at all, whatever its keys.
    let must = |path: &str| {
        keys().filter(|key| matches!(key.preset, Preset::Required(_))).any(|key| {
            let inside = key.path.strip_prefix(path);
            inside.is_some_and(|rest| rest.is_empty() || (rest.starts_with('.') && !rest.contains('*')))
        })
    };
    let words = || children(group).into_iter().filter(|word| *word != "*");
    let required: Vec<&str> = words().filter(|word| must(&join(group, word))).collect();
    let together: Vec<&str> = parts(group).map(|(word, _)| word).collect();
    let with: Map<String, Value> = words()
        .map(|word| (word, together.iter().filter(|part| **part != word).collect::<Vec<_>>()))
        .filter(|(_, others)| !others.is_empty())
        .map(|(word, others)| (word.to_owned(), json!(others)))
        .collect();
    let place = pointer(schema, group);
    let Some(object) = schema.pointer_mut(&place).and_then(Value::as_object_mut) else { return };
    object.remove("required");
    if !required.is_empty() {
        object.insert("required".to_owned(), json!(required));
    }
    if !with.is_empty() {
        object.insert("dependentRequired".to_owned(), json!(with));
    }
}

/// Where the schema of a group stands: references are followed.
fn pointer(schema: &Value, group: &str) -> String {
    let mut at = String::new();
    for word in group.split('.').filter(|word| !word.is_empty()) {
        at = if word == "*" { format!("{at}/additionalProperties") } else { format!("{at}/properties/{word}") };
        let reference = schema.pointer(&at).and_then(|value| value.get("$ref")).and_then(Value::as_str);
        if let Some(target) = reference.and_then(|reference| reference.strip_prefix('#')) {
            at = target.to_owned();
        }
    }
    at
}

/// The schema of a key or group in the group that holds it.
fn property<'s>(schema: &'s mut Value, path: &str) -> Option<&'s mut Map<String, Value>> {
    let (group, word) = path.rsplit_once('.').unwrap_or(("", path));
    let group = pointer(schema, group);
    let place = if word == "*" { "additionalProperties".to_owned() } else { format!("properties/{word}") };
    schema.pointer_mut(&format!("{group}/{place}"))?.as_object_mut()
}

/// How a day is written.
const DAY: &str = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";

/// Adds meaning, default and range to the schema of a key.
fn describe(property: &mut Map<String, Value>, key: &Key) {
    let default = match key.preset {
        Preset::Otherwise(otherwise, _) => format!(" Default: {otherwise}."),
        _ => String::new(),
    };
    let text = format!("{}. {}.{default}", key.meaning, allowed(&key.kind));
    property.insert("description".to_owned(), json!(text));
    if let Some(default) = default_json(key.preset) {
        property.insert("default".to_owned(), default);
    }
    match key.kind {
        // These bind numbers only; a text with a unit is checked on reading.
        Kind::Length(limits)
        | Kind::Pitch(limits)
        | Kind::Angle(limits)
        | Kind::Count(limits)
        | Kind::Figure(limits, _) => {
            property.insert("minimum".to_owned(), json!(limits.least));
            property.insert("maximum".to_owned(), json!(limits.most));
        }
        Kind::Format => {
            property.insert("const".to_owned(), json!(crate::FORMAT));
        }
        Kind::Folder => {
            property.insert("pattern".to_owned(), json!("^[a-z0-9-]+$"));
        }
        Kind::Text => {
            property.insert("minLength".to_owned(), json!(1));
            property.insert("maxLength".to_owned(), json!(crate::LONGEST_TEXT));
        }
        Kind::Statement => {
            property.insert("minLength".to_owned(), json!(1));
            property.insert("maxLength".to_owned(), json!(crate::LONGEST_STATEMENT));
        }
        Kind::Date => {
            property.insert("pattern".to_owned(), json!(DAY));
        }
        Kind::Dates => {
            property.insert("items".to_owned(), json!({ "type": "string", "pattern": DAY }));
        }
        Kind::Corners => {
            property.insert("minItems".to_owned(), json!(3));
        }
        Kind::Sides(_) => {
            property.insert("minItems".to_owned(), json!(3));
            property.insert("maxItems".to_owned(), json!(geometry::survey::MOST_CORNERS));
        }
        Kind::Letters => {
            property.insert("items".to_owned(), json!({ "type": "string", "pattern": "^[A-Z]+$" }));
        }
        Kind::Wall => {
            property.insert("pattern".to_owned(), json!("^[A-Z]+$"));
        }
        Kind::Word(_)
        | Kind::Flag
        | Kind::Size
        | Kind::Lengths(_)
        | Kind::Figures(..)
        | Kind::Months(..)
        | Kind::Point
        | Kind::Loops => {}
    }
}

/// A default as JSON.
fn default_json(preset: Preset) -> Option<Value> {
    match preset {
        Preset::Required(_) | Preset::Part(_) | Preset::Otherwise(..) => None,
        Preset::Word(word) => Some(json!(word)),
        // Numbers, lists and flags are written alike in TOML and JSON.
        other => serde_json::from_str(&preset_toml(other)).ok(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// All paths of keys in the schema, with `*` for letters.
    fn paths(schema: &Value, group: &str) -> Vec<String> {
        let object = schema.pointer(&pointer(schema, group)).unwrap();
        assert_eq!(object["additionalProperties"].is_object(), named(group).is_some(), "{group}");
        if named(group).is_some() {
            let path = join(group, "*");
            return if keys().any(|key| key.path == path) { vec![path] } else { paths(schema, &path) };
        }
        let words = object["properties"].as_object().unwrap().keys();
        words
            .flat_map(|word| {
                let path = join(group, word);
                if keys().any(|key| key.path == path) { vec![path] } else { paths(schema, &path) }
            })
            .collect()
    }

    #[test]
    fn the_types_and_the_table_have_the_same_keys() {
        let mut in_schema = paths(&schema(), "");
        let mut in_table: Vec<String> = keys().map(|key| key.path.to_owned()).collect();
        in_schema.sort();
        in_table.sort();
        assert_eq!(in_schema, in_table);
    }

    #[test]
    fn the_types_and_the_table_have_the_same_words() {
        let schema = schema();
        for key in keys() {
            let Kind::Word(words) = key.kind else { continue };
            let choices = schema.pointer(&pointer(&schema, key.path)).unwrap();
            let in_schema: Vec<&str> =
                choices["oneOf"].as_array().unwrap().iter().map(|choice| choice["const"].as_str().unwrap()).collect();
            assert_eq!(in_schema, words(), "{}", key.path);
        }
    }

    #[test]
    fn only_keys_without_a_default_are_required() {
        let schema = schema();
        assert_eq!(schema["required"], json!(["format", "title", "plan", "roof"]));
        assert_eq!(schema.pointer(&pointer(&schema, "roof")).unwrap()["required"], json!(["pitch"]));
        assert!(schema.pointer(&pointer(&schema, "timber.rafter")).unwrap().get("required").is_none());
        let at = |group: &str| schema.pointer(&pointer(&schema, group)).unwrap();
        assert_eq!(at("bearings.*")["required"], json!(["from", "to"]));
        assert!(at("bearings").get("required").is_none() && at("roof.walls.*").get("required").is_none());
    }

    #[test]
    fn parts_say_what_they_cannot_do_without() {
        let schema = schema();
        let with = |group: &str| schema.pointer(&pointer(&schema, group)).unwrap()["dependentRequired"].clone();
        assert_eq!(with("timber.purlin"), json!({ "set": ["size"], "up": ["size"] }));
        assert_eq!(with("roof.walls.*.upper"), json!({ "from": ["pitch"], "pitch": ["from"] }));
        assert_eq!(with("timber.binder"), Value::Null);
    }
}
