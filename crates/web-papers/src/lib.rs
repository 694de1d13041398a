//! The papers of a job for the browser: the pack and single cards as PDF, the
//! list of timbers for a spreadsheet. A module of its own, so that the PDF
//! writer and its fonts are fetched only when a paper is wanted.

use app::Refusal;
use app::views::{LengthStyle, Settings};
use drawings::PackError;
use job::LengthUnit;
use serde::Deserialize;
use wasm_bindgen::prelude::wasm_bindgen;

/// Which paper.
#[derive(Debug, Deserialize)]
#[serde(tag = "paper", rename_all = "lowercase")]
enum Paper {
    /// The whole pack.
    Pack,
    /// The card of a timber.
    Card {
        /// Its mark, or that of its pattern piece.
        mark: String,
    },
    /// The list of timbers.
    List,
}

/// Makes a paper of a job: its text, the settings and which paper, the last two as JSON.
///
/// # Errors
/// The refusal as JSON.
#[wasm_bindgen]
pub fn paper(text: &str, settings: &str, what: &str) -> Result<Vec<u8>, String> {
    std::panic::set_hook(Box::new(|panic| wasm_bindgen::throw_str(&panic.to_string())));
    make(text, settings, what).map_err(|refusal| serde_json::to_string(&refusal).unwrap_or(refusal.what))
}

fn make(text: &str, settings: &str, what: &str) -> Result<Vec<u8>, Refusal> {
    let settings: Settings = serde_json::from_str(settings).map_err(|e| Refusal::not_understood("paper", &e))?;
    let what: Paper = serde_json::from_str(what).map_err(|e| Refusal::not_understood("paper", &e))?;
    let mut job = job::read(text).map_err(|faults| Refusal::of_faults(&faults))?;
    match settings.lengths {
        LengthStyle::AsJob => {}
        LengthStyle::Mm => job.show = LengthUnit::Millimetres,
        LengthStyle::FeetInches => job.show = LengthUnit::FeetInches,
    }
    let solution = roof::solve(&job).map_err(|error| Refusal::of_roof(&error))?;
    let made = match what {
        Paper::Pack => drawings::pack(&solution),
        Paper::Card { mark } => drawings::piece_card(&solution, &mark),
        Paper::List => drawings::members_csv(&solution).map(String::into_bytes),
    };
    made.map_err(|error| unmade(&error))
}

fn unmade(error: &PackError) -> Refusal {
    let (code, remedy) = match error {
        PackError::NoPiece(_) => ("no-such-piece", "Choose a timber of this roof"),
        _ => ("paper-not-made", "Load the app again; if that does not help, export the job and use the command line"),
    };
    Refusal::new(code, format!("The paper can't be made: {error}"), remedy)
}
