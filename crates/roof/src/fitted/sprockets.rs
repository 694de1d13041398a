//! Sprockets: tapered pieces on the backs of the rafters that flatten the roof
//! at the eaves. Hips and valleys get one on each side of their line.

use super::boards::{self, Draft, SHORTEST_PIECE};
use super::eaves_lines::{self, EavesLine};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, FrameCut, Made, Role, Timber, TimberId};
use crate::marking::Axes;
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::surface::{FaceId, RoofPlane};
use geometry::{Angle, Cell, DVec2, DVec3, Face, Plane, Ring};
use job::{Fascia, Job, Section};

/// Wood is drawn this far above the sprocket's top before it is cut there, mm.
const DRAWN_ABOVE: f64 = 10.0;

/// Points of a cell lie on its side when they miss it by less, mm.
const ON_SIDE: f64 = 1e-5;

/// The plane of the sprockets' tops over rafters whose backs lie in `backs`,
/// and how far up from the plate line they reach, mm in plan. `None` without
/// sprockets, and where they would not be flatter than the roof.
///
/// Under a level fascia the sprockets of all slopes have one height at the
/// fascia and start at one height, so that they meet on hips and valleys: on a
/// slope of another pitch than the job's, reach and slope follow from those.
pub fn surface(job: &Job, backs: RoofPlane) -> Option<(RoofPlane, f64)> {
    let sprocket = job.eaves.sprocket?;
    let share = match job.eaves.fascia {
        Fascia::Level => Angle::deg(job.pitch_deg).tan() / backs.tan_pitch,
        Fascia::Fixed => 1.0,
    };
    let reach = sprocket.reach * share;
    let tan = Angle::deg(sprocket.pitch_deg).tan() / share;
    let base_height = backs.base_height + reach * (backs.tan_pitch - tan);
    let plane = RoofPlane { base_height, pitch_deg: Angle::from_tan(tan).to_deg(), tan_pitch: tan, ..backs };
    (reach > 0.0 && tan < backs.tan_pitch).then_some((plane, reach))
}

/// Fit the sprockets.
///
/// # Errors
/// None: a sprocket without room is left out with a remark.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(wanted) = carcass.job.eaves.sprocket else { return Ok(()) };
    let lines = eaves_lines::of(carcass);
    let mut drafts = Vec::new();
    for (id, timber) in carcass.built() {
        match (timber.role, timber.kind) {
            (Role::Rafter { face }, _) => drafts.push(on_rafter(carcass, id, on_face(carcass, &lines, face))),
            (Role::Spine { left, right }, MemberKind::HipRafter | MemberKind::ValleyRafter) => {
                let sides = [right, left].map(|face| on_face(carcass, &lines, face));
                drafts.push(on_half(carcass, id, sides, false));
                drafts.push(on_half(carcass, id, [sides[1], sides[0]], true));
            }
            _ => {}
        }
    }
    boards::settle(carcass, drafts, &[Made::Underside, Made::Left, Made::Right]);
    for line in lines.iter().filter(|l| l.sprocket <= 0.0) {
        let wall = carcass.job.walls.get(line.wall.index()).map_or("", |w| w.letter.as_str()).to_string();
        carcass.remark(
            NoticeLevel::Warn,
            "no-sprockets",
            format!("wall {wall}"),
            format!(
                "Wall {wall} has no sprockets: at {:.1}° they would not be flatter than its slope.",
                wanted.pitch_deg
            ),
        );
    }
    Ok(())
}

/// The eaves line of a face, if it has sprockets.
fn on_face<'a>(carcass: &Carcass<'_>, lines: &'a [EavesLine], face: FaceId) -> Option<&'a EavesLine> {
    let of = |l: &EavesLine| carcass.surface.face_of_wall.get(l.wall.index()).copied().flatten();
    lines.iter().find(|l| l.sprocket > 0.0 && of(l) == Some(face))
}

fn on_rafter(carcass: &Carcass<'_>, id: TimberId, line: Option<&EavesLine>) -> Option<Draft> {
    let line = line?;
    let timber = carcass.timber(id);
    let mut cuts = Cuts::default();
    let mut cells = Vec::new();
    for cell in carcass.wood(id) {
        let above = raised_from(cell, timber, &line.top, &mut cuts);
        cells.extend(above.filter_map(|c| c.clipped(below(&line.top), Made::Top)));
    }
    draft(timber, line, cells, cuts, timber.section.thickness)
}

/// The sprocket on one side of a hip or valley; `own` is the line of that side.
fn on_half(carcass: &Carcass<'_>, id: TimberId, [own, other]: [Option<&EavesLine>; 2], left: bool) -> Option<Draft> {
    let own = own?;
    let timber = carcass.timber(id);
    let toward: DVec2 = if left { timber.left() } else { -timber.left() };
    let middle = Plane::through(timber.foot.extend(0.0), -toward.extend(0.0));
    let inner_side = if left { Made::Right } else { Made::Left };
    let mut cuts = Cuts::default();
    let mut cells = Vec::new();
    for cell in carcass.wood(id) {
        for above in raised_from(cell, timber, &own.top, &mut cuts) {
            let mut half = above.clipped(middle, inner_side).and_then(|c| c.clipped(below(&own.top), Made::Top));
            if let (MemberKind::HipRafter, Some(other)) = (timber.kind, other) {
                half = half.and_then(|c| c.clipped(below(&other.top), Made::TopLeft));
            }
            cells.extend(half.map(|c| sided(c, middle, inner_side)));
        }
    }
    draft(timber, own, cells, cuts, timber.half[usize::from(left)])
}

