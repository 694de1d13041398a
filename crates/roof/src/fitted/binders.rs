//! Binders: across the ceiling joists, on top of them.
//!
//! Joists that lie side by side and end on the same supports are one ceiling;
//! between any two supports (plates, bearing lines) they get a binder in the
//! middle, or more where they would stand more than [`FARTHEST`] apart.

use super::beam::{Beam, covers, crossing};
use super::clearing::{cleared, is_clear};
use super::hangers;
use super::left_out::Tally;
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{Made, Role, Timber, TimberId};
use crate::solution::{MemberKind, NoticeLevel};
use geometry::DVec2;
use geometry::surface::WallId;

/// Binders and supports stand no further apart than this, mm (common practice;
/// reference/strength.md gives the same for purlins).
const FARTHEST: f64 = 2_400.0;

/// Joists that span less than this need no binder, mm.
const LEAST_SPAN: f64 = 1_800.0;

/// A binder runs past its outermost joists by this much, mm.
const PAST: f64 = 50.0;

/// A binder ties at least this many joists.
const FEWEST: usize = 3;

/// Joists of one ceiling end within this of one another, mm.
const SAME_SPAN: f64 = 600.0;

/// Joists of one ceiling lie no further apart than this many centres.
const NEIGHBOURS: f64 = 1.6;

/// Joists nearer to parallel than this (as a sine) run one way.
const PARALLEL: f64 = 1e-6;

/// Joists within this of one height lie level, mm.
const LEVEL: f64 = 0.01;

/// A binder may stand this far off its place, mm, to keep clear of struts and
/// to leave room for its hangers; tried in this order.
const SHIFTS: [f64; 9] = [0.0, 75.0, -75.0, 150.0, -150.0, 225.0, -225.0, 300.0, -300.0];

/// A line nearer than 60° to a joist (as a cosine) does not carry it.
const ACROSS: f64 = 0.5;

/// A bearing line carries joists when its top is this near to their underside, mm.
const BEARS: f64 = 5.0;

/// A joist by its ends along and its place across the direction of its ceiling.
#[derive(Clone, Copy)]
struct Lying {
    id: TimberId,
    across: f64,
    ends: [f64; 2],
    under: f64,
}

/// Joists of one ceiling: `dir` is theirs.
struct Ceiling {
    dir: DVec2,
    joists: Vec<Lying>,
}

/// Place the binders.
///
/// # Errors
/// None; binders that cannot lie are spoken of.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(size) = carcass.job.timber.parts.binder else { return Ok(()) };
    let mut tally = Tally::of("binders");
    for ceiling in ceilings(carcass) {
        for at in lines(carcass, &ceiling) {
            let beams = best(carcass, &ceiling, size, at);
            if beams.is_empty() {
                tally.missed("other timbers stand where they would lie", wall_beside(carcass, &ceiling));
            } else {
                tally.fitted();
            }
            for mut beam in beams {
                rest(carcass, &ceiling, &mut beam);
                carcass.add(beam.timber());
            }
        }
    }
    let then = "Stiffen the ceiling there on site.";
    tally.tell(carcass, NoticeLevel::Warn, "binder-left-out", then);
    Ok(())
}

/// The wall that the joists of a ceiling are listed under.
fn wall_beside(carcass: &Carcass<'_>, ceiling: &Ceiling) -> Option<WallId> {
    match carcass.timber(ceiling.joists.first()?.id).role {
        Role::Fitted { wall } => wall,
        _ => None,
    }
}

/// The ceilings, each with its joists in order across.
fn ceilings(carcass: &Carcass<'_>) -> Vec<Ceiling> {
    let mut by_direction: Vec<Ceiling> = Vec::new();
    let centres = carcass.job.timber.rafter.centres * NEIGHBOURS;
    for (id, joist) in carcass.built().filter(|(_, t)| t.kind == MemberKind::CeilingJoist) {
        let axes = joist.axes();
        let along = axes.along.truncate();
        let known = by_direction.iter_mut().find(|c| c.dir.perp_dot(along).abs() < PARALLEL);
        let dir = known.as_ref().map_or(along, |c| c.dir);
        let mut ends = joist.line().map(|p| dir.dot(p.truncate()));
        ends.sort_by(f64::total_cmp);
        let lying = Lying { id, across: dir.perp().dot(axes.origin.truncate()), ends, under: axes.origin.z };
        match known {
            Some(c) => c.joists.push(lying),
            None => by_direction.push(Ceiling { dir, joists: vec![lying] }),
        }
    }
    let mut out: Vec<Ceiling> = Vec::new();
    for mut all in by_direction {
        all.joists.sort_by(|a, b| a.across.total_cmp(&b.across).then(a.ends[0].total_cmp(&b.ends[0])));
        let from = out.len();
        for joist in all.joists {
            let joins = |c: &&mut Ceiling| {
                let (first, last) = (c.joists.first(), c.joists.last());
                first.zip(last).is_some_and(|(first, last)| {
                    let same = (0..2).all(|k| (first.ends[k] - joist.ends[k]).abs() < SAME_SPAN);
                    same && joist.across - last.across < centres && (first.under - joist.under).abs() < LEVEL
                })
            };
            match out[from..].iter_mut().find(joins) {
                Some(c) => c.joists.push(joist),
                None => out.push(Ceiling { dir: all.dir, joists: vec![joist] }),
            }
        }
    }
    out.retain(|c| c.joists.len() >= FEWEST);
    out
}

