//! Boards and other pieces on the outside of the frame: drawn first, then
//! placed where there is room for them, with their mates and what they lie on.

use super::contacts;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, FrameCut, Made, Timber, TimberId};
use crate::marking::Axes;
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::surface::WallId;
use geometry::{Cell, DVec3, Face, Plane};
use job::Section;

/// A piece shorter than this is left out, mm: it would split when fixed.
pub const SHORTEST_PIECE: f64 = 50.0;

/// Number of the cut at the foot of a piece made with [`Draft::between`].
pub const FOOT_CUT: u16 = 0;

/// Number of the cut at its head.
pub const HEAD_CUT: u16 = 1;

/// A piece that is drawn but not yet placed.
#[derive(Clone, Debug)]
pub struct Draft {
    /// Kind.
    pub kind: MemberKind,
    /// The wall it is listed under.
    pub wall: WallId,
    /// Section.
    pub section: Section,
    /// Its centre line from foot to head, mm.
    pub line: [DVec3; 2],
    /// Its own axes.
    pub axes: Axes,
    /// Its wood.
    pub cells: Vec<Cell<Made>>,
    /// Its cuts.
    pub cuts: Vec<FrameCut>,
    /// Which of its cuts are mitres, and with which other draft.
    pub mates: Vec<(u16, usize)>,
    /// Which of its cuts lie against whatever is found there.
    pub seeks: Vec<u16>,
}

impl Draft {
    /// A piece of one section between two planes across it (their normals
    /// point out of it). `axes.origin` lies on the underside at mid thickness,
    /// anywhere along the piece. `None` if nothing worth fixing is left.
    pub fn between(kind: MemberKind, wall: WallId, section: Section, axes: Axes, ends: [Plane; 2]) -> Option<Self> {
        let half = section.thickness / 2.0;
        let [y, z] = [[0.0, section.depth], [-half, half]];
        let corners = [[y[0], z[0]], [y[1], z[0]], [y[0], z[1]], [y[1], z[1]]];
        // Drawn as far as the ends reach on any arris, then cut there.
        let meets =
            |plane: &Plane, [y, z]: [f64; 2]| -plane.distance(at(&axes, 0.0, y, z)) / plane.normal.dot(axes.along);
        let reach = |plane: &Plane| {
            corners
                .iter()
                .map(|c| meets(plane, *c))
                .fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], x| [lo.min(x), hi.max(x)])
        };
        let [foot, head] = [reach(&ends[0]), reach(&ends[1])];
        let finite = [foot, head].iter().flatten().all(|x| x.is_finite());
        if !finite || head[1] - foot[0] < SHORTEST_PIECE {
            return None;
        }
        let cell = bar(&axes, [foot[0] - 1.0, head[1] + 1.0], y, z)
            .clipped(ends[0], Made::Cut(FOOT_CUT))?
            .clipped(ends[1], Made::Cut(HEAD_CUT))?;
        let middle = [section.depth / 2.0, 0.0];
        let line = ends.map(|e| at(&axes, meets(&e, middle), middle[0], middle[1]));
        let cut = |at| FrameCut { purpose: CutUse::Trim, at };
        (line[1] - line[0]).dot(axes.along).is_sign_positive().then(|| Self {
            kind,
            wall,
            section,
            line,
            axes: Axes { origin: axes.origin + axes.along * axes.along.dot(line[0] - axes.origin), ..axes },
            cells: vec![cell],
            cuts: vec![cut(CutPlace::Foot), cut(CutPlace::Head)],
            mates: Vec::new(),
            seeks: Vec::new(),
        })
    }

    /// Cut its wood along another plane.
    pub fn clip(&mut self, plane: Plane, tag: Made) {
        self.cells = self.cells.iter().filter_map(|c| c.clipped(plane, tag)).collect();
    }

    /// Whether nothing is left of it.
    pub fn is_empty(&self) -> bool {
        let reach = self.cells.iter().flat_map(|c| &c.points).map(|p| self.axes.along.dot(*p));
        let [low, high] = reach.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], x| [lo.min(x), hi.max(x)]);
        high - low < SHORTEST_PIECE
    }
}

