//! The job file of a sketch.

use super::plan::{Known, Plan};
use super::reading;
use crate::views::Sketch;
use geometry::DVec2;
use geometry::survey::TAPE_TOLERANCE;
use job::wall_letter;
use job::written::Lengths;

/// The pitch of a roof that says none, degrees: that of the shapes to start from.
const PITCH_OTHERWISE: &str = "40";

/// What a job is called that has no name yet.
const TITLE_OTHERWISE: &str = "Roof measured on the plates";

/// What was made of a sketch.
pub(super) struct Made {
    /// The job file, if the plan is whole and the file has no fault.
    pub(super) text: Option<String>,
    /// Why the pitch can't be read.
    pub(super) pitch_fault: Option<String>,
    /// The faults of the file.
    pub(super) faults: Option<job::Faults>,
}

/// Makes a new job file of a sketch as far as it goes.
pub(super) fn of_new(sketch: &Sketch, plan: &Plan, lengths: Lengths) -> Made {
    let typed = sketch.pitch.trim();
    let pitch_fault = if typed.is_empty() { None } else { reading::pitch(typed).err() };
    let pitch = if typed.is_empty() { PITCH_OTHERWISE } else { typed };
    let mut made = Made { text: None, pitch_fault, faults: None };
    let Some(keys) = keys(sketch, plan, None) else { return made };
    let text = whole(sketch, plan, &keys, pitch, lengths);
    match job::read(&text) {
        Ok(_) => made.text = Some(text),
        // A pitch that can't be read is said beside the pitch.
        Err(faults) if made.pitch_fault.is_none() => {
            let is_pitch = |fault: &job::Fault| text.get(fault.span.clone()).is_some_and(|at| at == toml_pitch(pitch));
            made.pitch_fault = faults.iter().find(|fault| is_pitch(fault)).map(|f| format!("{}. {}", f.what, f.remedy));
            made.faults = made.pitch_fault.is_none().then_some(faults);
        }
        Err(_) => {}
    }
    made
}

