//! Hangers: upright, from the side of a rafter down to the side of a binder.
//!
//! The wide side of a hanger lies against the rafter, its edge against the
//! binder; its foot is level with the binder's underside, its head is cut to
//! the slope under the rafter's top.

use super::beam::{Beam, axes, covers, under_tops};
use super::clearing::is_clear;
use super::contacts;
use super::left_out::Tally;
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId};
use crate::marking::Axes;
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::{DVec2, DVec3};
use job::{Section, SpacedTimber};

/// Hangers are drawn this high before their heads are cut, mm.
const DRAWN_UP: f64 = 50_000.0;

/// Rafters nearer to square across a binder than this (as a sine) carry hangers.
const SQUARE: f64 = 1e-6;

/// A hanger shorter than this would be all lap, mm.
const SHORTEST: f64 = 300.0;

/// Points on a rafter's side are looked at this share of the way out from its
/// middle.
const INNER: f64 = 0.99;

/// A lap on the side of a rafter smaller than this cannot be nailed, mm².
const LEAST_LAP: f64 = 2_000.0;

/// A binder as hangers see it.
#[derive(Clone, Copy)]
struct Below {
    id: TimberId,
    axes: Axes,
    half: f64,
    reach: [f64; 2],
}

/// Place the hangers of every binder.
///
/// # Errors
/// None; hangers that find no place are spoken of.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(hanger) = carcass.job.timber.parts.hanger else { return Ok(()) };
    let binders: Vec<Below> = carcass
        .built()
        .filter(|(_, t)| t.kind == MemberKind::Binder)
        .map(|(id, t)| {
            let axes = t.axes();
            let reach = t.line().map(|p| axes.along.dot(p - axes.origin));
            Below { id, axes, half: t.section.thickness / 2.0, reach }
        })
        .collect();
    let mut tally = Tally::of("hangers");
    for binder in binders {
        let above = rafters_over(carcass, &binder);
        let length = binder.reach[1] - binder.reach[0];
        let bays = (length / hanger.centres).ceil().max(1.0);
        let mut used: Vec<TimberId> = Vec::new();
        for k in 0..bays as usize {
            let at = binder.reach[0] + (k as f64 + 0.5) * length / bays;
            let mut near: Vec<&(f64, TimberId)> =
                above.iter().filter(|(x, id)| (x - at).abs() <= length / bays / 2.0 && !used.contains(id)).collect();
            near.sort_by(|a, b| (a.0 - at).abs().total_cmp(&(b.0 - at).abs()));
            match near.into_iter().find_map(|(_, id)| hang(carcass, &binder, hanger.size, *id).map(|b| (*id, b))) {
                Some((id, beam)) => {
                    used.push(id);
                    carcass.add(beam.timber());
                    tally.fitted();
                }
                None if above.is_empty() => tally.missed("no rafter runs square over their binder", None),
                None => tally.missed("there is no room beside the rafters over their binder", None),
            }
        }
    }
    let then = "Hang the binders from whatever stands there.";
    tally.tell(carcass, NoticeLevel::Warn, "hanger-left-out", then);
    Ok(())
}

/// Whether a hanger can stand beside the rafter nearest to the middle of a
/// binder; yes when no hangers are asked for.
pub fn can_hang(carcass: &Carcass<'_>, beam: &Beam) -> bool {
    let Some(SpacedTimber { size, .. }) = carcass.job.timber.parts.hanger else { return true };
    let below =
        Below { id: carcass.next_id(), axes: beam.axes, half: beam.section.thickness / 2.0, reach: beam.reach() };
    let middle = (below.reach[0] + below.reach[1]) / 2.0;
    let above = rafters_over(carcass, &below);
    let nearest = above.iter().min_by(|a, b| (a.0 - middle).abs().total_cmp(&(b.0 - middle).abs()));
    nearest.is_none_or(|(_, id)| hang(carcass, &below, size, *id).is_some())
}

/// The rafters square across over a binder, with their places along it.
fn rafters_over(carcass: &Carcass<'_>, binder: &Below) -> Vec<(f64, TimberId)> {
    let (flat, along) = (binder.axes.origin.truncate(), binder.axes.along.truncate());
    carcass
        .built()
        .filter(|(_, t)| t.is_rafter() && t.dir.dot(along).abs() < SQUARE)
        .filter_map(|(id, t)| {
            let at = along.dot(t.foot - flat);
            let up = t.along(flat + along * at);
            (at > binder.reach[0] && at < binder.reach[1] && up > 0.0 && up < t.run).then_some((at, id))
        })
        .collect()
}

/// A hanger on one of the four corners between a rafter and a binder.
fn hang(carcass: &Carcass<'_>, binder: &Below, size: Section, id: TimberId) -> Option<Beam> {
    let rafter = carcass.timber(id);
    [(true, true), (true, false), (false, true), (false, false)].into_iter().find_map(|(left, upper)| {
        let beam = in_corner(carcass, binder, size, (id, rafter), left, upper)?;
        let lap = beam.rests.first().map_or(0.0, |(tag, id)| contacts::area(&beam.cells, *tag, carcass.wood(*id)));
        (lap > LEAST_LAP && is_clear(carcass, &beam, &|_| false)).then_some(beam)
    })
}

/// A hanger to the left or right of a rafter, up or down the slope from a binder.
fn in_corner(
    carcass: &Carcass<'_>,
    binder: &Below,
    size: Section,
    (id, rafter): (TimberId, &Timber),
    left: bool,
    upper: bool,
) -> Option<Beam> {
    let Role::Rafter { face } = rafter.role else { return None };
    let flat = binder.axes.origin.truncate();
    let along = rafter.along(flat) + if upper { 1.0 } else { -1.0 } * (binder.half + size.depth / 2.0);
    let out = if left { rafter.half[1] + size.thickness / 2.0 } else { -rafter.half[0] - size.thickness / 2.0 };
    let middle = rafter.foot + rafter.dir * along + rafter.left() * out;
    // The rafter must be there over the whole depth of the hanger.
    let side = if left { rafter.half[1] } else { -rafter.half[0] } * INNER;
    let lap: [DVec2; 2] =
        [-0.5, 0.5].map(|k| rafter.foot + rafter.dir * (along + k * size.depth) + rafter.left() * side);
    if !covers(carcass.wood(id), Made::Top, &lap) {
        return None;
    }
    let up = rafter.dir.extend(0.0);
    let origin = middle.extend(binder.axes.origin.z) - up * (size.depth / 2.0);
    let mut beam = Beam::new(MemberKind::Hanger, size, axes(origin, DVec3::Z, up), [0.0, DRAWN_UP]);
    let plane = carcass.surface.face(face).plane;
    beam.cut(under_tops(plane, carcass.heights.upstand), CutUse::Trim, CutPlace::Head);
    beam.wall = carcass.surface.face(face).walls.first().copied();
    let inner = if (beam.axes.across.truncate().dot(rafter.left()) > 0.0) == left { Made::Right } else { Made::Left };
    beam.rests = vec![(inner, id), (if upper { Made::Underside } else { Made::Top }, binder.id)];
    (beam.length() >= SHORTEST).then_some(beam)
}
