//! What the tests of the desk share.
#![allow(dead_code, reason = "each test file uses some of it")]

use app::{Buffers, Desk, Refusal, SideDesk};
use serde_json::{Value, json};

/// Every example with its text.
pub fn examples() -> Vec<(String, String)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples");
    let mut out: Vec<(String, String)> = std::fs::read_dir(folder)
        .expect("the examples are there")
        .map(|file| file.expect("a file").path())
        .filter(|path| path.extension().is_some_and(|end| end == "toml"))
        .map(|path| {
            let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
            (name, std::fs::read_to_string(&path).expect("a text"))
        })
        .collect();
    out.sort();
    assert!(out.len() > 10);
    out
}

/// The text of an example.
pub fn example(name: &str) -> String {
    examples().into_iter().find(|(known, _)| known == name).expect("an example of that name").1
}

/// What is asked: a desk, or one at its side.
pub trait Asked {
    /// A call, its takes and its reply in JSON.
    fn call(&mut self, name: &str, takes: &str) -> Result<String, Refusal>;
}

impl Asked for Desk {
    fn call(&mut self, name: &str, takes: &str) -> Result<String, Refusal> {
        Self::call(self, name, takes)
    }
}

impl Asked for SideDesk {
    fn call(&mut self, name: &str, takes: &str) -> Result<String, Refusal> {
        Self::call(self, name, takes)
    }
}

/// A call in JSON.
pub fn ask(desk: &mut impl Asked, name: &str, takes: Value) -> Result<Value, Refusal> {
    desk.call(name, &takes.to_string()).map(|text| serde_json::from_str(&text).expect("a reply in JSON"))
}

/// A desk with a job open, how it stands, and its scene.
pub fn desk_with(text: &str) -> (Desk, Value, Option<Buffers>) {
    let mut desk = Desk::default();
    let standing = ask(&mut desk, "open", json!({ "text": text })).expect("it opens");
    let scene = desk.take_scene();
    (desk, standing, scene)
}

/// A side desk with a job open, and how it stands.
pub fn side_desk_with(text: &str) -> (SideDesk, Value) {
    let mut side = SideDesk::default();
    let standing = ask(&mut side, "open", json!({ "text": text })).expect("it opens");
    (side, standing)
}

/// How the open job stands.
pub fn standing(desk: &mut impl Asked) -> Value {
    ask(desk, "settle", json!({ "lengths": "as-job", "words": "uk" })).expect("it stands")
}

/// An edit that is made.
pub fn edit(desk: &mut impl Asked, edit: Value) -> Value {
    ask(desk, "edit", edit.clone()).unwrap_or_else(|refusal| panic!("{edit}: {refusal:?}"))
}
