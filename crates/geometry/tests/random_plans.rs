//! Properties of roofs over random plans (generators in `common/plans.rs`).
//! The example `many_roofs` runs the same plans by the hundred thousand.

use crate::common::plans::{self, Dice, Plan};
use crate::common::twin;
use geometry::surface::{ArcKind, FRAMING, Slope, Surface, SurfaceError, SurfaceWarning, WallProfile, check, solve};
use geometry::{DVec2, DVec3};

/// Nodes framed as one may be this far from where they were, mm.
const MOVED: f64 = 2.5 * FRAMING;

fn house(number: u64) -> Plan {
    plans::house(&mut Dice::new(number.wrapping_mul(7_919)))
}

/// Whether a plan was refused for a reason that the user can act on.
fn refused(error: &SurfaceError) -> bool {
    matches!(
        error,
        SurfaceError::UnlikeInLine { .. }
            | SurfaceError::NeverCloses { .. }
            | SurfaceError::GableNeverMet { .. }
            | SurfaceError::AllGables
            | SurfaceError::SlopeAroundShaft { .. }
    )
}

/// Roofs of plans that are not refused.
fn roofs(count: u64) -> impl Iterator<Item = (u64, Plan, Surface)> {
    (0..count).filter_map(|number| {
        let plan = house(number);
        match solve(&plan.loops, &plan.walls) {
            Ok(roof) => Some((number, plan, roof)),
            Err(error) if refused(&error) => None,
            Err(error) => panic!("plan {number}, {}: {error}", plan.kind),
        }
    })
}

fn off_arc(roof: &Surface, p: DVec3) -> f64 {
    let off = |a: DVec3, b: DVec3| {
        let t = ((p - a).dot(b - a) / (b - a).length_squared()).clamp(0.0, 1.0);
        p.distance(a + (b - a) * t)
    };
    roof.arcs.iter().map(|arc| off(roof.node(arc.from), roof.node(arc.to))).fold(f64::INFINITY, f64::min)
}

#[test]
fn nearly_all_plans_are_solved_and_sound() {
    let mut solved = 0;
    for (number, plan, roof) in roofs(4000) {
        assert_eq!(check(&roof, &plan.walls), Ok(()), "plan {number}");
        solved += 1;
    }
    assert!(solved >= 3980, "{solved} of 4000");
}

/// Compares the nodes of a roof with those of the twin; whether the twin kept
/// its way.
fn agrees_with_twin(name: &str, walls: &[WallProfile], roof: &Surface) -> bool {
    let Some(nodes) = twin::nodes(&roof.loops, walls) else { return false };
    let lowest = walls.iter().map(|w| w.plate_height).fold(f64::INFINITY, f64::min);
    for node in roof.nodes.iter().filter(|n| n.z > lowest + MOVED) {
        let nearest = nodes.iter().map(|n| n.distance(*node)).fold(f64::INFINITY, f64::min);
        assert!(nearest < MOVED, "{name}: the twin has no node near {node}");
    }
    // Nodes of the twin on upright walls alone border no face.
    let uprights = roof.warnings.iter().any(|w| matches!(w, SurfaceWarning::UprightCheek { .. }))
        || walls.iter().any(|w| w.plate_height > lowest || w.steps.len() > 1);
    for node in nodes.iter().filter(|n| n.z > lowest + MOVED && !uprights) {
        assert!(off_arc(roof, *node) < MOVED, "{name}: no line of the roof near {node}");
    }
    true
}

#[test]
fn the_slow_twin_finds_the_same_nodes() {
    let (mut compared, mut lost) = (0, 0);
    for (number, plan, roof) in roofs(1500) {
        let kept = agrees_with_twin(&format!("plan {number}, {}", plan.kind), &plan.walls, &roof);
        compared += usize::from(kept);
        lost += usize::from(!kept);
    }
    assert!(lost * 100 < compared, "the twin lost its way {lost} times in {compared}");
}

#[test]
fn the_slow_twin_agrees_on_plans_large_enough_for_rounds() {
    let mut compared = 0;
    for seed in 0..60 {
        let mut dice = Dice::new(seed);
        let n = dice.whole(60, 160);
        let ring = match seed % 3 {
            0 => plans::ragged_ring(&mut dice, n),
            1 => plans::star(&mut dice, n, 15_000.0, 30_000.0),
            _ => plans::comb(&mut dice, n / 4),
        };
        let loops = if seed % 2 == 0 { vec![ring] } else { plans::turned(&vec![ring], 27.0) };
        let kind = if seed % 4 < 2 { plans::Walls::Equal } else { plans::Walls::Mixed };
        let walls = plans::walls(&mut dice, loops[0].len(), kind);
        match solve(&loops, &walls) {
            Ok(roof) => compared += usize::from(agrees_with_twin(&format!("large plan {seed}"), &walls, &roof)),
            Err(error) => assert!(refused(&error) || matches!(error, SurfaceError::Plan(_)), "plan {seed}: {error}"),
        }
    }
    assert!(compared >= 40, "only {compared} compared");
}

