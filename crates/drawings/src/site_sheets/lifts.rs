//! What every timber weighs, where it balances, and who or what lifts it.

use job::written::{Lengths, fixed};
use roof::solution::Solution;
use site::lifts::{Hands, Lift, Stage};

use crate::flow::Flow;
use crate::marks::ranges;
use crate::page::Page;
use crate::site_sheets::parts::{FIGURE, MOST_LINES, STRONG, WORDS, paragraph, part, pieces};
use crate::table::{Column, Table};

/// On every sheet of lifts.
pub const CAUTION: &str = "A filter to sort lifts by, no limit and no lifting plan: wind, wet, footing and who is there on the \
                           day change it. Local rules, the scaffold designer and the principal contractor decide.";

/// Width of the column of marks, mm.
const MARKS: f64 = 56.0;

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
        "Heaviest first; lift by the damp weight. Balance: from the foot end along the top edge. In stages: one end, then \
         the other, from trestle to trestle, so that no hand lifts above the shoulder; their heights are above the plates.",
    );
    let (over, other): (Vec<&Lift>, Vec<&Lift>) = lifts.iter().partition(|l| l.above_shoulder);
    part(&mut flow, "Put in above the shoulder of who stands on a deck at the level of the plates");
    list(&mut flow, &over, lengths);
    part(&mut flow, "Put in below the shoulder");
    list(&mut flow, &other, lengths);
    flow.finish()
}

fn list(flow: &mut Flow, lifts: &[&Lift], lengths: Lengths) {
    if lifts.is_empty() {
        paragraph(flow, WORDS, "None.");
        return;
    }
    let mut table = Table::new(&[
        Column::words("timber", 36.0, STRONG),
        Column::words("marks", MARKS, WORDS),
        Column::figures("length", 19.0, WORDS),
        Column::figures("dry, kg", 15.0, WORDS),
        Column::figures("damp, kg", 18.0, FIGURE),
        Column::figures("balance", 19.0, FIGURE),
        Column::words("to carry", 22.0, STRONG),
        Column::words("overhead", 26.0, STRONG),
        Column::words("up to the plates, then", 66.0, WORDS),
    ]);
    for group in groups(lifts, lengths) {
        let Some(lift) = group.first() else { continue };
        let marks: Vec<String> = group.iter().map(|l| l.mark.clone()).collect();
        let overhead = match lift.overhead {
            _ if !lift.above_shoulder => "–".to_owned(),
            // Too heavy with the hands overhead, but not to carry: its stages stand in the last column.
            Hands::Aid if lift.carried != Hands::Aid => "IN STAGES".to_owned(),
            by => hands(by),
        };
        let mut cells = [
            lift.kind.name().to_owned(),
            String::new(),
            lengths.write(lift.length_mm),
            fixed(lift.kg, 1),
            fixed(lift.damp_kg, 1),
            lengths.write(lift.balance_mm),
            hands(lift.carried),
            overhead,
            stages(lift, lengths),
        ];
        for marks in pieces(WORDS, &ranges(&marks), MARKS - 3.0, MOST_LINES) {
            cells[1] = marks;
            table.row(&cells, MOST_LINES);
            cells.fill(String::new());
        }
    }
    flow.table(&table);
}

/// Timbers whose rows would read the same, the heaviest first.
fn groups<'a>(lifts: &[&'a Lift], lengths: Lengths) -> Vec<Vec<&'a Lift>> {
    let row = |l: &Lift| {
        let hands = (hands(l.carried), if l.above_shoulder { hands(l.overhead) } else { String::new() });
        (
            l.kind,
            lengths.write(l.length_mm),
            fixed(l.damp_kg, 1),
            lengths.write(l.balance_mm),
            hands,
            stages(l, lengths),
        )
    };
    let mut groups: Vec<(_, Vec<&Lift>)> = Vec::new();
    for &lift in lifts {
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
        Hands::Aid => "HOIST".to_owned(),
    }
}

/// How it goes up from the plates, in words.
fn stages(lift: &Lift, lengths: Lengths) -> String {
    let mut words: Vec<String> = Vec::new();
    for stage in &lift.stages {
        let said = match stage {
            Stage::ToPlates => continue,
            Stage::Trestle => {
                let all: Vec<String> = lift.trestles_mm.iter().map(|mm| lengths.write(*mm)).collect();
                format!("over {}", all.join(", "))
            }
            Stage::Prop => "onto its prop".to_owned(),
            Stage::PlaceByEnds => "into its place".to_owned(),
            Stage::Place => "into place by hand".to_owned(),
            Stage::Hoist => "hoist from the ground into place".to_owned(),
        };
        if !words.contains(&said) {
            words.push(said);
        }
    }
    words.join(", ")
}
