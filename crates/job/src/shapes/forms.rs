//! Rectangles with roofs of other forms than hips and gables.
//!
//! The length runs west to east and the width south to north: wall A is the
//! south side, B the east end, C the north side and D the west end.

use super::ShapeError;
use super::outline::{Form, Outline, below, rectangle};
use super::text::number;
use crate::example::key_toml;
use geometry::Angle;

/// Pitch of the lower slopes of a mansard, degrees.
const MANSARD_LOWER: f64 = 70.0;
/// Pitch of the upper slopes of a mansard, degrees.
const MANSARD_UPPER: f64 = 30.0;
/// Pitch of a lean-to, degrees: flat, to stay below the windows of the house.
const LEAN_TO: f64 = 20.0;
/// Pitch of a roof with sprockets, degrees: steep, or they would lie too flat.
const ABOVE_SPROCKETS: f64 = 50.0;
/// Pitch of sprockets, degrees.
const SPROCKET: f64 = 30.0;

fn with(length: f64, width: f64, form: Form) -> Result<Outline, ShapeError> {
    Ok(Outline { form, ..rectangle([length, width])? })
}

/// The pitch of new jobs, degrees.
fn usual_pitch() -> f64 {
    key_toml("roof.pitch").parse().unwrap_or(MANSARD_UPPER)
}

/// Ends at which something happens so high above the plates, below the ridge.
fn ends(key: &str, [length, width, rise]: [f64; 3]) -> Result<Outline, ShapeError> {
    let shorter = if length < width { ("length", length) } else { ("width", width) };
    // The ridge is half the shorter side times the tangent above the plates.
    below(("rise", rise), shorter, 2.0 / Angle::deg(usual_pitch()).tan())?;
    let words = format!("{key} = {}", number(rise));
    let sides = if length < width { [0, 2] } else { [1, 3] };
    let walls = sides.map(|wall| (wall, words.clone())).to_vec();
    with(length, width, Form { walls, ..Form::default() })
}

pub(super) fn half_hip(sizes: [f64; 3]) -> Result<Outline, ShapeError> {
    ends("half_hip", sizes)
}

pub(super) fn gablet(sizes: [f64; 3]) -> Result<Outline, ShapeError> {
    ends("gablet", sizes)
}

pub(super) fn lean_to([length, width]: [f64; 2]) -> Result<Outline, ShapeError> {
    let walls = [1, 2, 3].map(|wall| (wall, "gable = true".to_owned())).to_vec();
    with(length, width, Form { pitch_deg: Some(LEAN_TO), walls, ..Form::default() })
}

pub(super) fn saltbox([length, width, raise]: [f64; 3]) -> Result<Outline, ShapeError> {
    // Higher than this the low slope alone would roof the whole width.
    below(("raise", raise), ("width", width), 1.0 / Angle::deg(usual_pitch()).tan())?;
    let gable = || "gable = true".to_owned();
    let walls = vec![(0, format!("plate = {}", number(raise))), (1, gable()), (3, gable())];
    // Plates at two heights have no level fascia in common.
    let eaves = vec!["fascia = \"fixed\"".to_owned()];
    with(length, width, Form { eaves, walls, ..Form::default() })
}

pub(super) fn mansard([length, width, lower]: [f64; 3]) -> Result<Outline, ShapeError> {
    let shorter = if length < width { ("length", length) } else { ("width", width) };
    below(("lower", lower), shorter, 2.0 / Angle::deg(MANSARD_LOWER).tan())?;
    let upper = format!("upper = {{ from = {}, pitch = {MANSARD_UPPER} }}", number(lower));
    with(length, width, Form { pitch_deg: Some(MANSARD_LOWER), roof: vec![upper], ..Form::default() })
}

pub(super) fn sprockets([length, width, reach]: [f64; 3]) -> Result<Outline, ShapeError> {
    let shorter = if length < width { ("length", length) } else { ("width", width) };
    below(("reach", reach), shorter, 2.0)?;
    let eaves = vec![format!("sprocket = {{ pitch = {SPROCKET}, reach = {} }}", number(reach))];
    with(length, width, Form { pitch_deg: Some(ABOVE_SPROCKETS), eaves, ..Form::default() })
}
