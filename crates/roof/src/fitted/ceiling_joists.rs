//! Ceiling joists: on the plates, lapped to the sides of the rafters' feet.
//!
//! Full joists run from plate to plate beside the pairs of common rafters and
//! the jacks in line with them. The rafters of hipped ends get stubs, from
//! their plate to the first joist across. All parallel joists lie on one side
//! of their rafters, so that one joist serves both feet of a pair.

use super::beam::{Beam, EDGE, covers, under_tops, upright};
use super::ceiling_laying;
use super::clearing::{cleared, is_clear};
use super::contacts;
use super::walls::{self, WallLine};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, EndOn, Made, Role, TimberId};
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::surface::FaceId;
use geometry::{DVec2, HalfPlan, Plane};
use job::Section;

/// A joist shorter than this is left out, mm.
const SHORTEST: f64 = 150.0;

/// The foot of a joist is whole when it lost less wood than this, mm³.
const SAME_WOOD: f64 = 1.0;

/// A lap or a bearing smaller than this holds nothing, mm².
const LEAST_LAP: f64 = 500.0;

/// Rafters stand in one line when they miss it by less, mm.
const IN_LINE: f64 = 0.01;

/// Joists of jacks run across the building if that is no further than this
/// many times the longest joist beside a common of the same slope.
const NO_LONGER: f64 = 1.05;

/// Joists are drawn past walls by this many thicknesses before they are cut.
const DRAWN_PAST: f64 = 20.0;

/// The tops of joists stay under the roof wherever it is looked at, this far
/// apart, mm.
const LOOK_EVERY: f64 = 250.0;

/// A line nearer than 60° to a joist (as a cosine) does not carry it.
const ACROSS: f64 = 0.5;

/// A rafter on its plate.
pub struct Foot {
    pub rafter: TimberId,
    pub face: FaceId,
    pub wall: usize,
    pub at: DVec2,
    pub dir: DVec2,
    pub half: [f64; 2],
    pub kind: MemberKind,
    pub done: bool,
}

impl Foot {
    /// The side on which the joists of this direction lie: the same for both
    /// ends of a joist.
    fn on_left(&self) -> bool {
        const UPRIGHT: f64 = 1e-6;
        self.dir.x > UPRIGHT || (self.dir.x > -UPRIGHT && self.dir.y > 0.0)
    }
}

/// A joist that lies in its place.
pub struct Laid {
    pub id: TimberId,
    pub from: DVec2,
    pub dir: DVec2,
    pub length: f64,
    pub half: f64,
}

/// Where a joist may end.
#[derive(Clone, Copy, PartialEq)]
pub enum Until {
    /// At the far wall, no further than this, mm.
    Wall(f64),
    /// At the first joist across, or at a wall no further than this, mm.
    Joist(f64),
}

/// Place the ceiling joists.
///
/// # Errors
/// None; joists that cannot lie are spoken of.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(size) = carcass.job.timber.parts.ceiling_joist else { return Ok(()) };
    let walls = walls::all(carcass);
    let mut feet = feet(carcass, &walls);
    let mains = main_faces(&feet);
    let mut laid: Vec<Laid> = Vec::new();
    let mut longest: Vec<(FaceId, f64)> = mains.iter().map(|f| (*f, 0.0)).collect();
    let any_common = feet.iter().any(|f| f.kind == MemberKind::CommonRafter);
    let first = if any_common { MemberKind::CommonRafter } else { MemberKind::CrownRafter };
    for pass in 0..3 {
        for k in 0..feet.len() {
            let foot = &feet[k];
            let main = longest.iter_mut().find(|(f, _)| *f == foot.face);
            let until = match (pass, main) {
                (0, Some(_)) if foot.kind == first || !any_common => Until::Wall(f64::INFINITY),
                (1, Some((_, most))) => Until::Wall(*most * NO_LONGER),
                (2, _) => Until::Joist(longest.iter().map(|(_, l)| *l).fold(0.0, f64::max) * NO_LONGER),
                _ => continue,
            };
            if foot.done {
                continue;
            }
            let Some(joist) = joist(carcass, &walls, &feet, k, size, until, &laid) else { continue };
            if let (0, Some((_, most))) = (pass, longest.iter_mut().find(|(f, _)| *f == feet[k].face)) {
                *most = most.max(joist.length);
            }
            let served = joist.feet.clone();
            ceiling_laying::lay(carcass, &walls, &feet, joist, size, &mut laid);
            for k in served {
                feet[k].done = true;
            }
        }
    }
    speak_of_missing(carcass, &walls, &feet);
    Ok(())
}

