//! What this tool does not work out, and an engineer must.

use crate::annex::Figure;
use crate::annex::loads::Loads;
use serde::{Deserialize, Serialize};

/// The place and use of a roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Site {
    /// m above the sea.
    pub altitude: f64,
    /// Snow on the ground, kN/m².
    pub ground_snow: f64,
    /// Peak pressure of the wind, kN/m².
    pub peak_pressure: f64,
    /// A parapet, a guard or a board keeps snow from sliding off.
    pub snow_held: bool,
    /// A valley, or a taller wall or roof beside it, in which snow can drift.
    pub snow_drifts: bool,
    /// Load in the loft, kN/m²; that of a loft reached for repairs when it is no more than the limit.
    pub loft: f64,
    /// A water tank in the loft, litres.
    pub tank: f64,
}

/// Something for an engineer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Refusal {
    /// For programs, e.g. `altitude`.
    pub code: String,
    /// For people.
    pub text: String,
    /// Where the limit is from.
    pub source: String,
}

/// All that is for an engineer about what the roof carries. A figure that is no number is for an engineer too.
#[must_use]
pub fn refusals(loads: &Loads, site: &Site) -> Vec<Refusal> {
    let limits = &loads.limits;
    let mut found = Vec::new();
    let mut refuse = |code: &str, limit: &Figure, text: String| {
        found.push(Refusal { code: code.to_owned(), text, source: limit.source.clone() });
    };
    let mut most = |code: &str, what: &str, value: f64, limit: &Figure, unit: &str| {
        if value.is_nan() || value > limit.value {
            let text = format!("Needs an engineer: {what} is {value} {unit}, more than {} {unit}.", limit.value);
            refuse(code, limit, text);
        }
    };
    most("altitude", "the altitude", site.altitude, &limits.altitude, "m");
    most("ground-snow", "snow on the ground", site.ground_snow, &limits.ground_snow, "kN/m²");
    most("peak-pressure", "the peak pressure of the wind", site.peak_pressure, &limits.peak_pressure, "kN/m²");
    most("loft-load", "the load in the loft", site.loft, &limits.loft, "kN/m²");
    most("water-tank", "the water tank", site.tank, &limits.tank, "litres");
    if site.snow_drifts {
        let text =
            "Needs an engineer: snow can drift in a valley or against a taller wall, which is not worked out here.";
        refuse("snow-drift", &limits.drift, text.to_owned());
    }
    found
}
