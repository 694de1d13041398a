//! Lengths of timber as they are sold in a region.

use serde::Deserialize;
use std::sync::OnceLock;
use strength::annex::{Figure, Standing};

const UK: &str = include_str!("../../../../regions/uk/stock.toml");
const US: &str = include_str!("../../../../regions/us/stock.toml");

/// What a region sells.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Region {
    /// The sign of its currency.
    pub currency: String,
    /// Lengths, mm.
    pub lengths: Lengths,
    /// Lengths over this cost more for the same measure, mm.
    pub long: Figure,
    /// By what share they do.
    pub dearer: Figure,
    /// Density of timber that is not graded, kg/m³.
    pub board_density: Figure,
    /// Density of damp timber, kg/m³.
    pub damp_density: Figure,
}

/// Lengths with their source.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lengths {
    /// Rising, mm.
    pub value: Vec<f64>,
    /// Title and table.
    pub source: String,
    /// How they were come by.
    pub standing: Standing,
}

/// A region whose stock is not known.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "no stock is known for the region `{0}`: write region = \"uk\" or \"us\", or the lengths of each section in [stock]"
)]
pub struct UnknownRegion(pub String);

impl Region {
    /// What a region sells.
    ///
    /// # Errors
    /// A region that has no stock file.
    pub fn of(region: &str) -> Result<&'static Self, UnknownRegion> {
        static READ: OnceLock<[Option<Region>; 2]> = OnceLock::new();
        let [uk, us] = READ.get_or_init(|| [toml::from_str(UK).ok(), toml::from_str(US).ok()]);
        let found = match region {
            "uk" => uk.as_ref(),
            "us" => us.as_ref(),
            _ => None,
        };
        found.ok_or_else(|| UnknownRegion(region.to_owned()))
    }

    /// The share by which a length costs more for the same measure.
    #[must_use]
    pub fn dearer_at(&self, length: f64) -> f64 {
        if length > self.long.value { 1.0 + self.dearer.value } else { 1.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_files_of_the_regions_are_whole() {
        let rows: Vec<serde_json::Value> =
            serde_json::from_str(include_str!("../../../../reference/site_checks.json")).unwrap();
        let row = |id: &str| rows.iter().find(|r| r["id"] == id).map(|r| r["expected"].clone()).unwrap();
        // site_checks.json mat.lengths_uk_m (building construction handbook) and mat.us.lengths_ft.
        let m: Vec<f64> = serde_json::from_value(row("mat.lengths_uk_m")).unwrap();
        let uk = Region::of("uk").unwrap();
        assert_eq!(uk.lengths.value, m.iter().map(|v| (v * 1000.0).round()).collect::<Vec<_>>());
        let ft: Vec<f64> = serde_json::from_value(row("mat.us.lengths_ft")).unwrap();
        let us = Region::of("us").unwrap();
        for (have, want) in us.lengths.value.iter().zip(&ft) {
            assert!((have - want * 304.8).abs() < 1e-9);
        }
        assert_eq!(us.lengths.value.len(), ft.len());
        // mat.long_length_premium: 5 to 15 %.
        let [low, high]: [f64; 2] = serde_json::from_value(row("mat.long_length_premium")).unwrap();
        assert!(low <= uk.dearer.value && uk.dearer.value <= high);
        assert!(Region::of("mars").is_err());
    }
}
