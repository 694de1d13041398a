//! The TypeScript declarations of everything that crosses to the app, made
//! from the types themselves: a file for each room of types, and one with the
//! calls that brings them together.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use ts_rs::{Config, TS, TypeVisitor};

/// What stands at the top of every file.
const HEAD: &str =
    "// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.\n";

/// A type and what it is made of.
struct Declared {
    room: String,
    text: String,
    uses: BTreeSet<String>,
}

/// Declarations by name, so that they come out in the same order every time.
pub(crate) struct Gather {
    config: Config,
    found: BTreeMap<String, Declared>,
}

impl Gather {
    /// Takes in a type and all it is made of, and gives its name.
    pub(crate) fn name_of<T: TS + 'static + ?Sized>(&mut self) -> String {
        self.visit::<T>();
        T::name(&self.config)
    }
}

impl TypeVisitor for Gather {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        // What is made in to the language has no declaration of its own.
        if T::output_path().is_some() {
            let name = T::ident(&self.config);
            if self.found.contains_key(&name) {
                return;
            }
            let docs = T::docs().unwrap_or_default();
            let declared = Declared {
                room: room_of(std::any::type_name::<T>()),
                text: laid_out(&format!("{docs}export {}", T::decl(&self.config))),
                uses: T::dependencies(&self.config).into_iter().map(|other| other.ts_name).collect(),
            };
            self.found.insert(name, declared);
        }
        T::visit_dependencies(self);
        T::visit_generics(self);
    }
}

/// The room of a type by its path: `bench` for `app::views::bench::Card`, `picture` for `picture::Ink`.
fn room_of(path: &str) -> String {
    let mut rooms = path.split("::");
    let first = rooms.next().unwrap_or_default();
    if first != "app" {
        return first.to_owned();
    }
    let rooms: Vec<&str> = rooms.collect();
    rooms.iter().rev().nth(1).map_or(first, |room| *room).to_owned()
}

/// A declaration with what is said of a thing in one line, and no blanks at line ends.
fn laid_out(text: &str) -> String {
    let short = text.replace("/**\n * ", "/** ");
    let mut out = String::new();
    let mut said = false;
    for line in short.lines() {
        let line = line.trim_end();
        match line {
            // The end of what is said joins its only line.
            " */" if said => {
                out.truncate(out.trim_end().len());
                out.push_str(" */\n");
            }
            _ => writeln!(out, "{line}").unwrap_or_default(),
        }
        said = line.starts_with("/** ");
    }
    out
}

/// The files of the bindings: their names and texts. `index.ts`, with the calls, is the last.
#[must_use]
pub fn bindings() -> Vec<(String, String)> {
    let mut gather = Gather { config: Config::default().with_large_int("number"), found: BTreeMap::new() };
    let calls = format!("{}\n{}", crate::desk::interface(&mut gather), crate::side_desk::interface(&mut gather));
    let found = gather.found;
    let rooms: BTreeSet<&str> = found.values().map(|declared| declared.room.as_str()).collect();
    let imports = |used: &BTreeSet<&str>, room: &str| {
        let mut text = String::new();
        for other in rooms.iter().filter(|other| **other != room) {
            let names: Vec<&str> =
                used.iter().copied().filter(|name| found.get(*name).is_some_and(|of| of.room == **other)).collect();
            if !names.is_empty() {
                let _ = writeln!(text, "import type {{ {} }} from \"./{other}\";", names.join(", "));
            }
        }
        text
    };
    let mut files = Vec::new();
    for room in &rooms {
        let inside: Vec<&Declared> = found.values().filter(|declared| declared.room == **room).collect();
        let used: BTreeSet<&str> = inside.iter().flat_map(|declared| &declared.uses).map(String::as_str).collect();
        let mut text = format!("{HEAD}{}", imports(&used, room));
        for declared in inside {
            let _ = write!(text, "\n{}", declared.text);
        }
        files.push((format!("{room}.ts"), text));
    }
    let words: BTreeSet<&str> = calls.split(|letter: char| !letter.is_alphanumeric()).collect();
    let mut text = format!("{HEAD}{}\n", imports(&words, "index"));
    for room in &rooms {
        let _ = writeln!(text, "export type * from \"./{room}\";");
    }
    let _ = write!(text, "\n{calls}");
    files.push(("index.ts".to_owned(), text));
    files
}
