//! Joints of a roof, each kind where it is used most: what it must carry, how many fasteners that takes, and whether
//! there is room for them.

use super::effects::sum;
use super::out::Verdict;
use super::strut_joint::strut_head;
use crate::actions::{Combination, CombinationKind};
use crate::annex::joints::Joints;
use crate::annex::timber::{Duration, ServiceClass, Timber as Factors};
use crate::carrying::Carrying;
use crate::carrying::flow::Flow;
use crate::carrying::unit::{Kind, Role, Unit};
use crate::eurocode::joints::bolts::Bolt;
use crate::eurocode::joints::collar::Collar;
use crate::eurocode::joints::lapped::{Fastener, Timber};
use crate::eurocode::joints::nails::{Nail, Shank};
use crate::eurocode::joints::rafter_foot::RafterFoot;
use crate::eurocode::joints::strap::{Held, Strap, along_wall};
use crate::eurocode::joints::{Part, Use};
use crate::eurocode::wood::Wood;
use crate::working::{Line, Working};
use roof::solution::{MemberKind, SpliceForm};
use serde::{Deserialize, Serialize};

/// The nail of common practice for rafter feet: 4.0 × 100 round wire, driven through the rafter into the joist.
pub(super) const NAIL: Nail =
    Nail { diameter_mm: 4.0, length_mm: 100.0, head_mm: 8.0, shank: Shank::Round, tensile_n_mm2: 600.0, bored: false };
/// The nail of common practice for straps: 3.35 × 65 round wire.
const STRAP_NAIL: Nail =
    Nail { diameter_mm: 3.35, length_mm: 65.0, head_mm: 7.0, shank: Shank::Round, tensile_n_mm2: 600.0, bored: false };
/// Nails in a strap, and how far apart, mm: common practice.
const STRAP_NAILS: (u32, f64) = (6, 50.0);
/// Bolt of common practice through collars.
const COLLAR_BOLT: f64 = 12.0;

/// A joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct JointUse {
    /// What is joined, in words.
    pub name: String,
    /// Marks of the timbers where it is used most.
    pub marks: Vec<String>,
    /// What it must carry, N, with factors.
    pub force_n: f64,
    /// 1 is all of it; none where no capacity can be worked out.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub used: Option<f64>,
    /// Whether it passes; none where no capacity can be worked out.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub verdict: Option<Verdict>,
    /// Clause.
    pub clause: String,
    /// What it takes, in words, e.g. `4 nails 4.0 × 100`.
    pub takes: String,
    /// How many of its fixings carry it; none where no number does, or where they have no figures.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub fixings: Option<u32>,
    /// What else would do, or what to ask for.
    pub remark: String,
    /// Its working.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub working: Vec<Line>,
}

/// What joints are checked with.
#[derive(Clone, Copy, Debug)]
pub struct With<'a> {
    /// Figures for joints.
    pub joints: &'a Joints,
    /// Figures for timber.
    pub factors: &'a Factors,
    /// Class of the timber.
    pub wood: &'a Wood,
    /// Service class.
    pub service: ServiceClass,
    /// Combinations.
    pub combinations: &'a [Combination],
    /// Their factors by the numbers of the cases.
    pub by_case: &'a [Vec<(usize, f64)>],
}

impl With<'_> {
    pub(super) fn kmod(&self, duration: Duration) -> f64 {
        self.factors.kmod(self.service, duration).value
    }

    /// The combination under which a force uses a joint most: force over k_mod. Gives the force and its duration.
    pub fn worst(&self, values: &[f64], wanted: impl Fn(f64) -> f64) -> (f64, Duration) {
        let mut worst = (0.0, Duration::Permanent);
        let mut most = 0.0;
        for (combination, factors) in self.combinations.iter().zip(self.by_case) {
            if combination.kind != CombinationKind::Ultimate {
                continue;
            }
            let duration = combination.duration;
            let force = wanted(sum(values, factors));
            let asked = force.abs() / self.kmod(duration);
            if asked > most {
                most = asked;
                worst = (force, duration);
            }
        }
        worst
    }
}