fn speak_of_missing(carcass: &mut Carcass<'_>, walls: &[WallLine], feet: &[Foot]) {
    let letter = |wall: usize| carcass.job.walls.get(walls[wall].wall.index()).map_or("", |w| w.letter.as_str());
    let missing: Vec<&Foot> = feet.iter().filter(|f| !f.done).collect();
    let mut letters: Vec<&str> = missing.iter().map(|f| letter(f.wall)).collect();
    letters.sort_unstable();
    letters.dedup();
    if letters.is_empty() {
        return;
    }
    let place = format!("walls {}", letters.join(", "));
    let text = format!(
        "Rafters with no ceiling joist beside their foot, because hips, jacks or ties stand too close or there is no \
         length of plate for one: {}. Strap or block these feet, and trim the ceiling there.",
        missing.len()
    );
    carcass.remark(NoticeLevel::Note, "no-joist-beside-rafter", place, text);
}

/// The rafters that stand on plates, in the order of the frame.
fn feet(carcass: &Carcass<'_>, walls: &[WallLine]) -> Vec<Foot> {
    carcass
        .built()
        .filter_map(|(id, t)| {
            let Role::Rafter { face } = t.role else { return None };
            let wall = walls.iter().position(|w| t.tails.first().is_some_and(|e| e.wall == w.wall))?;
            (t.ends[0] == EndOn::Plate && t.seat.is_some()).then_some(Foot {
                rafter: id,
                face,
                wall,
                at: t.foot,
                dir: t.dir,
                half: t.half,
                kind: t.kind,
                done: false,
            })
        })
        .filter(|f| {
            // Rafters outside a gable stand on no wall.
            let along = walls[f.wall].dir.dot(f.at - walls[f.wall].from);
            along > 0.0 && along < walls[f.wall].length
        })
        .collect()
}

/// The slopes whose rafters have full joists: those with common rafters; over
/// a plan with none, the one with the most rafters.
fn main_faces(feet: &[Foot]) -> Vec<FaceId> {
    let mut faces: Vec<FaceId> = feet.iter().filter(|f| f.kind == MemberKind::CommonRafter).map(|f| f.face).collect();
    if faces.is_empty() {
        let count = |face: FaceId| feet.iter().filter(|f| f.face == face).count();
        faces.extend(feet.iter().map(|f| f.face).max_by_key(|f| (count(*f), core::cmp::Reverse(*f))));
    }
    faces.sort_unstable();
    faces.dedup();
    faces
}

/// A joist that fits.
pub struct Fitting {
    pub beam: Beam,
    /// From wall to wall on its centre line, mm.
    pub length: f64,
    /// The feet that it is lapped to.
    pub feet: Vec<usize>,
    /// Height of its underside, mm.
    pub level: f64,
    /// From wall to wall.
    pub full: bool,
}

/// The joist beside a rafter's foot, on the side of its fellows or else on the
/// other.
fn joist(
    carcass: &Carcass<'_>,
    walls: &[WallLine],
    feet: &[Foot],
    k: usize,
    size: Section,
    until: Until,
    laid: &[Laid],
) -> Option<Fitting> {
    let left = feet[k].on_left();
    [left, !left].into_iter().find_map(|left| beside(carcass, walls, feet, k, (size, left), until, laid))
}

