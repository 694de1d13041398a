//! How long loads last and how damp wood is.

use crate::eurocode::wood::Wood;
use serde::{Deserialize, Serialize};

/// How long a load lasts (EN 1995-1-1 table 2.1), longest first, so that the greatest of several is the shortest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Duration {
    /// More than ten years: own weight.
    Permanent,
    /// Half a year to ten years: storage.
    Long,
    /// A week to half a year: people in rooms.
    Medium,
    /// Less than a week.
    Short,
    /// Wind and impact.
    Instant,
}

impl Duration {
    /// From the longest to the shortest.
    pub const ALL: [Self; 5] = [Self::Permanent, Self::Long, Self::Medium, Self::Short, Self::Instant];

    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Permanent => "permanent",
            Self::Long => "long-term",
            Self::Medium => "medium-term",
            Self::Short => "short-term",
            Self::Instant => "instantaneous",
        }
    }
}

/// How damp the wood becomes (EN 1995-1-1, 2.3.1.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ServiceClass {
    /// Inside the insulation of a heated building.
    One,
    /// Under cover: a cold, ventilated loft.
    Two,
    /// Open to the weather.
    Three,
}

impl ServiceClass {
    /// From dry to wet.
    pub const ALL: [Self; 3] = [Self::One, Self::Two, Self::Three];

    /// The number of the code.
    #[must_use]
    pub const fn number(self) -> u8 {
        match self {
            Self::One => 1,
            Self::Two => 2,
            Self::Three => 3,
        }
    }
}

/// The class of the same letter (C when none is given) whose number is closest; the weaker of two as close.
pub(super) fn nearest_class<'a>(asked: &str, woods: &'a [Wood]) -> Option<&'a Wood> {
    let (letter, number) = parts(asked)?;
    woods
        .iter()
        .filter_map(|wood| {
            let (of, is) = parts(&wood.class)?;
            (of == letter).then_some((is.abs_diff(number), wood))
        })
        .min_by_key(|(off, _)| *off)
        .map(|(_, wood)| wood)
}

/// `C24` as its letter and number; `24` as C and 24.
fn parts(name: &str) -> Option<(char, u32)> {
    let mut rest = name.trim().chars();
    let first = rest.next()?;
    if first.is_ascii_digit() {
        return Some(('C', name.trim().parse().ok()?));
    }
    Some((first.to_ascii_uppercase(), rest.as_str().trim().parse().ok()?))
}
