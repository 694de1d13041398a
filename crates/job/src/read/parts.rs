//! Reads what is fitted to the frame, and how long timbers are joined.

use super::group::{Group, Read};
use super::reader::Reader;
use super::timber::{Lies, apart, turned_round};
use crate::example::key_toml;
use crate::{
    CollarTimber, JointRules, NogginTimber, Parts, PurlinSet, PurlinTimber, Section, SpacedTimber, SpliceKind, Wood,
};
use toml::de::DeTable;

/// Reads every part that has a size.
pub(super) fn read(reader: &mut Reader<'_>, timber: &Group<'_>) -> Parts {
    let parts = Parts {
        purlin: purlin(reader, timber),
        strut: spaced(reader, timber, "strut", Lies::AnyWay),
        collar: collar(reader, timber),
        ceiling_joist: plain(reader, timber, "ceiling_joist", Lies::OnEdge),
        binder: plain(reader, timber, "binder", Lies::OnEdge),
        hanger: spaced(reader, timber, "hanger", Lies::AnyWay),
        angle_tie: plain(reader, timber, "angle_tie", Lies::AnyWay),
        dragon_tie: plain(reader, timber, "dragon_tie", Lies::AnyWay),
        ladder: spaced(reader, timber, "ladder", Lies::OnEdge),
        noggin: noggin(reader, timber),
        fascia: plain(reader, timber, "fascia", Lies::Board),
        soffit: plain(reader, timber, "soffit", Lies::Board),
        fillet: plain(reader, timber, "fillet", Lies::AnyWay),
        barge: plain(reader, timber, "barge", Lies::Board),
        lay_board: plain(reader, timber, "lay_board", Lies::Board),
    };
    for rule in &NEEDS {
        needs(reader, timber, rule);
    }
    parts
}

/// The group of a part and its size. What is not fitted has none.
fn part<'d>(reader: &mut Reader<'_>, timber: &Group<'d>, word: &str, lies: Lies) -> (Group<'d>, Option<Read<Section>>) {
    let group = reader.group(timber, word);
    reader.says(&group);
    let mut size = reader.size(&group, "size");
    if let Some(size) = &mut size {
        turned_round(reader, &group.join("size"), size, lies);
    }
    (group, size)
}

fn plain(reader: &mut Reader<'_>, timber: &Group<'_>, word: &str, lies: Lies) -> Option<Section> {
    part(reader, timber, word, lies).1.map(|size| size.value)
}

fn spaced(reader: &mut Reader<'_>, timber: &Group<'_>, word: &str, lies: Lies) -> Option<SpacedTimber> {
    let (group, size) = part(reader, timber, word, lies);
    let centres = reader.needed(&group, "centres");
    let size = size?;
    apart(reader, "timbers", &centres, &size);
    Some(SpacedTimber { size: size.value, centres: centres.value })
}

fn purlin(reader: &mut Reader<'_>, timber: &Group<'_>) -> Option<PurlinTimber> {
    let (group, size) = part(reader, timber, "purlin", Lies::OnEdge);
    let set = reader.choice(&group, "set", PurlinSet::Square).value;
    let up = reader.lengths(&group, "up");
    Some(PurlinTimber { size: size?.value, set, up })
}

fn collar(reader: &mut Reader<'_>, timber: &Group<'_>) -> Option<CollarTimber> {
    let (group, size) = part(reader, timber, "collar", Lies::OnEdge);
    let height = reader.number(&group, "height");
    let every = reader.count(&group, "every").map_or(1, |every| every.value);
    Some(CollarTimber { size: size?.value, height: height?.value, every })
}

fn noggin(reader: &mut Reader<'_>, timber: &Group<'_>) -> Option<NogginTimber> {
    let (group, size) = part(reader, timber, "noggin", Lies::OnEdge);
    let rows = reader.count(&group, "rows").map_or(1, |rows| rows.value);
    Some(NogginTimber { size: size?.value, rows })
}

pub(super) fn joint(reader: &mut Reader<'_>, timber: &Group<'_>) -> JointRules {
    let group = reader.group(timber, "joint");
    JointRules {
        longest: reader.needed(&group, "longest").value,
        kind: reader.choice(&group, "kind", SpliceKind::FishPlates).value,
        bolted: reader.flag(&group, "bolted").value,
        wood: reader.choice(&group, "wood", Wood::Softwood).value,
    }
}

/// A part that is fitted to another.
struct Needs {
    part: &'static str,
    /// What the part is called, of several.
    several: &'static str,
    other: &'static str,
    others: &'static str,
    why: &'static str,
}

const NEEDS: [Needs; 4] = [
    Needs {
        part: "strut",
        several: "struts",
        other: "purlin",
        others: "purlins",
        why: "Struts hold up purlins, so these would hold up nothing",
    },
    Needs {
        part: "binder",
        several: "binders",
        other: "ceiling_joist",
        others: "ceiling joists",
        why: "Binders run across ceiling joists and keep them from sagging, so these would lie on nothing",
    },
    Needs {
        part: "hanger",
        several: "hangers",
        other: "binder",
        others: "binders",
        why: "Hangers carry binders, so these would carry nothing",
    },
    Needs {
        part: "dragon_tie",
        several: "dragon ties",
        other: "angle_tie",
        others: "angle ties",
        why: "A dragon tie runs from the corner of the plates to the angle tie, so these would be held by nothing",
    },
];

/// Whether anything is written of a part, or was meant to be.
fn is_written(reader: &Reader<'_>, group: &Group<'_>, word: &str) -> bool {
    let nothing = |table: &DeTable<'_>| table.is_empty();
    let written = group.get(word).is_some_and(|value| !value.get_ref().as_table().is_some_and(nothing));
    written || reader.is_slip(&group.join(word))
}

fn needs(reader: &mut Reader<'_>, timber: &Group<'_>, rule: &Needs) {
    let Some(place) = timber.get(rule.part) else { return };
    if !is_written(reader, timber, rule.part) || is_written(reader, timber, rule.other) {
        return;
    }
    let size = key_toml(&format!("timber.{}.size", rule.other));
    reader.fault(
        &place.span(),
        "part-needs-another",
        format!("There are {}, but no {}", rule.several, rule.others),
        rule.why,
        format!("Write {} = {{ size = {size} }} under [timber], or take {} out", rule.other, rule.part),
    );
}

/// Struts stand on something inside the plan.
pub(super) fn struts_stand(reader: &mut Reader<'_>, root: &Group<'_>) {
    let timber = root.get("timber").and_then(|value| value.get_ref().as_table());
    let timber = Group { path: "timber".to_owned(), span: 0..0, table: timber };
    let Some(place) = timber.get("strut") else { return };
    if is_written(reader, &timber, "strut") && !is_written(reader, root, "bearings") {
        reader.fault(
            &place.span(),
            "struts-without-bearing",
            "There are struts, but no line that they could stand on",
            "A strut brings the load of a purlin down onto a wall or beam that is made to carry it",
            "Write the wall or beam under [bearings], such as spine = { from = [0, 2600], to = [8400, 2600] }, or take strut out",
        );
    }
}
