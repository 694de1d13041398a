//! Trimming rafters: the stations beside holes in a slope.
//!
//! Their inner faces stand at the edges of the hole. A rafter that something
//! else fixes there serves if it stands near enough; otherwise the trimming
//! rafter moves out until it clears it, and the hole is made that much wider.

use super::stations::{DAYLIGHT, FaceStations, Fixed, SAME, Station};
use crate::SolveError;
use crate::openings::rule;
use crate::openings::{Hole, Misfit};
use geometry::DVec2;
use geometry::surface::FaceId;
use job::Job;

/// Trimming rafters stand firmer than nothing that the roof itself fixes.
const RANK: u8 = 3;

/// How a hole is trimmed in plan.
#[derive(Clone, Debug)]
pub struct Stood {
    /// The hole.
    pub hole: Hole,
    /// Inner faces of the trimming rafters, along the hole's own axis, mm.
    pub inner: [f64; 2],
    /// Trimming rafters on each side.
    pub plies: usize,
}

/// Centres of rafters that are not to touch stand further apart than this, mm.
pub fn apart(job: &Job) -> f64 {
    job.timber.rafter.size.thickness + DAYLIGHT - SAME
}

/// Add trimming rafters to the fixed stations of a group of faces until every
/// hole has as many as the rafters it cuts ask for.
///
/// # Errors
/// When a hole cuts too many rafters, or there is no room for its trimming
/// rafters.
pub fn stand(
    job: &Job,
    holes: &[Hole],
    axis: DVec2,
    fixed: &[Fixed],
    members: &[FaceId],
    fill: &dyn Fn(&[Fixed]) -> Vec<FaceStations>,
) -> Result<(Vec<FaceStations>, Vec<Stood>), SolveError> {
    let holes: Vec<&Hole> = holes.iter().filter(|h| members.contains(&h.face)).collect();
    let mut plies = vec![1; holes.len()];
    // Every round but the last adds a ply, and the rule allows few of them.
    loop {
        let (with, stood) = add(job, &holes, axis, fixed, &plies)?;
        let mut faces = fill(&with);
        faces.iter_mut().for_each(|f| close_bays(job, f));
        let mut enough = true;
        for (stood, plies) in stood.iter().zip(&mut plies) {
            let cut = cut_by(stood, axis, &faces);
            let wanted = rule::plies(job, cut).ok_or_else(|| stood.hole.refused(too_many(job, cut)))?;
            if wanted > *plies {
                *plies = wanted;
                enough = false;
            }
        }
        if enough {
            return Ok((faces, stood));
        }
    }
}

fn too_many(job: &Job, cut: usize) -> Misfit {
    let rafter = &job.timber.rafter;
    let most = rule::most_cut(job);
    let widest = (most + 1) as f64 * rafter.centres - rafter.size.thickness;
    Misfit::TooManyCut { cut, most, widest }
}

/// Rafters that stand in a hole.
fn cut_by(stood: &Stood, axis: DVec2, faces: &[FaceStations]) -> usize {
    let [lo, hi] = on_axis(stood.inner, turn(&stood.hole, axis));
    let stations = faces.iter().filter(|f| f.face == stood.hole.face).flat_map(|f| &f.stations);
    stations.filter(|s| !s.outside && s.at > lo && s.at < hi).count()
}

/// +1 or -1: which way the hole's own axis runs along the group's.
fn turn(hole: &Hole, axis: DVec2) -> f64 {
    hole.slope.axis.dot(axis).signum()
}

fn on_axis([a, b]: [f64; 2], turn: f64) -> [f64; 2] {
    if turn < 0.0 { [-b, -a] } else { [a, b] }
}

/// The fixed stations with trimming rafters among them.
fn add(
    job: &Job,
    holes: &[&Hole],
    axis: DVec2,
    fixed: &[Fixed],
    plies: &[usize],
) -> Result<(Vec<Fixed>, Vec<Stood>), SolveError> {
    let t = job.timber.rafter.size.thickness;
    let mut all = fixed.to_vec();
    let mut stood: Vec<Stood> = Vec::with_capacity(holes.len());
    for (&hole, &plies) in holes.iter().zip(plies) {
        let turn = turn(hole, axis);
        let edges = on_axis(hole.x, turn);
        let reach = hole.inward();
        let mut inner = edges;
        for (side, out) in [(0, -1.0), (1, 1.0)] {
            let hard: Vec<f64> = all
                .iter()
                .filter(|f| !f.outside && f.face.is_none_or(|face| face == hole.face))
                .map(|f| -out * f.at)
                .collect();
            let face = inner_face(-out * edges[side], plies, &hard, (t, hole.slack))
                .ok_or_else(|| hole.refused(Misfit::Beside))?;
            inner[side] = -out * face;
            for ply in 0..plies {
                let at = inner[side] + out * t * (ply as f64 + 0.5);
                stand_at(&mut all, at, hole.face, reach, ply > 0);
            }
        }
        stood.push(Stood { hole: hole.clone(), inner: on_axis(inner, turn), plies });
    }
    all.sort_by(|a, b| a.at.total_cmp(&b.at));
    Ok((all, stood))
}

