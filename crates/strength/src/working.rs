//! The working of a check, line by line, as an engineer would write it down.
//!
//! Checks write into a [`Working`]; while whole roofs are checked nothing is kept, and only a check that someone asks
//! for is run once more with its lines kept. So the figures of the working are the figures of the check.

use serde::{Deserialize, Serialize};

/// One line: a symbol, how it comes about, its value, and where the rule stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Line {
    /// What is worked out, in words of the job with the symbol of the code, e.g. `bending strength f_m,d`.
    pub what: String,
    /// The formula with its numbers put in; empty when the value is given.
    pub how: String,
    /// The value, in `unit`.
    pub value: f64,
    /// Its unit; empty for a ratio.
    pub unit: String,
    /// Clause, table or job key that it comes from.
    pub from: String,
}

/// Where a check writes its lines.
#[derive(Debug, Default)]
pub struct Working {
    lines: Option<Vec<Line>>,
}

impl Working {
    /// Keeps nothing.
    #[must_use]
    pub const fn off() -> Self {
        Self { lines: None }
    }

    /// Keeps every line.
    #[must_use]
    pub const fn on() -> Self {
        Self { lines: Some(Vec::new()) }
    }

    /// Write a line and give its value back. `how` is only run when lines are kept.
    pub fn line(&mut self, what: &str, value: f64, unit: &str, from: &str, how: impl FnOnce() -> String) -> f64 {
        if let Some(lines) = &mut self.lines {
            let (what, unit, from) = (what.to_owned(), unit.to_owned(), from.to_owned());
            lines.push(Line { what, how: how(), value, unit, from });
        }
        value
    }

    /// What was written.
    #[must_use]
    pub fn lines(self) -> Vec<Line> {
        self.lines.unwrap_or_default()
    }
}
