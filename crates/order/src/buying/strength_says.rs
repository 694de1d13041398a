//! How many fixings the strength of a roof asks for in a joint.

use strength::whole::{Strength, Verdict};

/// The count for a joint of the strength by its name, where it is used most. Nothing when it has none.
pub(super) fn count(strength: Option<&Strength>, name: &str) -> Option<u32> {
    strength?.joints.iter().find(|joint| joint.name == name)?.fixings
}

/// What to add where the strength has looked at a joint and finds no number of these fixings that carries it.
pub(super) fn warning(strength: Option<&Strength>, name: &str) -> &'static str {
    let joint = strength.and_then(|s| s.joints.iter().find(|j| j.name == name));
    if joint.is_some_and(|j| j.verdict == Some(Verdict::Over)) {
        " (not enough by the strength of the roof: settle this joint with an engineer before ordering)"
    } else {
        ""
    }
}

/// Straps against lifting that the strength asks for on a wall.
pub(super) fn straps(strength: Option<&Strength>, wall: &str) -> Option<u32> {
    strength?.walls.iter().find(|w| w.name == wall)?.straps
}
