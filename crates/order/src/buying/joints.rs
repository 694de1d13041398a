//! Joints of a roof: the places where its timbers touch, each with the rule that holds it.

use super::figures::{Figures, JointRule};
use geometry::DVec3;
use roof::solution::{Member, MemberKind, Solution, SpliceForm};
use strength::carrying::touch::{Touch, touches};

/// Touches of the same two timbers nearer than this are one joint, mm: seat and heel of a birdsmouth, the faces of a
/// lap. A timber that meets another at both of its ends does so further apart.
const ONE_JOINT: f64 = 400.0;

/// All joints of a roof.
pub(super) struct Found<'a> {
    /// The timbers.
    pub members: &'a [Member],
    /// Every place where two of them touch.
    pub touches: Vec<Touch>,
    /// The joints, in the order of the timbers.
    pub joints: Vec<Joint<'a>>,
    /// Splices without bolts, each once.
    pub dry_splices: Vec<SpliceForm>,
}

/// A joint.
pub(super) struct Joint<'a> {
    /// Its timbers by their numbers.
    pub of: [usize; 2],
    /// What holds it.
    pub rule: &'a JointRule,
}

impl Joint<'_> {
    /// How many fixings its rule puts in it, by length where that counts.
    pub fn count(&self, members: &[Member], each: u32) -> u32 {
        let Some(every) = self.rule.every.filter(|every| *every > 0.0) else { return each };
        let length = self.of.iter().filter_map(|k| members.get(*k)).map(|m| m.cut_length_mm);
        let shared = length.fold(f64::INFINITY, f64::min);
        let places = ((shared / every).floor().max(0.0) as u32).saturating_add(1);
        if shared.is_finite() { each.saturating_mul(places) } else { each }
    }
}

/// Finds the joints of a roof.
pub(super) fn found<'a>(solution: &'a Solution, figures: &'a Figures) -> Found<'a> {
    let members = solution.members.as_slice();
    let touches = touches(members, |_| true);
    let mut joints = Vec::new();
    let mut pair: Option<[usize; 2]> = None;
    let mut places: Vec<DVec3> = Vec::new();
    // Touches come in the order of their timbers, so those of a pair follow one another.
    for touch in &touches {
        let of = [touch.a, touch.b];
        if pair != Some(of) {
            pair = Some(of);
            places.clear();
        }
        if places.iter().any(|p| p.distance(touch.at) < ONE_JOINT) {
            continue;
        }
        places.push(touch.at);
        let (Some(a), Some(b)) = (members.get(touch.a), members.get(touch.b)) else { continue };
        if spliced(a, b) {
            continue;
        }
        if let Some(rule) = figures.joints.iter().find(|rule| rule.fits(a.kind, b.kind)) {
            joints.push(Joint { of, rule });
        }
    }
    Found { members, touches, joints, dry_splices: dry_splices(members) }
}

/// Whether two lengths are spliced together.
fn spliced(a: &Member, b: &Member) -> bool {
    a.splices.iter().any(|s| s.mate == b.mark) || b.splices.iter().any(|s| s.mate == a.mark)
}

/// Splices that bolts do not hold. Each is told by both of its halves; the one towards the foot counts.
fn dry_splices(members: &[Member]) -> Vec<SpliceForm> {
    halves(members).filter(|(_, splice)| splice.bolts.is_empty()).map(|(_, splice)| splice.kind).collect()
}

/// Every splice once, with its half towards the foot.
pub(super) fn halves(members: &[Member]) -> impl Iterator<Item = (&Member, &roof::solution::SpliceOut)> {
    let timber = |m: &&Member| !matches!(m.kind, MemberKind::FishPlate | MemberKind::Wedge);
    members.iter().filter(timber).flat_map(|m| {
        let head = m.splices.iter().filter(|s| s.at == roof::solution::CutPlace::Head);
        head.map(move |s| (m, s))
    })
}
