//! The order as a spreadsheet: what to buy with cells for prices, the cutting plan, and a quote whose sums follow from
//! the other sheets.

pub mod csv;
mod file;

use job::written::Lengths;
use order::buying::LineKind;
use order::whole::Order;
use roof::solution::Solution;

use crate::PackError;
use crate::order_sheets::buy::{Shown, lines_of};
use crate::order_sheets::cutting::ends_words;
use crate::order_sheets::strip::whole_mark;
use crate::order_sheets::words::{METRE, cut_word, group_name, keep_word, placed};
use crate::spreadsheet::file::{Cell, Look, Table, cell_name, write};

/// Name of the sheet of timber.
const TIMBER: &str = "Timber";
/// Name of the sheet of all else that is bought.
const LINES: &str = "Covering and fixings";

/// A sum on a sheet: where it stands, and what it is.
struct Sum {
    /// Reference from another sheet.
    from: String,
    /// Its result.
    value: f64,
}

/// The order as a spreadsheet file. Prices, mark-up and tax are cells to write in; costs and sums are formulas, their
/// results stored beside them for viewers that work nothing out. The same order gives the same bytes everywhere.
///
/// # Errors
/// [`PackError::List`] when the file can't be written.
pub fn order_xlsx(solution: &Solution, order: &Order) -> Result<Vec<u8>, PackError> {
    let lengths = Lengths::from_show(&solution.show);
    let (timber, timber_sum) = timber_table(order, lengths);
    let (covering, rest) = lines_of(order);
    let (lines, line_sums) = lines_table(&covering, &rest);
    let mut sums = vec![("Timber", timber_sum)];
    sums.extend(line_sums);
    let tables = [timber, lines, cutting_table(order, lengths), quote_table(order, sums)];
    write(&tables, &solution.title, &order.currency).map_err(PackError::List)
}

fn head(names: &[&str]) -> Vec<Cell> {
    names.iter().map(|name| Cell::words(*name, Look::Head)).collect()
}

fn words(text: &str) -> Cell {
    Cell::words(text, Look::Plain)
}

fn timber_table(order: &Order, lengths: Lengths) -> (Table, Sum) {
    let names = ["section and class", "from", "count", "length, mm", "price of one", "cost", "metres"];
    let mut rows = vec![head(&names)];
    let (mut cost, mut metres) = (0.0, 0.0);
    for group in &order.timber {
        for buy in &group.buy {
            let row = rows.len();
            let at = |column| cell_name(column, row);
            let from = match (&buy.yard, &buy.stock) {
                (Some(yard), _) => format!("yard: {yard}"),
                (None, Some(stock)) => stock.clone(),
                (None, None) => String::new(),
            };
            let count = f64::from(buy.count);
            let mut cells = vec![
                words(&group_name(lengths, group)),
                words(&from),
                Cell::figure(count, Look::Plain),
                Cell::figure(buy.length_mm, Look::Plain),
            ];
            // What lies in the yard costs nothing and is not bought.
            if buy.yard.is_none() {
                let (this, long) = (count * buy.each.unwrap_or(0.0), count * buy.length_mm / METRE);
                cost += this;
                metres += long;
                cells.push(Cell::figure_or_empty(buy.each, Look::MoneyAsked));
                cells.push(Cell::formula(format!("{}*{}", at(2), at(4)), this, Look::Money));
                cells.push(Cell::formula(format!("{}*{}/1000", at(2), at(3)), long, Look::Tenth));
            }
            rows.push(cells);
        }
        if let Some(why) = &group.refused {
            rows.push(vec![words(&group_name(lengths, group)), words(&format!("not counted: {why}"))]);
        }
    }
    let row = rows.len();
    let whole = |column| format!("SUM({}:{})", cell_name(column, 1), cell_name(column, row - 1));
    let mut total = vec![Cell::words("all timber", Look::Strong)];
    total.extend(std::iter::repeat_n(Cell::empty(), 4));
    // A sheet without rows has no range to sum.
    let sum = |column, value| if row > 1 { whole(column) } else { format!("{value}") };
    total.push(Cell::formula(sum(5, cost), cost, Look::MoneyStrong));
    total.push(Cell::formula(sum(6, metres), metres, Look::TenthStrong));
    rows.push(total);
    let from = format!("{TIMBER}!{}", cell_name(5, row));
    (Table { name: TIMBER, widths: vec![24.0, 26.0, 8.0, 12.0, 14.0, 14.0, 10.0], rows }, Sum { from, value: cost })
}

