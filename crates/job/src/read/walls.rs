//! Reads what walls say for themselves.

use super::group::{Group, Read};
use super::number::shorten;
use super::reader::Reader;
use crate::letters::{wall_index, wall_letter};
use crate::{Fascia, UpperSlope, Wall};
use core::ops::Range;
use toml::de::DeTable;

/// Reads what walls say for themselves.
pub(super) fn own_words(reader: &mut Reader<'_>, group: &Group<'_>, fascia: &Read<Fascia>, walls: &mut [Wall]) {
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
                *reader.fault(
                    &word.span(),
                    "unknown-wall",
                    format!("There is no wall `{}`: the plan has {}", shorten(letter), walls_in_words(walls)),
                    "Wall A runs from the first corner to the second, then B, C and on; courtyards go on lettering",
                    format!("Write {}", letters_in_words(walls)),
                ) = near;
            }
        }
    }
}

/// Which letters may be written.
pub(super) fn letters_in_words(walls: &[Wall]) -> String {
    match walls {
        [] => "a letter from A on".to_owned(),
        [.., last] => format!("a letter from A to {}", last.letter),
    }
}

/// Which walls there are.
pub(super) fn walls_in_words(walls: &[Wall]) -> String {
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
    let plate = reader.number(own, "plate");
    let half_hip = reader.number(own, "half_hip");
    let gablet = reader.number(own, "gablet");
    let upper_group = reader.group(own, "upper");
    let upper = upper(reader, &upper_group);
    gable_alone(reader, wall, &gable, pitch.as_ref(), overhang.as_ref(), fascia);
    let forms = [
        ("gable", "a gable", gable.value.then(|| gable.span.clone())),
        ("half_hip", "a half hip", half_hip.as_ref().map(|read| read.span.clone())),
        ("gablet", "a slope under a gablet", gablet.as_ref().map(|read| read.span.clone())),
        ("upper", "a slope of two pitches", upper.is_some().then(|| upper_group.span.clone())),
    ];
    one_form(reader, &wall.letter, &forms);
    wall.gable = gable.value;
    if let Some(pitch) = pitch.filter(Read::is_sound) {
        wall.pitch_deg = pitch.value;
    }
    wall.overhang = overhang.map(|overhang| overhang.value);
    wall.plate = plate.map_or(0.0, |plate| plate.value);
    wall.half_hip = half_hip.map(|height| height.value);
    wall.gablet = gablet.map(|height| height.value);
    if let Some(upper) = upper {
        two_pitches(reader, wall, &upper);
        wall.upper = Some(upper.slope);
    }
}

/// A gable has neither pitch nor eaves.
fn gable_alone(
    reader: &mut Reader<'_>,
    wall: &Wall,
    gable: &Read<bool>,
    pitch: Option<&Read<f64>>,
    overhang: Option<&Read<f64>>,
    fascia: &Read<Fascia>,
) {
    let letter = &wall.letter;
    if gable.value
        && let Some(pitch) = pitch
    {
        reader.fault(
            &pitch.span,
            "gable-with-pitch",
            format!("Wall {letter} is a gable, yet has a pitch of its own"),
            "No slope rises from a gable, so its pitch would be passed over",
            format!("Take out the pitch of wall {letter}, or its gable"),
        );
    }
    if let Some(overhang) = overhang {
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
}

/// A key that shapes a wall, what the wall is then, and where that is written.
type Form = (&'static str, &'static str, Option<Range<usize>>);

/// A wall is a gable, a half hip, under a gablet, of two pitches, or plain.
fn one_form(reader: &mut Reader<'_>, letter: &str, forms: &[Form]) {
    let mut written = forms.iter().filter_map(|(word, words, span)| span.as_ref().map(|span| (word, words, span)));
    let Some((first, is, _)) = written.next() else { return };
    for (other, also, span) in written {
        reader.fault(
            span,
            "wall-of-two-forms",
            format!("Wall {letter} is {is} and {also} at once"),
            "Only one of the two can be built, and guessing which would cut the wrong roof",
            format!("Take out {first} or {other} of wall {letter}"),
        );
    }
}

/// A second pitch as read.
pub(super) struct ReadUpper {
    pub(super) slope: UpperSlope,
    /// Where its pitch is written.
    pub(super) span: Range<usize>,
}

/// Reads a second pitch, if one is written.
pub(super) fn upper(reader: &mut Reader<'_>, group: &Group<'_>) -> Option<ReadUpper> {
    reader.says(group);
    let from = reader.number(group, "from");
    let pitch = reader.number(group, "pitch");
    let (from, pitch) = (from?, pitch?);
    if !from.is_sound() || !pitch.is_sound() {
        return None;
    }
    Some(ReadUpper { slope: UpperSlope { from: from.value, pitch_deg: pitch.value }, span: pitch.span })
}

/// Two slopes of one pitch would be one slope.
pub(super) fn two_pitches(reader: &mut Reader<'_>, wall: &Wall, upper: &ReadUpper) {
    if upper.slope.pitch_deg == wall.pitch_deg {
        reader.fault(
            &upper.span,
            "upper-same-pitch",
            format!("The second pitch of wall {} is the same as its first, {}°", wall.letter, wall.pitch_deg),
            "The slope does not break there, so nothing could be framed at the break",
            format!("Write another pitch, or take out the second pitch of wall {}", wall.letter),
        );
    }
}
