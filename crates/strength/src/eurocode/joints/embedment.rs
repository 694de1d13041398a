//! How hard a shank presses into wood before it gives way: EN 1995-1-1 8.3.1.1 and 8.5.1.1.

use super::Part;
use crate::annex::joints::Joints;
use crate::working::Working;
use geometry::Angle;

/// `f_h,k` of a nail up to 8 mm thick, N/mm²: `0.082 ρ_k d^-0.3`, in a bored hole `0.082 (1 − 0.01 d) ρ_k` (8.15, 8.16).
/// The angle to the grain makes no difference.
pub fn nail(diameter_mm: f64, bored: bool, part: &Part<'_>, annex: &Joints, w: &mut Working) -> f64 {
    let e = &annex.embedment;
    let (factor, rho, d) = (e.factor.value, part.wood.rho_k, diameter_mm);
    if d > e.nail_thickest_mm.value {
        return bolt(d, part, annex, w);
    }
    if bored {
        let loss = e.bored_loss_per_mm.value;
        let value = factor * (1.0 - loss * d) * rho;
        return w.line("embedment strength f_h,k", value, "N/mm²", "EN 1995-1-1 8.16", || {
            format!("{factor} × (1 − {loss} × {d}) × {rho}")
        });
    }
    let power = e.nail_power.value;
    let value = factor * rho * libm::pow(d, power);
    w.line("embedment strength f_h,k", value, "N/mm²", "EN 1995-1-1 8.15", || {
        format!("{factor} × {rho} × {d}^{power}")
    })
}

/// `f_h,α,k` of a bolt at the angle of its part, N/mm²: `f_h,0,k / (k_90 sin² α + cos² α)` (8.31 to 8.33).
pub fn bolt(diameter_mm: f64, part: &Part<'_>, annex: &Joints, w: &mut Working) -> f64 {
    let e = &annex.embedment;
    let d = diameter_mm;
    let along = e.factor.value * (1.0 - e.bored_loss_per_mm.value * d) * part.wood.rho_k;
    let across = if part.wood.softwood { e.across_softwood.value } else { e.across_hardwood.value };
    let k90 = across + e.across_per_mm.value * d;
    let angle = Angle::deg(part.angle_deg);
    let (sine, cosine) = (angle.sin(), angle.cos());
    let value = along / (k90 * sine * sine + cosine * cosine);
    w.line("embedment strength f_h,α,k", value, "N/mm²", "EN 1995-1-1 8.31", || {
        format!("{along:.2} / ({k90:.3} × sin² {a}° + cos² {a}°)", a = part.angle_deg)
    })
}

/// Yield moment of a round nail or bolt `M_y,Rk = 0.3 f_u d^2.6`, of a square one `0.45 f_u d^2.6`, N·mm (8.14, 8.30).
pub fn yield_moment(diameter_mm: f64, tensile_n_mm2: f64, square: bool, annex: &Joints, w: &mut Working) -> f64 {
    let y = &annex.yielding;
    let factor = if square { y.square.value } else { y.round.value };
    let value = factor * tensile_n_mm2 * libm::pow(diameter_mm, y.power.value);
    w.line("yield moment M_y,Rk", value, "N mm", "EN 1995-1-1 8.14, 8.30", || {
        format!("{factor} × {tensile_n_mm2} × {diameter_mm}^{}", y.power.value)
    })
}
