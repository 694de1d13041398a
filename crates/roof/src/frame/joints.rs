//! Joints: nodes of the surface so close together that timbers meet there as
//! at one place.

use geometry::surface::{ArcKind, NodeId, Surface};

/// Lines shorter than this many thicknesses of the thickest timber on them
/// carry no timber of their own: their ends are one joint.
const SHORTEST_LINE: f64 = 1.5;

/// The joints of a surface.
pub struct Joints {
    of_node: Vec<u32>,
    verge: Vec<bool>,
    wall: Vec<bool>,
}

impl Joints {
    /// Group nodes joined by lines too short for a timber of `thickness` mm.
    pub fn of_surface(surface: &Surface, thickness: f64) -> Self {
        let mut of_node: Vec<u32> = (0..surface.nodes.len() as u32).collect();
        let mut verge = vec![false; surface.nodes.len()];
        let mut wall = verge.clone();
        for arc in &surface.arcs {
            let plan = (surface.node(arc.to) - surface.node(arc.from)).truncate().length();
            let inside = arc.left.is_some() && arc.right.is_some();
            if inside && plan < SHORTEST_LINE * thickness && arc.kind != ArcKind::Eaves {
                let (a, b) = (of_node[arc.from.index()], of_node[arc.to.index()]);
                let (keep, drop) = (a.min(b), a.max(b));
                of_node.iter_mut().filter(|j| **j == drop).for_each(|j| *j = keep);
            }
            if arc.kind == ArcKind::Verge {
                verge[arc.from.index()] = true;
                verge[arc.to.index()] = true;
            }
            if matches!(arc.kind, ArcKind::Verge | ArcKind::Abutment) {
                wall[arc.from.index()] = true;
                wall[arc.to.index()] = true;
            }
        }
        Self { of_node, verge, wall }
    }

    /// The joint of a node.
    pub fn of(&self, node: NodeId) -> u32 {
        self.of_node.get(node.index()).copied().unwrap_or(node.0)
    }

    /// Whether a node lies on a gable or another wall that is carried up.
    pub fn is_on_wall(&self, node: NodeId) -> bool {
        self.wall.get(node.index()).copied().unwrap_or(false)
    }

    /// Whether a node lies on a gable.
    pub fn is_verge(&self, node: NodeId) -> bool {
        self.verge.get(node.index()).copied().unwrap_or(false)
    }
}
