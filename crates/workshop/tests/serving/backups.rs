//! Backups while the workshop is open.

use crate::client::{ID, JOB, Shop};
use std::fs;
use tempfile::TempDir;
use workshop::store::{FILE, StoreError, backup};

#[test]
fn a_backup_has_all_and_opens() {
    let shop = Shop::open();
    shop.save(0, JOB, 1).expect(200);
    shop.save(1, &JOB.replace("every = 3", "every = 2"), 2).expect(200);
    let folder = TempDir::new().unwrap();
    let to = folder.path().join(FILE);
    let held = backup(shop.folder.path(), &to).unwrap();
    assert_eq!((held.jobs, held.texts), (2, 3));
    // The workshop goes on; the backup does not.
    shop.save(2, &JOB.replace("every = 3", "every = 4"), 3).expect(200);
    let files: Vec<_> = fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(files, [FILE]);
    let restored = Shop::open_in(folder, None);
    let answer = restored.ask("GET", &format!("/api/1/jobs/{ID}"), None).expect(200).json();
    assert_eq!(
        (answer["revision"].as_i64(), answer["text"].as_str()),
        (Some(2), Some(&*JOB.replace("every = 3", "every = 2")))
    );
    // A phone that saved since brings back what the backup has not: nothing is overwritten unseen.
    assert_eq!(restored.save(3, &JOB.replace("every = 3", "every = 5"), 9).expect(409).json()["revision"], 2);
}

#[test]
fn a_backup_overwrites_nothing_and_needs_a_store() {
    let shop = Shop::open();
    let folder = TempDir::new().unwrap();
    let there = folder.path().join("there");
    fs::write(&there, "mine").unwrap();
    assert!(matches!(backup(shop.folder.path(), &there), Err(StoreError::Backup { .. })));
    assert_eq!(fs::read_to_string(&there).unwrap(), "mine");
    let nowhere = folder.path().join("no/such/folder/x");
    assert!(matches!(backup(shop.folder.path(), &nowhere), Err(StoreError::Backup { .. })));
    assert!(matches!(backup(folder.path(), &folder.path().join("x")), Err(StoreError::NotThere { .. })));
}
