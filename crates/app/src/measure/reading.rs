//! What was typed for a tape, a bevel or a pitch.

use geometry::plan::{FARTHEST, SHORTEST_WALL};

/// Shortest distance of two corners that a tape is read for, mm.
const SHORTEST_DIAGONAL: f64 = 1.0;

/// A reading: typed and good, not typed yet, or typed wrongly, with the reason.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Reading {
    None,
    Good(f64),
    Bad(String),
}

impl Reading {
    pub(super) fn good(&self) -> Option<f64> {
        if let Self::Good(value) = self { Some(*value) } else { None }
    }

    pub(super) fn fault(&self) -> Option<&str> {
        if let Self::Bad(why) = self { Some(why) } else { None }
    }
}

/// The length of a wall, mm.
pub(super) fn wall(text: &str) -> Reading {
    tape(text, SHORTEST_WALL, "A wall")
}

/// The distance of two corners, mm.
pub(super) fn diagonal(text: &str) -> Reading {
    tape(text, SHORTEST_DIAGONAL, "A diagonal")
}

fn tape(text: &str, least: f64, what: &str) -> Reading {
    if text.trim().is_empty() {
        return Reading::None;
    }
    match length(text) {
        Err(why) => Reading::Bad(why),
        Ok(mm) if mm < least => Reading::Bad(format!(
            "{what} is {least} mm long at least, and this reads {mm:.1} mm: write m behind metres, ' behind feet"
        )),
        Ok(mm) if mm > FARTHEST => Reading::Bad(format!(
            "{what} is {:.0} m long at most, and this reads {:.0} m: check the unit",
            FARTHEST / 1000.0,
            mm / 1000.0
        )),
        Ok(mm) => Reading::Good(mm),
    }
}

/// A length as typed: a bare number is mm, and inches behind feet need no sign.
fn length(text: &str) -> Result<f64, String> {
    let text = text.trim();
    if let Some(mm) = bare(text) {
        return Ok(mm);
    }
    match job::parse_length(text) {
        Err(job::LengthError::NoUnit { .. }) => job::parse_length(&format!("{text}\"")),
        other => other,
    }
    .map_err(|error| sentence(&error.to_string()))
}

/// An inside angle, degrees.
pub(super) fn turn(text: &str) -> Reading {
    let text = text.trim();
    if text.is_empty() {
        return Reading::None;
    }
    match bare(text.trim_end_matches('°').trim_end()) {
        Some(deg) if deg > 0.0 && deg < 360.0 => Reading::Good(deg),
        _ => Reading::Bad("An inside angle is degrees between 0 and 360: 90 where it is square".to_owned()),
    }
}

/// A pitch, degrees, or why it is none.
pub(super) fn pitch(text: &str) -> Result<f64, String> {
    let text = text.trim();
    bare(text).map_or_else(|| job::parse_pitch(text).map_err(|error| sentence(&error.to_string())), Ok)
}

/// A number of digits with at most one point.
pub(super) fn bare(text: &str) -> Option<f64> {
    let plain = text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
    if plain { text.parse().ok().filter(|number: &f64| number.is_finite()) } else { None }
}

/// With a capital.
pub(super) fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
