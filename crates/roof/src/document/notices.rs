//! Notices: what the carpenter must know before cutting.

use super::survey;
use crate::frame::Frame;
use crate::frame::timber::{CutUse, EndOn, Role, Timber, TimberId};
use crate::rules;
use crate::solution::{CutPlace, Member, MemberKind, Notice, NoticeLevel};
use crate::verify::Bearings;
use geometry::Angle;
use geometry::surface::{Surface, SurfaceWarning, WallId};
use job::{Fascia, Job};

/// Rounding of a depth against its limit, as a share of the depth.
const SHARE_ROUNDING: f64 = 1e-9;

/// Steps in the fascia smaller than this are not worth a word, mm.
const FASCIA_STEP: f64 = 1.0;

/// A line longer than this that carries no timber is more than a stub, mm.
const LONGEST_STUB: f64 = 500.0;

struct List<'a> {
    job: &'a Job,
    out: Vec<Notice>,
}

impl List<'_> {
    fn add(&mut self, level: NoticeLevel, code: &str, place: impl Into<String>, text: impl Into<String>) {
        self.out.push(Notice { code: code.into(), level, text: text.into(), place: place.into() });
    }

    fn letter(&self, wall: WallId) -> &str {
        self.job.walls.get(wall.index()).map_or("", |w| w.letter.as_str())
    }
}

/// All notices of a frame, the gravest first.
pub fn of(
    job: &Job,
    surface: &Surface,
    frame: &Frame,
    bearings: &Bearings,
    built: &[(TimberId, &Timber, &Member)],
    remarks: Vec<Notice>,
) -> Vec<Notice> {
    let mut list = List { job, out: remarks };
    list.out.extend(survey::notices(job));
    of_surface(&mut list, surface);
    birdsmouths(&mut list, built);
    depths(&mut list, built);
    fascia(&mut list, frame);
    leaning_hips(&mut list, surface, built);
    purlins(&mut list, built);
    left_out(&mut list, frame);
    bearing(&mut list, bearings, built);
    // With loads in the job there are results of its own, with their cautions.
    if job.carried.is_none() {
        list.add(
            NoticeLevel::Note,
            "strength-not-checked",
            "whole roof",
            "Sizes and centres are as given in the job: their strength is not checked here. Building control and, where \
             they ask for one, a structural engineer decide.",
        );
    }
    list.out.sort_by_key(|n| n.level);
    list.out
}

fn of_surface(list: &mut List, surface: &Surface) {
    for warning in &surface.warnings {
        match warning {
            SurfaceWarning::FlatterTookOver { steeper, flatter, height, .. } => {
                let (s, f) = (list.letter(*steeper).to_string(), list.letter(*flatter).to_string());
                list.add(
                    NoticeLevel::Warn,
                    "pitch-break",
                    format!("walls {s} and {f}"),
                    format!(
                        "The slopes of walls {s} and {f} run the same way at different pitches and meet: the flatter \
                         one ({f}) carries on up, and {s} ends in a level break {height:.0} mm above the plates. Give \
                         both walls one pitch if a single slope is wanted."
                    ),
                );
            }
            SurfaceWarning::UprightCheek { wall, .. } => {
                let w = list.letter(*wall).to_string();
                list.add(
                    NoticeLevel::Warn,
                    "gable-carried-up",
                    format!("wall {w}"),
                    format!(
                        "The gable of wall {w} stands beside a re-entrant corner: it is carried up inside the plan and \
                         the lower roof abuts it. Allow for the flashing."
                    ),
                );
            }
            SurfaceWarning::Regularised { wall, moved } => {
                let w = list.letter(*wall).to_string();
                list.add(
                    NoticeLevel::Note,
                    "plan-trued",
                    format!("wall {w}"),
                    format!("Wall {w} was trued up by {moved:.1} mm, to run in line or parallel with another wall."),
                );
            }
        }
    }
}

