//! Reads the corners of the plate lines.

use super::group::{Group, Read, Value};
use super::reader::Reader;
use super::survey;
use crate::keys::Kind;
use crate::letters::wall_letter;
use crate::limits::{MOST_CORNERS, PLACE};
use crate::{Survey, TRUE_AT_MOST, TRUE_WITHIN, WALL};
use core::ops::Range;
use geometry::CornerRef;

/// Plates that a tape placed may be made true by so many of its tolerances.
const TAPES: f64 = 2.0;

/// A corner as read: `None` where a fault was reported.
pub(super) struct Corner {
    pub(super) at: Option<[f64; 2]>,
    pub(super) span: Range<usize>,
}

/// A loop of corners.
pub(super) struct Ring {
    pub(super) corners: Vec<Corner>,
    /// Its place in the text.
    pub(super) span: Range<usize>,
}

/// The plan as read.
pub(super) struct Plan {
    /// The outer plates, then the courtyards. Empty if they could not be read.
    pub(super) rings: Vec<Ring>,
    /// Whether every corner was read.
    pub(super) sound: bool,
    /// What was measured, if the outer plates come from that.
    pub(super) survey: Option<Survey>,
    /// How far corners may be moved to make the plates true, mm.
    pub(super) true_within: f64,
    /// Thickness of the wall under the plates, mm, and where it is written.
    pub(super) wall: (f64, Range<usize>),
    /// Measurements that disagree are taken as they are.
    pub(super) accept: bool,
}

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>) -> Plan {
    let group = reader.group(root, "plan");
    let (outer, survey) = match survey::read(reader, &group) {
        Some(measured) => (measured.ring, measured.survey),
        None => (corners(reader, &group), None),
    };
    let tape = survey.as_ref().map_or(0.0, |survey| TAPES * survey.measured.tolerance);
    let asked = reader.number(&group, "true_within").filter(Read::is_sound);
    let true_within = asked.map_or(tape.clamp(TRUE_WITHIN, TRUE_AT_MOST), |read| read.value);
    let wall = reader.number(&group, "wall").map_or((WALL, group.span.clone()), |read| (read.value, read.span));
    let accept = reader.flag(&group, "accept").value;
    let holes = reader.value(&group, "holes", |_| Some(Vec::new()), Vec::new(), holes);
    let outer_read = outer.is_some();
    let holes_read = holes.as_ref().is_some_and(Read::is_sound);
    let mut rings: Vec<Ring> = outer.into_iter().collect();
    // Letters follow from the outer loop, so holes without one have none.
    if outer_read {
        rings.extend(holes.map(|read| read.value).unwrap_or_default());
    }
    let all_places = rings.iter().flat_map(|ring| &ring.corners).all(|corner| corner.at.is_some());
    let mut plan = Plan { rings, sound: outer_read && holes_read && all_places, survey, true_within, wall, accept };
    if plan.walls() > MOST_CORNERS {
        let span = plan.rings.first().map_or(group.span, |ring| ring.span.clone());
        reader.fault(
            &span,
            "too-many-corners",
            format!("The plan has {} corners; {MOST_CORNERS} is the most", plan.walls()),
            "Every corner is compared with every other, and no roof cut by hand has so many",
            "Leave out corners that lie along straight walls, or split the job",
        );
        plan.sound = false;
    }
    plan
}

fn corners(reader: &mut Reader<'_>, group: &Group<'_>) -> Option<Ring> {
    let read = reader.value(
        group,
        "corners",
        |_| None,
        None,
        |reader, path, kind, value| ring(reader, path, kind, value).map(Some),
    );
    read.and_then(|read| read.value)
}

fn holes(reader: &mut Reader<'_>, path: &str, kind: &Kind, value: Value<'_>) -> Option<Vec<Ring>> {
    let Some(list) = value.get_ref().as_array() else {
        reader.wrong_type(path, kind, value);
        return None;
    };
    let rings: Vec<Option<Ring>> = list.iter().map(|hole| ring(reader, path, kind, hole)).collect();
    rings.into_iter().collect()
}

fn ring(reader: &mut Reader<'_>, path: &str, kind: &Kind, value: Value<'_>) -> Option<Ring> {
    let Some(list) = value.get_ref().as_array() else {
        reader.wrong_type(path, kind, value);
        return None;
    };
    let corners = list.iter().map(|value| Corner { at: corner(reader, path, value), span: value.span() }).collect();
    Some(Ring { corners, span: value.span() })
}

fn corner(reader: &mut Reader<'_>, path: &str, value: Value<'_>) -> Option<[f64; 2]> {
    let list = value.get_ref().as_array();
    let pair = list.and_then(|list| if list.len() == 2 { list.first().zip(list.get(1)) } else { None });
    let Some((x, y)) = pair else {
        reader.fault(
            &value.span(),
            "bad-corner",
            format!("This is not a corner of `{path}`"),
            "A corner is a place on the plan: how far east, and how far north",
            "Write two lengths in brackets, such as [8400, 0] or [\"8.4 m\", 0]",
        );
        return None;
    };
    let x = reader.length_within(path, x, &PLACE);
    let y = reader.length_within(path, y, &PLACE);
    x.zip(y).map(|(x, y)| [x, y])
}

impl Plan {
    /// How many walls there are.
    pub(super) fn walls(&self) -> usize {
        self.rings.iter().map(|ring| ring.corners.len()).sum()
    }

    /// The places of the corners. Whole only for a sound plan.
    pub(super) fn loops(&self) -> Vec<Vec<[f64; 2]>> {
        self.rings.iter().map(|ring| ring.corners.iter().filter_map(|corner| corner.at).collect()).collect()
    }

    /// The letter of the wall that starts at a corner.
    pub(super) fn letter(&self, at: CornerRef) -> String {
        let before: usize = self.rings.iter().take(at.ring).map(|ring| ring.corners.len()).sum();
        wall_letter(before + at.corner)
    }

    /// The place in the text of a corner, or of the whole plan.
    pub(super) fn span(&self, at: CornerRef) -> Range<usize> {
        let corner = self.rings.get(at.ring).and_then(|ring| ring.corners.get(at.corner));
        corner.map_or_else(|| self.ring_span(at.ring), |corner| corner.span.clone())
    }

    /// The place in the text of a loop.
    pub(super) fn ring_span(&self, ring: usize) -> Range<usize> {
        self.rings.get(ring).or(self.rings.first()).map_or(0..0, |ring| ring.span.clone())
    }

    /// How the file calls a loop.
    pub(super) fn ring_words(ring: usize) -> String {
        if ring == 0 { "the outer plates".to_owned() } else { format!("courtyard {ring}") }
    }
}
