//! Reads the timber.

use super::group::{Group, Read};
use super::parts;
use super::reader::Reader;
use crate::limits::{BIRDSMOUTH_PART, LEAST_CENTRES_IN_THICKNESSES};
use crate::{HipEdge, HipHead, HipLine, HipTimber, RafterTimber, RidgeTimber, RidgeTop, Section, Spread, Timber};

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
        parts: parts::read(reader, &group),
        joint: parts::joint(reader, &group),
    };
    ReadTimber { timber, plate: if plate.is_sound() { Some(plate.value) } else { None } }
}

/// A size that has a default.
fn size(reader: &mut Reader<'_>, group: &Group<'_>) -> Read<Section> {
    let nothing = Section { thickness: 0.0, depth: 0.0 };
    let missing = Read { value: nothing, span: group.span.clone(), from: super::group::From::Fault };
    reader.size(group, "size").unwrap_or(missing)
}

/// How a timber lies, which tells its thickness from its depth.
#[derive(Clone, Copy)]
pub(super) enum Lies {
    /// On edge, deeper than thick.
    OnEdge,
    /// A board, wider than thick.
    Board,
    /// Either way.
    AnyWay,
}

/// Reports a size written the wrong way round, and lets no more be said of it.
pub(super) fn turned_round(reader: &mut Reader<'_>, path: &str, size: &mut Read<Section>, lies: Lies) {
    let why = match lies {
        Lies::OnEdge => "The thickness comes first, and this timber stands on edge",
        Lies::Board => "The thickness of a board comes first, then its width",
        Lies::AnyWay => return,
    };
    let Section { thickness, depth } = size.value;
    if size.is_written() && thickness > depth {
        reader.fault(
            &size.span,
            "size-turned-round",
            format!("`{path}` is thicker ({thickness} mm) than deep ({depth} mm)"),
            why,
            format!("Write size = [{depth}, {thickness}]"),
        );
        size.from = super::group::From::Fault;
    }
}

/// Reports centres so close that nobody can nail between two timbers.
pub(super) fn apart(reader: &mut Reader<'_>, what: &str, centres: &Read<f64>, size: &Read<Section>) {
    let thickness = size.value.thickness;
    let least = LEAST_CENTRES_IN_THICKNESSES * thickness;
    if centres.is_sound() && size.is_sound() && centres.value < least {
        let place = if centres.is_written() { &centres.span } else { &size.span };
        reader.fault(
            place,
            "centres-too-close",
            format!("Centres of {} mm leave too little room between {what} {thickness} mm thick", centres.value),
            "The gap should be no narrower than the timber, or nobody can nail in it",
            format!("Write centres of {least} mm or more, or a thinner timber"),
        );
    }
}

fn rafter(reader: &mut Reader<'_>, timber: &Group<'_>) -> RafterTimber {
    let group = reader.group(timber, "rafter");
    let mut size = size(reader, &group);
    turned_round(reader, "timber.rafter.size", &mut size, Lies::OnEdge);
    let centres = reader.needed(&group, "centres");
    apart(reader, "rafters", &centres, &size);
    let depth = size.value.depth;
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
        centres: centres.value,
        spread: reader.choice(&group, "spread", Spread::FromStart).value,
        birdsmouth: birdsmouth.map_or(depth * BIRDSMOUTH_PART, |read| read.value),
    }
}

/// Hips, and their size for the valleys to follow.
fn hip(reader: &mut Reader<'_>, timber: &Group<'_>) -> (HipTimber, Section) {
    let group = reader.group(timber, "hip");
    let mut size = size(reader, &group);
    turned_round(reader, "timber.hip.size", &mut size, Lies::OnEdge);
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
        turned_round(reader, "timber.valley.size", size, Lies::OnEdge);
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
    turned_round(reader, "timber.ridge.size", &mut size, Lies::OnEdge);
    RidgeTimber { size: size.value, top: reader.choice(&group, "top", RidgeTop::Arrises).value }
}
