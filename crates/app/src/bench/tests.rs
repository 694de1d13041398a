//! Cards and ticks over the examples.

use super::*;
use crate::views::{Card, CardAsk, Dialect, Done, Tick};
use job::Job;
use job::written::Lengths;
use roof::solution::Solution;

const EXAMPLES: [&str; 13] = [
    "bay",
    "boathouse",
    "dormers",
    "gablet",
    "half-hip",
    "lean-to",
    "mansard",
    "raised-plates",
    "saltbox",
    "sprockets",
    "surveyed",
    "whole-house",
    "wings",
];

fn text(name: &str) -> String {
    let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).unwrap()
}

/// An example and its roof.
pub(super) fn example(name: &str) -> (Job, Solution) {
    let job = job::read(text(name)).unwrap();
    let solution = roof::solve(&job).unwrap();
    (job, solution)
}

fn of(job: &Job, solution: &Solution, mark: &str, lengths: Lengths) -> Card {
    let ask = CardAsk { mark: mark.to_owned(), width: 360.0 };
    card(job, solution, lengths, Dialect::Uk, &ask).unwrap()
}

#[test]
fn cards_say_what_the_solution_says() {
    let mm = Lengths::Millimetres;
    for name in EXAMPLES {
        let (job, solution) = example(name);
        for piece in &solution.pieces {
            let member = solution.members.iter().find(|m| m.mark == piece.mark).unwrap();
            let card = of(&job, &solution, &piece.mark, mm);
            let says = |key: &str| {
                let key = format!("{key} {}", piece.mark);
                card.figures.iter().find(|f| f.why.as_ref() == Some(&key)).map(|f| f.value.clone())
            };
            assert_eq!(says("stock"), Some(mm.write_with_unit(member.stock_length_mm)));
            assert_eq!(says("cut-length"), Some(mm.write_with_unit(member.cut_length_mm)));
            assert_eq!(says("true-length"), Some(mm.write_with_unit(member.true_length_mm)));
            assert_eq!(says("seat"), member.birdsmouth.map(|b| mm.write_with_unit(b.seat_mm)));
            assert_eq!(card.members.len(), piece.count as usize);
            assert_eq!(card.cuts.len(), member.cuts.len());
            for (number, mark) in member.marks.iter().enumerate() {
                let key = format!("tape {} {number}", piece.mark);
                let step = card.steps.iter().find(|s| s.tape.why.as_ref() == Some(&key)).unwrap();
                // Half a pencil line out of square is one reading.
                let left = if (mark.left_mm - mark.right_mm).abs() < 0.25 { mark.right_mm } else { mark.left_mm };
                for end in [left, mark.right_mm] {
                    assert!(step.tape.value.contains(&mm.write(end)), "{name} {}: {}", piece.mark, step.tape.value);
                }
            }
            for (row, cut) in card.cuts.iter().zip(&member.cuts) {
                assert_eq!(row.ways.degrees[0].value, job::written::degrees(cut.face_angle_deg));
                assert_eq!(row.ways.saw[1].value, job::written::degrees(cut.saw.tilt_deg));
                assert_eq!(row.ways.square[0].value, mm.write_with_unit(cut.square.run));
                assert_eq!(row.ways.square[1].value, mm.write_with_unit(cut.square.rise));
            }
        }
    }
}

#[test]
fn steps_follow_the_tape() {
    for name in EXAMPLES {
        let solution = example(name).1;
        for member in &solution.members {
            let at: Vec<f64> = steps::sets(member).iter().map(steps::Set::at).collect();
            assert!(at.windows(2).all(|w| w[0] <= w[1]), "{name} {}: {at:?}", member.mark);
        }
    }
}

