//! The published schema is the one that the types make. `UPDATE=1` writes it.

use std::path::Path;

#[test]
fn published_schema_is_up_to_date() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../schema/job.schema.json");
    let made = format!("{}\n", serde_json::to_string_pretty(&job::schema()).unwrap());
    if std::env::var_os("UPDATE").is_some_and(|value| value == "1") {
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, &made).unwrap();
    }
    let published = std::fs::read_to_string(&path).unwrap_or_default();
    let published: serde_json::Value = serde_json::from_str(&published).unwrap_or_default();
    assert!(published == job::schema(), "schema/job.schema.json is stale: run the tests of this crate with UPDATE=1");
}
