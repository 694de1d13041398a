//! Putting the roof up: steps, lifts, the programme, access and its papers, worded for the screen.

use picture::Picture;
use serde::{Deserialize, Serialize};

/// A figure with what it is.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteFigure {
    /// What it is.
    pub label: String,
    /// The figure with its unit.
    pub value: String,
}

/// Asks for something with a picture in it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteAsk {
    /// Width that the picture may take, px.
    pub width: f64,
}

/// Asks for the picture of a step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SitePictureAsk {
    /// The number of the step.
    pub step: u32,
    /// Width that it may take, px.
    pub width: f64,
    /// Quarter turns by which one has walked round the roof.
    pub turn: u32,
}

/// The order of the work.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteSteps {
    /// Why there is no order of work, with what to do.
    pub refused: Option<String>,
    /// The steps.
    pub steps: Vec<SiteStep>,
    /// Straps, line by line.
    pub straps: Vec<SiteStrap>,
    /// Cautions with who decides.
    pub cautions: Vec<String>,
}

/// A step.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteStep {
    /// From 1.
    pub number: u32,
    /// What is done.
    pub title: String,
    /// Least number of people.
    pub hands: String,
    /// What is special about lifting its timbers.
    pub lifting: Vec<String>,
    /// What is fixed, kind by kind.
    pub timbers: Vec<SiteTimbers>,
    /// Marks in the order of fixing.
    pub order: Vec<String>,
    /// How many of them are ticked as fixed; nothing when none is fixed in this step.
    pub ticked: Option<String>,
    /// All of them are.
    pub all_ticked: bool,
    /// Setting-out strips to mark first.
    pub strips: Vec<String>,
    /// Props and braces that are set, bracing that stays.
    pub set: Vec<SiteBar>,
    /// What is taken out.
    pub out: Vec<String>,
    /// Why now.
    pub why: String,
    /// What may hurt here.
    pub hazard: String,
    /// What is checked before going on.
    pub holds: Vec<SiteHold>,
    /// Where nothing may be stacked meanwhile.
    pub no_stack: Vec<String>,
}

/// Timbers of one kind.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteTimbers {
    /// What they are.
    pub kind: String,
    /// Their marks: `C1 to C8, C10`.
    pub marks: String,
}

/// A prop, a brace, or bracing that stays.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteBar {
    /// Its name, `P1`.
    pub name: String,
    /// What it is and where it stands.
    pub what: String,
    /// Its figures.
    pub figures: Vec<SiteFigure>,
    /// What to mind; may be empty.
    pub note: String,
}

/// What is checked before going on.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteHold {
    /// Its number.
    pub number: u32,
    /// What to check.
    pub what: String,
    /// Where.
    pub at: String,
    /// What it must be, where it is a figure.
    pub figure: Option<String>,
    /// By how much it may be out.
    pub tolerance: String,
    /// How the tolerance was come by.
    pub basis: String,
}

/// Straps along one line.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteStrap {
    /// What they do, and where.
    pub what: String,
    /// Where the tape hooks on, and the marks on it.
    pub marks: String,
    /// Section and how the spacing was come by.
    pub about: String,
}

/// What is lifted.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteLifts {
    /// By kind, the heaviest first.
    pub kinds: Vec<SiteLift>,
    /// What the figures are, and who decides.
    pub cautions: Vec<String>,
}

/// Timbers of one kind as they are lifted, by the heaviest of them.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteLift {
    /// What they are.
    pub kind: String,
    /// How many.
    pub pieces: u32,
    /// Weight of the heaviest, damp.
    pub heaviest: String,
    /// Its mark.
    pub mark: String,
    /// Who carries it.
    pub carried: String,
    /// Who lifts it above the shoulder; empty when it is not lifted so high.
    pub overhead: String,
    /// It wants more than hands.
    pub aid: bool,
    /// How it is lifted, stage by stage.
    pub stages: Vec<String>,
    /// More figures: weight dry, balance, the longest, all together, lifts with the hoist.
    pub figures: Vec<SiteFigure>,
}

