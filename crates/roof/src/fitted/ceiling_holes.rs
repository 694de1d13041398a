//! Chimney stacks and hatches: what stands or opens inside the roof, plumb
//! through its ceiling. Timbers inside keep clear of them; joists are parted
//! there, and trimmed between their neighbours.

use super::beam::Beam;
use super::clearing::is_clear;
use super::contacts;
use super::walls::{self, WallLine};
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, TimberId};
use crate::openings::rule;
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::{Angle, Cell, ConvexPlan, DVec2, Plane};
use job::{Distance, OpeningKind, Section};

/// A stack is taken to stand from so far below the datum to so far above, mm.
const STACK: f64 = 100_000.0;

/// Headroom that is kept above a hatch, mm: a person climbs through it.
const HEADROOM: f64 = 1_000.0;

/// A piece of a joist shorter than this is not worth keeping beside a hole, mm.
const SHORTEST: f64 = 150.0;

/// Where a joist passes a hole this close it only touches it, mm.
const TOUCH: f64 = 1e-3;

/// Joists nearer to parallel than this (as a sine) run one way.
const PARALLEL: f64 = 1e-6;

/// A bearing smaller than this holds nothing, mm².
const LEAST_BEARING: f64 = 500.0;

/// A hole in the ceiling.
pub struct CeilingHole {
    /// Its name in the job.
    pub name: String,
    /// What it is.
    pub what: &'static str,
    /// Its corners in plan, anticlockwise, with the clearance that it needs, mm.
    corners: [DVec2; 4],
    /// Lowest and highest point that is kept clear, mm.
    reach: [f64; 2],
}

/// A ceiling as holes see it: the direction and section of its joists.
#[derive(Clone, Copy)]
pub struct Joists {
    /// Unit direction in plan.
    pub dir: DVec2,
    /// Their section.
    pub size: Section,
    /// Height of their undersides, mm.
    pub under: f64,
}

impl CeilingHole {
    /// Its reach along and across a direction, mm.
    fn bounds(&self, dir: DVec2) -> [[f64; 2]; 2] {
        [dir, dir.perp()].map(|axis| {
            self.corners.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], p| {
                let d = axis.dot(*p);
                [lo.min(d), hi.max(d)]
            })
        })
    }

    /// The space that is kept clear.
    fn space(&self) -> Cell<Made> {
        let axis = (self.corners[1] - self.corners[0]).normalize_or(DVec2::X);
        let [along, across] = self.bounds(axis);
        let plan =
            ConvexPlan::strip(DVec2::ZERO, axis, along, across, [Made::Right, Made::Left, Made::Top, Made::Underside]);
        Cell::prism(&plan, |_| self.reach[0], |_| self.reach[1], Made::Underside, Made::Top)
    }
}

/// All holes in the ceilings of a job.
pub fn all(carcass: &Carcass<'_>) -> Vec<CeilingHole> {
    let plumb = |kind| matches!(kind, OpeningKind::Chimney | OpeningKind::Hatch);
    if !carcass.job.openings.iter().any(|o| plumb(o.kind)) {
        return Vec::new();
    }
    let walls: Vec<WallLine> = walls::all(carcass);
    let of = |o: &job::Opening| {
        let wall = walls.get(o.wall)?;
        let up = match o.up {
            Distance::Plan(up) => up,
            Distance::Slope(up) => up * Angle::deg(wall.plane?.pitch_deg).cos(),
        };
        let stack = o.kind == OpeningKind::Chimney;
        let clear = if stack { rule::from_face(carcass.job, o.flue_wall) } else { 0.0 };
        let at = |x: f64, y: f64| wall.from + wall.dir * x + wall.dir.perp() * y;
        let ([a, b], [c, d]) = ([o.along - clear, o.along + o.width + clear], [up - clear, up + o.height + clear]);
        let floor = wall.plate.map_or(0.0, |(_, level)| level);
        let depth = carcass.job.timber.parts.ceiling_joist.map_or(0.0, |j| j.depth);
        Some(CeilingHole {
            name: o.name.clone(),
            what: if stack { "chimney" } else { "hatch" },
            corners: [at(a, c), at(b, c), at(b, d), at(a, d)],
            reach: if stack { [-STACK, STACK] } else { [floor, floor + depth + HEADROOM] },
        })
    };
    carcass.job.openings.iter().filter(|o| plumb(o.kind)).filter_map(of).collect()
}

/// The spaces that a timber keeps clear of; ceiling joists are parted at them
/// when they are laid.
pub fn spaces(carcass: &Carcass<'_>, kind: MemberKind) -> Vec<Cell<Made>> {
    if kind == MemberKind::CeilingJoist {
        return Vec::new();
    }
    all(carcass).iter().map(CeilingHole::space).collect()
}

/// The pieces of a joist on both sides of the holes that it would cross, with
/// room for the trimmers.
pub fn parted(carcass: &Carcass<'_>, holes: &[CeilingHole], beam: Beam) -> Vec<Beam> {
    let mut pieces = vec![beam];
    for hole in holes {
        pieces = pieces.into_iter().flat_map(|p| parted_at(carcass, hole, p)).collect();
    }
    pieces
}

