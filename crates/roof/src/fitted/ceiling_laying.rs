//! Putting ceiling joists in their places: in one length or in two that lap
//! over a bearing line.

use super::beam::{Beam, covers, crossing, upright};
use super::ceiling_joists::{Fitting, Foot, Laid, Until, beside};
use super::clearing::is_clear;
use super::walls::WallLine;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, TimberId};
use crate::solution::{CutPlace, MemberKind};
use geometry::{DVec2, HalfPlan};
use job::Section;

/// Two joists on a bearing line lap by this much, half on each side of it, mm
/// (common practice).
const LAP: f64 = 600.0;

/// A bearing line carries joists when its top is this near to that of the
/// plates, mm.
const LEVEL_WITH: f64 = 5.0;

/// A line nearer than 60° to a joist (as a cosine) does not carry it.
const ACROSS: f64 = 0.5;

/// A sole plate lies on a joist when its underside is this near to the joist's
/// top, mm.
const LIES_ON: f64 = 0.01;

/// Put a joist in its place; in two lengths lapped over a bearing line when it
/// is longer than the stock.
pub fn lay(
    carcass: &mut Carcass<'_>,
    walls: &[WallLine],
    feet: &[Foot],
    joist: Fitting,
    size: Section,
    laid: &mut Vec<Laid>,
) {
    let remember = |beam: &Beam, id: TimberId| {
        let [from, to] = beam.reach();
        let origin = beam.axes.origin.truncate();
        let dir = beam.axes.along.truncate();
        Laid { id, from: origin + dir * from, dir, length: to - from, half: size.thickness / 2.0 }
    };
    let longest = carcass.job.timber.joint.longest;
    let pieces = if joist.full && joist.beam.length() > longest {
        in_two(carcass, walls, feet, &joist, size).unwrap_or_else(|| vec![joist.beam])
    } else {
        vec![joist.beam]
    };
    for piece in pieces {
        let id = carcass.next_id();
        if piece.kind == MemberKind::CeilingJoist {
            laid.push(remember(&piece, id));
        }
        let mut piece = piece;
        rest_under_soles(carcass, &mut piece);
        carcass.add(piece.timber());
    }
}

/// A joist passes under the sole plates of struts.
fn rest_under_soles(carcass: &Carcass<'_>, beam: &mut Beam) {
    let strip = |b: &crate::marking::Axes, thickness: f64| (b.origin.truncate(), b.along.truncate(), thickness / 2.0);
    for (id, sole) in carcass.built().filter(|(_, t)| t.kind == MemberKind::SolePlate) {
        let axes = sole.axes();
        let corners = crossing(strip(&beam.axes, beam.section.thickness), strip(&axes, sole.section.thickness));
        let over = (axes.origin.z - beam.axes.origin.z - beam.section.depth).abs() < LIES_ON;
        let under =
            |c: &[DVec2; 4]| over && covers(&beam.cells, Made::Top, c) && covers(carcass.wood(id), Made::Underside, c);
        if corners.is_some_and(|c| under(&c)) {
            beam.rests.push((Made::Top, id));
        }
    }
}

/// Two lengths, one on each side of the rafters, and the packing between them
/// over the bearing line; `None` where no line is near enough to the middle.
fn in_two(
    carcass: &Carcass<'_>,
    walls: &[WallLine],
    feet: &[Foot],
    joist: &Fitting,
    size: Section,
) -> Option<Vec<Beam>> {
    let longest = carcass.job.timber.joint.longest;
    let foot = &feet[*joist.feet.first()?];
    let length = joist.beam.length();
    let across = carcass.job.bearings.iter().filter_map(|line| {
        let (a, b) = (DVec2::from_array(line.from), DVec2::from_array(line.to));
        let dir = (b - a).normalize_or_zero();
        let (turn, gap) = (foot.dir.perp_dot(dir), a - foot.at);
        let (at, own) = (gap.perp_dot(dir) / turn, gap.perp_dot(foot.dir) / turn);
        let carries = dir.dot(foot.dir).abs() < ACROSS && own > 0.0 && own < (b - a).length();
        (carries && (line.top - joist.level).abs() < LEVEL_WITH).then_some(at)
    });
    let half_lap = LAP / 2.0;
    let at = across
        .filter(|at| at + half_lap <= longest && length - at + half_lap <= longest && *at > LAP && length - at > LAP)
        .min_by(|a, b| (a - length / 2.0).abs().total_cmp(&(b - length / 2.0).abs()))?;
    let left = joist.beam.axes.across.truncate().dot(joist.beam.axes.origin.truncate() - foot.at) > 0.0;
    let half = foot.half[0];
    // The far length lies on the other side of the rafters.
    let mut far = beside(carcass, walls, feet, *joist.feet.first()?, (size, !left), Until::Wall(f64::INFINITY), &[])?;
    let mut near = joist.beam.clone();
    let end = |at: f64, out: f64| upright(HalfPlan::through(foot.at + foot.dir * at, foot.dir * out));
    near.cut(end(at + half_lap, 1.0), CutUse::Trim, CutPlace::Head);
    far.beam.cut(end(at - half_lap, -1.0), CutUse::Trim, CutPlace::Foot);
    let foot_wall = walls[foot.wall].plate?.0;
    let own = |id: TimberId| id == foot.rafter || id == foot_wall;
    near.rests.retain(|(_, id)| own(*id));
    far.beam.rests.retain(|(_, id)| !own(*id));
    let block_size = Section { thickness: 2.0 * half, depth: size.depth };
    let reach = [at - half_lap, at + half_lap];
    let mut block = Beam::level(MemberKind::Noggin, block_size, foot.at, foot.dir, joist.level, reach);
    block.wall = near.wall;
    let id = carcass.next_id();
    let [first, second] = if left { [Made::Left, Made::Right] } else { [Made::Right, Made::Left] };
    block.rests = vec![(first, id), (second, TimberId(id.0 + 1))];
    is_clear(carcass, &block, &|_| false).then(|| vec![near, far.beam, block])
}
