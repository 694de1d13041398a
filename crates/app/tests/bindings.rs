//! The TypeScript bindings that the app is built against are those of the types.
#![cfg(feature = "bindings")]

use std::path::Path;

#[test]
fn the_bindings_are_those_of_the_types() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../web/src/core/bindings.ts");
    let made = app::bindings();
    if std::env::var_os("UPDATE").is_some() {
        std::fs::write(&file, &made).expect("the bindings are written");
    }
    let kept = std::fs::read_to_string(&file).unwrap_or_default();
    assert!(kept == made, "web/src/core/bindings.ts is old: run UPDATE=1 cargo test -p app --features bindings");
}
