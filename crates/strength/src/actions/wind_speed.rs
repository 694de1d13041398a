//! Peak pressure from the speed of the wind, to check a figure that was given. The tool does not find the wind of a site.

use super::ActionsFault;
use super::fault::figure;
use crate::annex::loads::Loads;
use crate::working::Working;

/// The ground around.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Terrain {
    /// Roughness z0, m.
    pub roughness: f64,
    /// Least height z_min, m.
    pub least_height: f64,
    /// Factor of hills c_o.
    pub hills: f64,
    /// Factor of turbulence k_I.
    pub turbulence: f64,
}

/// Peak pressure with what it is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PeakPressure {
    /// Factor of the terrain.
    pub k_r: f64,
    /// Factor of the roughness.
    pub c_r: f64,
    /// Turbulence.
    pub i_v: f64,
    /// Pressure of the mean wind of open country, kN/m².
    pub q_b: f64,
    /// q_p / q_b.
    pub c_e: f64,
    /// Peak pressure, kN/m².
    pub q_p: f64,
}

/// Peak pressure at height `z` (m) from the speed of the wind v_b (m/s), EN 1991-1-4 4.3 to 4.5:
/// k_r = 0.19 (z0/0.05)^0.07, c_r = k_r ln(z/z0), I_v = k_I/(c_o ln(z/z0)), q_p = (1 + 7 I_v) ρ (c_r c_o v_b)²/2.
///
/// # Errors
/// A figure that is not above nought.
pub fn peak_pressure(
    loads: &Loads,
    v_b: f64,
    z: f64,
    terrain: Terrain,
    working: &mut Working,
) -> Result<PeakPressure, ActionsFault> {
    let speed = &loads.wind.speed;
    let above = |what: &'static str, v: f64| {
        figure(what, v, 0.0).and_then(|v| if v > 0.0 { Ok(v) } else { Err(ActionsFault::BadFigure { what, value: v }) })
    };
    let (v_b, z0) = (above("the speed of the wind", v_b)?, above("the roughness of the ground", terrain.roughness)?);
    let c_o = above("the factor of hills", terrain.hills)?;
    let z = above("the height", z)?.max(terrain.least_height);
    let log = above("the height over the roughness", libm::log(z / z0))?;
    let from = "EN 1991-1-4 4.3 to 4.5";
    let k_r = speed.terrain.value * libm::pow(z0 / speed.terrain_length.value, speed.terrain_power.value);
    let k_r = working.line("factor of the terrain k_r", k_r, "", from, || format!("z0 = {z0} m"));
    let c_r = working.line("factor of the roughness c_r", k_r * log, "", from, || format!("{k_r:.4} × ln({z}/{z0})"));
    let i_v = working.line("turbulence I_v", terrain.turbulence / (c_o * log), "", from, || format!("1/ln({z}/{z0})"));
    // ρv²/2 is N/m²; a thousandth of it kN/m².
    let q_b = speed.air.value * v_b * v_b / 2000.0;
    let q_b = working.line("mean pressure q_b", q_b, "kN/m²", from, || format!("{} × {v_b}²/2000", speed.air.value));
    let c_e = (1.0 + speed.gusts.value * i_v) * c_r * c_r * c_o * c_o;
    let q_p = working.line("peak pressure q_p", c_e * q_b, "kN/m²", from, || format!("{c_e:.4} × {q_b:.4}"));
    Ok(PeakPressure { k_r, c_r, i_v, q_b, c_e, q_p })
}
