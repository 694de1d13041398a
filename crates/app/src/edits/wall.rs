//! What a wall does above its plate.

use super::Changes;
use super::slopes::wall_number;
use crate::opening::Open;
use crate::refusal::Refusal;
use crate::views::WallForm;

/// What a wall may say that a gable has no use for, and how each is called.
const NOT_OF_GABLES: &[(&str, &str)] = &[
    ("pitch", "its own pitch"),
    ("overhang", "its own overhang"),
    ("half_hip", "the half hip"),
    ("gablet", "the gablet"),
    ("upper", "its second pitch"),
];

/// What a wall may say that makes it other than a plain slope.
const NOT_OF_SLOPES: &[(&str, &str)] = &[("half_hip", "the half hip"), ("gablet", "the gablet")];

/// Makes a wall a gable or a slope.
pub(super) fn form(open: &Open, wall: &str, form: WallForm) -> Result<Changes, Refusal> {
    let job = open.job.as_ref().map_err(Clone::clone)?;
    let now = &job.walls[wall_number(job, wall)?];
    let path = |word: &str| format!("roof.walls.{wall}.{word}");
    let (gable, name, others) = match form {
        WallForm::Gable => (true, "gable", NOT_OF_GABLES),
        WallForm::Hip => (false, "hip", NOT_OF_SLOPES),
    };
    let mut taken = Vec::new();
    let mut steps = Vec::new();
    for (word, called) in others.iter().filter(|(word, _)| open.said.has(&path(word))) {
        steps.push((path(word), None));
        taken.push(*called);
    }
    if gable {
        steps.push((path("gable"), Some("true".to_owned())));
    } else if open.said.has(&path("gable")) {
        steps.push((path("gable"), None));
    }
    if now.gable == gable && taken.is_empty() {
        let what = format!("Wall {wall} is a {name} already");
        return Err(Refusal::new("wall-so-already", what, "Nothing needs to be changed"));
    }
    let without = if taken.is_empty() { String::new() } else { format!(", without {}", taken.join(", ")) };
    Ok(Changes { steps, said: format!("Wall {wall}: {name}{without}") })
}
