//! Figures for members of solid timber: strength classes, and the factors of EN 1995-1-1 with a national annex.

mod factors;
mod figures;
mod words;

pub use factors::{Bearing, ByDuration, ByService, Cutting, Deflection, EffectiveLength, Factors, LoadSharing, Size};
pub use figures::NamedFigure;
pub use words::{Duration, ServiceClass};

use super::{Figure, Standing};
use crate::eurocode::wood::Wood;
use serde::Deserialize;
use std::sync::OnceLock;
use thiserror::Error;

/// Factors of the United Kingdom.
const UK_FACTORS: &str = include_str!("../../../../regions/uk/timber.toml");
/// Strength classes used in the United Kingdom.
const UK_CLASSES: &str = include_str!("../../../../regions/uk/strength-classes.toml");
/// Regions that have figures for timber.
const REGIONS: [&str; 1] = ["uk"];

/// What a region's codes say of members of timber.
#[derive(Clone, Debug, PartialEq)]
pub struct Timber {
    /// Factors, each with its source.
    pub factors: Factors,
    /// Strength classes, with the edition that they are of.
    pub classes: Classes,
    figures: Vec<NamedFigure>,
}

/// The strength classes of an edition.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Classes {
    /// Standard and year.
    pub edition: String,
    /// Tables that the values are from.
    pub source: String,
    /// How they were come by.
    pub standing: Standing,
    /// Classes, weakest first, softwoods before hardwoods.
    #[serde(rename = "class")]
    pub woods: Vec<Wood>,
}

/// No figures are kept for a region.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("no timber figures for region `{asked}`; there are figures for: {}", known.join(", "))]
pub struct UnknownRegion {
    /// What was asked for.
    pub asked: String,
    /// Regions that have figures.
    pub known: &'static [&'static str],
}

/// A strength class that the edition does not have.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("no strength class `{asked}`; {}there are: {}", nearest_is(nearest.as_deref()), all.join(", "))]
pub struct UnknownClass {
    /// What was asked for.
    pub asked: String,
    /// The class that is closest in name, when one is close.
    pub nearest: Option<String>,
    /// All classes of the edition.
    pub all: Vec<String>,
}

fn nearest_is(nearest: Option<&str>) -> String {
    nearest.map_or_else(String::new, |n| format!("nearest is {n}; "))
}

/// A file of figures that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("the {what} cannot be read: {why}")]
pub struct NotRead {
    /// Which file.
    pub what: &'static str,
    /// What the reader says, with line and key.
    pub why: String,
}

impl Timber {
    /// The figures of a region, as named by `job::Job::region`.
    ///
    /// # Errors
    /// When there are none for it; other codes are other figures, so none are lent.
    ///
    /// # Panics
    /// Never with the files as they are: they are compiled in, and a test reads them. No job can change that.
    pub fn of(region: &str) -> Result<&'static Self, UnknownRegion> {
        static UK: OnceLock<Timber> = OnceLock::new();
        match region {
            "uk" => {
                Ok(UK.get_or_init(|| Self::read(UK_FACTORS, UK_CLASSES).expect("the figures compiled in are whole")))
            }
            _ => Err(UnknownRegion { asked: region.to_owned(), known: &REGIONS }),
        }
    }

    /// Read another edition: the text of a `timber.toml` and of a `strength-classes.toml`.
    ///
    /// # Errors
    /// When a figure is missing, is not known, or is no number.
    pub fn read(factors: &str, classes: &str) -> Result<Self, NotRead> {
        let not = |what| move |e: toml::de::Error| NotRead { what, why: e.to_string() };
        let table: toml::Table = toml::from_str(factors).map_err(not("timber factors"))?;
        Ok(Self {
            figures: figures::within(&table),
            factors: toml::from_str(factors).map_err(not("timber factors"))?,
            classes: toml::from_str(classes).map_err(not("strength classes"))?,
        })
    }

    /// A strength class by its name, in large or small letters.
    ///
    /// # Errors
    /// When the edition has no such class; the error says which is nearest and which there are.
    pub fn class(&self, name: &str) -> Result<&Wood, UnknownClass> {
        let asked = name.trim();
        let woods = &self.classes.woods;
        woods.iter().find(|w| w.class.eq_ignore_ascii_case(asked)).ok_or_else(|| UnknownClass {
            asked: asked.to_owned(),
            nearest: words::nearest_class(asked, woods).map(|w| w.class.clone()),
            all: woods.iter().map(|w| w.class.clone()).collect(),
        })
    }

    /// `k_mod`, the share of strength that is left under a load of this duration (table 3.1).
    #[must_use]
    pub fn kmod(&self, service: ServiceClass, duration: Duration) -> &Figure {
        self.factors.kmod.of(service).of(duration)
    }

    /// `k_def`, creep as a share of the first deflection (table 3.2).
    #[must_use]
    pub fn kdef(&self, service: ServiceClass) -> &Figure {
        self.factors.kdef.of(service)
    }

    /// Whether so many equal members, so far apart (mm), tied by battens or boards, share what they carry (6.6).
    #[must_use]
    pub fn shares_load(&self, members: usize, spacing: f64) -> bool {
        let ksys = &self.factors.ksys;
        members as f64 >= ksys.members_least.value && spacing > 0.0 && spacing <= ksys.spacing_most.value
    }

    /// Every factor with its name in the file, in the order of names; for a page that says what is from memory.
    #[must_use]
    pub fn figures(&self) -> &[NamedFigure] {
        &self.figures
    }
}

