//! The figures of a region for lifting: `regions/<region>/lifting.toml`, compiled in.

use crate::sequence::figures;
use serde::Deserialize;
use std::sync::OnceLock;
use strength::annex::Figure;

const UK: &str = include_str!("../../../../regions/uk/lifting.toml");

/// Why a region has no figures for lifting.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum LiftingError {
    /// There is no such file.
    #[error("no figures for lifting are kept for the region `{region}`: go by the rules of the place")]
    NoSuchRegion {
        /// As the job names it.
        region: String,
    },
    /// The file is there but does not say what it must.
    #[error("regions/{region}/lifting.toml: {fault}")]
    Unread {
        /// As the job names it.
        region: String,
        /// Line and reason.
        fault: String,
    },
}

figures! {
    /// What one person may lift by the filter, kg, by where the hands are.
    Zones {
        /// Above the shoulder.
        above_shoulder_kg,
        /// Between elbow and shoulder.
        elbow_to_shoulder_kg,
        /// Between knuckle and elbow.
        knuckle_to_elbow_kg,
        /// Between mid-leg and knuckle.
        midleg_to_knuckle_kg,
        /// Below mid-leg.
        below_midleg_kg,
    }
}

figures! {
    /// Several people at one lift.
    Team {
        /// Share of the sum that two may lift.
        two,
        /// Share of the sum that three may lift.
        three,
        /// Longest timber for one person, mm.
        alone_longest_mm,
    }
}

figures! {
    /// Shares taken off.
    Less {
        /// One or two lifts a minute.
        one_or_two_a_minute,
        /// Five to eight lifts a minute.
        five_to_eight_a_minute,
        /// Over twelve lifts a minute.
        over_twelve_a_minute,
        /// Twisted by 45°.
        twist_45,
        /// Twisted by 90°.
        twist_90,
        /// Farthest carry without a rest, m.
        carry_most_m,
    }
}

figures! {
    /// Densities, kg/m³.
    #[expect(non_snake_case, reason = "names of strength classes")]
    Densities {
        /// Dry, class C16.
        C16,
        /// Dry, class C24.
        C24,
        /// Damp from standing outside, any softwood.
        damp,
    }
}

figures! {
    /// Heights, mm.
    Heights {
        /// Of a shoulder over what is stood on.
        shoulder_mm,
        /// Of one stage of a staged lift.
        stage_mm,
    }
}

/// The figures of a region for lifting.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lifting {
    /// One man, held close.
    pub close: Zones,
    /// One man, at arm's length.
    pub reach: Zones,
    /// One woman, held close.
    pub close_women: Zones,
    /// One woman, at arm's length.
    pub reach_women: Zones,
    /// Several people.
    pub team: Team,
    /// Shares taken off.
    pub less: Less,
    /// Densities.
    pub density: Densities,
    /// Heights.
    pub height: Heights,
}

impl Lifting {
    /// The figures of a region.
    ///
    /// # Errors
    /// When the region keeps none, or its file can't be read.
    pub fn of(region: &str) -> Result<&'static Self, LiftingError> {
        static RULES: OnceLock<Result<Lifting, String>> = OnceLock::new();
        if region != "uk" {
            return Err(LiftingError::NoSuchRegion { region: region.to_owned() });
        }
        let read = RULES.get_or_init(|| toml::from_str(UK).map_err(|fault| fault.to_string()));
        read.as_ref().map_err(|fault| LiftingError::Unread { region: region.to_owned(), fault: fault.clone() })
    }
}
