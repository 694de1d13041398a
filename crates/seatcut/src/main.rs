//! `seatcut`: the command line. It reads and writes files and prints; every
//! figure comes from the pure crates.

mod all;
mod cli;
mod commands;
mod data_folder;
mod embedded;
mod failure;
mod fault_report;
mod figures;
mod lengths;
mod ordering;
mod progress;
mod reading;
mod setting_up;
mod solving;
mod strong;
mod writing;

use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    match commands::run(cli::Cli::parse()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            failure.tell();
            failure.code()
        }
    }
}
