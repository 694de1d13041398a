//! A working while it is being written: every figure in it is rounded as it is
//! shown and used on as shown, so that each sum can be checked by hand.

use crate::question::Question;
use crate::sum;
use crate::words::Line;
use core::fmt;

/// What a figure of a working rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Basis {
    /// Sizes of the plan, pitches, sections and where the timber is set out.
    Sizes,
    /// Where the ends of the timber's centre line lie.
    Position,
    /// Something was read off the finished solid.
    Solid,
}

/// What a figure is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unit {
    Millimetres,
    Degrees,
    Ratio,
    CubicMetres,
}

impl Unit {
    /// Decimals that are shown and used on: 0.01 mm and 0.0001° stay below
    /// 0.05 mm over the longest rafter; ratios multiply whole roofs.
    const fn decimals(self) -> usize {
        match self {
            Self::Millimetres => 2,
            Self::Degrees => 4,
            Self::Ratio => 6,
            Self::CubicMetres => 5,
        }
    }
}

/// A figure as it is shown: its value is the rounded one.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Shown {
    pub(crate) value: f64,
    unit: Unit,
}

impl Shown {
    pub(crate) fn new(value: f64, unit: Unit) -> Self {
        let scale = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6][unit.decimals()];
        Self { value: (value * scale).round() / scale + 0.0, unit }
    }

    fn digits(&self) -> String {
        let mut text = format!("{:.*}", self.unit.decimals(), self.value.abs());
        if text.contains('.') {
            text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
        }
        if self.unit == Unit::Degrees { text + "°" } else { text }
    }

    /// With sign and unit, as a result is written.
    pub(crate) fn result(&self) -> String {
        let sign = if self.value < 0.0 { "−" } else { "" };
        let unit = match self.unit {
            Unit::Millimetres => " mm",
            Unit::CubicMetres => " m³",
            Unit::Degrees | Unit::Ratio => "",
        };
        format!("{sign}{}{unit}", self.digits())
    }
}

/// As it stands in a sum.
impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.value < 0.0 { write!(f, "(−{})", self.digits()) } else { f.write_str(&self.digits()) }
    }
}

/// The lines of a working so far.
#[derive(Clone, Debug)]
pub(crate) struct Chain {
    pub(crate) lines: Vec<Line>,
    pub(crate) basis: Basis,
    /// What the last line comes to.
    pub(crate) value: f64,
    /// The line of the figure that was found last.
    at: usize,
}

impl Chain {
    pub(crate) const fn new() -> Self {
        Self { lines: Vec::new(), basis: Basis::Sizes, value: f64::NAN, at: 0 }
    }

    /// A figure that is given: a size of the plan, a pitch, a section.
    pub(crate) fn given(&mut self, words: impl Into<String>, value: f64, unit: Unit) -> Shown {
        self.add(words.into(), String::new(), Shown::new(value, unit))
    }

    /// A figure that follows from where the timber's ends lie.
    pub(crate) fn placed(&mut self, words: impl Into<String>, value: f64, unit: Unit) -> Shown {
        self.basis = self.basis.max(Basis::Position);
        self.given(words, value, unit)
    }

    /// A figure read off the solid.
    pub(crate) fn read_off(&mut self, words: &str, value: f64, unit: Unit) -> Shown {
        self.basis = Basis::Solid;
        self.given(format!("Read off the solid: {words}"), value, unit)
    }

    /// A sum. A sum that comes to nothing makes the working's value no number.
    pub(crate) fn sum(&mut self, words: impl Into<String>, sum: impl Into<String>, unit: Unit) -> Shown {
        let sum = sum.into();
        let value = sum::value(&sum).unwrap_or(f64::NAN);
        self.add(words.into(), sum, Shown::new(value, unit))
    }

    /// A length by a sum.
    pub(crate) fn length(&mut self, words: impl Into<String>, sum: impl Into<String>) -> Shown {
        self.sum(words, sum, Unit::Millimetres)
    }

    /// A length that is found already, as the last line; nothing where it is that.
    pub(crate) fn conclude(&mut self, words: &str, found: &Shown) -> Shown {
        if self.lines.len() == self.at + 1 && self.value.to_bits() == found.value.to_bits() {
            return found.clone();
        }
        self.sum(words, found.to_string(), found.unit)
    }

    /// An angle by a sum.
    pub(crate) fn angle(&mut self, words: impl Into<String>, sum: impl Into<String>) -> Shown {
        self.sum(words, sum, Unit::Degrees)
    }

    /// Names the figure that was found last, so that it can be asked about in turn.
    pub(crate) fn ask(&mut self, question: &Question) {
        if let Some(line) = self.lines.get_mut(self.at) {
            line.why = Some(question.to_string());
        }
    }

    fn add(&mut self, words: String, sum: String, shown: Shown) -> Shown {
        // A figure that was found before is not found again.
        let known = self.lines.iter().position(|l| l.words == words && l.sum == sum);
        self.at = known.unwrap_or(self.lines.len());
        if known.is_none() {
            self.lines.push(Line { words, sum, result: shown.result(), why: None });
        }
        self.value = shown.value;
        shown
    }
}
