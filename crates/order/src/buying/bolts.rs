//! Bolts of splices and of joints that are bolted, with nuts and washers.

use super::figures::{BoltFigures, Figures};
use super::joints::{Found, halves};
use super::line::{Line, LineKind};
use super::strength_says;
use job::Per;
use roof::rules::Standing;
use roof::solution::{BoltWay, CutPlace, Member, MemberKind, Solution, SpliceForm, SpliceOut};
use std::collections::BTreeMap;
use strength::whole::Strength;

/// Diameters and lengths are told apart to this, mm.
const TOLD_APART: f64 = 0.1;

/// A bolt by its diameter and what it must go through, in steps of [`TOLD_APART`].
type Through = (i64, i64);

/// How many bolts go through what.
#[derive(Default)]
struct Counted {
    count: u32,
    /// What they hold, in words.
    what: BTreeMap<String, u32>,
    /// All by a habit of the trade.
    habit: bool,
}

/// Lines for bolts, nuts, washers, and rod where no bolt is long enough.
pub(super) fn lines(
    solution: &Solution,
    found: &Found<'_>,
    strength: Option<&Strength>,
    figures: &Figures,
) -> Vec<Line> {
    let mut all: BTreeMap<Through, Counted> = BTreeMap::new();
    let mut add = |diameter: f64, grip: f64, count: u32, what: &str, habit: bool| {
        if count == 0 || !(diameter > 0.0 && grip > 0.0) {
            return;
        }
        let counted = all.entry((steps(diameter), steps(grip))).or_default();
        counted.count = counted.count.saturating_add(count);
        counted.habit |= habit;
        *counted.what.entry(what.to_owned()).or_default() += count;
    };
    for (member, splice) in holes(&solution.members) {
        for bolt in &splice.bolts {
            let grip = grip(&solution.members, member, splice, bolt.through);
            add(bolt.diameter_mm, grip, 1, splice_words(splice.kind), false);
        }
    }
    for joint in &found.joints {
        let Some(diameter) = joint.rule.bolts else { continue };
        let asked = joint.rule.checked.as_deref().and_then(|name| strength_says::count(strength, name));
        let count = joint.count(found.members, asked.unwrap_or(0).max(joint.rule.count));
        let grip = joint.of.iter().filter_map(|k| found.members.get(*k)).map(|m| m.size.thickness_mm).sum();
        let warning = joint.rule.checked.as_deref().map_or("", |name| strength_says::warning(strength, name));
        add(diameter, grip, count, &format!("{}{warning}", joint.rule.what), true);
    }
    written(&all, figures)
}

/// Every splice with the timber whose holes tell its bolts, each bolt once: halves of a scarf share theirs, butted
/// lengths between fish plates have their own.
fn holes(members: &[Member]) -> impl Iterator<Item = (&Member, &SpliceOut)> {
    let butted = members.iter().filter(|m| !matches!(m.kind, MemberKind::FishPlate | MemberKind::Wedge));
    let second = butted.flat_map(|m| {
        let foot = m.splices.iter().filter(|s| s.kind == SpliceForm::FishPlates && s.at == CutPlace::Foot);
        foot.map(move |s| (m, s))
    });
    halves(members).chain(second)
}

/// What a bolt of a splice goes through, mm.
fn grip(members: &[Member], half: &Member, splice: &SpliceOut, way: BoltWay) -> f64 {
    match way {
        BoltWay::Depth => half.size.depth_mm,
        BoltWay::Thickness => {
            // Fish plates name the length towards the foot.
            let lower = if splice.at == CutPlace::Foot { &splice.mate } else { &half.mark };
            let plates = members.iter().filter(|m| {
                m.kind == MemberKind::FishPlate
                    && splice.kind == SpliceForm::FishPlates
                    && m.splices.iter().any(|s| s.mate == *lower)
            });
            half.size.thickness_mm + plates.map(|m| m.size.thickness_mm).sum::<f64>()
        }
    }
}

const fn splice_words(form: SpliceForm) -> &'static str {
    match form {
        SpliceForm::FishPlates => "fish plates",
        SpliceForm::Splayed => "splayed scarfs",
        SpliceForm::Hooked => "hooked scarfs",
        SpliceForm::HalfLap => "half laps",
        SpliceForm::BoardSplay => "joints of boards",
    }
}

fn steps(mm: f64) -> i64 {
    (mm / TOLD_APART).round() as i64
}

/// The least length under the head that goes through a grip with two washers and a nut, mm.
pub(super) fn least_length(diameter: f64, grip: f64, bolts: &BoltFigures) -> f64 {
    grip + diameter * (2.0 * bolts.washer_thick.value + bolts.nut.value + bolts.beyond.value)
}

