//! Rules that join the plan with the rest of the file.

mod on_walls;

use super::PlanChecker;
use super::dormers::ReadDormer;
use super::openings::ReadOpening;
use super::plan::Plan;
use super::plan_words;
use super::reader::Reader;
use super::timber::ReadTimber;
use crate::{Wall, places};
use geometry::{CornerRef, DVec2, PlanFault};

/// What is joined with the plan.
pub(super) struct OverThePlan<'r> {
    pub(super) walls: &'r [Wall],
    pub(super) timber: &'r ReadTimber,
    pub(super) openings: &'r [ReadOpening],
    pub(super) dormers: &'r [ReadDormer],
}

/// Checks the plan, if all of it could be read, and what lies over it.
pub(super) fn check(reader: &mut Reader<'_>, plan: &Plan, over: &OverThePlan<'_>, checker: &PlanChecker<'_>) {
    on_walls::openings_apart(reader, over.walls, over.openings);
    on_walls::dormers_apart(reader, over.walls, over.dormers);
    if !plan.sound {
        return;
    }
    let loops = places(&plan.loops());
    let faults = checker(&loops);
    for fault in &faults {
        plan_words::report(reader, plan, fault);
    }
    on_walls::within(reader, &lengths(&loops), over.walls, over.openings, over.dormers);
    if let Some(plate) = over.timber.plate {
        walls_on_plates(reader, plan, &loops, plate.depth, &faults);
    }
}

/// Lengths of all walls in lettering order, mm.
fn lengths(loops: &[Vec<DVec2>]) -> Vec<f64> {
    let of_ring = |ring: &Vec<DVec2>| -> Vec<f64> {
        let ends = ring.iter().cycle().skip(1);
        ring.iter().zip(ends).map(|(start, end)| (*end - *start).length()).collect()
    };
    loops.iter().flat_map(of_ring).collect()
}

/// Two plates of a corner meet over their full width, so a wall shorter than
/// that has no plate between its corners.
fn walls_on_plates(reader: &mut Reader<'_>, plan: &Plan, loops: &[Vec<DVec2>], width: f64, known: &[PlanFault]) {
    for (ring, corners) in loops.iter().enumerate() {
        let ends = corners.iter().cycle().skip(1);
        for (corner, (start, end)) in corners.iter().zip(ends).enumerate() {
            let at = CornerRef { ring, corner };
            let length = (*end - *start).length();
            let reported = known.iter().any(|fault| {
                let next = CornerRef { ring, corner: (corner + 1) % corners.len() };
                matches!(fault, PlanFault::WallTooShort { at: there, .. } if *there == at)
                    || matches!(fault, PlanFault::RepeatedCorner { at: there } if *there == next)
            });
            if length < width && !reported {
                let letter = plan.letter(at);
                reader.fault(
                    &plan.span(at),
                    "wall-shorter-than-plate",
                    format!("Wall {letter}, which starts at this corner, is {length:.1} mm long: less than the plates are wide ({width} mm)"),
                    "The plates of its corners would lie on each other, with none left between",
                    format!("Move the corners at the ends of wall {letter} apart, or make one corner of them"),
                );
            }
        }
    }
}