fn counts(roof: &Surface) -> [usize; 9] {
    let kinds = [
        ArcKind::Eaves,
        ArcKind::Ridge,
        ArcKind::Hip,
        ArcKind::BrokenHip,
        ArcKind::Valley,
        ArcKind::Verge,
        ArcKind::PitchBreak,
        ArcKind::Abutment,
    ];
    let mut counts = [0; 9];
    for (count, kind) in counts.iter_mut().zip(kinds) {
        *count = roof.arcs.iter().filter(|a| a.kind == kind).count();
    }
    counts[8] = roof.faces.len();
    counts
}

/// Nodes of both roofs lie near each other, after `back` brings those of the
/// second to the place of the first.
fn same_nodes(first: &Surface, second: &Surface, back: impl Fn(DVec3) -> DVec3) -> bool {
    let moved: Vec<DVec3> = second.nodes.iter().map(|n| back(*n)).collect();
    let near = |list: &[DVec3], p: &DVec3| list.iter().any(|q| q.distance(*p) < MOVED);
    first.nodes.iter().all(|p| near(&moved, p)) && moved.iter().all(|p| near(&first.nodes, p))
}

#[test]
fn a_mirror_image_has_the_mirrored_roof() {
    for (number, plan, roof) in roofs(1200) {
        let (loops, walls) = plans::mirrored(&plan.loops, &plan.walls);
        let image = solve(&loops, &walls).unwrap_or_else(|error| panic!("plan {number} mirrored: {error}"));
        assert_eq!(counts(&roof), counts(&image), "plan {number}, {}", plan.kind);
        let back = |n: DVec3| DVec3::new(-n.x, n.y, n.z);
        assert!(same_nodes(&roof, &image, back), "plan {number}, {}", plan.kind);
    }
}

#[test]
fn the_first_corner_does_not_matter() {
    for (number, plan, roof) in roofs(1000) {
        let (mut loops, mut walls) = (plan.loops.clone(), plan.walls.clone());
        let n = loops[0].len();
        loops[0].rotate_left(n / 2);
        walls[..n].rotate_left(n / 2);
        let other = solve(&loops, &walls).unwrap_or_else(|error| panic!("plan {number} renumbered: {error}"));
        assert_eq!(counts(&roof), counts(&other), "plan {number}, {}", plan.kind);
        assert!(same_nodes(&roof, &other, |n| n), "plan {number}, {}", plan.kind);
    }
}

#[test]
fn a_turned_plan_has_the_turned_roof() {
    let mut changed = 0;
    for (number, plan, roof) in roofs(1000) {
        let degrees = [7.1, 17.3, 33.3, 61.9, 88.8][number as usize % 5];
        let loops = plans::turned(&plan.loops, degrees);
        let turned = solve(&loops, &plan.walls).unwrap_or_else(|error| panic!("plan {number} turned: {error}"));
        changed += usize::from(counts(&roof) != counts(&turned));
    }
    // Corners rounded to 0.1 mm anew decide ties of 2 mm anew.
    assert!(changed <= 10, "{changed} of 1000 changed");
}

#[test]
fn a_larger_plan_has_the_larger_roof() {
    let (mut compared, mut changed) = (0, 0);
    for (number, plan, roof) in roofs(1000) {
        if plan.walls.iter().any(|w| w.steps.len() > 1 || w.plate_height != 0.0) {
            continue;
        }
        let loops: Vec<Vec<DVec2>> = plan.loops.iter().map(|r| r.iter().map(|p| *p * 8.0).collect()).collect();
        let larger = solve(&loops, &plan.walls).unwrap_or_else(|error| panic!("plan {number} enlarged: {error}"));
        let top = |roof: &Surface| roof.nodes.iter().map(|n| n.z).fold(0.0, f64::max);
        compared += 1;
        changed += usize::from((top(&larger) / 8.0 - top(&roof)).abs() > MOVED);
    }
    // A bend that is within the tolerance of a straight wall on the small
    // plan may not be on the large one.
    assert!(changed * 200 <= compared, "{changed} of {compared} changed");
}

#[test]
fn no_water_stands_on_the_roof() {
    for (number, plan, roof) in roofs(3000) {
        // Water may stand behind an upright that a slope runs down to.
        if plan.walls.iter().any(|w| w.steps.len() > 1 || w.steps[0].slope == Slope::Vertical) {
            continue;
        }
        // A node is drained by an eaves, by an arc that falls from it, or by a
        // level arc to such a node.
        let mut drained = vec![false; roof.nodes.len()];
        for arc in &roof.arcs {
            let falls = roof.node(arc.to).z > roof.node(arc.from).z;
            drained[arc.to.index()] |= falls || arc.kind == ArcKind::Eaves;
            drained[arc.from.index()] |= arc.kind == ArcKind::Eaves;
        }
        for _ in 0..roof.nodes.len() {
            for arc in roof.arcs.iter().filter(|a| roof.node(a.to).z - roof.node(a.from).z < FRAMING) {
                let both = drained[arc.from.index()] || drained[arc.to.index()];
                drained[arc.from.index()] = both;
                drained[arc.to.index()] = both;
            }
        }
        let pit = drained.iter().position(|d| !d).map(|n| roof.nodes[n]);
        assert_eq!(pit, None, "plan {number}, {}", plan.kind);
    }
}
