//! The figures of a job: every key with its value, by its path.

use std::collections::BTreeMap;
use std::fmt;
use toml_edit::{Array, DocumentMut, Item, TableLike, Value};

/// Whole numbers up to here are the same written as integer or as decimal.
const WHOLE_UP_TO: f64 = 1e15;

/// The group of ticks, in which every timber is one figure.
const TICKS: &str = "done";

/// One step of a path.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Step {
    /// Into a group.
    Key(String),
    /// Into a list.
    At(usize),
}

/// Where a figure stands.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Path(pub(crate) Vec<Step>);

impl Path {
    /// The path with one step more.
    pub(crate) fn with(&self, step: Step) -> Self {
        let mut longer = self.clone();
        longer.0.push(step);
        longer
    }

    /// The words of the path up to the first list.
    pub(crate) fn keys(&self) -> impl Iterator<Item = &str> {
        self.0.iter().map_while(|step| match step {
            Step::Key(key) => Some(key.as_str()),
            Step::At(_) => None,
        })
    }

    /// Whether this is the tick of a timber.
    pub(crate) fn is_tick(&self) -> bool {
        self.0.len() == 2 && self.keys().next() == Some(TICKS)
    }
}

impl fmt::Display for Path {
    /// As in the job file, with places in lists in brackets, from 0: `plan.corners[2]`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, step) in self.0.iter().enumerate() {
            match step {
                Step::Key(key) if n == 0 => f.write_str(key)?,
                Step::Key(key) => write!(f, ".{key}")?,
                Step::At(place) => write!(f, "[{place}]")?,
            }
        }
        Ok(())
    }
}

/// Which lists are figures element by element: those of the plan whose number
/// of elements is the same in all three versions. When a corner comes or goes,
/// all after it have other numbers, so the list is one figure then.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Splits {
    corners: bool,
    sides: bool,
    holes: bool,
}

impl Splits {
    pub(crate) fn of(documents: &[DocumentMut; 3]) -> Self {
        let same = |word: &str, shape: &dyn Fn(&Array) -> Vec<usize>| {
            let [base, ours, theirs] = documents.each_ref().map(|document| {
                let list = document.get("plan")?.as_table_like()?.get(word)?.as_array()?;
                Some(shape(list))
            });
            base.is_some() && base == ours && ours == theirs
        };
        let long = |list: &Array| vec![list.len()];
        let loops = |list: &Array| list.iter().map(|inner| inner.as_array().map_or(0, Array::len)).collect();
        Self { corners: same("corners", &long), sides: same("sides", &long), holes: same("holes", &loops) }
    }

    /// How many lists deep the figures of this key stand.
    fn depth(&self, path: &Path) -> usize {
        let mut keys = path.keys();
        match (keys.next(), keys.next(), keys.next()) {
            (Some("plan"), Some("corners"), None) => usize::from(self.corners),
            (Some("plan"), Some("sides"), None) => usize::from(self.sides),
            (Some("plan"), Some("holes"), None) => 2 * usize::from(self.holes),
            _ => 0,
        }
    }
}

/// A value: what it is, however it is written, and how it is written.
#[derive(Clone, Debug)]
struct Figure {
    is: String,
    written: String,
    /// Which of the file it is, from the top.
    order: usize,
}

/// The figures of one version.
#[derive(Clone, Debug, Default)]
pub(crate) struct Figures(BTreeMap<Path, Figure>);

impl Figures {
    pub(crate) fn of(document: &DocumentMut, splits: &Splits) -> Self {
        let mut figures = Self::default();
        figures.gather(&Path::default(), document.as_table(), splits);
        figures
    }

    fn gather(&mut self, path: &Path, table: &dyn TableLike, splits: &Splits) {
        for (key, item) in table.iter() {
            let path = path.with(Step::Key(key.to_owned()));
            match item {
                _ if path.is_tick() => self.add(path, item_is(item), item.to_string()),
                Item::Value(Value::Array(list)) => self.gather_list(&path, list, splits.depth(&path)),
                _ => match item.as_table_like() {
                    Some(inner) => self.gather(&path, inner, splits),
                    None => self.add(path, item_is(item), item.to_string()),
                },
            }
        }
    }

    fn gather_list(&mut self, path: &Path, list: &Array, depth: usize) {
        if depth == 0 {
            return self.add(path.clone(), array_is(list), list.to_string());
        }
        for (place, value) in list.iter().enumerate() {
            let path = path.with(Step::At(place));
            match value {
                Value::Array(inner) if depth > 1 => self.gather_list(&path, inner, depth - 1),
                _ => self.add(path, value_is(value), value.to_string()),
            }
        }
    }

    fn add(&mut self, path: Path, is: String, written: String) {
        let order = self.0.len();
        self.0.insert(path, Figure { is, written: written.trim().to_owned(), order });
    }

    /// What stands at a path, however it is written.
    pub(crate) fn is(&self, path: &Path) -> Option<&str> {
        self.0.get(path).map(|figure| figure.is.as_str())
    }

    /// How it is written, without the comment behind it.
    pub(crate) fn written(&self, path: &Path) -> Option<String> {
        self.0.get(path).map(|figure| figure.written.clone())
    }

    /// Where it stands among the others, from the top of the file.
    pub(crate) fn order(&self, path: &Path) -> usize {
        self.0.get(path).map_or(usize::MAX, |figure| figure.order)
    }

    pub(crate) fn paths(&self) -> impl Iterator<Item = &Path> {
        self.0.keys()
    }

    /// Whether these are exactly the figures wanted.
    pub(crate) fn same_as(&self, wanted: &BTreeMap<Path, String>) -> bool {
        self.0.len() == wanted.len() && self.0.iter().all(|(path, figure)| wanted.get(path) == Some(&figure.is))
    }
}

fn item_is(item: &Item) -> String {
    match item {
        Item::None => String::new(),
        Item::Value(value) => value_is(value),
        Item::Table(table) => table_is(table),
        Item::ArrayOfTables(tables) => {
            let tables: Vec<String> = tables.iter().map(|table| table_is(table)).collect();
            format!("[{}]", tables.join(", "))
        }
    }
}

fn table_is(table: &dyn TableLike) -> String {
    let sorted: BTreeMap<&str, String> = table.iter().map(|(key, item)| (key, item_is(item))).collect();
    let keys: Vec<String> = sorted.iter().map(|(key, is)| format!("{key:?} = {is}")).collect();
    format!("{{ {} }}", keys.join(", "))
}

fn array_is(list: &Array) -> String {
    let values: Vec<String> = list.iter().map(value_is).collect();
    format!("[{}]", values.join(", "))
}

fn value_is(value: &Value) -> String {
    match value {
        Value::String(text) => format!("{:?}", text.value()),
        Value::Integer(number) => number.value().to_string(),
        Value::Float(number) => {
            let number = *number.value();
            if number.fract() == 0.0 && number.abs() < WHOLE_UP_TO {
                // Adding zero drops the sign of -0.
                format!("{:.0}", number + 0.0)
            } else {
                number.to_string()
            }
        }
        Value::Boolean(flag) => flag.value().to_string(),
        Value::Datetime(date) => date.value().to_string(),
        Value::Array(list) => array_is(list),
        Value::InlineTable(table) => table_is(table),
    }
}
