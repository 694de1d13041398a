//! Reads how the roof is put up: the programme, the access and what is written on site.

use super::group::{Group, Read};
use super::names::Named;
use super::number::shorten;
use super::reader::Reader;
use crate::keys::{Kind, Preset};
use crate::limits::{LONGEST_STATEMENT, MOST_HOLIDAYS};
use crate::{AccessAsked, AccessKind, Day, Ground, ProgrammeAsked, WorkItem};
use std::collections::{BTreeMap, BTreeSet};
use toml::de::DeValue;

use super::group::Value;

/// Carpenters, roofers, and people where a file says nothing.
const PAIR: u32 = 2;
/// Months of a year.
const MONTHS: usize = 12;
/// Per cent in a whole.
const PER_CENT: f64 = 100.0;

/// When the roof goes up, and by how many.
pub(super) fn programme(reader: &mut Reader<'_>, root: &Group<'_>) -> ProgrammeAsked {
    let group = reader.group(root, "programme");
    let hours = reader.group(&group, "hours");
    let hours = WorkItem::ALL.iter().filter_map(|item| Some((*item, reader.number(&hours, item.word())?.value)));
    let hours: BTreeMap<WorkItem, f64> = hours.collect();
    ProgrammeAsked {
        start: reader.day(&group, "start").and_then(|read| read.value),
        crew: reader.count(&group, "crew").map_or(PAIR, |read| read.value),
        roofers: reader.count(&group, "roofers").map_or(PAIR, |read| read.value),
        hours_a_day: reader.needed(&group, "hours_a_day").value,
        saturdays: reader.flag(&group, "saturdays").value,
        holidays: reader.days(&group, "holidays"),
        weather_loss: reader.months(&group, "weather_loss").map(|list| list.map(|percent| percent / PER_CENT)),
        scaffold_up: reader.number(&group, "scaffold_up").map(|read| read.value),
        scaffold_down: reader.number(&group, "scaffold_down").map(|read| read.value),
        hours,
    }
}

/// What the roof is put up from.
pub(super) fn access(reader: &mut Reader<'_>, root: &Group<'_>) -> AccessAsked {
    let group = reader.group(root, "access");
    let count = |reader: &mut Reader<'_>, word| reader.count(&group, word).map(|read| read.value);
    AccessAsked {
        kind: reader.said(&group, "kind", |reader, word| reader.choice(&group, word, AccessKind::Scaffold).value),
        class: count(reader, "class").unwrap_or_default(),
        bay: reader.needed(&group, "bay").value,
        boards: count(reader, "boards").unwrap_or_default(),
        lift: reader.needed(&group, "lift").value,
        plate_height: reader.number(&group, "plate_height").map(|read| read.value),
        people: count(reader, "people"),
        stack: count(reader, "stack").unwrap_or_default(),
        hire: reader.number(&group, "hire").map(|read| read.value),
        hire_weeks: count(reader, "hire_weeks").unwrap_or_default(),
        extra_week: reader.number(&group, "extra_week").map(|read| read.value),
        ground: reader.said(&group, "ground", |reader, word| reader.choice(&group, word, Ground::Firm).value),
        passers_by: reader.said(&group, "passers_by", |reader, word| reader.flag(&group, word).value),
        on_pavement: reader.said(&group, "on_pavement", |reader, word| reader.flag(&group, word).value),
        overhead_lines: reader.said(&group, "overhead_lines", |reader, word| reader.flag(&group, word).value),
        sheeted: reader.flag(&group, "sheeted").value,
    }
}

/// What people on site say, by the names of statements. Whether there are
/// statements of these names, only the sheets can tell.
pub(super) fn records(reader: &mut Reader<'_>, root: &Group<'_>) -> BTreeMap<String, String> {
    let named = reader.named(root, "record");
    let one = |Named { name, group, .. }| Some((name, reader.statement(&group, "text")?.value));
    named.into_iter().filter_map(one).collect()
}