/// The keys of `plan`, each with its value; `None` takes a key out.
pub(super) type Keys = Vec<(&'static str, Option<String>)>;

/// The keys of `plan` for a sketch whose plan is whole. Corners start at
/// `origin`, and measured ones are written as corners when they are `laid`.
pub(super) fn keys(sketch: &Sketch, plan: &Plan, laid: Option<DVec2>) -> Option<Keys> {
    match (&plan.known, laid) {
        (Known::Measured(_), None) => Some(measured(sketch, plan)),
        (Known::Measured(_), Some(origin)) => Some(drawn(plan, origin)),
        (Known::Squared { .. }, origin) => Some(drawn(plan, origin.unwrap_or(DVec2::ZERO))),
        (Known::Drawn | Known::Not(_), _) => None,
    }
}

fn drawn(plan: &Plan, origin: DVec2) -> Keys {
    let first = plan.corners.first().copied().unwrap_or(DVec2::ZERO);
    let places: Vec<String> = plan
        .corners
        .iter()
        .map(|at| *at - first + origin)
        .map(|at| format!("[{}, {}]", number(at.x), number(at.y)))
        .collect();
    let mut keys = vec![("corners", Some(list(&places)))];
    keys.extend(
        ["sides", "inward", "tolerance", "turn_tolerance", "diagonals", "turns", "levels"].map(|key| (key, None)),
    );
    keys
}

fn measured(sketch: &Sketch, plan: &Plan) -> Keys {
    let sides: Vec<String> = sketch.walls.iter().map(|wall| length(&wall.tape)).collect();
    let inward: Vec<String> = plan.inward().into_iter().map(|corner| format!("\"{}\"", wall_letter(corner))).collect();
    let diagonals: Vec<String> = sketch
        .diagonals
        .iter()
        .filter(|line| !line.tape.trim().is_empty())
        .map(|line| (line.from.min(line.to) as usize, line.from.max(line.to) as usize, &line.tape))
        .map(|(from, to, tape)| format!("{}-{} = {}", wall_letter(from), wall_letter(to), length(tape)))
        .collect();
    let turns: Vec<String> = plan
        .turns
        .iter()
        .enumerate()
        .filter_map(|(corner, read)| Some(format!("{} = {}", wall_letter(corner), number(read.good()?))))
        .collect();
    let group = |lines: &[String]| (!lines.is_empty()).then(|| format!("{{ {} }}", lines.join(", ")));
    let usual = plan.tolerance == TAPE_TOLERANCE;
    vec![
        ("corners", None),
        ("sides", Some(format!("[{}]", sides.join(", ")))),
        ("inward", Some(format!("[{}]", inward.join(", ")))),
        ("tolerance", (!usual).then(|| number(plan.tolerance))),
        ("diagonals", group(&diagonals)),
        ("turns", group(&turns)),
    ]
}

fn whole(sketch: &Sketch, plan: &Plan, keys: &Keys, pitch: &str, lengths: Lengths) -> String {
    let title: String = sketch.title.trim().chars().filter(|letter| !letter.is_control()).collect();
    let title = if title.is_empty() { TITLE_OTHERWISE } else { &title };
    let mut text = format!("# {}\n", story(plan));
    text.push_str("# Lengths are millimetres, or texts with a unit: \"8.4 m\", \"27' 6 1/2\\\"\".\n");
    text.push_str(&format!("format = {}\ntitle = {}\nregion = \"uk\"\n", job::FORMAT, quoted(title)));
    if lengths == Lengths::FeetInches {
        text.push_str("units = \"feet-inches\"\n");
    }
    text.push_str("\n[plan]\n");
    for (key, value) in keys {
        let Some(value) = value else { continue };
        if let Some(meaning) = meaning(key) {
            text.push_str(&format!("# {meaning}\n"));
        }
        text.push_str(&format!("{key} = {value}\n"));
    }
    text.push_str(&format!("\n[roof]\npitch = {}\n", toml_pitch(pitch)));
    text
}

/// What the plan comes from, a sentence.
fn story(plan: &Plan) -> &'static str {
    match plan.known {
        Known::Measured(_) => {
            "Measured on the plates: walls round and diagonals across. Reading it brings all into one plan."
        }
        _ => {
            "Measured on the plates: walls round. No diagonals, so corners are as drawn, and what did not close is shared \
             out."
        }
    }
}

/// What a key of `plan` is, for a comment.
fn meaning(key: &str) -> Option<&'static str> {
    Some(match key {
        "corners" => "Corners of the plate lines, anticlockwise: x east and y north.",
        "sides" => "Lengths of the plate lines as the tape read them, anticlockwise: wall A first.",
        "inward" => "Corners that point into the building, by the letter of the wall that starts there.",
        "tolerance" => "What the tape may be out by.",
        "diagonals" => "Between corners, by the letters of the walls that start there.",
        "turns" => "Inside angles as a bevel read them, degrees.",
        _ => return None,
    })
}

/// One corner a line, with the wall that starts there.
fn list(places: &[String]) -> String {
    let lines = places.iter().enumerate();
    let lines: String = lines.map(|(k, place)| format!("    {place}, # wall {}\n", wall_letter(k))).collect();
    format!("[\n{lines}]")
}

/// A tape as it is written in the file: with its unit as a text, a bare number as it is.
fn length(tape: &str) -> String {
    match (reading::bare(tape.trim()), reading::wall(tape).good().or_else(|| reading::diagonal(tape).good())) {
        (None, Some(_)) if job::parse_length(tape).is_ok() => quoted(tape.trim()),
        (_, Some(mm)) => number(mm),
        (_, None) => quoted(tape.trim()),
    }
}

fn toml_pitch(pitch: &str) -> String {
    reading::bare(pitch).map_or_else(|| quoted(pitch), number)
}

/// A text in quotes. Texts of JSON are texts of TOML, but for one sign that
/// may not stand there as it is.
fn quoted(text: &str) -> String {
    serde_json::Value::from(text).to_string().replace('\u{7f}', "\\u007f")
}

/// A number to the thousandth, without idle noughts.
pub(super) fn number(value: f64) -> String {
    let text = format!("{:.3}", (value * 1000.0).round() / 1000.0 + 0.0);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
