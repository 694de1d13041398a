//! Reads numbers: lengths, pitches and pairs of them.

use super::group::Value;
use super::reader::Reader;
use crate::Section;
use crate::keys::Kind;
use crate::length::{LengthError, parse_length};
use crate::limits::{Limits, SECTION};
use crate::pitch::{PitchError, parse_pitch};
use toml::de::DeValue;

/// What a number is a number of.
#[derive(Clone, Copy)]
enum Of {
    Lengths,
    Pitches,
    Angles,
    Others(&'static str),
}

impl Reader<'_> {
    /// Reads a length in mm, or a pitch or angle in degrees, within the limits of its
    /// kind. Reports a fault otherwise.
    pub(super) fn number_of(&mut self, path: &str, kind: &Kind, value: Value<'_>) -> Option<f64> {
        match kind {
            Kind::Length(limits) => self.within(path, kind, value, limits, Of::Lengths),
            Kind::Pitch(limits) => self.within(path, kind, value, limits, Of::Pitches),
            Kind::Angle(limits) => self.within(path, kind, value, limits, Of::Angles),
            Kind::Figure(limits, unit) => self.within(path, kind, value, limits, Of::Others(unit)),
            _ => {
                self.wrong_type(path, kind, value);
                None
            }
        }
    }

    /// Reads a length within limits.
    pub(super) fn length_within(&mut self, path: &str, value: Value<'_>, limits: &Limits) -> Option<f64> {
        self.within(path, &Kind::Length(*limits), value, limits, Of::Lengths)
    }

    fn within(&mut self, path: &str, kind: &Kind, value: Value<'_>, limits: &Limits, of: Of) -> Option<f64> {
        let number = match (value.get_ref(), of) {
            (DeValue::Integer(_) | DeValue::Float(_), _) => plain_number(value.get_ref()),
            (DeValue::String(text), Of::Lengths) => match parse_length(text) {
                Ok(length) => length,
                Err(error) => {
                    let unfit = matches!(error, LengthError::TooLarge);
                    self.bad_text(path, value, if unfit { "out-of-range" } else { "bad-length" }, &error.to_string());
                    return None;
                }
            },
            (DeValue::String(text), Of::Pitches) => match parse_pitch(text) {
                Ok(pitch) => pitch,
                Err(error) => {
                    let unfit = matches!(error, PitchError::NoRiseOrRun);
                    self.bad_text(path, value, if unfit { "out-of-range" } else { "bad-pitch" }, &error.to_string());
                    return None;
                }
            },
            _ => {
                self.wrong_type(path, kind, value);
                return None;
            }
        };
        // A number that is not one fails this too.
        if number >= limits.least && number <= limits.most {
            return Some(number);
        }
        let unit = match of {
            Of::Lengths => " mm".to_owned(),
            Of::Pitches | Of::Angles => "°".to_owned(),
            Of::Others("") => String::new(),
            Of::Others(unit) => format!(" {unit}"),
        };
        let (least, most) = (limits.least, limits.most);
        let shown = if number.is_finite() { format!("{}{unit}", show(number)) } else { "no finite number".to_owned() };
        self.fault(
            &value.span(),
            "out-of-range",
            format!("`{path}` is {shown}, outside {least}{unit} to {most}{unit}"),
            limits.why,
            format!("Write a value from {least}{unit} to {most}{unit}, and check the unit"),
        );
        None
    }

    /// Reports a text that is no length or pitch. The error says what is
    /// wrong, then after `; ` what to write.
    fn bad_text(&mut self, path: &str, value: Value<'_>, code: &'static str, error: &str) {
        let (what, remedy) = error.split_once("; ").unwrap_or((error, "write a number"));
        self.fault(
            &value.span(),
            code,
            format!("`{path}` cannot be read: {what}"),
            "A number read wrong is timber cut wrong",
            capital(remedy),
        );
    }

    /// Reads thickness and depth.
    pub(super) fn size_of(&mut self, path: &str, kind: &Kind, value: Value<'_>) -> Option<Section> {
        let list = value.get_ref().as_array();
        let pair = list.and_then(|list| if list.len() == 2 { list.first().zip(list.get(1)) } else { None });
        let Some((thickness, depth)) = pair else {
            self.wrong_type(path, kind, value);
            return None;
        };
        let thickness = self.length_within(path, thickness, &SECTION);
        let depth = self.length_within(path, depth, &SECTION);
        thickness.zip(depth).map(|(thickness, depth)| Section { thickness, depth })
    }
}

/// The number of a TOML integer or float; NaN for what does not fit.
fn plain_number(value: &DeValue<'_>) -> f64 {
    match value {
        // Lengths and angles are far below 2^53, so nothing is lost in range.
        DeValue::Integer(integer) => {
            i64::from_str_radix(integer.as_str(), integer.radix()).map_or(f64::NAN, |number| number as f64)
        }
        DeValue::Float(float) => float.as_str().parse().unwrap_or(f64::NAN),
        _ => f64::NAN,
    }
}

/// The whole number of a TOML value.
pub(super) fn integer(value: &DeValue<'_>) -> Option<i64> {
    let integer = value.as_integer()?;
    i64::from_str_radix(integer.as_str(), integer.radix()).ok()
}

/// A number for a message.
fn show(number: f64) -> String {
    /// Beyond this a number is shown by its power of ten.
    const LONG: f64 = 1e9;
    if number.abs() > LONG { format!("{number:e}") } else { number.to_string() }
}

/// What a value is, in words.
pub(super) fn type_words(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "a text",
        DeValue::Integer(_) => "a whole number",
        DeValue::Float(_) => "a number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a group of keys",
    }
}

/// A text short enough for a message, on one line.
pub(super) fn shorten(text: &str) -> String {
    /// Enough to know a word again, characters.
    const LONGEST: usize = 40;
    let clean = |c: char| if c.is_control() { ' ' } else { c };
    let mut short: String = text.chars().take(LONGEST).map(clean).collect();
    if text.chars().nth(LONGEST).is_some() {
        short.push('…');
    }
    short
}

/// With a capital first letter.
pub(super) fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

/// With a small first letter.
pub(super) fn uncapital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_lowercase().chain(chars).collect())
}
