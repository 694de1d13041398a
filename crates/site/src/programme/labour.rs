//! Hours of work and lost weather of a region: `regions/<region>/labour.toml`.

use super::ProgrammeFault;
use crate::access::Basis;
use job::{Covering, WorkItem};
use roof::rules::Standing;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// The hours of the United Kingdom.
const UK: &str = include_str!("../../../../regions/uk/labour.toml");
/// The hours of the United States.
const US: &str = include_str!("../../../../regions/us/labour.toml");

/// Metres in a foot, exactly.
pub(crate) const M_PER_FOOT: f64 = 0.3048;
/// Millimetres in an inch, exactly.
const MM_PER_INCH: f64 = 25.4;
/// What a nominal size may be passed by, inches: a timber sawn a hair full is no size up.
const FULL_INCH: f64 = 0.05;

/// Hours of a region.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Labour {
    /// Hours of the items of work, by their keys in a job file; the covering is apart.
    pub work: BTreeMap<String, Rate>,
    /// The same where the roof has hips or valleys, if that makes a difference.
    #[serde(default)]
    pub hipped: BTreeMap<String, Rate>,
    /// A table as it was published, for comparison.
    #[serde(default)]
    pub published: BTreeMap<String, Rate>,
    /// Hours of each covering for a square metre.
    pub covering: BTreeMap<String, Rate>,
    /// Hours of the scaffold.
    pub scaffold: ScaffoldHours,
    /// What weather takes.
    pub weather: Weather,
    /// Straps are at most so far apart, m.
    pub straps: Plain,
}

/// Hours of one scaffolder for each bay of each lift.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScaffoldHours {
    /// Putting up.
    pub up: Rate,
    /// Taking down.
    pub down: Rate,
    /// Scaffolders at work together.
    pub gang: Plain,
}

/// A figure with where it is from.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Plain {
    /// In the unit that its field names.
    pub value: f64,
    /// Title and table, or what it is.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// Share of the working time lost to weather.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Weather {
    /// Of each month from January, 0 to below 1.
    pub loss: [f64; 12],
    /// What it is.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// Hours of one person for one unit of work, lowest, likely and highest.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rate {
    /// Nobody is quicker.
    pub low: f64,
    /// What is planned with.
    pub likely: f64,
    /// Nobody is slower.
    pub high: f64,
    /// Share that is spent cutting before anything is lifted.
    #[serde(default)]
    pub bench: f64,
    /// What the hours are for.
    #[serde(default)]
    pub per: Per,
    /// Title and table, or what it is.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// What hours are given for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// The unit of the item: each, m or m².
    #[default]
    Unit,
    /// 1000 board feet of nominal size.
    #[serde(rename = "1000-board-feet")]
    ThousandBoardFeet,
    /// 100 feet of length.
    #[serde(rename = "100-feet")]
    HundredFeet,
    /// 100 square feet.
    #[serde(rename = "100-square-feet")]
    HundredSquareFeet,
    /// 100 pieces.
    #[serde(rename = "100-each")]
    HundredEach,
}

impl Rate {
    /// Hours `[low, likely, high]` for a quantity of which `board_feet` are known.
    #[must_use]
    pub fn hours(&self, quantity: f64, board_feet: f64) -> [f64; 3] {
        let units = match self.per {
            Per::Unit => quantity,
            Per::ThousandBoardFeet => board_feet / 1000.0,
            Per::HundredFeet => quantity / (100.0 * M_PER_FOOT),
            Per::HundredSquareFeet => quantity / (100.0 * M_PER_FOOT * M_PER_FOOT),
            Per::HundredEach => quantity / 100.0,
        };
        [self.low, self.likely, self.high].map(|hours| hours * units)
    }

    /// This rate with another likely value; low and high keep their proportion to it.
    #[must_use]
    pub fn at(&self, likely: f64) -> Self {
        let share = |hours: f64| if self.likely > 0.0 { hours / self.likely * likely } else { likely };
        Self { low: share(self.low), likely, high: share(self.high), per: Per::Unit, ..self.clone() }
    }

    fn in_order(&self) -> bool {
        let rising = self.low >= 0.0 && self.low <= self.likely && self.likely <= self.high;
        rising && self.high.is_finite() && (0.0..=1.0).contains(&self.bench)
    }
}

