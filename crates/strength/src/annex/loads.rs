//! Figures for loads: `regions/<region>/loads.toml`.

mod curve;
mod together;

pub use curve::{Curve, Sloped};
pub use together::{CaseFigures, CaseKind, Duration, NeverTogether, Permanent, Recipe, RecipeKind};

use super::{Figure, Standing};
use serde::Deserialize;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use thiserror::Error;

/// The loads of the United Kingdom.
const UK: &str = include_str!("../../../../regions/uk/loads.toml");

/// Why there are no figures for loads.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum LoadsFault {
    /// No file for the region.
    #[error("there are no figures for loads in the region '{0}': use 'uk', or add a file for it")]
    NoRegion(String),
    /// The file is not as it should be.
    #[error("the figures for loads of a region cannot be read: {0}")]
    Unreadable(String),
}

/// Everything about loads that depends on the region and the edition of its codes.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Loads {
    /// The edition of the codes that the figures are from.
    pub edition: String,
    /// m/s².
    pub gravity: Figure,
    /// Partial factors.
    pub partial: Partial,
    /// Duration and factors of each sort of load.
    pub cases: BTreeMap<String, CaseFigures>,
    /// Sorts of load that are never put together.
    pub never_together: NeverTogether,
    /// Which loads are put together.
    pub together: Vec<Recipe>,
    /// People on the roof and in the loft.
    pub imposed: Imposed,
    /// Snow.
    pub snow: Snow,
    /// Wind.
    pub wind: Wind,
    /// Beyond these an engineer is needed.
    pub limits: Limits,
    /// Layers of the roof by name, kN/m² on the slope.
    pub layers: BTreeMap<String, Figure>,
}

/// Partial factors of loads.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Partial {
    /// On permanent load that makes things worse.
    pub permanent_adverse: Figure,
    /// On permanent load that helps.
    pub permanent_helpful: Figure,
    /// On permanent load that helps, where the roof as a whole could lift.
    pub permanent_helpful_balance: Figure,
    /// On variable load.
    pub variable: Figure,
    /// Lightens the permanent load in expression 6.10b.
    pub xi: Figure,
}

/// People on the roof and in the loft.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Imposed {
    /// kN/m² on plan, by pitch.
    pub spread: Curve,
    /// One person, kN.
    pub person: Figure,
    /// kN/m² in the loft.
    pub loft: Figure,
    /// One person in the loft, kN.
    pub loft_person: Figure,
}

/// Snow.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Snow {
    /// kN/m².
    pub base: Figure,
    /// kN/m² for each step of the zone.
    pub per_zone: Figure,
    /// kN/m².
    pub zone_base: Figure,
    /// m.
    pub level: Figure,
    /// m for 1 kN/m².
    pub rise: Figure,
    /// Number of the last zone.
    pub zones: Figure,
    /// Shape coefficient of even snow, by pitch.
    pub even: Curve,
    /// Shape coefficient of the one loaded slope, by pitch.
    pub one_side: Curve,
    /// The least shape coefficient where snow cannot slide off.
    pub held_least: Figure,
    /// C_e.
    pub exposure: Figure,
    /// C_t.
    pub thermal: Figure,
}

/// Wind.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Wind {
    /// Coefficient of pressure inside.
    pub inside_out: Figure,
    /// Coefficient of suction inside, below nought.
    pub inside_in: Figure,
    /// Depth of the zones along edges and ridges, share of e.
    pub edge_depth: Figure,
    /// Width of the zones at corners, share of e.
    pub corner_width: Figure,
    /// Where the middle zone ends with wind on the gable, share of e.
    pub middle_depth: Figure,
    /// A roof with two slopes, wind across the ridge.
    pub across: WindTable,
    /// A roof with two slopes, wind along the ridge.
    pub along: WindTable,
    /// A hipped roof.
    pub hipped: WindTable,
    /// From the speed of the wind to its peak pressure.
    pub speed: WindSpeed,
}

/// Coefficients of pressure outside by zone and pitch.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WindTable {
    /// Title and table.
    pub source: String,
    /// How the figures were come by.
    pub standing: Standing,
    /// Coefficients at or below nought.
    pub suction: BTreeMap<Zone, Sloped>,
    /// Coefficients at or above nought.
    #[serde(default)]
    pub pressure: BTreeMap<Zone, Sloped>,
}

/// A zone of a roof in the tables of wind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[allow(missing_docs, reason = "letters of the code")]
pub enum Zone {
    F,
    G,
    H,
    I,
    J,
    K,
    L,
    M,
    N,
}

/// From the speed of the wind to its peak pressure.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct WindSpeed {
    /// kg/m³.
    pub air: Figure,
    /// Factor of the terrain.
    pub terrain: Figure,
    /// Power of the roughness.
    pub terrain_power: Figure,
    /// Roughness that the factor is for, m.
    pub terrain_length: Figure,
    /// Factor of the gusts.
    pub gusts: Figure,
}

/// Beyond these an engineer is needed.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Limits {
    /// m above the sea.
    pub altitude: Figure,
    /// kN/m².
    pub ground_snow: Figure,
    /// kN/m².
    pub peak_pressure: Figure,
    /// kN/m².
    pub loft: Figure,
    /// Litres.
    pub tank: Figure,
    /// The rule on drifts; its value is not used.
    pub drift: Figure,
}

impl Loads {
    /// The figures of a region, as named by [`job::Job::region`].
    ///
    /// # Errors
    /// A region that has none.
    pub fn of(region: &str) -> Result<&'static Self, LoadsFault> {
        static READ: OnceLock<Result<Loads, LoadsFault>> = OnceLock::new();
        match region {
            "uk" => READ.get_or_init(|| Loads::read(UK)).as_ref().map_err(Clone::clone),
            other => Err(LoadsFault::NoRegion(other.to_owned())),
        }
    }

    /// Read the text of a file of loads.
    ///
    /// # Errors
    /// Anything missing, unknown or not in order.
    pub fn read(text: &str) -> Result<Self, LoadsFault> {
        let loads: Self = toml::from_str(text).map_err(|e| LoadsFault::Unreadable(e.to_string()))?;
        loads.look_over().map_err(LoadsFault::Unreadable)?;
        Ok(loads)
    }

    fn look_over(&self) -> Result<(), String> {
        let tables = [&self.wind.across, &self.wind.along, &self.wind.hipped];
        let sloped = tables.iter().flat_map(|t| t.suction.values().chain(t.pressure.values()));
        let curves = [&self.imposed.spread, &self.snow.even, &self.snow.one_side];
        for points in curves.iter().map(|c| &c.points).chain(sloped) {
            if !points.in_order() {
                return Err(format!("{points:?} has no points, or not in order of pitch"));
            }
        }
        for kind in CaseKind::ALL {
            if !self.cases.contains_key(kind.family()) {
                return Err(format!("cases.{} is missing", kind.family()));
            }
        }
        for recipe in &self.together {
            let all: Vec<CaseKind> = recipe.leading.iter().chain(&recipe.with).copied().collect();
            for pair in &self.never_together.pairs {
                if pair.iter().all(|family| all.iter().any(|kind| kind.family() == family)) {
                    return Err(format!("'{}' puts {} and {} together", recipe.name, pair[0], pair[1]));
                }
            }
        }
        Ok(())
    }
}
