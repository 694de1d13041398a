//! Joist hangers at trimmed openings, by the size of what hangs in them.

use super::figures::Figures;
use super::joints::Found;
use super::line::{Line, LineKind};
use geometry::DVec3;
use job::Per;
use roof::rules::Standing;
use roof::solution::{MemberKind, Solution};
use std::collections::{BTreeMap, BTreeSet};
use strength::carrying::is_rafter;

/// A contact across the end of a timber: its normal lies along the timber to within this (cosine).
const ACROSS_END: f64 = 0.9;

/// Sizes are told apart to this, mm.
const TOLD_APART: f64 = 0.1;

/// Hangers of one size.
pub(super) struct Hung {
    /// Width of what hangs in it: of several timbers side by side together, mm.
    pub thickness: f64,
    /// Depth, mm.
    pub depth: f64,
    /// How many.
    pub count: u32,
    /// How many hold trimmers; the others hold cut timbers.
    pub trimmers: u32,
}

/// Hangers of a roof, from where the ends of trimmers and of cut timbers touch.
pub(super) fn hung(solution: &Solution, found: &Found<'_>) -> Vec<Hung> {
    let members = &solution.members;
    let pack = packs(found);
    let mut trimmer_ends: BTreeSet<(usize, bool)> = BTreeSet::new();
    let mut cut_ends: Vec<usize> = Vec::new();
    for touch in &found.touches {
        let (Some(a), Some(b)) = (members.get(touch.a), members.get(touch.b)) else { continue };
        let (trimmer, other) = match (a.kind, b.kind) {
            (MemberKind::Trimmer, kind) if holds(kind) => (touch.a, touch.b),
            (kind, MemberKind::Trimmer) if holds(kind) => (touch.b, touch.a),
            _ => continue,
        };
        let normal = touch.from(trimmer).map_or(touch.normal, |(_, normal)| normal);
        let along = |k: usize| members.get(k).map_or(DVec3::ZERO, |m| DVec3::from_array(m.bench.along));
        let end = along(trimmer).dot(normal);
        if end.abs() > ACROSS_END {
            trimmer_ends.insert((pack.get(&trimmer).copied().unwrap_or(trimmer), end > 0.0));
        } else if along(other).dot(normal).abs() > ACROSS_END {
            cut_ends.push(other);
        }
    }
    let mut sizes: BTreeMap<(i64, i64), (u32, u32)> = BTreeMap::new();
    for (first, _) in trimmer_ends {
        let Some(member) = members.get(first) else { continue };
        let beside = pack.iter().filter(|(_, of)| **of == first);
        let wide: f64 = beside.filter_map(|(k, _)| members.get(*k)).map(|m| m.size.thickness_mm).sum();
        let entry = sizes.entry((steps(wide.max(member.size.thickness_mm)), steps(member.size.depth_mm))).or_default();
        entry.0 += 1;
        entry.1 += 1;
    }
    for member in cut_ends.into_iter().filter_map(|k| members.get(k)) {
        sizes.entry((steps(member.size.thickness_mm), steps(member.size.depth_mm))).or_default().0 += 1;
    }
    let one = |((thickness, depth), (count, trimmers)): ((i64, i64), (u32, u32))| Hung {
        thickness: thickness as f64 * TOLD_APART,
        depth: depth as f64 * TOLD_APART,
        count,
        trimmers,
    };
    sizes.into_iter().map(one).collect()
}

fn holds(kind: MemberKind) -> bool {
    is_rafter(kind) || kind == MemberKind::CeilingJoist
}

fn steps(mm: f64) -> i64 {
    (mm / TOLD_APART).round() as i64
}

/// For every trimmer, the first of those that lie side by side with it.
fn packs(found: &Found<'_>) -> BTreeMap<usize, usize> {
    let trimmer = |k: usize| found.members.get(k).is_some_and(|m| m.kind == MemberKind::Trimmer);
    let mut first: BTreeMap<usize, usize> = (0..found.members.len()).filter(|k| trimmer(*k)).map(|k| (k, k)).collect();
    for touch in found.touches.iter().filter(|t| trimmer(t.a) && trimmer(t.b)) {
        let along = found.members.get(touch.a).map_or(DVec3::ZERO, |m| DVec3::from_array(m.bench.along));
        if along.dot(touch.normal).abs() > ACROSS_END {
            continue;
        }
        let (a, b) = (first.get(&touch.a).copied(), first.get(&touch.b).copied());
        if let (Some(a), Some(b)) = (a, b) {
            let (low, high) = (a.min(b), a.max(b));
            first.values_mut().filter(|of| **of == high).for_each(|of| *of = low);
        }
    }
    first
}

/// Lines for hangers.
pub(super) fn lines(hung: &[Hung], figures: &Figures) -> Vec<Line> {
    let line = |h: &Hung| {
        let cut = h.count - h.trimmers;
        Line {
            item: format!("joist-hanger-{}x{}", h.thickness, h.depth).replace('.', "-"),
            what: "joist hangers, galvanised".to_owned(),
            size: format!("for timber {} × {} mm", h.thickness, h.depth),
            quantity: f64::from(h.count),
            unit: Per::Each,
            kg: f64::from(h.count) * figures.hangers.weight.value,
            counted: format!("ends of trimmers {}, ends of cut timbers {cut}", h.trimmers),
            source: "one to each hung end; the maker declares what one carries, and which nails fill it".to_owned(),
            standing: Standing::CommonPractice.to_string(),
            kind: LineKind::Counted,
        }
    };
    hung.iter().map(line).collect()
}
