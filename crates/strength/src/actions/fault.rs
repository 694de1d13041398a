//! What can be wrong with what is asked of the loads.

use thiserror::Error;

/// Why a load cannot be worked out.
#[derive(Clone, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum ActionsFault {
    /// A figure that is not a finite number, or below nought where that means nothing.
    #[error("{what} is {value}: give a number that makes sense there")]
    BadFigure {
        /// Which figure.
        what: &'static str,
        /// Its value.
        value: f64,
    },
    /// A layer that the region does not know.
    #[error("there is no layer '{name}' in the region's loads: use one of {known}")]
    NoSuchLayer {
        /// As asked for.
        name: String,
        /// All names.
        known: String,
    },
    /// A snow zone off the map.
    #[error("there is no snow zone {zone}: the map has 1 to {last}")]
    NoSuchZone {
        /// As asked for.
        zone: u8,
        /// The last one.
        last: f64,
    },
    /// A pitch for which wind is not tabled.
    #[error("wind is tabled for pitches of {from}° to {to}°, not for {pitch}°: an engineer must give it")]
    PitchNotTabled {
        /// The pitch, degrees.
        pitch: f64,
        /// The least pitch in the table.
        from: f64,
        /// The steepest.
        to: f64,
    },
    /// A sort of load without factors.
    #[error("the region's loads have no factor psi for {0}")]
    NoPsi(&'static str),
}

/// A finite figure, at or above `least`.
pub(super) fn figure(what: &'static str, value: f64, least: f64) -> Result<f64, ActionsFault> {
    if value.is_finite() && value >= least { Ok(value) } else { Err(ActionsFault::BadFigure { what, value }) }
}

/// A pitch from 0 to under 90°.
pub(super) fn pitch(degrees: f64) -> Result<f64, ActionsFault> {
    if (0.0..90.0).contains(&degrees) {
        Ok(degrees)
    } else {
        Err(ActionsFault::BadFigure { what: "the pitch", value: degrees })
    }
}
