//! From arcs to faces: tracing outlines, naming arcs, numbering walls.

use std::collections::BTreeMap;

use super::error::SurfaceError;
use super::fronts::{Fronts, PlaneId};
use super::raw::{Origin, Raw, RawArc};
use super::slice::clockwise;
use super::tidy::FRAMING;
use super::types::{ArcId, ArcKind, FaceId, NodeId, RoofArc, RoofFace, RoofPlane, Surface, WallId};
use crate::DVec2;

/// One side of an arc: the arc, and whether it is walked from its `from`.
type Side = (usize, bool);

/// A traced outline, anticlockwise.
struct Outline {
    plane: PlaneId,
    sides: Vec<Side>,
    walls: Vec<u32>,
}

/// Builds nodes, arcs and faces of a surface from tidy arcs.
pub(super) fn assemble(raw: &Raw, fronts: &Fronts, wall_count: usize) -> Result<Surface, SurfaceError> {
    let mut outlines = trace(raw)?;
    for outline in &mut outlines {
        outline.walls = walls_of(raw, outline);
    }
    adopt_walls(raw, &mut outlines)?;
    outlines.sort_by(|a, b| {
        let height = |o: &Outline| fronts.planes[o.plane.0 as usize].map_or(0.0, |p| p.base_height);
        a.walls.cmp(&b.walls).then(height(a).total_cmp(&height(b))).then(a.sides.cmp(&b.sides))
    });
    let mut surface = Surface { face_of_wall: vec![None; wall_count], ..Surface::default() };
    let mut number: Vec<Option<NodeId>> = vec![None; raw.nodes.len()];
    for arc in &raw.arcs {
        for n in [arc.from as usize, arc.to as usize] {
            if number[n].is_none() {
                number[n] = Some(NodeId(surface.nodes.len() as u32));
                surface.nodes.push(raw.nodes[n]);
            }
        }
    }
    let node = |n: u32| number[n as usize].unwrap_or(NodeId(0));
    let mut face_of_side: BTreeMap<Side, FaceId> = BTreeMap::new();
    for (k, outline) in outlines.iter().enumerate() {
        let id = FaceId(k as u32);
        face_of_side.extend(outline.sides.iter().map(|&side| (side, id)));
        for &wall in &outline.walls {
            let entry = &mut surface.face_of_wall[wall as usize];
            *entry = entry.or(Some(id));
        }
        let Some(plane) = fronts.planes[outline.plane.0 as usize] else { continue };
        surface.faces.push(RoofFace {
            walls: outline.walls.iter().map(|&w| WallId(w)).collect(),
            plane,
            outline: outline.sides.iter().map(|&side| node(start(raw, side))).collect(),
            arcs: outline.sides.iter().map(|&(arc, _)| ArcId(arc as u32)).collect(),
        });
    }
    let on_edge = edge_nodes(raw);
    for (k, arc) in raw.arcs.iter().enumerate() {
        let (left, right) = (face_of_side.get(&(k, true)).copied(), face_of_side.get(&(k, false)).copied());
        let rises = raw.nodes[arc.from as usize].z <= raw.nodes[arc.to as usize].z;
        let (from, to, left, right) =
            if rises { (arc.from, arc.to, left, right) } else { (arc.to, arc.from, right, left) };
        let planes = [left, right].map(|f| f.map(|f| surface.faces[f.index()].plane));
        let way = raw.nodes[to as usize].truncate() - raw.nodes[from as usize].truncate();
        let kind = kind(arc.origin, planes, way, on_edge[from as usize]);
        surface.arcs.push(RoofArc { kind, from: node(from), to: node(to), left, right });
    }
    Ok(surface)
}

fn start(raw: &Raw, (arc, forward): Side) -> u32 {
    if forward { raw.arcs[arc].from } else { raw.arcs[arc].to }
}

fn end(raw: &Raw, (arc, forward): Side) -> u32 {
    start(raw, (arc, !forward))
}

fn direction(raw: &Raw, side: Side) -> DVec2 {
    (raw.nodes[end(raw, side) as usize] - raw.nodes[start(raw, side) as usize]).truncate()
}

/// Walks round every face. Where a face touches itself in a node, the first
/// way on clockwise keeps the outlines apart.
fn trace(raw: &Raw) -> Result<Vec<Outline>, SurfaceError> {
    let mut leaving: BTreeMap<(PlaneId, u32), Vec<Side>> = BTreeMap::new();
    let sides = |k: usize, arc: &RawArc| [(arc.left, (k, true)), (arc.right, (k, false))];
    for (k, arc) in raw.arcs.iter().enumerate() {
        for (plane, side) in sides(k, arc) {
            if let Some(plane) = plane {
                leaving.entry((plane, start(raw, side))).or_default().push(side);
            }
        }
    }
    let mut walked = vec![[false; 2]; raw.arcs.len()];
    let mut outlines = Vec::new();
    for (k, arc) in raw.arcs.iter().enumerate() {
        for (plane, first) in sides(k, arc) {
            let Some(plane) = plane else { continue };
            if walked[k][usize::from(first.1)] {
                continue;
            }
            let outline = walk(raw, &leaving, &mut walked, plane, first)?;
            let around: f64 = outline
                .iter()
                .map(|&s| {
                    let (a, b) = (raw.nodes[start(raw, s) as usize], raw.nodes[end(raw, s) as usize]);
                    let origin = raw.nodes[start(raw, first) as usize];
                    (a - origin).truncate().perp_dot((b - origin).truncate())
                })
                .sum();
            if around <= 0.0 {
                let at = raw.nodes[start(raw, first) as usize].truncate();
                let rim: f64 = outline.iter().map(|&s| direction(raw, s).length()).sum();
                if around > -FRAMING * rim {
                    let height = raw.nodes[start(raw, first) as usize].z;
                    return Err(SurfaceError::Lost { at, height, what: "a face there is turned over" });
                }
                let foot = raw.arcs.iter().filter_map(|a| a.foot).find(|(p, _)| *p == plane);
                let wall = foot.and_then(|(_, set)| raw.wall_sets[set as usize].first().copied()).unwrap_or_default();
                return Err(SurfaceError::SlopeAroundShaft { wall: WallId(wall), at });
            }
            outlines.push(Outline { plane, sides: outline, walls: Vec::new() });
        }
    }
    Ok(outlines)
}

