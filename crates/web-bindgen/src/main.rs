//! Writes the JavaScript and the types that go with a module for the browser:
//! `web-bindgen MODULE.wasm FOLDER`.

use std::process::ExitCode;
use wasm_bindgen_cli_support::Bindgen;

fn main() -> ExitCode {
    let mut words = std::env::args_os().skip(1);
    let (Some(module), Some(folder), None) = (words.next(), words.next(), words.next()) else {
        eprintln!("usage: web-bindgen MODULE.wasm FOLDER");
        return ExitCode::from(2);
    };
    let mut generator = Bindgen::new();
    generator.input_path(module).typescript(true).remove_name_section(true).remove_producers_section(true);
    match generator.web(true).and_then(|generator| generator.generate(folder)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("the bindings can't be written: {why:#}");
            ExitCode::FAILURE
        }
    }
}
