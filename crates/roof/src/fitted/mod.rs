//! Everything that is fitted to the frame of rafters, in the order in which it
//! is put up: later members see the earlier ones and make way for them.

mod barge;
mod beam;
mod boards;
mod clearing;
mod contacts;
mod eaves_lines;
mod fascia;
mod fillet;
mod ladder;
mod noggins;
mod purlins;
mod soffit;
mod sprockets;
mod verges;

use crate::SolveError;
use crate::carcass::Carcass;
use crate::openings;

/// Fit all that the job asks for.
///
/// # Errors
/// When something cannot be placed as asked; see [`SolveError`].
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    openings::place(carcass)?;
    purlins::place(carcass)?;
    ladder::place(carcass)?;
    noggins::place(carcass)?;
    sprockets::place(carcass)?;
    fascia::place(carcass)?;
    soffit::place(carcass)?;
    fillet::place(carcass)?;
    barge::place(carcass)?;
    Ok(())
}
