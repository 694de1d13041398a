//! Statements with their sources, and questions with lines to write on.

use site::access::{Row, Section, Statement, Verdict};

use crate::flow::Flow;
use crate::site_sheets::parts::{MOST_LINES, SMALL, STRONG, WORDS, basis, blank, part, part_with, pieces, verdict};
use crate::table::{Column, Table};

/// Lines to write an answer on.
const RULES: usize = 1;
/// Width of the column of statements, mm.
const STATEMENT: f64 = 158.0;
/// Width of the column of sources, mm.
const SOURCE: f64 = 58.0;
/// What a cell is narrower than its column, mm, with a little to spare.
const INSIDE: f64 = 3.0;
/// A question is not parted from its heading: its height with lines to write on, mm.
const QUESTION: f64 = 30.0;

/// A part of a sheet: what is said, in a table; then what is asked.
pub fn section(flow: &mut Flow, section: &Section) {
    let said: Vec<&Statement> =
        section.rows.iter().filter_map(|r| if let Row::Said(s) = r { Some(s) } else { None }).collect();
    let mut headed = false;
    if !said.is_empty() {
        part(flow, &section.heading);
        headed = true;
        let mut table = Table::new(&[
            Column::words("", 4.5, WORDS),
            Column::words("", 16.5, STRONG),
            Column::words("statement", STATEMENT, WORDS),
            Column::words("where it is from", SOURCE, SMALL),
            Column::words("how far to rely on it", 40.0, SMALL),
        ]);
        for statement in said {
            let (texts, sources) = (
                pieces(WORDS, &statement.text, STATEMENT - INSIDE, MOST_LINES),
                pieces(SMALL, &statement.source, SOURCE - INSIDE, MOST_LINES),
            );
            for k in 0..texts.len().max(sources.len()) {
                let first = |words: &str| if k == 0 { words.to_owned() } else { String::new() };
                let of = |list: &[String]| list.get(k).cloned().unwrap_or_default();
                let cells = [
                    String::new(),
                    first(verdict(statement.verdict)),
                    of(&texts),
                    of(&sources),
                    first(basis(statement.basis)),
                ];
                table.row(&cells, MOST_LINES);
                if statement.verdict == Some(Verdict::Over) {
                    table.bar_last();
                }
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
