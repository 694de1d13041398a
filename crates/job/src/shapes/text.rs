//! Writes the text of a new job.

use super::ShapeInfo;
use super::outline::Outline;
use crate::example::{comment, key_toml};
use crate::letters::wall_letter;
use toml_edit::Value;

pub(super) fn write(shape: &ShapeInfo, title: &str, sizes: &[f64], outline: &Outline, gables: bool) -> String {
    let mut text = String::new();
    let parts: Vec<String> =
        shape.parameters.iter().zip(sizes).map(|(part, mm)| format!("{} {} mm", part.name, number(*mm))).collect();
    comment(&mut text, &format!("{}: {}.", shape.description, parts.join(", ")));
    comment(&mut text, "Lengths are millimetres, or texts with a unit: \"8.4 m\", \"27' 6 1/2\\\"\".");
    text.push_str(&format!("format = {}\n", key_toml("format")));
    text.push_str(&format!("title = {}\n", Value::from(title)));
    text.push_str(&format!("region = {}\n", key_toml("region")));
    plan(&mut text, outline);
    roof(&mut text, outline, gables);
    text.push_str("\n[timber]\n");
    comment(&mut text, "Sizes are [thickness, depth].");
    let size = |kind: &str| key_toml(&format!("timber.{kind}.size"));
    text.push_str(&format!(
        "rafter = {{ size = {}, centres = {} }}\n",
        size("rafter"),
        key_toml("timber.rafter.centres")
    ));
    text.push_str(&format!("hip = {{ size = {}, edge = {} }}\n", size("hip"), key_toml("timber.hip.edge")));
    text.push_str(&format!("ridge = {{ size = {} }}\n", size("ridge")));
    text.push_str(&format!("plate = {{ size = {} }}\n", size("plate")));
    text
}

fn roof(text: &mut String, outline: &Outline, gables: bool) {
    let form = &outline.form;
    let pitch = form.pitch_deg.map_or_else(|| key_toml("roof.pitch"), |pitch| pitch.to_string());
    text.push_str(&format!("\n[roof]\npitch = {pitch}\n"));
    let mut eaves = vec![format!("overhang = {}", key_toml("roof.eaves.overhang"))];
    if !form.eaves.iter().any(|key| key.starts_with("fascia")) {
        eaves.push(format!("fascia = {}", key_toml("roof.eaves.fascia")));
    }
    eaves.extend(form.eaves.iter().cloned());
    text.push_str(&format!("eaves = {{ {} }}\n", eaves.join(", ")));
    for key in &form.roof {
        text.push_str(&format!("{key}\n"));
    }
    let mut walls = form.walls.clone();
    if gables {
        walls.extend(outline.ends.iter().map(|wall| (*wall, "gable = true".to_owned())));
    }
    if !walls.is_empty() {
        text.push_str("\n[roof.walls]\n");
    }
    for (wall, words) in walls {
        text.push_str(&format!("{} = {{ {words} }}\n", wall_letter(wall)));
    }
}

fn plan(text: &mut String, outline: &Outline) {
    text.push_str("\n[plan]\n");
    comment(text, "Corners of the plate lines as built, anticlockwise: x east and y north.");
    text.push_str("corners = [\n");
    let mut wall = 0;
    ring(text, &outline.corners, "    ", &mut wall);
    text.push_str("]\n");
    if outline.holes.is_empty() {
        return;
    }
    comment(text, "Courtyards, clockwise.");
    text.push_str("holes = [\n");
    for hole in &outline.holes {
        text.push_str("    [\n");
        ring(text, hole, "        ", &mut wall);
        text.push_str("    ],\n");
    }
    text.push_str("]\n");
}

/// One corner a line, with the wall that starts there.
fn ring(text: &mut String, corners: &[[f64; 2]], indent: &str, wall: &mut usize) {
    let written: Vec<String> = corners.iter().map(|[x, y]| format!("[{}, {}],", number(*x), number(*y))).collect();
    let width = written.iter().map(String::len).max().unwrap_or(0);
    for corner in written {
        text.push_str(&format!("{indent}{corner:width$} # wall {}\n", wall_letter(*wall)));
        *wall += 1;
    }
}

/// A length to the thousandth of a millimetre, without idle noughts. An
/// octagon needs the decimals for its hips to meet in one point.
pub(super) fn number(mm: f64) -> String {
    let text = format!("{mm:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
