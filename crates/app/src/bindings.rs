//! The TypeScript declarations of everything that crosses to the app, made
//! from the types themselves.

use std::collections::BTreeMap;
use ts_rs::{Config, TS, TypeVisitor};

/// Declarations by name, so that they come out in the same order every time.
pub(crate) struct Gather {
    config: Config,
    found: BTreeMap<String, String>,
}

impl Gather {
    fn new() -> Self {
        Self { config: Config::default().with_large_int("number"), found: BTreeMap::new() }
    }

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
            self.found.insert(name, format!("{docs}export {}\n", T::decl(&self.config)));
        }
        T::visit_dependencies(self);
        T::visit_generics(self);
    }
}

/// The whole file of bindings.
#[must_use]
pub fn bindings() -> String {
    let mut gather = Gather::new();
    let calls = crate::desk::interface(&mut gather);
    let mut text = String::from(
        "// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.\n\n",
    );
    for declaration in gather.found.values() {
        text.push_str(declaration);
        text.push('\n');
    }
    text.push_str(&calls);
    text
}
