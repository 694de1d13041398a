//! The desk: one open job, what was made of it, and the calls it answers.

use crate::calls::calls;
use crate::refusal::Refusal;
use crate::views::{
    Card, CardAsk, Edit, LengthStyle, NewJob, Nudge, Settings, ShapeChoice, Sketch, SketchAsk, SketchView, Standing,
    WhyAsk,
};
use serde::Deserialize;
use working::Working;

/// One open job and what was made of it.
#[derive(Debug, Default)]
pub struct Desk {
    settings: Settings,
    open: Option<Open>,
}

/// A job that is open.
#[derive(Debug)]
struct Open {
    text: String,
    job: job::Job,
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
        answer(self, name, takes)
    }

    /// The open job.
    pub(crate) fn job(&self) -> Result<&job::Job, Refusal> {
        Ok(&self.open()?.job)
    }

    /// What is open.
    fn open(&self) -> Result<&Open, Refusal> {
        self.open.as_ref().ok_or_else(|| {
            Refusal::new("nothing-open", "No job is open", "Take a job from the shelf, or start a new one")
        })
    }

    /// How lengths are shown.
    pub(crate) fn lengths(&self) -> job::written::Lengths {
        let show = self.open.as_ref().map(|open| open.job.show);
        match (self.settings.lengths, show) {
            (LengthStyle::FeetInches, _) | (LengthStyle::AsJob, Some(job::LengthUnit::FeetInches)) => {
                job::written::Lengths::FeetInches
            }
            _ => job::written::Lengths::Millimetres,
        }
    }
}

calls! {
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
    let job = job::read(&takes.text).map_err(|faults| Refusal::new("faults", faults.to_string(), ""))?;
    let title = job.title.clone();
    desk.open = Some(Open { text: takes.text.clone(), job: job.clone() });
    let _ = (&desk.settings, desk.open.as_ref().map(|o| o.text.len()), roof::solve(&job).is_ok());
    Ok(Standing { text: takes.text, said: String::new(), title, overview: None, refusal: None })
}

fn edit(_desk: &mut Desk, _takes: Edit) -> Result<Standing, Refusal> {
    Err(Refusal::new("unbuilt", "unbuilt", "unbuilt"))
}

fn nudge(_desk: &mut Desk, _takes: Nudge) -> Result<Standing, Refusal> {
    Err(Refusal::new("unbuilt", "unbuilt", "unbuilt"))
}

fn settle(_desk: &mut Desk, _takes: Settings) -> Result<Option<Standing>, Refusal> {
    Err(Refusal::new("unbuilt", "unbuilt", "unbuilt"))
}

fn card(_desk: &mut Desk, _takes: CardAsk) -> Result<Card, Refusal> {
    Err(Refusal::new("unbuilt", "unbuilt", "unbuilt"))
}

fn why(_desk: &mut Desk, _takes: WhyAsk) -> Result<Working, Refusal> {
    Err(Refusal::new("unbuilt", "unbuilt", "unbuilt"))
}

fn shapes(_desk: &mut Desk, _takes: ()) -> Result<Vec<ShapeChoice>, Refusal> {
    Err(Refusal::new("unbuilt", "unbuilt", "unbuilt"))
}

fn new_job(_desk: &mut Desk, _takes: NewJob) -> Result<String, Refusal> {
    Err(Refusal::new("unbuilt", "unbuilt", "unbuilt"))
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
