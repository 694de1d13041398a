//! Stations: where rafters stand along the walls.
//!
//! Faces on the two sides of a ridge share their stations so that rafters
//! meet in pairs. Fixed stations come first: at ridge ends, in the middle of
//! hipped ends, at gables. Between them rafters are spread at no more than the
//! centres; from the last fixed one towards a hip or valley corner they go on
//! at full centres.

use super::gable_ends::{self, Rake};
use super::heights::Heights;
use super::pairing::{self, Paired};
use super::spines::is_ridge;
use super::timber::{Timber, TimberId};
use super::trimming::{self, Stood};
use crate::SolveError;
use crate::openings::Hole;
use crate::solution::MemberKind;
use geometry::DVec2;
use geometry::surface::{FaceId, NodeId, Surface, WallId};
use job::{HipHead, Job, Spread};

/// Two fixed stations keep at least this much daylight between them, mm: room
/// for a hammer; the later one gives way.
pub const DAYLIGHT: f64 = 20.0;

/// Stations nearer than this are one, mm.
pub const SAME: f64 = 1e-3;

/// A last bay narrower than this share of the centres is shared with the bay
/// before it, so that no two rafters stand close together.
const NARROW_BAY: f64 = 0.5;

/// More stations than this are a slip of the unit, not a roof.
const MOST_STATIONS: usize = 20_000;

/// Directions nearer than this sine are parallel.
const PARALLEL: f64 = 1e-6;

/// A rafter's place along a face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Distance along the group's axis, mm.
    pub at: f64,
    /// The node its head belongs to, for crown rafters and last commons.
    pub node: Option<NodeId>,
    /// It stands outside a gable, carried by ridge and plates.
    pub outside: bool,
    /// The shape of the roof or a hole fixes it here.
    pub fixed: bool,
    /// It stands beside a hole in the slope: reach of the hole inwards, mm as
    /// the plane's offset.
    pub trims: Option<[f64; 2]>,
    /// It runs along a gable out of square, and not straight up the face.
    pub rake: Option<Rake>,
}

impl Station {
    /// A station for a rafter straight up its face that nothing fixes.
    pub const fn free(at: f64) -> Self {
        Self { at, node: None, outside: false, fixed: false, trims: None, rake: None }
    }
}

/// The stations of one face.
#[derive(Clone, Debug)]
pub struct FaceStations {
    /// The face.
    pub face: FaceId,
    /// Unit vector along the walls.
    pub axis: DVec2,
    /// Stations in rising order.
    pub stations: Vec<Station>,
}

/// A station that something fixes.
#[derive(Clone, Debug)]
pub struct Fixed {
    /// Distance along the group's axis, mm.
    pub at: f64,
    /// The node its head belongs to.
    pub node: Option<NodeId>,
    /// The only face that it stands on.
    pub face: Option<FaceId>,
    /// It stands outside a gable.
    pub outside: bool,
    /// Lower stands firmer when two are too close.
    pub rank: u8,
    /// The faces on which it stands beside a hole; see [`Station::trims`].
    pub trims: Vec<(FaceId, [f64; 2])>,
    /// The other faces of the group have no rafter opposite this one.
    pub alone: bool,
    /// It runs along a gable out of square.
    pub rake: Option<Rake>,
}

impl Fixed {
    /// A station that the shape of the roof fixes.
    pub const fn plain(at: f64, node: Option<NodeId>, face: Option<FaceId>, rank: u8) -> Self {
        Self { at, node, face, outside: false, rank, trims: Vec::new(), alone: false, rake: None }
    }
}

