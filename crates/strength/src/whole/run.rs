//! From a job and its roof to the strength of all of it.

use super::areas::{RoofLoads, roof_loads};
use super::asks::Stuff;
use super::effects::sum;
use super::fault::CheckFault;
use super::members::{Kept, all};
use super::out::{Assumed, CombinationOut, FigureOut, Strength, Totals, WallLoad, from_memory};
use super::timbers::Rules;
use super::{feet, joints, refusals};
use crate::actions::{CaseKind, Combination, CombinationKind, Expression, combinations};
use crate::annex::joints::Joints;
use crate::annex::loads::Loads;
use crate::annex::timber::{ServiceClass, Timber};
use crate::carrying::Carrying;
use crate::carrying::build::{NotHeld, units};
use crate::carrying::flow::{Flow, Own, flow};
use crate::carrying::own::own;
use crate::carrying::unit::{Kind, Role, Unit};
use crate::eurocode::members::Finish;
use crate::working::{Line, Working};
use job::{Feet, Job, RidgeAs};
use roof::solution::{LineKind, MemberKind, Solution};

/// The strength of a roof, with what is needed to write down any of its checks.
#[derive(Debug)]
pub struct Checks {
    /// The results.
    pub strength: Strength,
    kept: Vec<Kept>,
    stuff: Stuff,
}

impl Checks {
    /// The working of a check of a timber, line by line; the governing check when `check` is none.
    #[must_use]
    pub fn working(&self, mark: &str, check: Option<&str>) -> Option<Vec<Line>> {
        let index = self.strength.members.iter().position(|m| m.mark == mark || m.lengths.iter().any(|l| l == mark))?;
        let kept = self.kept.get(index)?;
        let found = match check {
            None => kept.found.first()?,
            Some(name) => kept.found.iter().find(|f| f.used.name == name)?,
        };
        let mut working = Working::on();
        let _ = found.ask.run(&self.stuff, found.duration, found.shared, kept.section, &mut working);
        Some(working.lines())
    }
}

/// Check the strength of a roof.
///
/// # Errors
/// A job that says nothing of what the roof carries, a region without codes, and loads that cannot be followed.
pub fn check(job: &Job, solution: &Solution) -> Result<Checks, CheckFault> {
    let carried = job.carried.as_ref().ok_or(CheckFault::NoLoads)?;
    let timber = Timber::of(&job.region)?;
    let loads = Loads::of(&job.region)?;
    let figures = Joints::of(&job.region).map_err(|e| CheckFault::Joints(e.to_string()))?;
    let wood = timber.class(job.strong.class.name())?;
    let service = match job.strong.service {
        1 => ServiceClass::One,
        3 => ServiceClass::Three,
        _ => ServiceClass::Two,
    };
    if solution.lines.iter().any(|l| l.kind == LineKind::PitchBreak) {
        return Err(CheckFault::Form(
            "a slope that breaks to another pitch pushes where it breaks, which is not modelled",
        ));
    }
    let roof = Carrying::of(job, solution);
    let mut working = Working::on();
    let on_roof = roof_loads(&roof, carried, loads, wood, &mut working)?;
    let built = units(&roof, wood.e0_mean);
    let cases = CaseKind::ALL.len();
    let mut own = own(&roof, &built, &on_roof.areas);
    persons(&roof, &built.units, &on_roof, &mut own);
    let passed: Vec<bool> = CaseKind::ALL.iter().map(|kind| !kind.is_one_person()).collect();
    let flow = flow(&roof, &built.units, &own, &passed)?;

    held(&roof, &built.not_held, &flow)?;

    let together = combinations(loads, Expression::Whole)?;
    let factors: Vec<Vec<(usize, f64)>> = together.iter().map(Combination::by_place).collect();
    let stuff = Stuff { wood, timber, service };
    let rules = Rules {
        stuff,
        combinations: &together,
        factors: &factors,
        sharing: timber.shares_load(rafters(&roof), job.timber.rafter.centres),
        finish: [if carried.lining > 0.0 { Finish::Ceiling } else { Finish::Open }, Finish::Ceiling],
        variables: variables(loads),
    };
    let members = all(&roof, &built.units, &flow, &rules, cases);
    let with =
        joints::With { joints: figures, factors: timber, wood, service, combinations: &together, by_case: &factors };
    let (kept, members): (Vec<_>, Vec<_>) = members.into_iter().unzip();
    let pairs = built.units.iter().enumerate();
    let strength = Strength {
        editions: vec![loads.edition.clone(), timber.classes.edition.clone(), figures.edition.clone()],
        assumed: Assumed {
            class: wood.class.clone(),
            service: service.number(),
            feet: if job.strong.feet == Feet::Free { "free" } else { "held" }.to_owned(),
            ridge: if job.strong.ridge == RidgeAs::Board { "board" } else { "beam" }.to_owned(),
            sharing: rules.sharing,
            from_memory: timber.figures().iter().filter(|f| from_memory(f.figure.standing)).count() as u32,
        },
        loads: working.lines().into_iter().map(figure).collect(),
        combinations: together
            .iter()
            .map(|c| CombinationOut {
                name: c.name.clone(),
                duration: c.duration.word().to_owned(),
                kmod: timber.kmod(service, c.duration).value,
            })
            .collect(),
        members,
        joints: joints::joints(&roof, &built.units, &flow, &with),
        feet: pairs.filter_map(|(k, unit)| feet::both(&roof, unit, k, &flow, &together, &factors)).collect(),
        walls: walls(&roof, &flow, &together, &factors, &with),
        refused: refusals::refused(&roof, &built, carried, &on_roof, loads),
        cautions: CAUTIONS.iter().map(|c| (*c).to_owned()).collect(),
        totals: totals(&roof, &flow),
    };
    Ok(Checks { strength, kept, stuff })
}

