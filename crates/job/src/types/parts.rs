//! What is fitted to the frame of rafters, and how timbers are made longer.

use super::Section;
use schemars::JsonSchema;

/// What is fitted to the frame of rafters; what the job does not name is left
/// out.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Parts {
    /// Purlins under the rafters.
    pub purlin: Option<PurlinTimber>,
    /// Struts from load-bearing lines up to the purlins.
    pub strut: Option<SpacedTimber>,
    /// Collars across pairs of rafters.
    pub collar: Option<CollarTimber>,
    /// Ceiling joists, lapped to the feet of the rafters.
    pub ceiling_joist: Option<Section>,
    /// Binders across the ceiling joists.
    pub binder: Option<Section>,
    /// Hangers from purlin or rafter down to the binders.
    pub hanger: Option<SpacedTimber>,
    /// Angle ties across hipped corners.
    pub angle_tie: Option<Section>,
    /// Dragon ties from the corner of the plates to the angle tie.
    pub dragon_tie: Option<Section>,
    /// Rungs of gable ladders under the verge.
    pub ladder: Option<SpacedTimber>,
    /// Rows of noggins between rafters.
    pub noggin: Option<NogginTimber>,
    /// Fascia boards: thickness and depth.
    pub fascia: Option<Section>,
    /// Soffit boards: `thickness`; the width follows from the overhang, and
    /// `depth` is the widest board to be had.
    pub soffit: Option<Section>,
    /// Tilting fillets: height at the fascia, and width up the slope.
    pub fillet: Option<Section>,
    /// Barge boards: thickness and depth.
    pub barge: Option<Section>,
    /// Boards laid on the main slope under dormer valleys.
    pub lay_board: Option<Section>,
}

/// A timber at a greatest distance from centre to centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpacedTimber {
    /// Section.
    pub size: Section,
    /// Greatest distance between centre lines, mm.
    pub centres: f64,
}

/// Purlins.
#[derive(Clone, Debug, PartialEq)]
pub struct PurlinTimber {
    /// Section.
    pub size: Section,
    /// How they stand.
    pub set: PurlinSet,
    /// Where they lie: distances up the slope from the plate line, mm, in
    /// rising order. Empty: halfway up the common rafters.
    pub up: Vec<f64>,
}

/// How purlins stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum PurlinSet {
    /// Square to the slope, under the rafters.
    Square,
    /// Plumb, with the rafters birdsmouthed over them.
    Plumb,
}

/// Collars.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CollarTimber {
    /// Section.
    pub size: Section,
    /// Height of their underside above the plates, mm.
    pub height: f64,
    /// One collar to every so many pairs of rafters.
    pub every: u32,
}

/// Noggins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NogginTimber {
    /// Section.
    pub size: Section,
    /// How many rows share the slope of the common rafters equally.
    pub rows: u32,
}

/// How timbers longer than the stock are made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointRules {
    /// Longest timber to be had, mm.
    pub longest: f64,
    /// Which splice.
    pub kind: SpliceKind,
    /// Whether bolts help a scarf.
    pub bolted: bool,
    /// What wood, for the proportions of the splice.
    pub wood: Wood,
}

impl JointRules {
    /// No timber is too long; plain rules otherwise.
    pub const NONE_NEEDED: Self =
        Self { longest: f64::INFINITY, kind: SpliceKind::FishPlates, bolted: true, wood: Wood::Softwood };
}

/// How two lengths are made into one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum SpliceKind {
    /// Butted, with bolted fish plates on both sides.
    FishPlates,
    /// A plain splayed scarf.
    Splayed,
    /// A hooked scarf with undercut ends and folding wedges.
    Hooked,
}

/// What wood a splice is made in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum Wood {
    /// Fir and other straight-grained softwood.
    Softwood,
    /// Oak, ash, elm.
    Hardwood,
}
