//! Everything that is fitted to the frame of rafters, in the order in which it
//! is put up: later members see the earlier ones and make way for them.

mod beam;
mod boards;
mod clearing;
mod contacts;
mod eaves_lines;
mod fascia;
mod ceiling_joists;
mod clearing;
mod collars;
mod purlins;
mod struts;
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
    purlins::place(carcass)?;
    fascia::place(carcass)?;
    struts::place(carcass)?;
    collars::place(carcass)?;
    ceiling_joists::place(carcass)?;
    Ok(())
}
