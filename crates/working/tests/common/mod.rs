//! The examples of the project, solved, and every question they can be asked.

use job::Job;
use roof::solution::Solution;
use std::path::Path;
use working::{Figure, Question};

/// Every example.
pub fn examples() -> Vec<(String, Job, Solution)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let mut files: Vec<_> = std::fs::read_dir(folder).expect("examples").map(|f| f.expect("file").path()).collect();
    files.sort();
    files
        .into_iter()
        .filter(|f| f.extension().is_some_and(|e| e == "toml"))
        .map(|file| {
            let name = file.file_stem().expect("name").to_string_lossy().into_owned();
            let text = std::fs::read_to_string(file).expect("text");
            let job = job::read(&text).expect("a job");
            let solution = roof::solve(&job).expect("a roof");
            (name, job, solution)
        })
        .collect()
}

/// Every question that a solution can be asked.
pub fn questions(solution: &Solution) -> Vec<Question> {
    let mut all = Vec::new();
    for m in &solution.members {
        let mut ask = |figure, n: usize| all.push(Question::nth(figure, &m.mark, n));
        for figure in [Figure::TrueLength, Figure::CutLength, Figure::Stock, Figure::Pitch] {
            ask(figure, 0);
        }
        for n in 0..m.cuts.len() {
            for figure in [Figure::Face, Figure::Edge, Figure::Mitre, Figure::Tilt] {
                ask(figure, n);
            }
        }
        (0..m.deductions.len()).for_each(|n| ask(Figure::Less, n));
        (0..m.marks.len()).for_each(|n| ask(Figure::Tape, n));
        if m.birdsmouth.is_some() {
            for figure in [Figure::Seat, Figure::Heel, Figure::Notch, Figure::Upstand] {
                ask(figure, 0);
            }
        }
        if m.backing_deg.is_some() {
            (0..2).for_each(|n| ask(Figure::Backing, n));
        }
        if m.drop_mm.is_some() {
            ask(Figure::Drop, 0);
        }
    }
    for figure in [Figure::Rise, Figure::Closing, Figure::Upstand, Figure::Volume] {
        all.push(Question::roof(figure));
    }
    for wall in &solution.plan.walls {
        all.push(Question::of(Figure::Overhang, &wall.id));
        if wall.pitch_deg.is_some() {
            all.push(Question::of(Figure::WallPitch, &wall.id));
        }
    }
    let ridges = solution.members.iter().filter(|m| m.kind == roof::solution::MemberKind::RidgeBoard);
    all.extend(ridges.map(|m| Question::of(Figure::Ridge, &m.mark)));
    all
}