pub fn beside(
    carcass: &Carcass<'_>,
    walls: &[WallLine],
    feet: &[Foot],
    k: usize,
    (size, left): (Section, bool),
    until: Until,
    laid: &[Laid],
) -> Option<Fitting> {
    let foot = &feet[k];
    let half = size.thickness / 2.0;
    let out = if left { foot.half[1] + half } else { -foot.half[0] - half };
    let from = foot.at + foot.dir.perp() * out;
    let wall = &walls[foot.wall];
    let along = wall.dir.dot(from - wall.from);
    let (plate, mut level) = wall.plate?;
    if along < half || along > wall.length - half {
        return None;
    }
    let edges = [-half, 0.0, half].map(|e| walls::far_side(walls, from + foot.dir.perp() * e, foot.dir));
    let [Some(right_end), Some((length, far)), Some(left_end)] = edges else { return None };
    let across = if let Until::Joist(_) = until { first_across(laid, from, foot.dir, length) } else { None };
    let (Until::Wall(most) | Until::Joist(most)) = until;
    if across.is_none() && length > most {
        return None;
    }
    let far_plate = walls[far].plate.filter(|_| across.is_none());
    level = far_plate.map_or(level, |(_, other)| level.max(other));
    let past = length.max(right_end.0).max(left_end.0) + DRAWN_PAST * size.thickness;
    let mut beam = Beam::level(MemberKind::CeilingJoist, size, from, foot.dir, level, [0.0, past]);
    beam.wall = Some(wall.wall);
    let plane = wall.plane?;
    beam.cut(under_tops(plane, carcass.heights.upstand), CutUse::Trim, CutPlace::Foot);
    let mut served = vec![k];
    let rafter_side = if left { Made::Right } else { Made::Left };
    if level == wall.plate?.1 {
        beam.rests.push((Made::Underside, plate));
    }
    beam.rests.push((rafter_side, foot.rafter));
    if let Some(k) = across {
        let joist = &laid[k];
        let toward = if joist.dir.perp().dot(foot.dir) > 0.0 { joist.dir.perp() } else { -joist.dir.perp() };
        let side = HalfPlan::through(joist.from - toward * joist.half, toward);
        beam.cut(upright(side), CutUse::Against(joist.id), CutPlace::Head);
    } else {
        let mut ends = vec![right_end.1, far, left_end.1];
        ends.dedup();
        for w in ends {
            beam.cut(upright(walls[w].inside()), CutUse::Trim, CutPlace::Head);
        }
        if let Some(plane) = walls[far].plane {
            beam.cut(under_tops(plane, carcass.heights.upstand), CutUse::Trim, CutPlace::Head);
        }
        beam.rests.extend(far_plate.filter(|(_, l)| *l == level).map(|(id, _)| (Made::Underside, id)));
        let facing = |f: &&Foot| {
            f.wall == far && f.dir.dot(foot.dir) < 0.0 && foot.dir.perp().dot(f.at - foot.at).abs() < IN_LINE
        };
        for (k, mate) in feet.iter().enumerate().filter(|(_, f)| facing(f)) {
            if !mate.done {
                served.push(k);
                beam.rests.push((rafter_side, mate.rafter));
            }
        }
    }
    let mut full = across.is_none();
    if let (Until::Joist(_), false) = (until, is_clear(carcass, &beam, &|_| false)) {
        // A stub may be cut back as long as it keeps its foot whole.
        let whole = wood_at_foot(&beam);
        let keeps_foot = |b: &Beam| (wood_at_foot(b) - whole).abs() < SAME_WOOD;
        beam = cleared(carcass, beam, SHORTEST, &|_| false).into_iter().find(keeps_foot)?;
        beam.rests.retain(|(_, id)| *id == plate || *id == foot.rafter);
        served.truncate(1);
        full = false;
    }
    // Rafters may have been cut for an opening: what it was to lie on must be there.
    let held = |(tag, id): &(Made, TimberId)| contacts::area(&beam.cells, *tag, carcass.wood(*id)) > LEAST_LAP;
    let rests: Vec<(Made, TimberId)> = beam.rests.iter().copied().filter(held).collect();
    let lapped = rests.iter().any(|(_, id)| *id == foot.rafter);
    beam.rests = rests;
    served.retain(|k| beam.rests.iter().any(|(_, id)| *id == feet[*k].rafter));
    let fits =
        lapped && beam.length() >= SHORTEST && under_roof(carcass, &beam) && is_clear(carcass, &beam, &|_| false);
    fits.then_some(Fitting { beam, length, feet: served, level, full })
}

/// How much wood a joist has in its first [`SHORTEST`], mm³.
fn wood_at_foot(beam: &Beam) -> f64 {
    let end = Plane::through(beam.axes.origin + beam.axes.along * SHORTEST, beam.axes.along);
    beam.cells.iter().filter_map(|c| c.clipped(end, Made::Inner)).map(|c| c.volume()).sum()
}

/// The nearest joist that a line along `dir` meets within `length`.
fn first_across(laid: &[Laid], from: DVec2, dir: DVec2, length: f64) -> Option<usize> {
    let meets = |j: &Laid| {
        let turn = dir.perp_dot(j.dir);
        let gap = j.from - from;
        let (along, own) = (gap.perp_dot(j.dir) / turn, gap.perp_dot(dir) / turn);
        (turn.abs() > ACROSS && along > 0.0 && along < length && own > 0.0 && own < j.length).then_some(along)
    };
    let all = laid.iter().enumerate().filter_map(|(k, j)| meets(j).map(|t| (t, k)));
    all.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, k)| k)
}

/// Whether both top arrises of a joist stay under the tops of the rafters.
fn under_roof(carcass: &Carcass<'_>, beam: &Beam) -> bool {
    let [from, to] = beam.reach();
    let top = beam.axes.origin.z + beam.section.depth;
    let count = ((to - from) / LOOK_EVERY).ceil().max(1.0);
    let half = beam.section.thickness / 2.0 - EDGE;
    (1..count as usize).all(|k| {
        let at = beam.axes.origin + beam.axes.along * (from + (to - from) * k as f64 / count);
        [-half, half].iter().all(|e| {
            let p = (at + beam.axes.across * *e).truncate();
            // The ends are cut to their slopes: only what is left of them counts.
            let low = !covers(&beam.cells, Made::Top, &[p]);
            low || walls::roof_over(carcass.surface, p).is_none_or(|z| z + carcass.heights.upstand >= top)
        })
    })
}