/// The point at these distances along a piece's axes, mm.
pub fn at(axes: &Axes, x: f64, y: f64, z: f64) -> DVec3 {
    axes.origin + axes.along * x + axes.up * y + axes.across * z
}

/// A bar with square ends between these distances along its axes, mm.
pub fn bar(axes: &Axes, x: [f64; 2], y: [f64; 2], z: [f64; 2]) -> Cell<Made> {
    let points = (0..8).map(|k| at(axes, x[k & 1], y[k >> 1 & 1], z[k >> 2])).collect();
    // Anticlockwise from outside in the left-handed axes of a timber.
    let face = |ring: [u32; 4], tag| Face { ring: ring.into_iter().collect(), tag };
    let faces = vec![
        face([5, 7, 3, 1], Made::End(true)),
        face([2, 6, 4, 0], Made::End(false)),
        face([3, 7, 6, 2], Made::Top),
        face([4, 5, 1, 0], Made::Underside),
        face([6, 7, 5, 4], Made::Left),
        face([1, 3, 2, 0], Made::Right),
    ];
    Cell { points, faces }
}

/// Axes of a piece along `along` with its depth along `up` (unit vectors,
/// square to one another).
pub fn axes(origin: DVec3, along: DVec3, up: DVec3) -> Axes {
    Axes { origin, along, up, across: up.cross(along) }
}

/// Place what there is room for, tell mates of one another, and declare what
/// the cuts that seek something and the faces in `lies` lie on. Returns the
/// timber of every draft.
pub fn settle(carcass: &mut Carcass<'_>, drafts: Vec<Option<Draft>>, lies: &[Made]) -> Vec<Option<TimberId>> {
    let mut ids: Vec<Option<TimberId>> = Vec::with_capacity(drafts.len());
    let mut ties = Vec::with_capacity(drafts.len());
    for draft in drafts {
        let placed = draft.filter(|d| !d.is_empty()).and_then(|draft| {
            if let Some(&other) = carcass.in_the_way(&draft.cells).first() {
                left_out(carcass, &draft, other);
                return None;
            }
            let Draft { kind, wall, section, line, axes, cells, cuts, mates, seeks } = draft;
            let id = carcass.add(Timber::fitted(kind, Some(wall), section, line, axes, cells, cuts));
            ties.push((id, mates, seeks));
            Some(id)
        });
        ids.push(placed);
    }
    for (id, mates, seeks) in ties {
        for (cut, mate) in mates {
            if let Some(Some(mate)) = ids.get(mate) {
                set_purpose(carcass, id, cut, CutUse::Mitre(*mate));
            }
        }
        let near = carcass.beside(carcass.wood(id));
        for cut in seeks {
            if let Some(&other) = contacts::among(carcass, id, Made::Cut(cut), &near).first() {
                set_purpose(carcass, id, cut, CutUse::Against(other));
            }
        }
        for &tag in lies {
            let on = contacts::among(carcass, id, tag, &near);
            carcass.timber_mut(id).rests.extend(on.into_iter().map(|other| (tag, other)));
        }
    }
    ids
}

fn set_purpose(carcass: &mut Carcass<'_>, id: TimberId, cut: u16, purpose: CutUse) {
    if let Some(cut) = carcass.timber_mut(id).cuts.get_mut(usize::from(cut)) {
        cut.purpose = purpose;
    }
}

fn left_out(carcass: &mut Carcass<'_>, draft: &Draft, other: TimberId) {
    let wall = carcass.job.walls.get(draft.wall.index()).map_or("", |w| w.letter.as_str()).to_string();
    let (name, way) = (draft.kind.name(), carcass.timber(other).kind.name());
    let spot = (draft.line[0] + draft.line[1]) / 2.0;
    carcass.remark(
        NoticeLevel::Warn,
        "piece-left-out",
        format!("wall {wall}"),
        format!(
            "A {name} of wall {wall}, near ({:.0}, {:.0}), is left out: a {way} stands where it would go. Give it \
             other sizes or more overhang, or fit it on site.",
            spot.x, spot.y
        ),
    );
}
