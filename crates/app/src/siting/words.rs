//! How the words and figures of a site are written.

use crate::views::{Dialect, SiteFigure, SiteVerdict};
use crate::wording::Writing;
use job::Day;
use job::written::{fixed, tenth};
use site::access::{Basis, Verdict};
use site::lifts::Hands;
use site::programme::{When, civil};

/// Weights from here on are written without decimals, kg.
const HEAVY: f64 = 10.0;
/// Fewest marks that are written as `C1 to C3`.
const RUN: usize = 3;

impl Writing {
    pub(super) fn figure(&self, label: &str, value: String) -> SiteFigure {
        SiteFigure { label: self.say_first(label), value }
    }

    /// Money of the job, whole.
    pub(super) fn whole_money(&self, amount: f64) -> String {
        format!("{}{}", self.currency, fixed(amount, 0))
    }

    /// `Mon 1 Mar 2027`, or `day 4`.
    pub(super) fn when(&self, when: &When) -> String {
        self.day(when.day, when.date.as_deref())
    }

    /// The same of a working day and its date.
    pub(super) fn day(&self, day: u32, date: Option<&str>) -> String {
        date.and_then(|date| self.date(date, true)).unwrap_or_else(|| format!("day {day}"))
    }

    /// A date without its year and weekday: `1 Mar`.
    pub(super) fn short(&self, when: &When) -> String {
        let date = when.date.as_deref().and_then(|date| self.date(date, false));
        date.unwrap_or_else(|| format!("day {}", when.day))
    }

    fn date(&self, date: &str, whole: bool) -> Option<String> {
        const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
        const DAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
        let day = Day::parse(date)?;
        let month = MONTHS.get(usize::try_from(day.month - 1).ok()?)?;
        let (number, year) = (day.day, day.year);
        let short = match self.words {
            Dialect::Uk => format!("{number} {month}"),
            Dialect::Us => format!("{month} {number}"),
        };
        if !whole {
            return Some(short);
        }
        let weekday = DAYS.get(usize::try_from(civil(day)?.weekday().to_monday_zero_offset()).ok()?)?;
        Some(match self.words {
            Dialect::Uk => format!("{weekday} {short} {year}"),
            Dialect::Us => format!("{weekday}, {short}, {year}"),
        })
    }
}

/// A weight.
pub(super) fn kilograms(kg: f64) -> String {
    let figure = if kg.abs() < HEAVY { tenth(kg) } else { fixed(kg, 0) };
    format!("{figure} kg")
}

/// So many people, in words.
pub(super) fn people(count: u32) -> String {
    if count == 1 { "1 person".to_owned() } else { format!("{count} people") }
}

/// So many of something, in words.
pub(super) fn counted(count: u32, one: &str, many: &str) -> String {
    if count == 1 { format!("1 {one}") } else { format!("{count} {many}") }
}

/// Who lifts.
pub(super) fn hands(hands: Hands, aid: &str) -> String {
    match hands {
        Hands::People(count) => people(count),
        Hands::Aid => aid.to_owned(),
    }
}

pub(super) const fn verdict(of: Verdict) -> SiteVerdict {
    match of {
        Verdict::Within => SiteVerdict::Within,
        Verdict::Ask => SiteVerdict::Ask,
        Verdict::Over => SiteVerdict::Over,
    }
}

pub(super) const fn verdict_word(of: Verdict) -> &'static str {
    match of {
        Verdict::Within => "within the figure: who designs it decides",
        Verdict::Ask => "not settled by this figure: ask who designs it",
        Verdict::Over => "over the figure: change it, or ask who designs it",
    }
}

/// Where a statement is from, and how far it can be relied upon.
pub(super) fn from(writing: &Writing, source: &str, basis: Basis) -> String {
    if source.is_empty() {
        writing.say_first(basis.words())
    } else {
        format!("{}: {}", writing.say_first(basis.words()), writing.say(source))
    }
}

/// Marks as runs, by their letters and numbers: `C1 to C8, C10, Hip-2`.
pub(super) fn runs(marks: &[&str]) -> String {
    let mut split: Vec<(&str, Option<u32>, &str)> = marks.iter().map(|mark| halves(mark)).collect();
    split.sort_unstable();
    split.dedup();
    let mut out: Vec<String> = Vec::new();
    let mut rest = split.as_slice();
    while let Some(((head, number, mark), _)) = rest.split_first() {
        let follows = |(k, other): (usize, &&(&str, Option<u32>, &str))| {
            let next = number.and_then(|number| number.checked_add(u32::try_from(k).ok()?));
            other.0 == *head && other.1.is_some() && other.1 == next
        };
        let length = rest.iter().enumerate().take_while(|(k, other)| follows((*k, other))).count().max(1);
        let (run, after) = rest.split_at(length);
        match run {
            [.., (_, _, last)] if length >= RUN => out.push(format!("{mark} to {last}")),
            few => out.extend(few.iter().map(|(_, _, mark)| (*mark).to_owned())),
        }
        rest = after;
    }
    out.join(", ")
}

/// A mark as what stands before its number, the number, and the whole. `Ridge-1a` has no number at its end.
fn halves(mark: &str) -> (&str, Option<u32>, &str) {
    let head = mark.trim_end_matches(|c: char| c.is_ascii_digit());
    (head, mark.strip_prefix(head).and_then(|number| number.parse().ok()), mark)
}

#[cfg(test)]
mod tests {
    use super::*;
    use job::written::Lengths;

    fn writing(words: Dialect) -> Writing {
        Writing { lengths: Lengths::Millimetres, words, currency: "£".to_owned() }
    }

    #[test]
    fn marks_are_written_as_runs() {
        for (marks, written) in [
            (&["C2", "C10", "C1", "C3", "C11"][..], "C1 to C3, C10, C11"),
            (&["Ridge-1a", "Ridge-1b"][..], "Ridge-1a, Ridge-1b"),
            (&["A1", "B2", "A3", "A2", "B1", "B3"][..], "A1 to A3, B1 to B3"),
            (&["C4294967295", "C99999999999"][..], "C99999999999, C4294967295"),
            (&[][..], ""),
        ] {
            assert_eq!(runs(marks), written);
        }
    }

    #[test]
    fn dates_are_written_as_people_write_them() {
        // 2027-03-01 is a Monday: 2000-01-01 was a Saturday, and 9921 days, 1417 weeks and 2 days, lie between.
        assert_eq!(writing(Dialect::Uk).day(3, Some("2027-03-01")), "Mon 1 Mar 2027");
        assert_eq!(writing(Dialect::Us).day(3, Some("2027-03-01")), "Mon, Mar 1, 2027");
        assert_eq!(writing(Dialect::Uk).day(3, None), "day 3");
        assert_eq!(writing(Dialect::Uk).day(3, Some("soon")), "day 3");
    }
}
