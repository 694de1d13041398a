//! What a roof carries: own weight, people, snow and wind, and how they go together.
//!
//! Loads on areas are kN/m²; [`Pressing`] says on which area and in which direction, and turns them into N per mm of a
//! member. Every figure is read from [`crate::annex::loads::Loads`].

mod combine;
mod dead;
mod fault;
mod imposed;
mod pressing;
mod refuse;
mod roof;
mod snow;
mod wind;
mod wind_speed;

pub use crate::annex::loads::{CaseKind, Duration, Loads, Zone};
pub use combine::{Combination, CombinationKind, Expression, combinations};
pub use dead::{layers, self_weight};
pub use fault::ActionsFault;
pub use imposed::{Loft, People, loft, people};
pub use pressing::{Pressing, Rising, per_mm};
pub use refuse::{Refusal, Site, refusals};
pub use roof::{RoofForm, SlopeLoads, slope_loads};
pub use snow::{SlopeSnow, ground_snow, slope_snow};
pub use wind::{Coefficients, Pressures, WindForm, WindZones, coefficients, pressures, zones};
pub use wind_speed::{PeakPressure, Terrain, peak_pressure};
