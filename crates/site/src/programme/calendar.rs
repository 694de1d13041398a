//! Working days: weekends and holidays left out, each with the share of it that weather takes.

use super::ProgrammeFault;
use super::network::Pace;
use jiff::civil::{Date, Weekday};
use job::{Day, ProgrammeAsked};
use std::collections::BTreeSet;

/// The most working days that are counted: some ten years, beyond which an entry is a slip.
pub const MOST_DAYS: u32 = 2500;
/// The most days of the calendar that are looked through for them: with holidays left out there are more than enough.
const MOST_CALENDAR_DAYS: u32 = 2 * MOST_DAYS;
/// Days of a week.
pub(crate) const WEEK: u32 = 7;

/// The working days of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct Calendar {
    /// The working days in order; none when the job has no start.
    dates: Vec<Date>,
    saturdays: bool,
    holidays: BTreeSet<Date>,
    /// Share lost in each working day.
    loss: Vec<f64>,
}

impl Calendar {
    /// The working days of a job, and what weather takes of each: `loss` by month from January, each 0 to below 1.
    /// Without a start the mean of the year holds for every day.
    ///
    /// # Errors
    /// A start beyond the calendar.
    pub fn new(asked: &ProgrammeAsked, loss: &[f64; 12]) -> Result<Self, ProgrammeFault> {
        let mean = loss.iter().sum::<f64>() / loss.len() as f64;
        let mut calendar = Self {
            dates: Vec::new(),
            saturdays: asked.saturdays,
            holidays: asked.holidays.iter().filter_map(|day| civil(*day)).collect(),
            loss: vec![mean; MOST_DAYS as usize],
        };
        let Some(start) = asked.start else { return Ok(calendar) };
        let beyond = || ProgrammeFault::Calendar(start.to_string());
        let mut date = civil(start).ok_or_else(beyond)?;
        for _ in 0..MOST_CALENDAR_DAYS {
            if calendar.works(date) {
                calendar.dates.push(date);
            }
            if calendar.dates.len() == MOST_DAYS as usize {
                break;
            }
            date = date.tomorrow().map_err(|_| beyond())?;
        }
        let month = |date: &Date| usize::try_from(date.month() - 1).ok().and_then(|month| loss.get(month));
        calendar.loss = calendar.dates.iter().map(|date| month(date).copied().unwrap_or(mean)).collect();
        Ok(calendar)
    }

    /// Whether anybody works on a day.
    #[must_use]
    pub fn works(&self, date: Date) -> bool {
        let rest = match date.weekday() {
            Weekday::Sunday => true,
            Weekday::Saturday => !self.saturdays,
            _ => false,
        };
        !rest && !self.holidays.contains(&date)
    }

    /// The share of each working day that is left, on average.
    #[must_use]
    pub fn pace(&self) -> Pace {
        Pace::new(self.loss.iter().map(|loss| 1.0 - loss).collect())
    }

    /// The share lost in each working day.
    #[must_use]
    pub fn loss(&self) -> &[f64] {
        &self.loss
    }

    /// The date of a working day, counted from 1.
    #[must_use]
    pub fn date(&self, day: u32) -> Option<Date> {
        self.dates.get(usize::try_from(day.checked_sub(1)?).ok()?).copied()
    }

    /// Working days of a week that has no holidays.
    #[must_use]
    pub const fn days_a_week(&self) -> u32 {
        if self.saturdays { WEEK - 1 } else { WEEK - 2 }
    }

    /// Days of the calendar from the morning of one working day to the evening of another, both counted from 1. Without
    /// dates, weeks are taken as whole.
    #[must_use]
    pub fn calendar_days(&self, from: u32, to: u32) -> u32 {
        if let (Some(a), Some(b)) = (self.date(from), self.date(to)) {
            let days = (b - a).get_days();
            return u32::try_from(days).unwrap_or(0) + 1;
        }
        let days = (to + 1).saturating_sub(from);
        // What is left over of a week is counted as it is: a day is a day.
        days / self.days_a_week() * WEEK + days % self.days_a_week()
    }
}

/// A day of a job as a date.
#[must_use]
pub fn civil(day: Day) -> Option<Date> {
    Date::new(day.year, day.month, day.day).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(start: &str, saturdays: bool, holidays: &[&str]) -> ProgrammeAsked {
        ProgrammeAsked {
            start: Day::parse(start),
            saturdays,
            holidays: holidays.iter().filter_map(|day| Day::parse(day)).collect(),
            ..ProgrammeAsked::default()
        }
    }

    #[test]
    fn weekends_and_holidays_are_left_out() {
        // Good Friday and Easter Monday of 2027 are 26 and 29 March.
        let asked = asked("2027-03-25", false, &["2027-03-26", "2027-03-29"]);
        let calendar = Calendar::new(&asked, &[0.0; 12]).unwrap();
        let dates: Vec<String> = (1..=3).filter_map(|day| calendar.date(day)).map(|date| date.to_string()).collect();
        assert_eq!(dates, ["2027-03-25", "2027-03-30", "2027-03-31"]);
        assert_eq!(calendar.calendar_days(1, 2), 6);
    }

    #[test]
    fn a_start_on_a_sunday_is_the_monday_after_it() {
        let calendar = Calendar::new(&asked("2027-02-28", true, &[]), &[0.0; 12]).unwrap();
        assert_eq!(calendar.date(1).map(|date| date.to_string()).as_deref(), Some("2027-03-01"));
        assert_eq!(calendar.date(6).map(|date| date.weekday()), Some(Weekday::Saturday));
        assert_eq!(calendar.date(0), None);
    }

    #[test]
    fn each_day_has_the_loss_of_its_month() {
        let mut loss = [0.1; 12];
        loss[3] = 0.4;
        let calendar = Calendar::new(&asked("2027-03-31", false, &[]), &loss).unwrap();
        assert_eq!(calendar.loss()[..2], [0.1, 0.4]);
        let without = Calendar::new(&ProgrammeAsked::default(), &loss).unwrap();
        assert!((without.loss()[0] - 1.5 / 12.0).abs() < 1e-12);
        assert_eq!(without.calendar_days(1, 17), 23, "three weeks of five days, and two days");
    }
}
