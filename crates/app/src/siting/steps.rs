//! The steps of putting up, worded.

use super::words::{people, runs};
use crate::views::{SiteBar, SiteHold, SiteStep, SiteSteps, SiteStrap, SiteTimbers};
use crate::wording::Writing;
use crate::wording::kind;
use job::written::{degrees, tenth};
use job::{Job, TickState};
use roof::solution::MemberKind;
use site::sequence::{
    Brace, BraceCut, BraceWay, End, Hold, Prop, PropFoot, PuttingUp, Racking, Standing, Step, StrapKind, StrapPlace,
};
use site::whole::Site;
use std::collections::BTreeMap;

/// All steps.
pub(super) fn of(job: &Job, site: &Site, writing: &Writing) -> SiteSteps {
    let Some(up) = &site.putting_up else {
        let why = site.putting_up_refused.as_deref().unwrap_or("no order of work was found");
        return SiteSteps {
            refused: Some(format!("{} Who puts the roof up works the order out.", writing.sentence(why))),
            steps: Vec::new(),
            straps: Vec::new(),
            cautions: Vec::new(),
        };
    };
    let kinds = site.lifts.iter().map(|lift| (lift.mark.as_str(), lift.kind)).collect();
    let telling = Telling { job, up, kinds, writing };
    let caution = |one: &site::sequence::Caution| {
        format!("{} Who decides: {}.", writing.sentence(&one.text), writing.say(&one.decides))
    };
    SiteSteps {
        refused: None,
        steps: up.steps.iter().map(|step| telling.step(step)).collect(),
        straps: up.straps.iter().map(|one| strap(one, writing)).collect(),
        cautions: up.cautions.iter().map(caution).collect(),
    }
}

struct Telling<'a> {
    job: &'a Job,
    up: &'a PuttingUp,
    kinds: BTreeMap<&'a str, MemberKind>,
    writing: &'a Writing,
}

impl Telling<'_> {
    fn step(&self, step: &Step) -> SiteStep {
        let writing = self.writing;
        let named =
            |names: &[String], what: &str| names.iter().map(|name| format!("{what} {name}")).collect::<Vec<_>>();
        let mut set: Vec<SiteBar> = Vec::new();
        set.extend(self.up.props.iter().filter(|one| step.props_set.contains(&one.name)).map(|one| prop(one, writing)));
        set.extend(
            self.up.braces.iter().filter(|one| step.braces_set.contains(&one.name)).map(|one| brace(one, writing)),
        );
        let permanent = self.up.permanent.iter().filter(|one| step.permanent_set.contains(&one.name));
        set.extend(permanent.map(|one| racking(one, writing)));
        let mut out = named(&step.props_out, "prop");
        out.extend(named(&step.braces_out, "brace"));
        let fixed = step
            .members
            .iter()
            .filter(|mark| self.job.done.get(*mark).is_some_and(|ticked| matches!(ticked.state, TickState::Fixed)));
        let (fixed, all) = (fixed.count(), step.members.len());
        let now = |steps: [u32; 2]| (steps[0]..=steps[1]).contains(&step.number);
        SiteStep {
            number: step.number,
            title: writing.say_first(&step.title),
            hands: people(step.hands),
            lifting: step.lifting().iter().map(|words| writing.sentence(words)).collect(),
            timbers: self.timbers(&step.members),
            order: step.members.clone(),
            ticked: (all > 0).then(|| format!("{fixed} of {all} ticked as fixed")),
            all_ticked: all > 0 && fixed == all,
            strips: step.strips.clone(),
            set,
            out: out.iter().map(|one| writing.say(one)).collect(),
            why: writing.sentence(&step.why),
            hazard: writing.sentence(&step.hazard),
            holds: self
                .up
                .holds
                .iter()
                .filter(|one| step.holds.contains(&one.number))
                .map(|one| hold(one, writing))
                .collect(),
            no_stack: self
                .up
                .no_stack
                .iter()
                .filter(|one| now(one.steps))
                .map(|one| format!("{}: {}", writing.say_first(&one.at), writing.sentence(&one.why)))
                .collect(),
        }
    }

    /// Marks by kind, the kind that is fixed first before the others.
    fn timbers(&self, marks: &[String]) -> Vec<SiteTimbers> {
        let mut groups: Vec<(Option<MemberKind>, Vec<&str>)> = Vec::new();
        for mark in marks {
            let of = self.kinds.get(mark.as_str()).copied();
            match groups.iter_mut().find(|(known, _)| *known == of) {
                Some((_, marks)) => marks.push(mark),
                None => groups.push((of, vec![mark])),
            }
        }
        let named =
            |of: Option<MemberKind>| of.map_or_else(|| self.writing.say("Timber"), |of| kind(self.writing.words, of));
        groups.into_iter().map(|(of, marks)| SiteTimbers { kind: named(of), marks: runs(&marks) }).collect()
    }
}

