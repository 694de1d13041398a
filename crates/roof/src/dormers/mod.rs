//! Dormers: small roofs that stand on a slope, over a hole in its rafters.

mod cheeks;
mod front;
mod gable;
mod layout;
mod lean_to;
mod parts;

pub use layout::Layout;

use crate::SolveError;
use crate::carcass::Carcass;
use crate::openings::{Owner, Trimmed};
use crate::rules::{self, Id};
use crate::solution::NoticeLevel;
use job::DormerKind;
use parts::Site;

/// Build every dormer over its hole.
///
/// # Errors
/// When a dormer's sizes do not make one.
pub fn place(carcass: &mut Carcass<'_>, trimmed: &Trimmed) -> Result<(), SolveError> {
    let Owner::Dormer(k) = trimmed.hole.owner else { return Ok(()) };
    let Some(dormer) = carcass.job.dormers.get(k) else { return Ok(()) };
    let layout = Layout::of(carcass.job, carcass.surface, &carcass.heights, dormer)
        .map_err(|misfit| trimmed.hole.refused(misfit))?;
    let site = Site { layout: &layout, trimmed };
    match layout.kind {
        DormerKind::Gable => gable::place(carcass, &site),
        DormerKind::LeanTo => lean_to::place(carcass, &site),
    }
    let rule = rules::of(&carcass.job.region).get(Id::OpeningLargeDormer).quote();
    carcass.remark(
        NoticeLevel::Note,
        "dormer-built",
        format!("dormer {}", dormer.name),
        format!(
            "Dormer {} stands on the trimming rafters: its weight and the wind on it come down there. See that a \
             floor or tie holds them together there. {rule}",
            dormer.name
        ),
    );
    Ok(())
}
