use super::*;
use crate::keys::{Key, Kind, Preset, keys};
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
fn many_are_set_and_taken_out_at_once() {
    let cut = Some("{ state = \"cut\", piece = \"3f9a12c4\" }");
    let fixed = Some("{ state = \"fixed\" }");
    let new = set_all(COMMENTED, [("done.Jack-2", cut), ("done.Jack-1", cut)]).unwrap();
    let ticks = "\n[done]\nJack-2 = { state = \"cut\", piece = \"3f9a12c4\" }\nJack-1 = { state = \"cut\", piece = \"3f9a12c4\" }\n";
    assert!(new.contains(ticks), "{new}");
    // What was ticked keeps its line, and what is not there is not missed.
    let newer = set_all(&new, [("done.Jack-1", None), ("done.Jack-2", fixed), ("done.Jack-9", None)]).unwrap();
    assert!(newer.contains("\n[done]\nJack-2 = { state = \"fixed\" }\n"), "{newer}");
    assert_eq!(read(&newer).unwrap().done.len(), 1);
    let refused = set_all(&new, [("done.Jack-3", cut), ("done.Jack-4", Some("{ state = \"sawn\" }"))]);
    assert!(matches!(refused, Err(EditError::Faults(_))));
    assert!(matches!(set_all(&new, [("done.Jack 3", None)]), Err(EditError::NotAName { .. })));
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

/// A job with everything in it, so that any key can be set by itself.
fn full() -> String {
    let walls = "fascia = \"fixed\"";
    let mut text = COMMENTED.replace("tail = \"square\"", walls).replace("B = { gable = true }\n", "");
    text = text.replace(
        "\n# end of file",
        r#"
[roof.eaves.sprocket]
pitch = 20
reach = 500

[roof.upper]
from = 1800
pitch = 25

[timber]
purlin = { size = [75, 200], set = "plumb" }
ceiling_joist = { size = [47, 100] }
binder = { size = [50, 125] }
strut = { size = [75, 75] }
hanger = { size = [38, 75] }
ladder = { size = [47, 75] }
noggin = { size = [47, 75] }
angle_tie = { size = [75, 75] }
collar = { size = [38, 125], height = 1000 }

[openings]
landing = { kind = "chimney", wall = "A", along = 500, up_plan = 900, width = 600, height = 400 }

[dormers.bedroom]
kind = "gable"
wall = "C"
along = 300
back = 400
width = 1200
plate = 1200
pitch = 10

[bearings]
spine = { from = [0, 2500], to = [8400, 2500] }

[loads]
covering = "slate"
snow_zone = 2
altitude = 40
wind = 0.7

[strength]
class = "C24"

[stock]
rafters = { size = [47, 150], lengths = [3000, 3600, 4500] }

[yard]
behind-the-shed = { size = [47, 150], length = 1800 }

[price]
batten = { price = 0.5, per = "m" }

[covering]
of = "slate"

[programme]
start = 2031-05-12
hours = { rafter_each = 0.3 }

[access]
class = 4

[done]
Jack-3 = { state = "fixed" }

# end of file"#,
    );
    // The eaves stand in braces, so the sprockets do too.
    text = text.replace("\n[roof.eaves.sprocket]\npitch = 20\nreach = 500\n", "");
    text.replace(walls, &format!("{walls}, sprocket = {{ pitch = 20, reach = 500 }}"))
}

/// What a key can be set to in the full file: its default or its example.
fn example(key: &Key) -> String {
    match (key.path, key.kind) {
        (_, Kind::Loops) => "[[[2000, 2000], [2000, 3000], [3000, 3000], [3000, 2000]]]".to_owned(),
        ("openings.*.kind", _) => "\"hatch\"".to_owned(),
        _ => crate::example::preset_toml(key.preset),
    }
}

#[test]
fn every_key_can_be_set_and_taken_out_again() {
    let full = full();
    read(&full).unwrap();
    // Keys of a survey stand in place of corners.
    let (head, rest) = full.split_once("corners = [").unwrap();
    let (_, rest) = rest
        .split_once(
            "
]",
        )
        .unwrap();
    let measured = format!(
        "{head}sides = [8400, 5200, 8400, 5200]
diagonals = {{ A-C = 9880 }}{rest}"
    );
    for key in keys() {
        if key.path.starts_with("plan.") && !matches!(key.path, "plan.corners" | "plan.holes") {
            let path = with_names(key.path);
            let new = set(&measured, &path, &example(key)).unwrap_or_else(|error| panic!("{path}: {error}"));
            if path != "plan.sides" {
                remove(&new, &path).unwrap_or_else(|error| panic!("{path}: {error}"));
            }
            continue;
        }
        let path = with_names(key.path).replace(".B.", ".D.");
        // What needs another place to be right in is set below.
        if matches!(path.as_str(), "openings.landing.up" | "roof.walls.D.upper.from" | "roof.walls.D.upper.pitch") {
            continue;
        }
        let new = set(&full, &path, &example(key)).unwrap_or_else(|error| panic!("{path}: {error}"));
        assert!(new.contains("# end of file"), "{path}");
        if !matches!(key.preset, Preset::Required(_) | Preset::Part(_)) && path != "openings.landing.up_plan" {
            let without = remove(&new, &path).unwrap_or_else(|error| panic!("{path}: {error}"));
            assert!(without.contains("# end of file"), "{path}");
        }
    }
}

