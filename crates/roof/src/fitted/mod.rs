//! Everything that is fitted to the frame of rafters, in the order in which it
//! is put up: later members see the earlier ones and make way for them.

mod barge;
pub mod beam;
mod boards;
mod ceiling_joists;
mod clearing;
mod collars;
mod contacts;
mod eaves_lines;
mod fascia;
mod fillet;
pub mod ladder;
mod noggins;
mod purlins;
mod soffit;
mod sprockets;
mod struts;
pub mod verges;
mod walls;

use crate::SolveError;
use crate::carcass::Carcass;
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
    ceiling_joists::place(carcass)?;
    // The edges, from outside.
    ladder::place(carcass)?;
    noggins::place(carcass)?;
    sprockets::place(carcass)?;
    fascia::place(carcass)?;
    soffit::place(carcass)?;
    fillet::place(carcass)?;
    barge::place(carcass)?;
    Ok(())
}
