//! Houses that were once refused: each is roofed, and what was done otherwise is told.

use roof::solution::{NoticeLevel, Solution};

mod houses;
mod places;

/// A job file over corners, with lines of `[roof]`, `[roof.walls]` and `[timber]`.
fn file(corners: &str, pitch: f64, walls: &str, timber: &str) -> String {
    format!(
        "format = 1\ntitle = \"Test\"\n[plan]\ncorners = {corners}\n[roof]\npitch = {pitch}\n[roof.walls]\n{walls}\n\
         [timber]\n{timber}\n"
    )
}

fn roofed(text: &str) -> Solution {
    let job = job::read(text).unwrap_or_else(|faults| panic!("{faults}"));
    roof::solve(&job).unwrap_or_else(|e| panic!("{e}\n{text}"))
}

fn warned(solution: &Solution, code: &str) -> usize {
    solution.notices.iter().filter(|n| n.code == code && n.level != NoticeLevel::Stop).count()
}