#[cfg(test)]
mod tests {
    use super::{Duration, REGIONS, ServiceClass, Standing, Timber, UK_CLASSES, UK_FACTORS};

    #[test]
    fn every_region_is_whole_and_another_is_refused() {
        for region in REGIONS {
            assert!(Timber::of(region).is_ok());
        }
        let refused = Timber::of("mars").expect_err("no such region").to_string();
        assert_eq!(refused, "no timber figures for region `mars`; there are figures for: uk");
    }

    #[test]
    fn a_figure_that_is_missing_or_unknown_is_named() {
        let less = UK_FACTORS.replace("[kcr]", "[kcs]");
        let why = Timber::read(&less, UK_CLASSES).expect_err("kcs is unknown").to_string();
        assert!(why.contains("kcs"), "{why}");
        let less = UK_CLASSES.replacen("fv_k = 3\n", "", 1);
        let why = Timber::read(UK_FACTORS, &less).expect_err("fv_k is missing").to_string();
        assert!(why.contains("strength classes") && why.contains("fv_k"), "{why}");
    }

    #[test]
    fn another_edition_is_another_file() {
        let other = UK_FACTORS.replace("[kcr]\nvalue = 0.67", "[kcr]\nvalue = 1");
        let timber = Timber::read(&other, UK_CLASSES).expect("the file is read");
        assert_eq!(timber.factors.kcr.value, 1.0);
    }

    #[test]
    fn a_class_that_is_not_there_names_the_nearest() {
        let timber = Timber::of("uk").expect("uk is there");
        assert_eq!(timber.class(" c24 ").expect("case does not matter").class, "C24");
        for (asked, nearest) in [("C25", Some("C24")), ("24", Some("C24")), ("D42", Some("D40")), ("oak", None)] {
            let unknown = timber.class(asked).expect_err("no such class");
            assert_eq!(unknown.nearest.as_deref(), nearest, "{asked}");
            assert_eq!(unknown.all.len(), 20);
        }
        let said = timber.class("C25").expect_err("no such class").to_string();
        assert!(said.starts_with("no strength class `C25`; nearest is C24; there are: C14, C16"), "{said}");
    }

    #[test]
    fn figures_are_listed_with_their_standing() {
        let timber = Timber::of("uk").expect("uk is there");
        let all = timber.figures();
        assert_eq!(all.len(), UK_FACTORS.matches("\nstanding = ").count());
        let three = all.iter().find(|f| f.name == "kmod.three.short").expect("it is listed");
        assert_eq!((three.figure.value, three.figure.standing), (0.7, Standing::Memory));
        assert!(all.iter().all(|f| !f.figure.source.is_empty()));
    }

    #[test]
    fn load_is_shared_by_enough_members_close_enough() {
        let timber = Timber::of("uk").expect("uk is there");
        assert!(timber.shares_load(4, 600.0) && timber.shares_load(12, 610.0));
        assert!(!timber.shares_load(3, 400.0) && !timber.shares_load(9, 611.0) && !timber.shares_load(9, f64::NAN));
        assert_eq!(timber.kmod(ServiceClass::Two, Duration::Short).value, 0.9);
        assert_eq!(timber.kdef(ServiceClass::Two).value, 0.8);
    }
}
