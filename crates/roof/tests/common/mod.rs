//! Random jobs aimed at trouble, from a seed.

#![allow(dead_code, reason = "each test file uses its own part")]

use job::{
    AccessAsked, Bench, Eaves, Fascia, Feet, HipEdge, HipHead, HipLine, HipTimber, Job, JointRules, LengthUnit,
    OrderAim, Ordering, Parts, ProgrammeAsked, RafterTimber, RidgeAs, RidgeTimber, RidgeTop, Section, Spread,
    StrengthClass, Strong, TailCut, Timber, Verge, Wall,
};

pub use trials::Seed;

fn letter(k: usize) -> String {
    job::wall_letter(k)
}

/// A job over these loops with one pitch and plain defaults.
pub fn job_over(loops: Vec<Vec<[f64; 2]>>, pitch: f64) -> Job {
    let count = loops.iter().map(Vec::len).sum();
    let hip = |depth: f64, edge| HipTimber {
        size: Section { thickness: 47.0, depth },
        edge,
        line: HipLine::Centred,
        head: HipHead::Crown,
    };
    Job {
        title: "Test roof".into(),
        date: None,
        revision: None,
        region: "uk".into(),
        show: LengthUnit::Millimetres,
        loops,
        walls: (0..count).map(|k| Wall::plain(letter(k), pitch)).collect(),
        pitch_deg: pitch,
        eaves: Eaves {
            overhang: 300.0,
            fascia: Fascia::Level,
            tail: TailCut::Plumb,
            fascia_depth: 150.0,
            sprocket: None,
        },
        verge: Verge { overhang: 200.0, inset: 0.0 },
        timber: Timber {
            rafter: RafterTimber {
                size: Section { thickness: 47.0, depth: 150.0 },
                centres: 400.0,
                spread: Spread::FromStart,
                birdsmouth: 37.5,
            },
            hip: hip(220.0, HipEdge::Backed),
            valley: hip(220.0, HipEdge::Dropped),
            ridge: RidgeTimber { size: Section { thickness: 32.0, depth: 225.0 }, top: RidgeTop::Arrises },
            plate: Section { thickness: 75.0, depth: 100.0 },
            parts: Parts::default(),
            joint: JointRules::NONE_NEEDED,
        },
        openings: Vec::new(),
        dormers: Vec::new(),
        bearings: Vec::new(),
        bench: Bench { alike_within: 1.0 },
        carried: None,
        strong: Strong { class: StrengthClass::C16, graded: true, service: 2, feet: Feet::Free, ridge: RidgeAs::Board },
        ordering: Ordering { aim: OrderAim::Cost, kerf: 3.0, trim: 0.0, keep: 600.0, treated: false, lift: 500.0 },
        stock: Vec::new(),
        yard: Vec::new(),
        prices: Vec::new(),
        covering: None,
        programme: ProgrammeAsked { crew: 2, roofers: 2, hours_a_day: 8.0, ..ProgrammeAsked::default() },
        access: AccessAsked::plain(),
        records: std::collections::BTreeMap::new(),
        done: std::collections::BTreeMap::new(),
        survey: None,
        setting_out: job::SettingOut::default(),
    }
}

fn grid(v: f64) -> f64 {
    (v * 10.0).round() / 10.0
}

/// A house of one to three overlapping rectangles, as one orthogonal outline:
/// L, T, U, Z, cross and stepped plans.
pub fn orthogonal(seed: &mut Seed) -> Vec<[f64; 2]> {
    let (l, w) = (seed.between(6000.0, 16000.0), seed.between(4500.0, 9000.0));
    let wing = |seed: &mut Seed| {
        let width = seed.between(2600.0, 0.6 * l);
        let start = seed.between(0.0, l - width);
        let out = seed.between(900.0, 6000.0);
        let snap = |v: f64| if v < 700.0 { 0.0 } else { v };
        (grid(snap(start)), grid(if l - start - width < 700.0 { l } else { start + width }), grid(out))
    };
    let (l, w) = (grid(l), grid(w));
    let mut low: Vec<[f64; 2]> = vec![[0.0, 0.0]];
    let mut high: Vec<[f64; 2]> = vec![[l, w]];
    if seed.once_in(2) {
        let (a, b, out) = wing(seed);
        let b = b.min(l);
        if a > 0.0 {
            low.push([a, 0.0]);
        } else {
            low.pop();
        }
        low.push([a, -out]);
        low.push([b, -out]);
        if b < l {
            low.push([b, 0.0]);
            low.push([l, 0.0]);
        }
    } else {
        low.push([l, 0.0]);
    }
    if !seed.once_in(3) {
        let (a, b, out) = wing(seed);
        let b = b.min(l);
        if b < l {
            high.push([b, w]);
        } else {
            high.pop();
        }
        high.push([b, w + out]);
        high.push([a, w + out]);
        if a > 0.0 {
            high.push([a, w]);
            high.push([0.0, w]);
        }
    } else {
        high.push([0.0, w]);
    }
    low.extend(high);
    low
}

