//! Splices in the document.

use super::types::Splice;
use crate::marking::Axes;
use crate::solution::CutPlace;
use geometry::DVec3;
use serde::{Deserialize, Serialize};

/// How two lengths are joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SpliceForm {
    /// Each half loses half its depth: wall plates.
    HalfLap,
    /// A square butt with a fish plate on either side.
    FishPlates,
    /// A long slant with a square butt at either end.
    Splayed,
    /// Two tables half the depth, hooked into one another, with undercut ends
    /// and folding wedges between the hooks.
    Hooked,
    /// A 45° mitre through the thickness: boards.
    BoardSplay,
}

/// Which way a bolt goes through a timber.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BoltWay {
    /// From one wide side to the other.
    Thickness,
    /// From the top edge to the underside, at mid thickness.
    Depth,
}

/// A splice as one of its halves, or what holds it together, sees it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SpliceOut {
    /// How it is made.
    pub kind: SpliceForm,
    /// At which end of this member.
    pub at: CutPlace,
    /// Where it starts, from the foot end of this member, mm.
    pub from_mm: f64,
    /// Its length along the timber, mm.
    pub length_mm: f64,
    /// Mark of the other half; on fish plates and wedges, of the half towards
    /// the foot.
    pub mate: String,
    /// Bolt holes, from the foot.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub bolts: Vec<BoltOut>,
    /// Taper of its folding wedges, mm in 100.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub wedge_mm_in_100: Option<f64>,
}

/// A bolt hole, in the member's bench axes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct BoltOut {
    /// From the foot end, mm.
    pub along_mm: f64,
    /// Above the underside, mm: of the hole, or of the joint where a bolt up the
    /// depth crosses it.
    pub up_mm: f64,
    /// Which way it goes through.
    pub through: BoltWay,
    /// Diameter of the bolt, mm.
    pub diameter_mm: f64,
}

/// The splices of a timber whose wood starts `start` mm along its axes.
pub fn splices(splices: &[Splice], axes: &Axes, start: f64, marks: &[String]) -> Vec<SpliceOut> {
    let along = |p: DVec3| axes.point(p) - DVec3::X * start;
    splices
        .iter()
        .map(|s| SpliceOut {
            kind: s.form,
            at: s.at,
            from_mm: along(s.start).x,
            length_mm: s.length,
            mate: marks.get(s.mate.index()).cloned().unwrap_or_default(),
            bolts: s
                .bolts
                .iter()
                .map(|b| {
                    let at = along(b.at);
                    BoltOut { along_mm: at.x, up_mm: at.y, through: b.way, diameter_mm: b.diameter }
                })
                .collect(),
            wedge_mm_in_100: s.wedge_taper.map(|t| 100.0 * t),
        })
        .collect()
}
