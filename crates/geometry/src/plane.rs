//! A plane in space.

use crate::DVec3;

/// The plane `normal · p = offset`. As a half-space its inside is
/// `normal · p <= offset`: the normal points out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    /// Unit normal.
    pub normal: DVec3,
    /// Distance from the datum along the normal, mm.
    pub offset: f64,
}

impl Plane {
    /// The plane through `point` with this unit normal.
    #[must_use]
    pub fn through(point: DVec3, normal: DVec3) -> Self {
        Self { normal, offset: normal.dot(point) }
    }

    /// How far `p` lies outside, mm; negative inside.
    #[must_use]
    pub fn distance(&self, p: DVec3) -> f64 {
        self.normal.dot(p) - self.offset
    }

    /// The same plane facing the other way.
    #[must_use]
    pub fn flipped(&self) -> Self {
        Self { normal: -self.normal, offset: -self.offset }
    }
}