/// Where the inner face of the trimming rafters stands that lie below `edge`
/// on an axis: as near to it as the fixed rafters (centres in `hard`) allow.
fn inner_face(edge: f64, plies: usize, hard: &[f64], (t, slack): (f64, f64)) -> Option<f64> {
    // At the edge; on a fixed rafter; or touching one from either side.
    let beside = hard.iter().flat_map(|c| [c + t / 2.0, c - t / 2.0, c + t * 1.5]);
    let fits = |face: &f64| {
        (0..plies).all(|ply| {
            let at = face - t * (ply as f64 + 0.5);
            hard.iter().all(|c| {
                let off = (at - c).abs();
                off < SAME || (off - t).abs() < SAME || off > t + DAYLIGHT - SAME
            })
        })
    };
    let near = |face: &f64| *face < edge + SAME && *face > edge - slack;
    core::iter::once(edge).chain(beside).filter(near).filter(fits).max_by(f64::total_cmp)
}

fn stand_at(all: &mut Vec<Fixed>, at: f64, face: FaceId, reach: [f64; 2], alone: bool) {
    let mine = |f: &&mut Fixed| !f.outside && f.face.is_none_or(|x| x == face) && (f.at - at).abs() < SAME;
    let Some(found) = all.iter_mut().find(mine) else {
        let trims = vec![(face, reach)];
        all.push(Fixed { at, node: None, face: Some(face), outside: false, rank: RANK, trims, alone });
        return;
    };
    match found.trims.iter_mut().find(|(on, _)| *on == face) {
        Some((_, known)) => *known = [known[0].min(reach[0]), known[1].max(reach[1])],
        None => found.trims.push((face, reach)),
    }
}

/// A rafter that gave way to a trimming rafter may leave a bay wider than the
/// centres: share it.
fn close_bays(job: &Job, face: &mut FaceStations) {
    let widest = job.timber.rafter.centres + SAME;
    let Some(last) = face.stations.iter().rposition(|s| !s.outside) else { return };
    let mut extra = Vec::new();
    for pair in face.stations[..=last].windows(2).filter(|p| !p[0].outside) {
        let bay = pair[1].at - pair[0].at;
        let parts = (bay / widest).ceil();
        extra.extend((1..parts as usize).map(|k| Station {
            at: pair[0].at + bay * k as f64 / parts,
            node: None,
            outside: false,
            fixed: false,
            trims: None,
        }));
    }
    face.stations.extend(extra);
    face.stations.sort_by(|a, b| a.at.total_cmp(&b.at));
}

#[cfg(test)]
mod tests {
    use super::*;

    const T: f64 = 47.0;

    #[test]
    fn it_stands_at_the_edge_when_nothing_is_near() {
        assert_eq!(inner_face(1000.0, 1, &[], (T, 2.5 * T)), Some(1000.0));
        assert_eq!(inner_face(1000.0, 2, &[700.0, 1400.0], (T, 2.5 * T)), Some(1000.0));
    }

    #[test]
    fn a_rafter_just_outside_serves() {
        assert_eq!(inner_face(1000.0, 1, &[1000.0 - 30.0], (T, 2.5 * T)), Some(993.5));
    }

    #[test]
    fn a_rafter_across_the_edge_is_passed() {
        assert_eq!(inner_face(1000.0, 1, &[1000.0], (T, 2.5 * T)), Some(976.5));
        assert_eq!(inner_face(1000.0, 2, &[1000.0], (T, 2.5 * T)), Some(976.5));
    }

    #[test]
    fn it_is_bolted_to_a_rafter_that_leaves_no_daylight() {
        assert_eq!(inner_face(1000.0, 1, &[1000.0 - 1.5 * T - 10.0], (T, 2.5 * T)), Some(990.0));
    }

    #[test]
    fn crowded_rafters_leave_no_place() {
        let crowd: Vec<f64> = (0..20).map(|k| 500.0 + 30.0 * f64::from(k)).collect();
        assert_eq!(inner_face(1000.0, 2, &crowd, (T, 2.5 * T)), None);
    }
}
