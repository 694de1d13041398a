//! Collars: level, across pairs of common rafters, lapped on their sides.

use super::beam::{Beam, under_tops, upright};
use super::clearing::is_clear;
use super::contacts;
use super::left_out::Tally;
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId};
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::surface::{FaceId, WallId};
use geometry::{DVec2, HalfPlan};
use job::CollarTimber;
use std::collections::HashSet;

/// Rafters face one another when their directions are this near to opposite
/// (as a cosine: 3°), and their heads near together.
const OPPOSITE: f64 = -0.998;

/// Rafters whose heads miss one another by more than this do not stand in one
/// plane, nor do parallel ones whose centre lines do, mm.
const ONE_PLANE: f64 = 1.0;

/// Rafters that turn by less than this (as a sine) are parallel.
const PARALLEL: f64 = 1e-6;

/// A collar lies on a rafter's side when it misses it by less, mm: well inside
/// the gap that contact may have.
const ON_SIDE: f64 = 0.01;

/// A collar shorter than this along its underside is no use, mm.
const SHORTEST: f64 = 300.0;

/// Place collars on every so many pairs.
///
/// # Errors
/// None; collars that do not fit are spoken of.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(collar) = carcass.job.timber.parts.collar else { return Ok(()) };
    let mut tally = Tally::of("collars");
    let rows = rows(carcass);
    let alone = without_pair(carcass, &rows);
    for row in rows {
        // The first pair of a row has a collar, then every so many.
        for pair in row.iter().step_by(collar.every.max(1) as usize) {
            match one(carcass, collar, *pair) {
                Ok(beam) => {
                    carcass.add(beam.timber());
                    tally.fitted();
                }
                Err(why) => tally.missed(why, wall_of(carcass, pair[0])),
            }
        }
    }
    let height = collar.height;
    let then = format!(
        "They were asked for at {height:.0} mm above the plates: choose another height, or tie these rafters on site."
    );
    tally.tell(carcass, NoticeLevel::Warn, "collar-left-out", &then);
    tell_alone(carcass, &alone);
    Ok(())
}

/// The commons inside the building that no other stands opposite.
fn without_pair(carcass: &Carcass<'_>, rows: &[Vec<Pair>]) -> Vec<TimberId> {
    let paired: HashSet<TimberId> = rows.iter().flatten().flatten().copied().collect();
    let common = |t: &Timber| t.kind == MemberKind::CommonRafter && is_inside(carcass, t);
    carcass.built().filter(|(id, t)| common(t) && !paired.contains(id)).map(|(id, _)| id).collect()
}

fn tell_alone(carcass: &mut Carcass<'_>, alone: &[TimberId]) {
    let mut walls: Vec<&str> = alone
        .iter()
        .filter_map(|id| wall_of(carcass, *id))
        .filter_map(|w| carcass.job.walls.get(w.index()).map(|w| w.letter.as_str()))
        .collect();
    walls.sort_unstable();
    walls.dedup();
    if walls.is_empty() {
        return;
    }
    let place = format!("walls {}", walls.join(", "));
    let text = format!(
        "{} common rafters have no common rafter opposite them in one line, and so no collar: see what else takes their \
         thrust.",
        alone.len()
    );
    carcass.remark(NoticeLevel::Note, "collar-has-no-pair", place, text);
}

/// The wall that a rafter is listed under.
fn wall_of(carcass: &Carcass<'_>, id: TimberId) -> Option<WallId> {
    let rafter = carcass.timber(id);
    let Role::Rafter { face } = rafter.role else { return None };
    rafter.tails.first().map(|t| t.wall).or_else(|| carcass.surface.face(face).walls.first().copied())
}

/// Two rafters that face one another, the one nearer to the start of its row
/// of pairs first.
type Pair = [TimberId; 2];

/// The pairs of common rafters, by the two faces they stand in, in order along
/// the ridge.
fn rows(carcass: &Carcass<'_>) -> Vec<Vec<Pair>> {
    let mut commons: Vec<(f64, TimberId)> = carcass
        .built()
        .filter(|(_, t)| t.kind == MemberKind::CommonRafter && is_inside(carcass, t))
        .map(|(id, t)| (t.head().x, id))
        .collect();
    commons.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut rows: Vec<([FaceId; 2], Vec<Pair>)> = Vec::new();
    for (k, (x, a)) in commons.iter().enumerate() {
        let near = commons[k + 1..].iter().take_while(|(other, _)| other - x < ONE_PLANE);
        for (_, b) in near {
            let (first, second) = (carcass.timber(*a), carcass.timber(*b));
            let (Role::Rafter { face: f }, Role::Rafter { face: g }) = (first.role, second.role) else { continue };
            let apart = first.left().dot(second.foot - first.foot).abs();
            let parallel = first.dir.perp_dot(second.dir).abs() < PARALLEL;
            let one = first.dir.dot(second.dir) < OPPOSITE && (apart < ONE_PLANE || !parallel);
            if !one || (first.head() - second.head()).length() > ONE_PLANE {
                continue;
            }
            let (faces, pair) = if f < g { ([f, g], [*a, *b]) } else { ([g, f], [*b, *a]) };
            match rows.iter_mut().find(|(known, _)| *known == faces) {
                Some((_, row)) => row.push(pair),
                None => rows.push((faces, vec![pair])),
            }
        }
    }
    for (_, row) in &mut rows {
        let at = |p: &Pair| carcass.timber(p[0]).dir.perp().dot(carcass.timber(p[0]).foot);
        row.sort_by(|a, b| at(a).total_cmp(&at(b)));
    }
    rows.into_iter().map(|(_, row)| row).collect()
}

