//! Rafters of every kind: a station's line up a face, cut where lines cross it.

use super::heights::Heights;
use super::stations::{FaceStations, Station, wall_at};
use super::supporting::FaceLine;
use super::timber::{Body, EndOn, Made, Role, Seat, TailEnd, Timber, TimberId, Top};
use crate::solution::MemberKind;
use geometry::surface::{ArcId, ArcKind, NodeId, Surface, WallId};
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
    let (axis, inward) = (stations.axis, face.plane.inward);
    // A rafter outside a gable repeats the line of the roof at the gable itself.
    let reach = face.outline.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], n| {
        let d = axis.dot(surface.node(*n).truncate());
        [lo.min(d), hi.max(d)]
    });
    let at = if station.outside { station.at.clamp(reach[0] + 1e-6, reach[1] - 1e-6) } else { station.at };
    let n = face.outline.len();
    let flat = |p: DVec2| (axis.dot(p) - at, inward.dot(p));
    let mut crossings: Vec<(f64, Bound)> = Vec::new();
    let nudge = off_corner(surface, stations, at);
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
                wall_at(surface, stations.face, axis, at).map_or(Bound::Arc(arc), Bound::Eaves)
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
    let foot = stations.axis * station.at + plane.inward * low.0;
    let run = high.0 - low.0;
    let pitch = Angle::deg(plane.pitch_deg);
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
    let mut timber = Timber {
        kind,
        role: Role::Rafter { face: stations.face },
        section,
        foot,
        dir: plane.inward,
        run,
        base,
        slope: plane.tan_pitch,
        half: [half; 2],
        top_offset: heights.upstand,
        under_offset: heights.upstand - section.depth / pitch.cos(),
        top: Top::Flat,
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
        lengthened: None,
        slot: 0,
    };
    if let (Bound::Eaves(_), EndOn::Plate) = (low.1, timber.ends[0]) {
        timber.seat = Some(Seat { heel: HalfPlan::through(foot, plane.inward), level: base });
    }
    let past = DRAWN_PAST * section.thickness;
    let past_foot = match timber.ends[0] {
        EndOn::Plate => timber.tails.first().map_or(0.0, |t| t.overhang) + PAST_TAIL,
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
