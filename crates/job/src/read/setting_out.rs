//! From plates as measured to the lines that the roof is set out to.

use super::plan::Plan;
use super::reader::Reader;
use super::roof::Roof;
use super::timber::ReadTimber;
use crate::{LEAST_BEARING, Section, SettingOut, Wall, places};
use geometry::DVec2;
use geometry::roof_lines::{Bed, Plates, RoofLines, set_out};

/// Least bearing of a plate narrower than the usual, as a share of its width
/// (common practice).
const NARROW_BEARING: f64 = 0.75;

/// The roof lines of a checked plan, and how they came about.
pub(super) fn of(plan: &Plan, roof: &Roof, plate: Section) -> (Vec<Vec<[f64; 2]>>, SettingOut) {
    let plates = plan.loops();
    let loops = places(&plates);
    // Courtyards are given by their corners, which are as good as the rest.
    let outer = plan.survey.as_ref().map(|survey| &survey.adjusted.deviations);
    let deviations: Option<Vec<f64>> = outer.map(|known| {
        let usual = known.iter().sum::<f64>() / known.len().max(1) as f64;
        let rest = loops.iter().skip(1).flatten().map(|_| usual);
        known.iter().copied().chain(rest).collect()
    });
    let lines = set_out(&Plates {
        loops: &loops,
        kinds: &kinds(&roof.walls),
        deviations: deviations.as_deref(),
        within: plan.true_within,
        bed: bed(plate.depth, plan.wall.0),
    });
    let same = lines.is_as_measured(&loops);
    let RoofLines { loops, kept, let_go } = lines;
    let setting = SettingOut {
        plates: if same { Vec::new() } else { plates },
        within: plan.true_within,
        wall: plan.wall.0,
        accept: plan.accept,
        ridge: roof.ridge,
        packing: roof.packing,
        kept,
        let_go,
    };
    (loops.iter().map(|ring| ring.iter().map(DVec2::to_array).collect()).collect(), setting)
}

/// How far a plate may be bedded off the face of its wall, mm: what is left
/// must bear.
fn bed(plate: f64, wall: f64) -> Bed {
    let least = least_bearing(plate);
    Bed { out: (plate.min(wall) - least).max(0.0), inward: (wall - least).max(0.0) }
}

/// Least bearing of a plate of this width, mm: a narrow one bears over three
/// quarters of its width.
fn least_bearing(plate: f64) -> f64 {
    LEAST_BEARING.min(NARROW_BEARING * plate)
}

/// What each wall does above its plate, as a number.
fn kinds(walls: &[Wall]) -> Vec<usize> {
    let plain = |wall: &Wall| Wall { letter: String::new(), ..wall.clone() };
    let all: Vec<Wall> = walls.iter().map(plain).collect();
    all.iter().map(|wall| all.iter().position(|other| other == wall).unwrap_or_default()).collect()
}

/// A wall too thin for the plate that is bedded on it.
pub(super) fn bearing(reader: &mut Reader<'_>, plan: &Plan, timber: &ReadTimber) {
    let (wall, span) = &plan.wall;
    let Some(plate) = timber.plate else { return };
    let least = least_bearing(plate.depth);
    if *wall < least {
        reader.fault(
            span,
            "bed-off-wall",
            format!("A wall of {wall} mm does not carry a plate of {} mm: it wants {least} mm of bearing", plate.depth),
            "The plate would stand over the edge of its wall, and tip under the rafters",
            format!("Write the thickness of what the plates are bedded on in `plan.wall`, {least} mm or more, or take narrower plates"),
        );
    }
}
