//! People on the roof and in the loft.

use super::ActionsFault;
use super::fault::pitch as checked_pitch;
use crate::annex::loads::Loads;
use crate::working::Working;

/// Load of maintenance on a slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct People {
    /// kN/m² on plan.
    pub spread: f64,
    /// One person, kN, instead of the spread load.
    pub person: f64,
}

/// Load in a loft that is reached for repairs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loft {
    /// kN/m².
    pub spread: f64,
    /// One person, kN, instead of the spread load.
    pub person: f64,
}

/// Load of maintenance on a slope of some pitch (degrees): q_k and Q_k of category H.
///
/// # Errors
/// A pitch that is none.
pub fn people(loads: &Loads, pitch: f64, working: &mut Working) -> Result<People, ActionsFault> {
    let curve = &loads.imposed.spread;
    let spread = curve.points.kept(checked_pitch(pitch)?);
    let person = &loads.imposed.person;
    Ok(People {
        spread: working.line("load of maintenance q_k on plan", spread, "kN/m²", &curve.source, || {
            format!("read at {pitch:.1}°")
        }),
        person: working.line("one person Q_k", person.value, "kN", &person.source, String::new),
    })
}

/// Load in a loft that is reached for repairs.
pub fn loft(loads: &Loads, working: &mut Working) -> Loft {
    let (spread, person) = (&loads.imposed.loft, &loads.imposed.loft_person);
    Loft {
        spread: working.line("load in the loft q_k", spread.value, "kN/m²", &spread.source, String::new),
        person: working.line("one person in the loft Q_k", person.value, "kN", &person.source, String::new),
    }
}