fn parted_at(carcass: &Carcass<'_>, hole: &CeilingHole, beam: Beam) -> Vec<Beam> {
    let dir = beam.axes.along.truncate();
    let half = beam.section.thickness / 2.0;
    let middle = dir.perp().dot(beam.axes.origin.truncate());
    let [[from, to], [right, left]] = hole.bounds(dir);
    let start = dir.dot(beam.axes.origin.truncate());
    let reach = beam.reach().map(|x| x + start);
    let room = beam.section.thickness;
    let beside = middle + half <= right + TOUCH || middle - half >= left - TOUCH;
    let short = reach[1] <= from - room + TOUCH || reach[0] >= to + room - TOUCH;
    if beside || short {
        return vec![beam];
    }
    let plane = |at: f64, out: f64| Plane { normal: (dir * out).extend(0.0), offset: at * out };
    [(from - room, 1.0, CutPlace::Head), (to + room, -1.0, CutPlace::Foot)]
        .into_iter()
        .filter_map(|(at, out, end)| {
            let mut piece = beam.clone();
            piece.cut(plane(at, out), CutUse::Trim, end);
            let cells = &piece.cells;
            piece.rests.retain(|(tag, id)| contacts::area(cells, *tag, carcass.wood(*id)) > LEAST_BEARING);
            (piece.length() >= SHORTEST).then_some(piece)
        })
        .collect()
}

/// Put trimmers on both sides of every hole, between the nearest whole joists
/// beside it. `laid` are all joists, whole and parted.
pub fn trim(carcass: &mut Carcass<'_>, holes: &[CeilingHole], joists: Joists, laid: &[TimberId]) {
    for hole in holes {
        let [[from, to], [right, left]] = hole.bounds(joists.dir);
        let room = joists.size.thickness;
        let own: Vec<(TimberId, f64, [f64; 2])> = laid
            .iter()
            .filter_map(|id| {
                let joist = carcass.timber(*id);
                let axes = joist.axes();
                let level = (axes.origin.z - joists.under).abs() < TOUCH;
                let along = joists.dir.perp_dot(axes.along.truncate()).abs() < PARALLEL;
                let mut ends = joist.line().map(|p| joists.dir.dot(p.truncate()));
                ends.sort_by(f64::total_cmp);
                (level && along).then(|| (*id, joists.dir.perp().dot(axes.origin.truncate()), ends))
            })
            .collect();
        let cut = |(_, at, ends): &(TimberId, f64, [f64; 2])| {
            let inside = at + room / 2.0 > right + TOUCH && at - room / 2.0 < left - TOUCH;
            inside && ((ends[1] - from + room).abs() < TOUCH || (ends[0] - to - room).abs() < TOUCH)
        };
        if !own.iter().any(cut) {
            continue;
        }
        let whole = |(_, _, ends): &&(TimberId, f64, [f64; 2])| ends[0] < from - room && ends[1] > to + room;
        let below =
            own.iter().filter(whole).filter(|j| j.1 + room / 2.0 <= right + TOUCH).max_by(|a, b| a.1.total_cmp(&b.1));
        let above =
            own.iter().filter(whole).filter(|j| j.1 - room / 2.0 >= left - TOUCH).min_by(|a, b| a.1.total_cmp(&b.1));
        let place = format!("{} {}", hole.what, hole.name);
        let (Some(below), Some(above)) = (below, above) else {
            let text = "No whole ceiling joist runs past this hole on both sides: the joists that end at it have no \
                        trimmer. Frame it by hand.";
            carcass.remark(NoticeLevel::Warn, "ceiling-hole-not-trimmed", place, text);
            continue;
        };
        let reach = [below.1 + room / 2.0, above.1 - room / 2.0];
        let ends: Vec<TimberId> = own.iter().filter(|j| cut(j)).map(|j| j.0).collect();
        for at in [from - room / 2.0, to + room / 2.0] {
            let mut beam =
                Beam::level(MemberKind::Trimmer, joists.size, joists.dir * at, joists.dir.perp(), joists.under, reach);
            for id in &ends {
                for side in [Made::Left, Made::Right] {
                    if contacts::area(&beam.cells, side, carcass.wood(*id)) > LEAST_BEARING {
                        beam.rests.push((side, *id));
                    }
                }
            }
            if beam.rests.is_empty() {
                continue;
            }
            beam.rests.push((Made::End(false), below.0));
            beam.rests.push((Made::End(true), above.0));
            if is_clear(carcass, &beam, &|_| false) {
                carcass.add(beam.timber());
            } else {
                let text =
                    "Other timbers stand where a trimmer of this hole would be: it is left out. Frame it by hand.";
                carcass.remark(NoticeLevel::Warn, "ceiling-hole-not-trimmed", place.clone(), text);
            }
        }
    }
}
