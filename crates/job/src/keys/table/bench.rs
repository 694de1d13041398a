//! Keys of the work on the bench.

use crate::keys::Kind::Length;
use crate::keys::Preset::Number;
use crate::keys::{Key, key};
use crate::limits;

pub(super) static KEYS: &[Key] = &[key(
    "bench.alike_within",
    Length(limits::ALIKE),
    Number(1.0),
    "Timbers that differ from one another by no more than this are cut from one pattern",
)];
