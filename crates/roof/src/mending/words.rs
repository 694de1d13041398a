//! What is said of a frame that was mended.

use super::Mends;
use super::faults::{notice, sentence};
use super::in_line::Moved;
use crate::frame::Frame;
use crate::frame::timber::TimberId;
use crate::solution::{Notice, Solution};
use job::Job;

/// Ends moved by less than this are not worth a word, mm.
const WORTH_A_WORD: f64 = 0.05;

/// What was trimmed or left out, and where.
pub fn of_frame(frame: &Frame, mends: &Mends, marks: &[String]) -> Vec<Notice> {
    let timbers = &frame.timbers;
    let place = |k: usize| format!("({:.0}, {:.0})", timbers[k].foot.x, timbers[k].foot.y);
    let mut out = Vec::new();
    for &k in &mends.without {
        let text = format!(
            "{} that would start here finds no sound place and is left out: block its neighbours solid, or scribe one in \
             on site.",
            sentence(timbers[k].kind.name())
        );
        out.push(notice("timber-left-out", place(k), text));
    }
    let cut_to = |t: usize, on: usize| timbers[t].cuts.iter().any(|c| c.purpose.other() == Some(TimberId(on as u32)));
    for &[a, b] in mends.apart.iter().filter(|pair| !pair.iter().any(|k| timbers[*k].gone)) {
        let [through, back] = if cut_to(a, b) { [b, a] } else { [a, b] };
        let text = format!(
            "{} is cut back where {} runs through: try both there before fixing, and block between them.",
            marks[back], marks[through]
        );
        out.push(notice("cut-back", marks[back].clone(), text));
    }
    out
}

/// Which walls were brought in line, added to what is said of the roof.
pub fn of_walls(job: &Job, walls: &[Moved], solution: &mut Solution) {
    let told = walls.iter().filter(|m| m.inwards.iter().any(|by| by.abs() >= WORTH_A_WORD));
    let way = |by: f64| format!("{:.1} mm {}", by.abs(), if by < 0.0 { "outwards" } else { "inwards" });
    for moved in told {
        let letter = job.walls.get(moved.wall).map_or("", |w| w.letter.as_str());
        let [start, end] = moved.inwards.map(way);
        let text = format!(
            "Wall {letter} is not in line with the walls of its slope: its plate is set to one line with theirs, {start} \
             at its start and {end} at its end (seen from outside, from left to right). Bed or pack it to that line \
             before setting out."
        );
        solution.notices.push(notice("plates-in-line", format!("wall {letter}"), text));
    }
    solution.notices.sort_by_key(|n| n.level);
}