/// Tag the faces of a cell that lie in a plane.
fn sided(mut cell: Cell<Made>, plane: Plane, tag: Made) -> Cell<Made> {
    let points = &cell.points;
    for face in &mut cell.faces {
        if face.ring.iter().all(|k| plane.distance(points[*k as usize]).abs() < ON_SIDE) {
            face.tag = tag;
        }
    }
    cell
}

/// The half-space below a plane.
fn below(top: &RoofPlane) -> Plane {
    let normal = (top.inward * -top.tan_pitch).extend(1.0).normalize();
    let point = top.inward * top.offset;
    Plane::through(point.extend(top.base_height), normal)
}

/// The cuts of a sprocket, by the cut of the timber below that each goes on.
#[derive(Default)]
struct Cuts {
    made: Vec<FrameCut>,
    from: Vec<Made>,
}

impl Cuts {
    /// The tag of a side above a side of the timber below.
    fn above(&mut self, timber: &Timber, side: Made) -> Made {
        let Made::Cut(k) = side else { return side };
        let known = self.from.iter().position(|f| *f == side).unwrap_or_else(|| {
            let below = timber.cuts.get(usize::from(k));
            let at = below.map_or(CutPlace::Head, |c| c.at);
            let purpose = match below.map(|c| c.purpose) {
                Some(CutUse::Tail(wall)) => CutUse::Tail(wall),
                _ => CutUse::Trim,
            };
            self.made.push(FrameCut { purpose, at });
            self.from.push(side);
            self.from.len() - 1
        });
        Made::Cut(known as u16)
    }
}

/// Upright cells on the upper faces of a cell, drawn past a sprocket's top.
fn raised_from<'a>(
    cell: &'a Cell<Made>,
    timber: &'a Timber,
    top: &'a RoofPlane,
    cuts: &'a mut Cuts,
) -> impl Iterator<Item = Cell<Made>> + use<'a> {
    let upper = |f: &&Face<Made>| matches!(f.tag, Made::Top | Made::TopLeft | Made::TopRight);
    cell.faces.iter().filter(upper).filter_map(move |face| {
        let low: Vec<DVec3> = face.ring.iter().map(|k| cell.points[*k as usize]).collect();
        let high = low.iter().map(|p| top.height_at(p.truncate()) - p.z).fold(0.0, f64::max);
        if high <= 0.0 {
            return None;
        }
        let n = low.len() as u32;
        let sides = (0..n).map(|k| {
            let j = (k + 1) % n;
            let edge = (face.ring[j as usize], face.ring[k as usize]);
            let beyond = cell.faces.iter().find(|f| walks(&f.ring, edge)).map_or(Made::Inner, |f| f.tag);
            Face { ring: [k, j, j + n, k + n].into_iter().collect(), tag: cuts.above(timber, beyond) }
        });
        let mut faces: Vec<Face<Made>> = sides.collect();
        faces.push(Face { ring: (0..n).rev().collect(), tag: Made::Underside });
        faces.push(Face { ring: (n..2 * n).collect(), tag: Made::Top });
        let lifted = low.iter().map(|p| *p + DVec3::Z * (high + DRAWN_ABOVE));
        let points = low.iter().copied().chain(lifted).collect();
        Some(Cell { points, faces })
    })
}

/// Whether a face walks this edge.
fn walks(ring: &Ring, edge: (u32, u32)) -> bool {
    (0..ring.len()).any(|k| (ring[k], ring[(k + 1) % ring.len()]) == edge)
}

/// The piece that these cells make, in axes like those of the timber below.
fn draft(timber: &Timber, line: &EavesLine, cells: Vec<Cell<Made>>, cuts: Cuts, thickness: f64) -> Option<Draft> {
    let below = timber.axes();
    let reach = cells
        .iter()
        .flat_map(|c| &c.points)
        .map(|p| below.point(*p))
        .fold([DVec3::INFINITY, DVec3::NEG_INFINITY], |[lo, hi], p| [lo.min(p), hi.max(p)]);
    let [lo, hi] = reach;
    if cells.is_empty() || hi.x - lo.x < SHORTEST_PIECE {
        return None;
    }
    let middle = (lo.z + hi.z) / 2.0;
    let axes = Axes { origin: boards::at(&below, lo.x, lo.y, middle), ..below };
    let ends = [axes.origin, axes.origin + axes.along * (hi.x - lo.x)];
    let seeks = (0..cuts.made.len() as u16).collect();
    Some(Draft {
        kind: MemberKind::Sprocket,
        wall: line.wall,
        section: Section { thickness, depth: hi.y - lo.y },
        line: ends,
        axes,
        cells,
        cuts: cuts.made,
        mates: Vec::new(),
        seeks,
    })
}
