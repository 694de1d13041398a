//! The factors, named as in the file.

use super::{Duration, ServiceClass};
use crate::annex::Figure;
use serde::Deserialize;

/// Factors of EN 1995-1-1 for members of solid timber, as a national annex has them.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Factors {
    /// Standard, amendments and national annex.
    pub edition: String,
    /// `γ_M`, partial factor of the material.
    pub gamma_m: Figure,
    /// `k_mod` by service class and duration of load.
    pub kmod: ByService<ByDuration>,
    /// `k_def` by service class.
    pub kdef: ByService<Figure>,
    /// `k_h`, shallow timber.
    pub kh: Size,
    /// `k_sys`, members that share a load.
    pub ksys: LoadSharing,
    /// `k_cr`, share of the breadth that counts for shear.
    pub kcr: Figure,
    /// `k_m`, bending about both axes.
    pub km: Figure,
    /// `k_c,90`, pressure across the grain.
    pub kc90: Bearing,
    /// `β_c`, crookedness of a column.
    pub beta_c: Figure,
    /// Lengths over which a beam can twist.
    pub effective_length: EffectiveLength,
    /// `k_n` of a notch at a support.
    pub kn: Figure,
    /// Limits of deflection.
    pub deflection: Deflection,
    /// Notches and holes that need no check.
    pub cutting: Cutting,
}

/// One for each service class.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ByService<T> {
    /// Dry.
    pub one: T,
    /// Under cover.
    pub two: T,
    /// In the open.
    pub three: T,
}

impl<T> ByService<T> {
    /// The one of a service class.
    #[must_use]
    pub const fn of(&self, service: ServiceClass) -> &T {
        match service {
            ServiceClass::One => &self.one,
            ServiceClass::Two => &self.two,
            ServiceClass::Three => &self.three,
        }
    }
}

/// One for each duration of load.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ByDuration {
    /// More than ten years.
    pub permanent: Figure,
    /// Half a year to ten years.
    pub long: Figure,
    /// A week to half a year.
    pub medium: Figure,
    /// Less than a week.
    pub short: Figure,
    /// Wind and impact.
    pub instant: Figure,
}

impl ByDuration {
    /// The one of a duration.
    #[must_use]
    pub const fn of(&self, duration: Duration) -> &Figure {
        match duration {
            Duration::Permanent => &self.permanent,
            Duration::Long => &self.long,
            Duration::Medium => &self.medium,
            Duration::Short => &self.short,
            Duration::Instant => &self.instant,
        }
    }
}

/// `k_h = (depth / h)^exponent` below `depth`, 3.2.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Size {
    /// Depth from which nothing is gained, mm.
    pub depth: Figure,
    /// How fast it is gained.
    pub exponent: Figure,
    /// The most that is gained.
    pub most: Figure,
    /// Greatest characteristic density for which anything is gained, kg/m³.
    pub density_most: Figure,
}

/// Members that share a load, 6.6.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct LoadSharing {
    /// `k_sys`.
    pub factor: Figure,
    /// Fewest equal members beside one another.
    pub members_least: Figure,
    /// Greatest spacing, mm.
    pub spacing_most: Figure,
}

/// Pressure across the grain, 6.1.5.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Bearing {
    /// `k_c,90` where nothing else is allowed.
    pub plain: Figure,
    /// On a support all along.
    pub continuous: Figure,
    /// On single supports.
    pub discrete: Figure,
    /// Least clear distance between load and support for more than `plain`, times the depth.
    pub gap_least: Figure,
    /// How far the wood beside a contact helps, mm on each side.
    pub spread: Figure,
}

/// Effective lengths of beams that can twist, table 6.1.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct EffectiveLength {
    /// The same moment all along, share of the span.
    pub moment: Figure,
    /// Spread load on a single span.
    pub udl: Figure,
    /// One load in the middle.
    pub mid_point: Figure,
    /// Spread load on an overhang, share of the overhang.
    pub cantilever_udl: Figure,
    /// One load at the end of an overhang.
    pub cantilever_end: Figure,
    /// Added when the load sits on the edge in compression, times the depth.
    pub compression_edge: Figure,
    /// Added when it hangs from the edge in tension, times the depth.
    pub tension_edge: Figure,
}

/// The span (or overhang) divided by these is the greatest net final deflection, 7.2.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Deflection {
    /// Over a plastered or boarded ceiling.
    pub ceiling: Figure,
    /// With nothing that cracks below.
    pub open: Figure,
    /// An overhang with a plastered or boarded soffit.
    pub cantilever_ceiling: Figure,
    /// An overhang without.
    pub cantilever_open: Figure,
}

/// Notches and holes in joists that need no check.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Cutting {
    /// Deepest notch, share of the depth.
    pub notch_depth: Figure,
    /// Nearest a notch is to a support, share of the span.
    pub notch_from: Figure,
    /// Farthest.
    pub notch_to: Figure,
    /// Widest hole, share of the depth.
    pub hole_depth: Figure,
    /// Nearest a hole is to a support, share of the span.
    pub hole_from: Figure,
    /// Farthest.
    pub hole_to: Figure,
    /// Least distance between centres of holes, times the diameter.
    pub hole_apart: Figure,
}