#[test]
fn a_step_off_the_stock_says_how_much_longer_to_leave_it() {
    let mut off = 0;
    for name in EXAMPLES {
        let (job, solution) = example(name);
        for piece in &solution.pieces {
            let member = solution.members.iter().find(|m| m.mark == piece.mark).unwrap();
            let card = of(&job, &solution, &piece.mark, Lengths::Millimetres);
            for (number, mark) in member.marks.iter().enumerate() {
                let key = format!("tape {} {number}", piece.mark);
                let step = card.steps.iter().find(|s| s.tape.why.as_ref() == Some(&key)).unwrap();
                let on =
                    [mark.left_mm, mark.right_mm].iter().all(|mm| (-0.5..=member.stock_length_mm + 0.5).contains(mm));
                assert_eq!(step.words.contains("leave the timber that much longer"), !on, "{name} {key}");
                off += usize::from(!on);
            }
        }
    }
    // The tips of some backed hips are planed away with the corner they are marked from.
    assert!(off > 0);
}

#[test]
fn a_square_in_inches_holds_twelve_on_the_blade() {
    let (job, solution) = example("boathouse");
    let rafter = solution.members.iter().find(|m| m.birdsmouth.is_some() && m.pitch_deg == 40.0).unwrap();
    let card = of(&job, &solution, &rafter.mark, Lengths::FeetInches);
    let heel = card.steps.iter().find(|s| s.tape.label == "Heel plumb cut").unwrap();
    let ways = heel.ways.as_ref().unwrap();
    // 12 × tan 40° = 10.069.
    assert_eq!(ways.square.iter().map(|f| f.value.as_str()).collect::<Vec<_>>(), ["12\"", "10 1/16\""]);
    assert_eq!(ways.gauge[0].value, "10 1/16\" in 12\"");
    assert_eq!(ways.degrees[0].value, "40°");
    let first = &card.steps[0];
    assert!(first.words.starts_with("Hook the tape on the tail end of the stock. Mark the tail"), "{}", first.words);
}

#[test]
fn ticks_go_into_the_job_and_show_what_has_changed() {
    let (_, solution) = example("boathouse");
    let old = text("boathouse");
    let marks: Vec<String> = solution.members.iter().map(|m| m.mark.clone()).collect();
    let ticked = tick(&old, &solution, &Tick { marks: marks.clone(), done: Done::Cut }).unwrap();
    let job = job::read(&ticked).unwrap();
    assert_eq!(job.done.len(), marks.len());
    for member in &solution.members {
        assert_eq!(progress(&job, member), Progress { done: Done::Cut, changed: false });
    }
    // A steeper roof is of other rafters, while the plates stay as they are.
    let steeper = job::read(job::edit::set(&ticked, "roof.pitch", "41").unwrap()).unwrap();
    let roof = roof::solve(&steeper).unwrap();
    let changed = |kind| {
        let mut of_kind = roof.members.iter().filter(|m| m.kind == kind).peekable();
        assert!(of_kind.peek().is_some());
        of_kind.map(|m| progress(&steeper, m).changed).collect::<Vec<_>>()
    };
    assert!(changed(roof::solution::MemberKind::CommonRafter).into_iter().all(|c| c));
    assert!(changed(roof::solution::MemberKind::WallPlate).into_iter().all(|c| !c));
    // Unticking takes every line out again.
    let clear = tick(&ticked, &solution, &Tick { marks, done: Done::No }).unwrap();
    assert!(job::read(&clear).unwrap().done.is_empty());
}

#[test]
fn what_is_not_there_is_refused_or_told() {
    let (_, solution) = example("lean-to");
    let old = text("lean-to");
    let nobody = Tick { marks: vec!["Jack-99".into()], done: Done::Cut };
    assert_eq!(tick(&old, &solution, &nobody).unwrap_err().code, "no-such-timber");
    let gone = job::edit::set(&old, "done.Jack-99", "{ state = \"cut\" }").unwrap();
    let job = job::read(&gone).unwrap();
    assert_eq!(ticked_and_gone(&job, &solution), ["Jack-99"]);
    let ask = CardAsk { mark: "Jack-99".into(), width: 360.0 };
    assert!(card(&job, &solution, Lengths::Millimetres, Dialect::Uk, &ask).is_err());
    let cleared = tick(&gone, &solution, &Tick { done: Done::No, ..nobody }).unwrap();
    assert!(job::read(&cleared).unwrap().done.is_empty());
}
