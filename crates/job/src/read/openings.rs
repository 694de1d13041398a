//! Reads openings.

use super::group::{From, Group, Read};
use super::names::Named;
use super::reader::Reader;
use crate::{Distance, Opening, OpeningKind, Wall};
use core::ops::Range;

/// An opening with the places of what other rules need.
pub(super) struct ReadOpening {
    pub(super) opening: Opening,
    /// Where its name is written.
    pub(super) span: Range<usize>,
    /// Where its distance along the wall is written, if all that says where it
    /// lies along the wall could be read.
    pub(super) along: Option<Range<usize>>,
    /// Whether its place up the slope could be read too.
    pub(super) placed: bool,
}

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>, walls: &[Wall]) -> Vec<ReadOpening> {
    let named = reader.named(root, "openings");
    named.into_iter().map(|named| one(reader, named, walls)).collect()
}

fn one(reader: &mut Reader<'_>, named: Named<'_>, walls: &[Wall]) -> ReadOpening {
    let Named { name, span, group } = named;
    let kind = reader.chosen(&group, "kind", OpeningKind::RoofWindow);
    let wall = reader.wall(&group, "wall", walls);
    on_a_slope(reader, &format!("Opening `{name}`"), &wall, walls);
    let along = reader.needed(&group, "along");
    let width = reader.needed(&group, "width");
    let height = reader.needed(&group, "height");
    let up = up(reader, &group, &kind);
    let flue_wall = reader.number(&group, "flue_wall");
    if let Some(flue_wall) = &flue_wall
        && kind.is_sound()
        && kind.value != OpeningKind::Chimney
    {
        reader.fault(
            &flue_wall.span,
            "flue-wall-without-flue",
            format!("`{}` is the wall of a flue, but `{name}` is no chimney", group.join("flue_wall")),
            "Only a chimney has a flue to keep timber away from, so it would be passed over",
            "Take it out, or write kind = \"chimney\"",
        );
    }
    let sound = wall.is_sound() && along.is_sound() && width.is_sound();
    let placed = sound && height.is_sound() && up.is_some();
    let opening = Opening {
        name,
        kind: kind.value,
        wall: wall.value,
        along: along.value,
        up: up.unwrap_or(Distance::Plan(0.0)),
        width: width.value,
        height: height.value,
        flue_wall: flue_wall.map(|flue_wall| flue_wall.value),
    };
    ReadOpening { opening, span, along: if sound { Some(along.span) } else { None }, placed }
}

/// Where the lower edge lies: exactly one of two keys says it.
fn up(reader: &mut Reader<'_>, group: &Group<'_>, kind: &Read<OpeningKind>) -> Option<Distance> {
    let slope = reader.number(group, "up");
    let plan = reader.number(group, "up_plan");
    let level = kind.is_sound() && kind.value != OpeningKind::RoofWindow;
    match (slope, plan) {
        (Some(slope), Some(plan)) => {
            reader.fault(
                if slope.span.start > plan.span.start { &slope.span } else { &plan.span },
                "up-said-twice",
                format!("`{}` has both up and up_plan", group.path),
                "One is measured along the slope and the other level, so only one of them can hold",
                format!("Take out {}", if level { "up" } else { "up or up_plan" }),
            );
            None
        }
        (Some(slope), None) if level => {
            reader.fault(
                &slope.span,
                "up-along-the-slope",
                format!("`{}` runs along the slope, but this opening is not square to it", group.join("up")),
                "A chimney or hatch goes up plumb, so it is measured level from the plate line",
                "Write up_plan with the level distance instead",
            );
            None
        }
        (Some(slope), None) => if_sound(slope).map(Distance::Slope),
        (None, Some(plan)) => if_sound(plan).map(Distance::Plan),
        (None, None) => {
            let (word, example) = if level { ("up_plan", "1200") } else { ("up", "1500") };
            if !reader.is_slip(&group.join("up")) && !reader.is_slip(&group.join("up_plan")) {
                reader.fault(
                    &group.span,
                    "missing-key",
                    format!("`{}` does not say how far up it lies", group.path),
                    "It has no default: from the plate line to its lower edge",
                    format!("Write {word} = {example} in it"),
                );
            }
            None
        }
    }
}

fn if_sound(read: Read<f64>) -> Option<f64> {
    if read.is_sound() { Some(read.value) } else { None }
}

/// Reports what lies on a gable, and lets no more be said of its place.
pub(super) fn on_a_slope(reader: &mut Reader<'_>, what: &str, wall: &Read<usize>, walls: &[Wall]) {
    let gable = walls.get(wall.value).filter(|found| wall.from == From::File && found.gable);
    if let Some(gable) = gable {
        reader.fault(
            &wall.span,
            "no-slope-there",
            format!("{what} is on wall {}, which is a gable", gable.letter),
            "No slope rises from a gable, so there is nothing that it could lie in",
            "Write the letter of the wall whose slope it lies in",
        );
    }
}
