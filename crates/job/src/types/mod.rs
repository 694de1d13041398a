//! A checked job: every value resolved, every default filled in. This is what
//! the rest of the core reads.

mod bench;
mod openings;
mod order;
mod parts;
mod progress;
mod setting;
mod site;
mod strength;
mod survey;

pub use bench::Bench;
pub use openings::{BearingLine, Distance, Dormer, DormerKind, Opening, OpeningKind, ValleyAs};
pub use order::{CoveringChoice, OrderAim, Ordering, Per, PriceOf, StockTimber, YardTimber};
pub use parts::{
    CollarTimber, JointRules, NogginTimber, Parts, PurlinSet, PurlinTimber, SpacedTimber, SpliceKind, Wood,
};

pub use progress::{TickState, Ticked};
pub use setting::{LEAST_BEARING, PACKING, RidgeRun, SettingOut, TRUE_AT_MOST, TRUE_WITHIN, WALL};
pub use site::{AccessAsked, AccessKind, Day, Ground, ProgrammeAsked, WorkItem};
pub use strength::{Carried, Covering, Feet, RidgeAs, StrengthClass, Strong};
pub use survey::Survey;

use geometry::DVec2;
use schemars::JsonSchema;
use std::collections::BTreeMap;

/// A checked job.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// What the job is called on its sheets.
    pub title: String,
    /// Date to print on sheets, as written.
    pub date: Option<String>,
    /// Revision to print on sheets, as written.
    pub revision: Option<String>,
    /// Which folder of `regions/` gives words and rules.
    pub region: String,
    /// How lengths are shown on sheets.
    pub show: LengthUnit,
    /// Roof lines, which are the plate lines made true: the outer loop
    /// anticlockwise, then courtyards clockwise; mm.
    pub loops: Vec<Vec<[f64; 2]>>,
    /// How they were set out from the plates as measured.
    pub setting_out: SettingOut,
    /// What was measured, if the plan comes from that.
    pub survey: Option<Survey>,
    /// One entry for every wall in lettering order (outer loop, then courtyards).
    pub walls: Vec<Wall>,
    /// Pitch of walls that do not say otherwise, degrees. The eaves line of a
    /// level fascia is set by this pitch.
    pub pitch_deg: f64,
    /// The eaves.
    pub eaves: Eaves,
    /// The verges of gables.
    pub verge: Verge,
    /// The timber.
    pub timber: Timber,
    /// Holes in slopes and ceilings, in the order of the file.
    pub openings: Vec<Opening>,
    /// Dormers, in the order of the file.
    pub dormers: Vec<Dormer>,
    /// Lines inside the plan that carry load down, in the order of the file.
    pub bearings: Vec<BearingLine>,
    /// How timber is cut on the bench.
    pub bench: Bench,
    /// What the roof carries; `None` when nothing is written of it, and then
    /// no strength is checked.
    pub carried: Option<Carried>,
    /// How strong the timber is, and what holds it.
    pub strong: Strong,
    /// How timber is ordered and cut.
    pub ordering: Ordering,
    /// Timber that can be bought, in the order of the file.
    pub stock: Vec<StockTimber>,
    /// Offcuts in the yard, in the order of the file.
    pub yard: Vec<YardTimber>,
    /// Prices of what is bought besides timber, in the order of the file.
    pub prices: Vec<PriceOf>,
    /// What covers the slopes, for ordering; `None` when nothing is written of it.
    pub covering: Option<CoveringChoice>,
    /// When it goes up, and by how many.
    pub programme: ProgrammeAsked,
    /// What it is put up from.
    pub access: AccessAsked,
    /// What people on site say in place of statements of the records, by
    /// the names of these; some may be gone since.
    pub records: BTreeMap<String, String>,
    /// What is cut and fixed, by the marks of timbers; some may be gone from
    /// the roof since.
    pub done: BTreeMap<String, Ticked>,
}

/// Loops of corners as points.
#[must_use]
pub fn places(loops: &[Vec<[f64; 2]>]) -> Vec<Vec<DVec2>> {
    loops.iter().map(|ring| ring.iter().copied().map(DVec2::from_array).collect()).collect()
}

impl Job {
    /// The plate lines as measured, loop by loop; mm.
    #[must_use]
    pub fn plates(&self) -> &[Vec<[f64; 2]>] {
        if self.setting_out.plates.is_empty() { &self.loops } else { &self.setting_out.plates }
    }
}

/// How lengths are written on sheets. Input may mix units freely.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum LengthUnit {
    /// Whole and tenth millimetres.
    #[default]
    #[schemars(rename = "mm")]
    Millimetres,
    /// Feet, inches and sixteenths.
    FeetInches,
}

/// One wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Wall {
    /// Its letter: A, B … Z, AA ….
    pub letter: String,
    /// Pitch in degrees, 5 to 80. Also given for gables (then unused).
    pub pitch_deg: f64,
    /// A gable: the wall is carried up, no slope rises from it.
    pub gable: bool,
    /// Overhang of this wall's eaves, if it has its own, mm in plan.
    pub overhang: Option<f64>,
    /// Height of its plate above the datum of the job, mm.
    pub plate: f64,
    /// The wall is carried up as a gable to this height above its plate, mm,
    /// and a hip at `pitch_deg` starts there: a half hip.
    pub half_hip: Option<f64>,
    /// The slope stops at this height above the plate, mm, and an upright
    /// gablet rises from there.
    pub gablet: Option<f64>,
    /// A second pitch higher up: a mansard or broken pitch.
    pub upper: Option<UpperSlope>,
}

