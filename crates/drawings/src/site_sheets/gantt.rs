//! The picture of the programme: a bar for every phase over the days.

use job::written::tenth;
use site::programme::{Programme, When};

use crate::layout::Room;
use crate::sheet::{Anchor, Pen, Pt, Role, Sheet};
use crate::site_sheets::parts::{SMALL, STRONG};
use crate::text::Style;

/// Room of the names, mm.
const NAMES: f64 = 84.0;
/// Height of the line of dates, mm.
const AXIS: f64 = 9.0;
/// Highest row, mm.
const MOST_ROW: f64 = 11.0;
/// Words in a bar's row.
const BESIDE: Style = Style::bold(9.0);
/// Between the lines of the hatch, mm.
const HATCH: f64 = 1.6;
/// Longest programme that is drawn, days.
const MOST_DAYS: f64 = 2000.0;
/// Days of a week.
const WEEK: i64 = 7;

/// Number of a date `YYYY-MM-DD`, in days from 1970-01-01: whole years of 365 and leap days before it, months from March
/// on so that the leap day is the last of a year.
pub fn day_number(date: &str) -> Option<i64> {
    let mut parts = date.splitn(3, '-').map(str::parse::<i64>);
    let (Some(Ok(year)), Some(Ok(month)), Some(Ok(day))) = (parts.next(), parts.next(), parts.next()) else {
        return None;
    };
    let known = (0..=9999).contains(&year) && (1..=12).contains(&month) && (1..=31).contains(&day);
    if !known {
        return None;
    }
    let (year, month) = if month > 2 { (year, month - 3) } else { (year - 1, month + 9) };
    let leaps = year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400);
    // Days from 0000-03-01 to 1970-01-01.
    const TO_1970: i64 = 719_468;
    Some(year * 365 + leaps + (153 * month + 2) / 5 + day - 1 - TO_1970)
}

/// How many of the last days of a week from Monday are not worked.
const fn days_off(days_a_week: u32) -> i64 {
    WEEK - if days_a_week > 7 { 7 } else { days_a_week as i64 }
}

/// Whether nobody works on a day of this number, by the days of a week. 1970-01-01 was a Thursday.
pub fn is_off(day: i64, days_a_week: u32) -> bool {
    const MONDAY_BEFORE: i64 = 3;
    (day + MONDAY_BEFORE).rem_euclid(WEEK) >= WEEK - days_off(days_a_week)
}

/// Days along the picture.
struct Axis {
    /// Number of the first day, when dated.
    first: Option<i64>,
    days: f64,
    left: f64,
    each: f64,
}

impl Axis {
    fn of(programme: &Programme, room: Room) -> Option<Self> {
        let first = programme.bars.iter().map(|b| b.first.date.as_deref().and_then(day_number)).min().flatten();
        let last_of = |w: &When| w.date.as_deref().and_then(day_number);
        let days = match first {
            Some(first) => {
                programme.bars.iter().filter_map(|b| last_of(&b.last)).max().map(|last| (last - first + 1) as f64)?
            }
            None => programme.bars.iter().map(|b| b.end).fold(0.0, f64::max).ceil(),
        };
        let left = room.x + NAMES;
        (days > 0.0 && days <= MOST_DAYS).then_some(Self { first, days, left, each: (room.w - NAMES) / days })
    }

    fn x(&self, days: f64) -> f64 {
        self.left + days.clamp(0.0, self.days) * self.each
    }

    /// Left and right of a bar, days from the first: with dates, parts of its first and last day as of working days.
    fn ends(&self, bar: &site::programme::Bar) -> Option<[f64; 2]> {
        if !(bar.start.is_finite() && bar.end.is_finite()) {
            return None;
        }
        let Some(first) = self.first else { return Some([bar.start, bar.end]) };
        let day = |when: &When| when.date.as_deref().and_then(day_number).map(|d| (d - first) as f64);
        let part = |at: f64| at - at.floor();
        let done = part(bar.end);
        Some([day(&bar.first)? + part(bar.start), day(&bar.last)? + if done > 0.0 { done } else { 1.0 }])
    }
}

/// Draws it into the top of a room; gives where it ends.
pub fn draw(sheet: &mut Sheet, programme: &Programme, room: Room) -> f64 {
    let Some(axis) = Axis::of(programme, room) else { return room.y };
    let rows = programme.bars.len().max(1) as f64;
    let row = ((room.h - AXIS) / rows).min(MOST_ROW);
    let (top, bottom) = (room.y + AXIS, room.y + AXIS + row * rows);
    let dated = if axis.first.is_some() { "with dates" } else { "in working days" };
    let words = format!("The programme {dated}: {} phases over {} days.", programme.bars.len(), axis.days);
    sheet.part(Role::Figure(words), |sheet| {
        days(sheet, &axis, programme, [top, bottom]);
        for (index, bar) in programme.bars.iter().enumerate() {
            let y = top + row * index as f64;
            sheet.text_within(
                [room.x, y + row / 2.0 + STRONG.cap_mm() / 2.0],
                Anchor::Start,
                STRONG,
                &bar.name,
                NAMES - 2.0,
            );
            sheet.line([room.x, y + row], [room.x + room.w, y + row], Pen::grey(0.12, 150));
            let Some([from, to]) = axis.ends(bar) else { continue };
            let (left, right) = (axis.x(from), axis.x(to).max(axis.x(from) + 0.6));
            let (high, low) = (y + row * 0.2, y + row * 0.8);
            sheet.rect([left, high], [right - left, low - high], Some(255), Some(Pen::black(0.4)));
            if bar.critical {
                hatch(sheet, [left, high], [right, low]);
            }
            let float = programme.activities.iter().find(|a| a.name == bar.name).map_or(0.0, |a| a.float);
            beside(sheet, bar.critical, float, [left, right], room, y + row / 2.0 + BESIDE.cap_mm() / 2.0);
        }
        sheet.line([axis.left, top], [axis.left, bottom], Pen::black(0.3));
        sheet.line([room.x, top], [room.x + room.w, top], Pen::black(0.3));
    });
    bottom
}

