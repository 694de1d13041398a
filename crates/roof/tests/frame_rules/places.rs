//! Where rafters stand: in pairs over ridges, no further apart than the
//! centres, and where the setting-out strips say.

use super::roofs::{Broken, all};
use crate::reading::{along_wall, dir, face, faces_named, foot, head, member, vec3};
use geometry::DVec2;
use roof::solution::{FaceOut, Member, MemberKind, SettingOut, Solution, Station};

/// Rounding, mm.
const ROUNDING: f64 = 1e-6;

/// Rafters with less run than this are left out, so a pair may lack its mate there, mm.
const LEAST_RUN: f64 = 150.0;

/// Daylight between neighbours: room for a hammer, mm.
const DAYLIGHT: f64 = 20.0;

fn strip<'a>(s: &'a Solution, mark: &str) -> &'a SettingOut {
    s.setting_out.iter().find(|o| o.mark == mark).unwrap_or_else(|| panic!("no strip for {mark}"))
}

/// Whether a plan point lies over a face.
fn covers(face: &FaceOut, p: DVec2) -> bool {
    let n = face.outline.len();
    let corner = |k: usize| vec3(face.outline[k % n]).truncate() - p;
    let crossed = |k: &usize| {
        let (a, b) = (corner(*k), corner(*k + 1));
        (a.y <= 0.0) != (b.y <= 0.0) && a.x + (b.x - a.x) * (a.y / (a.y - b.y)) > 0.0
    };
    (0..n).filter(crossed).count() % 2 == 1
}

/// Whether a face falls in a plan direction.
fn falls(s: &Solution, face: &FaceOut, down: DVec2) -> bool {
    let wall = s.plan.walls.iter().find(|w| w.id == face.id).expect("a face has a wall");
    let along = (DVec2::from_array(wall.to) - DVec2::from_array(wall.from)).normalize();
    along.perp().dot(down) < -0.999
}

/// Run of a face straight down its slope from a point on its upper edge.
fn run_below(face: &FaceOut, top: DVec2, down: DVec2) -> f64 {
    let n = face.outline.len();
    let corner = |k: usize| vec3(face.outline[k % n]).truncate();
    (0..n)
        .filter_map(|k| {
            let (a, b) = (corner(k) - top, corner(k + 1) - top);
            let (xa, xb) = (down.perp_dot(a), down.perp_dot(b));
            ((xa <= 0.0) != (xb <= 0.0)).then(|| {
                let t = xa / (xa - xb);
                down.dot(a + (b - a) * t)
            })
        })
        .filter(|y| *y > 1.0)
        .fold(f64::INFINITY, f64::min)
}

#[test]
fn rafters_meet_in_pairs_over_the_ridge() {
    let mut broken = Broken::default();
    for roof in all() {
        let s = &roof.solution;
        for ridge in s.members.iter().filter(|m| m.kind == MemberKind::RidgeBoard) {
            let strip = strip(s, &ridge.mark);
            // Rafters square to the ridge: those of both faces along it.
            let square = |t: &&Station| {
                let m = member(s, &t.mark);
                m.wall.is_some() && dir(m).dot(dir(ridge)).abs() < 1e-6
            };
            let rafters: Vec<&Station> = strip.stations.iter().filter(square).collect();
            let place = |t: &Station| dir(ridge).dot(head(member(s, &t.mark)));
            for t in &rafters {
                let m = member(s, &t.mark);
                let over = |o: &&Station| o.side != t.side;
                let mate = rafters.iter().copied().filter(over).any(|o| (place(o) - place(t)).abs() < ROUNDING);
                // A valley that runs on to the ridge stands where the mate would, or leaves it less than the least run.
                let taken = strip.stations.iter().filter(over).any(|o| {
                    o.kind == MemberKind::ValleyRafter
                        && o.near_mm < t.far_mm + LEAST_RUN
                        && o.far_mm > t.near_mm - LEAST_RUN
                });
                if taken {
                    continue;
                }
                // No room for a mate: the other slope is too short here, or ends.
                let top = vec3(m.axis.to).truncate();
                let other = s.faces.iter().find(|f| falls(s, f, dir(m)) && covers(f, top + dir(m) * 2.0));
                let room = other.map_or(0.0, |f| run_below(f, top, dir(m)));
                broken.unless(mate || room < LEAST_RUN + 1.0, || {
                    format!(
                        "{}: {} has no mate over {} though there is {room:.0} run for one",
                        roof.name, t.mark, ridge.mark
                    )
                });
            }
        }
    }
    broken.finish(800);
}

fn rafters<'a>(s: &'a Solution, wall: &str) -> Vec<&'a Member> {
    let mut out: Vec<&Member> = s
        .members
        .iter()
        .filter(|m| m.wall.as_deref() == Some(wall) && m.kind != MemberKind::WallPlate && m.birdsmouth.is_some())
        .collect();
    out.sort_by(|a, b| along_wall(a).total_cmp(&along_wall(b)));
    out
}

