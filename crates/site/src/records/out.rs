//! The papers as plain data.

use crate::access::Section;
use serde::{Deserialize, Serialize};

/// A paper: statements with their sources, and blanks for what only people on site know.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Paper {
    /// What it is called.
    pub title: String,
    /// The job.
    pub job: String,
    /// Its date as written.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub date: Option<String>,
    /// Its revision as written.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub revision: Option<String>,
    /// Its parts.
    pub sections: Vec<Section>,
    /// Who decides.
    pub cautions: Vec<String>,
}

/// The papers of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Records {
    /// What a scaffold designer asks for.
    pub brief: Paper,
    /// What stands, who inspects it, and when.
    pub access_record: Paper,
    /// What can hurt people, and how the work is done.
    pub risk_and_method: Paper,
    /// Texts of the job by names that no paper has, each with its name and the name that was perhaps meant: those of a
    /// statement that is gone, or a slip.
    pub unused: Vec<String>,
}