/// How many single things a unit counts, when it counts things.
fn things(unit: &str) -> Option<u32> {
    match unit {
        "each" => Some(1),
        "hundred" => Some(100),
        "thousand" => Some(1000),
        _ => None,
    }
}

fn lines_table(covering: &[Shown<'_>], rest: &[Shown<'_>]) -> (Table, Vec<(&'static str, Sum)>) {
    let names = [
        "item",
        "what",
        "size",
        "quantity",
        "unit",
        "price",
        "price per",
        "cost",
        "cost if chosen",
        "price asked",
        "how sure",
        "how it is counted",
    ];
    let mut rows = vec![head(&names)];
    let mut sums = Vec::new();
    for (name, lines) in [("Covering", covering), ("Fixings and the rest", rest)] {
        if lines.is_empty() {
            continue;
        }
        rows.push(vec![Cell::words(name, Look::Strong)]);
        let first = rows.len();
        let mut sum = 0.0;
        for line in lines {
            let (cells, cost) = line_row(line, rows.len());
            sum += cost;
            rows.push(cells);
        }
        let row = rows.len();
        let mut total = vec![Cell::empty(), Cell::words(format!("{name}, in all"), Look::Strong)];
        total.extend(std::iter::repeat_n(Cell::empty(), 5));
        let formula = format!("SUM({}:{})", cell_name(7, first), cell_name(7, row - 1));
        total.push(Cell::formula(formula, sum, Look::MoneyStrong));
        rows.push(total);
        sums.push((name, Sum { from: format!("'{LINES}'!{}", cell_name(7, row)), value: sum }));
    }
    let widths = vec![22.0, 34.0, 18.0, 11.0, 10.0, 12.0, 11.0, 13.0, 15.0, 13.0, 12.0, 60.0];
    (Table { name: LINES, widths, rows }, sums)
}

/// A line, and what it adds to the sum.
fn line_row(line: &Shown<'_>, row: usize) -> (Vec<Cell>, f64) {
    let price = line.price;
    let per = price.map_or(line.unit, |(_, per)| per);
    let (quantity, asked) = (cell_name(3, row), cell_name(5, row));
    let amount = price.map_or(0.0, |(amount, _)| amount);
    // Things go by the one, the hundred or the thousand; all else is priced by what it is counted in.
    let (formula, cost) = match (things(line.unit), things(per)) {
        (Some(counted), Some(of)) if counted != of => {
            (format!("{quantity}*{counted}/{of}*{asked}"), line.quantity * f64::from(counted) / f64::from(of) * amount)
        }
        _ => (format!("{quantity}*{asked}"), line.quantity * amount),
    };
    let chosen = line.kind == LineKind::ToChoose;
    let cost_cell = Cell::formula(formula, cost, Look::Money);
    let [in_sum, apart] = if chosen { [Cell::empty(), cost_cell] } else { [cost_cell, Cell::empty()] };
    let sure = match line.kind {
        LineKind::Counted => "counted",
        LineKind::Allowance => "allowance",
        LineKind::ToChoose => "to choose",
    };
    let cells = vec![
        words(line.item),
        words(line.what),
        words(line.size),
        Cell::figure(line.quantity, Look::Plain),
        words(line.unit),
        Cell::figure_or_empty(price.map(|(amount, _)| amount), Look::MoneyAsked),
        words(per),
        in_sum,
        apart,
        words(line.dated),
        words(sure),
        words(line.counted),
    ];
    (cells, if chosen { 0.0 } else { cost })
}

fn cutting_table(order: &Order, lengths: Lengths) -> Table {
    let names = [
        "layout",
        "section and class",
        "stock, mm",
        "off",
        "yard",
        "timbers, from the left",
        "cut",
        "what it does",
        "ends",
        "near edge, mm",
        "far edge, mm",
        "mitre, degrees",
        "tilt, degrees",
        "keep",
        "left over, mm",
        "offcuts kept",
    ];
    let mut rows = vec![head(&names)];
    for placed in placed(&order.timber) {
        let layout = placed.layout;
        let timbers: Vec<String> = layout.pieces.iter().map(whole_mark).collect();
        let of_layout = || {
            vec![
                Cell::figure(placed.number as f64, Look::Plain),
                words(&group_name(lengths, placed.timber)),
                Cell::figure(layout.length_mm, Look::Plain),
                Cell::figure(f64::from(layout.count), Look::Plain),
                words(layout.yard.as_deref().unwrap_or_default()),
                words(&timbers.join("; ")),
            ]
        };
        let left = [Cell::figure(tenth(layout.left_mm), Look::Plain), words(&placed.offcuts().join(", "))];
        for (k, cut) in layout.cuts.iter().enumerate() {
            let mut cells = of_layout();
            cells.extend([
                Cell::figure((k + 1) as f64, Look::Plain),
                words(cut_word(&cut.what)),
                words(&ends_words(layout, cut)),
                Cell::figure(tenth(cut.at_mm[0]), Look::Plain),
                Cell::figure(tenth(cut.at_mm[1]), Look::Plain),
                Cell::figure(tenth(cut.saw.mitre_deg), Look::Plain),
                Cell::figure(tenth(cut.saw.tilt_deg), Look::Plain),
                words(keep_word(cut.kerf_right)),
            ]);
            cells.extend(left.clone());
            rows.push(cells);
        }
        if layout.cuts.is_empty() {
            let mut cells = of_layout();
            cells.extend(std::iter::repeat_n(Cell::empty(), 8));
            cells.extend(left);
            rows.push(cells);
        }
    }
    let widths = vec![8.0, 24.0, 11.0, 6.0, 12.0, 50.0, 6.0, 13.0, 16.0, 15.0, 14.0, 15.0, 14.0, 8.0, 14.0, 16.0];
    Table { name: "Cutting plan", widths, rows }
}

/// To a tenth: what a tape and a saw are read to.
fn tenth(value: f64) -> f64 {
    (value * 10.0).round() / 10.0 + 0.0
}

fn quote_table(order: &Order, sums: Vec<(&'static str, Sum)>) -> Table {
    let mut rows = vec![head(&["quote", "percent", "amount"])];
    let line = |name: &str, formula: String, value: f64| {
        vec![Cell::words(name, Look::Plain), Cell::empty(), Cell::formula(formula, value, Look::Money)]
    };
    let total = |name: &str, formula: String, value: f64| {
        vec![Cell::words(name, Look::Strong), Cell::empty(), Cell::formula(formula, value, Look::MoneyStrong)]
    };
    let share = |name: &str, row: usize, of: usize| {
        let formula = format!("{}*{}/100", cell_name(2, of), cell_name(1, row));
        vec![
            Cell::words(name, Look::Plain),
            Cell::figure(0.0, Look::PercentAsked),
            Cell::formula(formula, 0.0, Look::Money),
        ]
    };
    let mut bought = 0.0;
    for (name, sum) in sums {
        bought += sum.value;
        rows.push(line(name, sum.from, sum.value));
    }
    let all = rows.len();
    rows.push(total("bought", format!("SUM({}:{})", cell_name(2, 1), cell_name(2, all - 1)), bought));
    rows.push(share("mark-up", all + 1, all));
    rows.push(total("before tax", format!("{}+{}", cell_name(2, all), cell_name(2, all + 1)), bought));
    rows.push(share("tax", all + 3, all + 2));
    rows.push(total("with tax", format!("{}+{}", cell_name(2, all + 2), cell_name(2, all + 3)), bought));
    rows.push(Vec::new());
    let mut notes = vec![
        "Write prices on the other sheets, and mark-up and tax here, in the framed cells. Labour is not in it."
            .to_owned(),
    ];
    notes.extend(order.quote.notes.iter().cloned());
    if !order.quote.not_priced.is_empty() {
        notes.push(format!("Without a price when this was written: {}.", order.quote.not_priced.join("; ")));
    }
    notes.extend(order.covering_refused.iter().map(|why| format!("The covering is not counted here. {why}")));
    rows.extend(notes.iter().map(|note| vec![words(note)]));
    Table { name: "Quote", widths: vec![34.0, 12.0, 16.0], rows }
}