/// How near to 1 a joint may come before figures from memory might turn it.
const NEAR: f64 = 0.9;

pub(super) fn verdict(used: f64) -> Verdict {
    if used > 1.0 {
        Verdict::Over
    } else if used > NEAR {
        Verdict::Near
    } else {
        Verdict::Within
    }
}

/// All kinds of joints of a roof.
#[must_use]
pub fn joints(roof: &Carrying<'_>, units: &[Unit], flow: &Flow, with: &With<'_>) -> Vec<JointUse> {
    let mut all = Vec::new();
    all.extend(rafter_foot(roof, units, flow, with));
    all.extend(collar(roof, units, flow, with));
    all.extend(strut_head(roof, units, flow, with));
    all.extend(hung(roof, units, flow, with));
    all.extend(hip_heads(roof, units, flow, with));
    all.extend(splices(roof, units, flow, with));
    all.sort_by(|a, b| b.used.unwrap_or(0.0).total_cmp(&a.used.unwrap_or(0.0)));
    all
}

pub(super) fn mark(roof: &Carrying<'_>, run: usize) -> String {
    roof.runs[run].mark.clone()
}

/// Axial force of a bar under each case, N.
fn axial(flow: &Flow, number: usize, bar: usize) -> Vec<f64> {
    flow.answers[number].as_ref().map_or_else(Vec::new, |a| a.all().iter().map(|case| case.bars[bar].n(0.0)).collect())
}

/// Rafter foot to ceiling joist, of the pair whose tie pulls most.
fn rafter_foot(roof: &Carrying<'_>, units: &[Unit], flow: &Flow, with: &With<'_>) -> Option<JointUse> {
    let worst = units
        .iter()
        .enumerate()
        .filter_map(|(number, unit)| {
            let Kind::Pair { left, .. } = unit.kind else { return None };
            let bar = unit.pieces.iter().position(|p| p.role == Role::Tie)?;
            let (force, duration) = with.worst(&axial(flow, number, bar), |n| n.max(0.0));
            (force > 0.0).then_some((force, duration, left, unit.pieces[bar].run))
        })
        .max_by(|a, b| (a.0 / with.kmod(a.1)).total_cmp(&(b.0 / with.kmod(b.1))))?;
    let (force, duration, rafter, joist) = worst;
    let (r, j) = (&roof.runs[rafter], &roof.runs[joist]);
    let member = &roof.solution.members[r.parts[0]];
    let seat = member.birdsmouth.map_or(0.0, |b| b.seat_mm);
    let foot = RafterFoot {
        joist: Timber { wood: with.wood, thickness_mm: j.thickness, depth_mm: j.depth },
        rafter: Timber { wood: with.wood, thickness_mm: r.thickness, depth_mm: r.depth },
        pitch_deg: member.pitch_deg,
        seat_mm: seat,
        joist_end_mm: None,
        rafter_end_mm: None,
        nail: NAIL,
        staggered: true,
        turns_round: false,
    };
    let mut working = Working::on();
    let result = foot.check(force, with.kmod(duration), with.joints, &mut working);
    let used = if result.nailed.fits { result.nailed.worst().ratio } else { result.nailed.worst().ratio.max(1.001) };
    let nails = format!("nails {:.1} × {:.0}", NAIL.diameter_mm, NAIL.length_mm);
    let takes = match result.nailed.needed {
        Some(needed) => format!("{needed} {nails}; room for {}", result.nailed.fit.count()),
        None => format!("no number of {nails}"),
    };
    let remark = if result.nailed.fits {
        format!("through the rafter into the joist, limited by {}", result.nailed.fit.limited_by.words())
    } else {
        result.instead.iter().map(crate::eurocode::joints::rafter_foot::Instead::words).collect::<Vec<_>>().join("; ")
    };
    Some(JointUse {
        name: "rafter foot to ceiling joist".to_owned(),
        marks: vec![mark(roof, rafter), mark(roof, joist)],
        force_n: force,
        used: Some(used),
        verdict: Some(verdict(used)),
        clause: result.nailed.worst().clause.to_owned(),
        takes,
        fixings: result.nailed.needed,
        remark,
        working: working.lines(),
    })
}

