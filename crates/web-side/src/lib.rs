//! The side desk for the browser: [`app::SideDesk`] behind one class. A module
//! of its own, so that the roof is there before what is worked out beside it
//! has been fetched.

use app::{Refusal, SideDesk};
use wasm_bindgen::prelude::wasm_bindgen;

/// One open job.
#[wasm_bindgen]
#[derive(Debug, Default)]
pub struct Side(SideDesk);

#[wasm_bindgen]
impl Side {
    /// An empty desk.
    #[wasm_bindgen(constructor)]
    #[must_use]
    pub fn new() -> Self {
        std::panic::set_hook(Box::new(|panic| wasm_bindgen::throw_str(&panic.to_string())));
        Self::default()
    }

    /// Answers a call: its name, and what it takes as JSON. Gives JSON.
    ///
    /// # Errors
    /// The refusal as JSON.
    pub fn call(&mut self, name: &str, takes: &str) -> Result<String, String> {
        self.0.call(name, takes).map_err(|refusal| told(&refusal))
    }

    /// All that is worked out from the open job as JSON, for the module that makes its papers.
    ///
    /// # Errors
    /// The refusal as JSON.
    #[wasm_bindgen(js_name = forPapers)]
    pub fn for_papers(&mut self) -> Result<String, String> {
        self.0.for_papers().map_err(|refusal| told(&refusal))
    }
}

fn told(refusal: &Refusal) -> String {
    serde_json::to_string(refusal).unwrap_or_else(|_| refusal.what.clone())
}
