//! The days of inspection and of the programme as a calendar file, RFC 5545 (iCalendar).

use super::RecordsFault;
use crate::programme::Programme;
use job::{Day, Job};

/// Octets of a line before it is folded, RFC 5545 section 3.1.
const LINE: usize = 75;
/// Who wrote the file, RFC 5545 section 3.7.3.
const PRODUCT: &str = "-//Seatcut//Programme//EN";

/// The calendar file of a job: inspections, the first and last day of every phase, and the end of hire. All are whole
/// days. The stamp of each is the date of the job if it is a day, and its start otherwise: never the clock.
///
/// # Errors
/// A job without a start, and so without dates.
pub fn calendar(job: &Job, programme: &Programme) -> Result<String, RecordsFault> {
    let start = job.programme.start.ok_or(RecordsFault::NoStart)?;
    let stamp = job.date.as_deref().and_then(|date| Day::parse(date.trim())).unwrap_or(start);
    let mut file = File { text: String::new(), stamp: format!("{}T000000Z", digits(&stamp.to_string())), job: of(job) };
    for line in ["BEGIN:VCALENDAR", "VERSION:2.0", &format!("PRODID:{PRODUCT}"), "CALSCALE:GREGORIAN", "METHOD:PUBLISH"]
    {
        file.line(line);
    }
    let title = &job.title;
    for inspection in &programme.hire.inspections {
        if let Some(date) = &inspection.date {
            let name = if inspection.number == 1 {
                format!("Inspect the access before it is used: {title}")
            } else {
                format!("Inspect the access: {title}")
            };
            let about = "By a competent person, who writes the report. Inspect again after wind, damage or any change.";
            file.event(&format!("inspection-{}", inspection.number), date, date, &name, about);
        }
    }
    for activity in &programme.activities {
        if let (Some(first), Some(last)) = (&activity.first.date, &activity.last.date) {
            let name = format!("{}: {title}", activity.name);
            let about = "By estimated hours and weather: the real day is what the site says.";
            file.event(&format!("phase-{}", slug(&activity.name)), first, last, &name, about);
        }
    }
    if let Some(date) = &programme.hire.to.date {
        file.event(
            "off-hire",
            date,
            date,
            &format!("Last day of the access in use: {title}"),
            "Give notice to end the hire.",
        );
    }
    file.line("END:VCALENDAR");
    Ok(file.text)
}

struct File {
    text: String,
    stamp: String,
    job: String,
}

impl File {
    /// An event of whole days, both ends included.
    fn event(&mut self, id: &str, first: &str, last: &str, name: &str, about: &str) {
        // The end of an event of whole days is the morning after, RFC 5545 section 3.6.1.
        let end = Day::parse(last).and_then(crate::programme::civil).and_then(|day| day.tomorrow().ok());
        let end = end.map_or_else(|| last.to_owned(), |day| day.to_string());
        let lines = [
            "BEGIN:VEVENT".to_owned(),
            format!("UID:{id}-{}@seatcut.invalid", self.job),
            format!("DTSTAMP:{}", self.stamp),
            format!("DTSTART;VALUE=DATE:{}", digits(first)),
            format!("DTEND;VALUE=DATE:{}", digits(&end)),
            format!("SUMMARY:{}", escaped(name)),
            format!("DESCRIPTION:{}", escaped(about)),
            "TRANSP:TRANSPARENT".to_owned(),
            "END:VEVENT".to_owned(),
        ];
        for line in &lines {
            self.line(line);
        }
    }

    /// A line, folded between characters.
    fn line(&mut self, line: &str) {
        let mut used = 0;
        for c in line.chars() {
            if used + c.len_utf8() > LINE {
                self.text.push_str("\r\n ");
                used = 1;
            }
            self.text.push(c);
            used += c.len_utf8();
        }
        self.text.push_str("\r\n");
    }
}

/// Text as RFC 5545 section 3.3.11 has it; other control characters are left out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => {
                out.push('\\');
                out.push(c);
            }
            '\n' => out.push_str("\\n"),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

fn digits(date: &str) -> String {
    date.chars().filter(char::is_ascii_digit).collect()
}

fn slug(name: &str) -> String {
    let word = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    name.chars().map(word).collect::<String>().replace("--", "-")
}

/// A mark of the job that stays the same while its title does: FNV-1a of 64 bits over the title.
fn of(job: &Job) -> String {
    let hash = job
        .title
        .bytes()
        .fold(0xCBF2_9CE4_8422_2325_u64, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01B3));
    format!("{hash:016x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_lines_are_folded_and_texts_escaped() {
        let mut file = File { text: String::new(), stamp: String::new(), job: String::new() };
        let long = format!("SUMMARY:{}", "Gauß’ Werkstatt ".repeat(9));
        file.line(&long);
        assert!(file.text.ends_with("\r\n"));
        assert!(file.text.split("\r\n").all(|line| line.len() <= LINE));
        assert_eq!(file.text.replace("\r\n ", "").trim_end_matches("\r\n"), long);
        assert_eq!(escaped("a, b; c\\d\ne\t"), "a\\, b\\; c\\\\d\\ne");
    }
}