/// Whether a rafter stands over the plan: the one outside a gable has no collar.
fn is_inside(carcass: &Carcass<'_>, rafter: &Timber) -> bool {
    let on_wall = |[a, b]: [DVec2; 2]| {
        let along = (b - a).normalize_or_zero().dot(rafter.foot - a);
        along >= 0.0 && along <= (b - a).length()
    };
    rafter.tails.first().and_then(|t| carcass.surface.wall_ends(t.wall)).is_none_or(on_wall)
}

/// The collar of a pair, on its left or else on its right.
fn one(carcass: &Carcass<'_>, collar: CollarTimber, pair: Pair) -> Result<Beam, &'static str> {
    let mut why = "would not lie on both rafters";
    for left in [true, false] {
        let [a, b] = pair.map(|id| carcass.timber(id));
        let drawn = if a.dir.perp_dot(b.dir).abs() < PARALLEL {
            Some(lapped(carcass, collar, pair, left))
        } else {
            eased(carcass, collar, pair, left)
        };
        let Some(beam) = drawn else { continue };
        if collar.height <= 0.0 {
            return Err("would lie on the plates or below them");
        }
        if beam.length() < SHORTEST {
            return Err("would lie in the ridge or above it");
        }
        // A rafter that is cut for an opening may not be there at this height.
        let lies = |(tag, id): &(Made, TimberId)| contacts::lie(&beam.cells, *tag, carcass.wood(*id));
        if !beam.rests.iter().all(lies) {
            return Err("would not lie on both rafters, which are cut for openings or stand out of line");
        }
        let ways = carcass.in_the_way(&beam.cells);
        if is_clear(carcass, &beam, &|_| false) {
            return Ok(beam);
        }
        let kinds: Vec<MemberKind> = ways.iter().map(|id| carcass.timber(*id).kind).collect();
        why = if kinds.contains(&MemberKind::RidgeBoard) {
            "would run into the ridge"
        } else if kinds.contains(&MemberKind::Purlin) {
            "would run into purlins"
        } else {
            "would run into other timbers"
        };
    }
    Err(why)
}

/// A collar on one side of a pair, its ends cut to the slopes.
fn lapped(carcass: &Carcass<'_>, collar: CollarTimber, pair: Pair, left: bool) -> Beam {
    let [a, b] = pair.map(|id| carcass.timber(id));
    let level = a.plate_level.max(b.plate_level) + collar.height;
    // Sides that face the collar, as distances to the left of the first rafter.
    let sign = if left { 1.0 } else { -1.0 };
    let side = |t: &Timber| {
        let same = t.left().dot(a.left()) > 0.0;
        a.left().dot(t.foot - a.foot) * sign + t.half[usize::from(left == same)]
    };
    let sides = [side(a), side(b)];
    let out = sides[0].max(sides[1]);
    let middle = a.foot + a.left() * (sign * (out + collar.size.thickness / 2.0));
    let span = a.dir.dot(b.foot - a.foot);
    let mut beam = Beam::level(MemberKind::Collar, collar.size, middle, a.dir, level, [0.0, span]);
    for ((id, t), at) in pair.iter().zip([a, b]).zip([CutPlace::Foot, CutPlace::Head]) {
        if let Role::Rafter { face } = t.role {
            beam.cut(under_tops(carcass.surface.face(face).plane, carcass.heights.upstand), CutUse::Trim, at);
        }
        let k = usize::from(t.foot != a.foot);
        if out - sides[k] < ON_SIDE {
            beam.rests.push((if left { Made::Right } else { Made::Left }, *id));
        }
    }
    beam
}

/// A collar on one side of a pair that stands a little out of line: it crosses
/// in the hollow of the two, and its ends are eased to their sides. `None` on
/// the side where they stand out between its ends.
fn eased(carcass: &Carcass<'_>, collar: CollarTimber, pair: Pair, left: bool) -> Option<Beam> {
    let [a, b] = pair.map(|id| carcass.timber(id));
    let level = a.plate_level.max(b.plate_level) + collar.height;
    let toward = if left { a.left() } else { -a.left() };
    let sides = [a, b].map(|t| t.side_facing(toward));
    // Where the collar's top leaves the undersides of the rafters.
    let inner = |t: &Timber, side: HalfPlan| {
        let run = (level + collar.size.depth - t.base - t.under_offset) / t.slope;
        let on_line = t.foot + t.dir * run;
        on_line + side.normal * (side.offset - side.normal.dot(on_line))
    };
    let ends = [inner(a, sides[0]), inner(b, sides[1])];
    let dir = (ends[1] - ends[0]).normalize_or_zero();
    let out = if dir.perp().dot(toward) > 0.0 { dir.perp() } else { -dir.perp() };
    // The rafters' sides fall away from it towards the ridge, or they stand out there.
    let hollow = [a, b].iter().all(|t| out.dot(t.dir) < 0.0);
    if dir == DVec2::ZERO || !hollow {
        return None;
    }
    let middle = ends[0] + out * (collar.size.thickness / 2.0);
    let reach = [a, b].map(|t| dir.dot(t.foot - middle));
    let mut beam = Beam::level(MemberKind::Collar, collar.size, middle, dir, level, reach);
    for (((id, t), side), at) in pair.iter().zip([a, b]).zip(sides).zip([CutPlace::Foot, CutPlace::Head]) {
        if let Role::Rafter { face } = t.role {
            beam.cut(under_tops(carcass.surface.face(face).plane, carcass.heights.upstand), CutUse::Trim, at);
        }
        let tag = beam.cut(upright(side.flipped()), CutUse::Against(*id), at);
        beam.rests.push((tag, *id));
    }
    Some(beam)
}
