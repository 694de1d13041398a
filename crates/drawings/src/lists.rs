//! The cutting list.

use roof::solution::{Member, PatternPiece, Solution};

use crate::flow::Flow;
use crate::marks::ranges;
use crate::page::Page;
use crate::sheet::Anchor;
use crate::table::{Column, Table};
use crate::text::Style;
use job::written::{Lengths, fixed};

const CAUTION: &str = "Check sections and strength classes against the engineer's or building control's approval before \
                       ordering.";
/// Lines of members' marks in one row.
const MOST_LINES: usize = 12;

/// The cutting list and its totals.
pub fn pages(solution: &Solution) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Cutting list", false, CAUTION);
    let words = Style::regular(10.0);
    let mut table = Table::new(&[
        Column::words("card", 22.0, Style::bold(12.0)),
        Column::words("kind", 33.0, words),
        Column::words("section", 32.0, words),
        Column::figures("cut", 15.0, Style::bold(14.0)),
        Column::figures("cut length", 34.0, Style::bold(14.0)),
        Column::figures("stock length", 30.0, words),
        Column { head: "mirror of", width: 26.0, anchor: Anchor::Middle, style: words },
        Column::words("timbers", 85.0, words),
    ]);
    for piece in &solution.pieces {
        let member = solution.members.iter().find(|m| m.mark == piece.mark);
        let length = |of: fn(&Member) -> f64| lengths.write(member.map_or(f64::NAN, of));
        let section = member.map_or_else(String::new, |m| lengths.section(m.size.thickness_mm, m.size.depth_mm));
        let cells = [
            piece.mark.clone(),
            piece.kind.name().to_owned(),
            section,
            piece.count.to_string(),
            length(|m| m.cut_length_mm),
            length(|m| m.stock_length_mm),
            piece.mirror_of.clone().unwrap_or_default(),
            format!("{}{}", ranges(&piece.members), alike_to(piece, lengths)),
        ];
        table.row(&cells, MOST_LINES);
    }
    flow.table(&table);
    flow.space(6.0);
    totals(&mut flow, solution, lengths);
    flow.finish()
}

/// How far timbers of one piece differ, where that is worth a word.
pub fn alike_to(piece: &PatternPiece, lengths: Lengths) -> String {
    if piece.differ_mm > 0.0 { format!(" (alike to {})", lengths.write(piece.differ_mm)) } else { String::new() }
}

fn totals(flow: &mut Flow, solution: &Solution, lengths: Lengths) {
    let mut table = Table::new(&[
        Column::words("section", 40.0, Style::bold(12.0)),
        Column::figures("timbers", 24.0, Style::bold(14.0)),
        Column { head: "stock, end to end", width: 40.0, anchor: Anchor::End, style: Style::bold(14.0) },
        Column::figures("net volume", 32.0, Style::regular(11.0)),
    ]);
    for (section, count, stock, volume) in by_section(solution, lengths) {
        table.row(&[section, count.to_string(), lengths.total(stock), format!("{} m³", fixed(volume, 3))], 2);
    }
    let count = solution.totals.members.to_string();
    let stock = solution.members.iter().map(|m| m.stock_length_mm).sum();
    let volume = format!("{} m³", fixed(solution.totals.timber_m3, 3));
    table.row(&["all".to_owned(), count, lengths.total(stock), volume], 1);
    // Kept together where a page can hold it.
    if table.height() > flow.left() && flow.left() > 0.0 {
        flow.space(flow.left());
    }
    flow.table(&table);
}

/// Sections in the order they first come, with their number of timbers, total
/// stock length (mm) and net volume (m³).
fn by_section(solution: &Solution, lengths: Lengths) -> Vec<(String, usize, f64, f64)> {
    let mut out: Vec<(String, usize, f64, f64)> = Vec::new();
    for member in &solution.members {
        let section = lengths.section(member.size.thickness_mm, member.size.depth_mm);
        let index = out.iter().position(|s| s.0 == section).unwrap_or(out.len());
        if index == out.len() {
            out.push((section, 0, 0.0, 0.0));
        }
        let entry = &mut out[index];
        entry.1 += 1;
        entry.2 += member.stock_length_mm;
        entry.3 += member.volume_m3;
    }
    out
}
