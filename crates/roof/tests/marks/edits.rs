//! Edits of ordinary roofs: what is where it was is called what it was called.

use crate::common::{Seed, job_over};
use job::{
    CollarTimber, Distance, Dormer, DormerKind, Job, NogginTimber, Opening, OpeningKind, PurlinSet, PurlinTimber,
    Section, SpacedTimber, ValleyAs,
};
use roof::solution::{Member, MemberKind, Solution};

/// A timber is where it was when both ends of its line are within this, mm.
const WHERE_IT_WAS: f64 = 1.0;

const EDITS: usize = 500;

fn size(thickness: f64, depth: f64) -> Section {
    Section { thickness, depth }
}

/// A house as people build them: a rectangle, L or T, hipped or gabled, with
/// some of what can be fitted, and sometimes an opening or a dormer.
pub fn ordinary(seed: &mut Seed) -> Job {
    let (l, w) = (seed.between(8000.0, 13000.0).round(), seed.between(5000.0, 7600.0).round());
    let (from, wide, out) = (
        seed.between(1500.0, 3000.0).round(),
        seed.between(3000.0, 4600.0).round(),
        seed.between(1800.0, 3500.0).round(),
    );
    let plan = match seed.below(4) {
        0 => vec![[0.0, 0.0], [l, 0.0], [l, w + out], [l - wide, w + out], [l - wide, w], [0.0, w]],
        1 => vec![
            [0.0, 0.0],
            [l, 0.0],
            [l, w],
            [from + wide, w],
            [from + wide, w + out],
            [from, w + out],
            [from, w],
            [0.0, w],
        ],
        _ => vec![[0.0, 0.0], [l, 0.0], [l, w], [0.0, w]],
    };
    let mut job = job_over(vec![plan], [30.0, 35.0, 40.0, 45.0][seed.below(4) as usize]);
    job.timber.rafter.centres = [400.0, 450.0, 600.0][seed.below(3) as usize];
    let walls = job.walls.len();
    match seed.below(4) {
        0 => job.walls[walls - 1].gable = true,
        1 if walls == 4 => [1, 3].iter().for_each(|k| job.walls[*k].gable = true),
        2 => {
            let k = seed.below(walls as u64) as usize;
            job.walls[k].pitch_deg += [-3.0, 4.0][seed.below(2) as usize];
        }
        _ => {}
    }
    for _ in 0..4 {
        toggle(seed, &mut job);
    }
    for k in 0..seed.below(3) {
        let opening = opening(seed, &job, &format!("o{k}"));
        job.openings.push(opening);
    }
    if seed.once_in(4) {
        let dormer = dormer(seed, &job, "d0");
        job.dormers.push(dormer);
    }
    job
}

fn length(job: &Job, k: usize) -> f64 {
    let ring = &job.loops[0];
    let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
    (a[0] - b[0]).abs() + (a[1] - b[1]).abs()
}

/// A wall with a slope of some length.
fn wall(seed: &mut Seed, job: &Job) -> usize {
    let good: Vec<usize> = (0..job.walls.len()).filter(|k| !job.walls[*k].gable && length(job, *k) > 4500.0).collect();
    good[seed.below(good.len() as u64) as usize]
}

fn opening(seed: &mut Seed, job: &Job, name: &str) -> Opening {
    let wall = wall(seed, job);
    let chimney = seed.once_in(3);
    let up = seed.between(700.0, 2200.0);
    Opening {
        name: name.into(),
        kind: if chimney { OpeningKind::Chimney } else { OpeningKind::RoofWindow },
        wall,
        along: seed.between(900.0, length(job, wall) - 1800.0),
        up: if chimney { Distance::Plan(up) } else { Distance::Slope(up) },
        width: seed.between(500.0, 1000.0),
        height: seed.between(500.0, 1000.0),
        flue_wall: None,
    }
}

fn dormer(seed: &mut Seed, job: &Job, name: &str) -> Dormer {
    let wall = wall(seed, job);
    let tan = geometry::Angle::deg(job.walls[wall].pitch_deg).tan();
    let back = seed.between(400.0, 900.0);
    let lean = seed.once_in(2);
    Dormer {
        name: name.into(),
        kind: if lean { DormerKind::LeanTo } else { DormerKind::Gable },
        wall,
        along: seed.between(1500.0, length(job, wall) - 3000.0),
        back,
        width: seed.between(900.0, 1500.0),
        plate: (back + 100.0) * tan + 190.0 + seed.between(350.0, 600.0),
        pitch_deg: if lean { 12.0 } else { 35.0 },
        valley: ValleyAs::LayBoard,
    }
}

/// Add a kind of fitted member, or take it out.
fn toggle(seed: &mut Seed, job: &mut Job) {
    fn flip<T>(slot: &mut Option<T>, value: T) {
        *slot = if slot.is_some() { None } else { Some(value) };
    }
    let parts = &mut job.timber.parts;
    match seed.below(11) {
        0 => flip(&mut parts.collar, CollarTimber { size: size(47.0, 150.0), height: 1300.0, every: 1 }),
        1 => flip(&mut parts.collar, CollarTimber { size: size(47.0, 150.0), height: 1000.0, every: 3 }),
        2 => flip(&mut parts.ceiling_joist, size(47.0, 125.0)),
        3 => flip(&mut parts.noggin, NogginTimber { size: size(47.0, 100.0), rows: 1 }),
        4 => flip(&mut parts.noggin, NogginTimber { size: size(47.0, 100.0), rows: 2 }),
        5 => flip(&mut parts.fascia, size(25.0, 175.0)),
        6 => flip(&mut parts.barge, size(25.0, 200.0)),
        7 => flip(&mut parts.ladder, SpacedTimber { size: size(47.0, 100.0), centres: 600.0 }),
        8 => flip(&mut parts.purlin, PurlinTimber { size: size(75.0, 175.0), set: PurlinSet::Square, up: Vec::new() }),
        9 => flip(&mut parts.angle_tie, size(75.0, 100.0)),
        _ => flip(&mut parts.fillet, size(50.0, 75.0)),
    }
}

