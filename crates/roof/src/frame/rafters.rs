//! Rafters of every kind: a station's line up a face, cut where lines cross it.

use super::LEAST_SPLAY;
use super::firring;
use super::gable_ends::Rake;
use super::heights::Heights;
use super::stations::{FaceStations, Station, wall_at};
use super::supporting::FaceLine;
use super::timber::{Body, EndOn, Made, Role, Seat, TailEnd, Timber, TimberId, Top};
use crate::solution::MemberKind;
use geometry::surface::{ArcId, ArcKind, NodeId, RoofPlane, Surface, WallId};
use geometry::{Angle, ConvexPlan, DVec2, HalfPlan};
use job::Job;

/// A rafter with less run than this, mm in plan, is left out: there is no room
/// to fix it, and a noggin does its work (common practice).
const SHORTEST_RUN: f64 = 150.0;

/// Rafter strips are drawn past hips and ridges by this many thicknesses
/// before they are cut, enough for cuts down to about 18° to their line.
pub const DRAWN_PAST: f64 = 3.0;

/// A rafter's head lies on a corner of its face when it misses it by less, mm.
const AT_CORNER: f64 = 0.5;

/// A station stands abreast of a corner when it misses it by less, mm.
const ABREAST: f64 = 0.05;

/// Tails are drawn past their fascia by this much before they are cut, mm.
const PAST_TAIL: f64 = 10.0;

/// What lies at an end of a rafter's line.
#[derive(Clone, Copy, Debug)]
enum Bound {
    Eaves(WallId),
    Arc(ArcId),
    Inner(TimberId),
}

/// Frame all rafters of a face.
pub fn in_face(
    job: &Job,
    surface: &Surface,
    heights: &Heights,
    spines: (&[Timber], &[Option<TimberId>]),
    lines: &[FaceLine],
    stations: &FaceStations,
    joint_of: &dyn Fn(NodeId) -> u32,
) -> Vec<Timber> {
    let mut out = Vec::new();
    for station in &stations.stations {
        for (slot, (low, high)) in (0..).zip(pieces(surface, stations, lines, station)) {
            let timber = rafter(job, surface, heights, spines, stations, station, (low, high), joint_of);
            if timber.run >= SHORTEST_RUN {
                out.push(Timber { slot, ..timber });
            }
        }
    }
    out
}

/// Whether a rafter stands at a station of a face.
pub fn stands(surface: &Surface, lines: &[FaceLine], stations: &FaceStations, station: &Station) -> bool {
    pieces(surface, stations, lines, station).iter().any(|(low, high)| high.0 - low.0 >= SHORTEST_RUN)
}

/// The parts of a station's line inside its face, as pairs of ends given by
/// distance inwards and what lies there.
fn pieces(
    surface: &Surface,
    stations: &FaceStations,
    lines: &[FaceLine],
    station: &Station,
) -> Vec<((f64, Bound), (f64, Bound))> {
    let face = surface.face(stations.face);
    let (axis, inward) = station.rake.map_or((stations.axis, face.plane.inward), |r| (r.out, r.dir(face.plane.inward)));
    // A rafter outside a gable repeats the line of the roof at the gable itself.
    let reach = face.outline.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], n| {
        let d = axis.dot(surface.node(*n).truncate());
        [lo.min(d), hi.max(d)]
    });
    let at = match station.rake {
        Some(rake) => rake.inside(),
        None if station.outside => station.at.clamp(reach[0] + 1e-6, reach[1] - 1e-6),
        None => station.at,
    };
    let n = face.outline.len();
    let flat = |p: DVec2| (axis.dot(p) - at, inward.dot(p));
    let mut crossings: Vec<(f64, Bound)> = Vec::new();
    let nudge = if station.rake.is_some() { 0.0 } else { off_corner(surface, stations, at) };
    let cross = |a: DVec2, b: DVec2| {
        let ((xa, ya), (xb, yb)) = (flat(a), flat(b));
        ((xa <= nudge) != (xb <= nudge)).then(|| ya + (yb - ya) * (xa / (xa - xb)))
    };
    for k in 0..n {
        let (a, b) = (surface.node(face.outline[k]).truncate(), surface.node(face.outline[(k + 1) % n]).truncate());
        if let Some(y) = cross(a, b) {
            let arc = face.arcs[k];
            // A slope may also start on top of a gable that is carried up: that is no plate.
            let level = surface.node(face.outline[k]).z - face.plane.base_height;
            let bound = if surface.arc(arc).kind == ArcKind::Eaves && level.abs() < AT_CORNER {
                wall_at(surface, stations.face, stations.axis, stations.axis.dot(axis * at + inward * y))
                    .map_or(Bound::Arc(arc), Bound::Eaves)
            } else {
                Bound::Arc(arc)
            };
            crossings.push((y, bound));
        }
    }
    crossings.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut out = Vec::new();
    for pair in crossings.chunks_exact(2) {
        let (low, high) = (pair[0], pair[1]);
        let mut cuts: Vec<(f64, Bound)> = lines
            .iter()
            .filter(|l| l.face == stations.face)
            .filter_map(|l| cross(l.from, l.to).map(|y| (y, Bound::Inner(l.timber))))
            .filter(|(y, _)| *y > low.0 + 1.0 && *y < high.0 - 1.0)
            .collect();
        cuts.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut start = low;
        for cut in cuts {
            out.push((start, cut));
            start = cut;
        }
        out.push((start, high));
    }
    out
}

