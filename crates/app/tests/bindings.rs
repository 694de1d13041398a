//! The TypeScript bindings that the app is built against are those of the types.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

#[test]
fn the_bindings_are_those_of_the_types() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../web/src/core/bindings");
    let made: BTreeMap<String, String> = app::bindings().into_iter().collect();
    if std::env::var_os("UPDATE").is_some() {
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).expect("there is a folder for the bindings");
        for (name, text) in &made {
            fs::write(folder.join(name), text).expect("the bindings are written");
        }
    }
    let kept: BTreeMap<String, String> = fs::read_dir(&folder)
        .expect("the bindings are there")
        .map(|entry| {
            let path = entry.expect("the folder can be read").path();
            let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            (name, fs::read_to_string(path).expect("the bindings can be read"))
        })
        .collect();
    assert!(kept == made, "web/src/core/bindings is old: run UPDATE=1 cargo test -p app --features bindings");
}
