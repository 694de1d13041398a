//! Space that openings want free of timber, and what passes through it all the
//! same.

use super::hole::Owner;
use super::{Hole, Trimmed, rule};
use crate::carcass::Carcass;
use crate::fitted::beam::{Beam, axes};
use crate::frame::timber::Made;
use crate::solution::{MemberKind, NoticeLevel};
use geometry::{Cell, DVec3};
use job::{OpeningKind, Section};

/// Upright space through which a stack passes reaches this far above and below
/// its slope, mm: past any roof.
const PAST_ROOF: f64 = 20_000.0;

/// Space that an opening wants free.
#[derive(Clone, Debug)]
pub struct Void {
    /// What the opening is, with its name.
    pub name: String,
    /// The space.
    pub cell: Cell<Made>,
}

/// The space that a trimmed hole wants free: between its trimming rafters and
/// trimmers, as deep as the rafters; for a chimney also upright round the
/// stack, above the ceiling.
pub fn of_hole(carcass: &Carcass<'_>, trimmed: &Trimmed) -> Vec<Void> {
    let hole = &trimmed.hole;
    let depth = carcass.job.timber.rafter.size.depth;
    let slope = &hole.slope;
    let origin = slope.point(trimmed.inner[0], (hole.s[0] + hole.s[1]) / 2.0) - slope.normal() * depth;
    let size = Section { thickness: hole.s[1] - hole.s[0], depth };
    let along = slope.axis.extend(0.0);
    let name = format!("{} {}", hole.what, hole.name);
    let square = block(size, origin, [along, slope.normal()], trimmed.inner[1] - trimmed.inner[0]);
    let mut out: Vec<Void> = square.into_iter().map(|cell| Void { name: name.clone(), cell }).collect();
    let joists = carcass.job.timber.parts.ceiling_joist.map_or(0.0, |j| j.depth);
    out.extend(stack(carcass, hole, slope.plane.base_height + joists).map(|cell| Void { name, cell }));
    out
}

/// The upright space of a chimney and its clearance from a height upwards.
pub fn stack(carcass: &Carcass<'_>, hole: &Hole, from: f64) -> Option<Cell<Made>> {
    let Owner::Opening(k) = hole.owner else { return None };
    let opening = carcass.job.openings.get(k).filter(|o| o.kind == OpeningKind::Chimney)?;
    let clear = rule::from_face(carcass.job, opening.flue_wall);
    // The upper edge of the hole lies over the upper face of the clearance.
    let high = hole.slope.inward(hole.s[1], 0.0);
    let size = Section { thickness: opening.height + 2.0 * clear, depth: PAST_ROOF };
    let middle = high - size.thickness / 2.0;
    let flat = hole.slope.axis * hole.x[0] + hole.slope.plane.inward * (hole.slope.plane.offset + middle);
    block(size, flat.extend(from), [hole.slope.axis.extend(0.0), DVec3::Z], hole.x[1] - hole.x[0])
}

fn block(size: Section, origin: DVec3, [along, up]: [DVec3; 2], length: f64) -> Option<Cell<Made>> {
    Beam::new(MemberKind::Trimmer, size, axes(origin, along, up), [0.0, length]).cells.into_iter().next()
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
