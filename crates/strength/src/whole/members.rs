//! Every timber of the roof, with its checks.

use super::effects::{Span, spans};
use super::out::{CheckUse, Left, MemberUse, StructuralSize, Verdict};
use super::sizes::would_pass;
use super::timbers::{Checked, Found, Rules, check, seats};
use crate::carrying::Carrying;
use crate::carrying::flow::Flow;
use crate::carrying::unit::{Kind, Role, Unit};
use crate::eurocode::members::Section;
use roof::solution::MemberKind;

/// The most that is written: what has no capacity at all is used infinitely, which no file can say.
const BEYOND: f64 = 1000.0;

/// Above this a figure from memory might turn the result.
const NEAR: f64 = 0.9;

/// A timber with its checks kept, to run one again.
#[derive(Clone, Debug)]
pub struct Kept {
    /// Section.
    pub section: Section,
    /// Its checks, the governing one first.
    pub found: Vec<Found>,
}

/// Check every timber of every unit.
pub fn all(
    roof: &Carrying<'_>,
    units: &[Unit],
    flow: &Flow,
    rules: &Rules<'_>,
    cases: usize,
) -> Vec<(Kept, MemberUse)> {
    let ties = ties(roof, units, flow);
    let mut out = Vec::new();
    for (number, unit) in units.iter().enumerate() {
        let mut runs: Vec<usize> = unit.pieces.iter().filter(|p| p.role == Role::Timber).map(|p| p.run).collect();
        runs.dedup();
        if let Kind::Post(run) = unit.kind {
            out.extend(post(roof, run, flow, rules));
            continue;
        }
        for run in runs {
            let spans = spans(unit, flow, number, run, cases);
            let timber = checked(roof, run, &spans, ties.get(&run).map(Vec::as_slice));
            let mut found = check(rules, &timber);
            found.extend(seats(rules, roof, unit, &flow.reactions[number], &timber));
            let bigger = |f: &[Found]| f.iter().any(|f| !f.used.passes()).then(|| would_pass(rules, &timber)).flatten();
            let pass = bigger(&found);
            out.extend(kept(roof, run, timber.section, found, pass));
        }
    }
    out.sort_by(|a, b| b.1.left.used.total_cmp(&a.1.left.used));
    out
}

/// Tension of joists that tie pairs, by their runs: N for each case. A joist beside several rafters has the most.
fn ties(roof: &Carrying<'_>, units: &[Unit], flow: &Flow) -> std::collections::BTreeMap<usize, Vec<f64>> {
    let mut all: std::collections::BTreeMap<usize, Vec<f64>> = std::collections::BTreeMap::new();
    for (number, unit) in units.iter().enumerate() {
        let Some(answers) = &flow.answers[number] else { continue };
        for (bar, piece) in unit.pieces.iter().enumerate().filter(|(_, p)| p.role == Role::Tie) {
            let n: Vec<f64> = answers.all().iter().map(|a| a.bars[bar].n(0.0)).collect();
            let joists = match unit.kind {
                Kind::Pair { left, right } => vec![left, right]
                    .into_iter()
                    .flat_map(|r| roof.contacts[r].iter())
                    .filter(|c| roof.runs[c.other].kind == MemberKind::CeilingJoist)
                    .map(|c| c.other)
                    .collect(),
                _ => vec![piece.run],
            };
            for joist in joists {
                let old = all.entry(joist).or_insert_with(|| vec![0.0; n.len()]);
                for (old, new) in old.iter_mut().zip(&n) {
                    if new.abs() > old.abs() {
                        *old = *new;
                    }
                }
            }
        }
    }
    all
}

fn checked<'a>(roof: &Carrying<'_>, run: usize, spans: &'a [Span], tie: Option<&'a [f64]>) -> Checked<'a> {
    let timber = &roof.runs[run];
    let member = &roof.solution.members[timber.parts[0]];
    // Loads are straight down; what part of them bends it about its strong axis, and what part sideways. Timbers that
    // slope stand upright across.
    let level = timber.along.z.abs() < 1e-6;
    let tilt = if level { [timber.up.z.abs(), timber.across.z.abs()] } else { [1.0, 0.0] };
    Checked {
        run,
        kind: timber.kind,
        section: Section::new(timber.thickness, timber.depth),
        spans,
        birdsmouth: member.birdsmouth.map(|b| [b.depth_mm, b.seat_mm]),
        pitch: member.pitch_deg,
        tilt,
        tie,
    }
}

/// A strut or hanger.
fn post(roof: &Carrying<'_>, run: usize, flow: &Flow, rules: &Rules<'_>) -> Option<(Kept, MemberUse)> {
    let timber = &roof.runs[run];
    let through = flow.posts.get(&run)?;
    // What comes down it, along its slope.
    let steep = timber.along.z.abs().max(0.1);
    let sign = if timber.kind == MemberKind::Hanger { 1.0 } else { -1.0 };
    let along: Vec<f64> = through.iter().map(|n| sign * n / steep).collect();
    let station = super::effects::Station {
        at: timber.length / 2.0,
        v: vec![0.0; along.len()],
        m: vec![0.0; along.len()],
        moved: vec![0.0; along.len()],
        n: along,
    };
    let spans = [Span {
        bar: 0,
        reach: [0.0, timber.length],
        between: [Some(0.0), Some(timber.length)],
        stations: vec![station],
        even: false,
    }];
    let mut checked = checked(roof, run, &spans, None);
    checked.tilt = [1.0, 0.0];
    let found: Vec<Found> = check(rules, &checked).into_iter().filter(|f| f.used.ratio > 0.0).collect();
    let pass = found.iter().any(|f| !f.used.passes()).then(|| would_pass(rules, &checked)).flatten();
    kept(roof, run, checked.section, found, pass)
}

fn kept(
    roof: &Carrying<'_>,
    run: usize,
    section: Section,
    mut found: Vec<Found>,
    pass: Option<Section>,
) -> Option<(Kept, MemberUse)> {
    found.sort_by(|a, b| b.used.ratio.total_cmp(&a.used.ratio));
    let worst = found.first()?.clone();
    let timber = &roof.runs[run];
    let size = |s: Section| StructuralSize { thickness_mm: s.breadth, depth_mm: s.depth };
    let checks = found
        .iter()
        .map(|f| CheckUse {
            name: f.used.name.to_owned(),
            clause: f.used.clause.to_owned(),
            used: f.used.ratio.min(BEYOND),
            combination: (!matches!(f.ask, super::asks::Ask::Sag { .. })).then_some(f.combination as u32),
            at_mm: f.at,
        })
        .collect();
    let used = worst.used.ratio.min(BEYOND);
    let verdict = if used > 1.0 {
        Verdict::Over
    } else if used > NEAR {
        Verdict::Near
    } else {
        Verdict::Within
    };
    let member = MemberUse {
        mark: timber.mark.clone(),
        lengths: timber.parts.iter().map(|k| roof.solution.members[*k].mark.clone()).collect(),
        kind: timber.kind,
        size: size(section),
        left: Left { used, verdict },
        checks,
        would_pass: pass.map(size),
        place: timber.at(worst.at).to_array(),
    };
    Some((Kept { section, found }, member))
}
