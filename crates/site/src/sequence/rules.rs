//! The figures of a region: `regions/<region>/putting-up.toml`, compiled in.

use serde::Deserialize;
use std::sync::OnceLock;
use strength::annex::Figure;

const UK: &str = include_str!("../../../../regions/uk/putting-up.toml");

/// Why a region has no figures for putting up.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum RulesError {
    /// There is no such file.
    #[error(
        "no figures for putting up are kept for the region `{region}`: ask whoever is in charge for the order of work"
    )]
    NoSuchRegion {
        /// As the job names it.
        region: String,
    },
    /// The file is there but does not say what it must.
    #[error("regions/{region}/putting-up.toml: {fault}")]
    Unread {
        /// As the job names it.
        region: String,
        /// Line and reason.
        fault: String,
    },
}

/// Declares a group of figures, each a field.
macro_rules! figures {
    ($(#[$about:meta])* $name:ident { $($(#[$doc:meta])* $field:ident),+ $(,)? }) => {
        $(#[$about])*
        #[derive(Clone, Debug, PartialEq, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct $name {
            $($(#[$doc])* pub $field: Figure,)+
        }
    };
}
pub(crate) use figures;

figures! {
    /// Props.
    PropRules {
        /// From a wall's line to a prop, mm.
        inside_mm,
        /// Thickness of the sole board, mm.
        sole_mm,
        /// Folding wedges, mm.
        wedges_mm,
        /// Thickness of the boards on the joists, mm.
        deck_mm,
        /// From the head of a hip or valley to its prop, along it, mm.
        below_head_mm,
        /// Length of the cleats on top of a prop, mm.
        cleat_mm,
    }
}

figures! {
    /// Temporary braces.
    BraceRules {
        /// Thickness, mm.
        thickness_mm,
        /// Width, mm.
        width_mm,
        /// Best slope from level, degrees.
        best_slope_deg,
        /// Least slope from level, degrees.
        least_slope_deg,
        /// Most slope from level, degrees.
        most_slope_deg,
    }
}

figures! {
    /// Permanent diagonals under the rafters.
    RackingRules {
        /// Thickness, mm.
        thickness_mm,
        /// Width, mm.
        width_mm,
        /// On the slope, from the level, degrees.
        angle_deg,
        /// Nails at every rafter.
        nails_each,
    }
}

figures! {
    /// Straps.
    StrapRules {
        /// Most between holding-down straps, mm.
        hold_down_centres_mm,
        /// Thickness of a holding-down strap, mm.
        hold_down_thickness_mm,
        /// Width of a holding-down strap, mm.
        hold_down_width_mm,
        /// Lowest fixing above the foot of the strap, at most, mm.
        hold_down_low_fixing_mm,
        /// Least length of a holding-down strap, mm.
        hold_down_least_length_mm,
        /// Usual length of a holding-down strap, mm.
        hold_down_usual_length_mm,
        /// From a corner of the plates to the first strap, mm.
        hold_down_from_corner_mm,
        /// Most between lateral straps, to three storeys, mm.
        lateral_centres_mm,
        /// Most between lateral straps, four storeys and over, mm.
        lateral_centres_tall_mm,
        /// Thickness of a lateral strap, mm.
        lateral_thickness_mm,
        /// Width of a lateral strap, mm.
        lateral_width_mm,
        /// Timbers that a lateral strap crosses, at least.
        lateral_members,
        /// Down-turn over a full block, mm.
        lateral_downturn_mm,
        /// Fixings into solid noggins.
        lateral_noggin_fixings,
        /// Fixings to a longitudinal brace.
        lateral_brace_fixings,
    }
}

figures! {
    /// Wall plates.
    PlateRules {
        /// Least length, mm.
        least_length_mm,
        /// Least number of rafters over each length.
        least_supports,
        /// Usual thickness, mm.
        thickness_mm,
        /// Usual width, mm.
        width_mm,
    }
}

figures! {
    /// What a hold may be out by.
    ToleranceRules {
        /// Diagonals of the plates, mm.
        diagonal_mm,
        /// Lengths of the walls, mm.
        wall_length_mm,
        /// Level, mm.
        level_mm,
        /// Straightness, mm.
        straight_mm,
        /// Height of a ridge, mm.
        ridge_height_mm,
        /// Ridge ends over their marks, mm.
        over_marks_mm,
        /// Plumb, mm in a metre.
        plumb_mm_in_m,
        /// Hip along its string, mm.
        hip_line_mm,
        /// Spread at the plates, mm.
        spread_mm,
        /// Tails along a line, mm.
        tail_mm,
        /// Sides and diagonals of openings, mm.
        opening_mm,
    }
}

/// The figures of a region for putting up.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rules {
    /// Props.
    pub prop: PropRules,
    /// Temporary braces.
    pub brace: BraceRules,
    /// Permanent diagonals.
    pub racking: RackingRules,
    /// Straps.
    pub strap: StrapRules,
    /// Wall plates.
    pub plate: PlateRules,
    /// What a hold may be out by.
    pub tolerance: ToleranceRules,
}

impl Rules {
    /// The figures of a region.
    ///
    /// # Errors
    /// When the region keeps none, or its file can't be read.
    pub fn of(region: &str) -> Result<&'static Self, RulesError> {
        static RULES: OnceLock<Result<Rules, String>> = OnceLock::new();
        if region != "uk" {
            return Err(RulesError::NoSuchRegion { region: region.to_owned() });
        }
        let read = RULES.get_or_init(|| toml::from_str(UK).map_err(|fault| fault.to_string()));
        read.as_ref().map_err(|fault| RulesError::Unread { region: region.to_owned(), fault: fault.clone() })
    }
}
