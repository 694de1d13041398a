//! Merges of jobs as carpenters make them.

use merge::{Clash, MergeError, Merged, Side, merge, settle};
use std::collections::BTreeMap;

const HOUSE: &str = include_str!("../../../examples/whole-house.toml");
const BOATHOUSE: &str = include_str!("../../../examples/boathouse.toml");

fn set(text: &str, path: &str, value: &str) -> String {
    job::edit::set(text, path, value).unwrap_or_else(|error| panic!("{path}: {error}"))
}

#[track_caller]
fn whole(base: &str, ours: &str, theirs: &str) -> String {
    match merge(base, ours, theirs) {
        Ok(Merged::Whole(text)) => text,
        other => panic!("{other:?}"),
    }
}

#[track_caller]
fn clashes(base: &str, ours: &str, theirs: &str) -> Vec<Clash> {
    match merge(base, ours, theirs) {
        Ok(Merged::Apart(apart)) => apart.clashes,
        other => panic!("{other:?}"),
    }
}

#[test]
fn figures_on_different_lines_go_together_with_their_comments() {
    let ours = set(HOUSE, "roof.pitch", "42.5");
    let theirs = set(HOUSE, "timber.collar.every", "2").replace("# The eaves.", "# The eaves, as agreed.");
    let merged = whole(HOUSE, &ours, &theirs);
    assert_eq!(merged, ours.replace("every = 3", "every = 2").replace("# The eaves.", "# The eaves, as agreed."));
}

#[test]
fn two_keys_of_one_line_go_together() {
    let line = "rafter = { size = [47, 150], centres = 400 }";
    assert!(HOUSE.contains(line));
    let ours = HOUSE.replace(line, "rafter = { size = [47, 175], centres = 400 } # deeper");
    let theirs = HOUSE.replace(line, "rafter = { size = [47, 150], centres = 450 }");
    let merged = whole(HOUSE, &ours, &theirs);
    assert_eq!(merged, ours.replace("centres = 400 } # deeper", "centres = 450 } # deeper"));
    assert_eq!(job::read(whole(HOUSE, &theirs, &ours)), job::read(&merged));
}

#[test]
fn corners_moved_by_two_people_go_together_while_their_number_stays() {
    let base = set(HOUSE, "plan.corners", "[[0, 0], [10800, 0], [10800, 7200], [0, 7200]]");
    let ours = base.replace("[10800, 0]", "[10810, 0]");
    let theirs = base.replace("[10800, 7200]", "[10800, 7190]");
    assert_eq!(whole(&base, &ours, &theirs), ours.replace("[10800, 7200]", "[10800, 7190]"));

    let theirs = base.replace("[10800, 0]", "[10820, 0]");
    let found = clashes(&base, &ours, &theirs);
    assert_eq!(found.len(), 1);
    assert_eq!((found[0].path.as_str(), found[0].words.as_str()), ("plan.corners[1]", "Corner B"));
    assert_eq!(found[0].ours.as_deref(), Some("[10810, 0]"));

    let theirs = base.replace("[10800, 7200]", "[10800, 3600], [10600, 7200]");
    let found = clashes(&base, &ours, &theirs);
    assert_eq!(found.iter().map(|clash| clash.path.as_str()).collect::<Vec<_>>(), ["plan.corners"]);
}

#[test]
fn one_figure_set_to_two_values_is_shown_side_by_side() {
    let (ours, theirs) = (set(HOUSE, "roof.pitch", "42.5"), set(HOUSE, "roof.pitch", "45"));
    let (ours, theirs) = (set(&ours, "timber.hip.size", "[50, 225]"), set(&theirs, "timber.strut.centres", "1500"));
    let Ok(Merged::Apart(apart)) = merge(HOUSE, &ours, &theirs) else { panic!("the pitch clashes") };
    let expected = Clash {
        path: "roof.pitch".into(),
        words: "Roof, pitch".into(),
        base: Some("40".into()),
        ours: Some("42.5".into()),
        theirs: Some("45".into()),
    };
    assert_eq!(apart.clashes, [expected]);
    // The rest is merged, and the pitch is as it is kept.
    let rest = apart.text.unwrap();
    let job = job::read(&rest).unwrap();
    assert_eq!((job.walls[0].pitch_deg, job.timber.hip.size.thickness), (45.0, 50.0));
    assert_eq!(job, job::read(set(&theirs, "timber.hip.size", "[50, 225]")).unwrap());
    // Until somebody chooses.
    let choice = BTreeMap::from([("roof.pitch".to_owned(), Side::Ours)]);
    let chosen = settle(HOUSE, &ours, &theirs, &choice).unwrap().unwrap();
    assert_eq!(job::read(chosen).unwrap(), job::read(set(&ours, "timber.strut.centres", "1500")).unwrap());
}

#[test]
fn the_same_value_written_in_two_ways_is_no_clash() {
    let ours = HOUSE.replace("pitch = 40", "pitch = 45");
    let theirs = HOUSE.replace("pitch = 40", "pitch = 45.0");
    assert_eq!(whole(HOUSE, &ours, &theirs), ours);
}

