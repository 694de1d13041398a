//! Rules on what lies along walls: openings and dormers.

use crate::read::dormers::ReadDormer;
use crate::read::openings::ReadOpening;
use crate::read::reader::Reader;
use crate::{Distance, Opening, Wall};
use core::ops::Range;

/// How far something may run past the end of a wall, or into its neighbour,
/// mm: sizes in feet and inches come out a hair off whole millimetres.
const HAIR: f64 = 1e-3;

/// Checks that what lies along a wall ends before the wall does. `lengths` has
/// one entry for every wall, mm.
pub(super) fn within(
    reader: &mut Reader<'_>,
    lengths: &[f64],
    walls: &[Wall],
    openings: &[ReadOpening],
    dormers: &[ReadDormer],
) {
    for ReadOpening { opening, along, .. } in openings {
        if let Some(span) = along {
            let place = Along { wall: opening.wall, along: opening.along, width: opening.width };
            place.within(reader, lengths, walls, &format!("Opening `{}`", opening.name), span);
        }
    }
    for ReadDormer { dormer, along, .. } in dormers {
        if let Some(span) = along {
            let place = Along { wall: dormer.wall, along: dormer.along, width: dormer.width };
            place.within(reader, lengths, walls, &format!("Dormer `{}`", dormer.name), span);
        }
    }
}

/// A stretch of a wall.
struct Along {
    wall: usize,
    along: f64,
    width: f64,
}

impl Along {
    fn within(&self, reader: &mut Reader<'_>, lengths: &[f64], walls: &[Wall], what: &str, span: &Range<usize>) {
        let Some((length, wall)) = lengths.get(self.wall).zip(walls.get(self.wall)) else { return };
        let end = self.along + self.width;
        if end > length + HAIR {
            reader.fault(
                span,
                "past-the-wall",
                format!("{what} ends {end:.1} mm along wall {}, which is {length:.1} mm long", wall.letter),
                "It would stand past the end of the wall, where the slope belongs to another one",
                format!(
                    "Write along of at most {:.1}, a lesser width, or another wall",
                    (length - self.width).max(0.0)
                ),
            );
        }
    }
}

/// Whether two stretches share more than a hair.
fn overlap(a: [f64; 2], b: [f64; 2]) -> bool {
    a[0].max(b[0]) + HAIR < a[1].min(b[1])
}

/// Reports openings that lie over each other, each once.
pub(super) fn openings_apart(reader: &mut Reader<'_>, walls: &[Wall], openings: &[ReadOpening]) {
    let apart = |a: &Opening, b: &Opening| {
        let (from_a, from_b) = match (a.up, b.up) {
            (Distance::Slope(a), Distance::Slope(b)) | (Distance::Plan(a), Distance::Plan(b)) => (a, b),
            // Whether these two meet depends on the slope; the frame knows it.
            _ => return true,
        };
        a.wall != b.wall
            || !overlap([a.along, a.along + a.width], [b.along, b.along + b.width])
            || !overlap([from_a, from_a + a.height], [from_b, from_b + b.height])
    };
    for (n, one) in openings.iter().enumerate().filter(|(_, one)| one.placed) {
        let earlier = openings.iter().take(n).filter(|other| other.placed);
        let mut over = earlier.filter(|other| !apart(&other.opening, &one.opening));
        if let (Some(other), Some(wall)) = (over.next(), walls.get(one.opening.wall)) {
            report(reader, "openings-overlap", "Openings", [&other.opening.name, &one.opening.name], wall, &one.span);
        }
    }
}

/// Reports dormers that stand in each other, each once.
pub(super) fn dormers_apart(reader: &mut Reader<'_>, walls: &[Wall], dormers: &[ReadDormer]) {
    let meets = |a: &ReadDormer, b: &ReadDormer| {
        let along = |one: &ReadDormer| [one.dormer.along, one.dormer.along + one.dormer.width];
        a.dormer.wall == b.dormer.wall
            && overlap(along(a), along(b))
            && a.reach.zip(b.reach).is_some_and(|(a, b)| overlap(a, b))
    };
    for (n, one) in dormers.iter().enumerate() {
        let mut over = dormers.iter().take(n).filter(|other| meets(other, one));
        if let (Some(other), Some(wall)) = (over.next(), walls.get(one.dormer.wall)) {
            report(reader, "dormers-overlap", "Dormers", [&other.dormer.name, &one.dormer.name], wall, &one.span);
        }
    }
}

fn report(
    reader: &mut Reader<'_>,
    code: &'static str,
    what: &str,
    [first, second]: [&str; 2],
    wall: &Wall,
    span: &Range<usize>,
) {
    reader.fault(
        span,
        code,
        format!("{what} `{first}` and `{second}` overlap on wall {}", wall.letter),
        "Both would take the same rafters out of the slope",
        format!("Move `{second}` along the wall or up the slope, or make one of them smaller"),
    );
}
