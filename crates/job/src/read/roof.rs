//! Reads the roof: pitches, eaves, verges and the walls.

use super::group::{Group, Read};
use super::plan::Plan;
use super::reader::Reader;
use super::walls;
use crate::letters::wall_letter;
use crate::{Eaves, Fascia, RidgeRun, Sprocket, TailCut, Verge, Wall};
use core::ops::Range;

/// What the file says of the roof.
pub(super) struct Roof {
    pub(super) walls: Vec<Wall>,
    pub(super) pitch_deg: f64,
    pub(super) eaves: Eaves,
    pub(super) verge: Verge,
    pub(super) ridge: RidgeRun,
    pub(super) packing: f64,
}

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>, plan: &Plan) -> Roof {
    let group = reader.group(root, "roof");
    let pitch = reader.needed(&group, "pitch");
    let eaves = eaves(reader, &group);
    let ridge = reader.choice(&group, "ridge", RidgeRun::Level).value;
    let packing = number(reader, &group, "packing");
    let verge = reader.group(&group, "verge");
    let verge = Verge { overhang: number(reader, &verge, "overhang"), inset: number(reader, &verge, "inset") };
    let letters = (0..plan.walls()).map(wall_letter);
    let as_the_roof = |letter| Wall::plain(letter, pitch.value);
    let mut walls: Vec<Wall> = letters.map(as_the_roof).collect();
    let upper = reader.group(&group, "upper");
    let upper = walls::upper(reader, &upper);
    let group = reader.group(&group, "walls");
    walls::own_words(reader, &group, &eaves.fascia, &mut walls);
    all_gables(reader, &group, &walls);
    if let Some(upper) = upper {
        for wall in walls.iter_mut().filter(|wall| slopes_on(wall)) {
            walls::two_pitches(reader, wall, &upper);
            wall.upper = Some(upper.slope);
        }
    }
    if let Some(span) = &eaves.sprocket_pitch
        && pitch.is_sound()
    {
        flatter_than_the_slopes(reader, span, &eaves.eaves, &walls);
    }
    Roof { walls, pitch_deg: pitch.value, eaves: eaves.eaves, verge, ridge, packing }
}

/// Whether the wall's slope runs from the plate to the ridge in one pitch, so
/// that the second pitch of the roof may break it.
fn slopes_on(wall: &Wall) -> bool {
    !wall.gable && wall.half_hip.is_none() && wall.gablet.is_none() && wall.upper.is_none()
}

/// A number that has a default or must be there.
fn number(reader: &mut Reader<'_>, group: &Group<'_>, word: &str) -> f64 {
    reader.number(group, word).map_or(0.0, |read| read.value)
}

/// The eaves, and what other rules need of them.
struct ReadEaves {
    eaves: Eaves,
    fascia: Read<Fascia>,
    /// Where the pitch of sprockets is written, if it could be read.
    sprocket_pitch: Option<Range<usize>>,
}

fn eaves(reader: &mut Reader<'_>, roof: &Group<'_>) -> ReadEaves {
    let group = reader.group(roof, "eaves");
    let fascia = reader.choice(&group, "fascia", Fascia::Level);
    let sprocket = sprocket(reader, &group);
    let eaves = Eaves {
        overhang: number(reader, &group, "overhang"),
        fascia: fascia.value,
        tail: reader.choice(&group, "tail", TailCut::Plumb).value,
        fascia_depth: number(reader, &group, "depth"),
        sprocket: sprocket.as_ref().map(|(sprocket, _)| *sprocket),
    };
    ReadEaves { eaves, fascia, sprocket_pitch: sprocket.map(|(_, span)| span) }
}

fn sprocket(reader: &mut Reader<'_>, eaves: &Group<'_>) -> Option<(Sprocket, Range<usize>)> {
    let group = reader.group(eaves, "sprocket");
    reader.says(&group);
    let pitch = reader.number(&group, "pitch");
    let reach = reader.number(&group, "reach");
    let (pitch, reach) = (pitch?, reach?);
    let sprocket = Sprocket { pitch_deg: pitch.value, reach: reach.value };
    if pitch.is_sound() { Some((sprocket, pitch.span)) } else { None }
}

/// Sprockets flatten the slope, so no wall may slope less than they do.
fn flatter_than_the_slopes(reader: &mut Reader<'_>, span: &Range<usize>, eaves: &Eaves, walls: &[Wall]) {
    let Some(sprocket) = &eaves.sprocket else { return };
    let flat = walls.iter().filter(|wall| !wall.gable).find(|wall| wall.pitch_deg <= sprocket.pitch_deg);
    if let Some(wall) = flat {
        reader.fault(
            span,
            "sprocket-too-steep",
            format!(
                "Sprockets of {}° are not flatter than wall {}, which slopes at {}°",
                sprocket.pitch_deg, wall.letter, wall.pitch_deg
            ),
            "Sprockets are packed up on the backs of the rafters to flatten the slope at the eaves",
            format!("Write a pitch below {}°, or take the sprockets out", wall.pitch_deg),
        );
    }
}

fn all_gables(reader: &mut Reader<'_>, group: &Group<'_>, walls: &[Wall]) {
    if !walls.is_empty() && walls.iter().all(|wall| wall.gable) {
        reader.fault(
            &group.span,
            "all-gables",
            "Every wall is a gable",
            "A roof needs at least one wall that a slope rises from",
            "Take out the gable of the walls that carry rafters",
        );
    }
}
