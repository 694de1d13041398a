//! A price of a list.

use crate::buying::per_word;
use job::{Per, Section, StrengthClass};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};

/// A price.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PriceRow {
    /// Line of the list that it stands on, from 1.
    pub line: u32,
    /// Word of the item; empty for timber.
    pub item: String,
    /// The timber, when it is timber.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub timber: Option<TimberRow>,
    /// In the currency of the region.
    pub price: f64,
    /// What it is a price of.
    #[serde(with = "per_word")]
    pub per: Per,
    /// When it was asked, e.g. `2026-11-02`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub dated: Option<String>,
}

/// Timber that has a price, mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct TimberRow {
    /// The smaller side.
    pub thickness_mm: f64,
    /// The larger.
    pub depth_mm: f64,
    /// Length; none when any is sold by the metre.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub length_mm: Option<f64>,
    /// Strength class, when it is sold by one.
    #[serde(
        skip_serializing_if = "Option::is_none",
        default,
        serialize_with = "class_out",
        deserialize_with = "class_in"
    )]
    pub class: Option<StrengthClass>,
    /// Long and clean.
    pub clean: bool,
}

impl TimberRow {
    /// Whether both are of one timber, whatever their lengths.
    #[must_use]
    pub fn same_timber(&self, other: &Self) -> bool {
        self.is_of(Section { thickness: other.thickness_mm, depth: other.depth_mm }, other.class, other.clean)
    }

    /// Whether it is of a timber.
    #[must_use]
    pub fn is_of(&self, size: Section, class: Option<StrengthClass>, clean: bool) -> bool {
        let near = |a: f64, b: f64| (a - b).abs() < SAME;
        near(self.thickness_mm, size.thickness)
            && near(self.depth_mm, size.depth)
            && self.class == class
            && self.clean == clean
    }

    /// In words: `47 × 150 C24`.
    #[must_use]
    pub fn words(&self) -> String {
        let class = self.class.map_or(String::new(), |class| format!(" {}", class.name()));
        let clean = if self.clean { " clean" } else { "" };
        format!("{} × {}{class}{clean}", self.thickness_mm, self.depth_mm)
    }
}

/// Sizes nearer than this are one size, mm: finer than timber is sawn or a length is written.
pub(super) const SAME: f64 = 0.01;

/// The class of a name, as stamped or in small letters.
pub(super) fn class_of(name: &str) -> Option<StrengthClass> {
    StrengthClass::ALL.iter().find(|(known, _)| known.eq_ignore_ascii_case(name)).map(|(_, class)| *class)
}

#[expect(clippy::ref_option, reason = "serde hands it over so")]
fn class_out<S: Serializer>(class: &Option<StrengthClass>, serializer: S) -> Result<S::Ok, S::Error> {
    class.map(StrengthClass::name).serialize(serializer)
}

fn class_in<'d, D: Deserializer<'d>>(deserializer: D) -> Result<Option<StrengthClass>, D::Error> {
    let Some(name) = Option::<String>::deserialize(deserializer)? else { return Ok(None) };
    class_of(&name).map(Some).ok_or_else(|| D::Error::custom(format!("`{name}` is not a strength class")))
}
