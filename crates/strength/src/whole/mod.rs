//! The strength of a whole roof: loads from the job, their way down, and every timber and joint under every
//! combination.

pub mod areas;
pub mod asks;
pub mod effects;
mod fault;
mod feet;
pub mod joints;
mod members;
mod out;
mod refusals;
mod run;
mod sizes;
mod strut_joint;
pub mod timbers;

pub use fault::CheckFault;
pub use feet::PairFeet;
pub use joints::JointUse;
pub use out::{
    Assumed, CheckUse, CombinationOut, FigureOut, Left, MemberUse, Strength, StructuralSize, Totals, Verdict, WallLoad,
};
pub use refusals::Refused;
pub use run::{Checks, check};
