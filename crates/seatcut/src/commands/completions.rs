//! `seatcut completions`: a completion script for a shell.

use clap::{Args, CommandFactory};
use clap_complete::Shell;

use crate::cli::Cli;
use crate::failure::Failure;
use crate::writing;

/// Print a completion script.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  seatcut completions bash > ~/.local/share/bash-completion/completions/seatcut")]
pub struct Completions {
    /// The shell
    shell: Shell,
}

impl Completions {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let mut script = Vec::new();
        clap_complete::generate(self.shell, &mut Cli::command(), "seatcut", &mut script);
        writing::print(&script)
    }
}
