//! What a putting-up sheet says, as plain data. Lengths mm, angles degrees, points `[x, y, z]` of the job.

use roof::solution::Size;
use serde::{Deserialize, Serialize};

/// How a roof is put up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PuttingUp {
    /// Steps in their order.
    pub steps: Vec<Step>,
    /// Temporary props.
    pub props: Vec<Prop>,
    /// Temporary braces.
    pub braces: Vec<Brace>,
    /// Bracing that stays.
    pub permanent: Vec<Racking>,
    /// What is checked before going on.
    pub holds: Vec<Hold>,
    /// Straps.
    pub straps: Vec<StrapPlace>,
    /// Where nothing may be stacked.
    pub no_stack: Vec<NoStack>,
    /// What whoever puts it up must know, and who decides.
    pub cautions: Vec<Caution>,
}

/// One step of the work.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Step {
    /// From 1.
    pub number: u32,
    /// What is done.
    pub title: String,
    /// Marks of the timbers that are fixed, in the order of fixing.
    pub members: Vec<String>,
    /// Names of props set before the timbers.
    pub props_set: Vec<String>,
    /// Names of braces fixed.
    pub braces_set: Vec<String>,
    /// Names of pieces of permanent bracing fixed.
    pub permanent_set: Vec<String>,
    /// Names of props taken out.
    pub props_out: Vec<String>,
    /// Names of braces taken out.
    pub braces_out: Vec<String>,
    /// Least number of people: as the figures for lifting ask for its heaviest timber that people may lift.
    pub hands: u32,
    /// Marks of timbers that want a hoist, or a lift in stages, by those figures.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub hoist: Vec<String>,
    /// Timbers of several lengths that are spliced on the deck and lifted as one.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub as_one: Vec<Joined>,
    /// Why now.
    pub why: String,
    /// What may hurt here.
    pub hazard: String,
    /// Numbers of the holds to be passed before going on.
    pub holds: Vec<u32>,
    /// What each timber stands on when it is fixed.
    pub stands: Vec<Stands>,
    /// Names of the setting-out strips to mark first.
    pub strips: Vec<String>,
}

/// What a timber stands on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stands {
    /// Its mark.
    pub mark: String,
    /// Marks of timbers, names of props, `wall`.
    pub on: Vec<String>,
}

/// What a prop's height is measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PropFoot {
    /// The level of the plates: add what the floor that it stands on lies below them, as measured.
    PlateLevel,
    /// The boards on the ceiling joists.
    Joists,
    /// Outside the walls or below the plates: measured in place from the scaffold or the floor; the height is a least one.
    InPlace,
}

/// An end of a timber on the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum End {
    /// Foot end.
    Foot,
    /// Head end.
    Head,
}

/// A temporary prop, plumb.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Prop {
    /// Its name, `P1` …
    pub name: String,
    /// Mark of the timber that it carries.
    pub under: String,
    /// The end of that timber that is nearer.
    pub from_end: End,
    /// From that end, along the timber, mm.
    pub from_end_mm: f64,
    /// What the height is measured from.
    pub from: PropFoot,
    /// From there to the underside of the timber, plumb, mm.
    pub height_mm: f64,
    /// What to cut it to: height less sole board and wedges, mm. From the level of the plates: add the drop to the floor.
    pub cut_mm: f64,
    /// Whether it is stayed both ways to the floor, like a trestle: nothing near gives a brace a footing.
    pub stayed: bool,
    /// Cut of its top, from square, degrees: 0 under a level timber.
    pub head_cut_deg: f64,
    /// Where its foot is, mm.
    pub foot: [f64; 3],
    /// Where its head is, mm.
    pub head: [f64; 3],
}

/// Which way a temporary brace holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BraceWay {
    /// Along the timber that it holds.
    Along,
    /// Across the timber that it holds.
    Across,
}

/// A cut at the end of a brace, from square, degrees.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct BraceCut {
    /// On the wide side.
    pub face_angle_deg: f64,
    /// On the edge.
    pub edge_angle_deg: f64,
}

/// A temporary brace, its width plumb.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Brace {
    /// Its name, `B1` …
    pub name: String,
    /// Which way it holds.
    pub way: BraceWay,
    /// Mark of the timber at its head.
    pub from_mark: String,
    /// Where its head is, mm.
    pub from: [f64; 3],
    /// Mark of the timber at its foot; empty: the floor at the level of the plates.
    pub to_mark: String,
    /// Where its foot is, mm.
    pub to: [f64; 3],
    /// Point to point, mm.
    pub length_mm: f64,
    /// From level, degrees.
    pub slope_deg: f64,
    /// Cut against the timber at its head.
    pub head_cut: BraceCut,
    /// Cut on the level at its foot.
    pub foot_cut: BraceCut,
    /// Section.
    pub size: Size,
}

