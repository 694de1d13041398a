//! The order within a step: opposing pairs, from where the trade starts.

use super::super::graph::Graph;
use super::rank::Turn;
use super::systems::Systems;
use geometry::Angle;
use roof::solution::MemberKind;
use std::cmp::Ordering;

/// Sort the timbers of one step.
pub fn sort(graph: &Graph<'_>, systems: &Systems, turn: Turn, members: &mut [usize]) {
    let key = |k: usize| key(graph, systems, turn, k);
    members.sort_by(|a, b| {
        let (x, y) = (key(*a), key(*b));
        x.0.cmp(&y.0).then(x.1.total_cmp(&y.1)).then(x.2.total_cmp(&y.2)).then(a.cmp(b))
    });
    debug_assert!(members.windows(2).all(|w| w[0].cmp(&w[1]) != Ordering::Equal), "each timber once");
}

/// What comes first: the timber that it hangs on, then the place along that, then the side.
fn key(graph: &Graph<'_>, systems: &Systems, turn: Turn, k: usize) -> (usize, f64, f64) {
    let Some(t) = graph.timbers.get(k) else { return (0, 0.0, 0.0) };
    let on = |kinds: &[MemberKind]| {
        let found = t.contacts.iter().filter_map(|c| graph.timbers.get(c.other).map(|o| (c, o)));
        found.filter(|(_, o)| kinds.contains(&o.kind())).max_by(|a, b| a.0.reach[1].total_cmp(&b.0.reach[1]))
    };
    match turn {
        // Opposite hips: those in one line, the far one after the near one.
        Turn::Hips | Turn::Valleys => {
            let heading = t.heading();
            let turn = Angle::from_rise_run(heading.y, heading.x).to_deg();
            let line = turn.rem_euclid(180.0);
            // Whole degrees, so that the two of a pair are together however the plan is out of square.
            (0, (line / 10.0).round() % 18.0, turn)
        }
        // In opposing pairs along the ridge.
        Turn::Commons => match on(&[MemberKind::RidgeBoard, MemberKind::Purlin]) {
            Some((c, o)) => {
                let chain = systems.chain.get(c.other).copied().unwrap_or(c.other);
                let side = t.heading().perp_dot(o.heading());
                // Pairs share a place to within half a bay.
                let bay = (graph.job.timber.rafter.centres / 2.0).max(1.0);
                let from = graph.timbers.get(chain).map_or(c.at, |first| first.origin);
                (chain, (o.along.dot(c.at - from) / bay).round(), side)
            }
            None => (usize::MAX, t.origin.x, t.origin.y),
        },
        // From the middle of the hip, one on each side of it.
        Turn::Jacks => match on(&[MemberKind::HipRafter, MemberKind::ValleyRafter, MemberKind::RidgeBoard]) {
            Some((c, o)) => {
                let chain = systems.chain.get(c.other).copied().unwrap_or(c.other);
                let bay = (graph.job.timber.rafter.centres / 2.0).max(1.0);
                let off = ((o.along_of(c.at) - o.length / 2.0) / bay).round();
                // Above the middle before below it, and the two sides after one another.
                let side = t.heading().perp_dot(o.heading()).clamp(-1.0, 1.0);
                (chain, off.abs(), if off < 0.0 { 2.0 + side / 2.0 } else { side / 2.0 })
            }
            None => (usize::MAX, t.origin.x, t.origin.y),
        },
        _ => (0, 0.0, 0.0),
    }
}
