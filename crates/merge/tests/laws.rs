//! What holds of every merge.

use merge::{Merged, merge};
use proptest::prelude::*;
use toml_edit::{DocumentMut, Item, TableLike};

const HOUSE: &str = include_str!("../../../examples/whole-house.toml");

/// Keys with values that are right by themselves and together.
const EDITS: &[(&str, &[&str])] = &[
    ("title", &["House on the hill", "Plot 4"]),
    ("date", &["2026-05-01", "2026-05-02"]),
    (
        "plan.corners",
        &["[[0, 0], [10810, 0], [10800, 7200], [0, 7200]]", "[[0, 0], [10800, 0], [10800, 7210], [0, 7200]]"],
    ),
    ("roof.pitch", &["41", "42.5", "\"9 in 12\""]),
    ("roof.eaves.overhang", &["300", "\"12 in\""]),
    ("roof.eaves.depth", &["140", "160"]),
    ("roof.verge.overhang", &["250", "275"]),
    ("roof.walls.D.gable", &["true"]),
    ("timber.rafter.size", &["[50, 150]", "[47, 175]"]),
    ("timber.rafter.centres", &["450", "600"]),
    ("timber.rafter.birdsmouth", &["35", "40"]),
    ("timber.hip.size", &["[50, 250]"]),
    ("timber.ridge.size", &["[38, 225]", "[32, 250]"]),
    ("timber.plate.size", &["[50, 100]"]),
    ("timber.joint.longest", &["4800", "6000"]),
    ("timber.joint.bolted", &["false"]),
    ("timber.purlin.set", &["plumb"]),
    ("timber.strut.centres", &["1500", "1600"]),
    ("timber.collar", &["{ size = [47, 150], height = 1600, every = 2 }"]),
    ("timber.collar.height", &["1700", "1800"]),
    ("timber.noggin.rows", &["2"]),
    ("timber.ladder.centres", &["450"]),
    ("openings.bedroom.along", &["2500", "2700"]),
    ("openings.landing.width", &["660"]),
    (
        "openings.porch",
        &["{ kind = \"roof-window\", wall = \"C\", along = 900, up = 2700, width = 550, height = 780 }"],
    ),
    ("bearings.passage-south.to", &["[10700, 2700]"]),
    ("bearings.extra", &["{ from = [0, 3600], to = [10800, 3600] }", "{ from = [0, 3500], to = [10800, 3500] }"]),
];

/// Keys that can be taken out.
const REMOVALS: &[&str] = &[
    "roof.verge.overhang",
    "roof.eaves.depth",
    "timber.collar.every",
    "timber.noggin",
    "timber.hanger",
    "openings.stack",
    "openings.landing",
    "timber.barge",
    "timber.ladder.centres",
    "timber.joint.wood",
];

fn edited() -> impl Strategy<Value = String> {
    let edit = prop_oneof![
        4 => (any::<prop::sample::Index>(), any::<prop::sample::Index>()).prop_map(|(which, value)| {
            let (path, values) = which.get(EDITS);
            (*path, Some(*value.get(values)))
        }),
        1 => any::<prop::sample::Index>().prop_map(|which| (*which.get(REMOVALS), None)),
    ];
    proptest::collection::vec(edit, 0..6).prop_map(|edits| {
        edits.into_iter().fold(HOUSE.to_owned(), |text, (path, value)| {
            let edited = match value {
                Some(value) => job::edit::set(&text, path, value),
                None => job::edit::remove(&text, path),
            };
            edited.unwrap_or(text)
        })
    })
}

/// Every key with its value, layout apart.
fn figures(text: &str) -> Vec<(String, String)> {
    fn gather(path: &str, table: &dyn TableLike, list: &mut Vec<(String, String)>) {
        for (key, item) in table.iter() {
            let path = format!("{path}.{key}");
            match item {
                Item::Value(value) if !value.is_inline_table() => {
                    let mut value = value.clone();
                    value.decor_mut().clear();
                    let lines = value.to_string();
                    let bare = lines.lines().filter_map(|line| line.split('#').next());
                    list.push((path, bare.collect::<String>().replace(' ', "").replace(",]", "]")));
                }
                _ => gather(&path, item.as_table_like().expect("a group"), list),
            }
        }
    }
    let document: DocumentMut = text.parse().expect("TOML");
    let mut list = Vec::new();
    gather("", document.as_table(), &mut list);
    list.sort();
    list
}

