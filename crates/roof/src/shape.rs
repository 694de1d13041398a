//! From a timber's outline in plan and its heights to its solid.

use crate::SolveError;
use crate::frame::LEAST_SPLAY;
use crate::frame::heights::Heights;
use crate::frame::timber::{Body, CutUse, Made, TailEnd, Timber, Top};
use crate::solution::{CutPlace, MemberKind};
use geometry::surface::RoofPlane;
use geometry::{Cell, DVec2, DVec3, HalfPlan, Plane, Solid};
use job::{Eaves, Job, TailCut};
use smallvec::SmallVec;

/// Firring is narrower than what stands on it by this on each side, mm, so
/// that pieces side by side never touch.
const FIRRING_INSET: f64 = 0.5;

/// A timber's solid: the convex cells it is built from, and their union.
pub struct Shape {
    /// Cells that share whole faces.
    pub cells: Vec<Cell<Made>>,
    /// Their union.
    pub solid: Solid<Made>,
}

/// The cells of a timber before anything is notched out of it; adds its tail,
/// soffit, heel and seat cuts to it.
///
/// # Errors
/// When a hip or valley is too shallow to sit on its plate.
pub fn cells_of(job: &Job, heights: &Heights, timber: &mut Timber) -> Result<Vec<Cell<Made>>, SolveError> {
    if let Body::Fitted { cells, .. } = &timber.body {
        return Ok(cells.clone());
    }
    check_reach(job, timber)?;
    let mut cells = Vec::with_capacity(4);
    if timber.kind == MemberKind::ValleyRafter {
        for left in [false, true] {
            half_of_valley(job, heights, timber, left, &mut cells);
        }
    } else {
        let upstand = heights.upstand;
        let (flat, under) = (timber.flat_height_fn(), timber.under_height_fn());
        let planed = if let Top::Planed(plane) = timber.top { Some(plane) } else { None };
        let top = |p| planed.map_or_else(|| flat(p), |plane| plane.height_at(p) + upstand);
        let mut cell = Some(Cell::prism(&timber.footprint, under, top, Made::Underside, Made::Top));
        if let Top::Backed { left, right, .. } = timber.top {
            cell = cell.and_then(|c| c.clipped(raised(left, upstand), Made::TopLeft));
            cell = cell.and_then(|c| c.clipped(raised(right, upstand), Made::TopRight));
        }
        match cell {
            Some(_) if !timber.firring.is_empty() => firred(timber, &mut cells),
            Some(cell) => finish(job, heights, timber, cell, None, &mut cells),
            None => {}
        }
    }
    Ok(cells)
}

/// Make the slanting end cuts and notches that were asked for since, and join
/// the cells to one solid.
pub fn joined(timber: &mut Timber, cells: Vec<Cell<Made>>) -> Shape {
    let cells = cut(timber, cells);
    let solid = Solid::join(&cells, Made::Inner);
    Shape { cells, solid }
}

/// Make the slanting end cuts and notches that were asked for since.
pub fn cut(timber: &mut Timber, mut cells: Vec<Cell<Made>>) -> Vec<Cell<Made>> {
    for face in core::mem::take(&mut timber.ends_cut) {
        let tag = timber.tag(face.purpose, face.at);
        cells = geometry::trim(&cells, face.plane, tag, Made::Inner);
    }
    for notch in core::mem::take(&mut timber.notches) {
        let hole: Vec<(Plane, Made)> = notch.faces.iter().map(|f| (f.plane, timber.tag(f.purpose, f.at))).collect();
        cells = geometry::carve(&cells, &hole, Made::Inner);
    }
    cells
}

/// A plate with firring on top: parted along the sides of each piece of
/// firring, so that what lies under it has no top of its own.
fn firred(plate: &Timber, cells: &mut Vec<Cell<Made>>) {
    let (under, top) = (plate.under_height_fn(), plate.flat_height_fn());
    let (mut rest, mut bare) = (vec![plate.footprint.clone()], Vec::new());
    for firring in &plate.firring {
        let raised = |p: DVec2| top(p) + firring.height;
        let mut apart = Vec::with_capacity(rest.len() + 2);
        for mut plan in rest {
            for &side in &firring.sides {
                apart.push(plan.clipped(side.flipped(), Made::Inner));
                plan = plan.clipped(side, Made::Inner);
            }
            let parted = plan.sides().iter().filter(|side| side.tag == Made::Inner).map(|side| side.half);
            let narrowed: SmallVec<[HalfPlan; 4]> =
                parted.map(|half| HalfPlan { offset: half.offset - FIRRING_INSET, ..half }).collect();
            let piece = narrowed.iter().fold(plan.clone(), |left, side| left.clipped(*side, Made::Top));
            if piece.is_empty() {
                apart.push(plan);
                continue;
            }
            cells.push(Cell::prism(&piece, &top, raised, Made::Inner, Made::Top));
            // What lies beside the narrowed piece has a top again, and stays bare.
            for side in narrowed {
                bare.push(plan.clipped(side.flipped(), Made::Inner));
                plan = plan.clipped(side, Made::Inner);
            }
            cells.push(Cell::prism(&plan, &under, &top, Made::Underside, Made::Inner));
        }
        apart.retain(|plan| !plan.is_empty());
        rest = apart;
    }
    let level = rest.iter().chain(&bare).filter(|plan| !plan.is_empty());
    cells.extend(level.map(|plan| Cell::prism(plan, &under, &top, Made::Underside, Made::Top)));
}

