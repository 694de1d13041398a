//! Angle ties and dragon ties at hipped corners.
//!
//! The angle tie lies across the corner, square to the hip in plan, on both
//! plates and under the rafters: it is cogged over the inner part of the
//! plates, so that it holds them together, and its ends stand in bays between
//! jacks. The dragon tie lies under
//! the hip, its top level with the plates: a tongue on it is let into both
//! plates at their corner, and the angle tie is let into its top.

use super::beam::{Beam, under_tops, upright};
use super::clearing::is_clear;
use super::walls::{self, WallLine};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Face, Made, Notch, TimberId};
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::{DVec2, DVec3, HalfPlan, Plane};
use job::Section;

/// How far an angle tie is let down over the plates, mm (common practice: a
/// cog of about 20 mm).
const COG: f64 = 20.0;

/// An angle tie stands no nearer to the corner than this and no further off,
/// along the hip in plan, mm (common practice: 600 to 900 mm, further where
/// the jacks leave no bay).
const OFF_CORNER: [f64; 2] = [450.0, 1500.0];

/// An angle tie reaches this far over each plate, mm: enough for a cog with
/// wood behind it, and it fits between jacks more often than one that covers
/// the plate.
const BEARING: f64 = 60.0;

/// Places for an angle tie are tried this far apart, mm.
const STEP: f64 = 25.0;

/// Corners sharper or blunter than this need no tie across them, or cannot
/// have one (as the sine of the angle between the hip and either wall: 15°).
const LEAST_SPLAY: f64 = 0.26;

/// The tongue of a dragon tie is let into the plates by this share of their
/// height.
const TONGUE: f64 = 1.0 / 3.0;

/// A dragon tie runs on past the angle tie by this much, mm.
const DRAGON_PAST: f64 = 100.0;

/// Ties are drawn past walls by this much before they are cut, mm.
const DRAWN_PAST: f64 = 2_000.0;

/// A corner of two plates under a hip.
struct Corner {
    at: DVec2,
    /// Along the hip, into the building.
    inward: DVec2,
    walls: [usize; 2],
    plates: [TimberId; 2],
    level: f64,
}

/// Place the ties of all hipped corners.
///
/// # Errors
/// None; ties that do not fit are spoken of.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let parts = &carcass.job.timber.parts;
    let (angle, dragon) = (parts.angle_tie, parts.dragon_tie);
    if angle.is_none() && dragon.is_none() {
        return Ok(());
    }
    let walls = walls::all(carcass);
    for corner in corners(carcass, &walls) {
        let place = format!("corner ({:.0}, {:.0})", corner.at.x, corner.at.y);
        let Some((mut tie, off)) = angle.and_then(|size| angle_tie(carcass, &walls, &corner, size)) else {
            let text = if angle.is_some() {
                "There is no bay between the rafters for an angle tie across this corner: it is left out, and the \
                 dragon tie with it. Strap the plates together here."
            } else {
                "A dragon tie needs an angle tie to hang on: give `timber.angle_tie` a size. It is left out here."
            };
            carcass.remark(NoticeLevel::Warn, "tie-left-out", place, text);
            continue;
        };
        let tie_id = carcass.next_id();
        let wanted = dragon.is_some();
        let dragon = dragon.and_then(|size| dragon_tie(carcass, &walls, &corner, size, (&tie, tie_id, off)));
        if dragon.is_some() {
            tie.rests.push((Made::Underside, TimberId(tie_id.0 + 1)));
        } else if wanted {
            let text = "Other timbers stand in the way of a dragon tie in this corner: it is left out.";
            carcass.remark(NoticeLevel::Warn, "tie-left-out", place, text);
        }
        carcass.add(tie.timber());
        if let Some((beam, housing)) = dragon {
            carcass.add(beam.timber());
            for plate in corner.plates {
                carcass.notch(plate, housing.clone());
            }
        }
    }
    Ok(())
}

/// Convex corners with a hip that stands on two plates of one height.
fn corners(carcass: &Carcass<'_>, walls: &[WallLine]) -> Vec<Corner> {
    let hips = carcass.built().filter(|(_, t)| t.kind == MemberKind::HipRafter && t.seat.is_some());
    hips.filter_map(|(_, hip)| {
        let [a, b] = hip.tails.as_slice() else { return None };
        let [first, second] = [a, b].map(|e| walls.iter().position(|w| w.wall == e.wall));
        let (first, second) = (first?, second?);
        let ((one, level), (other, same)) = (walls[first].plate?, walls[second].plate?);
        let splayed = [first, second].iter().all(|w| walls[*w].dir.perp_dot(hip.dir).abs() > LEAST_SPLAY);
        (level == same && splayed).then_some(Corner {
            at: hip.foot,
            inward: hip.dir,
            walls: [first, second],
            plates: [one, other],
            level,
        })
    })
    .collect()
}

