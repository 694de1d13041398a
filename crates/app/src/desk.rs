//! The desk: one open job, what was made of it, and the calls it answers.

use crate::calls::calls;
use crate::opening::{self, Open};
use crate::refusal::Refusal;
use crate::scene::Buffers;
use crate::views::{
    Card, CardAsk, Dialect, Edit, LengthStyle, NewJob, Nudge, Settings, ShapeChoice, Sketch, SketchAsk, SketchView,
    Standing, WhyAsk,
};
use crate::{edits, shapes};
use job::Job;
use job::written::Lengths;
use roof::solution::Solution;
use serde::Deserialize;
use working::Working;

/// One open job and what was made of it.
#[derive(Debug, Default)]
pub struct Desk {
    settings: Settings,
    open: Option<Open>,
    scene: Option<Buffers>,
}

/// The text of a job.
#[derive(Debug, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub(crate) struct Opened {
    /// As in the job file.
    text: String,
}

impl Desk {
    /// Answers a call: its name, and what it takes as JSON. Gives JSON.
    ///
    /// # Errors
    /// A [`Refusal`] with what is wrong and what to do; the job is as it was.
    pub fn call(&mut self, name: &str, takes: &str) -> Result<String, Refusal> {
        answer(self, name, takes).unwrap_or_else(|| Err(Refusal::no_such_call(name)))
    }

    /// The points of the scene that the last call made; once, and nothing when it made none.
    pub fn take_scene(&mut self) -> Option<Buffers> {
        self.scene.take()
    }

    /// The open job.
    pub(crate) fn job(&self) -> Result<&Job, Refusal> {
        self.open()?.job.as_ref().map_err(Clone::clone)
    }

    /// The roof of the open job.
    pub(crate) fn solution(&self) -> Result<&Solution, Refusal> {
        self.open()?.solution().map_err(Clone::clone)
    }

    /// What is open.
    pub(crate) fn open(&self) -> Result<&Open, Refusal> {
        self.open.as_ref().ok_or_else(|| {
            Refusal::new("nothing-open", "No job is open", "Take a job from the shelf, or start a new one")
        })
    }

    /// How lengths are shown.
    pub(crate) fn lengths(&self) -> Lengths {
        let show = self.open.as_ref().and_then(|open| open.job.as_ref().ok()).map(|job| job.show);
        match (self.settings.lengths, show) {
            (LengthStyle::FeetInches, _) | (LengthStyle::AsJob, Some(job::LengthUnit::FeetInches)) => {
                Lengths::FeetInches
            }
            _ => Lengths::Millimetres,
        }
    }

    /// Whose words are shown.
    pub(crate) fn dialect(&self) -> Dialect {
        self.settings.words
    }

    /// Puts a job on the desk and says how it stands.
    pub(crate) fn put(&mut self, open: Open, said: String) -> Standing {
        self.open = Some(open);
        self.stand(said)
    }

    /// How the open job stands, with its scene ready to be taken.
    fn stand(&mut self, said: String) -> Standing {
        self.scene = None;
        let Some(open) = &self.open else { return Standing::default() };
        let (standing, buffers) = opening::standing(open, self.lengths(), self.dialect(), said);
        self.scene = buffers;
        standing
    }
}

calls! {
    /// Every call that the core answers: what it takes and gives.
    Calls of Desk;
    /// Opens a job in place of the one on the desk.
    open: Opened => Standing = open;
    /// Changes the job. The text of the reply is to be kept.
    edit: Edit => Standing = edit;
    /// Shows the roof as it would be, while a finger drags. The job stays as it was.
    nudge: Nudge => Standing = nudge;
    /// Sets how figures and words are shown, and shows the open job again.
    settle: Settings => Option<Standing> = settle;
    /// The card of a piece.
    card: CardAsk => Card = card;
    /// The working of a figure.
    why: WhyAsk => Working = why;
    /// The shapes that a new job can have.
    shapes: () => Vec<ShapeChoice> = shapes;
    /// The text of a new job.
    new_job: NewJob => String = new_job;
    /// How a plan stands that is being measured.
    sketch: SketchAsk => SketchView = sketch;
    /// The open job's plan as a sketch, to measure it anew.
    sketch_of_job: () => Sketch = sketch_of_job;
    /// The text of the open job with the plan of a sketch in place of its own.
    sketch_into_job: Sketch => String = sketch_into_job;
}

fn open(desk: &mut Desk, takes: Opened) -> Result<Standing, Refusal> {
    let open = opening::open(takes.text)?;
    Ok(desk.put(open, String::new()))
}

fn edit(desk: &mut Desk, takes: Edit) -> Result<Standing, Refusal> {
    let (open, said) = edits::edited(desk, &takes)?;
    Ok(desk.put(open, said))
}

fn nudge(desk: &mut Desk, takes: Nudge) -> Result<Standing, Refusal> {
    let (standing, buffers) = edits::nudged(desk, &takes)?;
    desk.scene = Some(buffers);
    Ok(standing)
}

fn settle(desk: &mut Desk, takes: Settings) -> Result<Option<Standing>, Refusal> {
    desk.settings = takes;
    Ok(desk.open.is_some().then(|| desk.stand(String::new())))
}

fn card(desk: &mut Desk, takes: CardAsk) -> Result<Card, Refusal> {
    crate::bench::card(desk.job()?, desk.solution()?, desk.lengths(), desk.dialect(), &takes)
}

fn why(desk: &mut Desk, takes: WhyAsk) -> Result<Working, Refusal> {
    crate::why::working(desk.job()?, desk.solution()?, desk.lengths(), desk.dialect(), &takes)
}

fn shapes(desk: &mut Desk, _takes: ()) -> Result<Vec<ShapeChoice>, Refusal> {
    Ok(shapes::choices(desk.settings))
}

fn new_job(desk: &mut Desk, takes: NewJob) -> Result<String, Refusal> {
    shapes::new_job(desk.settings, &takes)
}

fn sketch(desk: &mut Desk, takes: SketchAsk) -> Result<SketchView, Refusal> {
    crate::measure::look(takes, desk.lengths())
}

fn sketch_of_job(desk: &mut Desk, _takes: ()) -> Result<Sketch, Refusal> {
    crate::measure::of_job(desk.job()?)
}

fn sketch_into_job(desk: &mut Desk, takes: Sketch) -> Result<String, Refusal> {
    crate::measure::into_job(&desk.open()?.text, &takes)
}