/// Up to this share of the loads may come on what nothing is seen to hold up: it is refused by its mark. Beyond, the way
/// down is not known, and no figure would mean anything.
const UNHELD_MOST: f64 = 0.02;

fn held(roof: &Carrying<'_>, not_held: &[NotHeld], flow: &Flow) -> Result<(), CheckFault> {
    let permanent = CaseKind::Permanent as usize;
    let share = flow.ground.lost[permanent].abs() / flow.applied[permanent].abs().max(1.0);
    if share <= UNHELD_MOST {
        return Ok(());
    }
    let marks = not_held.iter().map(|n| roof.runs[n.run].mark.clone()).collect();
    Err(CheckFault::Unheld { percent: share * 100.0, marks })
}

/// Cautions for every sheet with a result about strength.
const CAUTIONS: [&str; 4] = [
    "A check of timbers and joints, not of the building: racking, gables, wind bracing and the walls below are not looked at.",
    "Building control and a structural engineer decide. Show them these figures; do not build from them alone.",
    "Loads are those written in the job; strength classes are those stamped on the timber. Where either differs, nothing here holds.",
    "Many figures of the national annex are from memory of their source and are marked so; compare them with the bought standard.",
];

fn figure(line: Line) -> FigureOut {
    FigureOut { what: line.what, how: line.how, value: line.value, unit: line.unit, from: line.from }
}

fn rafters(roof: &Carrying<'_>) -> usize {
    roof.runs.iter().filter(|r| r.kind == MemberKind::CommonRafter).count()
}

/// For each case that comes and goes: its number, psi0 and psi2.
fn variables(loads: &Loads) -> Vec<(usize, f64, f64)> {
    CaseKind::ALL
        .into_iter()
        // One person counts, without help from the neighbours: it is what shallow joists and trimmers bend under most.
        .filter(|kind| *kind != CaseKind::Permanent)
        .filter_map(|kind| {
            let figures = loads.cases.get(kind.family())?;
            let value = |figure: &Option<crate::annex::Figure>| figure.as_ref().map_or(0.0, |f| f.value);
            Some((kind as usize, value(&figures.psi0), value(&figures.psi2)))
        })
        .collect()
}

