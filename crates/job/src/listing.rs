//! The keys of a job file for whoever shows them, and what a file says for them.

use crate::example::preset_toml;
use crate::keys::{self, GROUPS, Key, Kind, Preset, keys};
use toml_edit::{DocumentMut, Item, TableLike, Value};

/// A key as it is shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// Where it stands, with dots; `*` stands for the letter of a wall or a name of the user's own.
    pub path: &'static str,
    /// What it means, a phrase.
    pub meaning: &'static str,
    /// The words to choose from, if it is a choice.
    pub choices: Vec<&'static str>,
    /// What holds when it is left out.
    pub otherwise: Otherwise,
}

/// What holds when a key is left out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Otherwise {
    /// This value, as it may be typed.
    Value(String),
    /// What these words say.
    Words(&'static str),
    /// Its group is not there. An example, as written in a file.
    NoGroup(&'static str),
    /// It may not be left out.
    Needed,
}

/// Every key, in the order of a well-kept file.
pub fn listed() -> impl Iterator<Item = Listed> {
    keys().map(of_key)
}

/// What a group of keys is about, a phrase.
#[must_use]
pub fn group_meaning(group: &str) -> Option<&'static str> {
    GROUPS.iter().find(|(path, _)| *path == group).map(|(_, meaning)| *meaning)
}

/// The keys directly in a group without which it can't be: path and example, as written in a file.
#[must_use]
pub fn parts_of(group: &str) -> Vec<(String, &'static str)> {
    keys::parts(group).map(|(word, example)| (keys::join(group, word), example)).collect()
}

fn of_key(key: &'static Key) -> Listed {
    let choices = match key.kind {
        Kind::Word(words) => words(),
        Kind::Flag => vec!["true", "false"],
        _ => Vec::new(),
    };
    let otherwise = match key.preset {
        Preset::Required(_) => Otherwise::Needed,
        Preset::Part(example) => Otherwise::NoGroup(example),
        // What a flag or a number is without being said can be typed; other words can't.
        Preset::Otherwise(words, _) if choices.contains(&words) || words.parse::<f64>().is_ok() => {
            Otherwise::Value(words.to_owned())
        }
        Preset::Otherwise(words, _) => Otherwise::Words(words),
        Preset::Word(word) => Otherwise::Value(word.to_owned()),
        preset => Otherwise::Value(preset_toml(preset)),
    };
    Listed { path: key.path, meaning: key.meaning, choices, otherwise }
}

/// What a file says.
#[derive(Debug, Default)]
pub struct Said(DocumentMut);

impl Said {
    /// What a text says; nothing when it can't be read.
    #[must_use]
    pub fn of(text: &str) -> Self {
        Self(text.parse().unwrap_or_default())
    }

    /// Whether a key or group is there.
    #[must_use]
    pub fn has(&self, path: &str) -> bool {
        self.item(path).is_some()
    }

    /// The value of a key as it may be typed: texts without their quotes.
    #[must_use]
    pub fn value(&self, path: &str) -> Option<String> {
        match self.item(path)? {
            Item::Value(Value::String(text)) => Some(text.value().clone()),
            Item::Value(value) => Some(value.clone().decorated("", "").to_string()),
            _ => None,
        }
    }

    /// The names in a group, in the order of the file.
    #[must_use]
    pub fn names(&self, group: &str) -> Vec<String> {
        let table = self.item(group).and_then(Item::as_table_like);
        table.map(|table| table.iter().map(|(name, _)| name.to_owned()).collect()).unwrap_or_default()
    }

    fn item(&self, path: &str) -> Option<&Item> {
        let (group, word) = path.rsplit_once('.').unwrap_or(("", path));
        let mut table: &dyn TableLike = self.0.as_table();
        for word in group.split('.').filter(|word| !word.is_empty()) {
            table = table.get(word)?.as_table_like()?;
        }
        table.get(word)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "format = 1\ntitle = \"Shed\"\n[roof]\npitch = 40 # steep\nwalls = { B = { gable = true } }\n[timber.rafter]\nsize = [47, 150]\n";

    #[test]
    fn what_a_file_says_can_be_typed_back() {
        let said = Said::of(TEXT);
        assert_eq!(said.value("title").as_deref(), Some("Shed"));
        assert_eq!(said.value("roof.pitch").as_deref(), Some("40"));
        assert_eq!(said.value("timber.rafter.size").as_deref(), Some("[47, 150]"));
        assert_eq!(said.value("roof.walls.B.gable").as_deref(), Some("true"));
        assert_eq!(said.names("roof.walls"), ["B"]);
        assert!(said.has("timber.rafter") && !said.has("timber.hip") && !said.has("roof.pitch.x"));
        assert!(Said::of("= nonsense").value("title").is_none());
    }

    #[test]
    fn defaults_that_can_be_typed_make_the_same_job() {
        let mut text = "format = 1\ntitle = \"Shed\"\n[plan]\ncorners = [[0, 0], [6000, 0], [6000, 4000], [0, 4000]]\n[roof]\npitch = 40\n".to_owned();
        let plain = crate::read(&text).unwrap();
        let mut set = 0;
        for key in listed().filter(|key| !key.path.contains('*') && !key.path.starts_with("plan")) {
            if let Otherwise::Value(value) = &key.otherwise
                && parts_of(key.path.rsplit_once('.').map_or("", |(group, _)| group)).is_empty()
            {
                text = crate::edit::set(&text, key.path, value).unwrap_or_else(|e| panic!("{}: {e}", key.path));
                set += 1;
            }
        }
        assert!(set > 20, "{set}");
        assert_eq!(crate::read(&text).unwrap(), plain);
    }
}
