//! The papers of a job for the browser: the pack and single cards as PDF, the
//! list of timbers for a spreadsheet. A module of its own, so that the PDF
//! writer and its fonts are fetched only when a paper is wanted. The roof comes
//! solved from the side desk, so that the solver is not fetched again.

use app::Refusal;
use document::Document;
use drawings::PackError;
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
    /// The order as a spreadsheet file.
    Spreadsheet,
    /// Labels for the timbers.
    Labels,
}

/// Makes a paper of a solution, as `Side.forPapers` gives it; which paper, as JSON.
///
/// # Errors
/// The refusal as JSON.
#[wasm_bindgen]
pub fn paper(solution: &str, what: &str) -> Result<Vec<u8>, String> {
    std::panic::set_hook(Box::new(|panic| wasm_bindgen::throw_str(&panic.to_string())));
    make(solution, what).map_err(|refusal| serde_json::to_string(&refusal).unwrap_or(refusal.what))
}

fn make(solution: &str, what: &str) -> Result<Vec<u8>, Refusal> {
    let not_understood = |error: serde_json::Error| Refusal::not_understood("paper", &error);
    let what: Paper = serde_json::from_str(what).map_err(not_understood)?;
    let document: Document = serde_json::from_str(solution).map_err(not_understood)?;
    let roof = &document.solution;
    let order = || {
        document.order.as_ref().ok_or_else(|| {
            Refusal::new("no-order", "There is no order for this job", "See under Order what is missing")
        })
    };
    let made = match what {
        Paper::Pack => drawings::pack_with(roof, &document.papers()),
        Paper::Card { mark } => drawings::piece_card(roof, &mark),
        Paper::List => drawings::members_csv(roof).map(String::into_bytes),
        Paper::Spreadsheet => drawings::order_xlsx(roof, order()?),
        Paper::Labels => drawings::labels_pdf(roof, order()?),
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