#[test]
fn new_things_at_one_place_of_the_file_go_together() {
    let window = |along: u32| {
        format!("{{ kind = \"roof-window\", wall = \"C\", along = {along}, up = 2700, width = 780, height = 980 }}")
    };
    let ours = set(HOUSE, "openings.study", &window(1200));
    let theirs = set(HOUSE, "openings.bath", &window(8500));
    let merged = whole(HOUSE, &ours, &theirs);
    let names: Vec<String> = job::read(&merged).unwrap().openings.into_iter().map(|opening| opening.name).collect();
    assert!(names.contains(&"study".to_owned()) && names.contains(&"bath".to_owned()), "{merged}");
    let named = "[openings.study]\nkind = \"roof-window\" # on the north side\nwall = \"C\"\nalong = 1200\nup = 2700\nwidth = 780\nheight = 980\n";
    let ours = format!("{HOUSE}\n# Asked for on Monday.\n{named}");
    let merged = whole(HOUSE, &ours, &format!("{HOUSE}\n{}", named.replace("study", "bath").replace("1200", "8500")));
    assert!(merged.contains("# Asked for on Monday.") && merged.contains("# on the north side"), "{merged}");
    assert_eq!(job::read(&merged).unwrap().openings.len(), job::read(HOUSE).unwrap().openings.len() + 2);
}

#[test]
fn taking_out_and_changing_one_thing_is_a_clash() {
    let ours = job::edit::remove(HOUSE, "openings.landing").unwrap();
    let theirs = set(HOUSE, "openings.landing.width", "660");
    let found = clashes(HOUSE, &ours, &theirs);
    assert_eq!(found[0].words, "Opening landing, width");
    assert_eq!((found[0].ours.as_deref(), found[0].theirs.as_deref()), (None, Some("660")));
    // Taken out here and changed elsewhere is none.
    let theirs = set(HOUSE, "openings.bedroom.width", "660");
    let merged = job::read(whole(HOUSE, &ours, &theirs)).unwrap();
    assert!(merged.openings.iter().all(|opening| opening.name != "landing"));
}

#[test]
fn what_is_right_alone_and_wrong_together_is_a_clash() {
    let window = |along: u32| {
        format!("{{ kind = \"roof-window\", wall = \"C\", along = {along}, up = 2700, width = 780, height = 980 }}")
    };
    let ours = set(HOUSE, "openings.study", &window(1200));
    let theirs = set(HOUSE, "openings.bath", &window(1500));
    let found = clashes(HOUSE, &ours, &theirs);
    assert!(!found.is_empty() && found.iter().all(|clash| clash.words.starts_with("Wrong when both are taken: ")));
    assert!(found[0].path.starts_with("openings."), "{found:?}");
}

#[test]
fn a_half_finished_job_is_merged_as_it_is() {
    let base = HOUSE.replace("pitch = 40\n", "pitch = 400\n");
    assert!(job::read(&base).is_err());
    let (ours, theirs) = (base.replace("every = 3", "every = 2"), base.replace("1800", "1700"));
    assert_eq!(whole(&base, &ours, &theirs), ours.replace("1800", "1700"));
}

#[test]
fn ticks_of_one_timber_keep_the_further_one() {
    let with = |ticks: &str| format!("{HOUSE}\n[done]\n{ticks}");
    let base = with("A1 = { state = \"cut\", piece = \"1\" }\n");
    let ours = with("A1 = { state = \"fixed\", piece = \"1\" }\nA2 = { state = \"cut\", piece = \"1\" }\n");
    let theirs = with("A2 = { state = \"fixed\", piece = \"2\" }\nA3 = { state = \"cut\", piece = \"1\" }\n");
    for (one, other) in [(&ours, &theirs), (&theirs, &ours)] {
        let merged = whole(&base, one, other);
        let ticks = merged.split_once("[done]\n").unwrap().1;
        let mut ticks: Vec<&str> = ticks.lines().collect();
        ticks.sort_unstable();
        let expected = [
            "A1 = { state = \"fixed\", piece = \"1\" }",
            "A2 = { state = \"fixed\", piece = \"2\" }",
            "A3 = { state = \"cut\", piece = \"1\" }",
        ];
        assert_eq!(ticks, expected);
    }
}

#[test]
fn two_jobs_with_nothing_in_common_clash_figure_by_figure() {
    let found = clashes("", HOUSE, BOATHOUSE);
    assert!(found.iter().any(|clash| clash.path == "title" && clash.base.is_none()));
    assert!(found.iter().all(|clash| clash.path != "format"));
}

#[test]
fn what_is_no_toml_is_refused_and_says_which() {
    let refused = merge(HOUSE, "a = ", BOATHOUSE);
    assert!(matches!(refused, Err(MergeError::Unreadable { side: Side::Ours, .. })));
    let refused = merge(HOUSE, BOATHOUSE, "[").unwrap_err();
    assert!(refused.to_string().starts_with("the version that is kept can't be read"), "{refused}");
    // What they grew from is not needed, and two that are the same need no reading.
    assert!(matches!(merge("[", HOUSE, BOATHOUSE), Ok(Merged::Apart(_))));
    assert_eq!(merge("x", "[", "["), Ok(Merged::Whole("[".into())));
}
