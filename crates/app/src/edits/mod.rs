//! Changes of the job on the desk.

mod carries;
mod keys;
mod order;
mod pitch;
mod record;
mod ridge;
mod slopes;
mod ticks;
mod wall;

use crate::desk::Desk;
use crate::opening::{self, Open};
use crate::overview::{self, Shown};
use crate::refusal::Refusal;
use crate::scene::Buffers;
use crate::views::{Edit, Nudge, Standing};
use crate::wording::capital;
use job::Job;
use job::edit::EditError;

/// What is to be changed in the text, in this order, and what it is called.
pub(crate) struct Changes {
    steps: Vec<Step>,
    said: String,
}

/// A path with the value that is put there, or nothing for what is taken out.
type Step = (String, Option<String>);

impl Changes {
    /// The text with the changes made.
    fn applied(&self, text: &str) -> Result<String, Refusal> {
        job::edit::set_all(text, self.each()).map_err(|error| refused(&error))
    }

    /// The text and the job as they would be.
    fn tried(&self, text: &str) -> Result<(String, Job), Refusal> {
        job::edit::tried(text, self.each()).map_err(|error| refused(&error))
    }

    fn each(&self) -> impl Iterator<Item = (&str, Option<&str>)> {
        self.steps.iter().map(|(path, value)| (path.as_str(), value.as_deref()))
    }
}

/// The job with an edit made, and what it is called.
pub(crate) fn edited(desk: &Desk, edit: &Edit) -> Result<(Open, String), Refusal> {
    let open = desk.open()?;
    let changes = match edit {
        Edit::Set { path, value } => keys::set(open, path, value)?,
        Edit::Carries { values } => carries::set(open, values)?,
        Edit::Remove { path } => keys::remove(open, path)?,
        Edit::Wall { wall, form } => wall::form(open, wall, *form)?,
        Edit::Pitch { wall, pitch_deg } => pitch::set(open, wall.as_deref(), *pitch_deg)?,
        Edit::RidgeHeight { ridge, height_mm } => ridge::set(open, ridge, *height_mm, desk.lengths())?,
        Edit::StockPrice(given) => order::stock_price(open, given)?,
        Edit::ItemPrice(given) => order::item_price(open, given)?,
        Edit::Yard { offcuts } => order::into_yard(open, offcuts)?,
        Edit::YardOne(given) => order::one_into_yard(open, given)?,
        Edit::Covering { of } => order::covering(open, of)?,
        Edit::Record(given) => record::set(open, given)?,
        Edit::PriceList { text } => return order::price_list(open, text),
        Edit::Tick(tick) => return ticks::ticked(open, tick),
    };
    if order::leaves_the_roof(edit) || record::leaves_the_roof(edit) {
        return Ok((order::without_roof(open, &changes)?, changes.said));
    }
    let text = changes.applied(&open.text)?;
    let new = opening::open(text)?;
    // A roof that stood is not given up for one that can't be built.
    match (open.solution(), new.solution()) {
        (Ok(_), Err(refusal)) => Err(refusal.clone()),
        _ => Ok((new, changes.said)),
    }
}

/// How the roof would be.
pub(crate) fn nudged(desk: &Desk, nudge: &Nudge) -> Result<(Standing, Buffers), Refusal> {
    let open = desk.open()?;
    let changes = match nudge {
        Nudge::Pitch { wall, pitch_deg } => pitch::set(open, wall.as_deref(), *pitch_deg)?,
        Nudge::RidgeHeight { ridge, height_mm } => ridge::set(open, ridge, *height_mm, desk.lengths())?,
    };
    let (text, job) = changes.tried(&open.text)?;
    let solution = roof::solve(&job).map_err(|error| Refusal::of_roof(&error))?;
    let shown =
        Shown { job: &job, solution: &solution, said: &open.said, lengths: desk.lengths(), words: desk.dialect() };
    let (overview, buffers) = overview::of_drag(&shown);
    let standing =
        Standing { text, said: changes.said, title: job.title.clone(), overview: Some(overview), refusal: None };
    Ok((standing, buffers))
}

/// Why the text could not be changed.
pub(crate) fn refused(error: &EditError) -> Refusal {
    match error {
        EditError::Faults(faults) | EditError::NotAJob(faults) => Refusal::of_faults(faults),
        other => Refusal::new("no-such-key", capital(&other.to_string()), "Choose one of the entries that are listed"),
    }
}
