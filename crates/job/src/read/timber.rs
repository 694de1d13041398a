//! Reads the timber.

use super::group::{Group, Read};
use super::reader::Reader;
use crate::limits::{BIRDSMOUTH_PART, LEAST_CENTRES_IN_THICKNESSES};
use crate::{
    HipEdge, HipHead, HipLine, HipTimber, JointRules, Parts, RafterTimber, RidgeTimber, RidgeTop, Section, Spread,
    Timber,
};

/// What the file says of the timber.
pub(super) struct ReadTimber {
    pub(super) timber: Timber,
    /// The plate, for rules that need it: `None` if it could not be read.
    pub(super) plate: Option<Section>,
}

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>) -> ReadTimber {
    let group = reader.group(root, "timber");
    let rafter = rafter(reader, &group);
    let (hip, hip_size) = hip(reader, &group);
    let valley = valley(reader, &group, hip_size);
    let ridge = ridge(reader, &group);
    let plate = reader.group(&group, "plate");
    let plate = size(reader, &plate);
    let timber = Timber {
        rafter,
        hip,
        valley,
        ridge,
        plate: plate.value,
        parts: Parts::default(),
        joint: JointRules::NONE_NEEDED,
    };
    ReadTimber { timber, plate: if plate.is_sound() { Some(plate.value) } else { None } }
}

/// A size that has a default.
fn size(reader: &mut Reader<'_>, group: &Group<'_>) -> Read<Section> {
    let nothing = Section { thickness: 0.0, depth: 0.0 };
    let missing = Read { value: nothing, span: group.span.clone(), from: super::group::From::Fault };
    reader.size(group, "size").unwrap_or(missing)
}

/// Reports a size written the wrong way round, and lets no more be said of it.
fn on_edge(reader: &mut Reader<'_>, path: &str, size: &mut Read<Section>) {
    let Section { thickness, depth } = size.value;
    if size.is_written() && thickness > depth {
        reader.fault(
            &size.span,
            "size-turned-round",
            format!("`{path}` is thicker ({thickness} mm) than deep ({depth} mm)"),
            "The thickness comes first, and this timber stands on edge",
            format!("Write size = [{depth}, {thickness}]"),
        );
        size.from = super::group::From::Fault;
    }
}

fn rafter(reader: &mut Reader<'_>, timber: &Group<'_>) -> RafterTimber {
    let group = reader.group(timber, "rafter");
    let mut size = size(reader, &group);
    on_edge(reader, "timber.rafter.size", &mut size);
    let centres = reader.number(&group, "centres");
    let Section { thickness, depth } = size.value;
    if let Some(centres) = &centres
        && centres.is_sound()
        && size.is_sound()
        && centres.value < LEAST_CENTRES_IN_THICKNESSES * thickness
    {
        let place = if centres.is_written() { &centres.span } else { &size.span };
        let least = LEAST_CENTRES_IN_THICKNESSES * thickness;
        reader.fault(
            place,
            "centres-too-close",
            format!("Centres of {} mm leave too little room between rafters {thickness} mm thick", centres.value),
            "The gap should be no narrower than a rafter, or nobody can nail in it",
            format!("Write centres of {least} mm or more, or a thinner rafter"),
        );
    }
    let birdsmouth = reader.number(&group, "birdsmouth");
    if let Some(notch) = &birdsmouth
        && notch.is_sound()
        && size.is_sound()
        && notch.value >= depth
    {
        reader.fault(
            &notch.span,
            "birdsmouth-too-deep",
            format!("A birdsmouth of {} mm cuts through a rafter {depth} mm deep", notch.value),
            "The tail would fall off: a quarter of the depth is usual, a third the most without a warning",
            format!("Write a depth such as {}, or leave it out", depth * BIRDSMOUTH_PART),
        );
    }
    RafterTimber {
        size: size.value,
        centres: centres.map_or(0.0, |read| read.value),
        spread: reader.choice(&group, "spread", Spread::FromStart).value,
        birdsmouth: birdsmouth.map_or(depth * BIRDSMOUTH_PART, |read| read.value),
    }
}

/// Hips, and their size for the valleys to follow.
fn hip(reader: &mut Reader<'_>, timber: &Group<'_>) -> (HipTimber, Section) {
    let group = reader.group(timber, "hip");
    let mut size = size(reader, &group);
    on_edge(reader, "timber.hip.size", &mut size);
    let hip = HipTimber {
        size: size.value,
        edge: reader.choice(&group, "edge", HipEdge::Backed).value,
        line: reader.choice(&group, "line", HipLine::Centred).value,
        head: reader.choice(&group, "head", HipHead::Crown).value,
    };
    (hip, size.value)
}

fn valley(reader: &mut Reader<'_>, timber: &Group<'_>, as_hips: Section) -> HipTimber {
    let group = reader.group(timber, "valley");
    let mut size = reader.size(&group, "size");
    if let Some(size) = &mut size {
        on_edge(reader, "timber.valley.size", size);
    }
    HipTimber {
        size: size.map_or(as_hips, |size| size.value),
        edge: reader.choice(&group, "edge", HipEdge::Dropped).value,
        line: reader.choice(&group, "line", HipLine::Centred).value,
        // A valley has no head of its own kind to choose.
        head: HipHead::Crown,
    }
}

fn ridge(reader: &mut Reader<'_>, timber: &Group<'_>) -> RidgeTimber {
    let group = reader.group(timber, "ridge");
    let mut size = size(reader, &group);
    on_edge(reader, "timber.ridge.size", &mut size);
    RidgeTimber { size: size.value, top: reader.choice(&group, "top", RidgeTop::Arrises).value }
}
