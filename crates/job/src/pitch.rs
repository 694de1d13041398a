//! Pitches as a carpenter writes them.

use crate::length::plain;
use geometry::Angle;
use thiserror::Error;

/// What can be wrong with a written pitch. Each text says what was found and
/// what to write.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PitchError {
    /// Nothing but blanks.
    #[error("nothing is written; write a pitch such as 40, \"40°\" or \"6:12\"")]
    Empty,
    /// Neither degrees nor a rise in a run.
    #[error("`{text}` is neither degrees nor a rise in a run; write 40, \"40°\", \"6:12\" or \"6 in 12\"")]
    NotAPitch {
        /// The text as written.
        text: String,
    },
    /// A rise or run that is not above zero.
    #[error("rise and run must both be above zero; write how much it rises in how much run, such as \"6:12\"")]
    NoRiseOrRun,
}

/// Reads a pitch in degrees from degrees (`40°`, `40 deg`) or a rise in a run
/// (`6:12`, `6 in 12`).
///
/// ```
/// assert_eq!(job::parse_pitch("40°"), Ok(40.0));
/// assert!((job::parse_pitch("6:12").unwrap() - 26.565_051).abs() < 1e-6);
/// ```
///
/// # Errors
/// Says what was found and what to write instead.
pub fn parse_pitch(text: &str) -> Result<f64, PitchError> {
    let plain = plain(text).trim().to_lowercase();
    if plain.is_empty() {
        return Err(PitchError::Empty);
    }
    let not_a_pitch = || PitchError::NotAPitch { text: text.trim().chars().take(LONGEST_QUOTE).collect() };
    for unit in ["°", "degrees", "degree", "deg"] {
        if let Some(number) = plain.strip_suffix(unit) {
            return plain_number(number).ok_or_else(not_a_pitch);
        }
    }
    let split = [":", "in", "/"].iter().find_map(|between| plain.split_once(between));
    let Some((rise, run)) = split else { return Err(not_a_pitch()) };
    match (plain_number(rise), plain_number(run)) {
        (Some(rise), Some(run)) if rise > 0.0 && run > 0.0 => Ok(Angle::from_rise_run(rise, run).to_deg()),
        (Some(_), Some(_)) => Err(PitchError::NoRiseOrRun),
        _ => Err(not_a_pitch()),
    }
}

/// Longest text quoted in an error, in characters: enough to know it again.
const LONGEST_QUOTE: usize = 30;

/// A number of digits with at most one point and one sign. Unlike the standard
/// parser it takes no exponent, `inf` or `nan`.
fn plain_number(text: &str) -> Option<f64> {
    let text = text.trim();
    let digits = text.strip_prefix('-').unwrap_or(text);
    let plain = digits.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
    if plain { text.parse().ok().filter(|value: &f64| value.is_finite()) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn reads_degrees() {
        for text in ["40°", "40 °", "40deg", "40 degrees", " 40.0° "] {
            assert_eq!(parse_pitch(text), Ok(40.0), "{text}");
        }
    }

    #[test]
    fn reads_rise_in_run() {
        // atan(6 / 12) = 26.565051177…° (first principles).
        for text in ["6:12", "6 in 12", "6/12", "1 IN 2", "0.5 : 1"] {
            assert!((parse_pitch(text).unwrap() - 26.565_051_177).abs() < 1e-8, "{text}");
        }
        assert!((parse_pitch("12:12").unwrap() - 45.0).abs() < 1e-12);
    }

    #[test]
    fn says_what_is_wrong() {
        assert_eq!(parse_pitch(""), Err(PitchError::Empty));
        assert_eq!(parse_pitch("steep"), Err(PitchError::NotAPitch { text: "steep".into() }));
        assert_eq!(parse_pitch("40"), Err(PitchError::NotAPitch { text: "40".into() }));
        assert_eq!(parse_pitch("inf°"), Err(PitchError::NotAPitch { text: "inf°".into() }));
        assert_eq!(parse_pitch("6:0"), Err(PitchError::NoRiseOrRun));
        assert_eq!(parse_pitch("-6:12"), Err(PitchError::NoRiseOrRun));
    }

    proptest! {
        #[test]
        fn no_text_breaks_it(text in "\\PC*") {
            if let Ok(pitch) = parse_pitch(&text) {
                prop_assert!(pitch.is_finite());
            }
        }
    }
}
