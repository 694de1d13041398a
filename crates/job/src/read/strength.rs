//! Reads what the roof carries, and how strong its timber is.

use super::group::Group;
use super::reader::Reader;
use crate::{Carried, Covering, Feet, RidgeAs, StrengthClass, Strong};

/// Service class of covered roof timbers in a ventilated loft.
const COVERED: u32 = 2;

/// What the roof carries; `None` when nothing is written of it.
pub(super) fn carried(reader: &mut Reader<'_>, root: &Group<'_>) -> Option<Carried> {
    let group = reader.group(root, "loads");
    let written = reader.says(&group);
    let carried = Carried {
        covering: reader.choice(&group, "covering", Covering::PlainTile).value,
        covering_weight: reader.number(&group, "covering_weight").map(|read| read.value),
        under_covering: reader.needed(&group, "under_covering").value,
        lining: reader.needed(&group, "lining").value,
        ceiling: reader.needed(&group, "ceiling").value,
        loft: reader.needed(&group, "loft").value,
        snow_zone: reader.count(&group, "snow_zone").map_or(0, |read| read.value),
        altitude: reader.number(&group, "altitude").map_or(0.0, |read| read.value),
        snow_held: reader.flag(&group, "snow_held").value,
        wind: reader.number(&group, "wind").map_or(0.0, |read| read.value),
        tank: reader.flag(&group, "tank").value,
        panels: reader.flag(&group, "panels").value,
    };
    written.then_some(carried)
}

/// How strong the timber is.
pub(super) fn strong(reader: &mut Reader<'_>, root: &Group<'_>) -> Strong {
    let group = reader.group(root, "strength");
    Strong {
        class: reader.choice(&group, "class", StrengthClass::C16).value,
        graded: reader.flag(&group, "graded").value,
        service: reader.count(&group, "service").map_or(COVERED, |read| read.value),
        feet: reader.choice(&group, "feet", Feet::Free).value,
        ridge: reader.choice(&group, "ridge", RidgeAs::Board).value,
    }
}
