//! Members: EN 1995-1-1 sections 6 and 7.
//!
//! Every check takes plain figures and a [`Working`](crate::working::Working), in which it writes each step, and gives
//! back one [`Use`]. Forces and moments are design values (factored) in N and N·mm; sizes mm; stresses N/mm². Nothing
//! is kept or allocated while no working is asked for.
//!
//! What is not covered: tapered, curved and glued timber, torsion, tension across the grain apart from notches at
//! supports, fire, and vibration.

mod bearing;
mod column;
mod deflection;
mod design;
mod lateral;
mod notching;
mod say;
mod section;
mod shear;
mod sizing;
mod stress;

pub use bearing::{Contact, Support, angle_strength, bearing, bearing_at_angle, effective_contact};
pub use column::{Axis, Buckling, Lengths, buckling, column};
pub use deflection::{
    Finish, Movement, Sag, Span, Variable, deflection, deflection_limit, movement, sag_of_point, sag_of_udl,
};
pub use design::Design;
pub use lateral::{Edge, Lateral, SpanLoad, SpanLoadAt, lateral_stability, lateral_torsional};
pub use notching::{Reach, hole_of_trade, notch_of_trade};
pub use section::Section;
pub use shear::{Notch, NotchFace, notch_factor, shear, shear_at_notch};
pub use sizing::smallest_that_passes;
pub use stress::{Forces, at_notch, at_section};

/// How far a member is used in one check: 1 is all of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Use {
    /// What is asked of the member over what it can give. Infinite when it cannot be worked out (a size of nothing,
    /// a figure that is no number): what cannot be shown does not pass.
    pub ratio: f64,
    /// Clause of the code.
    pub clause: &'static str,
    /// What was checked, in a word or two.
    pub name: &'static str,
}

impl Use {
    /// A result; a ratio that is no number or below zero counts as infinite.
    #[must_use]
    pub const fn of(ratio: f64, clause: &'static str, name: &'static str) -> Self {
        let ratio = if ratio >= 0.0 { ratio } else { f64::INFINITY };
        Self { ratio, clause, name }
    }

    /// Whether the check is met.
    #[must_use]
    pub const fn passes(&self) -> bool {
        self.ratio <= 1.0
    }

    /// The one that is used further.
    #[must_use]
    pub const fn or_worse(self, other: Self) -> Self {
        if other.ratio > self.ratio { other } else { self }
    }
}

/// The greater of two, or no number when either is none (unlike [`f64::max`], which would hide it).
const fn greater(a: f64, b: f64) -> f64 {
    if a > b || a.is_nan() { a } else { b }
}

/// At most `limit`, keeping what is no number.
const fn at_most(value: f64, limit: f64) -> f64 {
    if value > limit { limit } else { value }
}

#[cfg(test)]
mod tests {
    use super::{Use, at_most, greater};

    #[test]
    fn what_is_no_number_is_not_hidden() {
        assert!(greater(f64::NAN, 1.0).is_nan() && greater(1.0, f64::NAN).is_nan() && at_most(f64::NAN, 1.0).is_nan());
        assert_eq!((greater(1.0, 2.0), greater(2.0, 1.0), at_most(2.0, 1.0)), (2.0, 2.0, 1.0));
        assert!(
            !Use::of(f64::NAN, "", "").passes() && !Use::of(-1.0, "", "").passes() && Use::of(1.0, "", "").passes()
        );
    }

    #[test]
    fn the_worse_of_two_uses() {
        let [less, more] = [0.4, 0.6].map(|ratio| Use::of(ratio, "", ""));
        assert_eq!((less.or_worse(more), more.or_worse(less)), (more, more));
    }
}
