//! Reads what is ticked. Whether the roof has timbers of these marks, only the
//! roof can tell: one that is gone keeps its tick.

use super::group::Group;
use super::names::Named;
use super::reader::Reader;
use crate::{TickState, Ticked};
use std::collections::BTreeMap;

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>) -> BTreeMap<String, Ticked> {
    let named = reader.named(root, "done");
    named.into_iter().map(|named| one(reader, named)).collect()
}

fn one(reader: &mut Reader<'_>, named: Named<'_>) -> (String, Ticked) {
    let Named { name, group, .. } = named;
    let state = reader.chosen(&group, "state", TickState::Cut).value;
    let piece = reader.line(&group, "piece").map(|piece| piece.value);
    (name, Ticked { state, piece })
}