/// Collar to rafter, of the collar that is pulled or pressed most.
fn collar(roof: &Carrying<'_>, units: &[Unit], flow: &Flow, with: &With<'_>) -> Option<JointUse> {
    let worst = units
        .iter()
        .enumerate()
        .filter_map(|(number, unit)| {
            let Kind::Pair { left, .. } = unit.kind else { return None };
            let bar = unit.pieces.iter().position(|p| roof.runs[p.run].kind == MemberKind::Collar)?;
            let (force, duration) = with.worst(&axial(flow, number, bar), |n| n);
            Some((force, duration, left, unit.pieces[bar].run))
        })
        .max_by(|a, b| (a.0.abs() / with.kmod(a.1)).total_cmp(&(b.0.abs() / with.kmod(b.1))))?;
    let (force, duration, rafter, run) = worst;
    let (r, c) = (&roof.runs[rafter], &roof.runs[run]);
    let bolt = Bolt::black(COLLAR_BOLT, with.joints);
    let joint = Collar {
        collar: Timber { wood: with.wood, thickness_mm: c.thickness, depth_mm: c.depth },
        rafter: Timber { wood: with.wood, thickness_mm: r.thickness, depth_mm: r.depth },
        pitch_deg: roof.solution.members[r.parts[0]].pitch_deg,
        fastener: Fastener::Bolts(bolt),
        turns_round: true,
    };
    let mut working = Working::on();
    let result = joint.check(force, with.kmod(duration), with.joints, &mut working);
    let used = if result.fits { result.worst().ratio } else { result.worst().ratio.max(1.001) };
    Some(JointUse {
        name: "collar to rafter".to_owned(),
        marks: vec![mark(roof, run), mark(roof, rafter)],
        force_n: force.abs(),
        used: Some(used),
        verdict: Some(verdict(used)),
        clause: result.worst().clause.to_owned(),
        takes: result.needed.map_or_else(
            || format!("no number of M{COLLAR_BOLT:.0} bolts"),
            |n| format!("{n} M{COLLAR_BOLT:.0} bolt{}; room for {}", if n == 1 { "" } else { "s" }, result.fit.count()),
        ),
        fixings: result.needed,
        remark: if force < 0.0 { "pressed".to_owned() } else { "pulled".to_owned() },
        working: working.lines(),
    })
}

/// What hangs in joist hangers or from hangers: the maker's figure must be at least this.
fn hung(roof: &Carrying<'_>, units: &[Unit], flow: &Flow, with: &With<'_>) -> Vec<JointUse> {
    let mut worst: Option<(f64, Vec<usize>)> = None;
    let mut posts: Option<(f64, usize)> = None;
    for (number, unit) in units.iter().enumerate() {
        match unit.kind {
            Kind::Post(run) if roof.runs[run].kind == MemberKind::Hanger => {
                let through = flow.posts.get(&run).cloned().unwrap_or_default();
                let (force, _) = with.worst(&through, |n| n.max(0.0));
                if posts.is_none_or(|(most, _)| force > most) {
                    posts = Some((force, run));
                }
            }
            Kind::Level(run) | Kind::Sloping(run) => {
                for (support, under) in unit.under.iter().enumerate() {
                    let crate::carrying::places::Under::Run(on, _) = under else { continue };
                    let trimming =
                        roof.runs[run].kind == MemberKind::Trimmer || roof.runs[*on].kind == MemberKind::Trimmer;
                    if trimming {
                        let (force, _) = with.worst(&flow.reactions[number][support], |n| n.max(0.0));
                        if worst.as_ref().is_none_or(|(most, _)| force > *most) {
                            worst = Some((force, vec![run, *on]));
                        }
                    }
                }
            }
            _ => {}
        }
    }
    let declared = |name: &str, force: f64, runs: &[usize], takes: &str, remark: &str| JointUse {
        name: name.to_owned(),
        marks: runs.iter().map(|r| mark(roof, *r)).collect(),
        force_n: force,
        used: None,
        verdict: None,
        clause: "the maker's declared value".to_owned(),
        takes: takes.to_owned(),
        fixings: None,
        remark: remark.to_owned(),
        working: Vec::new(),
    };
    let mut all = Vec::new();
    if let Some((force, runs)) = worst {
        all.push(declared(
            "joist hanger at an opening",
            force,
            &runs,
            "a hanger for the size of the timber",
            "its maker must declare at least this for this strength class and nails, and how many nails it needs",
        ));
    }
    if let Some((force, run)) = posts {
        all.push(hanger(roof, force, run, with));
    }
    all
}

