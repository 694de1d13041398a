//! The mitres of boards (`mitre-*`, `crown-*`, `box-*` of the reference file)
//! against the fascia and soffit boards of solved roofs.
//!
//! A fascia square to the rafters slopes 90° less the pitch from level, a
//! plumb one 90°, a soffit 0° (reference/geometry.md section 3, "Use in a
//! roof"). Pitches run from 5° to 80°, so a roof reaches every row but those
//! of boards that slope 5°: these go through the function that marks cuts.

use crate::common;
use crate::published::{Entry, Tally, family};
use crate::reading::{of_kind, solve, worst};
use geometry::{Angle, DVec3};
use job::{Job, Section, TailCut};
use roof::solution::{Member, MemberKind, SawSetting};

/// The exact figures beside the printed ones are written to four places.
const EXACT: f64 = 1e-4;

/// Distance from the middle of the plan to its corners, mm.
const RADIUS: f64 = 5000.0;

/// A roof over a regular plan, every wall at one pitch.
fn regular(sides: u32, pitch: f64) -> Job {
    let corner = |k: u32| {
        let a = Angle::deg(360.0 * f64::from(k) / f64::from(sides));
        [RADIUS * a.cos(), RADIUS * a.sin()]
    };
    let mut job = common::job_over(vec![(0..sides).map(corner).collect()], pitch);
    job.eaves.overhang = 400.0;
    job.timber.hip.size.depth = 300.0;
    job.timber.parts.fascia = Some(Section { thickness: 20.0, depth: 100.0 });
    job.timber.parts.soffit = Some(Section { thickness: 9.0, depth: 1000.0 });
    job
}

/// The settings for both ends of every board of a kind.
fn settings(job: &Job, kind: MemberKind) -> Vec<SawSetting> {
    let s = solve(job, &format!("{} walls at {}°", job.walls.len(), job.pitch_deg));
    let boards: Vec<&Member> = of_kind(&s, kind);
    assert_eq!(boards.len(), job.walls.len(), "one {} to every wall", kind.name());
    boards.iter().flat_map(|b| &b.cuts).filter(|c| c.against.is_some()).map(|c| c.saw).collect()
}

/// The setting for boards that slope so far from level, on a regular roof.
fn board(sides: u32, slope: f64) -> Vec<SawSetting> {
    let mut job = regular(sides, if slope > 0.0 && slope < 90.0 { 90.0 - slope } else { 30.0 });
    job.eaves.tail = if slope > 0.0 && slope < 90.0 { TailCut::Square } else { TailCut::Plumb };
    let kind = if slope > 0.0 { MemberKind::Fascia } else { MemberKind::Soffit };
    let all = settings(&job, kind);
    assert_eq!(all.len(), 2 * sides as usize, "every board of {sides} is mitred with both neighbours");
    all
}

/// The setting for boards that no roof has: by the plane that halves the
/// corner, in the axes of a board that slopes so.
fn by_marking(sides: u32, slope: f64) -> Vec<SawSetting> {
    let (half, lean) = (Angle::deg(180.0 / f64::from(sides)), Angle::deg(slope));
    let normal = DVec3::new(half.cos(), half.sin() * lean.cos(), half.sin() * lean.sin());
    vec![roof::mark(normal).saw]
}

/// The figure of an entry that is furthest from it.
fn figure(entry: &Entry, settings: &[SawSetting]) -> f64 {
    let tilt = entry.kind.contains("tilt");
    let all: Vec<f64> = settings.iter().map(|s| if tilt { s.tilt_deg } else { s.mitre_deg }).collect();
    worst(&all, entry.recomputed.expect("every row has its exact figure"), &entry.id)
}

#[test]
fn mitres_of_boards_read_as_the_saw_manuals_say() {
    let mut tally = Tally::default();
    let mut by_roof = 0;
    let mut known: Vec<(u32, f64, Vec<SawSetting>)> = Vec::new();
    for prefix in ["mitre-", "crown-", "box-"] {
        for entry in family(prefix) {
            let sides = entry.inputs["sides"].as_u64().map_or(4, |n| n as u32);
            let slope = entry.input("slope_from_horizontal_deg");
            let found = known.iter().position(|(n, s, _)| *n == sides && *s == slope).unwrap_or_else(|| {
                let reached = slope <= 0.0 || slope >= 10.0;
                known.push((sides, slope, if reached { board(sides, slope) } else { by_marking(sides, slope) }));
                known.len() - 1
            });
            by_roof += usize::from(slope <= 0.0 || slope >= 10.0);
            let got = figure(&entry, &known[found].2);
            let tolerance = entry.tolerance.as_f64().expect("every row has a tolerance");
            tally.check(&entry, "setting", got, entry.expected.as_f64().expect("a figure"), tolerance);
            tally.check(&entry, "exact setting", got, entry.recomputed.expect("an exact figure"), EXACT);
        }
    }
    assert_eq!(by_roof, 143, "rows read off a solved roof");
    tally.finish(&["mitre-", "crown-", "box-"], 2 * 153);
}
