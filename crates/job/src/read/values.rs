//! Reads values of several numbers, whole numbers and letters of walls.

use super::group::{From, Group, Read};
use super::number::{integer, shorten};
use super::reader::Reader;
use super::walls::{letters_in_words, walls_in_words};
use crate::Wall;
use crate::keys::{Kind, Preset};
use crate::letters::{wall_index, wall_letter};
use crate::limits::PLACE;
use crate::words::Choice;

impl Reader<'_> {
    /// A number that must be there or has a default; what is missing is
    /// reported and not sound.
    pub(super) fn needed(&mut self, group: &Group<'_>, word: &str) -> Read<f64> {
        self.number(group, word).unwrap_or(Read { value: 0.0, span: group.span.clone(), from: From::Fault })
    }

    /// A whole number; `None` when left out and without a default.
    pub(super) fn count(&mut self, group: &Group<'_>, word: &str) -> Option<Read<u32>> {
        // The numbers of the table are small and whole.
        let preset = |preset| if let Preset::Number(value) = preset { Some(value as u32) } else { None };
        self.value(group, word, preset, 0, |reader, path, kind, value| {
            let (Kind::Count(limits), Some(number)) = (kind, integer(value.get_ref())) else {
                reader.wrong_type(path, kind, value);
                return None;
            };
            let fits = u32::try_from(number).ok();
            let fits = fits.filter(|n| f64::from(*n) >= limits.least && f64::from(*n) <= limits.most);
            if fits.is_none() {
                reader.fault(
                    &value.span(),
                    "out-of-range",
                    format!("`{path}` is {number}, outside {} to {}", limits.least, limits.most),
                    limits.why,
                    kind.remedy(),
                );
            }
            fits
        })
    }

    /// Lengths in rising order; empty when left out.
    pub(super) fn lengths(&mut self, group: &Group<'_>, word: &str) -> Vec<f64> {
        let read = self.value(
            group,
            word,
            |_| Some(Vec::new()),
            Vec::new(),
            |reader, path, kind, value| {
                let (Kind::Lengths(limits), Some(list)) = (kind, value.get_ref().as_array()) else {
                    reader.wrong_type(path, kind, value);
                    return None;
                };
                let each: Vec<Option<f64>> = list.iter().map(|one| reader.length_within(path, one, limits)).collect();
                let all: Vec<f64> = each.into_iter().collect::<Option<_>>()?;
                let pairs = all.iter().zip(all.iter().skip(1)).zip(list.iter().skip(1));
                for ((before, next), place) in pairs {
                    if next <= before {
                        reader.fault(
                            &place.span(),
                            "not-rising",
                            format!("In `{path}`, {next} mm comes after {before} mm"),
                            "They run up the slope, and two in one place would be one timber in the other",
                            "Write every length once, the least first",
                        );
                        return None;
                    }
                }
                Some(all)
            },
        );
        read.map(|read| read.value).unwrap_or_default()
    }

    /// Numbers of some other unit; `None` when left out.
    pub(super) fn figures(&mut self, group: &Group<'_>, word: &str) -> Option<Read<Vec<f64>>> {
        self.value(
            group,
            word,
            |_| None,
            Vec::new(),
            |reader, path, kind, value| {
                let (Kind::Figures(limits, unit), Some(list)) = (kind, value.get_ref().as_array()) else {
                    reader.wrong_type(path, kind, value);
                    return None;
                };
                let one = Kind::Figure(*limits, unit);
                let each: Vec<Option<f64>> = list.iter().map(|number| reader.number_of(path, &one, number)).collect();
                each.into_iter().collect()
            },
        )
    }

    /// A place on the plan.
    pub(super) fn point(&mut self, group: &Group<'_>, word: &str) -> Read<[f64; 2]> {
        let read = self.value(
            group,
            word,
            |_| None,
            [0.0; 2],
            |reader, path, kind, value| {
                let list = value.get_ref().as_array();
                let pair = list.and_then(|list| if list.len() == 2 { list.first().zip(list.get(1)) } else { None });
                let Some((x, y)) = pair else {
                    reader.wrong_type(path, kind, value);
                    return None;
                };
                let x = reader.length_within(path, x, &PLACE);
                let y = reader.length_within(path, y, &PLACE);
                x.zip(y).map(|(x, y)| [x, y])
            },
        );
        read.unwrap_or(Read { value: [0.0; 2], span: group.span.clone(), from: From::Fault })
    }

    /// A choice that has no default; what is missing is reported.
    pub(super) fn chosen<T: Choice>(&mut self, group: &Group<'_>, word: &str, stand_in: T) -> Read<T> {
        let read = self.choice(group, word, stand_in);
        if group.get(word).is_some() { read } else { Read { from: From::Fault, ..read } }
    }

    /// A wall by its letter. Without corners nobody can tell which walls there
    /// are, so nothing is said of the letter then.
    pub(super) fn wall(&mut self, group: &Group<'_>, word: &str, walls: &[Wall]) -> Read<usize> {
        let read = self.value(
            group,
            word,
            |_| None,
            0,
            |reader, path, kind, value| {
                let Some(letter) = value.get_ref().as_str() else {
                    reader.wrong_type(path, kind, value);
                    return None;
                };
                let index = wall_index(letter);
                if walls.is_empty() && index.is_some() {
                    return None;
                }
                let known = index.filter(|index| *index < walls.len());
                if known.is_none() {
                    let near = wall_index(&letter.to_uppercase()).filter(|index| *index < walls.len()).map(wall_letter);
                    *reader.fault(
                        &value.span(),
                        "unknown-wall",
                        format!(
                            "`{path}` names no wall by \"{}\": the plan has {}",
                            shorten(letter),
                            walls_in_words(walls)
                        ),
                        "Wall A runs from the first corner to the second, then B, C and on; courtyards go on lettering",
                        format!("Write {} in quotes", letters_in_words(walls)),
                    ) = near;
                }
                known
            },
        );
        read.unwrap_or(Read { value: 0, span: group.span.clone(), from: From::Fault })
    }
}
