//! A line of the buying list.

use job::Per;
use serde::{Deserialize, Serialize};

/// Something to buy.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Line {
    /// Its word: the name of its price in a job. Stays the same from version to version.
    pub item: String,
    /// What it is, in words.
    pub what: String,
    /// Its size, in words; empty when it has none.
    pub size: String,
    /// How many or how much, in `unit`.
    pub quantity: f64,
    /// What the quantity counts.
    #[serde(with = "per_word")]
    pub unit: Per,
    /// Weight of all of it; 0 when it is not known.
    pub kg: f64,
    /// How it was counted, in words.
    pub counted: String,
    /// Where the rule is from.
    pub source: String,
    /// How the rule was come by, in words.
    pub standing: String,
    /// How sure it is.
    pub kind: LineKind,
}

/// How sure a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LineKind {
    /// Counted.
    Counted,
    /// What is counted times what habit puts in each.
    Allowance,
    /// Wanted only if it is chosen: its price is not missed, and its sum is kept apart.
    ToChoose,
}

/// How a [`Per`] is written: its word.
pub mod per_word {
    use job::Per;
    use serde::{Deserialize, Deserializer, Serializer, de::Error};

    /// Writes its word.
    ///
    /// # Errors
    /// Those of the serializer.
    pub fn serialize<S: Serializer>(per: &Per, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(per.word())
    }

    /// Reads its word.
    ///
    /// # Errors
    /// A word that is none of them.
    pub fn deserialize<'d, D: Deserializer<'d>>(deserializer: D) -> Result<Per, D::Error> {
        let word = String::deserialize(deserializer)?;
        let found = Per::ALL.iter().find(|(name, _)| *name == word);
        found.map(|(_, per)| *per).ok_or_else(|| D::Error::custom(format!("`{word}` is not what a price can be of")))
    }
}