/// Stations of every face, and how the holes in them are trimmed.
///
/// # Errors
/// When centres and walls would make an absurd number of rafters, or a hole
/// cannot be trimmed.
pub fn of_faces(
    job: &Job,
    surface: &Surface,
    timbers: &[Timber],
    of_arc: &[Option<TimberId>],
    heights: &Heights,
    holes: &[Hole],
) -> Result<(Vec<FaceStations>, Vec<Stood>), SolveError> {
    let group = ridge_groups(surface, holes);
    let mut out = Vec::with_capacity(surface.faces.len());
    let mut stood = Vec::new();
    let mut count = 0;
    for g in 0..surface.faces.len() {
        let members: Vec<FaceId> =
            (0..surface.faces.len()).filter(|f| group[*f] == g).map(|f| FaceId(f as u32)).collect();
        let Some(&lead) = members.first() else { continue };
        let axis = -surface.face(lead).plane.inward.perp();
        let members = pairing::across_ridges(surface, &members, axis);
        let fixed = fixed_stations(job, surface, timbers, of_arc, heights, &members, axis);
        let reach = members
            .iter()
            .map(|m| face_reach(surface, m.face, m.axis).map(|at| m.to_group(at)))
            .fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], [a, b]| [lo.min(a), hi.max(b)]);
        let expected = ((reach[1] - reach[0]) / job.timber.rafter.centres) as usize * members.len();
        count += expected;
        if count > MOST_STATIONS {
            return Err(SolveError::TooManyRafters { count, limit: MOST_STATIONS });
        }
        let faces: Vec<FaceId> = members.iter().map(|m| m.face).collect();
        if holes.iter().any(|h| faces.contains(&h.face)) {
            let (faces, trimmed) = trimming::stand(job, holes, axis, &fixed, &faces, &|fixed| {
                filled(job, surface, &members, fixed, reach)
            })?;
            out.extend(faces);
            stood.extend(trimmed);
        } else {
            out.extend(filled(job, surface, &members, &fixed, reach));
        }
    }
    Ok((out, stood))
}

/// The stations of a group's faces: the fixed ones and those between them.
fn filled(job: &Job, surface: &Surface, members: &[Paired], fixed: &[Fixed], reach: [f64; 2]) -> Vec<FaceStations> {
    let inner: Vec<f64> = fixed.iter().filter(|f| !f.outside).map(|f| f.at).collect();
    let spread = spread(job, &inner, reach);
    let of_face = |member: &Paired| {
        let Paired { face, axis, .. } = *member;
        let [lo, hi] = face_reach(surface, face, axis);
        let own = |f: &&Fixed| f.face.is_none_or(|x| x == face);
        let mut stations: Vec<Station> = fixed
            .iter()
            .filter(own)
            .map(|f| Station {
                at: member.to_own(f.at),
                node: f.node,
                outside: f.outside,
                fixed: true,
                trims: f.trims.iter().find(|(on, _)| *on == face).map(|(_, reach)| *reach),
                rake: f.rake,
            })
            .collect();
        let foreign =
            fixed.iter().filter(|f| !own(f) && !f.outside && !f.alone).map(|f| (f.at, !f.trims.is_empty(), true));
        for (at, trims, fixed) in spread.iter().map(|at| (*at, false, false)).chain(foreign) {
            let at = member.to_own(at);
            let apart = |s: &Station| if trims || s.trims.is_some() { trimming::apart(job) } else { SAME };
            if at > lo && at < hi && stations.iter().all(|s| (s.at - at).abs() > apart(s)) {
                stations.push(Station { fixed, ..Station::free(at) });
            }
        }
        stations.sort_by(|a, b| a.at.total_cmp(&b.at));
        FaceStations { face, axis, stations }
    };
    members.iter().map(of_face).collect()
}

/// The group of every face: faces across a ridge from one another are one
/// group, numbered by its first face. Their walls are parallel, or nearly so
/// where no hole asks for one measure along all of them.
fn ridge_groups(surface: &Surface, holes: &[Hole]) -> Vec<usize> {
    let mut group: Vec<usize> = (0..surface.faces.len()).collect();
    for arc in surface.arcs.iter().filter(|a| is_ridge(surface, a)) {
        let (Some(a), Some(b)) = (arc.left, arc.right) else { continue };
        let turn = surface.face(a).plane.inward.perp_dot(surface.face(b).plane.inward);
        let most = if holes.is_empty() { pairing::MOST_TURN } else { PARALLEL };
        if turn.abs() > most {
            continue;
        }
        let (keep, drop) = (group[a.index()].min(group[b.index()]), group[a.index()].max(group[b.index()]));
        group.iter_mut().filter(|g| **g == drop).for_each(|g| *g = keep);
    }
    group
}

fn face_reach(surface: &Surface, face: FaceId, axis: DVec2) -> [f64; 2] {
    surface.face(face).outline.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], n| {
        let d = axis.dot(surface.node(*n).truncate());
        [lo.min(d), hi.max(d)]
    })
}