/// Where binders lie along the joists of a ceiling.
fn lines(carcass: &Carcass<'_>, ceiling: &Ceiling) -> Vec<f64> {
    let of = |k: usize| ceiling.joists.iter().map(move |j| j.ends[k]);
    let (from, to) = (of(0).fold(f64::NEG_INFINITY, f64::max), of(1).fold(f64::INFINITY, f64::min));
    let Some(middle) = ceiling.joists.get(ceiling.joists.len() / 2) else { return Vec::new() };
    let mut supports = vec![from];
    for line in carcass.job.bearings.iter().filter(|l| (l.top - middle.under).abs() < BEARS) {
        let (a, b) = (DVec2::from_array(line.from), DVec2::from_array(line.to));
        let dir = (b - a).normalize_or_zero();
        let gap = a - ceiling.dir.perp() * middle.across;
        let turn = ceiling.dir.perp_dot(dir);
        let (at, own) = (gap.perp_dot(dir) / turn, gap.perp_dot(ceiling.dir) / turn);
        if dir.dot(ceiling.dir).abs() < ACROSS && own > 0.0 && own < (b - a).length() && at > from && at < to {
            supports.push(at);
        }
    }
    supports.push(to);
    supports.sort_by(f64::total_cmp);
    let mut out = Vec::new();
    for pair in supports.windows(2) {
        let span = pair[1] - pair[0];
        if span < LEAST_SPAN {
            continue;
        }
        let bays = (span / FARTHEST).ceil().max(2.0);
        out.extend((1..bays as usize).map(|k| pair[0] + span * k as f64 / bays));
    }
    out
}

/// The binder of a line: where it lies clear and its hangers fit, or else the
/// pieces that are left of it.
fn best(carcass: &Carcass<'_>, ceiling: &Ceiling, size: job::Section, at: f64) -> Vec<Beam> {
    let clear: Vec<Beam> = SHIFTS
        .iter()
        .map(|shift| drawn(carcass, ceiling, size, at + shift))
        .filter(|b| is_clear(carcass, b, &|_| false))
        .collect();
    if let Some(beam) = clear.iter().find(|b| hangers::can_hang(carcass, b)).or(clear.first()) {
        return vec![beam.clone()];
    }
    let pieces = cleared(carcass, drawn(carcass, ceiling, size, at), PAST, &|_| false);
    pieces.into_iter().filter(|b| carried(carcass, ceiling, b).len() >= FEWEST).collect()
}

fn drawn(carcass: &Carcass<'_>, ceiling: &Ceiling, size: job::Section, at: f64) -> Beam {
    let reach = ceiling.joists.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], j| {
        let half = carcass.timber(j.id).section.thickness / 2.0;
        [lo.min(j.across - half), hi.max(j.across + half)]
    });
    let (under, depth) = ceiling.joists.first().map_or((0.0, 0.0), |j| (j.under, carcass.timber(j.id).section.depth));
    let dir = ceiling.dir.perp();
    Beam::level(MemberKind::Binder, size, ceiling.dir * at, dir, under + depth, [reach[0] - PAST, reach[1] + PAST])
}

/// The joists under a binder.
fn carried(carcass: &Carcass<'_>, ceiling: &Ceiling, beam: &Beam) -> Vec<TimberId> {
    let half = beam.section.thickness / 2.0;
    let strip = (beam.axes.origin.truncate(), beam.axes.along.truncate(), half);
    let under = |id: &TimberId| {
        let joist: &Timber = carcass.timber(*id);
        let axes = joist.axes();
        let own = (axes.origin.truncate(), axes.along.truncate(), joist.section.thickness / 2.0);
        crossing(strip, own).is_some_and(|corners| {
            covers(carcass.wood(*id), Made::Top, &corners) && covers(&beam.cells, Made::Underside, &corners)
        })
    };
    ceiling.joists.iter().map(|j| j.id).filter(under).collect()
}

fn rest(carcass: &Carcass<'_>, ceiling: &Ceiling, beam: &mut Beam) {
    let joists = carried(carcass, ceiling, beam);
    beam.rests.extend(joists.into_iter().map(|id| (Made::Underside, id)));
}
