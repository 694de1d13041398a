//! Bracing that stays: diagonals under the rafters of slopes that no hip holds along the ridge.

use super::graph::{Graph, Timber};
use super::order::systems::Systems;
use super::rules::RackingRules;
use super::types::{Nailed, Racking};
use geometry::{Angle, DVec3};
use roof::solution::{MemberKind, Size};
use std::collections::{BTreeMap, BTreeSet};
use strength::carrying::is_rafter;

/// A diagonal keeps this far from the head of a rafter and from what its foot stands on, mm: clear of birdsmouth and
/// ridge.
const CLEAR: f64 = 250.0;
/// Least number of rafters that a diagonal holds together.
const LEAST_RAFTERS: usize = 2;

/// One rafter of a slope.
struct Line {
    timber: usize,
    /// Along the ridge or break that its head is on, mm from that timber's first length.
    across: f64,
    /// Where what its foot stands on ends, mm along it: the inner edge of the plate, and not the tail.
    stands_to: f64,
}

/// Diagonals for every slope whose ridge or break has no hip at either end; one at each end of a long slope.
pub fn permanent(graph: &Graph<'_>, rules: &RackingRules, systems: &Systems) -> Vec<Racking> {
    let hipped = hipped(graph, systems);
    let mut slopes: BTreeMap<(usize, String, bool), Vec<Line>> = BTreeMap::new();
    for (k, t) in graph.timbers.iter().enumerate().filter(|(_, t)| is_rafter(t.kind())) {
        let on = t.contacts.iter().filter_map(|c| Some((c, graph.timbers.get(c.other)?)));
        let spine = on.filter(|(c, o)| o.kind() == MemberKind::RidgeBoard || systems.pitch_break[c.other]);
        let Some((c, o)) = spine.max_by(|a, b| a.0.reach[1].total_cmp(&b.0.reach[1])) else { continue };
        let chain = systems.chain[c.other];
        let Some(first) = graph.timbers.get(chain) else { continue };
        let leans = t.heading().dot(o.heading()).abs() < 0.5;
        let lower = |f: &Timber<'_>| {
            matches!(f.kind(), MemberKind::WallPlate | MemberKind::ValleyRafter | MemberKind::LayBoard)
                || (f.kind() == MemberKind::Purlin && f.origin.z < o.origin.z)
        };
        let feet = t.contacts.iter().filter(|c| graph.timbers.get(c.other).is_some_and(lower));
        let stands_to = feet.map(|c| c.reach[1]).min_by(f64::total_cmp);
        let Some(stands_to) = stands_to else { continue };
        if leans && !o.on_wall && !hipped.contains(&chain) {
            let side = t.heading().perp_dot(first.heading()) > 0.0;
            let wall = t.member.wall.clone().unwrap_or_default();
            let across = first.along.dot(c.at - first.origin);
            slopes.entry((chain, wall, side)).or_default().push(Line { timber: k, across, stands_to });
        }
    }
    let mut out: Vec<Racking> = Vec::new();
    for ((_, wall, side), mut lines) in slopes {
        lines.sort_by(|a, b| a.across.total_cmp(&b.across));
        lines.dedup_by(|b, a| (b.across - a.across).abs() < 1.0);
        let covered = diagonal(graph, rules, &wall, &lines, &mut out);
        lines.reverse();
        // A second from the other end, leaning against the first; on a short slope the other side has it.
        if covered < lines.len() / 2 || side {
            if covered >= lines.len() / 2 {
                out.pop();
            }
            diagonal(graph, rules, &wall, &lines, &mut out);
        }
    }
    out
}

/// First lengths of ridges and breaks that a hip holds at an end.
fn hipped(graph: &Graph<'_>, systems: &Systems) -> BTreeSet<usize> {
    let parts: BTreeSet<usize> = graph
        .timbers
        .iter()
        .enumerate()
        .filter(|(_, t)| matches!(t.kind(), MemberKind::HipRafter))
        .filter_map(|(k, _)| systems.of.get(k).copied())
        .collect();
    (0..graph.timbers.len()).filter(|k| parts.contains(&systems.of[*k])).map(|k| systems.chain[k]).collect()
}

/// One diagonal from the head of the first rafter down across the others; gives how many rafters it holds.
fn diagonal(graph: &Graph<'_>, rules: &RackingRules, wall: &str, lines: &[Line], out: &mut Vec<Racking>) -> usize {
    let Some((first, t)) = lines.first().and_then(|l| Some((l, graph.timbers.get(l.timber)?))) else { return 0 };
    let longest = lines.iter().filter_map(|l| graph.timbers.get(l.timber)).map(|t| t.length).fold(0.0, f64::max);
    let reach = |l: &Line| (l.across - first.across).abs();
    let wide = lines.last().map_or(0.0, reach);
    let high = (t.length.min(longest) - first.stands_to - 2.0 * CLEAR).max(0.0);
    let fall = Angle::deg(rules.angle_deg.value).tan();
    // On a slope that is shorter than it is high, from corner to corner.
    let fall = if wide > 0.0 { fall.max((high / wide).min(LEAST_FALL_OF_SHORT)) } else { return 0 };
    let mut nailed: Vec<(f64, Nailed)> = Vec::new();
    for line in lines {
        let Some(rafter) = graph.timbers.get(line.timber) else { continue };
        // Down from the head of this rafter as far as the diagonal has come along the ridge.
        let at = rafter.length - CLEAR - reach(line) * fall;
        if at < line.stands_to + CLEAR.min(rafter.length / 4.0) {
            break;
        }
        let p = rafter.under(at);
        nailed.push((reach(line), Nailed { mark: rafter.mark().to_owned(), at: p.to_array(), along_mm: 0.0 }));
    }
    let count = nailed.len();
    let (Some((_, top)), Some((_, low))) = (nailed.first(), nailed.last()) else { return 0 };
    let (to, from) = (DVec3::from_array(top.at), DVec3::from_array(low.at));
    let length = to.distance(from);
    if count < LEAST_RAFTERS || length <= 0.0 {
        return 0;
    }
    let along = (to - from) / length;
    let level = lines.get(1).map_or(1.0, reach).max(1.0);
    let mut nailed: Vec<Nailed> = nailed.into_iter().map(|(_, n)| n).rev().collect();
    for n in &mut nailed {
        n.along_mm = along.dot(DVec3::from_array(n.at) - from);
    }
    out.push(Racking {
        name: format!("Diagonal-{}", out.len() + 1),
        wall: wall.to_owned(),
        from: from.to_array(),
        to: to.to_array(),
        length_mm: length,
        angle_deg: Angle::from_rise_run(fall * level, level).to_deg(),
        nailed,
        nails_each: libm::round(rules.nails_each.value).clamp(0.0, 99.0) as u32,
        size: Size { thickness_mm: rules.thickness_mm.value, depth_mm: rules.width_mm.value },
    });
    count
}

/// The steepest diagonal on a short slope, as the tangent of its angle on the slope: about 72°.
const LEAST_FALL_OF_SHORT: f64 = 3.0;