/// What was done to a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Edit {
    AddOpening,
    MoveOpening,
    RemoveOpening,
    AddDormer,
    RemoveDormer,
    PitchAll,
    PitchWall,
    Part,
    Eaves,
}

pub fn edit(seed: &mut Seed, job: &mut Job) -> Edit {
    match seed.below(12) {
        0 | 1 => {
            let new = opening(seed, job, "new");
            let at = seed.below(job.openings.len() as u64 + 1) as usize;
            job.openings.insert(at, new);
            Edit::AddOpening
        }
        2 | 3 if !job.openings.is_empty() => {
            job.openings[0].along += seed.between(-700.0, 700.0);
            Edit::MoveOpening
        }
        4 if !job.openings.is_empty() => {
            job.openings.remove(0);
            Edit::RemoveOpening
        }
        5 if !job.dormers.is_empty() => {
            job.dormers.remove(0);
            Edit::RemoveDormer
        }
        6 => {
            let new = dormer(seed, job, "new");
            job.dormers.insert(0, new);
            Edit::AddDormer
        }
        7 => {
            let by = seed.between(-2.0, 2.0);
            job.pitch_deg += by;
            job.walls.iter_mut().for_each(|w| w.pitch_deg += by);
            Edit::PitchAll
        }
        8 => {
            let k = wall(seed, job);
            job.walls[k].pitch_deg += seed.between(-2.0, 2.0);
            Edit::PitchWall
        }
        9 => {
            job.eaves.overhang += seed.between(-100.0, 150.0);
            Edit::Eaves
        }
        _ => {
            toggle(seed, job);
            Edit::Part
        }
    }
}

/// Whether two timbers are of one kind at one place. After a change of pitch a
/// place is one in plan; a rafter's is its station along the wall.
fn at_one_place(a: &Member, b: &Member, pitch: bool) -> bool {
    let off = |p: [f64; 3], q: [f64; 3]| {
        let flat = (p[0] - q[0]).abs().max((p[1] - q[1]).abs());
        if pitch { flat } else { flat.max((p[2] - q[2]).abs()) }
    };
    let rafter = matches!(
        a.kind,
        MemberKind::CommonRafter | MemberKind::JackRafter | MemberKind::CrownRafter | MemberKind::TrimmingRafter
    );
    // Rungs of the two slopes of a gable change places in plan when its ridge moves; trimmers are
    // set out up the slope.
    let crosses = pitch && matches!(a.kind, MemberKind::GableLadder | MemberKind::Trimmer);
    a.kind == b.kind
        && !crosses
        && off(a.axis.from, b.axis.from) < WHERE_IT_WAS
        && (pitch && rafter && a.birdsmouth.is_some() || off(a.axis.to, b.axis.to) < WHERE_IT_WAS)
}

/// The timbers that are where they were, and those of them that are called
/// something else.
pub fn compare<'s>(old: &'s Solution, new: &'s Solution, edit: Edit) -> (usize, Vec<(&'s Member, &'s Member)>) {
    let pitch = matches!(edit, Edit::PitchAll | Edit::PitchWall);
    let mut same = 0;
    let mut changed = Vec::new();
    for a in &old.members {
        let here: Vec<&Member> = new.members.iter().filter(|b| at_one_place(a, b, pitch)).collect();
        let twins = old.members.iter().filter(|b| at_one_place(a, b, pitch)).count();
        let [b] = here[..] else { continue };
        if twins == 1 {
            same += 1;
            if a.mark != b.mark {
                changed.push((a, b));
            }
        }
    }
    (same, changed)
}

#[test]
fn no_mark_changes_because_something_else_came_or_went() {
    let mut done = 0;
    let mut compared = 0;
    let mut wrong: Vec<String> = Vec::new();
    let mut marks = 0;
    for k in 0.. {
        if done == EDITS {
            break;
        }
        assert!(k < 4 * EDITS as u64, "too few of the roofs can be built: {done}");
        let mut seed = Seed::new(k);
        let mut job = ordinary(&mut seed);
        let Ok(before) = roof::solve(&job) else { continue };
        let edit = edit(&mut seed, &mut job);
        let Ok(after) = roof::solve(&job) else { continue };
        done += 1;
        let (same, changed) = compare(&before, &after, edit);
        compared += same;
        marks += changed.len();
        if !changed.is_empty() {
            let told: Vec<String> = changed.iter().take(4).map(|(a, b)| format!("{} is {}", a.mark, b.mark)).collect();
            wrong.push(format!("seed {k}, {edit:?}: {} of {same}: {}", changed.len(), told.join(", ")));
        }
    }
    assert!(compared > 100 * EDITS, "{compared}");
    assert!(wrong.is_empty(), "{} of {EDITS} edits, {marks} of {compared} marks\n{}", wrong.len(), wrong.join("\n"));
}
