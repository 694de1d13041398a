//! Figures of the codes of a region, as data: `regions/<region>/*.toml`, compiled in. Code holds formulas only, so that
//! another edition is another file.

pub mod joints;
pub mod loads;
pub mod nds;
pub mod timber;

pub use roof::rules::Standing;
use serde::Deserialize;

/// A figure with where it is from.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Figure {
    /// The value, in the unit that its field names.
    pub value: f64,
    /// Title and table or clause.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}
