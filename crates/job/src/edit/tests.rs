use super::*;
use crate::keys::{KEYS, Kind, Preset};
use proptest::prelude::*;

const COMMENTED: &str = r#"# A boathouse by the mill pond.
format = 1
title = "Boathouse workshop"   # as on the sheets

[plan]
# measured twice
corners = [
    [0, 0],       # south west
    [8400, 0],
    [8400, 5200], [0, 5200], # north
]

[roof]
pitch = 40 # by the planning consent
# the eaves
eaves = { overhang = 300, tail = "square" }

[roof.walls] # odd walls
B = { gable = true }

# end of file
"#;

/// The lines of the new text that the old one had not, and the other way.
fn changed<'a>(old: &'a str, new: &'a str) -> (Vec<&'a str>, Vec<&'a str>) {
    let only = |a: &'a str, b: &'a str| a.lines().filter(|line| !b.lines().any(|other| other == *line)).collect();
    (only(old, new), only(new, old))
}

#[test]
fn a_changed_value_leaves_all_else_alone() {
    let new = set(COMMENTED, "roof.pitch", "42.5").unwrap();
    let lines = changed(COMMENTED, &new);
    assert_eq!(lines, (vec!["pitch = 40 # by the planning consent"], vec!["pitch = 42.5 # by the planning consent"]));
    assert_eq!(read(&new).unwrap().pitch_deg, 42.5);
}

#[test]
fn values_in_braces_are_changed_and_added() {
    let new = set(COMMENTED, "roof.eaves.tail", "level").unwrap();
    assert!(new.contains("eaves = { overhang = 300, tail = \"level\" }"), "{new}");
    let new = set(COMMENTED, "roof.eaves.depth", "6 1/2\"").unwrap();
    assert!(new.contains("eaves = { overhang = 300, tail = \"square\", depth = '6 1/2\"' }"), "{new}");
    assert_eq!(read(&new).unwrap().eaves.fascia_depth, 6.5 * 25.4);
}

#[test]
fn groups_are_made_where_they_are_missing() {
    let new = set(COMMENTED, "roof.walls.D.pitch", "6:12").unwrap();
    assert!(new.contains("[roof.walls] # odd walls\nB = { gable = true }\nD = { pitch = \"6:12\" }\n"), "{new}");
    let new = set(COMMENTED, "timber.hip.size", "[50, 225]").unwrap();
    assert!(new.contains("[timber]\nhip = { size = [50, 225] }\n"), "{new}");
    assert_eq!(read(&new).unwrap().timber.valley.size.depth, 225.0);
    let dotted = COMMENTED.replace("[roof]\npitch = 40", "[roof]\npitch = 40\nverge.overhang = 50");
    let new = set(&dotted, "roof.verge.inset", "25").unwrap();
    assert_eq!(read(&new).unwrap().verge.inset, 25.0);
    assert!(new.contains("# end of file"), "{new}");
}

#[test]
fn removing_brings_the_default_back() {
    let new = remove(COMMENTED, "roof.eaves.tail").unwrap();
    assert!(new.contains("eaves = { overhang = 300 }"), "{new}");
    let new = remove(COMMENTED, "roof.walls.B.gable").unwrap();
    assert!(!read(&new).unwrap().walls[1].gable);
    assert!(!new.contains("B ="), "{new}");
    assert!(new.contains("[roof.walls] # odd walls"), "{new}");
    assert_eq!(remove(COMMENTED, "revision"), Err(EditError::NotThere { path: "revision".into() }));
}

#[test]
fn words_that_look_like_other_values_stay_texts() {
    let new = set(COMMENTED, "title", "1066").unwrap();
    assert_eq!(read(&new).unwrap().title, "1066");
    let new = set(COMMENTED, "date", "2031-05-14").unwrap();
    assert_eq!(read(&new).unwrap().date.as_deref(), Some("2031-05-14"));
    let new = set(COMMENTED, "roof.pitch", "12:12").unwrap();
    assert!((read(&new).unwrap().pitch_deg - 45.0).abs() < 1e-12);
    let new = set(COMMENTED, "title", "\"In quotes\"").unwrap();
    assert_eq!(read(&new).unwrap().title, "In quotes");
}

