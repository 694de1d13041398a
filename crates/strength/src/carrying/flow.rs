//! Loads go from unit to unit, down to the walls, until nothing changes any more.
//!
//! Most roofs are a tree and settle in two rounds. Some run in a ring: a hip leans on the pair at the end of the ridge,
//! that pair on a purlin, and the purlin on the hip. Each round passes on less, as no timber passes on more than it gets.

use super::Carrying;
use super::places::Under;
use super::unit::{Kind, Unit};
use crate::statics::{Cases, FrameFault, Load, Prepared};
use std::collections::BTreeMap;

/// Loads have settled when no reaction changes by more than this share of all loads of its case.
const SETTLED: f64 = 1e-9;

/// More rounds than this say that loads grow instead of settling.
const MOST_ROUNDS: usize = 200;

/// All reactions together are all loads to within this share.
pub const BALANCE: f64 = 1e-6;

/// What is on a unit by itself, without what comes from others.
#[derive(Clone, Debug, Default)]
pub struct Own {
    /// For each case, the loads on its frame.
    pub loads: Vec<Vec<Load>>,
    /// For each case, what a post weighs, N down.
    pub post: Vec<f64>,
}

/// What stands at the end of every load: N down for each case.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ground {
    /// On each wall by its letter.
    pub walls: BTreeMap<String, Vec<f64>>,
    /// On each bearing by its name.
    pub bearings: BTreeMap<String, Vec<f64>>,
    /// On what nothing holds up, such as the end of a ridge without a pair of rafters.
    pub lost: Vec<f64>,
}

/// How loads went.
#[derive(Debug)]
pub struct Flow {
    /// Answers of each unit for all cases; `None` for posts.
    pub answers: Vec<Option<Cases>>,
    /// Down through each post by its run: N for each case.
    pub posts: BTreeMap<usize, Vec<f64>>,
    /// All loads of each unit for each case, with what came from others.
    pub loads: Vec<Vec<Vec<Load>>>,
    /// For each unit, for each of its supports: N up for each case.
    pub reactions: Vec<Vec<Vec<f64>>>,
    /// Where they ended.
    pub ground: Ground,
    /// All loads down, N for each case.
    pub applied: Vec<f64>,
    /// Rounds that it took.
    pub rounds: usize,
}

/// Why loads could not be followed.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FlowFault {
    /// A unit is no frame that stands.
    #[error("{mark}: {source}")]
    Frame {
        /// Mark of its first timber.
        mark: String,
        /// What is wrong with it.
        source: FrameFault,
    },
    /// Loads run round between timbers and do not settle.
    #[error("the loads of {mark} come back to it without end; look at what it rests on")]
    Circle {
        /// Mark of a timber in the ring.
        mark: String,
    },
    /// Not all loads arrive at walls.
    #[error("of {applied_n:.1} N down, {arrived_n:.1} N arrive; please report this roof")]
    Unbalanced {
        /// All loads, N.
        applied_n: f64,
        /// What walls, bearings and timbers without a hold get, N.
        arrived_n: f64,
    },
}

/// One part of a reaction, and who gets it.
struct Given {
    /// To which unit.
    to: usize,
    /// At which place of which run, mm; `None` for the apex of a pair.
    at: Option<(usize, f64)>,
    /// Which part of the reaction.
    share: f64,
}