/// Stations that the shape of the roof fixes.
fn fixed_stations(
    job: &Job,
    surface: &Surface,
    timbers: &[Timber],
    of_arc: &[Option<TimberId>],
    heights: &Heights,
    members: &[Paired],
    axis: DVec2,
) -> Vec<Fixed> {
    let t = job.timber.rafter.size.thickness;
    let mut fixed: Vec<Fixed> = Vec::new();
    for member in members {
        let face = member.face;
        let f = surface.face(face);
        let n = f.outline.len();
        for k in 0..n {
            let node = f.outline[k];
            let at = member.to_group(member.axis.dot(surface.node(node).truncate()));
            let sides = [f.arcs[(k + n - 1) % n], f.arcs[k]].map(|a| of_arc[a.index()].map(|id| &timbers[id.index()]));
            let [Some(a), Some(b)] = sides else { continue };
            match (a.kind, b.kind) {
                (MemberKind::RidgeBoard, MemberKind::HipRafter) | (MemberKind::HipRafter, MemberKind::RidgeBoard) => {
                    let ridge = if a.kind == MemberKind::RidgeBoard { a } else { b };
                    let node_at = surface.node(node).truncate();
                    let (at, node) = match job.timber.hip.head {
                        HipHead::Crown => (at, Some(node)),
                        HipHead::Ridge => (
                            at + clear_of_hips(job, ridge, &hips_at(surface, timbers, of_arc, node), node_at, axis),
                            None,
                        ),
                    };
                    fixed.push(Fixed::plain(at, node, node.map(|_| face), 1));
                }
                (MemberKind::HipRafter, MemberKind::HipRafter) => {
                    let ridge_here = ridge_ends_at(surface, timbers, of_arc, node);
                    match job.timber.hip.head {
                        HipHead::Ridge if ridge_here => {
                            for half in [-0.5, 0.5] {
                                let at = at + half * job.timber.rafter.centres;
                                fixed.push(Fixed::plain(at, None, None, 2));
                            }
                        }
                        _ => {
                            let node = ridge_here.then_some(node);
                            fixed.push(Fixed::plain(at, node, node.map(|_| face), 2));
                        }
                    }
                }
                _ => {}
            }
        }
    }
    for end in gable_ends::of_group(job, surface, heights, members) {
        let [mut inmost, outmost] = end.reach;
        if let Some(tail) = end.tail.filter(|_| end.upright) {
            // Clear of the tails outside, however far out of square they run.
            let clear = tail + end.inward * (DAYLIGHT - job.verge.inset);
            inmost = if end.inward > 0.0 { inmost.max(clear) } else { inmost.min(clear) };
        }
        let inner = inmost + end.inward * (job.verge.inset + t / 2.0);
        fixed.push(Fixed::plain(inner, None, None, 0));
        let outer = outmost - end.inward * (job.verge.overhang - t / 2.0);
        if end.upright && job.verge.overhang + job.verge.inset > t + DAYLIGHT {
            let rake = end.skew.map(|(out, gable)| Rake { out, gable, at: gable + job.verge.overhang - t / 2.0 });
            fixed.push(Fixed { outside: true, rake, ..Fixed::plain(outer, None, Some(end.face), 0) });
        }
    }
    fixed.sort_by(|a, b| a.rank.cmp(&b.rank).then(a.at.total_cmp(&b.at)));
    let mut kept: Vec<Fixed> = Vec::new();
    for f in fixed {
        let crowded = kept.iter().any(|k| {
            let apart = (k.at - f.at).abs();
            let other_face = k.face.is_some() && f.face.is_some() && k.face != f.face;
            apart < t + DAYLIGHT && !(apart < 1e-3 && other_face)
        });
        if !crowded {
            kept.push(f);
        }
    }
    kept.sort_by(|a, b| a.at.total_cmp(&b.at));
    kept
}

/// How far along the axis a common must stand from a ridge end to clear the
/// flanks of the hips that butt against the ridge's sides.
fn clear_of_hips(job: &Job, ridge: &Timber, hips: &[&Timber], node: DVec2, axis: DVec2) -> f64 {
    let away = if (ridge.foot - node).length() > (ridge.head() - node).length() { -ridge.dir } else { ridge.dir };
    let clear = |hip: &&Timber| {
        let sine = ridge.dir.perp_dot(hip.dir).abs().max(0.1);
        let cosine = ridge.dir.dot(hip.dir).abs();
        (hip.section.thickness / 2.0 - ridge.section.thickness / 2.0 * cosine) / sine
    };
    let most = hips.iter().map(clear).fold(0.0, f64::max);
    (most + job.timber.rafter.size.thickness / 2.0) * axis.dot(away).signum()
}

/// The hips that end at a node.
fn hips_at<'a>(surface: &Surface, timbers: &'a [Timber], of_arc: &[Option<TimberId>], node: NodeId) -> Vec<&'a Timber> {
    let here = surface.arcs.iter().zip(of_arc).filter(|(arc, _)| arc.from == node || arc.to == node);
    here.filter_map(|(_, id)| *id).map(|id| &timbers[id.index()]).filter(|t| t.kind == MemberKind::HipRafter).collect()
}

