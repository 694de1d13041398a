//! What can go wrong, how it is told, and the exit code it gives.

use std::io::{self, Write};
use std::process::ExitCode;

use crate::fault_report::FaultReport;

/// Why a command did not give its result.
#[derive(Debug)]
pub enum Failure {
    /// The job was understood but can't be built as asked. Exit code 1.
    NotBuilt(String),
    /// A file or an argument is not good; the text says where and what to do.
    /// Exit code 2.
    BadInput(String),
    /// Faults in a job file, each with its place. Exit code 2.
    BadJob(Box<FaultReport>),
    /// A result can't be written. Exit code 3.
    CannotWrite {
        /// Where to.
        to: String,
        /// What the system says.
        why: io::Error,
    },
}

impl Failure {
    /// The exit code.
    pub fn code(&self) -> ExitCode {
        ExitCode::from(match self {
            Self::NotBuilt(_) => 1,
            Self::BadInput(_) | Self::BadJob(_) => 2,
            Self::CannotWrite { .. } => 3,
        })
    }

    /// The same, told of this file. Faults with a place of their own have it already.
    pub fn in_file(self, name: &str) -> Self {
        match self {
            Self::NotBuilt(what) => Self::NotBuilt(format!("{name}: {what}")),
            Self::BadInput(what) => Self::BadInput(format!("{name}: {what}")),
            other => other,
        }
    }

    /// Tells it on standard error.
    pub fn tell(&self) {
        let text = match self {
            Self::NotBuilt(what) | Self::BadInput(what) => format!("{what}\n"),
            Self::BadJob(report) => report.to_string(),
            Self::CannotWrite { to, why } => {
                format!("{to} can't be written: {why}; name a file in a folder that you may write to\n")
            }
        };
        // If standard error is gone there is nobody to tell; the exit code still says it.
        let _ = io::stderr().write_all(text.as_bytes());
    }
}