fn prop(prop: &Prop, writing: &Writing) -> SiteBar {
    let end = match prop.from_end {
        End::Foot => "foot",
        End::Head => "head",
    };
    let what = format!("prop under {}, {} from its {end}", prop.under, writing.length(prop.from_end_mm));
    let (height, note) = match prop.from {
        PropFoot::PlateLevel => (
            "height from plate level",
            "Add to both lengths what the floor that it stands on lies below the plates, as measured.",
        ),
        PropFoot::Joists => ("height from the boards on the joists", ""),
        PropFoot::InPlace => {
            ("height, at least", "Measure it in place: its foot stands on the scaffold, the floor or the ground.")
        }
    };
    let figures = vec![
        writing.figure(height, writing.length(prop.height_mm)),
        writing.figure("cut to", writing.length(prop.cut_mm)),
        writing.figure("cut at its top, from square", degrees(prop.head_cut_deg)),
    ];
    SiteBar { name: prop.name.clone(), what: writing.say_first(&what), figures, note: writing.say(note) }
}

fn brace(brace: &Brace, writing: &Writing) -> SiteBar {
    let way = match brace.way {
        BraceWay::Along => "along",
        BraceWay::Across => "across",
    };
    let foot = if brace.to_mark.is_empty() { "the floor at the level of the plates" } else { &brace.to_mark };
    let what = format!(
        "brace {way} {}, down to {foot}, {}",
        brace.from_mark,
        writing.section(brace.size.thickness_mm, brace.size.depth_mm)
    );
    let figures = vec![
        writing.figure("point to point", writing.length(brace.length_mm)),
        writing.figure("slope from level", degrees(brace.slope_deg)),
        writing.figure("cut at its head", cut(brace.head_cut)),
        writing.figure("cut at its foot", cut(brace.foot_cut)),
    ];
    SiteBar { name: brace.name.clone(), what: writing.say_first(&what), figures, note: String::new() }
}

/// The two angles of a cut, from square.
fn cut(cut: BraceCut) -> String {
    format!("{} on the face, {} on the edge", degrees(cut.face_angle_deg), degrees(cut.edge_angle_deg))
}

fn racking(one: &Racking, writing: &Writing) -> SiteBar {
    let what = format!(
        "diagonal under the rafters of wall {}, {}; it stays",
        one.wall,
        writing.section(one.size.thickness_mm, one.size.depth_mm)
    );
    let nailed = one.nailed.iter().map(|at| format!("{} at {}", at.mark, writing.length(at.along_mm)));
    let figures = vec![
        writing.figure("length", writing.length(one.length_mm)),
        writing.figure("angle on the slope", degrees(one.angle_deg)),
        writing.figure("nails at each crossing", one.nails_each.to_string()),
    ];
    let note = format!("Nailed, from its lower end: {}.", nailed.collect::<Vec<_>>().join(", "));
    SiteBar { name: one.name.clone(), what: writing.say_first(&what), figures, note: writing.say(&note) }
}

fn hold(hold: &Hold, writing: &Writing) -> SiteHold {
    let tolerance = match hold.tolerance {
        Some(mm) if hold.per_metre => format!("± {} mm in each metre", tenth(mm)),
        Some(mm) => format!("± {}", writing.length(mm)),
        None => "by eye".to_owned(),
    };
    SiteHold {
        number: hold.number,
        what: writing.sentence(&hold.what),
        at: writing.say_first(&hold.at),
        figure: hold.figure_mm.map(|mm| writing.length(mm)),
        tolerance: writing.say(&tolerance),
        basis: writing.say_first(basis(hold.standing)),
    }
}

const fn basis(standing: Standing) -> &'static str {
    match standing {
        Standing::Published => "tolerance as published",
        Standing::Memory => "tolerance from memory: look it up before it is relied upon",
        Standing::Derived => "tolerance worked out",
        Standing::CommonPractice => "tolerance by usual practice",
    }
}

fn strap(strap: &StrapPlace, writing: &Writing) -> SiteStrap {
    let does = match strap.kind {
        StrapKind::HoldingDown => "holding the plate down",
        StrapKind::LateralSlope => "holding the gable to the slope",
        StrapKind::LateralCeiling => "holding the gable to the ceiling joists",
    };
    let marks: Vec<String> = strap.at_mm.iter().map(|mm| writing.lengths.write(*mm)).collect();
    let about = match strap.standing {
        Standing::Published => "spacing as published",
        Standing::Memory => "spacing from memory: look it up",
        Standing::Derived => "spacing worked out",
        Standing::CommonPractice => "spacing by usual practice",
    };
    SiteStrap {
        what: writing.say_first(&format!("wall {}, {does}: {} straps", strap.wall, strap.at_mm.len())),
        marks: writing.say_first(&format!("from {}: {}", strap.from, marks.join(", "))),
        about: writing
            .say_first(&format!("{}, {about}", writing.section(strap.size.thickness_mm, strap.size.depth_mm))),
    }
}
