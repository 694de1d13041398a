//! Everything that is fitted to the frame of rafters, in the order in which it
//! is put up: later members see the earlier ones and make way for them.

mod beam;
mod binders;
mod ceiling_joists;
mod clearing;
mod collars;
mod hangers;
mod purlins;
mod struts;
mod ties;
mod walls;

use crate::SolveError;
use crate::carcass::Carcass;

/// Fit all that the job asks for.
///
/// # Errors
/// When something cannot be placed as asked; see [`SolveError`].
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    purlins::place(carcass)?;
    struts::place(carcass)?;
    collars::place(carcass)?;
    ties::place(carcass)?;
    ceiling_joists::place(carcass)?;
    binders::place(carcass)?;
    hangers::place(carcass)?;
    Ok(())
}