/// Where a piece of bracing is nailed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Nailed {
    /// Mark of the timber.
    pub mark: String,
    /// Where, mm.
    pub at: [f64; 3],
    /// Along the piece from its lower end, mm.
    pub along_mm: f64,
}

/// A diagonal under the rafters that stays.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Racking {
    /// Its name, `D1` …
    pub name: String,
    /// Letter of the wall whose slope it braces.
    pub wall: String,
    /// Lower end, mm.
    pub from: [f64; 3],
    /// Upper end, mm.
    pub to: [f64; 3],
    /// Length, mm.
    pub length_mm: f64,
    /// On the slope, from the level, degrees.
    pub angle_deg: f64,
    /// Where it is nailed, from its lower end.
    pub nailed: Vec<Nailed>,
    /// Nails at each.
    pub nails_each: u32,
    /// Section.
    pub size: Size,
}

/// What is checked before going on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Hold {
    /// From 1.
    pub number: u32,
    /// What to check, in words.
    pub what: String,
    /// Where: a wall, corners or a mark.
    pub at: String,
    /// What it must be, mm; none when it is a line or a level.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub figure_mm: Option<f64>,
    /// By how much it may be out: mm, or mm in a metre when `per_metre`; none for what is only looked at.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tolerance: Option<f64>,
    /// Whether the tolerance is for each metre.
    pub per_metre: bool,
    /// How the tolerance was come by.
    pub standing: Standing,
}

impl Step {
    /// What is special about lifting its timbers, in words: what is spliced first, and what wants a hoist.
    #[must_use]
    pub fn lifting(&self) -> Vec<String> {
        let joined = self.as_one.iter().map(|one| {
            let kg = job::written::fixed(one.damp_kg, 1);
            format!("splice on the deck and lift as one: {}, {kg} kg damp", one.marks.join(" + "))
        });
        let hoist = (!self.hoist.is_empty())
            .then(|| format!("with a hoist, or in stages with one end down: {}", self.hoist.join(", ")));
        joined.chain(hoist).collect()
    }
}

/// Lengths that are spliced on the deck and lifted as one.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Joined {
    /// Their marks, from the foot.
    pub marks: Vec<String>,
    /// Weight of all together, damp, kg.
    pub damp_kg: f64,
}

/// What a strap does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StrapKind {
    /// Holds the plate down.
    HoldingDown,
    /// Holds a gable to the slope.
    LateralSlope,
    /// Holds a gable to the ceiling joists.
    LateralCeiling,
}

/// The straps along one line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StrapPlace {
    /// What they do.
    pub kind: StrapKind,
    /// Letter of the wall.
    pub wall: String,
    /// Where the tape hooks on, in words.
    pub from: String,
    /// Length of the line, mm.
    pub length_mm: f64,
    /// Where they stand along it, mm.
    pub at_mm: Vec<f64>,
    /// Where they stand in the roof, mm.
    pub points: Vec<[f64; 3]>,
    /// Thickness and width of the strap, mm.
    pub size: Size,
    /// How the spacing was come by.
    pub standing: Standing,
}

/// Where nothing may be stacked.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NoStack {
    /// Where.
    pub at: String,
    /// Why, and what to do instead.
    pub why: String,
    /// The clear span that it is about, mm.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub span_mm: Option<f64>,
    /// From this step, to that step.
    pub steps: [u32; 2],
}

/// A short caution with who decides.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Caution {
    /// What.
    pub text: String,
    /// Who decides.
    pub decides: String,
}

/// How a figure was come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Seen in print.
    Published,
    /// A source is named, the value recalled.
    Memory,
    /// From first principles.
    Derived,
    /// A habit of the trade.
    CommonPractice,
}

impl From<roof::rules::Standing> for Standing {
    fn from(standing: roof::rules::Standing) -> Self {
        use roof::rules::Standing as From;
        match standing {
            From::Published => Self::Published,
            From::Memory => Self::Memory,
            From::Derived => Self::Derived,
            From::CommonPractice => Self::CommonPractice,
        }
    }
}
