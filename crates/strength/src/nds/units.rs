//! From metric and back.

/// mm in an inch, exactly.
pub const MM_PER_IN: f64 = 25.4;
/// N in a pound-force, exactly.
pub const N_PER_LB: f64 = 4.448_221_615_260_5;

/// Inches from mm.
#[must_use]
pub fn inches(mm: f64) -> f64 {
    mm / MM_PER_IN
}

/// mm from inches.
#[must_use]
pub fn mm(inches: f64) -> f64 {
    inches * MM_PER_IN
}

/// Pounds from N.
#[must_use]
pub fn pounds(newtons: f64) -> f64 {
    newtons / N_PER_LB
}

/// N from pounds.
#[must_use]
pub fn newtons(pounds: f64) -> f64 {
    pounds * N_PER_LB
}

/// N/mm² from psi.
#[must_use]
pub fn n_per_mm2(psi: f64) -> f64 {
    psi * N_PER_LB / (MM_PER_IN * MM_PER_IN)
}

/// psf from kN/m².
#[must_use]
pub fn psf(kn_per_m2: f64) -> f64 {
    /// Square inches in a square foot.
    const SQUARE_INCHES: f64 = 144.0;
    pounds(kn_per_m2 * 1000.0) * (MM_PER_IN / 1000.0) * (MM_PER_IN / 1000.0) * SQUARE_INCHES
}

/// Feet and inches as the trade writes them: `16-4` for 196 inches.
#[must_use]
pub fn feet_inches(inches: u32) -> String {
    format!("{}-{}", inches / 12, inches % 12)
}
