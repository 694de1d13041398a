//! What a solve returns: plain data in mm, degrees, m² and m³, written as the
//! JSON document of `solve --json`. Sheets and screens draw from this and
//! compute nothing.

mod holes;
mod member_kind;
mod survey;

pub use holes::{GableOut, OpeningOut};
pub use member_kind::MemberKind;
pub use survey::{LevelOut, LevelsOut, MeasurementKind, MeasurementOut, SurveyOut, WorstOut};

pub use crate::lengthening::{BoltOut, BoltWay, SpliceForm, SpliceOut};
use serde::{Deserialize, Serialize};

/// Version of the document.
pub const FORMAT: u32 = 1;

/// A solved job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Solution {
    /// [`FORMAT`].
    pub format: u32,
    /// Title of the job.
    pub title: String,
    /// Date to print, as written in the job.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub date: Option<String>,
    /// Revision to print, as written in the job.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub revision: Option<String>,
    /// Region of the job.
    pub region: String,
    /// `"mm"` or `"feet-inches"`: how sheets write lengths.
    pub show: String,
    /// The plan as solved.
    pub plan: PlanOut,
    /// Sloping faces.
    pub faces: Vec<FaceOut>,
    /// Lines of the roof surface.
    pub lines: Vec<LineOut>,
    /// Every timber.
    pub members: Vec<Member>,
    /// Members that are cut alike share a pattern piece, one card each.
    pub pieces: Vec<PatternPiece>,
    /// Where each timber stands along plates and ridges.
    pub setting_out: Vec<SettingOut>,
    /// The masonry of gables and other upright pieces of wall.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub gables: Vec<GableOut>,
    /// Openings in the slopes.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub openings: Vec<OpeningOut>,
    /// Key figures.
    pub totals: Totals,
    /// What the carpenter must know.
    pub notices: Vec<Notice>,
}

/// The plan as solved.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanOut {
    /// Outer corners of the roof lines, anticlockwise, mm.
    pub corners: Vec<[f64; 2]>,
    /// Corners of the plates as measured, loop by loop, mm; absent where the
    /// roof is set out to them as they are.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub measured: Vec<Vec<[f64; 2]>>,
    /// Courtyards, clockwise, mm.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub holes: Vec<Vec<[f64; 2]>>,
    /// Closing error of a measured plan, mm: by how much the measurement that
    /// disagrees most differs from what all the others say. 0 for a plan given
    /// by corners.
    pub closing_error_mm: f64,
    /// What was measured, and what became of it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub survey: Option<SurveyOut>,
    /// Walls in lettering order.
    pub walls: Vec<WallOut>,
}

/// A wall of the plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WallOut {
    /// Letter.
    pub id: String,
    /// Start of its plate line, mm.
    pub from: [f64; 2],
    /// End of its plate line, mm.
    pub to: [f64; 2],
    /// Length of the plate line, mm.
    pub length_mm: f64,
    /// A gable: no slope rises from it.
    pub gable: bool,
    /// Pitch, degrees (absent on gables).
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pitch_deg: Option<f64>,
    /// Overhang in plan: of the eaves, or of the verge on gables, mm.
    pub overhang_mm: f64,
    /// Where the plate is bedded off the line of the wall as measured; absent
    /// where it is bedded on it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub bed: Option<BedOut>,
}

/// How a plate stands to its wall as measured, mm: out of it (+) or in (-),
/// looking at the outer face.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct BedOut {
    /// Where the wall starts.
    pub start_mm: f64,
    /// Where it ends.
    pub end_mm: f64,
}

/// A sloping face, on its pitch plane and to the plate lines.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FaceOut {
    /// Letter of its first wall.
    pub id: String,
    /// Letters of the walls in one line that share it.
    pub walls: Vec<String>,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// Area in plan, m².
    pub plan_area_m2: f64,
    /// Area on the slope, m².
    pub slope_area_m2: f64,
    /// Outline, anticlockwise from above, mm.
    pub outline: Vec<[f64; 3]>,
}

/// Kind of a line of the roof surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LineKind {
    /// Both faces fall away, nearly opposite ways: level, unless their walls
    /// are not parallel.
    Ridge,
    /// Sloping, both faces fall away.
    Hip,
    /// Both faces fall towards it.
    Valley,
    /// The plate line.
    Eaves,
    /// The edge at a gable.
    Verge,
    /// Level: a flatter face takes over from a steeper one.
    PitchBreak,
}

/// A line of the roof surface, on the pitch planes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LineOut {
    /// Kind.
    pub kind: LineKind,
    /// Ids of the faces on its sides.
    pub faces: Vec<String>,
    /// Lower end, mm.
    pub from: [f64; 3],
    /// Upper end, mm.
    pub to: [f64; 3],
    /// True length, mm.
    pub length_mm: f64,
    /// Slope of the line from level, degrees.
    pub pitch_deg: f64,
    /// On hips and valleys: the backing angle to the face on either side, degrees.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub backing_deg: Option<[f64; 2]>,
}

