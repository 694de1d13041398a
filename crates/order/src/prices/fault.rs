//! What is wrong with a price list.

use serde::{Deserialize, Serialize};
use std::fmt;
use thiserror::Error;

/// Faults that are told at most; whoever has more has another kind of file.
const MOST: usize = 100;

/// One thing wrong with a price list.
///
/// | code | rule |
/// | --- | --- |
/// | `list-empty` | there are column names and at least one price |
/// | `list-too-large` | at most [`LARGEST_LIST`](super::LARGEST_LIST) bytes and [`MOST_ROWS`](super::MOST_ROWS) lines |
/// | `not-text` | UTF-8 text without zero bytes |
/// | `column-missing` | `what`, `price` and `per` are there |
/// | `column-unknown` | every column is known |
/// | `column-twice` | no column is there twice |
/// | `line-length` | lines have as many cells as there are columns |
/// | `what-missing`, `bad-item` | items are words |
/// | `price-missing`, `bad-number`, `price-not-positive`, `out-of-range` | figures can be read and lie in their range |
/// | `bad-unit` | units are known |
/// | `timber-size`, `timber-unit` | timber has a section, and goes each length or by the metre |
/// | `sizes-of-no-timber` | only timber has sizes |
/// | `units-mixed` | sizes are millimetres |
/// | `bad-class`, `bad-date` | classes and dates can be read |
/// | `said-twice` | nothing has two prices |
/// | `priced-two-ways` | one timber goes by the metre or by its lengths |
/// | `more-faults` | there are more faults than are told |
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PriceListFault {
    /// Line, from 1; 0 for the whole list.
    pub line: u32,
    /// Short fixed code.
    pub code: String,
    /// What is wrong.
    pub what: String,
    /// Why it matters.
    pub why: String,
    /// What to do.
    pub remedy: String,
}

impl PriceListFault {
    pub(super) fn new(
        line: u32,
        code: &str,
        what: impl Into<String>,
        why: impl Into<String>,
        remedy: impl Into<String>,
    ) -> Self {
        Self { line, code: code.to_owned(), what: what.into(), why: why.into(), remedy: remedy.into() }
    }
}

impl fmt::Display for PriceListFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.line > 0 {
            write!(f, "line {}: ", self.line)?;
        }
        write!(f, "{}. {}. {}.", self.what, self.why, self.remedy)
    }
}

/// All that is wrong with a price list, in the order of its lines; never empty.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, Error)]
#[serde(transparent)]
pub struct PriceListFaults(Vec<PriceListFault>);

impl PriceListFaults {
    /// The faults, `None` when there are none.
    pub(super) fn of(mut faults: Vec<PriceListFault>) -> Option<Self> {
        if faults.is_empty() {
            return None;
        }
        faults.sort_by_key(|fault| fault.line);
        if faults.len() > MOST {
            let more = faults.len() - MOST;
            faults.truncate(MOST);
            faults.push(PriceListFault::new(
                0,
                "more-faults",
                format!("There are {more} faults more"),
                "So many are mostly one and the same slip",
                "Correct these first and read the list again",
            ));
        }
        Some(Self(faults))
    }

    pub(super) fn one(fault: PriceListFault) -> Self {
        Self(vec![fault])
    }

    /// The faults.
    pub fn iter(&self) -> impl Iterator<Item = &PriceListFault> {
        self.0.iter()
    }
}

impl fmt::Display for PriceListFaults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (k, fault) in self.0.iter().enumerate() {
            if k > 0 {
                f.write_str("\n")?;
            }
            fault.fmt(f)?;
        }
        Ok(())
    }
}