fn comments(text: &str) -> Vec<&str> {
    let mut comments: Vec<&str> = text.lines().filter_map(|line| line.split_once('#').map(|(_, text)| text)).collect();
    comments.sort_unstable();
    comments
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn one_change_is_taken_as_it_is(other in edited()) {
        for (ours, theirs) in [(HOUSE, other.as_str()), (&other, HOUSE), (&other, &other)] {
            prop_assert_eq!(merge(HOUSE, ours, theirs), Ok(Merged::Whole(other.clone())));
        }
    }

    #[test]
    fn nothing_that_either_changed_is_lost(ours in edited(), theirs in edited()) {
        let [base_has, ours_has, theirs_has] = [HOUSE, &ours, &theirs].map(figures);
        match merge(HOUSE, &ours, &theirs).expect("all can be read") {
            Merged::Whole(text) => {
                let has = figures(&text);
                for changed in ours_has.iter().chain(&theirs_has).filter(|figure| !base_has.contains(figure)) {
                    // Corners are merged one by one, so a list may hold some of each.
                    prop_assert!(changed.0 == ".plan.corners" || has.contains(changed), "{changed:?} is lost:\n{text}");
                }
                for kept in base_has.iter().filter(|figure| ours_has.contains(figure) && theirs_has.contains(figure)) {
                    prop_assert!(has.contains(kept), "{kept:?} is lost:\n{text}");
                }
                prop_assert!(job::read(&text).is_ok());
                // Comments stay unless what they speak of was taken out.
                let [base_says, ours_say, theirs_say, says] = [HOUSE, &ours, &theirs, &text].map(comments);
                for comment in base_says.iter().filter(|text| ours_say.contains(text) && theirs_say.contains(text)) {
                    prop_assert!(says.contains(comment), "# {comment} is lost:\n{text}");
                }
            }
            Merged::Apart(apart) => {
                prop_assert!(!apart.clashes.is_empty());
                for clash in apart.clashes {
                    let wrong_together = clash.words.starts_with("Wrong");
                    prop_assert!(wrong_together || (clash.ours != clash.theirs && clash.ours != clash.base && clash.theirs != clash.base), "{clash:?}");
                }
            }
        }
    }

    #[test]
    fn it_does_not_matter_who_saves_first(ours in edited(), theirs in edited()) {
        match (merge(HOUSE, &ours, &theirs), merge(HOUSE, &theirs, &ours)) {
            (Ok(Merged::Whole(one)), Ok(Merged::Whole(other))) => prop_assert_eq!(figures(&one), figures(&other)),
            (Ok(Merged::Apart(one)), Ok(Merged::Apart(other))) => {
                let paths = |apart: &merge::Apart| {
                    let mut paths: Vec<String> = apart.clashes.iter().map(|clash| clash.path.clone()).collect();
                    paths.sort();
                    paths
                };
                prop_assert_eq!(paths(&one), paths(&other));
            }
            (one, other) => prop_assert!(false, "{one:?}\n{other:?}"),
        }
    }

    #[test]
    fn no_text_breaks_it(base in "[a-c.\\[\\]{}=\"1,# \n]{0,40}", ours in "[a-c.\\[\\]{}=\"1,# \n]{0,40}", theirs in "\\PC{0,40}") {
        let _ = merge(&base, &ours, &theirs);
        let _ = merge(&base, &ours, &base.replace('1', "2"));
        let _ = merge(HOUSE, &ours, &theirs);
    }

    #[test]
    fn no_keys_break_it(texts in proptest::array::uniform3(some_toml())) {
        let [base, ours, theirs] = &texts;
        if let Ok(Merged::Whole(text)) = merge(base, ours, theirs) {
            prop_assert!(text.parse::<DocumentMut>().is_ok(), "{text}");
        }
    }
}

/// TOML whose keys get in each other's way.
fn some_toml() -> impl Strategy<Value = String> {
    let line = prop_oneof![
        Just("a = 1\n"),
        Just("a = 2 # two\n"),
        Just("a.b = 1\n"),
        Just("a = { b = 1, c = 2 }\n"),
        Just("a = { b = { d = 1 } }\n"),
        Just("[a]\nc = 3\n"),
        Just("[a.b]\nd = 2\n"),
        Just("[[a]]\nd = 2\n"),
        Just("b = [1, 2]\n"),
        Just("b = [1, 3]\n"),
        Just("[plan]\ncorners = [[0, 0], [1, 1]]\n"),
        Just("[plan]\ncorners = [[0, 0], 3]\n"),
        Just("plan = { corners = [] }\n"),
        Just("[plan]\nholes = [[[0, 0], 1]]\n"),
        Just("[plan]\nholes = [[[0, 1], 2]]\n"),
        Just("done = { A = 1 }\n"),
        Just("[done.A]\n"),
    ];
    proptest::collection::vec(line, 0..5).prop_map(|lines| {
        lines.into_iter().fold(String::new(), |text, line| {
            let longer = format!("{text}{line}");
            if longer.parse::<DocumentMut>().is_ok() { longer } else { text }
        })
    })
}
