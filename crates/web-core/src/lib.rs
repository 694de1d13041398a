//! The core for the browser: [`app::Desk`] behind one class, with the plain
//! buffers of the 3-D view beside it.

use wasm_bindgen::prelude::wasm_bindgen;

/// One open job.
#[wasm_bindgen]
#[derive(Debug, Default)]
pub struct Core(app::Desk);

#[wasm_bindgen]
impl Core {
    /// An empty desk.
    #[wasm_bindgen(constructor)]
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Answers a call: its name, and what it takes as JSON. Gives JSON.
    ///
    /// # Errors
    /// The refusal as JSON.
    pub fn call(&mut self, name: &str, takes: &str) -> Result<String, String> {
        self.0.call(name, takes).map_err(|refusal| serde_json::to_string(&refusal).unwrap_or(refusal.what))
    }
}
