//! Figures of the National Design Specification: `regions/us/nds.toml`. US customary units: psi, inches, pounds.

use super::{Figure, Standing};
use serde::Deserialize;
use std::sync::OnceLock;

/// The United States.
const US: &str = include_str!("../../../../regions/us/nds.toml");

/// Why there are no such figures.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum NdsError {
    /// There is no such file.
    #[error("no figures of the NDS are kept for region `{region}`: they are those of `us`")]
    NoSuchRegion {
        /// As the job names it.
        region: String,
    },
    /// The file is there but does not say what it must.
    #[error("regions/{region}/nds.toml: {fault}")]
    Unread {
        /// As the job names it.
        region: String,
        /// Line and reason.
        fault: String,
    },
    /// No such lumber.
    #[error("no design values of {species} grade {grade} {size}: choose another grade or size, or add it to nds.toml")]
    NoSuchLumber {
        /// E.g. `SPF`.
        species: String,
        /// E.g. `2`.
        grade: String,
        /// E.g. `2x6`.
        size: String,
    },
}

/// Load duration factors `C_D`.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Durations {
    /// Own weight.
    pub permanent: Figure,
    /// Occupancy; ceilings.
    pub ten_years: Figure,
    /// Snow.
    pub two_months: Figure,
    /// Roof live load.
    pub seven_days: Figure,
    /// Wind.
    pub ten_minutes: Figure,
    /// Impact.
    pub impact: Figure,
}

/// Members.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Members {
    /// Repetitive members `C_r`.
    pub repetitive: Figure,
    /// Factor of `E'_min / R_B²` in `F_bE`.
    pub beam_euler: Figure,
    /// Divisor in the blend of `C_L`.
    pub beam_blend: Figure,
    /// The other divisor.
    pub beam_round: Figure,
    /// Slenderest beam `R_B`.
    pub beam_slenderest: Figure,
    /// Factor of `E'_min / (l_e / d)²` in `F_cE`.
    pub column_euler: Figure,
    /// `c` of sawn lumber.
    pub column_c: Figure,
    /// Slenderest column `l_e / d`.
    pub column_slenderest: Figure,
}

/// Nails.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Nails {
    /// Dowel bearing at G = 1, psi.
    pub bearing: Figure,
    /// Its power of G.
    pub bearing_power: Figure,
    /// `K_D` of small nails.
    pub reduction_small: Figure,
    /// The thickest small nail, in.
    pub small_in: Figure,
    /// `K_D = slope D + fixed` of thicker ones: the slope, 1/in.
    pub reduction_slope: Figure,
    /// The fixed part.
    pub reduction_fixed: Figure,
    /// Thickest nail of these formulas, in.
    pub thickest_in: Figure,
    /// Least penetration for lateral load, times D.
    pub least_penetration_d: Figure,
    /// Withdrawal at G = 1, psi.
    pub withdrawal: Figure,
    /// Its power of G.
    pub withdrawal_power: Figure,
}

/// Span tables.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spans {
    /// Longest span that is given, in.
    pub longest_in: Figure,
    /// Ceiling joists: deflection under live load, span divided by.
    pub ceiling_limit: Figure,
    /// Rafters with a ceiling on them.
    pub rafter_with_ceiling_limit: Figure,
    /// Rafters without.
    pub rafter_limit: Figure,
}

/// A size as dressed.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Size {
    /// Nominal, e.g. `2x6`.
    pub name: String,
    /// Breadth, in.
    pub breadth_in: f64,
    /// Depth, in.
    pub depth_in: f64,
    /// `C_F` in bending.
    pub bending_factor: f64,
    /// `C_F` in tension.
    pub tension_factor: f64,
    /// `C_F` in compression.
    pub compression_factor: f64,
    /// Title and table.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// Edition of design values.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Set {
    /// Those of the edition that the file is of.
    Current,
    /// Those that some tables of building codes were made with.
    Older,
}

