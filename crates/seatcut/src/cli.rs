//! The commands and their options, as words on the command line.

use clap::{Parser, Subcommand};

use crate::commands::{
    backup, card, check, completions, folder, new, order, pack, prices, serve, set, site, solve, spans, strength,
};

/// What every help page ends with.
const EXIT_CODES: &str = "\
Exit codes:
  0  done
  1  the job can't be built as asked
  2  a file or an argument is not good
  3  a result can't be written

A JOB of - is read from standard input. Where there is a fault nothing is written.";

/// Cut roofs from the wall plates up: true lengths, every bevel, birdsmouths, sheets for the bench.
#[derive(Debug, Parser)]
#[command(name = "seatcut", version, after_help = EXIT_CODES, arg_required_else_help = true)]
pub struct Cli {
    #[command(subcommand)]
    pub command: Command,
}

/// One command; each has a file of its own under `commands/`.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Start a job file from a shape of plan
    New(new::New),
    /// Check a job: the file, the plan, and that the roof can be built
    Check(check::Check),
    /// Solve a job and print its figures
    Solve(solve::Solve),
    /// How far timbers and joints are used, with the working
    Strength(strength::Strength),
    /// What to buy, and how to cut it with the least waste
    Order(order::Order),
    /// Stock and prices of a job as a list for a spreadsheet, or from one
    Prices(prices::Prices),
    /// The order of work, lifts, programme and access
    Site(site::Site),
    /// A span table of rafters and ceiling joists, with no job file
    Spans(spans::Spans),
    /// Write the sheets of a job as one PDF, and the list of timbers
    Pack(pack::Pack),
    /// Open the app in the browser, keep its jobs, and let phones in
    Serve(serve::Serve),
    /// Copy all kept jobs with their history to one file
    Backup(backup::BackupTo),
    /// Write the app as a folder for any web host
    Folder(folder::Folder),
    /// One rafter or hip from span, pitch and size, with no job file
    Card(card::Card),
    /// Change one key of a job file, keeping its comments
    Set(set::Set),
    /// Print every key of a job file with what it is when left out
    #[command(after_help = "\
Example:
  seatcut defaults > all-keys.toml")]
    Defaults,
    /// Print the JSON schema of job files, for editors
    #[command(after_help = "\
Example:
  seatcut schema > job.schema.json")]
    Schema,
    /// Print a completion script for a shell
    Completions(completions::Completions),
}
