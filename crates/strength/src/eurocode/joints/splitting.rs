//! A force across the grain that would split the timber: EN 1995-1-1 8.1.4.

use super::Use;
use crate::annex::joints::Joints;
use crate::working::Working;

/// `F_90,Rk = 14 b √(h_e / (1 − h_e / h))` of softwood, N (8.4), without a punched plate (w = 1). `from_edge_mm` is `h_e`,
/// the distance from the edge that the force goes towards to the furthest fastener. 0 for impossible sizes.
pub fn characteristic_n(breadth_mm: f64, depth_mm: f64, from_edge_mm: f64, annex: &Joints, w: &mut Working) -> f64 {
    let factor = annex.splitting.factor.value;
    // Fasteners at the far edge itself cannot split anything off; the formula has no end there.
    const NEAREST_TO_FAR_EDGE: f64 = 0.95;
    let he = from_edge_mm.min(NEAREST_TO_FAR_EDGE * depth_mm);
    let value = factor * breadth_mm * (he / (1.0 - he / depth_mm)).sqrt();
    let value = if value.is_finite() { value.max(0.0) } else { 0.0 };
    w.line("capacity against splitting F_90,Rk", value, "N", "EN 1995-1-1 8.4", || {
        format!("{factor} × {breadth_mm} × √({he:.0} / (1 − {he:.0} / {depth_mm}))")
    })
}

/// The check: `F_v,Ed ≤ F_90,Rd`. `shear_n` is the larger shear in the timber either side of the joint.
pub fn check(shear_n: f64, characteristic_n: f64, kmod: f64, annex: &Joints, w: &mut Working) -> Use {
    let design = characteristic_n * kmod / annex.partial.connection.value;
    let used = Use::of(shear_n, design, "EN 1995-1-1 8.1.4", "splitting at the joint");
    w.line("splitting", used.ratio, "", used.clause, || format!("{shear_n:.0} / {design:.0}"));
    used
}
