//! Running dimensions along plates, ridges, hips and valleys.

use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId};
use crate::solution::{Member, MemberKind, SettingOut, Station};
use geometry::surface::{Surface, WallId};
use geometry::{DVec2, HalfPlan};
use job::Job;

/// The strips of a frame; `built` pairs timbers with their members.
pub fn strips(job: &Job, surface: &Surface, built: &[(TimberId, &Timber, &Member)]) -> Vec<SettingOut> {
    let mut out = Vec::new();
    for (id, timber, member) in built {
        match timber.role {
            Role::Plate { wall } => out.push(plate(job, surface, wall, timber, member, built)),
            Role::Spine { .. } => out.push(spine(*id, timber, member, built)),
            Role::Rafter { .. } | Role::Fitted { .. } => {}
        }
    }
    out
}

fn plate(
    job: &Job,
    surface: &Surface,
    wall: WallId,
    timber: &Timber,
    member: &Member,
    built: &[(TimberId, &Timber, &Member)],
) -> SettingOut {
    let letter = |w: WallId| job.walls.get(w.index()).map_or("", |w| w.letter.as_str());
    let mut stations: Vec<Station> = built
        .iter()
        .filter(|(_, t, _)| t.is_rafter() && t.tails.iter().any(|e| e.wall == wall))
        .map(|(_, t, m)| {
            let at = timber.dir.dot(t.foot - timber.foot);
            let half = t.section.thickness / 2.0;
            station(m, [at - half, at + half], "inside")
        })
        .collect();
    stations.sort_by(|a, b| a.near_mm.total_cmp(&b.near_mm));
    let length = timber.lengthened.as_ref().filter(|l| l.parts > 1);
    if length.is_some() {
        stations.retain(|s| s.far_mm > 0.0 && s.near_mm < timber.run);
    }
    SettingOut {
        name: format!("wall plate {}", letter(wall)),
        mark: member.mark.clone(),
        from: match length {
            Some(l) if l.part > 0 => "its foot end".into(),
            _ => format!("outer corner of walls {} and {}", letter(wall_before(surface, wall)), letter(wall)),
        },
        length_mm: timber.run,
        stations,
    }
}

fn wall_before(surface: &Surface, wall: WallId) -> WallId {
    let mut first = 0;
    for ring in &surface.loops {
        let n = ring.len();
        if wall.index() < first + n {
            return WallId((first + (wall.index() - first + n - 1) % n) as u32);
        }
        first += n;
    }
    wall
}

/// Along a ridge, hip or valley: where the faces of what is cut against it
/// stand, measured along its top from its foot end.
fn spine(id: TimberId, timber: &Timber, member: &Member, built: &[(TimberId, &Timber, &Member)]) -> SettingOut {
    let per_run = (1.0 + timber.slope * timber.slope).sqrt();
    let start = timber.footprint.reach(timber.dir)[0];
    let mut stations = Vec::new();
    for (_, t, m) in built {
        for half in cuts_against(t, id) {
            let Some([a, b]) = contact_reach(t, half, timber.dir) else { continue };
            let left = half.normal.dot(timber.left()) < 0.0;
            // On the flank, not on the end.
            if half.normal.dot(timber.dir).abs() > 0.5 {
                continue;
            }
            let ends = [(a - start) * per_run, (b - start) * per_run];
            stations.push(station(m, ends, if left { "left" } else { "right" }));
        }
    }
    stations.sort_by(|a, b| a.near_mm.total_cmp(&b.near_mm).then_with(|| a.mark.cmp(&b.mark)));
    let (name, from) = match timber.kind {
        MemberKind::RidgeBoard => ("ridge board", "its foot end"),
        MemberKind::HipRafter => ("hip rafter", "its tail, along the top"),
        MemberKind::ValleyRafter => ("valley rafter", "its tail, along the top"),
        _ => ("purlin", "its foot end"),
    };
    SettingOut {
        name: format!("{name} {}", member.mark),
        mark: member.mark.clone(),
        from: from.into(),
        length_mm: member.cut_length_mm,
        stations,
    }
}

fn station(m: &Member, [near, far]: [f64; 2], side: &str) -> Station {
    Station { mark: m.mark.clone(), kind: m.kind, near_mm: near, far_mm: far, side: side.into(), firring_mm: None }
}

/// The sides of a timber's outline that lie against another timber.
fn cuts_against(t: &Timber, target: TimberId) -> impl Iterator<Item = HalfPlan> + '_ {
    t.footprint.sides().iter().filter_map(move |s| {
        let Made::Cut(k) = s.tag else { return None };
        (t.cuts.get(usize::from(k))?.purpose == CutUse::Against(target)).then_some(s.half)
    })
}

/// Reach along an axis of the side of a timber's outline that lies on a line.
fn contact_reach(t: &Timber, half: HalfPlan, axis: DVec2) -> Option<[f64; 2]> {
    let sides = t.footprint.sides();
    let k = sides.iter().position(|s| s.half == half)?;
    let (a, b) = (axis.dot(sides[k].start), axis.dot(sides[(k + 1) % sides.len()].start));
    Some([a.min(b), a.max(b)])
}