fn birdsmouths(list: &mut List, built: &[(TimberId, &Timber, &Member)]) {
    let mut told: Vec<String> = Vec::new();
    let third = rules::of(&list.job.region).get(rules::Id::BirdsmouthThird);
    for (_, _, m) in built {
        let Some(b) = m.birdsmouth else { continue };
        let share = b.depth_mm / m.size.depth_mm;
        if share <= third.value + SHARE_ROUNDING {
            continue;
        }
        let rafter = m.drop_mm.is_none() && !matches!(m.kind, MemberKind::HipRafter | MemberKind::ValleyRafter);
        let key =
            if rafter { format!("wall {}", m.wall.clone().unwrap_or_default()) } else { m.kind.name().to_string() };
        if told.contains(&key) {
            continue;
        }
        told.push(key.clone());
        let left = m.size.depth_mm - b.depth_mm;
        let percent = share * 100.0;
        let depth = b.depth_mm;
        if rafter {
            list.add(
                NoticeLevel::Warn,
                "birdsmouth-deep",
                key,
                format!(
                    "The birdsmouth of {} is {depth:.0} mm deep, {percent:.0} % of the rafter: more than a third. \
                     Use a deeper rafter or a smaller birdsmouth {}.",
                    m.mark,
                    third.quote()
                ),
            );
        } else {
            list.add(
                NoticeLevel::Note,
                "birdsmouth-deep",
                key,
                format!(
                    "The birdsmouth of {} is {depth:.0} mm deep, {percent:.0} % of its depth, so that its top comes \
                     level with the rafters; {left:.0} mm are left above the plate.",
                    m.mark
                ),
            );
        }
    }
}

/// Ridges and hips must take the whole cut of the rafters against them (common
/// practice; IRC R802.4.3 as reproduced, reference/geometry.md 6.2).
fn depths(list: &mut List, built: &[(TimberId, &Timber, &Member)]) {
    let rafter = list.job.timber.rafter.size.depth;
    let cut = |m: &Member| rafter / Angle::deg(m.pitch_deg).cos();
    for (id, t, m) in built {
        let have = match m.kind {
            MemberKind::RidgeBoard | MemberKind::Purlin => m.size.depth_mm,
            MemberKind::HipRafter => {
                t.top_offset - t.under_offset - t.drop.map_or_else(|| backing_depth(t, m), |_| 0.0)
            }
            _ => continue,
        };
        let need = built
            .iter()
            .filter(|(_, o, _)| {
                o.is_rafter() && o.cuts.iter().any(|c| c.purpose == CutUse::Against(*id) && c.at == CutPlace::Head)
            })
            .map(|(_, _, o)| cut(o))
            .fold(0.0, f64::max);
        if need > have + 0.5 {
            let kind = m.kind.name();
            list.add(
                NoticeLevel::Warn,
                "too-shallow-for-its-rafters",
                m.mark.clone(),
                format!(
                    "The {kind} {} offers {have:.0} mm of upright face, but the cuts of the rafters against it are \
                     {need:.0} mm: use a deeper {kind}.",
                    m.mark
                ),
            );
        }
    }
}

/// What backing takes off the side of a hip, plumb, mm.
fn backing_depth(t: &Timber, m: &Member) -> f64 {
    let slope = (1.0 + t.slope * t.slope).sqrt();
    m.backing_deg.map_or(0.0, |b| (0..2).map(|k| t.half[1 - k] * Angle::deg(b[k]).tan() * slope).fold(0.0, f64::max))
}

fn fascia(list: &mut List, frame: &Frame) {
    if list.job.eaves.fascia != Fascia::Fixed {
        return;
    }
    let falls: Vec<(f64, String)> = list
        .job
        .walls
        .iter()
        .enumerate()
        .filter(|(_, w)| !w.gable)
        .map(|(k, w)| (frame.heights.overhang[k] * Angle::deg(w.pitch_deg).tan(), w.letter.clone()))
        .collect();
    let low = falls.iter().max_by(|a, b| a.0.total_cmp(&b.0));
    let high = falls.iter().min_by(|a, b| a.0.total_cmp(&b.0));
    if let (Some(low), Some(high)) = (low, high) {
        let step = low.0 - high.0;
        if step > FASCIA_STEP {
            list.add(
                NoticeLevel::Warn,
                "fascia-step",
                format!("walls {} and {}", low.1, high.1),
                format!(
                    "With fixed overhangs the fascia is not level: at wall {} it is {step:.0} mm lower than at wall \
                     {}. Use `fascia = \"level\"` for one line all round.",
                    low.1, high.1
                ),
            );
        }
    }
}