#[test]
fn what_needs_several_keys_is_set_in_braces() {
    let upper = set(COMMENTED, "roof.walls.D.upper", "{ from = 1500, pitch = 30 }").unwrap();
    assert!(upper.contains("D = { upper = { from = 1500, pitch = 30 } }\n"), "{upper}");
    assert_eq!(read(&upper).unwrap().walls[3].upper.map(|upper| upper.pitch_deg), Some(30.0));
    let collar = set(COMMENTED, "timber.collar", "{ size = [47, 150], height = 1200 }").unwrap();
    assert!(collar.contains("[timber]\ncollar = { size = [47, 150], height = 1200 }\n"), "{collar}");
    let higher = set(&collar, "timber.collar.height", "1.4 m").unwrap();
    assert_eq!(read(&higher).unwrap().timber.parts.collar.map(|collar| collar.height), Some(1400.0));
    let window = "{ kind = \"roof-window\", wall = \"A\", along = 500, up = 1200, width = 780, height = 980 }";
    let window = set(COMMENTED, "openings.stair", window).unwrap();
    assert!(window.contains("[openings]\nstair = { kind"), "{window}");
    assert_eq!(read(&window).unwrap().openings[0].name, "stair");
    assert_eq!(remove(&window, "openings.stair").map(|text| read(&text).unwrap()), Ok(read(COMMENTED).unwrap()));
    // One key by itself would leave a fault.
    assert!(matches!(set(COMMENTED, "timber.collar.height", "1200"), Err(EditError::Faults(_))));
    assert!(matches!(set(COMMENTED, "openings.stair.kind", "hatch"), Err(EditError::Faults(_))));
    assert!(matches!(remove(&window, "openings.stair.up"), Err(EditError::Faults(_))));
}

#[test]
fn groups_under_heads_of_their_own_are_replaced_and_taken_out() {
    let full = full();
    let dormer = "{ kind = \"gable\", wall = \"A\", along = 3000, back = 400, width = 1500, plate = 1300, pitch = 40 }";
    let new = set(&full, "dormers.bedroom", dormer).unwrap();
    assert_eq!(read(&new).unwrap().dormers[0].width, 1500.0);
    assert!(new.contains("[bearings]") && new.contains("# end of file"), "{new}");
    let without = remove(&full, "dormers.bedroom").unwrap();
    assert!(read(&without).unwrap().dormers.is_empty());
    let without = remove(&full, "timber.collar").unwrap();
    assert_eq!(read(&without).unwrap().timber.parts.collar, None);
    // Struts stand on the bearings, and the roof on its plates.
    assert!(matches!(remove(&full, "bearings"), Err(EditError::Faults(_))));
    assert!(matches!(remove(&full, "plan"), Err(EditError::Faults(_))));
}

#[test]
fn names_are_plain_words() {
    let refused = set(COMMENTED, "bearings.back wall.top", "0");
    assert_eq!(refused, Err(EditError::NotAName { name: "back wall".into(), group: "bearings".into() }));
    let group = set(COMMENTED, "openings.stair", "1");
    assert!(matches!(group, Err(EditError::Group { keys, .. }) if keys.starts_with("openings.stair.kind, ")));
    let groups = set(COMMENTED, "openings", "1");
    assert_eq!(groups, Err(EditError::Group { path: "openings".into(), keys: "openings.landing".into() }));
}

proptest! {
    #[test]
    fn no_value_breaks_an_edit(value in "\\PC{0,30}", which in any::<prop::sample::Index>()) {
        let all: Vec<&Key> = keys().collect();
        if let Ok(new) = set(COMMENTED, &which.get(&all).path.replace('*', "C"), &value) {
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
