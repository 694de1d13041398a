//! Reads a plan that was measured on site.

use super::group::{Group, Read};
use super::number::shorten;
use super::plan::{Corner, Ring};
use super::reader::Reader;
use super::survey_words;
use crate::Survey;
use crate::keys::{Kind, pair};
use crate::letters::{wall_index, wall_letter};
use core::ops::Range;
use geometry::survey::{self, Diagonal, Level, Measure, TAPE_TOLERANCE, TURN_TOLERANCE_DEG, Turn};
use toml::de::DeTable;

/// The keys that say something of measured sides.
const WITH_SIDES: [&str; 6] = ["inward", "tolerance", "turn_tolerance", "diagonals", "turns", "levels"];

/// What came of a survey.
pub(super) struct Measured {
    /// The outer plates; `None` if not even their number could be read.
    pub(super) ring: Option<Ring>,
    /// `None` if no plan could be made.
    pub(super) survey: Option<Survey>,
}

/// Where measurements are written.
pub(super) struct Places {
    readings: Vec<(Measure, Range<usize>)>,
    /// The sides as a whole.
    pub(super) sides: Range<usize>,
    /// The corners that point inwards.
    pub(super) inward: Range<usize>,
}

impl Places {
    /// The place of a measurement, or of the sides as a whole.
    pub(super) fn of(&self, what: Measure) -> &Range<usize> {
        self.readings.iter().find(|(known, _)| *known == what).map_or(&self.sides, |(_, span)| span)
    }

    /// The place of the measured distance of two corners.
    pub(super) fn distance(&self, from: usize, to: usize, count: usize) -> Option<&Range<usize>> {
        let between = |what: &Measure| match *what {
            Measure::Side(k) => [k, (k + 1) % count] == [from, to] || [k, (k + 1) % count] == [to, from],
            Measure::Diagonal(a, b) => [a, b] == [from, to] || [a, b] == [to, from],
            Measure::Turn(_) => false,
        };
        self.readings.iter().find(|(what, _)| between(what)).map(|(_, span)| span)
    }
}

/// Reads what was measured; `None` if the plan is given by its corners.
pub(super) fn read(reader: &mut Reader<'_>, plan: &Group<'_>) -> Option<Measured> {
    let Some(sides) = plan.get("sides") else {
        without_sides(reader, plan);
        return None;
    };
    if let Some(corners) = plan.get("corners") {
        reader.fault(
            &corners.span(),
            "survey-and-corners",
            "The plan is given both by its corners and by measured sides",
            "They would be two plans, and nobody could tell which one is built",
            "Take out `corners`, or `sides` and what was measured with them",
        );
    }
    let outer = read_sides(reader, plan);
    let count = outer.len();
    let mut places = Places { readings: Vec::new(), sides: sides.span(), inward: sides.span() };
    for (k, (_, span)) in outer.iter().enumerate() {
        places.readings.push((Measure::Side(k), span.clone()));
    }
    let diagonals = distances(reader, plan, count, &mut places);
    let turns = at_corners(reader, plan, "turns", count).map(|list| {
        places.readings.extend(list.iter().map(|(corner, _, span)| (Measure::Turn(*corner), span.clone())));
        list.into_iter().map(|(corner, inside_deg, _)| Turn { corner, inside_deg }).collect()
    });
    let levels = at_corners(reader, plan, "levels", count)
        .map(|list| list.into_iter().map(|(corner, height, _)| Level { corner, height }).collect());
    let tape = reader.number(plan, "tolerance");
    let bevel = reader.number(plan, "turn_tolerance");
    let tolerances_read = tape.as_ref().is_none_or(Read::is_sound) && bevel.as_ref().is_none_or(Read::is_sound);
    let inward = inward(reader, plan, count, &mut places);
    let lengths: Option<Vec<f64>> = outer.iter().map(|(length, _)| *length).collect();
    let survey = (|| {
        let measured = survey::Survey {
            sides: lengths?,
            diagonals: diagonals?,
            turns: turns?,
            tolerance: tape.map_or(TAPE_TOLERANCE, |read| read.value),
            turn_tolerance_deg: bevel.map_or(TURN_TOLERANCE_DEG, |read| read.value),
            inward: inward?,
        };
        tolerances_read.then_some((measured, levels?))
    })()
    .filter(|_| plan.get("corners").is_none())
    .and_then(|(measured, levels)| match survey::adjust(&measured) {
        Ok(adjusted) => Some(Survey { measured, adjusted, levels }),
        Err(fault) => {
            survey_words::report(reader, &places, count, &fault);
            None
        }
    });
    let at = |k: usize| survey.as_ref().and_then(|s| s.adjusted.corners.get(k)).map(|p| p.to_array());
    let corners: Vec<Corner> = outer.into_iter().enumerate().map(|(k, (_, span))| Corner { at: at(k), span }).collect();
    let ring = (!corners.is_empty()).then(|| Ring { corners, span: sides.span() });
    Some(Measured { ring, survey })
}

fn without_sides(reader: &mut Reader<'_>, plan: &Group<'_>) {
    for word in WITH_SIDES {
        let Some(value) = plan.get(word) else { continue };
        if value.get_ref().as_table().is_some_and(DeTable::is_empty) {
            continue;
        }
        reader.fault(
            &value.span(),
            "survey-without-sides",
            format!("`plan.{word}` is written, but no measured sides"),
            "It belongs to a plan that is put together from measurements, and would be passed over",
            "Write the lengths of all walls, such as sides = [8400, 5200, 8400, 5200], in place of `corners`",
        );
    }
}

