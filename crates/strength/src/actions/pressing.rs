//! From loads on areas to loads along a member.

use crate::annex::loads::CaseKind;
use geometry::Angle;

/// On which area a load is given and in which direction it presses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pressing {
    /// Given on the slope, straight down: layers.
    OnSlope,
    /// Given on plan, straight down: snow and people.
    OnPlan,
    /// Given on the slope, square to it: wind.
    Square,
}

impl Pressing {
    /// How a sort of load on a roof is given.
    #[must_use]
    pub const fn of(kind: CaseKind) -> Self {
        match kind {
            CaseKind::Permanent => Self::OnSlope,
            CaseKind::WindDown | CaseKind::WindUp => Self::Square,
            _ => Self::OnPlan,
        }
    }
}

/// Which way a slope rises, seen with the frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rising {
    /// The left slope of a pair.
    ToTheRight,
    /// The right slope.
    ToTheLeft,
}

/// N per mm of a member that runs up the slope, to the right and up, from a load in kN/m² over a width in mm.
///
/// kN/m² is 0.001 N/mm².
#[must_use]
pub fn per_mm(load: f64, width: f64, pitch: Angle, pressing: Pressing, rising: Rising) -> [f64; 2] {
    let line = load * width / 1000.0;
    match (pressing, rising) {
        (Pressing::OnSlope, _) => [0.0, -line],
        (Pressing::OnPlan, _) => [0.0, -line * pitch.cos()],
        (Pressing::Square, Rising::ToTheRight) => [line * pitch.sin(), -line * pitch.cos()],
        (Pressing::Square, Rising::ToTheLeft) => [-line * pitch.sin(), -line * pitch.cos()],
    }
}
