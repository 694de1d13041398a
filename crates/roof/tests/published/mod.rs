//! The published and derived check figures of `reference/geometry_checks.json`,
//! and a tally of comparisons with them.

#![allow(dead_code, reason = "each test file uses its own part")]

use serde_json::Value;
use std::collections::BTreeSet;

/// Which test file reads which entries, by the start of their ids; a longer
/// start goes before a shorter one. Those with no file wait for members that
/// the frame does not have yet.
pub const HOMES: [(&str, Option<&str>); 26] = [
    ("row-", Some("corner_rows")),
    ("edge-", Some("edge_rows")),
    ("eaves-", Some("edge_rows")),
    ("birdsmouth-", Some("edge_rows")),
    ("permetre-", Some("edge_rows")),
    ("rule-birdsmouth-third", Some("edge_rows")),
    ("sq-", Some("square_rows")),
    ("nav-", Some("worked_examples")),
    ("met-", Some("worked_examples")),
    ("grif-", Some("worked_examples")),
    ("cyc-", Some("worked_examples")),
    ("rad-", Some("worked_examples")),
    ("hod-", Some("worked_examples")),
    ("oct-", Some("worked_examples")),
    ("backing-", Some("worked_examples")),
    ("drop-", Some("worked_examples")),
    ("ridge-", Some("worked_examples")),
    ("au-", Some("worked_examples")),
    // Fascias, soffits, barge boards and roof boards.
    ("mitre-", Some("board_rows")),
    ("crown-", Some("board_rows")),
    ("box-", Some("board_rows")),
    // Lengthening joints; their strength as a share of a whole timber is advice.
    ("scarf-eff-", None),
    ("scarf-", Some("splice_rows")),
    ("fish-", Some("splice_rows")),
    ("butt-", None),
    // Rules on sizes and bearings, for strength and advice.
    ("rule-", None),
];

/// The test file of an entry.
pub fn home(id: &str) -> Option<&'static str> {
    HOMES.iter().find(|(start, _)| id.starts_with(start)).unwrap_or_else(|| panic!("{id} is in no family")).1
}

/// Slack for figures that are exact in their source, in the unit of the
/// figure: what rounding in `f64` does to roofs of some tens of metres.
const ROUNDING: f64 = 1e-9;

/// One entry of the reference file.
pub struct Entry {
    pub id: String,
    pub source: String,
    /// What the figure is.
    pub kind: String,
    pub inputs: Value,
    pub expected: Value,
    pub tolerance: Value,
    /// The exact figure beside a printed one.
    pub recomputed: Option<f64>,
}

/// All entries.
pub fn entries() -> Vec<Entry> {
    let text = include_str!("../../../../reference/geometry_checks.json");
    let all: Vec<Value> = serde_json::from_str(text).expect("the reference file is JSON");
    all.iter()
        .map(|e| Entry {
            id: e["id"].as_str().expect("every entry has an id").to_owned(),
            source: e["source"].as_str().expect("every entry has a source").to_owned(),
            kind: e["kind"].as_str().unwrap_or_default().to_owned(),
            inputs: e["inputs"].clone(),
            expected: e["expected"].clone(),
            tolerance: e["tolerance"].clone(),
            recomputed: e["recomputed"].as_f64(),
        })
        .collect()
}

/// Entries whose id starts so.
pub fn family(prefix: &str) -> Vec<Entry> {
    entries().into_iter().filter(|e| e.id.starts_with(prefix)).collect()
}

impl Entry {
    pub fn input(&self, key: &str) -> f64 {
        self.inputs[key].as_f64().unwrap_or_else(|| panic!("{} has no input {key}", self.id))
    }

    pub fn want(&self, key: &str) -> f64 {
        self.expected[key].as_f64().unwrap_or_else(|| panic!("{} has no figure {key}", self.id))
    }

    /// The tolerance of a figure: one for the whole entry, or by unit.
    pub fn tolerance_of(&self, unit: &str) -> f64 {
        self.tolerance
            .as_f64()
            .or_else(|| self.tolerance[unit].as_f64())
            .unwrap_or_else(|| panic!("{} has no tolerance in {unit}", self.id))
    }
}

/// Counts comparisons and keeps what misses.
#[derive(Default)]
pub struct Tally {
    compared: usize,
    read: BTreeSet<String>,
    misses: Vec<String>,
}

impl Tally {
    /// Compare what a solution says with what a source says.
    pub fn check(&mut self, entry: &Entry, what: &str, got: f64, want: f64, tolerance: f64) {
        self.compared += 1;
        self.read.insert(entry.id.clone());
        if (got - want).abs() <= tolerance + ROUNDING {
            return;
        }
        let (id, source) = (&entry.id, &entry.source);
        self.misses.push(format!("{id}, {what}: got {got}, want {want} ± {tolerance} ({source})"));
    }

    /// Compare with one figure of an entry that has several; the unit of its
    /// tolerance is `deg` or `mm`.
    pub fn figure(&mut self, entry: &Entry, key: &str, unit: &str, got: f64) {
        self.check(entry, key, got, entry.want(key), entry.tolerance_of(unit));
    }

    /// Compare with the only figure of an entry, and with the exact one beside
    /// it, which has `exact` as its rounding.
    pub fn alone(&mut self, entry: &Entry, exact: f64, got: f64) {
        let want = entry.expected.as_f64().unwrap_or_else(|| panic!("{} has more than one figure", entry.id));
        self.check(entry, "figure", got, want, entry.tolerance_of("mm"));
        if let Some(recomputed) = entry.recomputed {
            self.check(entry, "exact figure", got, recomputed, exact);
        }
    }

    /// A rule that is no figure.
    pub fn holds(&mut self, entry: &Entry, what: &str, holds: bool) {
        self.compared += 1;
        self.read.insert(entry.id.clone());
        if !holds {
            self.misses.push(format!("{}, {what} ({})", entry.id, entry.source));
        }
    }

    /// Nothing missed, as much was compared as should have been, and of the
    /// entries whose ids start so none was passed over.
    pub fn finish(self, starts: &[&str], compared: usize) {
        assert!(self.misses.is_empty(), "{} of {} miss:\n{}", self.misses.len(), self.compared, self.misses.join("\n"));
        let of_these = |e: &Entry| starts.iter().any(|s| e.id.starts_with(s));
        let all: BTreeSet<String> = entries().into_iter().filter(of_these).map(|e| e.id).collect();
        assert_eq!(self.read, all, "entries passed over, or read in the wrong place");
        assert_eq!(self.compared, compared, "another number of figures than expected was compared");
    }
}
