//! Checks to the National Design Specification for wood (allowable stress).
//!
//! US customary units throughout: psi, inches, pounds; psf for loads on area. The caller converts at the door with
//! [`units`]. Figures are those of [`crate::annex::nds`].

pub mod beam;
pub mod column;
pub mod nails;
pub mod spans;
pub mod units;

use serde::Serialize;

/// How far something is used: 1 is all of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Use {
    /// What is asked divided by what there is; [`BEYOND`] when there is nothing, or a figure is no number.
    pub ratio: f64,
    /// Clause.
    pub clause: &'static str,
    /// What is checked, in words of the trade.
    pub name: &'static str,
}

/// How far something is used where it has no capacity at all.
pub const BEYOND: f64 = 1000.0;

impl Use {
    fn new(ratio: f64, clause: &'static str, name: &'static str) -> Self {
        let ratio = if ratio.is_finite() && ratio >= 0.0 { ratio.min(BEYOND) } else { BEYOND };
        Self { ratio, clause, name }
    }
}

/// A root that a square would have; 0 below 0.
fn root(square: f64) -> f64 {
    square.max(0.0).sqrt()
}

/// The blend of NDS for stability: `(1 + r) / k − √(((1 + r) / k)² − r / q)`, r the ratio of the buckling stress to the
/// crushing (bending) stress. 0 where r is no number.
fn blend(ratio: f64, k: f64, q: f64) -> f64 {
    let half = (1.0 + ratio) / k;
    let value = half - root(half * half - ratio / q);
    if value.is_finite() { value.clamp(0.0, 1.0) } else { 0.0 }
}