/// A hanger nailed to the side of a rafter or purlin and to the binder.
fn hanger(roof: &Carrying<'_>, force: f64, run: usize, with: &With<'_>) -> JointUse {
    let mut working = Working::on();
    let part = Part { wood: with.wood, thickness_mm: roof.runs[run].thickness, angle_deg: 90.0 };
    let nail = NAIL.in_shear(&part, &part, with.joints, &mut working);
    let each = nail.capacity.design_n(with.kmod(Duration::Permanent), with.joints, &mut working);
    let needed = if each > 0.0 { (force / each).ceil().max(2.0) } else { 0.0 };
    working.line("nails needed", needed, "", "EN 1995-1-1 8.3.1", || format!("{force:.0} / {each:.0}, two at least"));
    let used = Use::of(force, needed * each, "EN 1995-1-1 8.3.1", "nails of the hanger");
    JointUse {
        name: "hanger at its ends".to_owned(),
        marks: vec![mark(roof, run)],
        force_n: force,
        used: Some(used.ratio),
        verdict: Some(verdict(used.ratio)),
        clause: used.clause.to_owned(),
        takes: format!("{needed:.0} nails {:.1} × {:.0} at either end", NAIL.diameter_mm, NAIL.length_mm),
        // A few tens at most.
        fixings: (needed > 0.0).then_some(needed as u32),
        remark: "taken as permanent; nails across the grain, pulled by nothing".to_owned(),
        working: working.lines(),
    }
}

/// Head of the hip that brings most.
fn hip_heads(roof: &Carrying<'_>, units: &[Unit], flow: &Flow, with: &With<'_>) -> Option<JointUse> {
    let (force, run) = units
        .iter()
        .enumerate()
        .filter_map(|(number, unit)| {
            let Kind::Sloping(run) = unit.kind else { return None };
            if roof.runs[run].kind != MemberKind::HipRafter {
                return None;
            }
            let head = unit.under.iter().rposition(|u| !matches!(u, crate::carrying::places::Under::Wall(_)))?;
            Some((with.worst(&flow.reactions[number][head], |n| n.max(0.0)).0, run))
        })
        .max_by(|a, b| a.0.total_cmp(&b.0))?;
    Some(JointUse {
        name: "hip head".to_owned(),
        marks: vec![mark(roof, run)],
        force_n: force,
        used: None,
        verdict: None,
        clause: "not covered".to_owned(),
        takes: "skew nails by practice, or a connector with a declared value".to_owned(),
        fixings: None,
        remark: "skew nails have no figures here; a prop under the head carries it without them".to_owned(),
        working: Vec::new(),
    })
}

/// Splices of timbers that span, the one where most bends.
fn splices(roof: &Carrying<'_>, units: &[Unit], flow: &Flow, with: &With<'_>) -> Vec<JointUse> {
    let mut worst: Vec<(SpliceForm, f64, JointUse)> = Vec::new();
    for (number, unit) in units.iter().enumerate() {
        let Some(answers) = &flow.answers[number] else { continue };
        for piece in &unit.pieces {
            let run = &roof.runs[piece.run];
            for splice in run.splices.iter().filter(|s| (piece.from..=piece.to).contains(&s.at)) {
                let Some((bar, at)) = unit.bar_at(piece.run, splice.at) else { continue };
                let moments: Vec<f64> = answers.all().iter().map(|a| a.bars[bar].m(at)).collect();
                let shears: Vec<f64> = answers.all().iter().map(|a| a.bars[bar].v(at)).collect();
                let (moment, duration) = with.worst(&moments, |m| m);
                let (shear, _) = with.worst(&shears, |v| v);
                let joint = splice_use(roof, piece.run, splice, moment.abs(), shear.abs(), duration, with);
                let used = joint.used.unwrap_or(0.0);
                match worst.iter_mut().find(|(form, ..)| *form == splice.form) {
                    Some(old) if old.1 >= used => {}
                    Some(old) => *old = (splice.form, used, joint),
                    None => worst.push((splice.form, used, joint)),
                }
            }
        }
    }
    worst.into_iter().map(|(.., joint)| joint).collect()
}

