//! Everything that is fitted to the frame of rafters, in the order in which it
//! is put up: later members see the earlier ones and make way for them.

mod barge;
pub mod beam;
mod binders;
mod boards;
mod ceiling_joists;
mod ceiling_laying;
mod clearing;
mod collars;
pub mod contacts;
mod eaves_lines;
mod fascia;
mod fillet;
mod hangers;
mod hatch;
pub mod ladder;
mod left_out;
mod noggins;
mod purlins;
mod soffit;
mod sprockets;
mod struts;
mod ties;
mod trimmers;
pub mod verges;
mod walls;

pub use hatch::{Hatch, hangers, plan_of};

use crate::SolveError;
use crate::carcass::Carcass;
use crate::lengthening;
use crate::openings;

/// Fit all that the job asks for.
///
/// # Errors
/// When something cannot be placed as asked; see [`SolveError`].
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    openings::place(carcass)?;
    // What carries the rafters and what they carry, from inside.
    purlins::place(carcass)?;
    struts::place(carcass)?;
    collars::place(carcass)?;
    ties::place(carcass)?;
    ceiling_joists::place(carcass)?;
    hatch::place(carcass)?;
    binders::place(carcass)?;
    hangers::place(carcass)?;
    // What keeps rafters apart, and the verges.
    ladder::place(carcass)?;
    noggins::place(carcass)?;
    // The eaves, and the boards that meet there.
    sprockets::place(carcass)?;
    fascia::place(carcass)?;
    soffit::place(carcass)?;
    fillet::place(carcass)?;
    barge::place(carcass)?;
    openings::speak_of_crossings(carcass);
    // Last, when every timber has its whole length.
    lengthening::place(carcass)?;
    Ok(())
}
