//! Beams and plane frames, by direct stiffness: factored once, solved for many cases of load, and every answer held
//! against equilibrium by code that knows nothing of stiffness.
//!
//! Units are N, mm and rad; stiffnesses N (`ea`) and N mm² (`ei`). In a [`Frame`] x is to the right, y is up and moments
//! turn anticlockwise; a [`Beam`] is the carpenter's: loads and sag down, reactions up.
//!
//! First order, straight bars of one section, no shear deflection, no second-order effects: a strut's buckling is for
//! the check of the member. Shear deflection of a deep timber is for the check of deflection.

mod answer;
mod balance;
mod bar_forces;
mod bar_matrix;
mod beam;
mod fault;
mod frame;
mod mechanism;
mod onset;
mod solve;

pub use answer::{Answer, Cases};
pub use balance::BALANCE;
pub use bar_forces::{BarForces, Extremes, Peak, Station};
pub use beam::{Beam, BeamAnswer, BeamCases, BeamLoad};
pub use fault::{FrameFault, Way};
pub use frame::{Bar, Frame, Hold, Load, Node, Support};
pub use solve::{PIVOT_LEAST, Prepared};
