//! What a covered roof is: plain data in mm, m, m², kg, degrees.

pub use super::count::Cuts;
use roof::solution::NoticeLevel;
use serde::{Deserialize, Serialize};

/// A covered roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Covered {
    /// Name of the covering, e.g. `plain-tile`.
    pub covering: String,
    /// What it is called.
    pub called: String,
    /// Its slopes, in the order of the solution's faces.
    pub slopes: Vec<SlopeCovered>,
    /// Area of all of them, without the holes, m².
    pub area_m2: f64,
    /// What the covering weighs on the roof, kg: pieces, ridge and hips.
    pub weight_kg: Option<f64>,
    /// The same for each m² of slope.
    pub kg_per_m2: Option<f64>,
    /// What to order, by item.
    pub lines: Vec<CoverLine>,
    /// Battens; none on boards.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub battens: Option<Battens>,
    /// The underlay.
    pub underlay: Underlay,
    /// Openings for air.
    pub vents: Vec<Vent>,
    /// What the roofer must know.
    pub notices: Vec<CoverNotice>,
    /// Where the figures are from.
    pub sources: Vec<Source>,
}

/// A slope as it is covered.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SlopeCovered {
    /// Letters of its walls.
    pub walls: Vec<String>,
    /// Which slope, in words.
    pub place: String,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// Area with its overhangs and without its holes, m².
    pub area_m2: f64,
    /// From the tails at the eaves up to the top, on the slope, mm.
    pub length_mm: f64,
    /// Courses on battens, with those at eaves and top.
    pub courses: u64,
    /// One gauge from eaves to top, mm.
    pub gauge_mm: f64,
    /// The head lap that it leaves, mm.
    pub lap_mm: f64,
    /// Whole pieces.
    pub whole: u64,
    /// Cut pieces of whole courses.
    pub cut: u64,
    /// Short pieces under the eaves course and in the top one.
    pub short: u64,
    /// Wide pieces at verges.
    pub wide: u64,
    /// Cut pieces of every course, by what cuts them.
    pub cuts: Cuts,
    /// What shows of the courses, m²: as much as the slope.
    pub shown_m2: f64,
    /// Battens, m.
    pub batten_m: f64,
    /// Underlay, m².
    pub underlay_m2: f64,
}

/// A line of the order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CoverLine {
    /// Stable name, to which a price is put, e.g. `ridge-piece`.
    pub item: String,
    /// In words.
    pub what: String,
    /// What the roof takes, in `unit`.
    pub net: f64,
    /// What to order, in `unit`: with breakage, laps and whole pieces.
    pub quantity: f64,
    /// Unit.
    pub unit: CoverUnit,
    /// What is on the roof of it weighs so much, kg, where that is known; the line of the covering has the weight of its
    /// short and wide pieces too.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub kg: Option<f64>,
    /// Weight of one whole piece as it is delivered, kg, where that is known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub each_kg: Option<f64>,
    /// How it is counted, in words.
    pub from: String,
}

/// Unit of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoverUnit {
    /// Pieces.
    Each,
    /// Metres.
    M,
    /// Square metres.
    M2,
    /// Rolls.
    Roll,
    /// Kilograms.
    Kg,
}

/// Battens of a roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Battens {
    /// Thickness and width, mm.
    pub size_mm: [f64; 2],
    /// Metres on the roof.
    pub metres: f64,
    /// No batten is shorter than this, mm.
    pub least_length_mm: f64,
    /// Or lies on fewer rafters than this.
    pub least_supports: u32,
    /// Nails are at least this thick, mm.
    pub nail_mm: f64,
    /// Where joints lie, in words.
    pub joints: String,
}

/// The underlay of a roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Underlay {
    /// Head lap by pitch, mm: the greatest of the roof.
    pub head_lap_mm: f64,
    /// Side lap, mm.
    pub side_lap_mm: f64,
    /// With its laps, m².
    pub area_m2: f64,
    /// Rolls.
    pub rolls: u64,
}

/// An opening for air along an edge.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Vent {
    /// Item of the order it is listed under.
    pub item: String,
    /// Where.
    pub place: String,
    /// Height of a slot along the whole edge, mm.
    pub slot_mm: f64,
    /// Length of the edge, mm.
    pub length_mm: f64,
    /// Free area, mm².
    pub area_mm2: f64,
}

/// What the roofer must know.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CoverNotice {
    /// Short fixed code.
    pub code: String,
    /// Level.
    pub level: NoticeLevel,
    /// What, and what to do.
    pub text: String,
    /// Where.
    #[serde(rename = "where")]
    pub place: String,
}

/// Where a figure is from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Source {
    /// Which figure, with its value.
    pub figure: String,
    /// Title and table or clause.
    pub source: String,
    /// How it was come by.
    pub standing: String,
}
