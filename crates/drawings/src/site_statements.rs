//! Statements with their sources, and questions with lines to write on.

use site::access::{Row, Section, Statement, Verdict};

use crate::flow::Flow;
use crate::site_parts::{SMALL, STRONG, WORDS, basis, blank, part, part_with, verdict};
use crate::table::{Column, Table};

/// Lines to write an answer on.
const RULES: usize = 1;
/// A question is not parted from its heading: its height with lines to write on, mm.
const QUESTION: f64 = 30.0;

/// A part of a sheet: what is said, in a table; then what is asked.
pub fn section(flow: &mut Flow, section: &Section) {
    let said: Vec<&Statement> = section.rows.iter().filter_map(|r| if let Row::Said(s) = r { Some(s) } else { None }).collect();
    let mut headed = false;
    if !said.is_empty() {
        part(flow, &section.heading);
        headed = true;
        let mut table = Table::new(&[
            Column::words("", 4.5, WORDS),
            Column::words("", 16.5, STRONG),
            Column::words("statement", 158.0, WORDS),
            Column::words("where it is from", 58.0, SMALL),
            Column::words("how far to rely on it", 40.0, SMALL),
        ]);
        for statement in said {
            let cells = [
                String::new(),
                verdict(statement.verdict).to_owned(),
                statement.text.clone(),
                statement.source.clone(),
                basis(statement.basis).to_owned(),
            ];
            table.row(&cells, usize::MAX);
            if statement.verdict == Some(Verdict::Over) {
                table.bar_last();
            }
        }
        flow.table(&table);
        flow.space(1.5);
    }
    for row in &section.rows {
        if let Row::Blank(asked) = row {
            if !headed {
                part_with(flow, &section.heading, QUESTION);
                headed = true;
            }
            blank(flow, &asked.question, &asked.who, RULES);
        }
    }
}
