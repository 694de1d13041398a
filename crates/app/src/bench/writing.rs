//! How a card writes: lengths in the user's units, words in the user's dialect.

use crate::views::Dialect;
use crate::wording;
use job::written::Lengths;

/// A sixteenth of an inch, mm.
const SIXTEENTH: f64 = 25.4 / 16.0;
/// Sixteenths in an inch.
const SIXTEENTHS: i64 = 16;
/// Readings past this are no reading on a rule, mm.
const LONGEST_READING: f64 = 1e6;

/// How a card writes.
#[derive(Clone, Copy, Debug)]
pub struct Writing {
    pub lengths: Lengths,
    pub dialect: Dialect,
}

impl Writing {
    /// A text of the core in the user's words.
    pub fn say(&self, text: &str) -> String {
        wording::say(self.dialect, text).into_owned()
    }

    /// The same with a capital at its start.
    pub fn say_first(&self, text: &str) -> String {
        wording::capital(&wording::say(self.dialect, text))
    }

    pub fn is_metric(&self) -> bool {
        self.lengths == Lengths::Millimetres
    }

    /// A length without its unit.
    pub fn bare(&self, mm: f64) -> String {
        self.lengths.write(mm)
    }

    /// A length with its unit.
    pub fn length(&self, mm: f64) -> String {
        self.lengths.write_with_unit(mm)
    }

    /// A section with its unit.
    pub fn section(&self, thickness: f64, depth: f64) -> String {
        let section = self.lengths.section(thickness, depth);
        if self.is_metric() { format!("{section} mm") } else { section }
    }

    /// A reading on a rule or square, which has no feet.
    pub fn on_rule(&self, mm: f64) -> String {
        if self.is_metric() || !mm.is_finite() || mm.abs() > LONGEST_READING {
            return self.length(mm);
        }
        let all = (mm / SIXTEENTH).round() as i64;
        let (inches, mut part, mut whole) = (all / SIXTEENTHS, all % SIXTEENTHS, SIXTEENTHS);
        while part != 0 && part % 2 == 0 {
            part /= 2;
            whole /= 2;
        }
        match (inches, part) {
            (_, 0) => format!("{inches}\""),
            (0, _) => format!("{part}/{whole}\""),
            _ => format!("{inches} {part}/{whole}\""),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn readings_on_a_rule_have_no_feet() {
        let inches = Writing { lengths: Lengths::FeetInches, dialect: Dialect::Us };
        assert_eq!(inches.on_rule(304.8), "12\"");
        assert_eq!(inches.on_rule(10.0625 * 25.4), "10 1/16\"");
        assert_eq!(inches.on_rule(12.7), "1/2\"");
        let mm = Writing { lengths: Lengths::Millimetres, dialect: Dialect::Uk };
        assert_eq!(mm.on_rule(209.775), "210 mm");
    }
}