/// The programme.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteProgramme {
    /// The last day.
    pub last: String,
    /// Working days.
    pub days: String,
    /// It has dates.
    pub dated: bool,
    /// A bar for each phase.
    pub bars: Picture,
    /// The phases in words.
    pub phases: Vec<SitePhase>,
    /// When it is done, as chance has it.
    pub spread: Vec<SiteFigure>,
    /// Crew, start, hours a day, weather.
    pub fields: Vec<SiteField>,
    /// Hours of one of each item.
    pub hours: Vec<SiteField>,
    /// From when to when the access is hired.
    pub hired: String,
    /// The hire as planned, late, and with two more wet weeks.
    pub hire: Vec<SiteHire>,
    /// Prices of the hire.
    pub hire_fields: Vec<SiteField>,
    /// Days on which the access is inspected.
    pub inspections: Vec<String>,
    /// Whether the work would have to be notified.
    pub notice: String,
    /// What it does not say.
    pub cautions: Vec<String>,
}

/// A phase of the work.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SitePhase {
    /// What it is.
    pub name: String,
    /// From when to when.
    pub when: String,
    /// Who, how many, for how long.
    pub who: String,
    /// What the end of the whole has to do with it.
    pub float: String,
}

/// A course that the hire may take.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteHire {
    /// Which.
    pub name: String,
    /// Weeks that are paid for.
    pub weeks: String,
    /// What it costs, or that there is no price.
    pub cost: String,
}

/// A key of the job that is typed in.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteField {
    /// Its path in the job file.
    pub path: String,
    /// What it is, with its unit.
    pub label: String,
    /// Where its value is from while the job does not say it; may be empty.
    pub hint: String,
    /// What is in force; empty when nothing is.
    pub value: String,
    /// The job says it.
    pub said: bool,
    /// How it is typed.
    pub form: SiteForm,
    /// What can be chosen: the word of the job file, and what is shown for it.
    pub choices: Vec<(String, String)>,
}

/// How a field is typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum SiteForm {
    /// One of some words.
    Choice,
    /// A day.
    Date,
    /// A number.
    Number,
    /// Anything.
    Text,
}

/// How a check came out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum SiteVerdict {
    /// Within a published figure, as far as that goes.
    Within,
    /// To be asked of who designs or makes it.
    Ask,
    /// Over the figure.
    Over,
}

/// The access.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteAccess {
    /// What the roof is put up from, and who says so.
    pub kind: String,
    /// Figures of the whole.
    pub figures: Vec<SiteFigure>,
    /// Wall by wall.
    pub walls: Vec<SiteWall>,
    /// One bay with people and a stack on it; nothing for a roof without rafters.
    pub bay: Option<SiteBay>,
    /// The ladder.
    pub ladder: Vec<SiteFigure>,
    /// What is known of the site.
    pub fields: Vec<SiteField>,
    /// What is said, by subject.
    pub sections: Vec<SiteSection>,
    /// Who decides.
    pub cautions: Vec<String>,
}

/// What stands along a wall.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteWall {
    /// The wall.
    pub wall: String,
    /// Its figures.
    pub figures: Vec<SiteFigure>,
}

/// The check of a bay.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteBay {
    /// How it came out.
    pub verdict: SiteVerdict,
    /// The same in words.
    pub word: String,
    /// What was put on it.
    pub what: String,
    /// The sum.
    pub figures: Vec<SiteFigure>,
}

/// The papers.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteRecords {
    /// How many questions are answered.
    pub answered: String,
    /// The brief, the record of the access, risks and method.
    pub papers: Vec<SitePaper>,
    /// Names of texts that no paper has.
    pub unused: Vec<String>,
}

/// A paper.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SitePaper {
    /// What it is called.
    pub title: String,
    /// Who decides.
    pub cautions: Vec<String>,
    /// Its parts.
    pub sections: Vec<SiteSection>,
}

/// A part of a paper.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteSection {
    /// Its heading.
    pub heading: String,
    /// Its rows.
    pub rows: Vec<SiteRow>,
}

/// A statement, or a question.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SiteRow {
    /// Its name in the job file.
    pub name: String,
    /// What is said of its own; nothing of a question.
    pub said: Option<String>,
    /// The question; empty of a statement.
    pub question: String,
    /// Who answers it, or where the statement is from and how far it can be relied upon.
    pub from: String,
    /// How a check came out, if it is one.
    pub verdict: Option<SiteVerdict>,
    /// The same in words.
    pub word: String,
    /// What people on site wrote in its place.
    pub written: Option<String>,
}

/// Writes what people on site say in place of a statement, or answers a question. An empty text takes it out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct RecordGiven {
    /// The name of the statement.
    pub name: String,
    /// The text.
    pub text: String,
}