/// Which way a station abreast of a re-entrant corner is taken to lie: just
/// off the plate, on the valley's side, so that rounding does not decide
/// between a common and a valley jack.
fn off_corner(surface: &Surface, stations: &FaceStations, at: f64) -> f64 {
    let face = surface.face(stations.face);
    let n = face.outline.len();
    let along = |k: usize| stations.axis.dot(surface.node(face.outline[k % n]).truncate()) - at;
    let kind = |k: usize| surface.arc(face.arcs[k % n]).kind;
    (0..n)
        .filter(|k| along(*k).abs() < ABREAST)
        .find_map(|k| match (kind(k + n - 1), kind(k)) {
            (ArcKind::Eaves, ArcKind::Valley) => Some(-along(k + n - 1).signum() * 2.0 * ABREAST),
            (ArcKind::Valley, ArcKind::Eaves) => Some(-along(k + 1).signum() * 2.0 * ABREAST),
            _ => None,
        })
        .unwrap_or(0.0)
}

#[expect(clippy::too_many_arguments, reason = "one place where a station, its face and the frame come together")]
fn rafter(
    job: &Job,
    surface: &Surface,
    heights: &Heights,
    (spines, of_arc): (&[Timber], &[Option<TimberId>]),
    stations: &FaceStations,
    station: &Station,
    (low, high): ((f64, Bound), (f64, Bound)),
    joint_of: &dyn Fn(NodeId) -> u32,
) -> Timber {
    let plane = surface.face(stations.face).plane;
    let timber_of = |b: Bound| match b {
        Bound::Eaves(_) => None,
        Bound::Arc(a) => of_arc[a.index()],
        Bound::Inner(t) => Some(t),
    };
    let end_on = |b: Bound| match (b, timber_of(b)) {
        (Bound::Eaves(_), _) => EndOn::Plate,
        (_, Some(t)) => EndOn::Timber(t),
        (Bound::Arc(a), None) if matches!(surface.arc(a).kind, ArcKind::Verge | ArcKind::Abutment | ArcKind::Eaves) => {
            EndOn::Wall
        }
        (_, None) => EndOn::Bare,
    };
    let (foot, dir, run) = match station.rake {
        Some(rake) => raked_line(surface, stations, rake, low, high),
        None => (stations.axis * station.at + plane.inward * low.0, plane.inward, high.0 - low.0),
    };
    let square = plane.inward.dot(dir);
    let slope = if station.rake.is_some() { plane.tan_pitch * square } else { plane.tan_pitch };
    let section = job.timber.rafter.size;
    let at_node = station.node.filter(|n| (surface.node(*n).truncate().dot(plane.inward) - high.0).abs() < AT_CORNER);
    let tails: Vec<TailEnd> = match low.1 {
        Bound::Eaves(wall) => {
            vec![TailEnd::new(wall, plane, heights.overhang(wall), heights.upstand, job.eaves.tail)]
        }
        _ => Vec::new(),
    };
    let beside = station.trims.is_some_and(|[a, b]| low.0 < a && high.0 > b);
    let framed = kind_of(
        low.1,
        timber_of(low.1).map(|t| spines[t.index()].kind),
        timber_of(high.1).map(|t| spines[t.index()].kind),
        head_corner(surface, spines, of_arc, station, stations, high),
    );
    let kind = if beside { MemberKind::TrimmingRafter } else { framed };
    let half = section.thickness / 2.0;
    let base = plane.height_at(foot);
    let (top, above) = top_of(plane, dir, half, station.rake.is_some());
    let plumb_depth = match station.rake {
        Some(_) => section.depth * (1.0 + slope * slope).sqrt(),
        None => section.depth / Angle::deg(plane.pitch_deg).cos(),
    };
    let mut timber = Timber {
        kind,
        role: Role::Rafter { face: stations.face },
        section,
        foot,
        dir,
        run,
        base,
        slope,
        half: [half; 2],
        top_offset: heights.upstand + above,
        under_offset: heights.upstand + above - plumb_depth,
        top,
        drop: None,
        ends: [end_on(low.1), end_on(high.1)],
        over_verge: [false; 2],
        plate_level: plane.base_height,
        seat: None,
        tails,
        footprint: ConvexPlan::default(),
        cuts: Vec::new(),
        at_joint: at_node.map(joint_of),
        through: Vec::new(),
        gone: false,
        body: Body::Upright,
        ends_cut: Vec::new(),
        notches: Vec::new(),
        rests: Vec::new(),
        firring: Vec::new(),
        lengthened: None,
        slot: 0,
    };
    if let (Bound::Eaves(_), EndOn::Plate) = (low.1, timber.ends[0]) {
        timber.seat = Some(Seat { heel: HalfPlan::through(foot, plane.inward), level: base });
        firring::rafter_onto_plate(heights, &mut timber);
    }
    let (foot, run) = (timber.foot, timber.run);
    let past = DRAWN_PAST * section.thickness;
    let past_foot = match timber.ends[0] {
        EndOn::Plate => {
            let out = timber.tails.first().map_or(0.0, |t| t.overhang + t.plane.inward.dot(foot) - t.plane.offset);
            let past = out + PAST_TAIL;
            if station.rake.is_some() { past / square + section.thickness } else { past }
        }
        EndOn::Timber(_) => past + spines.iter().map(|s| s.section.thickness).fold(0.0, f64::max),
        _ => 0.0,
    };
    let past_head = match (timber.ends[1], timber.at_joint) {
        (EndOn::Bare | EndOn::Wall, None) => 0.0,
        _ => past,
    };
    timber.footprint = ConvexPlan::strip(
        foot,
        timber.dir,
        [-past_foot, run + past_head],
        [-half, half],
        [Made::Right, Made::End(true), Made::Left, Made::End(false)],
    );
    timber
}

