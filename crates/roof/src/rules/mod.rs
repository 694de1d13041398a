//! The rules of a region as data: figures of tables and habits of the trade,
//! each with a sentence to quote, its source and how it was come by. They are
//! read from `regions/*/rules.toml`, which is compiled in.

mod id;

pub use id::Id;

use serde::Deserialize;
use std::collections::BTreeMap;
use std::fmt;
use std::sync::OnceLock;

/// The rules of the United Kingdom.
const UK: &str = include_str!("../../../../regions/uk/rules.toml");

/// All rules of a region.
#[derive(Clone, Debug, PartialEq)]
pub struct Rules {
    /// In the order of [`Id::ALL`].
    rules: Vec<Rule>,
}

/// One rule.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// The figure, in `unit`.
    pub value: f64,
    /// What the figure counts.
    pub unit: Unit,
    /// One sentence to quote.
    pub text: String,
    /// Title and table or clause.
    pub source: String,
    /// How the figure was come by.
    pub standing: Standing,
}

/// What the figure of a rule counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unit {
    /// Millimetres.
    Mm,
    /// Degrees.
    Deg,
    /// A share of 1.
    Share,
    /// A number of things.
    Count,
    /// Times the depth of the timber.
    #[serde(rename = "x-depth")]
    TimesDepth,
    /// Times the width of the timber.
    #[serde(rename = "x-width")]
    TimesWidth,
    /// Times the diameter of the bolt.
    #[serde(rename = "x-diameter")]
    TimesDiameter,
    /// Times the depth of the indent.
    #[serde(rename = "x-indent")]
    TimesIndent,
    /// A rule without a figure; its value is 1.
    Holds,
}

/// How a figure was come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Seen in the source, or in a named reproduction of it.
    Published,
    /// The source is named, the value is from memory.
    Memory,
    /// From first principles.
    Derived,
    /// A habit of the trade with no published source found.
    CommonPractice,
}

impl fmt::Display for Standing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Published => "published",
            Self::Memory => "from memory",
            Self::Derived => "derived",
            Self::CommonPractice => "common practice",
        })
    }
}

impl Rule {
    /// The rule in brackets, for the end of a notice:
    /// `(rule: A purlin is scarfed near a strut; NHBC Standards 7.2.7, published)`.
    #[must_use]
    pub fn quote(&self) -> String {
        format!("(rule: {}; {}, {})", self.text.trim_end_matches('.'), self.source, self.standing)
    }
}

impl Rules {
    fn read(text: &str) -> Result<Self, String> {
        let mut found: BTreeMap<Id, Rule> = toml::from_str(text).map_err(|e| e.to_string())?;
        let rules = Id::ALL
            .iter()
            .map(|id| found.remove(id).ok_or_else(|| format!("rule {id:?} is missing")))
            .collect::<Result<_, _>>()?;
        Ok(Self { rules })
    }

    /// A rule.
    #[must_use]
    pub fn get(&self, id: Id) -> &Rule {
        &self.rules[id as usize]
    }

    /// Its figure alone, in the unit of the rule.
    #[must_use]
    pub fn value(&self, id: Id) -> f64 {
        self.get(id).value
    }
}

/// The rules of a region, as named by [`job::Job::region`]. A region without
/// rules of its own has those of the United Kingdom (`uk`), the only ones so
/// far.
///
/// # Panics
/// Never with the files as they are: they are compiled in, and a test reads
/// them. No job can change that.
#[must_use]
pub fn of(_region: &str) -> &'static Rules {
    static RULES: OnceLock<Rules> = OnceLock::new();
    RULES.get_or_init(|| Rules::read(UK).expect("the rules compiled in are complete"))
}

#[cfg(test)]
mod tests {
    use super::{Id, Rules, UK, Unit, of};

    #[test]
    fn every_id_has_an_entry_and_every_entry_an_id() {
        // An entry without an id is a fault of reading: Id has no such name.
        let rules = Rules::read(UK).expect("the file is read");
        assert_eq!(rules.rules.len(), Id::ALL.len());
        let extra = format!(
            "{UK}\n[no-such-rule]\nvalue = 1\nunit = \"holds\"\ntext = \"\"\nsource = \"\"\nstanding = \"derived\"\n"
        );
        assert!(Rules::read(&extra).is_err_and(|e| e.contains("no-such-rule")));
        let less: Vec<&str> = UK.split("\n[").filter(|entry| !entry.starts_with("angle-tie]")).collect();
        assert!(Rules::read(&less.join("\n[")).is_err_and(|e| e.contains("AngleTie")));
        for (k, id) in Id::ALL.iter().enumerate() {
            assert_eq!(*id as usize, k);
        }
    }

    #[test]
    fn the_sentence_says_the_figure() {
        for id in Id::ALL {
            let rule = of("uk").get(*id);
            assert!(rule.text.ends_with('.') && !rule.source.is_empty(), "{id:?}");
            if !matches!(rule.unit, Unit::Holds | Unit::Share) {
                assert!(rule.text.contains(&rule.value.to_string()), "{id:?}: {} not in {}", rule.value, rule.text);
            }
            if rule.unit == Unit::Share {
                assert!(rule.value > 0.0 && rule.value < 1.0, "{id:?}");
            }
        }
    }

    #[test]
    fn figures_as_published() {
        // reference/geometry.md section 7 (Tredgold): 200 mm deep softwood needs 2400, 1200, 800 mm.
        let rules = of("uk");
        let scarf = |id| rules.value(id) * 200.0;
        assert_eq!(
            [Id::ScarfSoftwoodPlain, Id::ScarfSoftwoodBolted, Id::ScarfSoftwoodIndented].map(scarf),
            [2400.0, 1200.0, 800.0]
        );
        assert_eq!(rules.value(Id::BirdsmouthThird), 1.0 / 3.0);
    }

    #[test]
    fn a_quote_names_source_and_standing() {
        assert_eq!(
            of("nowhere").get(Id::PurlinScarfNearStrut).quote(),
            "(rule: A purlin is scarfed near a strut; NHBC Standards 7.2.7, published)"
        );
    }
}
