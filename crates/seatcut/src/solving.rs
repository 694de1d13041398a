//! From the bytes of a job to its solution, with faults told.

use geometry::surface::SurfaceError;
use job::Job;
use roof::SolveError;
use roof::solution::{NoticeLevel, Solution};

use crate::failure::Failure;
use crate::fault_report::FaultReport;
use crate::progress;
use crate::reading::JobFile;

/// Reads and solves a job file.
pub fn solve(file: &JobFile) -> Result<(Job, Solution), Failure> {
    let job = read(file)?;
    let solution = solve_job(&job).map_err(|failure| failure.in_file(&file.name))?;
    Ok((job, solution))
}

/// Reads a job file, with every fault of it.
pub fn read(file: &JobFile) -> Result<Job, Failure> {
    job::read(&file.bytes).map_err(|faults| Failure::BadJob(Box::new(FaultReport::new(file, faults))))
}

/// Solves a job.
pub fn solve_job(job: &Job) -> Result<Solution, Failure> {
    progress::during("setting out the roof", || roof::solve(job)).map_err(|error| match error {
        // The solver does not stand behind its own roof: no fault of the file.
        SolveError::Clash { .. }
        | SolveError::Gap { .. }
        | SolveError::Solid { .. }
        | SolveError::Surface { source: SurfaceError::Lost { .. } | SurfaceError::Unsound(_), .. } => {
            Failure::NotBuilt(error.to_string())
        }
        _ => Failure::BadInput(error.to_string()),
    })
}

/// A fault when a notice says that the job can't be built as asked.
pub fn refuse_stopped(solution: &Solution) -> Result<(), Failure> {
    let stops = solution.notices.iter().filter(|notice| notice.level == NoticeLevel::Stop);
    let texts: Vec<String> = stops.map(|notice| format!("{}: {}", notice.place, notice.text)).collect();
    if texts.is_empty() {
        return Ok(());
    }
    Err(Failure::NotBuilt(format!("this job can't be built as asked:\n  {}", texts.join("\n  "))))
}