impl Reader<'_> {
    /// What a key says if it is there.
    fn said<T>(&mut self, group: &Group<'_>, word: &str, read: impl FnOnce(&mut Self, &str) -> T) -> Option<T> {
        group.get(word)?;
        Some(read(self, word))
    }

    /// A day; `None` when left out.
    fn day(&mut self, group: &Group<'_>, word: &str) -> Option<Read<Option<Day>>> {
        self.value(group, word, |_| None, None, |reader, path, kind, value| reader.day_of(path, kind, value).map(Some))
    }

    /// Days in order, each once; empty when left out.
    fn days(&mut self, group: &Group<'_>, word: &str) -> Vec<Day> {
        let read = self.value(
            group,
            word,
            |_| Some(BTreeSet::new()),
            BTreeSet::new(),
            |reader, path, kind, value| {
                let Some(list) = value.get_ref().as_array() else {
                    reader.wrong_type(path, kind, value);
                    return None;
                };
                if list.len() > MOST_HOLIDAYS {
                    reader.fault(
                        &value.span(),
                        "out-of-range",
                        format!("`{path}` holds {} days; {MOST_HOLIDAYS} is the most", list.len()),
                        "They are the days off of one roof, not of years",
                        "Write only the days within the work",
                    );
                    return None;
                }
                let days: Vec<Option<Day>> = list.iter().map(|one| reader.day_of(path, kind, one)).collect();
                days.into_iter().collect()
            },
        );
        read.map(|read| read.value.into_iter().collect()).unwrap_or_default()
    }

    fn day_of(&mut self, path: &str, kind: &Kind, value: Value<'_>) -> Option<Day> {
        let text = match value.get_ref() {
            DeValue::String(text) => text.to_string(),
            DeValue::Datetime(date) => date.to_string(),
            _ => {
                self.wrong_type(path, kind, value);
                return None;
            }
        };
        let day = Day::parse(text.trim());
        if day.is_none() {
            self.fault(
                &value.span(),
                "bad-day",
                format!("\"{}\" is no day that `{path}` can take", shorten(&text)),
                "The working days are counted from it",
                "Write year, month and day, such as 2027-03-01, and check that the month has that day",
            );
        }
        day
    }

    /// A figure of each month; `None` when left out.
    fn months(&mut self, group: &Group<'_>, word: &str) -> Option<[f64; MONTHS]> {
        let read = self.value(
            group,
            word,
            |_| None,
            None,
            |reader, path, kind, value| {
                let Kind::Months(limits, unit) = kind else {
                    reader.wrong_type(path, kind, value);
                    return None;
                };
                let each = Kind::Figure(*limits, unit);
                let Some(list) = value.get_ref().as_array() else {
                    if matches!(value.get_ref(), DeValue::Integer(_) | DeValue::Float(_)) {
                        return reader.number_of(path, &each, value).map(|one| Some([one; MONTHS]));
                    }
                    reader.wrong_type(path, kind, value);
                    return None;
                };
                if list.len() != MONTHS {
                    reader.wrong_type(path, kind, value);
                    return None;
                }
                let mut months = [0.0; MONTHS];
                let mut sound = true;
                for (month, one) in months.iter_mut().zip(list) {
                    match reader.number_of(path, &each, one) {
                        Some(figure) => *month = figure,
                        None => sound = false,
                    }
                }
                sound.then_some(Some(months))
            },
        );
        read.and_then(|read| read.value)
    }

    /// A statement of some lines.
    fn statement(&mut self, group: &Group<'_>, word: &str) -> Option<Read<String>> {
        let preset = |_: Preset| None;
        self.value(group, word, preset, String::new(), |reader, path, kind, value| {
            let Some(text) = value.get_ref().as_str() else {
                reader.wrong_type(path, kind, value);
                return None;
            };
            let unfit = |c: char| c.is_control() && c != '\n';
            if text.trim().is_empty() || text.chars().count() > LONGEST_STATEMENT || text.chars().any(unfit) {
                reader.fault(
                    &value.span(),
                    "text-unfit",
                    format!("`{path}` is empty, or longer than {LONGEST_STATEMENT} characters"),
                    "It is printed in a table of the record",
                    kind.remedy(),
                );
                return None;
            }
            Some(text.to_owned())
        })
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn whole_numbers_are_figures_of_months_too() {
        let text = |loss: &str| {
            format!(
                "format = 1\ntitle = \"Shed\"\nplan.corners = [[0, 0], [6000, 0], [6000, 4000], [0, 4000]]\nroof.pitch = 40\nprogramme.weather_loss = {loss}\n"
            )
        };
        assert_eq!(crate::read(text("20")).unwrap().programme.weather_loss, Some([0.2; 12]));
        let each = crate::read(text("[0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 0.5, 12]")).unwrap();
        assert_eq!(each.programme.weather_loss.map(|l| (l[0], l[9], l[10])), Some((0.0, 0.9, 0.005)));
        for bad in ["[10, 20]", "\"much\"", "91", "[0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 95]", "nan"] {
            assert!(crate::read(text(bad)).is_err(), "{bad}");
        }
    }

    #[test]
    fn every_item_of_work_has_its_key_and_unit() {
        for item in crate::WorkItem::ALL {
            assert!(crate::keys::find(&format!("programme.hours.{}", item.word())).is_some(), "{item:?}");
            let unit = match item.word().rsplit('_').next() {
                Some("m2") => "m²",
                other => other.unwrap_or_default(),
            };
            assert_eq!(item.unit(), unit, "{item:?}");
            assert_eq!(crate::WorkItem::from_word(item.word()), Some(*item));
        }
    }
}
