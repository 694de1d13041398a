//! Collars: level, across pairs of common rafters, lapped on their sides.

use super::beam::{Beam, under_tops};
use super::clearing::is_clear;
use super::contacts;
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId};
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::surface::FaceId;
use job::CollarTimber;

/// Rafters face one another when their directions are this near to opposite
/// (as a cosine), and their heads this near together, mm.
const OPPOSITE: f64 = -0.999_999_9;

/// Rafters whose centre lines miss one another by more than this do not stand
/// in one plane, mm.
const ONE_PLANE: f64 = 1.0;

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
    let mut missing: Vec<&'static str> = Vec::new();
    for row in rows(carcass) {
        // The first pair of a row has a collar, then every so many.
        for pair in row.iter().step_by(collar.every.max(1) as usize) {
            match one(carcass, collar, *pair) {
                Ok(beam) => {
                    carcass.add(beam.timber());
                }
                Err(why) => missing.push(why),
            }
        }
    }
    let mut reasons = missing.clone();
    reasons.sort_unstable();
    reasons.dedup();
    for why in reasons {
        let count = missing.iter().filter(|w| **w == why).count();
        let height = collar.height;
        carcass.remark(
            NoticeLevel::Warn,
            "collar-left-out",
            "whole roof",
            format!("Collars left out, because at {height:.0} mm above the plates they {why}: {count}."),
        );
    }
    Ok(())
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
            let one = first.dir.dot(second.dir) < OPPOSITE && apart < ONE_PLANE;
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
    let on_wall = |[a, b]: [geometry::DVec2; 2]| {
        let along = (b - a).normalize_or_zero().dot(rafter.foot - a);
        along >= 0.0 && along <= (b - a).length()
    };
    rafter.tails.first().and_then(|t| carcass.surface.wall_ends(t.wall)).is_none_or(on_wall)
}

/// The collar of a pair, on its left or else on its right.
fn one(carcass: &Carcass<'_>, collar: CollarTimber, pair: Pair) -> Result<Beam, &'static str> {
    let mut why = "";
    for left in [true, false] {
        let beam = lapped(carcass, collar, pair, left);
        if collar.height <= 0.0 {
            return Err("would lie on the plates or below them");
        }
        if beam.length() < SHORTEST {
            return Err("would lie in the ridge or above it");
        }
        // A rafter that is cut for an opening may not be there at this height.
        let lies = |(tag, id): &(Made, TimberId)| contacts::lie(&beam.cells, *tag, carcass.wood(*id));
        if !beam.rests.iter().all(lies) {
            return Err("would miss rafters that are cut for openings");
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
