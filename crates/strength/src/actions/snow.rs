//! Snow on the ground and on slopes.

use super::ActionsFault;
use super::fault::{figure, pitch as checked_pitch};
use crate::annex::loads::{Curve, Loads};
use crate::working::Working;

/// Snow on a slope, kN/m² on plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlopeSnow {
    /// Even snow: mu1.
    pub even: f64,
    /// On this slope with none on the other.
    pub one_side: f64,
}

/// Snow on the ground s_k, kN/m², from the zone of the map and the altitude in m above the sea; never below nought.
/// EN 1991-1-3 UK NA, equation NA.1: 0.15 + (0.1 Z + 0.05) + (A − 100)/525.
///
/// # Errors
/// A zone off the map; an altitude that is no number.
pub fn ground_snow(loads: &Loads, zone: u8, altitude: f64, working: &mut Working) -> Result<f64, ActionsFault> {
    let snow = &loads.snow;
    let (z, last) = (f64::from(zone), snow.zones.value);
    if !(1.0..=last).contains(&z) {
        return Err(ActionsFault::NoSuchZone { zone, last });
    }
    let altitude = figure("the altitude", altitude, f64::NEG_INFINITY)?;
    let (base, per_zone, zone_base) = (snow.base.value, snow.per_zone.value, snow.zone_base.value);
    let (level, rise) = (snow.level.value, snow.rise.value);
    let s_k = (base + (per_zone * z + zone_base) + (altitude - level) / rise).max(0.0);
    Ok(working.line("snow on the ground s_k", s_k, "kN/m²", &snow.level.source, || {
        format!("{base} + ({per_zone} × {z} + {zone_base}) + ({altitude} − {level})/{rise}")
    }))
}

/// Snow on a slope from that on the ground (kN/m²): s = mu·C_e·C_t·s_k, EN 1991-1-3 5.2. `held` where a parapet, a guard
/// or a board keeps it from sliding off.
///
/// # Errors
/// A pitch that is none; snow below nought.
pub fn slope_snow(
    loads: &Loads,
    ground: f64,
    pitch: f64,
    held: bool,
    working: &mut Working,
) -> Result<SlopeSnow, ActionsFault> {
    let snow = &loads.snow;
    let s_k = figure("snow on the ground", ground, 0.0)?;
    let pitch = checked_pitch(pitch)?;
    let (exposure, thermal) = (snow.exposure.value, snow.thermal.value);
    let mut on_slope = |what: &str, symbol: &str, curve: &Curve| {
        let mut mu =
            working.line(&format!("shape of {what} {symbol}"), curve.points.kept(pitch), "", &curve.source, || {
                format!("read at {pitch:.1}°")
            });
        if held && mu < snow.held_least.value {
            mu = working.line(
                &format!("shape of {what} where it is held {symbol}"),
                snow.held_least.value,
                "",
                &snow.held_least.source,
                String::new,
            );
        }
        let s = mu * exposure * thermal * s_k;
        working.line(&format!("{what} s on plan"), s, "kN/m²", "EN 1991-1-3 5.2", || {
            format!("{mu:.3} × {exposure} × {thermal} × {s_k:.3}")
        })
    };
    Ok(SlopeSnow {
        even: on_slope("even snow", "mu1", &snow.even),
        one_side: on_slope("snow on one slope", "mu", &snow.one_side),
    })
}
