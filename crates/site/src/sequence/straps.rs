//! Where straps go: holding-down along the plates, lateral along gables at the slope and at the ceiling.

use super::graph::{Graph, gable_line, wall_line};
use super::rules::StrapRules;
use super::types::{StrapKind, StrapPlace};
use geometry::{DVec2, DVec3};
use roof::solution::{MemberKind, Size};

/// Edges of a gable steeper than this from plumb are its slopes (vertical share of the edge's length).
const LEAST_RISE: f64 = 0.05;
/// Edges shorter than this carry no strap of their own, mm.
const LEAST_EDGE: f64 = 300.0;

/// How many straps a line wants, both ends counted, and how far apart they are: `n = ceil(L / most) + 1`.
///
/// `length_mm` and `most_mm` in mm; none for a line without length. Source: NHBC Standards 7.2.6 and 7.2.8 for the
/// spacing, the count follows.
#[must_use]
pub fn count(length_mm: f64, most_mm: f64) -> Option<(u32, f64)> {
    /// A line within this of a whole number of spaces wants no more of them, mm.
    const WHOLE: f64 = 0.01;
    /// No wall is longer than this many spaces.
    const MOST: f64 = 10_000.0;
    let spaces = ((length_mm - WHOLE) / most_mm).ceil();
    (length_mm > 0.0 && most_mm > 0.0 && (1.0..=MOST).contains(&spaces))
        .then(|| (spaces as u32 + 1, length_mm / spaces))
}

/// All straps of a roof.
pub fn straps(graph: &Graph<'_>, rules: &StrapRules) -> Vec<StrapPlace> {
    let mut out = Vec::new();
    for (k, wall) in graph.job.walls.iter().enumerate() {
        let plated = graph.timbers.iter().any(|t| t.on_wall && t.member.wall.as_deref() == Some(wall.letter.as_str()));
        let Some([a, b]) = wall_line(graph.job, k).filter(|_| plated && wall.half_hip.is_none()) else { continue };
        let from = a.extend(wall.plate);
        let to = b.extend(wall.plate);
        out.extend(along(
            StrapKind::HoldingDown,
            &wall.letter,
            "the outer corner at the start of the wall",
            [from, to],
            rules.hold_down_from_corner_mm.value,
            rules,
        ));
    }
    for gable in &graph.solution.gables {
        let ring = &gable.outline;
        for (p, q) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            let (p, q) = (DVec3::from_array(*p), DVec3::from_array(*q));
            let (low, high) = if p.z <= q.z { (p, q) } else { (q, p) };
            let edge = high - low;
            let slope = edge.z > LEAST_RISE * edge.length() && edge.truncate().length() > LEAST_EDGE;
            if slope {
                let place = along(
                    StrapKind::LateralSlope,
                    &gable.wall,
                    "the foot of the slope of the gable",
                    [low, high],
                    0.0,
                    rules,
                );
                out.extend(place.map(|place| without_shared(place, &out)));
            }
        }
        let ceiling = graph.timbers.iter().find(|t| t.kind() == MemberKind::CeilingJoist);
        if let (Some(line), Some(joist)) = (gable_line(ring), ceiling) {
            let [a, b]: [DVec2; 2] = line;
            let z = joist.origin.z + joist.member.size.depth_mm;
            out.extend(along(
                StrapKind::LateralCeiling,
                &gable.wall,
                "the start of the gable",
                [a.extend(z), b.extend(z)],
                rules.hold_down_from_corner_mm.value,
                rules,
            ));
        }
    }
    out
}

/// Two slopes share the strap at the apex: the second goes without.
fn without_shared(mut place: StrapPlace, others: &[StrapPlace]) -> StrapPlace {
    /// Straps this near are one, mm: the width of a block.
    const ONE: f64 = 225.0;
    let taken: Vec<DVec3> = others
        .iter()
        .filter(|o| o.kind == place.kind && o.wall == place.wall)
        .flat_map(|o| o.points.iter().map(|p| DVec3::from_array(*p)))
        .collect();
    let free = |p: &[f64; 3]| taken.iter().all(|t| t.distance(DVec3::from_array(*p)) > ONE);
    let keep: Vec<bool> = place.points.iter().map(free).collect();
    let mut kept = keep.iter();
    place.points.retain(|_| *kept.next().unwrap_or(&true));
    let mut kept = keep.iter();
    place.at_mm.retain(|_| *kept.next().unwrap_or(&true));
    place
}

fn along(
    kind: StrapKind,
    wall: &str,
    from: &str,
    [a, b]: [DVec3; 2],
    clear: f64,
    rules: &StrapRules,
) -> Option<StrapPlace> {
    let length = a.distance(b);
    let (most, size) = match kind {
        StrapKind::HoldingDown => {
            (&rules.hold_down_centres_mm, (&rules.hold_down_thickness_mm, &rules.hold_down_width_mm))
        }
        _ => (&rules.lateral_centres_mm, (&rules.lateral_thickness_mm, &rules.lateral_width_mm)),
    };
    let (n, _) = count(length, most.value)?;
    // The outer ones keep clear of the corners; the others share what is between.
    let clear = clear.min(length / 4.0);
    let step = (length - 2.0 * clear) / f64::from(n - 1);
    let at_mm: Vec<f64> = (0..n).map(|k| clear + step * f64::from(k)).collect();
    let points = at_mm.iter().map(|s| (a + (b - a) * (s / length)).to_array()).collect();
    Some(StrapPlace {
        kind,
        wall: wall.to_owned(),
        from: from.to_owned(),
        length_mm: length,
        at_mm,
        points,
        size: Size { thickness_mm: size.0.value, depth_mm: size.1.value },
        standing: most.standing.into(),
    })
}
