//! Purlins: level timbers under the rafters of a slope.

mod ends;
mod set;
mod stretch;

use super::beam::Beam;
use super::clearing::cleared;
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId};
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::Angle;
use geometry::surface::{ArcId, FaceId, WallId};
use job::PurlinTimber;

/// A purlin shorter than this carries no two rafters and is left out, mm.
const SHORTEST: f64 = 300.0;

/// A purlin that other timbers take more than this off is spoken of, mm.
const WORTH_A_WORD: f64 = 100.0;

/// A face stands on its plates when its outline comes this near to its base
/// line, mm.
const ON_PLATE: f64 = 0.5;

/// A mitre of a purlin at a line of the surface: its mate's id is known only
/// when all purlins stand.
struct Mitre {
    timber: TimberId,
    cut: Made,
    arc: ArcId,
    row: usize,
}

/// Place the purlins of every slope.
///
/// # Errors
/// When a purlin is asked for above the top of a slope.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(purlin) = carcass.job.timber.parts.purlin.clone() else { return Ok(()) };
    let mut mitres = Vec::new();
    for k in 0..carcass.surface.faces.len() {
        let face = FaceId(k as u32);
        for (row, inwards) in rows(carcass, face, &purlin)?.into_iter().enumerate() {
            for stretch in stretch::at(carcass.surface, face, inwards) {
                one(carcass, &purlin, (face, row, inwards), &stretch, &mut mitres);
            }
        }
    }
    pair(carcass, &mitres);
    Ok(())
}

/// The distances in plan from the face's base line at which it has purlins, mm.
fn rows(carcass: &Carcass<'_>, face: FaceId, purlin: &PurlinTimber) -> Result<Vec<f64>, SolveError> {
    let [low, high] = stretch::depth(carcass.surface, face);
    let middle = (low + high) / 2.0;
    // Slopes that start higher up have no plate to measure from.
    if purlin.up.is_empty() || low > ON_PLATE {
        return Ok(vec![middle]);
    }
    let cos = Angle::deg(carcass.surface.face(face).plane.pitch_deg).cos();
    let outside = |up: &&f64| !(**up * cos > low && **up * cos < high);
    if let Some(up) = purlin.up.iter().find(outside) {
        let wall = letter(carcass, wall_of(carcass, face));
        return Err(SolveError::PurlinOutside { wall, up: *up, longest: high / cos });
    }
    Ok(purlin.up.iter().map(|up| up * cos).collect())
}

/// The wall a face is listed under.
fn wall_of(carcass: &Carcass<'_>, face: FaceId) -> Option<WallId> {
    carcass.surface.face(face).walls.first().copied()
}

fn letter(carcass: &Carcass<'_>, wall: Option<WallId>) -> String {
    wall.and_then(|w| carcass.job.walls.get(w.index())).map_or_else(String::new, |w| w.letter.clone())
}

/// Place one purlin, or what other timbers leave of it.
fn one(
    carcass: &mut Carcass<'_>,
    purlin: &PurlinTimber,
    (face, row, inwards): (FaceId, usize, f64),
    stretch: &stretch::Stretch,
    mitres: &mut Vec<Mitre>,
) {
    let wall = wall_of(carcass, face);
    let mut beam = set::drawn(carcass, purlin, face, inwards, stretch.reach);
    beam.wall = wall;
    let mut tags = Vec::new();
    for (arc, at) in stretch.ends.into_iter().zip([CutPlace::Foot, CutPlace::Head]) {
        if let Some(tag) = ends::end_at(carcass, &mut beam, arc, at) {
            tags.push((tag, arc));
        }
    }
    let wanted = beam.length();
    let own = |carcass: &Carcass<'_>, id: TimberId| carcass.timber(id).role == Role::Rafter { face };
    let sits = purlin.set == job::PurlinSet::Plumb;
    let pieces = cleared(carcass, beam, SHORTEST, &|id| sits && own(carcass, id));
    let left: f64 = pieces.iter().map(Beam::length).sum();
    if left + WORTH_A_WORD < wanted {
        let place = format!("wall {}", letter(carcass, wall));
        let text = if pieces.is_empty() {
            format!("The purlin {wanted:.0} mm long here would run into other timbers and is left out.")
        } else {
            format!(
                "The purlin here is cut back from {wanted:.0} mm to {left:.0} mm by timbers in its way: see that its \
                 ends are carried."
            )
        };
        carcass.remark(NoticeLevel::Warn, "purlin-cut-back", place, text);
    }
    for mut piece in pieces {
        let rafters = set::carries(carcass, &mut piece, purlin, face);
        let id = carcass.next_id();
        mitres.extend(tags.iter().filter(|(tag, _)| piece.has(*tag)).map(|&(cut, arc)| Mitre {
            timber: id,
            cut,
            arc,
            row,
        }));
        carcass.add(Timber { slot: row as u16, ..piece.timber() });
        for (rafter, notch) in rafters {
            carcass.notch(rafter, notch);
        }
    }
}

/// Tell the purlins that meet on a mitre of one another.
fn pair(carcass: &mut Carcass<'_>, mitres: &[Mitre]) {
    for a in mitres {
        let mate = mitres.iter().find(|b| b.arc == a.arc && b.row == a.row && b.timber != a.timber);
        if let (Some(mate), Made::Cut(k)) = (mate, a.cut)
            && let Some(cut) = carcass.timber_mut(a.timber).cuts.get_mut(usize::from(k))
        {
            cut.purpose = CutUse::Mitre(mate.timber);
        }
    }
}

/// The purlins that were placed here, with their ids.
pub fn placed<'c>(carcass: &'c Carcass<'_>) -> impl Iterator<Item = (TimberId, &'c Timber)> {
    carcass.built().filter(|(_, t)| t.kind == MemberKind::Purlin && matches!(t.role, Role::Fitted { .. }))
}