/// A star-shaped outline with walls of at least a metre.
pub fn star(seed: &mut Seed) -> Vec<[f64; 2]> {
    loop {
        let n = 3 + seed.below(7) as usize;
        let radius = seed.between(4000.0, 9000.0);
        let turn = seed.between(0.0, 1.0);
        let points: Vec<[f64; 2]> = (0..n)
            .map(|k| {
                let angle = core::f64::consts::TAU * (k as f64 + turn + seed.between(-0.25, 0.25)) / n as f64;
                let r = radius * seed.between(0.6, 1.0);
                [grid(r * libm_cos(angle)), grid(r * libm_sin(angle))]
            })
            .collect();
        let short = (0..n).any(|k| {
            let (a, b) = (points[k], points[(k + 1) % n]);
            (a[0] - b[0]).abs().max((a[1] - b[1]).abs()) < 1200.0
        });
        if !short {
            return points;
        }
    }
}

fn libm_cos(a: f64) -> f64 {
    geometry::Angle::rad(a).cos()
}

fn libm_sin(a: f64) -> f64 {
    geometry::Angle::rad(a).sin()
}

/// Turn a plan and snap it to 0.1 mm.
pub fn turned(plan: &[[f64; 2]], degrees: f64) -> Vec<[f64; 2]> {
    let a = geometry::Angle::deg(degrees);
    plan.iter().map(|[x, y]| [grid(x * a.cos() - y * a.sin()), grid(x * a.sin() + y * a.cos())]).collect()
}

/// A random job: plan, pitches, gables, timbers and every option.
pub fn random_job(seed: &mut Seed) -> Job {
    let mut plan = if seed.once_in(3) { star(seed) } else { orthogonal(seed) };
    if seed.once_in(3) {
        let degrees = seed.between(0.0, 360.0);
        plan = turned(&plan, degrees);
    }
    let pitch = grid(seed.between(25.0, 50.0));
    let mut job = job_over(vec![plan], pitch);
    if seed.once_in(3) {
        for wall in &mut job.walls {
            if seed.once_in(3) {
                wall.pitch_deg = grid(pitch + seed.between(-6.0, 6.0));
            }
        }
    }
    if seed.once_in(3) {
        let n = job.walls.len() as u64;
        let k = seed.below(n) as usize;
        job.walls[k].gable = true;
    }
    let t = &mut job.timber;
    t.rafter.centres = [400.0, 450.0, 600.0][seed.below(3) as usize];
    t.rafter.spread = [Spread::FromStart, Spread::FromEnd, Spread::Equal][seed.below(3) as usize];
    t.hip.edge = if seed.once_in(2) { HipEdge::Backed } else { HipEdge::Dropped };
    t.hip.line = if seed.once_in(3) { HipLine::SetOver } else { HipLine::Centred };
    t.hip.head = if seed.once_in(3) { HipHead::Ridge } else { HipHead::Crown };
    t.valley.edge = if seed.once_in(3) { HipEdge::Backed } else { HipEdge::Dropped };
    t.hip.size = Section { thickness: [38.0, 47.0, 63.0][seed.below(3) as usize], depth: 240.0 };
    t.valley.size = Section { thickness: [38.0, 47.0, 63.0][seed.below(3) as usize], depth: 240.0 };
    t.ridge.top = if seed.once_in(4) { RidgeTop::Centre } else { RidgeTop::Arrises };
    job.eaves.tail = [TailCut::Plumb, TailCut::Square, TailCut::Level][seed.below(3) as usize];
    job.eaves.fascia = if seed.once_in(4) { Fascia::Fixed } else { Fascia::Level };
    job.eaves.overhang = [0.0, 150.0, 300.0, 450.0][seed.below(4) as usize];
    job
}

/// Turn a plan without snapping it.
pub fn turned_exactly(plan: &[[f64; 2]], degrees: f64) -> Vec<[f64; 2]> {
    let a = geometry::Angle::deg(degrees);
    plan.iter().map(|[x, y]| [x * a.cos() - y * a.sin(), x * a.sin() + y * a.cos()]).collect()
}
