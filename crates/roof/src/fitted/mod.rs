//! Everything that is fitted to the frame of rafters, in the order in which it
//! is put up: later members see the earlier ones and make way for them.

mod beam;
mod clearing;
mod purlins;
mod boards;
mod contacts;
mod eaves_lines;
mod fascia;

use crate::SolveError;
use crate::carcass::Carcass;

/// Fit all that the job asks for.
///
/// # Errors
/// When something cannot be placed as asked; see [`SolveError`].
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    purlins::place(carcass)?;
    fascia::place(carcass)?;
    Ok(())
}
