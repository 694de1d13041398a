//! An angle, and the only door to trigonometry.

/// An angle. Inside it is radians; carpenters and files speak degrees.
///
/// All trigonometry of the project goes through this type (or `libm` beneath
/// it) so that a cut has the same bits natively and in WebAssembly.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Angle(f64);

impl Angle {
    /// A right angle.
    pub const RIGHT: Angle = Angle(core::f64::consts::FRAC_PI_2);

    /// From degrees.
    #[must_use]
    pub const fn deg(degrees: f64) -> Self {
        Self(degrees * (core::f64::consts::PI / 180.0))
    }

    /// From radians.
    #[must_use]
    pub const fn rad(radians: f64) -> Self {
        Self(radians)
    }

    /// The angle whose tangent is `rise / run`, in the right quadrant.
    #[must_use]
    pub fn from_rise_run(rise: f64, run: f64) -> Self {
        Self(libm::atan2(rise, run))
    }

    /// The angle with this tangent, in -90°..90°.
    #[must_use]
    pub fn from_tan(tan: f64) -> Self {
        Self(libm::atan(tan))
    }

    /// The angle with this sine; the argument is clamped to -1..1.
    #[must_use]
    pub fn from_sin(sin: f64) -> Self {
        Self(libm::asin(sin.clamp(-1.0, 1.0)))
    }

    /// The angle with this cosine; the argument is clamped to -1..1.
    #[must_use]
    pub fn from_cos(cos: f64) -> Self {
        Self(libm::acos(cos.clamp(-1.0, 1.0)))
    }

    /// In degrees.
    #[must_use]
    pub const fn to_deg(self) -> f64 {
        self.0 * (180.0 / core::f64::consts::PI)
    }

    /// In radians.
    #[must_use]
    pub const fn to_rad(self) -> f64 {
        self.0
    }

    /// Sine.
    #[must_use]
    pub fn sin(self) -> f64 {
        libm::sin(self.0)
    }

    /// Cosine.
    #[must_use]
    pub fn cos(self) -> f64 {
        libm::cos(self.0)
    }

    /// Tangent.
    #[must_use]
    pub fn tan(self) -> f64 {
        libm::tan(self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::Angle;

    #[test]
    fn degrees_go_in_and_out() {
        assert!((Angle::deg(30.0).sin() - 0.5).abs() < 1e-15);
        assert!((Angle::from_rise_run(1.0, 1.0).to_deg() - 45.0).abs() < 1e-12);
        assert_eq!(Angle::from_sin(1.0 + 1e-12).to_deg(), 90.0);
    }
}
