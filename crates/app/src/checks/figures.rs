//! How figures of strength are written.

use crate::views::{StrengthStep, StrengthVerdict};
use crate::wording::Writing;
use job::written::fixed;
use strength::whole::Verdict;
use strength::working::Line;

/// Above this a share is no figure to go by, %.
const MOST: f64 = 999.0;

impl Writing {
    /// Lines of a working. They stay in the units of the code, as its formulas want them.
    pub(super) fn steps(&self, lines: &[Line]) -> Vec<StrengthStep> {
        let step = |line: &Line| StrengthStep {
            what: self.say_first(&line.what),
            how: self.say(&line.how),
            value: [value(line.value).as_str(), line.unit.as_str()].join(" ").trim_end().to_owned(),
            from: self.say(&line.from),
        };
        lines.iter().map(step).collect()
    }
}

/// `83 %`. Rounded so that nothing that is over reads as 100 %, and nothing that passes as more.
pub(super) fn percent(used: f64) -> String {
    let of_hundred = used * 100.0;
    let whole = if used <= 1.0 { of_hundred.round().min(100.0) } else { of_hundred.ceil() };
    if whole.is_nan() || whole > MOST { format!("more than {MOST:.0} %") } else { format!("{whole:.0} %") }
}

/// What is left, or by how much it is too much.
pub(super) fn left(used: f64) -> String {
    let of_hundred = used * 100.0;
    if used <= 1.0 {
        format!("{:.0} % left", 100.0 - of_hundred.round().min(100.0))
    } else if of_hundred.ceil() <= MOST {
        format!("{:.0} % too much", of_hundred.ceil() - 100.0)
    } else {
        "far too much".to_owned()
    }
}

pub(super) const fn verdict(of: Verdict) -> StrengthVerdict {
    match of {
        Verdict::Within => StrengthVerdict::Within,
        Verdict::Near => StrengthVerdict::Near,
        Verdict::Over => StrengthVerdict::Over,
    }
}

pub(super) const fn word(of: Verdict) -> &'static str {
    match of {
        Verdict::Within => "within",
        Verdict::Near => "near its limit",
        Verdict::Over => "over",
    }
}

/// A figure to the places that say something of it: 14.99, 0.941, 35.2, 2642330.
pub(super) fn value(value: f64) -> String {
    let places = match value.abs() {
        100.0.. => 0,
        30.0.. => 1,
        1.0.. => 2,
        _ => 3,
    };
    let text = fixed(value, places);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_over_reads_as_all_of_it() {
        assert_eq!((percent(1.0001), left(1.0001)), ("101 %".to_owned(), "1 % too much".to_owned()));
        assert_eq!((percent(1.0), left(1.0)), ("100 %".to_owned(), "0 % left".to_owned()));
        assert_eq!((percent(0.834), left(0.834)), ("83 %".to_owned(), "17 % left".to_owned()));
        assert_eq!((percent(0.0), left(0.0)), ("0 %".to_owned(), "100 % left".to_owned()));
        for wild in [f64::NAN, f64::INFINITY, 1e9] {
            assert_eq!((percent(wild), left(wild)), ("more than 999 %".to_owned(), "far too much".to_owned()));
        }
    }

    #[test]
    fn figures_have_the_places_that_say_something() {
        for (given, written) in [
            (2_642_330.0, "2642330"),
            (14.9919, "14.99"),
            (35.2011, "35.2"),
            (0.9407, "0.941"),
            (1.3, "1.3"),
            (0.0, "0"),
            (-0.75, "-0.75"),
            (f64::NAN, "–"),
        ] {
            assert_eq!(value(given), written);
        }
    }
}
