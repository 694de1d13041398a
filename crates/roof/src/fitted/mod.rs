//! Everything that is fitted to the frame of rafters, in the order in which it
//! is put up: later members see the earlier ones and make way for them.

pub mod beam;
mod boards;
mod clearing;
mod contacts;
mod eaves_lines;
mod fascia;
mod purlins;

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
    fascia::place(carcass)?;
    Ok(())
}