/// Every side with its place; `None` where a fault was reported.
fn read_sides(reader: &mut Reader<'_>, plan: &Group<'_>) -> Vec<(Option<f64>, Range<usize>)> {
    let read = reader.value(
        plan,
        "sides",
        |_| None,
        Vec::new(),
        |reader, path, kind, value| {
            let (Kind::Sides(limits), Some(list)) = (kind, value.get_ref().as_array()) else {
                reader.wrong_type(path, kind, value);
                return None;
            };
            // More than can be measured is refused with the survey; nothing is said of each.
            let read = list.iter().take(survey::MOST_CORNERS + 1);
            let sides: Vec<_> = read.map(|one| (reader.length_within(path, one, limits), one.span())).collect();
            if !(3..=survey::MOST_CORNERS).contains(&sides.len()) {
                reader.fault(
                    &value.span(),
                    "survey-size",
                    format!("`{path}` has {} lengths; a survey takes 3 to {}", list.len(), survey::MOST_CORNERS),
                    "Fewer walls enclose nothing, and more are not measured with a tape",
                    "Write one length for every wall, going round anticlockwise",
                );
                return None;
            }
            Some(sides)
        },
    );
    read.map(|read| read.value).unwrap_or_default()
}

/// Measured distances of corners; `None` after a fault.
fn distances(reader: &mut Reader<'_>, plan: &Group<'_>, count: usize, places: &mut Places) -> Option<Vec<Diagonal>> {
    let group = reader.group(plan, "diagonals");
    let mut all = Some(Vec::new());
    for word in words(&group) {
        let known = pair(word.get_ref()).filter(|(from, to)| *from < count && *to < count);
        let Some((from, to)) = known else {
            unknown_corner(reader, &word.span(), &group.path, word.get_ref(), count, "two letters, such as \"A-C\"");
            all = None;
            continue;
        };
        let length = reader.number(&group, word.get_ref()).filter(Read::is_sound);
        places.readings.push((Measure::Diagonal(from, to), word.span()));
        all = all.zip(length).map(|(mut all, length)| {
            all.push(Diagonal { from, to, length: length.value });
            all
        });
    }
    all.filter(|_| count > 0)
}

/// Numbers by the letters of corners, with their places; `None` after a fault.
fn at_corners(
    reader: &mut Reader<'_>,
    plan: &Group<'_>,
    word: &str,
    count: usize,
) -> Option<Vec<(usize, f64, Range<usize>)>> {
    let group = reader.group(plan, word);
    let mut all = Some(Vec::new());
    for word in words(&group) {
        let Some(corner) = wall_index(word.get_ref()).filter(|corner| *corner < count) else {
            unknown_corner(reader, &word.span(), &group.path, word.get_ref(), count, "one letter");
            all = None;
            continue;
        };
        let number = reader.number(&group, word.get_ref()).filter(Read::is_sound);
        all = all.zip(number).map(|(mut all, number)| {
            all.push((corner, number.value, word.span()));
            all
        });
    }
    all
}

/// The words of a group in the order of the file.
fn words<'d>(group: &Group<'d>) -> Vec<&'d toml::Spanned<std::borrow::Cow<'d, str>>> {
    let mut words: Vec<_> = group.table.into_iter().flat_map(DeTable::keys).collect();
    words.sort_by_key(|word| word.span().start);
    words.truncate(survey::MOST_READINGS + 1);
    words
}

/// Corners that point inwards: nothing said, or a list. `None` after a fault.
fn inward(reader: &mut Reader<'_>, plan: &Group<'_>, count: usize, places: &mut Places) -> Option<Option<Vec<usize>>> {
    let read = reader.value(
        plan,
        "inward",
        |_| None,
        None,
        |reader, path, kind, value| {
            let letters = value.get_ref().as_array();
            let letters: Option<Vec<_>> =
                letters.and_then(|list| list.iter().map(|one| Some((one.get_ref().as_str()?, one.span()))).collect());
            let Some(letters) = letters else {
                reader.wrong_type(path, kind, value);
                return None;
            };
            let mut corners = Vec::new();
            for (letter, span) in letters.iter().take(survey::MOST_CORNERS + 1) {
                match wall_index(letter).filter(|corner| *corner < count) {
                    Some(corner) => corners.push(corner),
                    None => {
                        unknown_corner(reader, span, path, letter, count, "one letter");
                        return None;
                    }
                }
            }
            Some(Some(corners))
        },
    );
    let Some(read) = read else { return Some(None) };
    places.inward = read.span.clone();
    read.is_sound().then_some(read.value)
}

fn unknown_corner(reader: &mut Reader<'_>, span: &Range<usize>, path: &str, word: &str, count: usize, wanted: &str) {
    // Without sides nobody can tell which corners there are.
    if count == 0 {
        return;
    }
    let last = wall_letter(count - 1);
    reader.fault(
        span,
        "unknown-corner",
        format!("\"{}\" in `{path}` names no corner: the plan has corners A to {last}", shorten(word)),
        "A corner has the letter of the wall that starts there: A is where wall A starts",
        format!("Write {wanted}, from A to {last}"),
    );
}
