//! What is for an engineer: the list is enforced, each with its reason.

use super::areas::RoofLoads;
use crate::actions::{self, Loads};
use crate::carrying::Carrying;
use crate::carrying::build::Units;
use crate::carrying::unit::Kind;
use job::{Carried, Feet, RidgeAs};
use roof::solution::{LineKind, MemberKind};
use serde::{Deserialize, Serialize};

/// Something that is for an engineer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Refused {
    /// For programs, e.g. `hip-long`.
    pub code: String,
    /// For people: what, and why.
    pub text: String,
    /// Marks, or what of the job it is.
    #[serde(rename = "where")]
    pub place: String,
}

/// Longest hip on its slope, mm. Limits of the simple models; engineering judgement, no source.
const HIP_LONG: f64 = 6000.0;
/// Longest span of a purlin between supports, mm.
const PURLIN_SPAN: f64 = 4500.0;
/// Longest span of a rafter in plan, mm.
const RAFTER_SPAN: f64 = 5000.0;
/// Longest span of a roof with collars, mm.
const COLLAR_SPAN: f64 = 5000.0;
/// Flattest pitch of a roof with collars, degrees.
const COLLAR_PITCH: f64 = 25.0;
/// Pitches outside are not covered, degrees.
const PITCHES: [f64; 2] = [15.0, 60.0];
/// Pitches that meet on a hip may differ by so much, degrees.
const PITCHES_DIFFER: f64 = 10.0;
/// Struts stand at least so steep, degrees.
const STRUT_STEEP: f64 = 45.0;
/// Widest opening that is trimmed by rule, mm.
const OPENING_WIDE: f64 = 1200.0;
/// Most rafters that an opening cuts.
const RAFTERS_CUT: usize = 3;

struct List(Vec<Refused>);

impl List {
    fn add(&mut self, code: &str, place: impl Into<String>, text: impl Into<String>) {
        self.0.push(Refused {
            code: code.to_owned(),
            text: format!("Needs an engineer: {}.", text.into()),
            place: place.into(),
        });
    }
}

/// All that is for an engineer before any figure is worked out.
#[must_use]
pub fn refused(
    roof: &Carrying<'_>,
    units: &Units,
    carried: &Carried,
    roof_loads: &RoofLoads,
    loads: &Loads,
) -> Vec<Refused> {
    let mut list = List(Vec::new());
    for refusal in actions::refusals(loads, &roof_loads.site) {
        list.0.push(Refused { code: refusal.code, text: refusal.text, place: "loads".to_owned() });
    }
    for [pitch, from, to] in &roof_loads.untabled {
        let text =
            format!("wind on a hipped roof is tabled from {from:.0}° to {to:.0}°, and a slope stands at {pitch:.0}°");
        list.add("wind-pitch", "loads", format!("{text}; it is taken as on a gabled roof"));
    }
    if carried.panels {
        list.add("panels", "loads", "panels or plant on the slopes load timbers that are cut for the roof alone");
    }
    if !roof.job.strong.graded {
        list.add("ungraded", "strength", "timber without a grade stamp has no strength class");
    }
    if roof.job.strong.feet == Feet::Held {
        list.add(
            "feet-held",
            "strength",
            "that the walls hold the feet of the rafters is for whoever answers for the walls to show",
        );
    }
    for slope in &roof.slopes {
        if !(PITCHES[0]..=PITCHES[1]).contains(&slope.pitch_deg) {
            let text =
                format!("a pitch of {:.0}° is outside {:.0}° to {:.0}°", slope.pitch_deg, PITCHES[0], PITCHES[1]);
            list.add("pitch", slope.walls.join(", "), text);
        }
    }
    timbers(roof, units, &mut list);
    form(roof, &mut list);
    list.0
}

/// What the form of the roof says.
fn form(roof: &Carrying<'_>, list: &mut List) {
    let solution = roof.solution;
    if !roof.job.dormers.is_empty() {
        list.add("dormer", "dormers", "what a dormer brings on the trimming rafters is not followed here");
    }
    for line in solution.lines.iter().filter(|l| l.kind == LineKind::Hip) {
        let pitch = |id: &String| solution.faces.iter().find(|f| f.id == *id).map_or(0.0, |f| f.pitch_deg);
        let differ = line.faces.iter().map(pitch).fold([f64::INFINITY, 0.0_f64], |[a, b], p| [a.min(p), b.max(p)]);
        if differ[1] - differ[0] > PITCHES_DIFFER {
            let text = format!("the pitches on either side of the hip differ by {:.0}°", differ[1] - differ[0]);
            list.add("hip-pitches", line.faces.join(", "), text);
        }
    }
    for opening in &solution.openings {
        let [a, b, ..] = opening.outline;
        let wide = ((b[0] - a[0]) * (b[0] - a[0]) + (b[1] - a[1]) * (b[1] - a[1])).sqrt();
        if wide > OPENING_WIDE && opening.kind != "hatch" {
            list.add(
                "opening-wide",
                &opening.name,
                format!("the opening is {wide:.0} mm wide, more than {OPENING_WIDE:.0} mm"),
            );
        }
        // Each rafter that is cut leaves one piece below and one above.
        if opening.cut.len() > 2 * RAFTERS_CUT {
            list.add("opening-rafters", &opening.name, format!("the opening cuts more than {RAFTERS_CUT} rafters"));
        }
    }
}