#[test]
fn unknown_paths_are_refused_with_the_nearest() {
    let nearest = |path: &str| match set(COMMENTED, path, "1") {
        Err(EditError::UnknownKey { nearest, .. }) => nearest,
        other => panic!("{path}: {other:?}"),
    };
    assert_eq!(nearest("roof.pich").as_deref(), Some("roof.pitch"));
    assert_eq!(nearest("rooof.pitch").as_deref(), Some("roof.pitch"));
    assert_eq!(nearest("centres").as_deref(), Some("timber.rafter.centres"));
    assert_eq!(nearest("roof.pitch.steep").as_deref(), Some("roof.pitch"));
    assert_eq!(nearest("chimney"), None);
    assert!(matches!(set(COMMENTED, "roof", "1"), Err(EditError::Group { .. })));
    assert!(matches!(set(COMMENTED, "roof.walls.b.gable", "true"), Err(EditError::NotAWall { .. })));
}

#[test]
fn an_edit_never_adds_a_fault() {
    let codes = |result: Result<String, EditError>| match result {
        Err(EditError::Faults(faults)) => faults.iter().map(|fault| fault.code).collect::<Vec<_>>(),
        other => panic!("{other:?}"),
    };
    assert_eq!(codes(set(COMMENTED, "roof.pitch", "99")), ["out-of-range"]);
    assert_eq!(codes(set(COMMENTED, "roof.pitch", "steep")), ["bad-pitch"]);
    assert_eq!(codes(set(COMMENTED, "roof.walls.E.gable", "true")), ["unknown-wall"]);
    assert_eq!(codes(set(COMMENTED, "roof.walls.B.pitch", "50")), ["gable-with-pitch"]);
    assert_eq!(codes(remove(COMMENTED, "roof.pitch")), ["missing-key"]);
    // A file with faults can be mended one key at a time.
    let bad = COMMENTED.replace("pitch = 40", "pitch = 99").replace("\"square\"", "\"round\"");
    let better = set(&bad, "roof.pitch", "40").unwrap();
    assert!(read(set(&better, "roof.eaves.tail", "plumb").unwrap()).is_ok());
}

#[test]
fn texts_that_are_no_job_are_refused() {
    assert!(matches!(set("format = ", "format", "1"), Err(EditError::NotAJob(_))));
    let flat = "format = 1\ntitle = \"x\"\nroof = 3\n";
    assert_eq!(set(flat, "roof.pitch", "40"), Err(EditError::NotAGroup { path: "roof".into() }));
}

#[test]
fn every_key_can_be_set_and_taken_out_again() {
    let fixed = COMMENTED.replace("tail = \"square\"", "fascia = \"fixed\"").replace("B = { gable = true }\n", "");
    for key in KEYS {
        let path = key.path.replace('*', "D");
        let value = match key.kind {
            Kind::Loops => "[[[2000, 2000], [2000, 3000], [3000, 3000], [3000, 2000]]]".to_owned(),
            _ => crate::example::preset_toml(key.preset),
        };
        let new = set(&fixed, &path, &value).unwrap_or_else(|error| panic!("{path}: {error}"));
        assert!(new.contains("# end of file"), "{path}");
        if !matches!(key.preset, Preset::Required(_)) {
            let without = remove(&new, &path).unwrap_or_else(|error| panic!("{path}: {error}"));
            assert!(without.contains("# end of file"), "{path}");
        }
    }
}

proptest! {
    #[test]
    fn no_value_breaks_an_edit(value in "\\PC{0,30}", which in 0..KEYS.len()) {
        if let Ok(new) = set(COMMENTED, &KEYS[which].path.replace('*', "C"), &value) {
            prop_assert!(read(&new).is_ok());
        }
    }

    #[test]
    fn no_path_or_text_breaks_an_edit(text in "\\PC{0,60}", path in "[a-zA.*]{0,20}") {
        let _ = set(&text, &path, "1");
        let _ = remove(&text, &path);
        let _ = set(COMMENTED, &path, "1");
    }
}
