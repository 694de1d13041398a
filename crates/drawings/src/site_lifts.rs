//! What every timber weighs, where it balances, and who or what lifts it.

use job::written::{Lengths, fixed};
use roof::solution::Solution;
use site::lifts::{Hands, Lift, Stage};

use crate::flow::Flow;
use crate::marks::ranges;
use crate::page::Page;
use crate::site_parts::{FIGURE, MOST_LINES, STRONG, WORDS, paragraph};
use crate::table::{Column, Table};

/// On every sheet of lifts.
pub const CAUTION: &str = "A filter to sort lifts by, no limit and no lifting plan: wind, wet, footing and who is there on the \
                           day change it. Local rules, the scaffold designer and the principal contractor decide.";

/// The sheets; none without timbers.
pub fn pages(solution: &Solution, lifts: &[Lift]) -> Vec<Page> {
    if lifts.is_empty() {
        return Vec::new();
    }
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Lifts", false, CAUTION);
    paragraph(
        &mut flow,
        WORDS,
        "The heaviest first. Weights damp are those to lift by. Balance: from the foot end along the top edge. In place: \
         with the hands above the shoulder of who stands on a deck at the level of the plates.",
    );
    let mut table = Table::new(&[
        Column::words("timber", 32.0, STRONG),
        Column::words("marks", 66.0, WORDS),
        Column::figures("length", 20.0, WORDS),
        Column::figures("dry, kg", 17.0, WORDS),
        Column::figures("damp, kg", 19.0, FIGURE),
        Column::figures("balance", 21.0, FIGURE),
        Column::words("to carry", 25.0, STRONG),
        Column::words("in place, overhead", 29.0, STRONG),
        Column::words("how", 48.0, WORDS),
    ]);
    for group in groups(lifts, lengths) {
        let Some(lift) = group.first() else { continue };
        let marks: Vec<String> = group.iter().map(|l| l.mark.clone()).collect();
        let overhead = if lift.above_shoulder { hands(lift.overhead) } else { "not overhead".to_owned() };
        let cells = [
            lift.kind.name().to_owned(),
            ranges(&marks),
            lengths.write(lift.length_mm),
            fixed(lift.kg, 1),
            fixed(lift.damp_kg, 1),
            lengths.write(lift.balance_mm),
            hands(lift.carried),
            overhead,
            stages(lift, lengths),
        ];
        table.row(&cells, usize::MAX);
    }
    let _ = MOST_LINES;
    flow.table(&table);
    flow.finish()
}

/// Timbers whose rows would read the same, the heaviest first.
fn groups(lifts: &[Lift], lengths: Lengths) -> Vec<Vec<&Lift>> {
    let row = |l: &Lift| {
        let hands = (hands(l.carried), if l.above_shoulder { hands(l.overhead) } else { String::new() });
        (l.kind, lengths.write(l.length_mm), fixed(l.damp_kg, 1), lengths.write(l.balance_mm), hands, stages(l, lengths))
    };
    let mut groups: Vec<(_, Vec<&Lift>)> = Vec::new();
    for lift in lifts {
        let row = row(lift);
        match groups.iter_mut().find(|(other, _)| *other == row) {
            Some((_, group)) => group.push(lift),
            None => groups.push((row, vec![lift])),
        }
    }
    let mut groups: Vec<Vec<&Lift>> = groups.into_iter().map(|(_, group)| group).collect();
    let weight = |group: &[&Lift]| group.first().map_or(0.0, |l| l.damp_kg);
    groups.sort_by(|a, b| weight(b).total_cmp(&weight(a)));
    groups
}

fn hands(hands: Hands) -> String {
    match hands {
        Hands::People(1) => "1 person".to_owned(),
        Hands::People(n) => format!("{n} people"),
        Hands::Aid => "HOIST or stages".to_owned(),
    }
}

/// How it goes up, in words.
fn stages(lift: &Lift, lengths: Lengths) -> String {
    let mut words: Vec<String> = Vec::new();
    for stage in &lift.stages {
        match stage {
            Stage::ToPlates => words.push("up to the plates".to_owned()),
            Stage::Trestle => {
                let all: Vec<String> = lift.trestles_mm.iter().map(|mm| lengths.write(*mm)).collect();
                let said = format!("end by end over trestles at {} above the plates", all.join(", "));
                if !words.contains(&said) {
                    words.push(said);
                }
            }
            Stage::Prop => words.push("onto its prop".to_owned()),
            Stage::Place => words.push("into place by hand".to_owned()),
            Stage::Hoist => words.push("hoist all the way".to_owned()),
        }
    }
    words.join("; ")
}
