//! A working, as it is shown.

use picture::Picture;
use serde::Serialize;

/// The working of one figure.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Working {
    /// What is asked, a phrase: `True length of jack rafter J3`.
    pub title: String,
    /// The figure as the card shows it.
    pub value: String,
    /// The idea in a sentence or two, before any sum.
    pub idea: String,
    /// The drawing that goes with it.
    pub picture: Picture,
    /// The working, in order.
    pub lines: Vec<Line>,
    /// How to try it with square, tape or string, where that can be done.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "bindings", ts(optional))]
    pub by_hand: Option<String>,
    /// Where the rule comes from: a source, or `common practice`, or first principles.
    pub rule: String,
}

/// One line of a working.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Line {
    /// What this line finds, in words.
    pub words: String,
    /// The sum: `2600 ÷ cos 40°`. Empty for a line that only takes a figure over.
    pub sum: String,
    /// What it comes to, with its unit.
    pub result: String,
    /// The key of this figure, if it can be asked about in turn.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "bindings", ts(optional))]
    pub why: Option<String>,
}