/// Board feet of a timber by its nominal size, 1 in × 12 in × 1 ft each: sawn sizes are taken up to the next whole
/// inch. Thickness and depth in mm, length in m.
///
/// Source: `reference/site.md` of the US table, a 2 × 6 in of 14 ft is 14 board feet.
#[must_use]
pub fn board_feet(thickness_mm: f64, depth_mm: f64, length_m: f64) -> f64 {
    let nominal = |mm: f64| (mm / MM_PER_INCH - FULL_INCH).ceil().max(1.0);
    nominal(thickness_mm) * nominal(depth_mm) / 12.0 * (length_m / M_PER_FOOT)
}

impl Labour {
    /// The hours of a region, as named by [`job::Job::region`].
    ///
    /// # Errors
    /// A region that has none.
    pub fn of(region: &str) -> Result<&'static Self, ProgrammeFault> {
        static READ_UK: OnceLock<Result<Labour, ProgrammeFault>> = OnceLock::new();
        static READ_US: OnceLock<Result<Labour, ProgrammeFault>> = OnceLock::new();
        let read = match region {
            "uk" => READ_UK.get_or_init(|| Labour::read(UK)),
            "us" => READ_US.get_or_init(|| Labour::read(US)),
            other => return Err(ProgrammeFault::NoRegion(other.to_owned())),
        };
        read.as_ref().map_err(Clone::clone)
    }

    /// Read the text of a file of hours.
    ///
    /// # Errors
    /// Anything missing, unknown or not in order.
    pub fn read(text: &str) -> Result<Self, ProgrammeFault> {
        let labour: Self = toml::from_str(text).map_err(|e| ProgrammeFault::Unreadable(e.to_string()))?;
        labour.look_over().map_err(ProgrammeFault::Unreadable)?;
        Ok(labour)
    }

    fn look_over(&self) -> Result<(), String> {
        let groups = [&self.work, &self.hipped, &self.published, &self.covering];
        let rates = groups.into_iter().flatten();
        let scaffold = [("scaffold.up", &self.scaffold.up), ("scaffold.down", &self.scaffold.down)];
        for (name, rate) in rates.map(|(name, rate)| (name.as_str(), rate)).chain(scaffold) {
            if !rate.in_order() {
                return Err(format!("the hours of {name} do not rise from low to likely to high"));
            }
        }
        for item in WorkItem::ALL.iter().filter(|item| **item != WorkItem::Covering) {
            if !self.work.contains_key(item.word()) {
                return Err(format!("work.{} is missing", item.word()));
            }
        }
        for covering in COVERINGS {
            if !self.covering.contains_key(covering_word(covering)) {
                return Err(format!("covering.{} is missing", covering_word(covering)));
            }
        }
        if !(self.scaffold.gang.value >= 1.0 && self.straps.value > 0.0) {
            return Err("scaffold.gang and straps are more than nought".to_owned());
        }
        if !self.weather.loss.iter().all(|loss| (0.0..1.0).contains(loss)) {
            return Err("weather.loss is a share from 0 to below 1".to_owned());
        }
        Ok(())
    }

    /// The rate of an item for a covering, on a roof with or without hips and valleys.
    #[must_use]
    pub fn rate(&self, item: WorkItem, covering: Covering, hipped: bool) -> Option<&Rate> {
        if item == WorkItem::Covering {
            return self.covering.get(covering_word(covering));
        }
        let of_hips = if hipped { self.hipped.get(item.word()) } else { None };
        of_hips.or_else(|| self.work.get(item.word()))
    }
}

const COVERINGS: [Covering; 7] = [
    Covering::PlainTile,
    Covering::HandmadePlainTile,
    Covering::InterlockingTile,
    Covering::Pantile,
    Covering::Slate,
    Covering::HeavySlate,
    Covering::FibreCementSlate,
];

/// The word of a covering in the files of a region.
pub(crate) const fn covering_word(covering: Covering) -> &'static str {
    match covering {
        Covering::PlainTile => "plain-tile",
        Covering::HandmadePlainTile => "handmade-plain-tile",
        Covering::InterlockingTile => "interlocking-tile",
        Covering::Pantile => "pantile",
        Covering::Slate => "slate",
        Covering::HeavySlate => "heavy-slate",
        Covering::FibreCementSlate => "fibre-cement-slate",
    }
}

impl From<Standing> for Basis {
    fn from(standing: Standing) -> Self {
        match standing {
            Standing::Published => Self::Published,
            Standing::Memory => Self::Memory,
            Standing::Derived => Self::Derived,
            Standing::CommonPractice => Self::CommonPractice,
        }
    }
}
