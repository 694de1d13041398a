//! The commands, one file each.

pub mod backup;
pub mod card;
pub mod check;
pub mod completions;
pub mod defaults;
pub mod folder;
pub mod new;
pub mod order;
pub mod pack;
pub mod prices;
pub mod schema;
pub mod serve;
pub mod set;
pub mod site;
pub mod solve;
pub mod spans;
pub mod strength;

use crate::cli::{Cli, Command};
use crate::failure::Failure;

/// Runs what was asked.
pub fn run(cli: Cli) -> Result<(), Failure> {
    match cli.command {
        Command::New(new) => new.run(),
        Command::Check(check) => check.run(),
        Command::Solve(solve) => solve.run(),
        Command::Strength(strength) => strength.run(),
        Command::Order(order) => order.run(),
        Command::Prices(prices) => prices.run(),
        Command::Site(site) => site.run(),
        Command::Spans(spans) => spans.run(),
        Command::Pack(pack) => pack.run(),
        Command::Serve(serve) => serve.run(),
        Command::Backup(backup) => backup.run(),
        Command::Folder(folder) => folder.run(),
        Command::Card(card) => card.run(),
        Command::Set(set) => set.run(),
        Command::Defaults => defaults::run(),
        Command::Schema => schema::run(),
        Command::Completions(completions) => completions.run(),
    }
}
