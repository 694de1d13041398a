//! Files that are there already.

use crate::client::{ID, JOB, Shop};
use rusqlite::Connection;
use std::fs;
use tempfile::TempDir;
use workshop::store::{FILE, Store, StoreError};

/// A file as the first format was: without devices.
fn first_format(folder: &TempDir) {
    let shop = Shop::open_in(TempDir::new().unwrap(), None);
    shop.save(0, JOB, 1).expect(200);
    let left = shop.close();
    fs::copy(left.path().join(FILE), folder.path().join(FILE)).unwrap();
    let connection = Connection::open(folder.path().join(FILE)).unwrap();
    connection.execute_batch("DROP TABLE devices; PRAGMA user_version = 1").unwrap();
}

#[test]
fn older_files_are_brought_up_to_date_with_all_they_hold() {
    let folder = TempDir::new().unwrap();
    first_format(&folder);
    let shop = Shop::open_in(folder, None);
    assert_eq!(shop.ask("GET", &format!("/api/1/jobs/{ID}"), None).expect(200).json()["text"], JOB);
    assert_eq!(shop.ask("GET", "/api/1/devices", None).expect(200).json(), serde_json::json!([]));
    // What is there is no first run.
    assert_eq!(shop.ask("GET", "/api/1/jobs", None).json()["jobs"].as_array().unwrap().len(), 2);
}

#[test]
fn a_step_that_fails_leaves_the_file_as_it_was() {
    let folder = TempDir::new().unwrap();
    first_format(&folder);
    let file = folder.path().join(FILE);
    // A table of that name is in the way of the second step.
    Connection::open(&file).unwrap().execute_batch("CREATE TABLE devices (x TEXT)").unwrap();
    assert!(Store::open(folder.path()).is_err());
    let version = |file| -> i64 {
        Connection::open(file).unwrap().query_row("PRAGMA user_version", [], |row| row.get(0)).unwrap()
    };
    assert_eq!(version(&file), 1);
    Connection::open(&file).unwrap().execute_batch("DROP TABLE devices").unwrap();
    drop(Store::open(folder.path()).unwrap());
    assert_eq!(version(&file), 2);
}

#[test]
fn files_that_are_not_ours_or_newer_are_left_alone() {
    let folder = TempDir::new().unwrap();
    let file = folder.path().join(FILE);
    fs::write(&file, "a shopping list, long enough to be mistaken for something else").unwrap();
    assert!(matches!(Store::open(folder.path()), Err(StoreError::Foreign { .. })));
    assert!(fs::read_to_string(&file).unwrap().starts_with("a shopping list"));

    fs::remove_file(&file).unwrap();
    Connection::open(&file).unwrap().execute_batch("CREATE TABLE jobs (mine TEXT)").unwrap();
    let before = fs::read(&file).unwrap();
    assert!(matches!(Store::open(folder.path()), Err(StoreError::Foreign { .. })));
    assert_eq!(fs::read(&file).unwrap(), before);

    fs::remove_file(&file).unwrap();
    drop(Store::open(folder.path()).unwrap());
    Connection::open(&file).unwrap().execute_batch("PRAGMA user_version = 9").unwrap();
    let before = fs::read(&file).unwrap();
    let refused = Store::open(folder.path()).unwrap_err();
    assert!(matches!(refused, StoreError::Newer { found: 9, known: 2, .. }), "{refused}");
    assert_eq!(fs::read(&file).unwrap(), before);
}

#[test]
fn a_damaged_file_is_told_of() {
    let folder = TempDir::new().unwrap();
    drop(Store::open(folder.path()).unwrap());
    let file = folder.path().join(FILE);
    let mut bytes = fs::read(&file).unwrap();
    bytes[100..4000].fill(0x55);
    fs::write(&file, &bytes).unwrap();
    let refused = Store::open(folder.path()).unwrap_err();
    assert!(matches!(refused, StoreError::Damaged(_)), "{refused}");
}

#[test]
fn a_folder_that_cannot_be_written_is_told_of() {
    let folder = TempDir::new().unwrap();
    let file = folder.path().join("file");
    fs::write(&file, "").unwrap();
    let refused = Store::open(&file.join("below")).unwrap_err();
    assert!(refused.to_string().contains("--data"), "{refused}");
}
