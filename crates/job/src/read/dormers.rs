//! Reads dormers.

use super::group::Group;
use super::names::Named;
use super::openings::on_a_slope;
use super::reader::Reader;
use crate::{Dormer, DormerKind, ValleyAs, Wall};
use core::ops::Range;
use geometry::Angle;

/// A dormer with the places of what other rules need.
pub(super) struct ReadDormer {
    pub(super) dormer: Dormer,
    /// Where its name is written.
    pub(super) span: Range<usize>,
    /// Where its distance along the wall is written, if all that says where it
    /// lies along the wall could be read.
    pub(super) along: Option<Range<usize>>,
    /// How far it runs over the plan, from the plate line, mm, if that could be
    /// told.
    pub(super) reach: Option<[f64; 2]>,
}

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>, walls: &[Wall]) -> Vec<ReadDormer> {
    let named = reader.named(root, "dormers");
    named.into_iter().map(|named| one(reader, named, walls)).collect()
}

fn one(reader: &mut Reader<'_>, named: Named<'_>, walls: &[Wall]) -> ReadDormer {
    let Named { name, span, group } = named;
    let kind = reader.chosen(&group, "kind", DormerKind::Gable);
    let wall = reader.wall(&group, "wall", walls);
    on_a_slope(reader, &format!("Dormer `{name}`"), &wall, walls);
    let along = reader.needed(&group, "along");
    let back = reader.needed(&group, "back");
    let width = reader.needed(&group, "width");
    let plate = reader.needed(&group, "plate");
    let pitch = reader.needed(&group, "pitch");
    let valley = reader.choice(&group, "valley", ValleyAs::LayBoard).value;
    let along_is_sound = wall.is_sound() && along.is_sound() && width.is_sound();
    let dormer = Dormer {
        name,
        kind: kind.value,
        wall: wall.value,
        along: along.value,
        back: back.value,
        width: width.value,
        plate: plate.value,
        pitch_deg: pitch.value,
        valley,
    };
    // A wall of no pitch is one whose pitch could not be read.
    let slope = walls.get(wall.value).filter(|slope| !slope.gable && slope.pitch_deg > 0.0);
    let sound = along_is_sound && kind.is_sound() && back.is_sound() && plate.is_sound() && pitch.is_sound();
    let mut reach = None;
    if let Some(slope) = slope
        && sound
        && flatter_than_the_slope(reader, &dormer, slope, &pitch.span)
        && above_the_slope(reader, &dormer, slope, &plate.span)
    {
        reach = reach_of(&dormer, slope);
    }
    ReadDormer { dormer, span, along: if along_is_sound { Some(along.span) } else { None }, reach }
}

/// A lean-to dormer as steep as the slope never comes back to it.
fn flatter_than_the_slope(reader: &mut Reader<'_>, dormer: &Dormer, slope: &Wall, span: &Range<usize>) -> bool {
    if dormer.kind == DormerKind::Gable || dormer.pitch_deg < slope.pitch_deg {
        return true;
    }
    reader.fault(
        span,
        "dormer-too-steep",
        format!(
            "Lean-to dormer `{}` slopes at {}°, no flatter than wall {} at {}°",
            dormer.name, dormer.pitch_deg, slope.letter, slope.pitch_deg
        ),
        "Its roof would never come down to the main slope behind it",
        format!("Write a pitch below {}°, or make it a gable dormer", slope.pitch_deg),
    );
    false
}

/// The plates of a dormer stand clear of the slope where its front is.
fn above_the_slope(reader: &mut Reader<'_>, dormer: &Dormer, slope: &Wall, span: &Range<usize>) -> bool {
    let height = height_of(slope, dormer.back);
    if dormer.plate > height {
        return true;
    }
    reader.fault(
        span,
        "dormer-under-slope",
        format!(
            "The plates of dormer `{}` are {} mm above those of wall {}, but its slope is {height:.0} mm above them at the front of the dormer",
            dormer.name, dormer.plate, slope.letter
        ),
        "The dormer would lie under the roof, with no front to it",
        format!("Write a plate higher than {height:.0} mm, or bring its front nearer to the plate line with back"),
    );
    false
}

/// Height of a slope above its plate, so far from the plate line in plan; mm.
fn height_of(slope: &Wall, back: f64) -> f64 {
    let lower = back * Angle::deg(slope.pitch_deg).tan();
    match slope.upper {
        Some(upper) if lower > upper.from => {
            let start = upper.from / Angle::deg(slope.pitch_deg).tan();
            upper.from + (back - start) * Angle::deg(upper.pitch_deg).tan()
        }
        _ => lower,
    }
}

/// From the front of a dormer to where its roof has come back to the slope,
/// both level from the plate line, mm. `None` where the slope breaks.
fn reach_of(dormer: &Dormer, slope: &Wall) -> Option<[f64; 2]> {
    if slope.upper.is_some() {
        return None;
    }
    let (main, own) = (Angle::deg(slope.pitch_deg).tan(), Angle::deg(dormer.pitch_deg).tan());
    let end = match dormer.kind {
        // The ridge runs level into the slope.
        DormerKind::Gable => (dormer.plate + dormer.width / 2.0 * own) / main,
        // plate + (end − back) · own = end · main
        DormerKind::LeanTo => (dormer.plate - dormer.back * own) / (main - own),
    };
    Some([dormer.back, end])
}
