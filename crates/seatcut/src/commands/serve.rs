//! `seatcut serve`: the app, its jobs, and phones.

use std::net::IpAddr;
use std::path::PathBuf;

use clap::Args;
use workshop::{Options, Said};

use crate::failure::Failure;
use crate::{data_folder, embedded, writing};

/// Open the app in the browser.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut serve
  seatcut serve --network
  seatcut serve --network 192.168.1.20 --port 5000
Without --network nobody but this machine can reach it.")]
pub struct Serve {
    /// The port; with --network, phones start at the next one
    #[arg(long, default_value_t = 4270, value_parser = clap::value_parser!(u16).range(1..65535))]
    port: u16,
    /// Let paired phones of the local network in; at this address, or at all that this machine has
    #[arg(long, value_name = "ADDRESS", num_args = 0..=1)]
    network: Option<Option<IpAddr>>,
    /// The folder of the jobs; when left out, one among the user's data
    #[arg(long, value_name = "FOLDER")]
    data: Option<PathBuf>,
}

impl Serve {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let assets = embedded::files()?.into_iter().collect();
        let options = Options {
            data: data_folder::of(self.data)?,
            port: self.port,
            network: self.network.map(|named| named.into_iter().collect()),
            first_job: embedded::FIRST_JOB.to_owned(),
        };
        workshop::serve(options, assets, Box::new(tell)).map_err(|why| Failure::BadInput(why.to_string()))
    }
}

/// Tells it on the terminal, where somebody looks.
fn tell(said: &Said) {
    // If standard output is gone there is nobody to tell.
    let _ = writing::print(format!("{said}\n").as_bytes());
}