/// Follow the loads of all cases down. `passed`: for each case, whether what a timber carries goes on to the next; a case
/// that is not passed on is for each timber alone.
///
/// # Errors
/// A unit that is a mechanism, loads that do not settle, loads that get lost on the way.
pub fn flow(roof: &Carrying<'_>, units: &[Unit], own: &[Own], passed: &[bool]) -> Result<Flow, FlowFault> {
    let cases = passed.len();
    let mark = |k: usize| roof.runs[first_run(&units[k])].mark.clone();
    let fault = |k: usize, source: FrameFault| FlowFault::Frame { mark: mark(k), source };
    let prepared: Vec<_> = units
        .iter()
        .enumerate()
        .map(|(k, unit)| match unit.kind {
            Kind::Post(_) => Ok(None),
            _ => unit.frame.prepare().map(Some).map_err(|source| fault(k, source)),
        })
        .collect::<Result<_, _>>()?;
    let given: Vec<Vec<Vec<Given>>> = units.iter().map(|unit| targets(roof, units, unit)).collect();
    let mut sources: Vec<Vec<Source>> = vec![Vec::new(); units.len()];
    for (k, supports) in given.iter().enumerate() {
        for (s, parts) in supports.iter().enumerate() {
            for (p, part) in parts.iter().enumerate() {
                sources[part.to].push((k, s, p));
            }
        }
    }
    let applied: Vec<f64> =
        (0..cases).map(|case| units.iter().zip(own).map(|(unit, own)| down(unit, own, case)).sum()).collect();
    let scale: Vec<f64> = (0..cases)
        .map(|case| units.iter().zip(own).map(|(unit, own)| down(unit, own, case).abs()).sum::<f64>().max(1.0))
        .collect();
    let mut flow = Flow {
        answers: (0..units.len()).map(|_| None).collect(),
        posts: BTreeMap::new(),
        loads: vec![Vec::new(); units.len()],
        reactions: units.iter().map(|u| vec![vec![0.0; cases]; u.under.len()]).collect(),
        ground: Ground::default(),
        applied,
        rounds: 0,
    };
    let responses = units
        .iter()
        .enumerate()
        .map(|(k, unit)| respond(unit, prepared[k].as_ref(), &sources[k], &given).map_err(|source| fault(k, source)))
        .collect::<Result<Vec<_>, _>>()?;
    let alone = units
        .iter()
        .enumerate()
        .map(|(k, unit)| by_itself(unit, prepared[k].as_ref(), &own[k], cases).map_err(|source| fault(k, source)))
        .collect::<Result<Vec<_>, _>>()?;

    // What comes from others changes what goes on to others, until it does not: sums only, as every answer is a sum of
    // the answers to its loads.
    let mut changed = vec![true; units.len()];
    while let Some(at) = changed.iter().position(|c| *c) {
        flow.rounds += 1;
        if flow.rounds > MOST_ROUNDS {
            return Err(FlowFault::Circle { mark: mark(at) });
        }
        for k in 0..units.len() {
            if !core::mem::take(&mut changed[k]) {
                continue;
            }
            let mut new = alone[k].clone();
            for (source, response) in sources[k].iter().zip(&responses[k]) {
                let (from, support, part) = *source;
                let share = given[from][support][part].share;
                for (new, per_newton) in new.iter_mut().zip(response) {
                    for case in (0..cases).filter(|case| passed[*case]) {
                        new[case] += per_newton * share * flow.reactions[from][support][case];
                    }
                }
            }
            for (s, (old, new)) in flow.reactions[k].iter_mut().zip(new).enumerate() {
                if old.iter().zip(&new).zip(&scale).any(|((a, b), s)| (a - b).abs() > SETTLED * s) {
                    given[k][s].iter().for_each(|part| changed[part.to] = true);
                }
                *old = new;
            }
        }
    }
    // With everything where it belongs, each unit is solved once, as a whole.
    for k in 0..units.len() {
        let mut loads = own[k].loads.clone();
        loads.resize(cases, Vec::new());
        let mut through = own[k].post.clone();
        through.resize(cases, 0.0);
        for (from, support, part) in &sources[k] {
            let part = &given[*from][*support][*part];
            for case in (0..cases).filter(|case| passed[*case]) {
                let n = flow.reactions[*from][*support][case] * part.share;
                through[case] += n;
                loads[case].extend(landing(&units[k], part, n));
            }
        }
        match &prepared[k] {
            None => {
                flow.posts.insert(first_run(&units[k]), through);
            }
            Some(frame) => {
                let solved = frame.solve(&loads).map_err(|source| fault(k, source))?;
                for (s, reaction) in flow.reactions[k].iter_mut().enumerate() {
                    for (case, n) in reaction.iter_mut().enumerate() {
                        *n = up(&solved, s, case);
                    }
                }
                flow.answers[k] = Some(solved);
            }
        }
        flow.loads[k] = loads;
    }
    flow.ground = ground(units, &given, &flow.reactions, cases);
    balanced(&flow, &scale, passed)?;
    Ok(flow)
}

/// A source of load: a unit, one of its supports, and a part of that support's reaction.
type Source = (usize, usize, usize);

/// What each support of a unit gives when a source brings 1 N: for each source, for each support.
fn respond(
    unit: &Unit,
    frame: Option<&Prepared<'_>>,
    sources: &[Source],
    given: &[Vec<Vec<Given>>],
) -> Result<Vec<Vec<f64>>, FrameFault> {
    let Some(frame) = frame else { return Ok(vec![vec![1.0; unit.under.len()]; sources.len()]) };
    let one = |(from, support, part): &Source| landing(unit, &given[*from][*support][*part], 1.0).into_iter().collect();
    let solved = frame.solve(&sources.iter().map(one).collect::<Vec<_>>())?;
    Ok((0..sources.len()).map(|k| (0..unit.under.len()).map(|s| up(&solved, s, k)).collect()).collect())
}

/// What each support gives under what is on a unit by itself, N for each case.
fn by_itself(unit: &Unit, frame: Option<&Prepared<'_>>, own: &Own, cases: usize) -> Result<Vec<Vec<f64>>, FrameFault> {
    let Some(frame) = frame else {
        let mut post = own.post.clone();
        post.resize(cases, 0.0);
        return Ok(vec![post; unit.under.len()]);
    };
    let mut loads = own.loads.clone();
    loads.resize(cases, Vec::new());
    let solved = frame.solve(&loads)?;
    Ok((0..unit.under.len()).map(|s| (0..cases).map(|case| up(&solved, s, case)).collect()).collect())
}

/// What a support gives in a case, N up.
fn up(solved: &Cases, support: usize, case: usize) -> f64 {
    solved.get(case).and_then(|answer| answer.reactions.get(support)).map_or(0.0, |r| r[1])
}

