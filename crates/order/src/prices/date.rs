//! Dates of prices.

/// Whether a text is a day of the calendar written year first, e.g. `2026-11-02`.
#[must_use]
pub fn is_date(text: &str) -> bool {
    let bytes = text.as_bytes();
    let shape = bytes.len() == 10
        && bytes
            .iter()
            .enumerate()
            .all(|(k, byte)| if k == 4 || k == 7 { *byte == b'-' } else { byte.is_ascii_digit() });
    if !shape {
        return false;
    }
    let mut parts = text.split('-').map(|part| part.parse::<u32>().unwrap_or(0));
    let (year, month, day) = (parts.next().unwrap_or(0), parts.next().unwrap_or(0), parts.next().unwrap_or(0));
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    };
    (1900..=9999).contains(&year) && (1..=days).contains(&day)
}
