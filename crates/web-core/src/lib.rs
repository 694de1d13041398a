//! The core for the browser: [`app::Desk`] behind one class, with the plain
//! numbers of the 3-D view beside it.

use app::{Buffers, Desk};
use wasm_bindgen::prelude::wasm_bindgen;

/// One open job.
#[wasm_bindgen]
#[derive(Debug, Default)]
pub struct Core(Desk);

#[wasm_bindgen]
impl Core {
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
        self.0.call(name, takes).map_err(|refusal| serde_json::to_string(&refusal).unwrap_or(refusal.what))
    }

    /// The points of the scene that the last call made; once, and nothing when it made none.
    #[wasm_bindgen(js_name = takeScene)]
    pub fn take_scene(&mut self) -> Option<Points> {
        self.0.take_scene().map(Points)
    }
}

/// The points of a scene: three numbers each, mm, x east, y north, z up.
#[wasm_bindgen]
#[derive(Debug)]
pub struct Points(Buffers);

#[wasm_bindgen]
impl Points {
    /// Triangles of all timbers; once.
    #[wasm_bindgen(js_name = takeTimbers)]
    pub fn take_timbers(&mut self) -> Vec<f32> {
        core::mem::take(&mut self.0.timbers)
    }

    /// Arrises of all timbers, two points each; once.
    #[wasm_bindgen(js_name = takeArrises)]
    pub fn take_arrises(&mut self) -> Vec<f32> {
        core::mem::take(&mut self.0.arrises)
    }

    /// Triangles of the slopes; once.
    #[wasm_bindgen(js_name = takeSlopes)]
    pub fn take_slopes(&mut self) -> Vec<f32> {
        core::mem::take(&mut self.0.slopes)
    }
}
