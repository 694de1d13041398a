//! The walls of the plan as level timbers see them: where a line across the
//! building ends, what plate is there, how high the roof is above.

use crate::carcass::Carcass;
use crate::frame::timber::{Role, TimberId};
use geometry::surface::{FaceId, RoofPlane, Surface, WallId};
use geometry::{DVec2, HalfPlan};

/// Lines across the building start this far inside the wall they start from, mm.
const INSIDE: f64 = 1.0;

/// One wall.
pub struct WallLine {
    /// Its number.
    pub wall: WallId,
    /// Start of its plate line, mm.
    pub from: DVec2,
    /// Unit direction, the building on the left.
    pub dir: DVec2,
    /// Length of the plate line, mm.
    pub length: f64,
    /// Its slope, unless it is carried up.
    pub plane: Option<RoofPlane>,
    /// Its plate and the height of the plate's top, mm.
    pub plate: Option<(TimberId, f64)>,
}

impl WallLine {
    /// The half plan inside the plate line.
    pub fn inside(&self) -> HalfPlan {
        HalfPlan::through(self.from, -self.dir.perp())
    }
}

/// All walls, in their order.
pub fn all(carcass: &Carcass<'_>) -> Vec<WallLine> {
    let surface = carcass.surface;
    let plates: Vec<(WallId, TimberId, f64)> = carcass
        .built()
        .filter_map(|(id, t)| if let Role::Plate { wall } = t.role { Some((wall, id, t.base)) } else { None })
        .collect();
    let mut out = Vec::new();
    for ring in &surface.loops {
        for (k, from) in ring.iter().enumerate() {
            let wall = WallId(out.len() as u32);
            let side = ring[(k + 1) % ring.len()] - *from;
            let face: Option<FaceId> = surface.face_of_wall.get(wall.index()).copied().flatten();
            out.push(WallLine {
                wall,
                from: *from,
                dir: side.normalize_or_zero(),
                length: side.length(),
                plane: face.map(|f| surface.face(f).plane),
                plate: plates.iter().find(|(w, ..)| *w == wall).map(|(_, id, level)| (*id, *level)),
            });
        }
    }
    out
}

/// Where a line from a wall across the building first meets another wall: how
/// far along the line, mm, and which entry of `walls`.
pub fn far_side(walls: &[WallLine], from: DVec2, dir: DVec2) -> Option<(f64, usize)> {
    let start = from + dir * INSIDE;
    let crossing = |w: &WallLine| {
        let turn = dir.perp_dot(w.dir);
        let gap = w.from - start;
        let (along, own) = (gap.perp_dot(w.dir) / turn, gap.perp_dot(dir) / turn);
        (along.is_finite() && along > 0.0 && own >= 0.0 && own <= w.length).then_some(along + INSIDE)
    };
    let all = walls.iter().enumerate().filter_map(|(k, w)| crossing(w).map(|t| (t, k)));
    all.min_by(|a, b| a.0.total_cmp(&b.0))
}

/// Height of the pitch planes over a plan point, mm; `None` outside all slopes.
pub fn roof_over(surface: &Surface, p: DVec2) -> Option<f64> {
    surface.faces.iter().find(|f| holds(surface, &f.outline, p)).map(|f| f.plane.height_at(p))
}

/// Whether a point lies inside an outline (even-odd).
fn holds(surface: &Surface, outline: &[geometry::surface::NodeId], p: DVec2) -> bool {
    let n = outline.len();
    let at = |k: usize| surface.node(outline[k % n]).truncate() - p;
    (0..n)
        .filter(|k| {
            let (a, b) = (at(*k), at(*k + 1));
            (a.y > 0.0) != (b.y > 0.0) && a.x + (b.x - a.x) * (a.y / (a.y - b.y)) > 0.0
        })
        .count()
        % 2
        == 1
}