/// The angle tie nearest to the corner that stands clear of the rafters, and
/// how far off it is along the hip.
fn angle_tie(carcass: &Carcass<'_>, walls: &[WallLine], corner: &Corner, size: Section) -> Option<(Beam, f64)> {
    let count = ((OFF_CORNER[1] - OFF_CORNER[0]) / STEP) as usize;
    (0..=count).map(|k| OFF_CORNER[0] + STEP * k as f64).find_map(|off| {
        let tie = tie_at(carcass, walls, corner, size, off)?;
        is_clear(carcass, &tie, &|_| false).then_some((tie, off))
    })
}

fn tie_at(carcass: &Carcass<'_>, walls: &[WallLine], corner: &Corner, size: Section, off: f64) -> Option<Beam> {
    let width = carcass.job.timber.plate.depth;
    let middle = corner.at + corner.inward * off;
    let dir = corner.inward.perp();
    let reach = [-DRAWN_PAST, DRAWN_PAST];
    let mut beam = Beam::level(MemberKind::AngleTie, size, middle, dir, corner.level - COG, reach);
    for k in corner.walls {
        let wall = &walls[k];
        let inward = wall.dir.perp();
        let at = if inward.dot(dir) < 0.0 { CutPlace::Head } else { CutPlace::Foot };
        // It must bear within the length of the plate.
        let over = (wall.from - middle).perp_dot(wall.dir) / dir.perp_dot(wall.dir);
        let along = wall.dir.dot(middle + dir * over - wall.from);
        let spread = size.thickness + width;
        if !(along > spread && along < wall.length - spread) {
            return None;
        }
        let end = wall.from + inward * (width - BEARING.min(width));
        beam.cut(upright(HalfPlan::through(end, -inward)), CutUse::Trim, at);
        beam.cut(under_tops(wall.plane?, carcass.heights.upstand), CutUse::Trim, at);
        let (plate, level) = wall.plate?;
        let against = |plane| Face { plane, purpose: CutUse::Against(plate), at };
        let inner = HalfPlan::through(wall.from + inward * width, inward);
        beam.hollow(&[against(Plane { normal: DVec3::Z, offset: level }), against(upright(inner))]);
    }
    beam.wall = Some(walls[corner.walls[0]].wall);
    Some(beam)
}

/// The dragon tie under an angle tie, and the housing for its tongue in the
/// plates.
fn dragon_tie(
    carcass: &Carcass<'_>,
    walls: &[WallLine],
    corner: &Corner,
    size: Section,
    (tie, tie_id, off): (&Beam, TimberId, f64),
) -> Option<(Beam, Notch)> {
    let plate = carcass.job.timber.plate;
    let id = TimberId(tie_id.0 + 1);
    let half = size.thickness / 2.0;
    // So far in that the whole width of its end lies on the plates.
    let back = corner
        .walls
        .iter()
        .map(|w| {
            let inward = walls[*w].dir.perp();
            half * (1.0 - inward.dot(corner.inward).powi(2)).max(0.0).sqrt() / inward.dot(corner.inward)
        })
        .fold(0.0, f64::max);
    let reach = [back, off + tie.section.thickness / 2.0 + DRAGON_PAST];
    let mut beam = Beam::level(MemberKind::DragonTie, size, corner.at, corner.inward, corner.level - size.depth, reach);
    beam.wall = tie.wall;
    let floor = corner.level - plate.thickness * TONGUE;
    for (w, plate_id) in corner.walls.iter().zip(corner.plates) {
        let wall = &walls[*w];
        let inward = wall.dir.perp();
        let against = |plane| Face { plane, purpose: CutUse::Against(plate_id), at: CutPlace::Foot };
        let inner = HalfPlan::through(wall.from + inward * plate.depth, inward);
        beam.hollow(&[against(Plane { normal: DVec3::Z, offset: floor }), against(upright(inner))]);
    }
    let on_tie = |plane| Face { plane, purpose: CutUse::Against(tie_id), at: CutPlace::Head };
    let side = |out: f64| {
        let edge = corner.at + corner.inward * (off + out * tie.section.thickness / 2.0);
        upright(HalfPlan::through(edge, corner.inward * out))
    };
    let seat = Plane { normal: -DVec3::Z, offset: COG - corner.level };
    beam.hollow(&[on_tie(seat), on_tie(side(1.0)), on_tie(side(-1.0))]);
    let plates = corner.plates;
    if !is_clear(carcass, &beam, &|other| plates.contains(&other)) {
        return None;
    }
    let face = |plane, at| Face { plane, purpose: CutUse::Against(id), at };
    let sides = [1.0, -1.0].map(|out| {
        let edge = corner.at + corner.inward.perp() * (out * half);
        upright(HalfPlan::through(edge, corner.inward.perp() * out))
    });
    let end = upright(HalfPlan::through(corner.at + corner.inward * back, -corner.inward));
    let housing = Notch {
        faces: vec![
            face(Plane { normal: -DVec3::Z, offset: -floor }, CutPlace::Tail),
            face(sides[0], CutPlace::Foot),
            face(sides[1], CutPlace::Head),
            Face { plane: end, purpose: CutUse::Trim, at: CutPlace::Tail },
        ],
    };
    Some((beam, housing))
}