/// Thickness and depth, mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Size {
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Depth, mm.
    pub depth_mm: f64,
}

/// A timber.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Member {
    /// Its own mark, unique in the job.
    pub mark: String,
    /// Kind.
    pub kind: MemberKind,
    /// Letter of the wall whose face it lies in or plate it is; hips, valleys
    /// and ridges have none.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub wall: Option<String>,
    /// Section.
    pub size: Size,
    /// Mark of the pattern piece it is cut from.
    pub count_as: String,
    /// If its pattern piece is the mirror of another: that piece's mark.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub mirror_of: Option<String>,
    /// On the pitch line, from the plate line (or the centre of the valley) to
    /// the centre of the ridge, hip or valley, mm.
    pub true_length_mm: f64,
    /// What the timber is cut shorter than its true length, each named.
    pub deductions: Vec<Deduction>,
    /// Long point to long point along the top edge, mm.
    pub cut_length_mm: f64,
    /// Shortest stock that yields it, mm.
    pub stock_length_mm: f64,
    /// Slope of the timber from level, degrees.
    pub pitch_deg: f64,
    /// The pitch line.
    pub axis: AxisOut,
    /// Its cuts, from foot to head.
    pub cuts: Vec<Cut>,
    /// Birdsmouth over the plate.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub birdsmouth: Option<Birdsmouth>,
    /// How far a dropped hip is lowered, plumb, mm.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub drop_mm: Option<f64>,
    /// Backing angles left and right, looking from foot to head, degrees from
    /// square across.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub backing_deg: Option<[f64; 2]>,
    /// Net volume, m³.
    pub volume_m3: f64,
    /// Where the bench axes lie in the world; see [`Bench`].
    pub bench: Bench,
    /// Marks to pull with a tape from the foot end along the top edge, in the
    /// order of the tape.
    pub marks: Vec<TapeMark>,
    /// Splices to the next lengths of the same timber, from the foot.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub splices: Vec<SpliceOut>,
    /// Firring stands on it: what of its solid rises above its own top is
    /// pieces of their own, and not cut from it.
    #[serde(skip_serializing_if = "core::ops::Not::not", default)]
    pub firred: bool,
    /// The timber as it stands in the roof, mm.
    pub solid: SolidOut,
}

/// A pitch line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct AxisOut {
    /// Foot, mm.
    pub from: [f64; 3],
    /// Head, mm.
    pub to: [f64; 3],
}

/// A named deduction from the true length.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Deduction {
    /// What is deducted, e.g. `half the ridge thickness`.
    pub why: String,
    /// Level, square off the plumb line, mm.
    pub mm: f64,
    /// The same along the pitch line, mm.
    pub slope_mm: f64,
    /// `head` or `foot`.
    pub at: CutPlace,
}

/// Which end of a timber.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CutPlace {
    /// The end beyond the plate.
    Tail,
    /// At the plate or valley.
    Foot,
    /// At the ridge or hip.
    Head,
}

/// One cut: a plane, marked in the timber's own axes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cut {
    /// Name of the cut, e.g. `head cheek, left`.
    pub name: String,
    /// Where.
    pub at: CutPlace,
    /// On the wide side, from square across, degrees; the pitch on a plumb cut.
    pub face_angle_deg: f64,
    /// On the top edge, from square across, degrees.
    pub edge_angle_deg: f64,
    /// Saw settings with the stock on its wide side.
    pub saw: SawSetting,
    /// Run and rise to set on the roofing square for the face angle.
    pub square: SquareSetting,
    /// Run and rise to set on the roofing square for the edge angle.
    pub edge_square: SquareSetting,
    /// Bevel gauge for the face angle: mm in 100.
    pub bevel_mm_in_100: f64,
    /// Bevel gauge for the edge angle: mm in 100.
    pub edge_bevel_mm_in_100: f64,
    /// Mark of the timber it lies against, if any.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub against: Option<String>,
}

/// Saw settings.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SawSetting {
    /// Mitre scale, from square, degrees.
    pub mitre_deg: f64,
    /// Blade tilt from upright, degrees.
    pub tilt_deg: f64,
}

/// What to hold on blade and tongue; the cut is marked along the rise.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SquareSetting {
    /// On the blade, mm.
    pub run: f64,
    /// On the tongue, mm.
    pub rise: f64,
}

/// A birdsmouth.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Birdsmouth {
    /// Square to the timber from its underside, mm.
    pub depth_mm: f64,
    /// Length of the level seat, mm.
    pub seat_mm: f64,
    /// Height of the plumb heel, mm.
    pub plumb_mm: f64,
    /// Plumb height left above the plate, mm.
    pub upstand_mm: f64,
}

