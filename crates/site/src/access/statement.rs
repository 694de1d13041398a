//! A statement of a sheet: what is said, where it is from, and how far it can be relied upon.

use serde::{Deserialize, Serialize};

/// Where a statement is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Basis {
    /// What the job says.
    Job,
    /// Worked out from the solved roof.
    Roof,
    /// Seen in the source, or in a named reproduction of it.
    Published,
    /// From first principles.
    Derived,
    /// A habit of the trade with no published source found.
    CommonPractice,
    /// The source is named, the figure is from memory.
    Memory,
    /// Written by people on site.
    Site,
}

impl Basis {
    /// How the sheets say it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Job => "as the job says",
            Self::Roof => "worked out from the roof",
            Self::Published => "published",
            Self::Derived => "worked out",
            Self::CommonPractice => "usual practice, an estimate",
            Self::Memory => "from memory: look it up before it is relied upon",
            Self::Site => "written on site",
        }
    }

    /// Whether a check by such a figure may come out as within.
    #[must_use]
    pub const fn can_pass(self) -> bool {
        !matches!(self, Self::Memory | Self::CommonPractice)
    }
}

/// How a check came out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Within a published figure, as far as that goes.
    Within,
    /// The figure is not one to pass by: ask who designs or makes it.
    Ask,
    /// Over the figure.
    Over,
}

impl Verdict {
    /// The verdict on a value and the most it may be, by a figure of some basis. What is not a number is asked about.
    #[must_use]
    pub fn at_most(value: f64, most: f64, basis: Basis) -> Self {
        if value > most {
            Self::Over
        } else if value <= most && basis.can_pass() {
            Self::Within
        } else {
            Self::Ask
        }
    }
}

/// A figure in a statement.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Named {
    /// What it is.
    pub name: String,
    /// In `unit`.
    pub value: f64,
    /// `mm`, `m`, `kg`, `kN`, `kN/m²`, `mph`, `°`, or a word.
    pub unit: String,
}

/// A statement.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Statement {
    /// Its name, by which a job file can put other words in its place (`record.NAME.text`).
    pub id: String,
    /// One or two sentences.
    pub text: String,
    /// Where it is from: a title and clause, a key of the job, or the roof.
    pub source: String,
    /// How far it can be relied upon.
    pub basis: Basis,
    /// Its figures.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub values: Vec<Named>,
    /// How a check came out, if it is one.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub verdict: Option<Verdict>,
}

impl Statement {
    /// A statement without figures.
    #[must_use]
    pub fn new(id: &str, text: impl Into<String>, source: impl Into<String>, basis: Basis) -> Self {
        let (text, source) = (text.into(), source.into());
        Self { id: id.to_owned(), text, source, basis, values: Vec::new(), verdict: None }
    }

    /// With a figure.
    #[must_use]
    pub fn with(mut self, name: &str, value: f64, unit: &str) -> Self {
        self.values.push(Named { name: name.to_owned(), value, unit: unit.to_owned() });
        self
    }

    /// With the outcome of a check.
    #[must_use]
    pub const fn checked(mut self, verdict: Verdict) -> Self {
        self.verdict = Some(verdict);
        self
    }
}

/// A question that only people on site can answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Blank {
    /// Its name, by which a job file can hold the answer (`record.NAME.text`).
    pub id: String,
    /// The question.
    pub question: String,
    /// Who answers it.
    pub who: String,
}

impl Blank {
    /// A question.
    #[must_use]
    pub fn new(id: &str, question: &str, who: &str) -> Self {
        Self { id: id.to_owned(), question: question.to_owned(), who: who.to_owned() }
    }
}

/// A row of a sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Row {
    /// What is said.
    Said(Statement),
    /// What is asked.
    Blank(Blank),
}

impl Row {
    /// The name of what is said or asked.
    #[must_use]
    pub fn id(&self) -> &str {
        match self {
            Self::Said(said) => &said.id,
            Self::Blank(blank) => &blank.id,
        }
    }
}

/// A part of a sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Section {
    /// Its heading.
    pub heading: String,
    /// Its rows.
    pub rows: Vec<Row>,
}

impl Section {
    /// A part under a heading.
    #[must_use]
    pub fn new(heading: &str, rows: Vec<Row>) -> Self {
        Self { heading: heading.to_owned(), rows }
    }
}
