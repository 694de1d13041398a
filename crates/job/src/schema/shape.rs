//! The shape of a job file as types, for the schema alone: reading goes by
//! the table of keys, which can report every fault at its place.
#![expect(dead_code, reason = "only the shape of these types is used")]

mod named;
mod order;
mod parts;
mod site;

use crate::{Fascia, HipEdge, HipHead, HipLine, LengthUnit, RidgeRun, RidgeTop, Spread, TailCut};
use named::{BearingKeys, DoneKeys, DormerKeys, LoadsKeys, OpeningKeys, StrengthKeys};
use order::{CoveringKeys, OrderKeys, PriceKeys, StockKeys, YardKeys};
use parts::{
    AngleTieKeys, BargeKeys, BenchKeys, BinderKeys, CeilingJoistKeys, CollarKeys, DragonTieKeys, FasciaKeys,
    FilletKeys, HangerKeys, JointKeys, LadderKeys, LayBoardKeys, NogginKeys, PurlinKeys, SoffitKeys, StrutKeys,
};
use schemars::JsonSchema;
use site::{AccessKeys, ProgrammeKeys, RecordKeys};
use std::collections::BTreeMap;

/// A job of traditional cut roof: the plates as built, the roof and its timber.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields, title = "Job file")]
pub(super) struct JobFile {
    format: i64,
    title: String,
    date: String,
    revision: String,
    region: String,
    units: LengthUnit,
    plan: PlanKeys,
    roof: RoofKeys,
    timber: TimberKeys,
    openings: BTreeMap<String, OpeningKeys>,
    dormers: BTreeMap<String, DormerKeys>,
    bearings: BTreeMap<String, BearingKeys>,
    bench: BenchKeys,
    loads: LoadsKeys,
    strength: StrengthKeys,
    order: OrderKeys,
    stock: BTreeMap<String, StockKeys>,
    yard: BTreeMap<String, YardKeys>,
    price: BTreeMap<String, PriceKeys>,
    covering: CoveringKeys,
    programme: ProgrammeKeys,
    access: AccessKeys,
    record: BTreeMap<String, RecordKeys>,
    done: BTreeMap<String, DoneKeys>,
}

/// A length: millimetres, or a text with a unit such as "8.4 m" or "27' 6 1/2\"".
#[derive(JsonSchema)]
#[schemars(untagged)]
pub(super) enum Length {
    Millimetres(f64),
    Written(String),
}

/// A pitch: degrees, or a text such as "40°", "6:12" or "6 in 12".
#[derive(JsonSchema)]
#[schemars(untagged)]
pub(super) enum Pitch {
    Degrees(f64),
    Written(String),
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct PlanKeys {
    corners: Vec<[Length; 2]>,
    holes: Vec<Vec<[Length; 2]>>,
    sides: Vec<Length>,
    inward: Vec<String>,
    tolerance: Length,
    turn_tolerance: f64,
    diagonals: BTreeMap<String, Length>,
    turns: BTreeMap<String, f64>,
    levels: BTreeMap<String, Length>,
    accept: bool,
    true_within: Length,
    wall: Length,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct RoofKeys {
    pitch: Pitch,
    eaves: EavesKeys,
    ridge: RidgeRun,
    packing: Length,
    verge: VergeKeys,
    upper: UpperKeys,
    walls: BTreeMap<String, WallKeys>,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct EavesKeys {
    overhang: Length,
    fascia: Fascia,
    tail: TailCut,
    depth: Length,
    sprocket: SprocketKeys,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct SprocketKeys {
    pitch: Pitch,
    reach: Length,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct VergeKeys {
    overhang: Length,
    inset: Length,
}

/// What one wall says for itself.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct WallKeys {
    gable: bool,
    pitch: Pitch,
    overhang: Length,
    plate: Length,
    half_hip: Length,
    gablet: Length,
    upper: WallUpperKeys,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct UpperKeys {
    from: Length,
    pitch: Pitch,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct WallUpperKeys {
    from: Length,
    pitch: Pitch,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct TimberKeys {
    rafter: RafterKeys,
    hip: HipKeys,
    valley: ValleyKeys,
    ridge: RidgeKeys,
    plate: PlateKeys,
    joint: JointKeys,
    purlin: PurlinKeys,
    strut: StrutKeys,
    collar: CollarKeys,
    ceiling_joist: CeilingJoistKeys,
    binder: BinderKeys,
    hanger: HangerKeys,
    angle_tie: AngleTieKeys,
    dragon_tie: DragonTieKeys,
    ladder: LadderKeys,
    noggin: NogginKeys,
    fascia: FasciaKeys,
    soffit: SoffitKeys,
    fillet: FilletKeys,
    barge: BargeKeys,
    lay_board: LayBoardKeys,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct RafterKeys {
    size: [Length; 2],
    centres: Length,
    spread: Spread,
    birdsmouth: Length,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct HipKeys {
    size: [Length; 2],
    edge: HipEdge,
    line: HipLine,
    head: HipHead,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct ValleyKeys {
    size: [Length; 2],
    edge: HipEdge,
    line: HipLine,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct RidgeKeys {
    size: [Length; 2],
    top: RidgeTop,
}

#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct PlateKeys {
    size: [Length; 2],
}