fn ridge_ends_at(surface: &Surface, timbers: &[Timber], of_arc: &[Option<TimberId>], node: NodeId) -> bool {
    surface.arcs.iter().enumerate().any(|(k, arc)| {
        (arc.from == node || arc.to == node)
            && of_arc[k].is_some_and(|id| timbers[id.index()].kind == MemberKind::RidgeBoard)
    })
}

/// Stations between and beyond the fixed ones.
fn spread(job: &Job, fixed: &[f64], reach: [f64; 2]) -> Vec<f64> {
    let rafter = &job.timber.rafter;
    let (c, t) = (rafter.centres, rafter.size.thickness);
    let mut out = Vec::new();
    let (Some(&first), Some(&last)) = (fixed.first(), fixed.last()) else {
        let middle = (reach[0] + reach[1]) / 2.0;
        let bays = ((reach[1] - reach[0]) / c).floor();
        let start = middle - bays * c / 2.0;
        return (0..=bays as usize).map(|k| start + k as f64 * c).collect();
    };
    for pair in fixed.windows(2) {
        between(&mut out, pair[0], pair[1], c, rafter.spread);
    }
    let mut at = last + c;
    while at < reach[1] - t / 2.0 {
        out.push(at);
        at += c;
    }
    at = first - c;
    while at > reach[0] + t / 2.0 {
        out.push(at);
        at -= c;
    }
    out
}

/// Stations strictly between two fixed ones.
fn between(out: &mut Vec<f64>, a: f64, b: f64, centres: f64, spread: Spread) {
    let length = b - a;
    // A bay may be wider than the centres by rounding only.
    let bays = (length / centres - 1e-6).ceil().max(1.0);
    let count = bays as usize;
    if spread == Spread::Equal {
        out.extend((1..count).map(|k| a + length * k as f64 / bays));
        return;
    }
    let rest = length - (bays - 1.0) * centres;
    let mut widths = vec![centres; count];
    if let Some(w) = widths.last_mut() {
        *w = rest;
    }
    if count > 1 && rest < NARROW_BAY * centres {
        let shared = (centres + rest) / 2.0;
        widths[count - 1] = shared;
        widths[count - 2] = shared;
    }
    if spread == Spread::FromEnd {
        widths.reverse();
    }
    let mut at = a;
    for w in &widths[..count - 1] {
        at += w;
        out.push(at);
    }
}

/// The wall on which a station of a face stands: the one whose plate line it crosses.
pub fn wall_at(surface: &Surface, face: FaceId, axis: DVec2, at: f64) -> Option<WallId> {
    let walls = &surface.face(face).walls;
    let mut first = 0;
    let mut best: Option<(f64, WallId)> = None;
    for ring in &surface.loops {
        let n = ring.len();
        for k in 0..n {
            let wall = WallId((first + k) as u32);
            if !walls.contains(&wall) {
                continue;
            }
            let (a, b) = (axis.dot(ring[k]), axis.dot(ring[(k + 1) % n]));
            let off = (a.min(b) - at).max(at - a.max(b)).max(0.0);
            if best.is_none_or(|(o, _)| off < o) {
                best = Some((off, wall));
            }
        }
        first += n;
    }
    best.map(|(_, wall)| wall)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bays(a: f64, b: f64, spread: Spread) -> Vec<f64> {
        let mut at = vec![a];
        between(&mut at, a, b, 400.0, spread);
        at.push(b);
        at.windows(2).map(|w| w[1] - w[0]).collect()
    }

    #[test]
    fn no_bay_is_wider_than_the_centres_and_none_is_cramped() {
        for length in 50..4000 {
            for spread in [Spread::Equal, Spread::FromStart, Spread::FromEnd] {
                let bays = bays(0.0, f64::from(length), spread);
                assert!(bays.iter().all(|b| *b <= 400.0 + 1e-3), "{length} {spread:?} {bays:?}");
                assert!(bays.len() == 1 || bays.iter().all(|b| *b >= 199.0), "{length} {spread:?} {bays:?}");
                assert!((bays.iter().sum::<f64>() - f64::from(length)).abs() < 1e-6);
            }
        }
    }

    #[test]
    fn full_centres_come_first_from_the_start() {
        assert_eq!(bays(0.0, 1050.0, Spread::FromStart), [400.0, 400.0, 250.0]);
        assert_eq!(bays(0.0, 1050.0, Spread::FromEnd), [250.0, 400.0, 400.0]);
        assert_eq!(bays(0.0, 1050.0, Spread::Equal), [350.0, 350.0, 350.0]);
    }
}