/// The timber lying on the bench. Bench axes: `along` from foot to head, `up`
/// the depth, `across` the thickness (to the left, looking from foot to head
/// with the top edge up); `origin` is on the underside line at mid thickness,
/// square below the footmost point.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bench {
    /// World position of the bench origin, mm.
    pub origin: [f64; 3],
    /// World direction of the length.
    pub along: [f64; 3],
    /// World direction of the depth.
    pub up: [f64; 3],
    /// World direction of the thickness.
    pub across: [f64; 3],
    /// The solid's points in bench axes `[along, up, across]`, same order, mm.
    pub points: Vec<[f64; 3]>,
}

/// A mark to pull on the timber.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TapeMark {
    /// What to mark, e.g. `heel plumb line`.
    pub name: String,
    /// Left end of the cut's line on the top edge, from the foot end, mm.
    pub left_mm: f64,
    /// Right end of it, from the foot end, mm.
    pub right_mm: f64,
    /// Where across the edge the left end lies, from its middle, mm: half the
    /// thickness on the left arris, less where a pointed end meets another cut.
    pub left_across_mm: f64,
    /// The same for the right end; negative to the right of the middle.
    pub right_across_mm: f64,
    /// Face angle of the line from there, from square across, degrees.
    pub face_angle_deg: f64,
    /// Where.
    pub at: CutPlace,
}

/// A closed solid. Faces are loops of point numbers, anticlockwise from outside.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct SolidOut {
    /// Points, mm.
    pub points: Vec<[f64; 3]>,
    /// Faces.
    pub faces: Vec<Vec<u32>>,
    /// What made each face: `top`, `underside`, `left`, `right`, or the name of
    /// a cut; same order as `faces`.
    pub names: Vec<String>,
}

/// Members cut alike.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PatternPiece {
    /// Its mark: that of the member whose figures the card shows.
    pub mark: String,
    /// Kind.
    pub kind: MemberKind,
    /// How many to cut.
    pub count: u32,
    /// Marks of all members cut from it, its own among them.
    pub members: Vec<String>,
    /// The piece that is its mirror image, if the job has one.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub mirror_of: Option<String>,
    /// How far any of them differs from it in any size, mm; 0 where that is
    /// less than a pencil line.
    #[serde(skip_serializing_if = "is_nothing", default)]
    pub differ_mm: f64,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks with a reference")]
fn is_nothing(mm: &f64) -> bool {
    *mm == 0.0
}

/// A strip of running dimensions along a plate or ridge.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SettingOut {
    /// What it runs along, e.g. `plate A` or `ridge R1`.
    pub name: String,
    /// Mark of the plate or ridge, if it is a timber.
    pub mark: String,
    /// Where the tape hooks on, in words.
    pub from: String,
    /// Length of the timber, mm.
    pub length_mm: f64,
    /// Marks along it, in the order of the tape.
    pub stations: Vec<Station>,
}

/// One mark on a setting-out strip.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Station {
    /// Mark of the member that stands here.
    pub mark: String,
    /// Its kind.
    pub kind: MemberKind,
    /// Running dimension to its near face, mm.
    pub near_mm: f64,
    /// Running dimension to its far face, mm.
    pub far_mm: f64,
    /// On ridges: `left` or `right` looking from the tape's hook; on plates `inside`.
    pub side: String,
    /// Firring under it on this plate, mm; absent where the plate needs none.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub firring_mm: Option<f64>,
}

/// Key figures.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Totals {
    /// Plan area inside the plate lines, m².
    pub plan_area_m2: f64,
    /// Slope area inside the plate lines, m².
    pub slope_area_m2: f64,
    /// Highest point of the surface above the plates (pitch planes), mm.
    pub rise_mm: f64,
    /// Height of the rafters' top faces above the pitch planes, plumb, mm.
    pub upstand_mm: f64,
    /// Number of timbers.
    pub members: u32,
    /// Number of pattern pieces.
    pub pieces: u32,
    /// Net volume of timber, m³.
    pub timber_m3: f64,
    /// Joist hangers at trimmed openings.
    #[serde(skip_serializing_if = "is_none", default)]
    pub hangers: u32,
}

const fn is_none(count: &u32) -> bool {
    *count == 0
}

/// How serious a notice is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NoticeLevel {
    /// The job can't be built as asked.
    Stop,
    /// Look at this before cutting.
    Warn,
    /// Good to know.
    Note,
}

/// What the carpenter must know.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Notice {
    /// Short fixed code, e.g. `birdsmouth-deep`.
    pub code: String,
    /// Level.
    pub level: NoticeLevel,
    /// What, and what to do.
    pub text: String,
    /// Where: a wall letter, a corner, a mark.
    #[serde(rename = "where")]
    pub place: String,
}
