//! Reads the roof: pitches, eaves, verges and walls that differ.

use super::group::{Group, Read};
use super::number::shorten;
use super::plan::Plan;
use super::reader::Reader;
use crate::letters::{wall_index, wall_letter};
use crate::{Eaves, Fascia, TailCut, Verge, Wall};
use toml::de::DeTable;

/// What the file says of the roof.
pub(super) struct Roof {
    pub(super) walls: Vec<Wall>,
    pub(super) pitch_deg: f64,
    pub(super) eaves: Eaves,
    pub(super) verge: Verge,
}

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>, plan: &Plan) -> Roof {
    let group = reader.group(root, "roof");
    let pitch_deg = number(reader, &group, "pitch");
    let (eaves, fascia) = eaves(reader, &group);
    let verge = reader.group(&group, "verge");
    let verge = Verge { overhang: number(reader, &verge, "overhang"), inset: number(reader, &verge, "inset") };
    let letters = (0..plan.walls()).map(wall_letter);
    let as_the_roof = |letter| Wall::plain(letter, pitch_deg);
    let mut walls: Vec<Wall> = letters.map(as_the_roof).collect();
    let group = reader.group(&group, "walls");
    own_words(reader, &group, &fascia, &mut walls);
    all_gables(reader, &group, &walls);
    Roof { walls, pitch_deg, eaves, verge }
}

/// A number that has a default or must be there.
fn number(reader: &mut Reader<'_>, group: &Group<'_>, word: &str) -> f64 {
    reader.number(group, word).map_or(0.0, |read| read.value)
}

fn eaves(reader: &mut Reader<'_>, roof: &Group<'_>) -> (Eaves, Read<Fascia>) {
    let group = reader.group(roof, "eaves");
    let fascia = reader.choice(&group, "fascia", Fascia::Level);
    let eaves = Eaves {
        overhang: number(reader, &group, "overhang"),
        fascia: fascia.value,
        tail: reader.choice(&group, "tail", TailCut::Plumb).value,
        fascia_depth: number(reader, &group, "depth"),
        sprocket: None,
    };
    (eaves, fascia)
}

/// Reads what walls say for themselves.
fn own_words(reader: &mut Reader<'_>, group: &Group<'_>, fascia: &Read<Fascia>, walls: &mut [Wall]) {
    for word in group.table.into_iter().flat_map(DeTable::keys) {
        let letter: &str = word.get_ref();
        let index = wall_index(letter);
        // Without corners nobody can tell which walls there are.
        if walls.is_empty() && index.is_some() {
            reader.group(group, letter);
            continue;
        }
        match index.and_then(|index| walls.get_mut(index)) {
            Some(wall) => {
                let own = reader.group(group, letter);
                one_wall(reader, &own, fascia, wall);
            }
            None => {
                let near = wall_index(&letter.to_uppercase()).filter(|index| *index < walls.len()).map(wall_letter);
                let shown = shorten(letter);
                let range = match walls {
                    [] => "a letter from A on".to_owned(),
                    [.., last] => format!("a letter from A to {}", last.letter),
                };
                *reader.fault(
                    &word.span(),
                    "unknown-wall",
                    format!("There is no wall `{shown}`: the plan has {}", walls_in_words(walls)),
                    "Wall A runs from the first corner to the second, then B, C and on; courtyards go on lettering",
                    format!("Write {range}"),
                ) = near;
            }
        }
    }
}

/// Which walls there are.
fn walls_in_words(walls: &[Wall]) -> String {
    match walls {
        [] => "no corners that can be read".to_owned(),
        [only] => format!("wall {} alone", only.letter),
        [first, .., last] => format!("walls {} to {}", first.letter, last.letter),
    }
}

fn one_wall(reader: &mut Reader<'_>, own: &Group<'_>, fascia: &Read<Fascia>, wall: &mut Wall) {
    let gable = reader.flag(own, "gable");
    let pitch = reader.number(own, "pitch");
    let overhang = reader.number(own, "overhang");
    let letter = wall.letter.clone();
    if gable.value
        && let Some(pitch) = &pitch
    {
        reader.fault(
            &pitch.span,
            "gable-with-pitch",
            format!("Wall {letter} is a gable, yet has a pitch of its own"),
            "No slope rises from a gable, so its pitch would be passed over",
            format!("Take out the pitch of wall {letter}, or its gable"),
        );
    }
    if let Some(overhang) = &overhang {
        if gable.value {
            reader.fault(
                &overhang.span,
                "gable-with-overhang",
                format!("Wall {letter} is a gable, yet has an eaves overhang of its own"),
                "A gable has a verge and no eaves, so the overhang would be passed over",
                format!("Take out the overhang of wall {letter}, and set verge = {{ overhang = … }} under [roof]"),
            );
        } else if fascia.is_sound() && fascia.value == Fascia::Level {
            reader.fault(
                &overhang.span,
                "overhang-with-level-fascia",
                format!("Wall {letter} has its own overhang, but the fascia runs level all round"),
                "With a level fascia the overhang of each wall follows from its pitch",
                "Write fascia = \"fixed\" in eaves to set overhangs one by one, or take this one out",
            );
        }
    }
    wall.gable = gable.value;
    if let Some(pitch) = pitch.filter(Read::is_sound) {
        wall.pitch_deg = pitch.value;
    }
    wall.overhang = overhang.map(|overhang| overhang.value);
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