fn walk(
    raw: &Raw,
    leaving: &BTreeMap<(PlaneId, u32), Vec<Side>>,
    walked: &mut [[bool; 2]],
    plane: PlaneId,
    first: Side,
) -> Result<Vec<Side>, SurfaceError> {
    let mut outline = Vec::new();
    let mut side = first;
    loop {
        walked[side.0][usize::from(side.1)] = true;
        outline.push(side);
        let node = end(raw, side);
        let back = -direction(raw, side);
        let ways = leaving.get(&(plane, node)).map_or(&[][..], Vec::as_slice);
        let turn = |s: &Side| clockwise(back, direction(raw, *s));
        let next = ways
            .iter()
            .copied()
            .filter(|&s| s == first || !walked[s.0][usize::from(s.1)])
            .min_by(|a, b| turn(a).total_cmp(&turn(b)).then(a.cmp(b)));
        match next {
            Some(next) if next == first => return Ok(outline),
            Some(next) => side = next,
            None => {
                let at = raw.nodes[node as usize];
                return Err(SurfaceError::Lost { at: at.truncate(), height: at.z, what: "a face does not close" });
            }
        }
    }
}

/// The walls under a face, from the feet on its outline.
fn walls_of(raw: &Raw, outline: &Outline) -> Vec<u32> {
    let feet = outline.sides.iter().filter_map(|&(arc, _)| raw.arcs[arc].foot);
    let own = feet.filter(|(plane, _)| *plane == outline.plane);
    let mut walls: Vec<u32> = own.flat_map(|(_, set)| raw.wall_sets[set as usize].iter().copied()).collect();
    walls.sort_unstable();
    walls.dedup();
    walls
}

/// Where a face is pinched to nothing between its foot and its upper part,
/// the part without a foot has the walls of the part that it touches.
fn adopt_walls(raw: &Raw, outlines: &mut [Outline]) -> Result<(), SurfaceError> {
    let nodes = |o: &Outline| o.sides.iter().map(|&side| start(raw, side)).collect::<Vec<u32>>();
    for k in 0..outlines.len() {
        if !outlines[k].walls.is_empty() {
            continue;
        }
        let own = nodes(&outlines[k]);
        let akin = |o: &&Outline| o.plane == outlines[k].plane && !o.walls.is_empty();
        let near = outlines.iter().filter(akin).find(|o| nodes(o).iter().any(|n| own.contains(n)));
        let walls = near.or_else(|| outlines.iter().find(akin)).map(|o| o.walls.clone());
        outlines[k].walls = walls.ok_or_else(|| {
            let at = own.first().map_or(DVec2::ZERO, |&n| raw.nodes[n as usize].truncate());
            SurfaceError::Lost { at, height: 0.0, what: "a face there rises from no wall" }
        })?;
    }
    Ok(())
}

/// Nodes on the plate lines or on upright walls.
fn edge_nodes(raw: &Raw) -> Vec<bool> {
    let mut on_edge = vec![false; raw.nodes.len()];
    for arc in raw.arcs.iter().filter(|a| a.left.is_none() || a.right.is_none()) {
        on_edge[arc.from as usize] = true;
        on_edge[arc.to as usize] = true;
    }
    on_edge
}

/// Names an arc from the planes beside it; `way` leads up.
fn kind(origin: Origin, planes: [Option<RoofPlane>; 2], way: DVec2, foot_on_edge: bool) -> ArcKind {
    let [Some(left), Some(right)] = planes else {
        return match origin {
            Origin::Foot => ArcKind::Eaves,
            Origin::Abutment => ArcKind::Abutment,
            Origin::Verge | Origin::Crease => ArcKind::Verge,
        };
    };
    let to_left = way.perp();
    let climb = |p: &RoofPlane| p.tan_pitch * p.inward.dot(to_left);
    // Directions of one class have equal bits: parallel is exact.
    let level = left.inward.perp_dot(right.inward) == 0.0;
    match (level, climb(&left) <= climb(&right)) {
        (true, _) if left.inward.dot(right.inward) > 0.0 => ArcKind::PitchBreak,
        (true, true) => ArcKind::Ridge,
        (false, true) if foot_on_edge => ArcKind::Hip,
        (false, true) => ArcKind::BrokenHip,
        (_, false) => ArcKind::Valley,
    }
}
