//! Sorts of load, how long they last and which go together.

pub use crate::annex::timber::Duration;
use crate::annex::{Figure, Standing};
use serde::{Deserialize, Serialize};

/// A sort of load, solved by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CaseKind {
    /// Own weight of timber and layers.
    Permanent,
    /// Load of maintenance, spread over the roof.
    Imposed,
    /// One person at the worst place of one member of the roof.
    Person,
    /// Even snow.
    Snow,
    /// Snow on the left slope only.
    SnowLeft,
    /// Snow on the right slope only.
    SnowRight,
    /// Wind pressing on the slopes.
    WindDown,
    /// Wind lifting.
    WindUp,
    /// Load spread over the loft.
    Loft,
    /// One person at the worst place of one member of the loft.
    LoftPerson,
}

impl CaseKind {
    /// All, in order: the place of one in it is `kind as usize`.
    pub const ALL: [Self; 10] = [
        Self::Permanent,
        Self::Imposed,
        Self::Person,
        Self::Snow,
        Self::SnowLeft,
        Self::SnowRight,
        Self::WindDown,
        Self::WindUp,
        Self::Loft,
        Self::LoftPerson,
    ];

    /// The sort of load whose factors it has.
    #[must_use]
    pub const fn family(self) -> &'static str {
        match self {
            Self::Permanent => "permanent",
            Self::Imposed => "imposed",
            Self::Person => "person",
            Self::Snow | Self::SnowLeft | Self::SnowRight => "snow",
            Self::WindDown | Self::WindUp => "wind",
            Self::Loft => "loft",
            Self::LoftPerson => "loft-person",
        }
    }

    /// Whether it stands on one member only, which then gets no help from its neighbours (no k_sys).
    #[must_use]
    pub const fn is_one_person(self) -> bool {
        matches!(self, Self::Person | Self::LoftPerson)
    }
}

/// How long a sort of load lasts, and its factors beside others.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct CaseFigures {
    /// How long it lasts.
    pub duration: Duration,
    /// Title and table or clause of the duration.
    pub duration_source: String,
    /// How the duration was come by.
    pub duration_standing: Standing,
    /// psi0, beside a leading load; none for permanent load.
    pub psi0: Option<Figure>,
    /// psi2, the share that is there most of the time; none for permanent load.
    pub psi2: Option<Figure>,
}

/// Sorts of load that are never put together.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NeverTogether {
    /// Pairs of families of [`CaseKind::family`].
    pub pairs: Vec<[String; 2]>,
    /// Title and clause.
    pub source: String,
    /// How the rule was come by.
    pub standing: Standing,
}

/// What the permanent load does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Permanent {
    /// Makes things worse.
    #[default]
    Adverse,
    /// Helps.
    Helpful,
}

/// What a recipe is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RecipeKind {
    /// Strength and deflection.
    #[default]
    Strength,
    /// Whether the roof could lift as a whole.
    Equilibrium,
}

/// Loads that are put together with the permanent load.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Recipe {
    /// In words of the job.
    pub name: String,
    /// The load taken in full.
    pub leading: Option<CaseKind>,
    /// Those taken times psi0.
    #[serde(default)]
    pub with: Vec<CaseKind>,
    /// What the permanent load does.
    #[serde(default)]
    pub permanent: Permanent,
    /// What it is for.
    #[serde(default)]
    pub kind: RecipeKind,
}
