//! Firring: where a slope was turned off its plate, what stands on that plate
//! is packed up to it. The plate itself stays level, so that joists lie on it.

use super::heights::Heights;
use super::timber::{Firring, Role, Seat, Timber};
use crate::solution::MemberKind;
use geometry::surface::WallId;
use geometry::{DVec2, HalfPlan};

/// Firring lower than this is left out, mm: the gap that timbers in contact
/// may have.
const LEAST: f64 = 0.05;

/// A hip nearer to along a plate than this (as a sine) finds no bearing on it.
const LEAST_SPLAY: f64 = 0.05;

/// Move the foot of a rafter from its roof line onto its plate; it stays on
/// its pitch line.
pub fn rafter_onto_plate(heights: &Heights, timber: &mut Timber) {
    let Some(line) = timber.tails.first().and_then(|tail| heights.plate_line(tail.wall)) else { return };
    let Some(step) = line.crossing(timber.foot, timber.dir) else { return };
    onto(timber, step, line.dir.perp());
}

/// Seat a hip or valley on the firred plates that it crosses, on the higher of
/// two. The foot of a hip moves onto that plate; a valley is over one plate
/// before it comes to the other, so its seat reaches from the first to both.
pub fn spine_onto_plate(heights: &Heights, timber: &mut Timber) {
    let lines = timber.tails.iter().filter_map(|tail| heights.plate_line(tail.wall));
    let crossings = lines.filter_map(|line| Some((line.crossing(timber.foot, timber.dir)?, line.dir.perp())));
    let highest = crossings.filter(|(step, _)| *step > 0.0 && *step < timber.run).max_by(|a, b| a.0.total_cmp(&b.0));
    let Some((step, inward)) = highest else { return };
    if timber.kind == MemberKind::ValleyRafter {
        let level = timber.base + timber.slope * step;
        timber.seat = timber.seat.map(|seat| Seat { level, ..seat });
        return;
    }
    onto(timber, step, inward);
}

/// Move a foot up its line onto a plate, and seat it there: its heel is square
/// across, so far out that both its arrises clear the plate.
fn onto(timber: &mut Timber, step: f64, inward: DVec2) {
    timber.foot += timber.dir * step;
    timber.run -= step;
    timber.base += timber.slope * step;
    let across = inward.dot(timber.left());
    let toward = inward.dot(timber.dir).max(LEAST_SPLAY);
    let back = (timber.half[1] * across).max(-timber.half[0] * across).max(0.0) / toward;
    timber.seat =
        Some(Seat { heel: HalfPlan::through(timber.foot - timber.dir * back, timber.dir), level: timber.base });
}

/// The part of a plate whose upper half is still there, where it is halved at
/// its head.
fn halved_from(plate: &Timber) -> Option<HalfPlan> {
    let upper = plate.notches.iter().find(|notch| notch.faces.iter().any(|face| face.plane.normal.z < 0.0))?;
    let shoulder = upper.faces.iter().find(|face| face.plane.normal.z == 0.0)?.plane;
    Some(HalfPlan { normal: shoulder.normal.truncate(), offset: shoulder.offset }.flipped())
}

/// Put firring on the plates under everything that stands above them.
pub fn place(heights: &Heights, timbers: &mut [Timber]) {
    if heights.plates.iter().all(Option::is_none) {
        return;
    }
    let stands: Vec<(Vec<WallId>, f64, Vec<HalfPlan>)> = timbers
        .iter()
        .filter(|t| !t.gone)
        .filter_map(|t| {
            let seat = t.seat?;
            let firred = t.tails.iter().any(|tail| heights.plate_line(tail.wall).is_some());
            let walls = t.tails.iter().map(|tail| tail.wall).filter(|_| firred).collect();
            Some((walls, seat.level, t.footprint.sides().iter().map(|side| side.half).collect()))
        })
        .collect();
    for plate in timbers.iter_mut() {
        let Role::Plate { wall } = plate.role else { continue };
        let top = plate.base + plate.top_offset;
        let mine = stands.iter().filter(|(walls, level, _)| walls.contains(&wall) && level - top >= LEAST);
        let whole = halved_from(plate);
        let beside = |sides: &[HalfPlan]| sides.iter().copied().chain(whole).collect();
        plate.firring =
            mine.map(|(_, level, sides)| Firring { sides: beside(sides.as_slice()), height: level - top }).collect();
    }
}
