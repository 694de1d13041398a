//! Why a call was not done.

use serde::Serialize;

/// Why a call was not done: what is wrong and what to do about it. The job on
/// the desk is as it was before.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Refusal {
    /// Short name of the rule that is broken, for other programs.
    pub code: String,
    /// What is wrong, a sentence.
    pub what: String,
    /// What to do, a sentence.
    pub remedy: String,
    /// The faults of a job file, if that is what is wrong.
    pub faults: Vec<FaultLine>,
}

/// One fault in a job file.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct FaultLine {
    /// Line of the file, from 1.
    pub line: u32,
    /// Column of the line, from 1.
    pub column: u32,
    /// What is wrong.
    pub what: String,
    /// Why it matters.
    pub why: String,
    /// What to do.
    pub remedy: String,
}

impl Refusal {
    /// A refusal in words.
    pub(crate) fn new(code: &str, what: impl Into<String>, remedy: impl Into<String>) -> Self {
        Self { code: code.into(), what: what.into(), remedy: remedy.into(), faults: Vec::new() }
    }

    /// The call or its reply can't be read: app and core do not fit each other.
    pub(crate) fn not_understood(call: &str, error: &serde_json::Error) -> Self {
        Self::new(
            "call-not-understood",
            format!("The core does not understand `{call}`: {error}"),
            "App and core are of two versions: load the app again",
        )
    }

    /// No call has this name.
    pub(crate) fn no_such_call(call: &str) -> Self {
        Self::new(
            "no-such-call",
            format!("The core has no call `{call}`"),
            "App and core are of two versions: load the app again",
        )
    }
}