/// A hip that leans past square to one of its eaves: jacks on that side near
/// the corner never reach it (reference/geometry.md 5.5).
fn leaning_hips(list: &mut List, surface: &Surface, built: &[(TimberId, &Timber, &Member)]) {
    for (_, t, m) in built {
        if t.kind != MemberKind::HipRafter || t.tails.len() != 2 {
            continue;
        }
        for (k, tail) in t.tails.iter().enumerate() {
            // Away from the corner along the eaves on this side.
            let along = if k == 0 { -tail.plane.inward.perp() } else { tail.plane.inward.perp() };
            let lean = Angle::from_cos(t.dir.dot(along)).to_deg();
            if lean > 90.0 + 1e-6 {
                let corner = surface.loops.iter().flatten().find(|c| (**c - t.foot).length() < 1.0);
                let w = list.letter(tail.wall).to_string();
                let place = corner.map_or_else(|| m.mark.clone(), |c| format!("corner ({:.0}, {:.0})", c.x, c.y));
                list.add(
                    NoticeLevel::Warn,
                    "hip-leans-past-square",
                    place,
                    format!(
                        "{} runs at {lean:.1}° to the eaves of wall {w}, past square: rafters of {w} next to this \
                         corner never reach the hip, and its top is hollow on that side. Bring the two pitches nearer \
                         to one another.",
                        m.mark
                    ),
                );
            }
        }
    }
}

fn purlins(list: &mut List, built: &[(TimberId, &Timber, &Member)]) {
    for (_, _, m) in
        built.iter().filter(|(_, t, _)| t.kind == MemberKind::Purlin && matches!(t.role, Role::Spine { .. }))
    {
        list.add(
            NoticeLevel::Warn,
            "break-needs-support",
            m.mark.clone(),
            format!(
                "{} carries the rafters above and below a break in pitch: it needs its own support from below. A \
                 structural engineer decides its size and props.",
                m.mark
            ),
        );
    }
}

fn left_out(list: &mut List, frame: &Frame) {
    let lines = |t: &&Timber| t.gone && matches!(t.role, Role::Spine { .. });
    for t in frame.timbers.iter().filter(lines) {
        if t.run > LONGEST_STUB {
            let (kind, head) = (t.kind.name(), t.head());
            list.add(
                NoticeLevel::Warn,
                "line-without-timber",
                format!("({:.0}, {:.0})", t.foot.x, t.foot.y),
                format!(
                    "There is no room for a {kind} from here to ({:.0}, {:.0}), beside the timbers next to it: rafters \
                     that end on its line are to be run on or blocked to what stands there, on site.",
                    head.x, head.y
                ),
            );
            continue;
        }
        list.add(
            NoticeLevel::Note,
            "too-short-to-frame",
            format!("({:.0}, {:.0})", t.foot.x, t.foot.y),
            format!("The {} here would be too short to fix and is left out: block the joint solid.", t.kind.name()),
        );
    }
}

/// Ends that touch nothing they were cut against.
fn bearing(list: &mut List, bearings: &Bearings, built: &[(TimberId, &Timber, &Member)]) {
    for (id, t, m) in built {
        if t.kind == MemberKind::WallPlate || t.kind == MemberKind::RidgeBoard || matches!(t.role, Role::Fitted { .. })
        {
            continue;
        }
        for (end_on, place) in t.ends.iter().zip([CutPlace::Foot, CutPlace::Head]) {
            if *end_on == EndOn::Wall {
                continue;
            }
            let touched =
                t.cuts.iter().zip(&bearings.touches[id.index()]).any(|(c, touch)| c.at == place && touch.is_some());
            if !touched && !carries_end(bearings, built, *id, place, t) {
                let end = if place == CutPlace::Head { "head" } else { "foot" };
                list.add(
                    NoticeLevel::Warn,
                    "no-bearing",
                    m.mark.clone(),
                    format!("The {end} of {} bears on nothing: pack or block it to its neighbours.", m.mark),
                );
            }
        }
    }
}

/// Whether another timber is cut against this one near the given end.
fn carries_end(
    bearings: &Bearings,
    built: &[(TimberId, &Timber, &Member)],
    id: TimberId,
    place: CutPlace,
    t: &Timber,
) -> bool {
    let end = if place == CutPlace::Head { t.head() } else { t.foot };
    built.iter().any(|(other, o, _)| {
        o.cuts.iter().zip(&bearings.touches[other.index()]).any(|(c, touch)| {
            let here = if c.at == CutPlace::Head { o.head() } else { o.foot };
            *touch == Some(id) && (here - end).length() < 4.0 * t.section.thickness.max(o.section.thickness)
        })
    })
}
