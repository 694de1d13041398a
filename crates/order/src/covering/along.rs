//! What is counted along the lines of the roof: ridges, hips, valleys, verges, walls.

use super::slope::{EdgeKind, Slope};
use std::collections::BTreeMap;

/// A line with the length that it has with the overhangs, mm.
#[derive(Clone, Copy, Debug)]
pub struct Line {
    pub kind: EdgeKind,
    pub length: f64,
    /// A hip whose foot is at an eaves.
    pub at_eaves: bool,
}

/// Ridges, hips, valleys, each once: as long as on the slope that has it longest.
pub fn lines(slopes: &[Slope]) -> Vec<Line> {
    let mut shared: BTreeMap<usize, Line> = BTreeMap::new();
    for slope in slopes {
        let mut on_slope: BTreeMap<usize, Line> = BTreeMap::new();
        for (k, edge) in slope.edges.iter().enumerate() {
            let Some(line) = edge.line.filter(|_| is_shared(edge.kind)) else { continue };
            let count = slope.edges.len();
            let beside = [(k + count - 1) % count, (k + 1) % count];
            let at_eaves = beside.iter().any(|j| slope.edges.get(*j).is_some_and(|e| e.kind == EdgeKind::Eaves));
            let known = on_slope.entry(line).or_insert(Line { kind: edge.kind, length: 0.0, at_eaves: false });
            known.length += edge.length();
            known.at_eaves |= at_eaves;
        }
        for (line, found) in on_slope {
            let known = shared.entry(line).or_insert(found);
            known.length = known.length.max(found.length);
            known.at_eaves |= found.at_eaves;
        }
    }
    shared.into_values().collect()
}

const fn is_shared(kind: EdgeKind) -> bool {
    matches!(kind, EdgeKind::Ridge | EdgeKind::Hip | EdgeKind::Valley)
}

/// Length of all edges of some kinds on the slopes, mm.
pub fn edges_of(slopes: &[Slope], kinds: &[EdgeKind]) -> f64 {
    slopes.iter().flat_map(|s| &s.edges).filter(|e| kinds.contains(&e.kind)).map(super::slope::Edge::length).sum()
}

/// Length of the edges of a kind on one slope, mm.
pub fn edges_on(slope: &Slope, kind: EdgeKind) -> f64 {
    slope.edges.iter().filter(|e| e.kind == kind).map(super::slope::Edge::length).sum()
}
