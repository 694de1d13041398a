//! Rows of `reference/strength_checks.json`.

use serde_json::Value;
use std::collections::BTreeSet;
use strength::annex::timber::{Duration, ServiceClass, Timber};
use strength::eurocode::members::Design;
use strength::working::{Line, Working};

/// One row.
pub struct Row {
    /// Its name in the file.
    pub id: String,
    inputs: Value,
    expected: Value,
    tolerance: Value,
}

/// The rows of a kind; so many are known to be there.
pub fn rows(kind: &str, count: usize) -> Vec<Row> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/strength_checks.json");
    let text = std::fs::read_to_string(path).expect("the reference figures are there");
    let all: Vec<Value> = serde_json::from_str(&text).expect("they are JSON");
    let found: Vec<Row> = all
        .into_iter()
        .filter(|row| row["kind"] == kind)
        .map(|row| Row {
            id: row["id"].as_str().expect("a row has a name").to_owned(),
            inputs: row["inputs"].clone(),
            expected: row["expected"].clone(),
            tolerance: row["tolerance"].clone(),
        })
        .collect();
    assert_eq!(found.len(), count, "rows of kind {kind}");
    found
}

impl Row {
    /// Whether an input is given.
    pub fn has(&self, name: &str) -> bool {
        !self.inputs[name].is_null()
    }

    /// An input.
    pub fn input(&self, name: &str) -> f64 {
        self.inputs[name].as_f64().unwrap_or_else(|| panic!("{}: no number {name}", self.id))
    }

    /// An input that is a word.
    pub fn word(&self, name: &str) -> &str {
        self.inputs[name].as_str().unwrap_or_else(|| panic!("{}: no word {name}", self.id))
    }

    /// What is expected, as it stands.
    pub fn expected(&self, name: &str) -> &Value {
        &self.expected[name]
    }

    /// Compare figures by the tolerance of the row. Every number that the row expects must be among them.
    pub fn compare(&self, got: &[(&str, f64)]) {
        let numbers = self.expected.as_object().expect("a row expects an object");
        let wanted: BTreeSet<&str> = numbers.iter().filter(|(_, v)| v.is_number()).map(|(k, _)| k.as_str()).collect();
        assert_eq!(wanted, got.iter().map(|(name, _)| *name).collect(), "{}: figures compared", self.id);
        for &(name, got) in got {
            let want = numbers[name].as_f64().expect("it is a number");
            let within = match (self.tolerance["rel"].as_f64(), self.tolerance["abs"].as_f64()) {
                (Some(rel), _) => rel * want.abs(),
                (_, Some(abs)) => abs,
                _ => panic!("{}: no tolerance", self.id),
            };
            assert!((got - want).abs() <= within, "{} {name}: {got} is not {want} ± {within}", self.id);
        }
    }
}

/// The figures of the United Kingdom.
pub fn uk() -> &'static Timber {
    Timber::of("uk").expect("uk is there")
}

/// A design; not shared.
pub fn design(class: &str, service: ServiceClass, duration: Duration) -> Design<'static> {
    let wood = uk().class(class).expect("the row's class is there");
    Design { wood, timber: uk(), service, duration, shared: false }
}

/// The duration of this `k_mod` in service class 1.
pub fn lasting(kmod: f64) -> Duration {
    let of = |d: &Duration| uk().kmod(ServiceClass::One, *d).value == kmod;
    Duration::ALL.into_iter().find(of).expect("a duration has this k_mod")
}

/// The duration of this name.
pub fn named(duration: &str) -> Duration {
    let of = |d: &Duration| d.word().starts_with(duration);
    Duration::ALL.into_iter().find(of).expect("there is such a duration")
}

/// Run a check and keep its lines.
pub fn working<T>(check: impl FnOnce(&mut Working) -> T) -> (T, Vec<Line>) {
    let mut working = Working::on();
    let found = check(&mut working);
    (found, working.lines())
}

/// The value of the line that ends in a symbol or says these words.
pub fn line(lines: &[Line], what: &str) -> f64 {
    let found = lines.iter().find(|l| l.what.ends_with(what));
    found.unwrap_or_else(|| panic!("no line {what} in {lines:#?}")).value
}
