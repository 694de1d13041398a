//! A slope as the carpenter measures on it: along the plate line, and up the
//! tops of the rafters.

use geometry::surface::RoofPlane;
use geometry::{DVec2, DVec3, Plane};

/// The raised plane of a face, in which the tops of its rafters lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// Pitch plane.
    pub plane: RoofPlane,
    /// Unit vector along the plate line, the building on its left.
    pub axis: DVec2,
    /// Cosine of the pitch.
    pub cos: f64,
    /// Sine of the pitch.
    pub sin: f64,
    /// Plumb height of the tops above the pitch plane, mm.
    pub upstand: f64,
}

impl Slope {
    /// The slope over a pitch plane.
    pub fn new(plane: RoofPlane, upstand: f64) -> Self {
        let cos = 1.0 / (1.0 + plane.tan_pitch * plane.tan_pitch).sqrt();
        Self { plane, axis: -plane.inward.perp(), cos, sin: plane.tan_pitch * cos, upstand }
    }

    /// Unit vector up the slope.
    pub fn up(&self) -> DVec3 {
        (self.plane.inward * self.cos).extend(self.sin)
    }

    /// Unit vector square to the slope, upwards.
    pub fn normal(&self) -> DVec3 {
        (self.plane.inward * -self.sin).extend(self.cos)
    }

    /// The point on the tops of the rafters `x` along the axis and `s` up the
    /// slope from plumb over the plate line, mm.
    pub fn point(&self, x: f64, s: f64) -> DVec3 {
        let flat = self.axis * x + self.plane.inward * (self.plane.offset + s * self.cos);
        flat.extend(self.plane.base_height + self.upstand + s * self.sin)
    }

    /// The plane square to the slope at `s`, facing up it.
    pub fn square(&self, s: f64) -> Plane {
        Plane::through(self.point(0.0, s), self.up())
    }

    /// Plan distance inwards from the plate line of a point `s` up the slope
    /// and `deep` below the tops, square to them, mm.
    pub fn inward(&self, s: f64, deep: f64) -> f64 {
        s * self.cos + deep * self.sin
    }
}
