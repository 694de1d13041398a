//! Sizes of splices, from the rules of the region (reference/geometry.md
//! section 7).

use crate::rules::{self, Id};
use job::{JointRules, SpliceKind, Wood};

/// Sizes of the splices in a timber, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proportions {
    /// Length of a scarf.
    pub scarf_length: f64,
    /// Deepest indent of a hooked scarf: the wood between it and the tip must
    /// not shear off.
    pub indent: f64,
    /// Length of a butt with wooden fish plates.
    pub fish_length: f64,
    /// Thickness of each fish plate.
    pub fish_thickness: f64,
    /// Least sum of the areas of the bolts where the timber is pulled, mm².
    pub bolt_area: f64,
    /// Where bolts may stand.
    pub bolts: BoltRules,
}

/// Where bolts may stand, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoltRules {
    /// Diameter.
    pub diameter: f64,
    /// Least distance from an end.
    pub end: f64,
    /// Least distance from an edge.
    pub edge: f64,
    /// Least distance along the grain.
    pub along: f64,
    /// Least distance across the grain.
    pub across: f64,
}

/// The proportions for a timber of this thickness and depth in mm, in a region.
///
/// A scarf is a multiple of the depth by wood and fastening (Tredgold); its
/// indents are as deep as the length from them to the tip can bear in shear;
/// fish plates are of wood (ICS 1899); bolts keep to EN 1995-1-1 table 8.4.
#[must_use]
pub fn proportions(region: &str, thickness: f64, depth: f64, joint: &JointRules) -> Proportions {
    let rules = rules::of(region);
    let indented = joint.kind == SpliceKind::Hooked;
    let (times, shear) = match (joint.wood, joint.bolted, indented) {
        (Wood::Softwood, false, _) => (Id::ScarfSoftwoodPlain, Id::IndentShearSoftwood),
        (Wood::Softwood, true, false) => (Id::ScarfSoftwoodBolted, Id::IndentShearSoftwood),
        (Wood::Softwood, true, true) => (Id::ScarfSoftwoodIndented, Id::IndentShearSoftwood),
        (Wood::Hardwood, false, _) => (Id::ScarfHardwoodPlain, Id::IndentShearHardwood),
        (Wood::Hardwood, true, false) => (Id::ScarfHardwoodBolted, Id::IndentShearHardwood),
        (Wood::Hardwood, true, true) => (Id::ScarfHardwoodIndented, Id::IndentShearHardwood),
    };
    let scarf_length = rules.value(times) * depth;
    let diameter = rules.value(Id::BoltDiameter);
    Proportions {
        scarf_length,
        indent: scarf_length / 2.0 / rules.value(shear),
        fish_length: rules.value(Id::FishPlateLength) * depth,
        fish_thickness: rules.value(Id::FishPlateThickness) * depth,
        bolt_area: rules.value(Id::BoltArea) * thickness * depth,
        bolts: BoltRules {
            diameter,
            end: (rules.value(Id::BoltLoadedEnd) * diameter).max(rules.value(Id::BoltLoadedEndLeast)),
            edge: rules.value(Id::BoltUnloadedEdge) * diameter,
            along: rules.value(Id::BoltSpacingAlong) * diameter,
            across: rules.value(Id::BoltSpacingAcross) * diameter,
        },
    }
}
