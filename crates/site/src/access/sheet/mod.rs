//! The statements about access of one job.

mod around;
mod climbing;
mod days;
mod loads;
mod standing;

use super::layout::{Layout, layout};
use super::loading::{BayCheck, OnBay, Stack, check_bay};
use super::rules::{Figure, Needed, Rules};
use super::statement::{Basis, Row, Section, Statement};
use super::{AccessFault, figures};
use crate::programme::Programme;
use job::Job;
use job::written::Lengths;
use roof::solution::{MemberKind, Solution};
use serde::{Deserialize, Serialize};

/// Lengths that are worked out are given to this, mm: nobody sets out a scaffold finer.
const STEP_MM: f64 = 10.0;
/// The same where lengths are in feet and inches: an inch, mm.
const STEP_INCH: f64 = 25.4;
/// What a length may be over a step and still be taken as that step, in steps: the rounding of sums.
const STEP_PLAY: f64 = 1e-6;
/// Millimetres in a metre.
pub(super) const M: f64 = 1000.0;

/// Access of a job: what stands round it, what it carries, and all that is said of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Access {
    /// What stands round the roof.
    pub layout: Layout,
    /// One bay with the people and the stack on it; absent for a roof without rafters.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub bay: Option<BayCheck>,
    /// The stack that was checked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub stack: Option<Stack>,
    /// People on one platform at once.
    pub people: u32,
    /// Ladder to the highest platform: its length, and how far out its foot stands, mm.
    pub ladder_mm: [f64; 2],
    /// What is said, by subject.
    pub sections: Vec<Section>,
    /// Who decides.
    pub cautions: Vec<String>,
}

impl Access {
    /// A statement or question by its name.
    #[must_use]
    pub fn row(&self, id: &str) -> Option<&Row> {
        self.sections.iter().flat_map(|section| &section.rows).find(|row| row.id() == id)
    }
}

/// What the statements are made from.
struct Facts<'a> {
    job: &'a Job,
    solution: &'a Solution,
    rules: &'a Rules,
    layout: &'a Layout,
    programme: &'a Programme,
    stack: Option<&'a Stack>,
    bay: Option<&'a BayCheck>,
    people: u32,
    ladder: [f64; 2],
    lengths: Lengths,
}

/// The access of a job, with its hire and inspections from the programme.
///
/// # Errors
/// A region without figures.
pub fn access(job: &Job, solution: &Solution, programme: &Programme) -> Result<Access, AccessFault> {
    let rules = Rules::of(&job.region)?;
    let layout = layout(job, solution)?;
    let stack = stack(job, solution, rules)?;
    let people = job.access.people.unwrap_or(job.programme.crew.max(job.programme.roofers)).max(1);
    let bay = match (rules.class(job.access.class), &stack) {
        (Some(class), Some(stack)) => Some(check_bay(
            class,
            &OnBay {
                stack,
                people,
                person_kg: rules.need(Needed::Person)?.own(),
                bay_m: layout.bay_mm / M,
                width_m: layout.width_mm / M,
                patch_m: rules.get("patch-length").map_or(0.5, |figure| figure.own() / M),
            },
        )),
        _ => None,
    };
    let above = rules.need(Needed::LadderAbove)?.own();
    let (length, out) = figures::ladder(layout.highest_mm, above, rules.need(Needed::LadderAngle)?.own());
    let facts = Facts {
        job,
        solution,
        rules,
        layout: &layout,
        programme,
        stack: stack.as_ref(),
        bay: bay.as_ref(),
        people,
        ladder: [length, out],
        lengths: Lengths::from_show(&solution.show),
    };
    let sections = vec![
        Section::new("What stands round the roof", standing::rows(&facts)?),
        Section::new("What it carries", loads::rows(&facts)?),
        Section::new("Getting up", climbing::rows(&facts)?),
        Section::new("Ground, passers-by and what falls", around::rows(&facts)?),
        Section::new("Days, weather and rescue", days::rows(&facts)?),
    ];
    let cautions = cautions(job);
    Ok(Access { sections, cautions, bay, stack, people, ladder_mm: [length, out], layout })
}

/// The heaviest stack that comes up: so many of the rafter of which there are most, as stock.
fn stack(job: &Job, solution: &Solution, rules: &Rules) -> Result<Option<Stack>, AccessFault> {
    let rafter = |kind| matches!(kind, MemberKind::CommonRafter | MemberKind::CrownRafter | MemberKind::JackRafter);
    let pieces = solution.pieces.iter().filter(|piece| rafter(piece.kind));
    let Some(most) = pieces.max_by_key(|piece| piece.count) else { return Ok(None) };
    let Some(member) = solution.members.iter().find(|member| member.mark == most.mark) else { return Ok(None) };
    let density = rules.need(Needed::Density)?.own();
    let m3 = member.size.thickness_mm / M * member.size.depth_mm / M * member.stock_length_mm / M;
    Ok(Some(Stack {
        what: format!("{} {}", most.kind.name(), most.mark),
        pieces: job.access.stack,
        length_mm: member.stock_length_mm,
        kg: m3 * density * f64::from(job.access.stack),
    }))
}

fn cautions(job: &Job) -> Vec<String> {
    let mut list = vec![
        "The scaffold is designed, put up, changed and taken down by who is competent to; the designer and the handover certificate say what it carries, not this sheet.".to_owned(),
        "The principal contractor or who is in charge of the site decides who goes up, and when work stops. Rules of the place come first.".to_owned(),
        "Figures marked as from memory are there to be looked up: nothing is passed by them.".to_owned(),
    ];
    if job.region == "us" {
        list.push("State plans may ask for more than the federal figures.".to_owned());
    }
    list
}

impl Facts<'_> {
    fn length(&self, mm: f64) -> String {
        self.lengths.write_with_unit(mm)
    }

    /// A length that is worked out, to what a tape on site is read to.
    fn about(&self, mm: f64) -> String {
        self.length((mm / self.step()).round() * self.step())
    }

    /// The same, not less than it is.
    fn at_least(&self, mm: f64) -> String {
        self.length((mm / self.step() - STEP_PLAY).ceil() * self.step())
    }

    fn step(&self) -> f64 {
        match self.lengths {
            Lengths::Millimetres => STEP_MM,
            Lengths::FeetInches => STEP_INCH,
        }
    }

    fn need(&self, needed: Needed) -> Result<&Figure, AccessFault> {
        self.rules.need(needed)
    }
}

/// A statement of a region's figure.
fn of_figure(id: &str, figure: &Figure, text: String) -> Row {
    let unit = figure.unit.written();
    Row::Said(Statement::new(id, text, figure.source.clone(), figure.basis()).with(id, figure.value, unit))
}

/// A statement of what the job says.
fn of_job(id: &str, key: &str, text: impl Into<String>) -> Row {
    Row::Said(Statement::new(id, text, format!("`{key}` of the job"), Basis::Job))
}

/// So many people, in words.
fn people(count: u32) -> String {
    if count == 1 { "one person".to_owned() } else { format!("{count} people") }
}

/// A statement of habit.
fn of_habit(id: &str, text: impl Into<String>) -> Row {
    Row::Said(Statement::new(id, text, "habit of the trade", Basis::CommonPractice))
}