/// The word beside a bar: right of it, or left where there is no room.
fn beside(sheet: &mut Sheet, critical: bool, float: f64, [left, right]: [f64; 2], room: Room, base: f64) {
    let words = if critical { "critical".to_owned() } else { format!("may be {} d later", tenth(float)) };
    let width = BESIDE.width_mm(&words);
    let fits = right + 1.5 + width <= room.x + room.w;
    let at = if fits { right + 1.5 } else { left - 1.5 - width };
    if at < room.x + NAMES {
        return;
    }
    sheet.rect([at - 0.6, base - BESIDE.cap_mm() - 0.6], [width + 1.2, BESIDE.cap_mm() + 1.4], Some(255), None);
    sheet.text([at, base], Anchor::Start, BESIDE, &words);
}

/// Days that are not worked shaded, and the names of days as far as there is room for them.
fn days(sheet: &mut Sheet, axis: &Axis, programme: &Programme, [top, bottom]: [f64; 2]) {
    let count = axis.days as i64;
    let holidays: Vec<i64> = programme.holidays.iter().filter_map(|date| day_number(date)).collect();
    let off = |day: i64| is_off(day, programme.days_a_week) || holidays.contains(&day);
    for day in 0..count {
        let x = axis.x(day as f64);
        if axis.first.is_some_and(|first| off(first + day)) {
            sheet.rect([x, top], [axis.each, bottom - top], Some(215), None);
        }
    }
    // Weeks begin on Mondays when dated, else after so many working days.
    let (begin, step) = match axis.first {
        Some(first) => ((WEEK - (first + 3).rem_euclid(WEEK)).rem_euclid(WEEK), WEEK),
        None => (0, i64::from(programme.days_a_week.max(1))),
    };
    let mut free = axis.left - 1.0;
    let mut at = if axis.first.is_some() { 0 } else { begin };
    while at < count {
        let x = axis.x(at as f64);
        sheet.line([x, top - 1.5], [x, bottom], Pen::grey(0.15, 110));
        let words = match axis.first {
            Some(first) => month_day(first + at),
            None => format!("day {}", at + 1),
        };
        let width = SMALL.width_mm(&words);
        if x >= free && x + width < axis.left + axis.each * axis.days + 1.0 {
            sheet.text([x + 0.6, top - 2.4], Anchor::Start, SMALL, &words);
            free = x + width + 3.0;
        }
        at = if at < begin { begin } else { at + step };
    }
}

/// A day in words, e.g. `2 Mar`: the other way round of [`day_number`].
fn month_day(number: i64) -> String {
    const MONTHS: [&str; 12] = ["Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec", "Jan", "Feb"];
    const ERA: i64 = 146_097;
    let of_era = (number + 719_468).rem_euclid(ERA);
    let year = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let day = of_year - (153 * month + 2) / 5 + 1;
    format!("{day} {}", MONTHS.get(month as usize).copied().unwrap_or_default())
}

/// Slanted lines within a bar.
fn hatch(sheet: &mut Sheet, [left, top]: Pt, [right, bottom]: Pt) {
    let height = bottom - top;
    let mut x = left + HATCH / 2.0 - height;
    while x < right {
        // Lines at 45°, cut off at both ends of the bar.
        let (from, to) = (x.max(left), (x + height).min(right));
        if to > from {
            sheet.line([from, bottom - (from - x)], [to, bottom - (to - x)], Pen::black(0.35));
        }
        x += HATCH;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_are_numbered_as_the_calendar_has_them() {
        // From first principles: the first day, a leap day and the day after, and the turn of a century that leaps.
        for (date, number) in [("1970-01-01", 0), ("1970-02-01", 31), ("1972-02-29", 789), ("1972-03-01", 790)] {
            assert_eq!(day_number(date), Some(number), "{date}");
        }
        assert_eq!(day_number("2000-03-01").unwrap() - day_number("2000-02-28").unwrap(), 2);
        assert_eq!(day_number("2100-03-01").unwrap() - day_number("2100-02-28").unwrap(), 1);
        for date in ["", "2026-13-01", "x-1-1", "2026-01"] {
            assert_eq!(day_number(date), None, "{date}");
        }
        for date in ["2026-02-28", "2024-02-29", "2025-12-31", "2025-03-01"] {
            let day: i64 = date[8..].parse().unwrap();
            assert!(month_day(day_number(date).unwrap()).starts_with(&format!("{day} ")), "{date}");
        }
        assert_eq!(month_day(0), "1 Jan");
    }

    #[test]
    fn weekends_are_where_they_are() {
        // 1 January 1970 was a Thursday, so 3 and 4 January were the first weekend.
        let off: Vec<i64> = (0..7).filter(|d| is_off(*d, 5)).collect();
        assert_eq!(off, [2, 3]);
        assert_eq!((0..7).filter(|d| is_off(*d, 6)).collect::<Vec<_>>(), [3]);
        assert_eq!((0..7).filter(|d| is_off(*d, 7)).count(), 0);
    }
}