/// The first run of a unit.
fn first_run(unit: &Unit) -> usize {
    match unit.kind {
        Kind::Pair { left: run, .. } | Kind::Sloping(run) | Kind::Level(run) | Kind::Post(run) => run,
    }
}

/// What is on a unit by itself in a case, N down.
fn down(unit: &Unit, own: &Own, case: usize) -> f64 {
    let spread = |length: f64, fy: [f64; 2]| -(fy[0] + fy[1]) / 2.0 * length;
    let loads = own.loads.get(case).into_iter().flatten();
    let on_frame: f64 = loads
        .map(|load| match *load {
            Load::Node { fy, .. } | Load::At { fy, .. } => -fy,
            Load::Spread { bar, fy, .. } => spread(unit.bar_length(bar), fy),
            Load::Part { from_mm, to_mm, fy, .. } => spread(to_mm - from_mm, fy),
        })
        .sum();
    on_frame + own.post.get(case).copied().unwrap_or(0.0)
}

/// A part of a reaction as a load on the unit that gets it.
fn landing(unit: &Unit, part: &Given, n: f64) -> Option<Load> {
    if n == 0.0 {
        return None;
    }
    match part.at {
        Some((run, along)) => unit.load_at(run, along, n),
        None => unit.apex.map(|node| Load::Node { node, fx: 0.0, fy: -n, m: 0.0 }),
    }
}

/// Who gets the reactions of each support of a unit; nobody, when a wall does.
fn targets(roof: &Carrying<'_>, units: &[Unit], unit: &Unit) -> Vec<Vec<Given>> {
    let unit_of = |run: usize| units.iter().position(|u| u.has(run));
    unit.under
        .iter()
        .map(|under| match under {
            Under::Wall(_) | Under::Bearing(_) => Vec::new(),
            Under::Run(run, along) => {
                let to = unit_of(*run);
                to.map(|to| Given { to, at: Some((*run, *along)), share: 1.0 }).into_iter().collect()
            }
            Under::Ridge(ridge, along) => match unit_of(*ridge) {
                Some(to) => vec![Given { to, at: Some((*ridge, *along)), share: 1.0 }],
                None => shared_by_pairs(roof, units, *ridge, *along),
            },
        })
        .collect()
}

/// A load on a ridge board goes to the pairs of rafters on either side of it, by the lever; beyond the last, to that.
fn shared_by_pairs(roof: &Carrying<'_>, units: &[Unit], ridge: usize, along: f64) -> Vec<Given> {
    let mut pairs: Vec<(f64, usize)> = units
        .iter()
        .enumerate()
        .filter_map(|(k, unit)| {
            let Kind::Pair { left, .. } = unit.kind else { return None };
            let touch = roof.contacts[left].iter().find(|c| c.other == ridge)?;
            Some((roof.runs[ridge].along_of(touch.at), k))
        })
        .collect();
    pairs.sort_by(|a, b| a.0.total_cmp(&b.0));
    let next = pairs.partition_point(|(at, _)| *at < along);
    let before = next.checked_sub(1).and_then(|k| pairs.get(k));
    match (before, pairs.get(next)) {
        (Some((a, first)), Some((b, second))) => {
            let share = (along - a) / (b - a);
            vec![Given { to: *first, at: None, share: 1.0 - share }, Given { to: *second, at: None, share }]
        }
        (Some((_, only)), None) | (None, Some((_, only))) => vec![Given { to: *only, at: None, share: 1.0 }],
        (None, None) => Vec::new(),
    }
}

fn ground(units: &[Unit], given: &[Vec<Vec<Given>>], reactions: &[Vec<Vec<f64>>], cases: usize) -> Ground {
    let mut ground = Ground { lost: vec![0.0; cases], ..Ground::default() };
    for (k, unit) in units.iter().enumerate() {
        for (s, under) in unit.under.iter().enumerate() {
            let into = match under {
                Under::Wall(letter) => ground.walls.entry(letter.clone()).or_insert_with(|| vec![0.0; cases]),
                Under::Bearing(name) => ground.bearings.entry(name.clone()).or_insert_with(|| vec![0.0; cases]),
                _ if given[k][s].is_empty() => &mut ground.lost,
                _ => continue,
            };
            into.iter_mut().zip(&reactions[k][s]).for_each(|(sum, n)| *sum += n);
        }
    }
    ground
}

/// Every load is somewhere at last: sums only, no stiffness.
fn balanced(flow: &Flow, scale: &[f64], passed: &[bool]) -> Result<(), FlowFault> {
    for (case, applied) in flow.applied.iter().enumerate().filter(|(case, _)| passed[*case]) {
        let walls = flow.ground.walls.values().chain(flow.ground.bearings.values());
        let arrived: f64 = walls.map(|n| n[case]).sum::<f64>() + flow.ground.lost[case];
        if (applied - arrived).abs() > BALANCE * scale[case] {
            return Err(FlowFault::Unbalanced { applied_n: *applied, arrived_n: arrived });
        }
    }
    Ok(())
}