/// A bolted splice: the bolts of one half hold the other by their washers, over two thirds of its length. From first
/// principles; no code has a model of a scarf. One without bolts is a hinge, and passes no bending on.
fn splice_use(
    roof: &Carrying<'_>,
    run: usize,
    splice: &crate::carrying::run::Joined,
    moment: f64,
    shear: f64,
    duration: Duration,
    with: &With<'_>,
) -> JointUse {
    let mut working = Working::on();
    let bolt = Bolt::black(splice.diameter, with.joints);
    let name = match splice.form {
        SpliceForm::FishPlates => "fish plates",
        SpliceForm::HalfLap => "half lap",
        SpliceForm::BoardSplay => "splayed board joint",
        SpliceForm::Splayed => "splayed scarf",
        SpliceForm::Hooked => "hooked scarf",
    };
    let lever = splice.length * 2.0 / 3.0;
    working.line("lever between the bolts that pull and the end that presses", lever, "mm", "first principles", || {
        format!("2/3 × {:.0}", splice.length)
    });
    let pull = working.line("pull on the bolts of one half", moment / lever + shear, "N", "first principles", || {
        format!("{moment:.0} / {lever:.0} + {shear:.0}")
    });
    let half = (splice.bolts as f64 / 2.0).floor();
    let each = bolt.axial_n(with.wood.fc_90_k, with.joints, &mut working) * with.kmod(duration)
        / with.joints.partial.connection.value;
    working.line("design hold of one washer", each, "N", "EN 1995-1-1 8.5.2", String::new);
    let used = Use::of(pull, half * each, "EN 1995-1-1 8.5.2", "bolts of the splice");
    working.line(used.name, used.ratio, "", used.clause, || format!("{pull:.0} / ({half:.0} × {each:.0})"));
    JointUse {
        name: format!("{name} in a timber that spans"),
        marks: vec![mark(roof, run)],
        force_n: pull,
        used: Some(used.ratio),
        verdict: Some(verdict(used.ratio)),
        clause: used.clause.to_owned(),
        takes: if splice.bolts == 0 {
            "no bolts: it acts as a hinge".to_owned()
        } else {
            format!("{} M{:.0} bolts with washers {:.0} mm wide", splice.bolts, splice.diameter, bolt.washer_mm)
        },
        fixings: u32::try_from(splice.bolts).ok().filter(|bolts| *bolts > 0),
        remark: format!("{:.2} kNm and {:.2} kN there; near a support it bends least", moment / 1e6, shear / 1e3),
        working: working.lines(),
    }
}

/// What one strap of common practice holds, N.
#[must_use]
pub fn one_strap(with: &With<'_>, thickness: f64) -> Held {
    let timber = Part { wood: with.wood, thickness_mm: thickness, angle_deg: 0.0 };
    let strap = Strap { nail: STRAP_NAIL, nails: STRAP_NAILS.0, apart_mm: STRAP_NAILS.1, timber };
    strap.holds(with.kmod(Duration::Instant), with.joints, &mut Working::off())
}

/// Straps for a wall: how many and how far apart, mm.
#[must_use]
pub fn straps(with: &With<'_>, thickness: f64, uplift_n: f64, length_mm: f64) -> Option<(u32, f64)> {
    if uplift_n <= 0.0 || length_mm <= 0.0 {
        return None;
    }
    let held = one_strap(with, thickness);
    let straps = along_wall(uplift_n / (length_mm / 1000.0), length_mm, &held, with.joints, &mut Working::off())?;
    Some((straps.count, straps.apart_mm))
}
