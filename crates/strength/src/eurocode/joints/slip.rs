//! Slip of a joint: EN 1995-1-1 7.1.

use crate::annex::joints::Joints;
use crate::working::Working;

/// Stiffness in service `K_ser` of one fastener in one plane, N/mm. `bolt_or_bored`: `ρ_m^1.5 d / 23`, else the nail's
/// `ρ_m^1.5 d^0.8 / 30`. Two timbers: the root of the product of their mean densities. A bolt also slips by its clearance,
/// which is not in this figure.
pub fn k_ser(
    diameter_mm: f64,
    rho_mean_1: f64,
    rho_mean_2: f64,
    bolt_or_bored: bool,
    annex: &Joints,
    w: &mut Working,
) -> f64 {
    let s = &annex.slip;
    let rho = (rho_mean_1 * rho_mean_2).max(0.0).sqrt();
    let (power, divisor) = if bolt_or_bored { (1.0, &s.bored_divisor) } else { (s.nail_power.value, &s.nail_divisor) };
    let value = libm::pow(rho, s.density_power.value) * libm::pow(diameter_mm, power) / divisor.value;
    w.line("stiffness of one fastener K_ser", value, "N/mm", "EN 1995-1-1 table 7.1", || {
        format!("{rho:.0}^{} × {diameter_mm}^{power} / {}", s.density_power.value, divisor.value)
    })
}

/// Stiffness at failure `K_u`, N/mm.
#[must_use]
pub fn k_u(k_ser: f64, annex: &Joints) -> f64 {
    k_ser * annex.slip.ultimate.value
}