/// What the timbers say.
fn timbers(roof: &Carrying<'_>, units: &Units, list: &mut List) {
    let mark = |run: usize| roof.runs[run].mark.clone();
    for timber in &units.not_held {
        let run = &roof.runs[timber.run];
        // Binders that hang from nothing only steady the joists under them; short pieces beside a hip end on a tie.
        let steadies = run.kind == MemberKind::Binder;
        if steadies {
            continue;
        }
        let places = if timber.places == 0 { "nothing" } else { "one place only" };
        list.add("not-held", mark(timber.run), format!("it rests on {places}"));
    }
    for unit in &units.units {
        if let Kind::Pair { left, right } = unit.kind {
            let marks = format!("{}, {}", mark(left), mark(right));
            if unit.needs_held {
                list.add("untied", &marks, "no tie, purlin or ridge beam keeps the feet of this pair from spreading");
            }
            pair_with_collar(roof, unit.pieces.iter().map(|p| p.run), [left, right], &marks, list);
        }
        spans(roof, unit, list);
    }
    for run in &roof.runs {
        match run.kind {
            MemberKind::HipRafter | MemberKind::ValleyRafter if run.pitch_line[1] - run.pitch_line[0] > HIP_LONG => {
                let long = (run.pitch_line[1] - run.pitch_line[0]) / 1000.0;
                list.add(
                    "hip-long",
                    &run.mark,
                    format!("it is {long:.1} m long, more than {:.0} m", HIP_LONG / 1000.0),
                );
            }
            MemberKind::Strut => {
                let steep = geometry::Angle::from_sin(run.along.z.abs().min(1.0)).to_deg();
                if steep < STRUT_STEEP {
                    list.add(
                        "strut-flat",
                        &run.mark,
                        format!("it stands at {steep:.0}°, flatter than {STRUT_STEEP:.0}°"),
                    );
                }
            }
            _ => {}
        }
    }
    if roof.job.strong.ridge == RidgeAs::Board
        && roof.runs.iter().any(|r| r.kind == MemberKind::HipRafter)
        && !units.units.iter().any(|u| matches!(u.kind, Kind::Pair { .. }))
    {
        list.add("hips-alone", "hips", "no pair of rafters holds up the heads of the hips");
    }
}

fn pair_with_collar(
    roof: &Carrying<'_>,
    runs: impl Iterator<Item = usize>,
    [left, right]: [usize; 2],
    marks: &str,
    list: &mut List,
) {
    let mut collars = runs.filter(|r| roof.runs[*r].kind == MemberKind::Collar);
    let Some(collar) = collars.next() else { return };
    let span: f64 = [left, right]
        .iter()
        .map(|r| {
            let [a, b] = roof.runs[*r].ends;
            a.truncate().distance(b.truncate())
        })
        .sum();
    if span > COLLAR_SPAN {
        let text = format!("a roof with collars spans {:.1} m, more than {:.0} m", span / 1000.0, COLLAR_SPAN / 1000.0);
        // With purlins or ties the collar is a help and not what the roof stands by.
        let helped = roof.contacts[left].iter().any(|c| roof.runs[c.other].kind == MemberKind::Purlin);
        if !helped {
            list.add("collar-span", marks, text);
        }
    }
    let [foot, head] = roof.runs[left].ends;
    let share = (roof.runs[collar].at(0.0).z - foot.z) / (head.z - foot.z);
    let helped = roof.contacts[left]
        .iter()
        .any(|c| matches!(roof.runs[c.other].kind, MemberKind::Purlin | MemberKind::CeilingJoist));
    if share > 0.5 && !helped {
        list.add("collar-high", marks, "the collar is above half the rise and is no tie");
    }
    let pitch = geometry::Angle::from_sin(roof.runs[left].along.z.abs().min(1.0)).to_deg();
    if pitch < COLLAR_PITCH {
        list.add(
            "collar-flat",
            marks,
            format!("a roof with collars of {pitch:.0}° is flatter than {COLLAR_PITCH:.0}°"),
        );
    }
}

fn spans(roof: &Carrying<'_>, unit: &crate::carrying::unit::Unit, list: &mut List) {
    let held = |node: usize| unit.frame.supports.iter().any(|s| s.node == node) || unit.apex == Some(node);
    let mut from: Option<(usize, f64)> = None;
    for (bar, piece) in unit.pieces.iter().enumerate() {
        let run = &roof.runs[piece.run];
        let part = unit.frame.bars[bar];
        if from.is_none_or(|(r, _)| r != piece.run) {
            from = None;
        }
        if held(part.from) {
            from = Some((piece.run, piece.from));
        }
        let Some((_, start)) = from else { continue };
        if !held(part.to) {
            continue;
        }
        let level = (1.0 - run.along.z * run.along.z).max(0.0).sqrt();
        let span = (piece.to - start) * level;
        let (most, code) = match run.kind {
            MemberKind::Purlin => (PURLIN_SPAN, "purlin-span"),
            MemberKind::CommonRafter
            | MemberKind::TrimmingRafter
            | MemberKind::JackRafter
            | MemberKind::CrownRafter => (RAFTER_SPAN, "rafter-span"),
            _ => continue,
        };
        if span > most {
            let text = format!("it spans {:.1} m in plan, more than {:.1} m", span / 1000.0, most / 1000.0);
            list.add(code, &run.mark, text);
        }
    }
}
