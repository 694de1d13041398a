//! Why a call was not done.

use crate::wording::capital;
use roof::SolveError;
use serde::Serialize;

/// Faults that are shown at once. Whoever has more has another kind of file, or
/// will not read them all.
const MOST_FAULTS_SHOWN: usize = 40;

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
    /// The key that is at fault, of several that were given at once.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "bindings", ts(optional))]
    pub key: Option<String>,
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
    #[must_use]
    pub fn new(code: &str, what: impl Into<String>, remedy: impl Into<String>) -> Self {
        Self { code: code.into(), what: what.into(), remedy: remedy.into(), faults: Vec::new(), key: None }
    }

    /// The call or its reply can't be read: app and core do not fit each other.
    #[must_use]
    pub fn not_understood(call: &str, error: &serde_json::Error) -> Self {
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

    /// The faults of a text as a refusal.
    #[must_use]
    pub fn of_faults(faults: &job::Faults) -> Self {
        let all = faults.as_slice();
        let what = match all {
            [only] => format!("Line {}: {}", only.line, only.what),
            many => format!("The job file has {} faults", many.len()),
        };
        let remedy = match all {
            [only] => only.remedy.clone(),
            _ => "Put right what is listed, or undo the last change".to_owned(),
        };
        let code = all.first().map_or("faults", |fault| fault.code);
        Self { faults: all.iter().take(MOST_FAULTS_SHOWN).map(line).collect(), ..Self::new(code, what, remedy) }
    }

    /// Why no roof can be made of a job.
    #[must_use]
    pub fn of_roof(error: &SolveError) -> Self {
        // The solver says what, where and what to do in one sentence or two.
        let remedy = "Change what is named here, or undo the last change";
        Self::new(error.code(), capital(&error.to_string()), remedy)
    }
}

fn line(fault: &job::Fault) -> FaultLine {
    let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let near = fault.nearest.as_ref().map(|near| format!(". Did you mean `{near}`?"));
    FaultLine {
        line: number(fault.line),
        column: number(fault.column),
        what: fault.what.clone(),
        why: fault.why.clone(),
        remedy: format!("{}{}", fault.remedy, near.unwrap_or_default()),
    }
}
