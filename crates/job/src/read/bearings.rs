//! Reads lines inside the plan that carry load down.

use super::group::Group;
use super::names::Named;
use super::reader::Reader;
use crate::BearingLine;

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>) -> Vec<BearingLine> {
    let named = reader.named(root, "bearings");
    named.into_iter().map(|named| one(reader, named)).collect()
}

fn one(reader: &mut Reader<'_>, named: Named<'_>) -> BearingLine {
    let Named { name, group, .. } = named;
    let from = reader.point(&group, "from");
    let to = reader.point(&group, "to");
    let top = reader.needed(&group, "top").value;
    if from.is_sound() && to.is_sound() && from.value == to.value {
        reader.fault(
            &to.span,
            "bearing-without-length",
            format!("Bearing `{name}` ends where it starts"),
            "It is a wall or beam that struts stand along, so it runs from one place to another",
            "Write the other end of its centre line",
        );
    }
    BearingLine { name, from: from.value, to: to.value, top }
}