/// One person in the middle of the longest span of each timber, for that timber alone. Both rafters of a pair have one,
/// which is more than one person but bends each no less.
fn persons(roof: &Carrying<'_>, units: &[Unit], on_roof: &RoofLoads, own: &mut [Own]) {
    for (unit, own) in units.iter().zip(own) {
        let mut runs: Vec<usize> = unit.pieces.iter().filter(|p| p.role == Role::Timber).map(|p| p.run).collect();
        runs.dedup();
        if let Kind::Post(_) = unit.kind {
            continue;
        }
        for run in runs {
            let kind = roof.runs[run].kind;
            let (case, force) = match kind {
                MemberKind::CeilingJoist | MemberKind::Binder => (CaseKind::LoftPerson, on_roof.persons[1]),
                MemberKind::Collar => continue,
                _ => (CaseKind::Person, on_roof.persons[0]),
            };
            let mine = unit.pieces.iter().enumerate().filter(|(_, p)| p.run == run && p.role == Role::Timber);
            let longest = mine.max_by(|a, b| (a.1.to - a.1.from).total_cmp(&(b.1.to - b.1.from)));
            let Some((_, piece)) = longest else { continue };
            if let Some(load) = unit.load_at(run, (piece.from + piece.to) / 2.0, force) {
                own.loads[case as usize].push(load);
            }
        }
    }
}

fn walls(
    roof: &Carrying<'_>,
    flow: &Flow,
    together: &[Combination],
    factors: &[Vec<(usize, f64)>],
    with: &joints::With<'_>,
) -> Vec<WallLoad> {
    let permanent = CaseKind::Permanent as usize;
    let by = |kinds: &[CombinationKind], n: &[f64]| -> Vec<f64> {
        together.iter().zip(factors).filter(|(c, _)| kinds.contains(&c.kind)).map(|(_, f)| sum(n, f)).collect()
    };
    let load = |name: &String, n: &Vec<f64>, length_mm: f64| {
        let all = by(&[CombinationKind::Ultimate, CombinationKind::Equilibrium], n);
        let lift = all.iter().copied().fold(0.0_f64, f64::min).abs();
        let straps = joints::straps(with, roof.job.timber.rafter.size.thickness, lift, length_mm);
        WallLoad {
            name: name.clone(),
            permanent_kn: n[permanent] / 1e3,
            most_kn: all.iter().copied().fold(0.0, f64::max) / 1e3,
            uplift_kn: lift / 1e3,
            length_m: length_mm / 1e3,
            straps: straps.map(|s| s.0),
            straps_apart_mm: straps.map(|s| s.1),
        }
    };
    let length =
        |letter: &String| roof.solution.plan.walls.iter().find(|w| w.id == *letter).map_or(0.0, |w| w.length_mm);
    let walls = flow.ground.walls.iter().map(|(name, n)| load(name, n, length(name)));
    walls.chain(flow.ground.bearings.iter().map(|(name, n)| load(name, n, 0.0))).collect()
}

fn totals(roof: &Carrying<'_>, flow: &Flow) -> Totals {
    let arrived = |case: usize| -> f64 {
        let all = flow.ground.walls.values().chain(flow.ground.bearings.values());
        all.map(|n| n[case]).sum::<f64>()
    };
    let (g, s) = (CaseKind::Permanent as usize, CaseKind::Snow as usize);
    let share = |case: usize| {
        let applied = flow.applied[case];
        if applied.abs() > 1.0 { ((applied - arrived(case)) / applied).abs() } else { 0.0 }
    };
    Totals {
        permanent_kn: flow.applied[g] / 1e3,
        snow_kn: flow.applied[s] / 1e3,
        arrived_kn: (arrived(g) + arrived(s)) / 1e3,
        worst_share: [g, s].into_iter().map(share).fold(0.0, f64::max),
        plan_m2: roof.slopes.iter().map(|s| s.area()).sum::<f64>() / 1e6,
    }
}
