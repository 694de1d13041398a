//! Lengths as whole numbers, so that sums are exact and the same everywhere.

/// Units in 1 mm. A plan is made for sizes rounded up to a hundredth of a millimetre, and it is this problem whose
/// best plan is proven.
pub(super) const UNITS: f64 = 100.0;

/// Rounding of sums before they are rounded up, in units: 1e-6 mm.
const CREEP: f64 = 1e-4;

/// Millimetres to units, rounded up.
pub(super) fn up(mm: f64) -> i64 {
    (mm * UNITS - CREEP).ceil() as i64
}

/// Millimetres to units, rounded down.
pub(super) fn down(mm: f64) -> i64 {
    (mm * UNITS + CREEP).floor() as i64
}