/// One half of a valley, parted along its centre line: its top may be hollow
/// and its tail ends at two fascias that meet in an inner corner.
fn half_of_valley(job: &Job, heights: &Heights, timber: &mut Timber, left: bool, cells: &mut Vec<Cell<Made>>) {
    let out = if left { -timber.left() } else { timber.left() };
    let mut plan = timber.footprint.clipped(HalfPlan::through(timber.foot, out), Made::Inner);
    let tail = timber.tails.get(usize::from(left)).copied();
    let trim_tag = timber.tag(CutUse::Trim, CutPlace::Tail);
    if let Some(tail) = tail.filter(|t| t.cut != TailCut::Square) {
        let tag = timber.tag(CutUse::Tail(tail.wall), CutPlace::Tail);
        plan = plan.clipped(fascia_line(tail), tag);
        // Where fascias do not meet on the valley, both halves end at the nearer one.
        let nearer = timber.foot + timber.dir * tail_centre(timber);
        plan = plan.clipped(HalfPlan::through(nearer, -timber.dir), trim_tag);
    }
    if plan.is_empty() {
        return;
    }
    let cell = match timber.top {
        Top::Backed { left: l, right: r, hollow: true } => {
            let (plane, tag) = if left { (l, Made::TopLeft) } else { (r, Made::TopRight) };
            let upstand = heights.upstand;
            Cell::prism(&plan, timber.under_height_fn(), |p| plane.height_at(p) + upstand, Made::Underside, tag)
        }
        _ => Cell::prism(&plan, timber.under_height_fn(), timber.flat_height_fn(), Made::Underside, Made::Top),
    };
    finish(job, heights, timber, cell, tail, cells);
}

/// Cut the birdsmouth and what of the tail is not cut upright.
fn finish(
    job: &Job,
    heights: &Heights,
    timber: &mut Timber,
    cell: Cell<Made>,
    half_tail: Option<TailEnd>,
    cells: &mut Vec<Cell<Made>>,
) {
    let Some(seat) = timber.seat else {
        cells.extend(above_plates(timber, cell));
        return;
    };
    let heel_tag = timber.tag(CutUse::Heel, CutPlace::Foot);
    let seat_tag = timber.tag(CutUse::Seat, CutPlace::Foot);
    let heel = upright(seat.heel);
    let level = Plane { normal: DVec3::Z, offset: seat.level };
    let ends: Vec<TailEnd> = half_tail.map_or_else(|| timber.tails.clone(), |t| vec![t]);
    let Some(cell) = square_tails(heights, timber, cell, &ends) else { return };
    let (tail, body) = cell.split(heel, heel_tag);
    if let Some(mut body) = body.and_then(|b| b.clipped(level.flipped(), seat_tag)) {
        if tail.is_some() {
            body.retag(heel_tag, Made::Inner);
        }
        cells.push(body);
    }
    let Some(mut tail) = tail else { return };
    let soffit = soffit_level(&job.eaves, heights, &timber.tails);
    if let (TailCut::Level, Some(soffit)) = (job.eaves.tail, soffit) {
        // Never above the seat: there the tail must meet the rest of the timber.
        let level = soffit.min(seat.level);
        let tag = timber.tag(CutUse::Soffit, CutPlace::Tail);
        match tail.clipped(Plane { normal: -DVec3::Z, offset: -level }, tag) {
            Some(left) => tail = left,
            None => return,
        }
    }
    let (lower, upper) = tail.split(level, Made::Inner);
    if let Some(mut upper) = upper {
        upper.retag(heel_tag, Made::Inner);
        cells.push(upper);
    }
    cells.extend(lower);
}

