//! Space that openings want free of timber, and what passes through it all the
//! same.

use super::{Trimmed, rule};
use crate::carcass::Carcass;
use crate::fitted::beam::{Beam, axes};
use crate::fitted::plan_of;
use crate::frame::timber::Made;
use crate::solution::{MemberKind, NoticeLevel};
use geometry::Cell;
use job::{Opening, OpeningKind, Section};

/// A stack is taken to stand from so far below the datum to so far above, mm:
/// past any roof.
const STACK: f64 = 100_000.0;

/// Headroom that is kept above a hatch, mm: a person climbs through it (common
/// practice).
const HEADROOM: f64 = 1000.0;

/// Space that an opening wants free.
#[derive(Clone, Debug)]
pub struct Void {
    /// What the opening is, with its name.
    pub name: String,
    /// It passes through the ceiling: joists are trimmed round it.
    pub plumb: bool,
    /// The space.
    pub cell: Cell<Made>,
}

/// The space that a trimmed hole wants free: between its trimming rafters and
/// trimmers, as deep as the rafters.
pub fn of_hole(carcass: &Carcass<'_>, trimmed: &Trimmed) -> Option<Void> {
    let hole = &trimmed.hole;
    let depth = carcass.job.timber.rafter.size.depth;
    let slope = &hole.slope;
    let origin = slope.point(trimmed.inner[0], (hole.s[0] + hole.s[1]) / 2.0) - slope.normal() * depth;
    let size = Section { thickness: hole.s[1] - hole.s[0], depth };
    let axes = axes(origin, slope.axis.extend(0.0), slope.normal());
    let beam = Beam::new(MemberKind::Trimmer, size, axes, [0.0, trimmed.inner[1] - trimmed.inner[0]]);
    let cell = beam.cells.into_iter().next()?;
    Some(Void { name: format!("{} {}", hole.what, hole.name), plumb: false, cell })
}

/// The upright space of a chimney with its clearance, or of a hatch with the
/// headroom over it.
pub fn upright(carcass: &Carcass<'_>, opening: &Opening) -> Option<Void> {
    let (word, clear, z) = match opening.kind {
        OpeningKind::RoofWindow => return None,
        OpeningKind::Chimney => ("chimney", rule::from_face(carcass.job, opening.flue_wall), [-STACK, STACK]),
        OpeningKind::Hatch => {
            let plate = carcass.job.walls.get(opening.wall)?.plate;
            let joists = carcass.job.timber.parts.ceiling_joist.map_or(0.0, |j| j.depth);
            ("hatch", 0.0, [plate, plate + joists + HEADROOM])
        }
    };
    let cell = plan_of(carcass, opening, clear)?.block(z);
    Some(Void { name: format!("{word} {}", opening.name), plumb: true, cell })
}

/// Say what was fitted through an opening all the same: it must be cut and
/// trimmed on site.
pub fn speak_of_crossings(carcass: &mut Carcass<'_>) {
    let mut said: Vec<(String, &'static str, usize)> = Vec::new();
    for void in &carcass.voids {
        for id in carcass.in_the_way(core::slice::from_ref(&void.cell)) {
            let kind = carcass.timber(id).kind.name();
            match said.iter_mut().find(|(name, k, _)| *name == void.name && *k == kind) {
                Some((_, _, count)) => *count += 1,
                None => said.push((void.name.clone(), kind, 1)),
            }
        }
    }
    for (name, kind, count) in said {
        let text = format!(
            "{count} × {kind} would pass through {name}: cut and trim there, or move the opening. What they carried \
             needs another support."
        );
        carcass.remark(NoticeLevel::Warn, "timber-in-opening", name, text);
    }
}