fn written(all: &BTreeMap<Through, Counted>, figures: &Figures) -> Vec<Line> {
    let bolts = &figures.bolts;
    // By diameter and length that can be had; rod by diameter.
    let mut sold: BTreeMap<Through, Counted> = BTreeMap::new();
    let mut rod: BTreeMap<i64, (u32, f64)> = BTreeMap::new();
    let mut each: BTreeMap<i64, u32> = BTreeMap::new();
    for ((diameter, grip), counted) in all {
        let (d, grip) = (*diameter as f64 * TOLD_APART, *grip as f64 * TOLD_APART);
        let least = least_length(d, grip, bolts);
        *each.entry(*diameter).or_default() += counted.count;
        match bolts.lengths.iter().find(|length| **length >= least - TOLD_APART / 2.0) {
            Some(length) => {
                let line = sold.entry((*diameter, steps(*length))).or_default();
                line.count = line.count.saturating_add(counted.count);
                line.habit |= counted.habit;
                for (what, count) in &counted.what {
                    *line.what.entry(format!("{what}, {grip:.0} mm through")).or_default() += count;
                }
            }
            None => {
                // A nut and washer at either end.
                let long = least + d * (bolts.nut.value + bolts.beyond.value);
                let (count, metres) = rod.entry(*diameter).or_default();
                *count += counted.count;
                *metres += f64::from(counted.count) * long / 1000.0;
            }
        }
    }
    let mut lines: Vec<Line> = sold.iter().map(|(size, counted)| bolt_line(*size, counted, figures)).collect();
    for (diameter, (count, metres)) in &rod {
        lines.push(rod_line(*diameter as f64 * TOLD_APART, *count, *metres, figures));
        *each.entry(*diameter).or_default() += count;
    }
    for (diameter, nuts) in &each {
        let d = *diameter as f64 * TOLD_APART;
        let bolted = nuts - rod.get(diameter).map_or(0, |(count, _)| 2 * count);
        let washers = 2 * (bolted + rod.get(diameter).map_or(0, |(count, _)| *count));
        lines.push(nut_line(d, *nuts, figures));
        lines.push(washer_line(d, washers, figures));
    }
    lines
}

/// A diameter in a word: `m12`.
fn word(diameter: f64) -> String {
    format!("m{diameter}").replace('.', "-")
}

/// Weight of a head or nut, kg: a hexagon, whose area is √3/2 of the square of its width across the flats.
fn hexagon_kg(d: f64, height: f64, hole: f64, figures: &Figures) -> f64 {
    let wide = d * figures.bolts.across_flats.value;
    let full = figures.bar_kg(wide, wide * 3.0_f64.sqrt() / 2.0, height);
    full - figures.rod_kg(hole, height)
}

fn bolt_line((diameter, length): Through, counted: &Counted, figures: &Figures) -> Line {
    let (d, length) = (diameter as f64 * TOLD_APART, length as f64 * TOLD_APART);
    let each = figures.rod_kg(d, length) + hexagon_kg(d, d * figures.bolts.head.value, 0.0, figures);
    let words: Vec<String> = counted.what.iter().map(|(what, count)| format!("{count} in {what}")).collect();
    let standing = if counted.habit { Standing::CommonPractice } else { Standing::Derived };
    Line {
        item: format!("bolt-{}x{length:.0}", word(d)),
        what: "bolts, hexagon head, galvanised".to_owned(),
        size: format!("M{d} × {length:.0} mm"),
        quantity: f64::from(counted.count),
        unit: Per::Each,
        kg: f64::from(counted.count) * each,
        counted: format!(
            "{}; longer by two washers, the nut and a turn of thread, then the next length sold",
            words.join("; ")
        ),
        source: format!("the bolts of the joints; {}", figures.bolts.lengths_source),
        standing: standing.to_string(),
        kind: if counted.habit { LineKind::Allowance } else { LineKind::Counted },
    }
}

fn rod_line(d: f64, count: u32, metres: f64, figures: &Figures) -> Line {
    Line {
        item: format!("rod-{}", word(d)),
        what: "threaded rod, galvanised, cut to length".to_owned(),
        size: format!("M{d}"),
        quantity: metres,
        unit: Per::Metre,
        kg: figures.rod_kg(d, metres * 1000.0),
        counted: format!("{count} where no bolt that is sold is long enough, a nut at either end"),
        source: "the bolts of the joints".to_owned(),
        standing: Standing::Derived.to_string(),
        kind: LineKind::Counted,
    }
}

fn nut_line(d: f64, count: u32, figures: &Figures) -> Line {
    Line {
        item: format!("nut-{}", word(d)),
        what: "nuts, galvanised".to_owned(),
        size: format!("M{d}"),
        quantity: f64::from(count),
        unit: Per::Each,
        kg: f64::from(count) * hexagon_kg(d, d * figures.bolts.nut.value, d, figures),
        counted: "one to a bolt, two to a length of rod".to_owned(),
        source: "the bolts of the joints".to_owned(),
        standing: Standing::Derived.to_string(),
        kind: LineKind::Counted,
    }
}

fn washer_line(d: f64, count: u32, figures: &Figures) -> Line {
    let bolts = &figures.bolts;
    let (wide, thick) = (d * bolts.washer_wide.value, d * bolts.washer_thick.value);
    Line {
        item: format!("washer-{}", word(d)),
        what: "washers for timber, galvanised".to_owned(),
        size: format!("M{d}, at least {wide:.0} mm wide and {thick:.1} mm thick"),
        quantity: f64::from(count),
        unit: Per::Each,
        kg: f64::from(count) * (figures.bar_kg(wide, wide, thick) - figures.rod_kg(d, thick)),
        counted: "two to a bolt".to_owned(),
        source: bolts.washer_wide.source.clone(),
        standing: bolts.washer_wide.standing.to_string(),
        kind: LineKind::Counted,
    }
}
