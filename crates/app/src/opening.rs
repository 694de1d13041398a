//! From the text of a job to how it stands.

use crate::overview;
use crate::refusal::Refusal;
use crate::scene::Buffers;
use crate::views::{Dialect, Standing};
use job::Job;
use job::listing::Said;
use job::written::Lengths;
use roof::solution::Solution;

/// A job that is open, and what was made of it.
#[derive(Debug)]
pub(crate) struct Open {
    /// As in the job file.
    pub(crate) text: String,
    /// What the text says, key by key.
    pub(crate) said: Said,
    /// The job, or the faults of the text.
    pub(crate) job: Result<Job, Refusal>,
    /// The roof, or why there is none. Only looked at when there is a job.
    roof: Result<Solution, Refusal>,
}

impl Open {
    /// The roof, or why there is none.
    pub(crate) fn solution(&self) -> Result<&Solution, &Refusal> {
        self.job.as_ref()?;
        self.roof.as_ref()
    }

    /// The same roof under another text, in which nothing was changed that the roof is made from.
    pub(crate) fn with_text(&self, text: String) -> Result<Self, Refusal> {
        let job = job::read(&text).map_err(|faults| Refusal::of_faults(&faults))?;
        Ok(Self { said: Said::of(&text), text, job: Ok(job), roof: self.roof.clone() })
    }
}

/// Opens a text. One with faults is opened too, so that nothing is lost.
pub(crate) fn open(text: String) -> Result<Open, Refusal> {
    if text.len() > job::LARGEST_FILE {
        return Err(Refusal::new(
            "file-too-large",
            format!("This file is longer than a job file can be ({} bytes)", job::LARGEST_FILE),
            "Choose a job file: it may be another kind of file",
        ));
    }
    let said = Said::of(&text);
    let job = job::read(&text).map_err(|faults| Refusal::of_faults(&faults));
    let roof = match &job {
        Ok(job) => roof::solve(job).map_err(|error| Refusal::of_roof(&error)),
        Err(refusal) => Err(refusal.clone()),
    };
    Ok(Open { text, said, job, roof })
}

/// How a job stands, and the points of its scene.
pub(crate) fn standing(open: &Open, lengths: Lengths, words: Dialect, said: String) -> (Standing, Option<Buffers>) {
    let title = match &open.job {
        Ok(job) => job.title.clone(),
        Err(_) => open.said.value("title").unwrap_or_default(),
    };
    let mut standing = Standing { text: open.text.clone(), said, title, overview: None, refusal: None };
    match (&open.job, open.solution()) {
        (Ok(job), Ok(solution)) => {
            let (overview, buffers) =
                overview::whole(&overview::Shown { job, solution, said: &open.said, lengths, words });
            standing.overview = Some(overview);
            (standing, Some(buffers))
        }
        (_, Err(refusal)) | (Err(refusal), _) => {
            standing.refusal = Some(refusal.clone());
            (standing, None)
        }
    }
}