/// Foot, direction and run of a rafter along a gable out of square: its ends
/// lie on the lines that end the slope at the gable, run on past it.
fn raked_line(
    surface: &Surface,
    stations: &FaceStations,
    rake: Rake,
    low: (f64, Bound),
    high: (f64, Bound),
) -> (DVec2, DVec2, f64) {
    let dir = rake.dir(surface.face(stations.face).plane.inward);
    let end = |(y, bound): (f64, Bound)| {
        let along = match bound {
            Bound::Arc(arc) => {
                let arc = surface.arc(arc);
                (surface.node(arc.to) - surface.node(arc.from)).truncate().normalize_or_zero()
            }
            Bound::Eaves(_) | Bound::Inner(_) => stations.axis,
        };
        let toward = rake.out.dot(along);
        let on = if toward.abs() < LEAST_SPLAY { 0.0 } else { (rake.at - rake.inside()) / toward };
        // The centre line itself, whatever the line that ends it does.
        let p = rake.out * rake.inside() + dir * y + along * on;
        rake.out * rake.at + dir * dir.dot(p)
    };
    let (foot, head) = (end(low), end(high));
    (foot, dir, dir.dot(head - foot))
}

/// The top of a rafter along `dir`, and how far its higher arris lies over its
/// centre line, mm plumb: where it does not run straight up its face it is
/// planed to the slope.
fn top_of(plane: RoofPlane, dir: DVec2, half: f64, raked: bool) -> (Top, f64) {
    if !raked {
        return (Top::Flat, 0.0);
    }
    (Top::Planed(plane), half * plane.tan_pitch * plane.inward.perp_dot(dir).abs())
}

/// What meets at the corner of the face where a rafter's head lies, if it lies
/// on one.
#[derive(Clone, Copy, PartialEq)]
enum Corner {
    /// Two hips, or the end of a ridge between two hips.
    Crown,
    /// A ridge and a hip: the last common.
    LastCommon,
}

fn head_corner(
    surface: &Surface,
    spines: &[Timber],
    of_arc: &[Option<TimberId>],
    station: &Station,
    stations: &FaceStations,
    high: (f64, Bound),
) -> Option<Corner> {
    let face = surface.face(stations.face);
    let n = face.outline.len();
    let here = |k: &usize| {
        let at = surface.node(face.outline[*k]).truncate();
        (at.dot(face.plane.inward) - high.0).abs() < AT_CORNER && (at.dot(stations.axis) - station.at).abs() < AT_CORNER
    };
    let k = (0..n).find(here)?;
    let kind = |a: ArcId| of_arc[a.index()].map(|t| spines[t.index()].kind);
    match [kind(face.arcs[k]), kind(face.arcs[(k + n - 1) % n])] {
        [Some(MemberKind::HipRafter), Some(MemberKind::HipRafter)] => Some(Corner::Crown),
        [Some(MemberKind::RidgeBoard), _] | [_, Some(MemberKind::RidgeBoard)] => Some(Corner::LastCommon),
        _ => None,
    }
}

fn kind_of(low: Bound, foot: Option<MemberKind>, head: Option<MemberKind>, corner: Option<Corner>) -> MemberKind {
    let on_ridge =
        matches!(head, Some(MemberKind::RidgeBoard | MemberKind::Purlin) | None) || corner == Some(Corner::LastCommon);
    match low {
        Bound::Eaves(_) if corner == Some(Corner::Crown) => MemberKind::CrownRafter,
        Bound::Eaves(_) if on_ridge => MemberKind::CommonRafter,
        Bound::Eaves(_) => MemberKind::JackRafter,
        _ if foot == Some(MemberKind::Purlin) && on_ridge => MemberKind::CommonRafter,
        _ if foot == Some(MemberKind::Purlin) => MemberKind::JackRafter,
        _ if on_ridge => MemberKind::ValleyJack,
        _ => MemberKind::CrippleRafter,
    }
}