/// Cut tails square to their slope; a valley square to itself, so that its two
/// halves end alike.
fn square_tails(heights: &Heights, timber: &mut Timber, cell: Cell<Made>, ends: &[TailEnd]) -> Option<Cell<Made>> {
    if !ends.iter().any(|e| e.cut == TailCut::Square) {
        return Some(cell);
    }
    if timber.kind == MemberKind::ValleyRafter {
        let wall = timber.tails.first()?.wall;
        let out = tail_centre(timber);
        let at = timber.foot + timber.dir * out;
        let along = timber.dir.extend(timber.slope).normalize();
        let top = at.extend(timber.base + timber.slope * out + timber.top_offset);
        let tag = timber.tag(CutUse::Tail(wall), CutPlace::Tail);
        return cell.clipped(Plane::through(top, -along), tag);
    }
    ends.iter().filter(|e| e.cut == TailCut::Square).try_fold(cell, |cell, end| {
        let tag = timber.tag(CutUse::Tail(end.wall), CutPlace::Tail);
        cell.clipped(square_end(*end, heights.upstand), tag)
    })
}

/// Where the nearer of a timber's fascias crosses its line, as a distance from
/// the foot (negative: outwards), mm.
fn tail_centre(timber: &Timber) -> f64 {
    timber
        .tails
        .iter()
        .map(|t| {
            let inside = t.plane.inward.dot(timber.foot) - t.plane.offset;
            -(inside + t.overhang) / t.plane.inward.dot(timber.dir).max(LEAST_SPLAY)
        })
        .fold(f64::NEG_INFINITY, f64::max)
}

/// A valley jack close to the corner comes down over the plates: cut it level
/// on top of them.
fn above_plates(timber: &mut Timber, cell: Cell<Made>) -> Option<Cell<Made>> {
    if !timber.is_rafter() || cell.points.iter().all(|p| p.z >= timber.plate_level) {
        return Some(cell);
    }
    let tag = timber.tag(CutUse::Seat, CutPlace::Foot);
    cell.clipped(Plane { normal: -DVec3::Z, offset: -timber.plate_level }, tag)
}

/// Height of a level soffit: the plumb depth of the fascia below the top of
/// the tail; the lowest one where two fascias meet.
fn soffit_level(eaves: &Eaves, heights: &Heights, ends: &[TailEnd]) -> Option<f64> {
    ends.iter()
        .map(|e| e.plane.base_height - e.overhang * e.plane.tan_pitch + heights.upstand - eaves.fascia_depth)
        .reduce(f64::min)
}

/// The plane of a tail cut square to its face, through the top arris at the overhang.
fn square_end(end: TailEnd, upstand: f64) -> Plane {
    let line = end.plane.inward * (end.plane.offset - end.overhang);
    let point = line.extend(end.plane.height_at(line) + upstand);
    let normal = -end.plane.inward.extend(end.plane.tan_pitch).normalize();
    Plane::through(point, normal)
}

/// The line in plan at which a tail is cut plumb.
fn fascia_line(end: TailEnd) -> HalfPlan {
    HalfPlan::through(end.plane.inward * (end.plane.offset - end.overhang), -end.plane.inward)
}

/// A roof plane raised by the upstand, as a half-space with the timber below it.
fn raised(plane: RoofPlane, upstand: f64) -> Plane {
    let normal = (plane.inward * -plane.tan_pitch).extend(1.0).normalize();
    let point = plane.inward * plane.offset;
    Plane::through(point.extend(plane.base_height + upstand), normal)
}

fn upright(half: HalfPlan) -> Plane {
    Plane { normal: half.normal.extend(0.0), offset: half.offset }
}

/// Refuse hips and valleys whose underside passes above their plate.
fn check_reach(job: &Job, timber: &Timber) -> Result<(), SolveError> {
    let Some(seat) = timber.seat else { return Ok(()) };
    let above = timber.base + timber.under_offset - seat.level;
    if above < 0.0 || timber.is_rafter() {
        return Ok(());
    }
    let plumb_per_depth = (1.0 + timber.slope * timber.slope).sqrt();
    let walls: Vec<&str> =
        timber.tails.iter().filter_map(|t| job.walls.get(t.wall.index())).map(|w| w.letter.as_str()).collect();
    Err(SolveError::HipTooShallow {
        kind: timber.kind.name(),
        walls: walls.join(" and "),
        depth: timber.section.depth,
        needed: timber.section.depth + above / plumb_per_depth + job.timber.rafter.birdsmouth,
    })
}

impl Timber {
    fn flat_height_fn(&self) -> impl Fn(DVec2) -> f64 + use<> {
        let (foot, dir, base, slope) = (self.foot, self.dir, self.base + self.top_offset, self.slope);
        move |p| base + slope * dir.dot(p - foot)
    }

    fn under_height_fn(&self) -> impl Fn(DVec2) -> f64 + use<> {
        let (foot, dir, base, slope) = (self.foot, self.dir, self.base + self.under_offset, self.slope);
        move |p| base + slope * dir.dot(p - foot)
    }
}