/// The upper of two pitches of one wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UpperSlope {
    /// Height above the wall's plate where it starts, mm.
    pub from: f64,
    /// Its pitch, degrees.
    pub pitch_deg: f64,
}

impl Wall {
    /// A plain wall: nothing but its letter and pitch.
    #[must_use]
    pub fn plain(letter: impl Into<String>, pitch_deg: f64) -> Self {
        Self {
            letter: letter.into(),
            pitch_deg,
            gable: false,
            overhang: None,
            plate: 0.0,
            half_hip: None,
            gablet: None,
            upper: None,
        }
    }
}

/// The eaves.
#[derive(Clone, Debug, PartialEq)]
pub struct Eaves {
    /// Overhang in plan from the plate line to the plumb face of the rafter
    /// tails, mm. With a level fascia it holds at the job's main pitch.
    pub overhang: f64,
    /// One fascia line all round, or the same overhang everywhere.
    pub fascia: Fascia,
    /// How the tails are cut.
    pub tail: TailCut,
    /// Depth of the plumb face left above a level soffit cut, mm (only for
    /// [`TailCut::Level`]).
    pub fascia_depth: f64,
    /// Sprockets that flatten the slope at the eaves.
    pub sprocket: Option<Sprocket>,
}

/// Sprockets: tapered pieces on the backs of the rafters at the eaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sprocket {
    /// Pitch of the sprocketed part, degrees; flatter than the slope.
    pub pitch_deg: f64,
    /// How far up the rafter it reaches from the plate line, mm in plan.
    pub reach: f64,
}

/// How the fascia runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum Fascia {
    /// One level line all round; each wall's overhang follows from its pitch.
    Level,
    /// The same overhang on every wall; the fascia may step.
    Fixed,
}

/// How rafter tails are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum TailCut {
    /// Plumb.
    Plumb,
    /// Square to the rafter.
    Square,
    /// Plumb in front and level underneath, for a soffit.
    Level,
}

/// The verges of gables.
#[derive(Clone, Debug, PartialEq)]
pub struct Verge {
    /// How far the roof runs past the gable's plan line, mm.
    pub overhang: f64,
    /// From the gable's plan line to the near face of the first rafter, mm.
    pub inset: f64,
}

/// Thickness and depth of a timber, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Thickness (the narrow side), mm.
    pub thickness: f64,
    /// Depth, mm.
    pub depth: f64,
}

/// The timber of the job.
#[derive(Clone, Debug, PartialEq)]
pub struct Timber {
    /// Rafters of every kind.
    pub rafter: RafterTimber,
    /// Hips.
    pub hip: HipTimber,
    /// Valleys.
    pub valley: HipTimber,
    /// Ridge boards.
    pub ridge: RidgeTimber,
    /// Wall plates: `thickness` is the height, `depth` the width on the wall.
    pub plate: Section,
    /// What is fitted to the frame of rafters.
    pub parts: Parts,
    /// How timbers longer than the stock are made.
    pub joint: JointRules,
}

/// Rafters.
#[derive(Clone, Debug, PartialEq)]
pub struct RafterTimber {
    /// Section.
    pub size: Section,
    /// Greatest distance between centre lines, mm.
    pub centres: f64,
    /// How rafters share the wall.
    pub spread: Spread,
    /// Depth of the birdsmouth square to the rafter, from its underside, mm.
    pub birdsmouth: f64,
}

/// How rafters share the length between two fixed ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum Spread {
    /// At full centres from the start of the wall; the last bay takes the rest.
    FromStart,
    /// At full centres from the end of the wall; the first bay takes the rest.
    FromEnd,
    /// Equal bays, none wider than the centres.
    Equal,
}

/// Hips or valleys.
#[derive(Clone, Debug, PartialEq)]
pub struct HipTimber {
    /// Section.
    pub size: Section,
    /// How the top edge meets the roof planes.
    pub edge: HipEdge,
    /// Where the timber lies on its plan line.
    pub line: HipLine,
    /// What its head meets where a ridge ends.
    pub head: HipHead,
}

/// How the top of a hip or valley meets the roof planes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum HipEdge {
    /// Planed to both roof planes.
    Backed,
    /// Left square and lowered until its arrises lie in the roof planes.
    Dropped,
}

/// Where a hip lies on its plan line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum HipLine {
    /// Centred on the plan line.
    Centred,
    /// Moved sideways so that both arrises touch when pitches differ.
    SetOver,
}

/// What a hip's head meets where a ridge ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum HipHead {
    /// A crown rafter and the last common: a double cheek cut.
    Crown,
    /// The side of the ridge, run on past the joint: a single cheek cut.
    Ridge,
}

/// Ridge boards.
#[derive(Clone, Debug, PartialEq)]
pub struct RidgeTimber {
    /// Section.
    pub size: Section,
    /// What lies in the roof planes.
    pub top: RidgeTop,
}

/// What of a ridge board's top lies in the roof planes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum RidgeTop {
    /// Its top side arrises.
    Arrises,
    /// The middle of its top edge.
    Centre,
}
