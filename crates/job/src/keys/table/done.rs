//! Keys of what is ticked, by the marks of timbers.

use crate::TickState;
use crate::keys::Kind::{Text, Word};
use crate::keys::Preset::{Otherwise, Required};
use crate::keys::{Key, key};
use crate::words::words;

pub(super) static KEYS: &[Key] = &[
    key("done.*.state", Word(words::<TickState>), Required("\"cut\""), "How far the timber is"),
    key(
        "done.*.piece",
        Text,
        Otherwise("none, and no change of the roof is noticed", "\"3f9a12c4\""),
        "A short mark of the sizes it was cut to, which differs from the timber's own when the roof has changed since",
    ),
];
