//! Reads a written length.

use super::error::LengthError;
use super::unit::Unit;

/// Reads a length with its unit, in millimetres.
///
/// Metric (`8400 mm`, `8.4 m`, `84 cm`) or feet and inches (`27' 6 1/2"`,
/// `27'-6½"`, `27 ft 6 in`, `6 1/2"`). A leading minus makes it negative.
///
/// ```
/// assert_eq!(job::parse_length("8.4 m"), Ok(8400.0));
/// assert_eq!(job::parse_length("27' 6 1/2\""), Ok(27.0 * 304.8 + 6.5 * 25.4));
/// ```
///
/// # Errors
/// Says what was found and what to write instead.
pub fn parse_length(text: &str) -> Result<f64, LengthError> {
    let plain = plain(text);
    let mut rest = plain.trim();
    if rest.is_empty() {
        return Err(LengthError::Empty);
    }
    if rest.contains(',') {
        return Err(LengthError::Comma);
    }
    let sign = if let Some(after) = rest.strip_prefix('-') {
        rest = after.trim_start();
        -1.0
    } else {
        1.0
    };
    let mut total = 0.0;
    let mut last: Option<Unit> = None;
    loop {
        let quantity = Quantity::read(&mut rest)?;
        let word = take_unit(&mut rest);
        if word.is_empty() {
            return Err(LengthError::NoUnit { number: quantity.text });
        }
        let unit = Unit::from_word(word).ok_or_else(|| LengthError::UnknownUnit { unit: word.to_owned() })?;
        if last.is_some_and(|last| !unit.may_follow(last)) {
            return Err(LengthError::UnitOrder { unit: word.to_owned() });
        }
        if quantity.fraction && !unit.is_imperial() {
            return Err(LengthError::BadFraction { fraction: format!("{} {word}", quantity.text) });
        }
        if unit == Unit::Inch && last == Some(Unit::Foot) && quantity.value >= 12.0 {
            return Err(LengthError::TooManyInches { inches: quantity.text });
        }
        total += quantity.value * unit.millimetres();
        last = Some(unit);
        rest = rest.trim_start();
        // Feet and inches are often joined by a dash: 27'-6".
        if unit == Unit::Foot {
            rest = rest.strip_prefix('-').unwrap_or(rest).trim_start();
        }
        if rest.is_empty() {
            break;
        }
    }
    if total.is_finite() { Ok(sign * total) } else { Err(LengthError::TooLarge) }
}

/// A number, with or without a fraction.
struct Quantity {
    value: f64,
    fraction: bool,
    text: String,
}

impl Quantity {
    /// Reads `6`, `6.5`, `1/2` or `6 1/2` from the front of the text.
    fn read(rest: &mut &str) -> Result<Self, LengthError> {
        let first = take_number(rest);
        let Some(value) = number(first) else {
            let found = if first.is_empty() { rest.chars().next().map(String::from) } else { Some(first.to_owned()) };
            return Err(LengthError::NumberMissing { found: found.unwrap_or_else(|| "the end".to_owned()) });
        };
        *rest = rest.trim_start();
        if let Some(after) = rest.strip_prefix('/') {
            *rest = after.trim_start();
            let under = take_number(rest);
            *rest = rest.trim_start();
            return Ok(Self { value: fraction(first, under)?, fraction: true, text: format!("{first}/{under}") });
        }
        // A second number makes sense only as the top of a fraction.
        let over = take_number(rest);
        if over.is_empty() {
            return Ok(Self { value, fraction: false, text: first.to_owned() });
        }
        let after = rest.trim_start();
        let Some(after) = after.strip_prefix('/') else {
            return Err(LengthError::NoUnit { number: first.to_owned() });
        };
        *rest = after.trim_start();
        let under = take_number(rest);
        *rest = rest.trim_start();
        let part = fraction(over, under)?;
        if part >= 1.0 || first.contains('.') {
            return Err(LengthError::BadFraction { fraction: format!("{first} {over}/{under}") });
        }
        Ok(Self { value: value + part, fraction: true, text: format!("{first} {over}/{under}") })
    }
}

/// One whole number over another.
fn fraction(over: &str, under: &str) -> Result<f64, LengthError> {
    let whole = |digits: &str| digits.parse::<u32>().ok().map(f64::from);
    match (whole(over), whole(under)) {
        (Some(over), Some(under)) if under > 0.0 => Ok(over / under),
        _ => Err(LengthError::BadFraction { fraction: format!("{over}/{under}") }),
    }
}

/// The value of digits with at most one point.
fn number(digits: &str) -> Option<f64> {
    if digits.bytes().any(|byte| byte.is_ascii_digit()) { digits.parse().ok() } else { None }
}

/// Takes digits and points from the front of the text.
fn take_number<'t>(rest: &mut &'t str) -> &'t str {
    take(rest, |c| c.is_ascii_digit() || c == '.')
}

/// Takes a unit, a word or a sign, from the front of the text.
fn take_unit<'t>(rest: &mut &'t str) -> &'t str {
    match rest.chars().next() {
        Some('\'' | '"') => take(rest, |c| matches!(c, '\'' | '"')),
        _ => take(rest, |c| !c.is_ascii_digit() && !c.is_whitespace() && !matches!(c, '.' | '-' | '/' | '\'' | '"')),
    }
}

/// Takes characters while they fit.
fn take<'t>(rest: &mut &'t str, fits: impl Fn(char) -> bool) -> &'t str {
    let end = rest.find(|c| !fits(c)).unwrap_or(rest.len());
    let (front, back) = rest.split_at(end);
    *rest = back;
    front
}

/// Puts typographic signs into plain ones: primes, quotes, vulgar fractions,
/// the minus sign and blanks.
pub(crate) fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '′' | '’' | '‘' => plain.push('\''),
            '″' | '”' | '“' => plain.push('"'),
            '⁄' | '∕' => plain.push('/'),
            '−' | '–' | '‑' => plain.push('-'),
            _ => match vulgar(c) {
                Some(fraction) => {
                    plain.push(' ');
                    plain.push_str(fraction);
                }
                None if c.is_whitespace() => plain.push(' '),
                None => plain.push(c),
            },
        }
    }
    plain
}

/// A vulgar fraction of the tape, written out.
fn vulgar(c: char) -> Option<&'static str> {
    Some(match c {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅓' => "1/3",
        '⅔' => "2/3",
        _ => return None,
    })
}