/// Design values of a species and grade, psi.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lumber {
    /// Edition.
    pub set: Set,
    /// E.g. `SPF`.
    pub species: String,
    /// `SS`, `1`, `2` or `3`.
    pub grade: String,
    /// Of this size only; then there are no size factors.
    #[serde(default)]
    pub size: Option<String>,
    /// `F_b`.
    pub bending: f64,
    /// `F_t`.
    pub tension: f64,
    /// `F_v`.
    pub shear: f64,
    /// `F_c_perp`.
    pub bearing: f64,
    /// `F_c`.
    pub compression: f64,
    /// `E`.
    pub modulus: f64,
    /// `E_min`.
    pub modulus_least: f64,
    /// `G`.
    pub gravity: f64,
    /// Title and table.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// All figures.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Nds {
    /// Which codes the file follows.
    pub edition: String,
    /// Load durations.
    pub duration: Durations,
    /// Members.
    pub members: Members,
    /// Nails.
    pub nails: Nails,
    /// Span tables.
    pub spans: Spans,
    /// Sizes.
    pub size: Vec<Size>,
    /// Design values.
    pub lumber: Vec<Lumber>,
}

/// A stick of lumber: its values and its size, with the size factors that go with both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stick<'a> {
    /// Design values.
    pub lumber: &'a Lumber,
    /// Size.
    pub size: &'a Size,
}

impl Stick<'_> {
    /// `F_b C_F`, psi.
    #[must_use]
    pub fn bending(&self) -> f64 {
        self.lumber.bending * self.factor(self.size.bending_factor)
    }

    /// `F_t C_F`, psi.
    #[must_use]
    pub fn tension(&self) -> f64 {
        self.lumber.tension * self.factor(self.size.tension_factor)
    }

    /// `F_c C_F`, psi.
    #[must_use]
    pub fn compression(&self) -> f64 {
        self.lumber.compression * self.factor(self.size.compression_factor)
    }

    fn factor(&self, of_size: f64) -> f64 {
        if self.lumber.size.is_some() { 1.0 } else { of_size }
    }

    /// Section modulus, in³.
    #[must_use]
    pub fn modulus_in3(&self) -> f64 {
        self.size.breadth_in * self.size.depth_in * self.size.depth_in / 6.0
    }

    /// Second moment of area, in⁴.
    #[must_use]
    pub fn inertia_in4(&self) -> f64 {
        self.modulus_in3() * self.size.depth_in / 2.0
    }
}

impl Nds {
    /// Figures from the text of a file of region `region`.
    ///
    /// # Errors
    /// [`NdsError::Unread`] when a figure is missing, unknown or no number.
    pub fn read(region: &str, text: &str) -> Result<Self, NdsError> {
        toml::from_str(text).map_err(|fault| NdsError::Unread { region: region.to_owned(), fault: fault.to_string() })
    }

    /// The figures of a region, as [`job::Job::region`] names it.
    ///
    /// # Errors
    /// [`NdsError::NoSuchRegion`] for any other than `us`.
    pub fn of(region: &str) -> Result<&'static Self, NdsError> {
        static OF_US: OnceLock<Result<Nds, NdsError>> = OnceLock::new();
        match region {
            "us" => OF_US.get_or_init(|| Self::read("us", US)).as_ref().map_err(Clone::clone),
            _ => Err(NdsError::NoSuchRegion { region: region.to_owned() }),
        }
    }

    /// A stick by its names. The older set falls back to the current one where they do not differ.
    ///
    /// # Errors
    /// [`NdsError::NoSuchLumber`].
    pub fn stick(&self, set: Set, species: &str, grade: &str, size: &str) -> Result<Stick<'_>, NdsError> {
        let fits = |lumber: &&Lumber, set: Set| {
            lumber.set == set
                && lumber.species == species
                && lumber.grade == grade
                && lumber.size.as_deref().is_none_or(|of| of == size)
        };
        let find = |set| self.lumber.iter().find(|lumber| fits(lumber, set));
        let lumber = find(set).or_else(|| find(Set::Current));
        let size_found = self.size.iter().find(|known| known.name == size);
        match (lumber, size_found) {
            (Some(lumber), Some(size)) => Ok(Stick { lumber, size }),
            _ => Err(NdsError::NoSuchLumber { species: species.into(), grade: grade.into(), size: size.into() }),
        }
    }
}
