//! How far the timbers of the open job are used.

use serde::{Deserialize, Serialize};

/// What is known of the strength of the open job.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "state", rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum StrengthView {
    /// The job does not say what the roof carries.
    NotAsked(StrengthForm),
    /// It was checked.
    Checked(StrengthChecked),
}

/// What has to be written before strength can be checked.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthForm {
    /// What to write, a sentence.
    pub words: String,
    /// The figures, in the order in which they are asked for.
    pub fields: Vec<StrengthField>,
}

/// A figure that is asked for.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthField {
    /// Its path in the job file.
    pub path: String,
    /// What it is, with its unit.
    pub label: String,
    /// Where it is to be had from.
    pub hint: String,
    /// What stands there now; empty when nothing does.
    pub value: String,
    /// What can be chosen: the word of the job file, and what is shown for it. Empty for a figure.
    pub choices: Vec<(String, String)>,
}

/// The strength of a roof.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthChecked {
    /// How many are over and near, the most used, how many matters are for an engineer.
    pub summary: Vec<String>,
    /// Every timber that carries, the most used first.
    pub timbers: Vec<StrengthRow>,
    /// Joints, the most used first.
    pub joints: Vec<StrengthJoint>,
    /// What is for an engineer, each with its reason.
    pub engineer: Vec<StrengthMatter>,
    /// What was taken for granted, a sentence each.
    pub assumed: Vec<String>,
    /// Cautions.
    pub cautions: Vec<String>,
}

/// Whether something passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum StrengthVerdict {
    /// With something left.
    Within,
    /// So nearly used up that a figure from memory might turn it.
    Near,
    /// Not.
    Over,
}

/// A timber that carries.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthRow {
    /// Its mark; of several lengths, the one that they share.
    pub mark: String,
    /// Marks of its lengths, as the roof has them.
    pub lengths: Vec<String>,
    /// What it is, in words.
    pub kind: String,
    /// Its section as shown.
    pub size: String,
    /// The check that governs.
    pub check: String,
    /// Its clause.
    pub clause: String,
    /// The loads under which it does; what deflection is under.
    pub combination: String,
    /// `83 % used`.
    pub used: String,
    /// `17 % left`, or by how much it is too much.
    pub left: String,
    /// Whether it passes.
    pub verdict: StrengthVerdict,
    /// The same in a word.
    pub word: String,
    /// What would pass, a sentence; when it is over.
    pub would_pass: Option<String>,
    /// What is written at it in the roof, when it is over: `over, 112 %`.
    pub tag: Option<String>,
}

/// A joint.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthJoint {
    /// What is joined.
    pub name: String,
    /// Where it is used most.
    pub marks: String,
    /// What it must carry.
    pub force: String,
    /// How far it is used, or that no figure can be given.
    pub used: String,
    /// Whether it passes; nothing where no figure can be given.
    pub verdict: Option<StrengthVerdict>,
    /// The same in a word.
    pub word: String,
    /// What it takes.
    pub takes: String,
    /// What else would do, or what to ask for.
    pub remark: String,
    /// Clause.
    pub clause: String,
    /// Its working.
    pub lines: Vec<StrengthStep>,
}

/// Something that is for an engineer.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthMatter {
    /// What, and why.
    pub text: String,
    /// Where: marks, a wall, a group of the job.
    pub places: String,
    /// The first timber that it is about, if it is about one.
    pub mark: Option<String>,
}

/// Asks for the working of a check.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthWhy {
    /// The mark of a timber.
    pub mark: String,
    /// Which check, by its name; nothing for the one that governs.
    pub check: Option<String>,
}

/// Asks for the strength of a piece in one line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthOf {
    /// The mark of a timber, or of its pattern piece.
    pub mark: String,
}

/// The strength of a piece in one line: that of its most used timber.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthLine {
    /// The timber, to ask for the working with.
    pub mark: String,
    /// `83 % used, shear at the notch, near its limit`.
    pub words: String,
    /// Whether it passes.
    pub verdict: StrengthVerdict,
}

/// The working of a check.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthWorking {
    /// What of what.
    pub title: String,
    /// `83 % used`.
    pub value: String,
    /// What that means: loads, place, verdict.
    pub idea: String,
    /// Line by line.
    pub lines: Vec<StrengthStep>,
    /// The clause.
    pub clause: String,
    /// All checks of this timber, the governing one first: name, how far used.
    pub checks: Vec<(String, String)>,
    /// Which of them this is.
    pub check: String,
    /// What to mind.
    pub cautions: Vec<String>,
}

/// A line of a working.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct StrengthStep {
    /// What is worked out.
    pub what: String,
    /// The formula with its numbers; empty when the value is given.
    pub how: String,
    /// The value with its unit.
    pub value: String,
    /// Where the rule or the figure stands.
    pub from: String,
}