#[test]
fn no_bay_along_a_plate_is_wider_than_the_centres_or_too_tight() {
    let mut broken = Broken::default();
    for roof in all() {
        let s = &roof.solution;
        let centres = roof.job.timber.rafter.centres;
        let thickness = roof.job.timber.rafter.size.thickness;
        for wall in s.plan.walls.iter().filter(|w| !w.gable) {
            let rafters = rafters(s, &wall.id);
            for pair in rafters.windows(2) {
                let apart = along_wall(pair[1]) - along_wall(pair[0]);
                broken.unless(apart <= centres + 0.01, || {
                    format!("{}: {apart:.1} mm from {} to {}", roof.name, pair[0].mark, pair[1].mark)
                });
                broken.unless(apart >= thickness + DAYLIGHT - ROUNDING, || {
                    format!("{}: only {apart:.1} mm from {} to {}", roof.name, pair[0].mark, pair[1].mark)
                });
            }
            // From the last rafter to the corner, where a hip, a valley or a gable takes over: a rafter left out
            // because it has less than the least run may stand up to that run (at the plan angle of its hip) from it.
            let [from, to] = [wall.from, wall.to].map(DVec2::from_array);
            let along = (to - from).normalize();
            let places: Vec<f64> = rafters.iter().map(|m| along.dot(foot(m) - from)).collect();
            let (Some(first), Some(last)) = (places.first(), places.last()) else {
                broken.unless(wall.length_mm < centres + 2.0 * LEAST_RUN, || {
                    format!("{}: wall {} is bare", roof.name, wall.id)
                });
                continue;
            };
            for (gap, corner) in [(*first, from), (wall.length_mm - last, to)] {
                broken.unless(gap <= centres + least_place(face(s, &wall.id), corner, along), || {
                    format!("{}: {gap:.1} mm from the last rafter of wall {} to its corner", roof.name, wall.id)
                });
            }
        }
    }
    broken.finish(3000);
}

/// How far from a corner a rafter of the least run stands, mm.
fn least_place(face: &FaceOut, corner: DVec2, along: DVec2) -> f64 {
    let n = face.outline.len();
    let inward = along.perp();
    (0..n)
        .flat_map(|k| [(k, (k + 1) % n), ((k + 1) % n, k)])
        .map(|(a, b)| (vec3(face.outline[a]).truncate(), vec3(face.outline[b]).truncate()))
        .filter(|(a, b)| (*a - corner).length() < 0.5 && inward.dot(*b - *a) > 1.0)
        .map(|(a, b)| LEAST_RUN * (along.dot(b - a) / inward.dot(b - a)).abs())
        .fold(0.0, f64::max)
}

fn reach(values: impl Iterator<Item = f64>) -> [f64; 2] {
    values.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], v| [lo.min(v), hi.max(v)])
}

#[test]
fn plate_stations_are_where_the_rafters_stand() {
    let mut broken = Broken::default();
    for roof in all() {
        let s = &roof.solution;
        for plate in s.members.iter().filter(|m| m.kind == MemberKind::WallPlate) {
            let wall = s.plan.walls.iter().find(|w| Some(&w.id) == plate.wall.as_ref()).expect("a plate has a wall");
            let [from, to] = [wall.from, wall.to].map(DVec2::from_array);
            let along = (to - from).normalize();
            let strip = strip(s, &plate.mark);
            let mut last = f64::NEG_INFINITY;
            for t in &strip.stations {
                let m = member(s, &t.mark);
                let [near, far] = reach(m.solid.points.iter().map(|p| along.dot(vec3(*p).truncate() - from)));
                let right = (near - t.near_mm).abs() < ROUNDING && (far - t.far_mm).abs() < ROUNDING;
                broken.unless(right, || format!("{}: {} stands at {near} to {far}, not {t:?}", roof.name, t.mark));
                broken.unless(t.near_mm >= last, || format!("{}: order of {}", roof.name, strip.name));
                last = t.near_mm;
            }
            let standing = rafters(s, &wall.id).len();
            broken.unless(strip.stations.len() == standing, || {
                format!("{}: {} has {} stations for {standing} rafters", roof.name, strip.name, strip.stations.len())
            });
        }
    }
    broken.finish(3000);
}

#[test]
fn ridge_stations_are_where_the_cuts_lie() {
    let mut broken = Broken::default();
    for roof in all() {
        let s = &roof.solution;
        for ridge in s.members.iter().filter(|m| m.kind == MemberKind::RidgeBoard) {
            let along = dir(ridge);
            let [start, _] = reach(ridge.solid.points.iter().map(|p| along.dot(vec3(*p).truncate())));
            for t in &strip(s, &ridge.mark).stations {
                let m = member(s, &t.mark);
                // Of its cuts against the ridge, the one that lies on the ridge's flank.
                let mut found = Vec::new();
                for cut in m.cuts.iter().filter(|c| c.against.as_deref() == Some(&ridge.mark)) {
                    for (k, name) in m.solid.names.iter().enumerate() {
                        let on_face = m.solid.faces[k].iter().map(|p| vec3(m.solid.points[*p as usize]).truncate());
                        let square = faces_named(m, name).iter().all(|f| f.normal.truncate().dot(along).abs() < 0.5);
                        if *name == cut.name && square {
                            found.push(reach(on_face.map(|p| along.dot(p) - start)));
                        }
                    }
                }
                let right = found
                    .iter()
                    .any(|[near, far]| (near - t.near_mm).abs() < ROUNDING && (far - t.far_mm).abs() < ROUNDING);
                broken.unless(right, || format!("{}: {} lies at {found:?}, not {t:?}", roof.name, t.mark));
            }
        }
    }
    broken.finish(800);
}
