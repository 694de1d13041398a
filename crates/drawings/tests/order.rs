//! The lists of an order as their reader gets them. The spreadsheet is read back with a general library.

use crate::fixture;
use crate::order_fixture;
use calamine::{Data, Reader, Xlsx};
use drawings::{order_csv, order_xlsx};
use order::whole::Order;
use std::collections::BTreeMap;
use std::io::Cursor;

/// Results are compared to this: sums of a few hundred pounds in binary fractions.
const SAME: f64 = 1e-6;

type Book = BTreeMap<String, (Vec<Vec<Data>>, BTreeMap<(u32, u32), String>)>;

fn read(bytes: Vec<u8>) -> Book {
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).unwrap();
    let names = book.sheet_names();
    assert_eq!(names, ["Timber", "Covering and fixings", "Cutting plan", "Quote"]);
    let mut out = BTreeMap::new();
    for name in names {
        let range = book.worksheet_range(&name).unwrap();
        assert_eq!(range.start(), Some((0, 0)));
        let rows = range.rows().map(<[Data]>::to_vec).collect();
        let formulas = book.worksheet_formula(&name).unwrap();
        let (top, left) = formulas.start().unwrap_or((0, 0));
        let found = formulas
            .used_cells()
            .filter(|(_, _, text)| !text.is_empty())
            .map(|(r, c, text)| ((r as u32 + top, c as u32 + left), text.clone()))
            .collect();
        out.insert(name, (rows, found));
    }
    out
}

fn number(data: Option<&Data>) -> f64 {
    match data {
        Some(Data::Float(value)) => *value,
        Some(Data::Int(value)) => *value as f64,
        _ => 0.0,
    }
}

/// A small reckoner of its own for the formulas in these files: sums of ranges, and cells and numbers joined by
/// `*`, `/` and `+` from the left.
fn reckon(book: &Book, sheet: &str, formula: &str) -> f64 {
    let cell = |sheet: &str, name: &str| {
        let digits = name.find(|c: char| c.is_ascii_digit()).unwrap();
        let column = name[..digits].bytes().fold(0, |n, b| n * 26 + usize::from(b - b'A') + 1) - 1;
        let row: usize = name[digits..].parse().unwrap();
        number(book[sheet].0.get(row - 1).and_then(|r| r.get(column)))
    };
    if let Some(range) = formula.strip_prefix("SUM(").and_then(|f| f.strip_suffix(')')) {
        let (from, to) = range.split_once(':').unwrap();
        let column = from.trim_end_matches(|c: char| c.is_ascii_digit());
        let row = |name: &str| name[column.len()..].parse::<usize>().unwrap();
        return (row(from)..=row(to)).map(|r| cell(sheet, &format!("{column}{r}"))).sum();
    }
    if let Some((other, name)) = formula.split_once('!') {
        return cell(other.trim_matches('\''), name);
    }
    let (mut value, mut sign, mut term) = (f64::NAN, '=', String::new());
    for c in formula.chars().chain(['=']) {
        if c.is_ascii_alphanumeric() || c == '.' {
            term.push(c);
            continue;
        }
        let operand = term.parse().unwrap_or_else(|_| cell(sheet, &term));
        value = match sign {
            '*' => value * operand,
            '/' => value / operand,
            '+' => value + operand,
            _ => operand,
        };
        sign = c;
        term.clear();
    }
    value
}

fn order() -> Order {
    order_fixture::made("")
}

#[test]
fn every_formula_gives_the_result_that_is_stored_with_it() {
    let book = read(order_xlsx(&fixture::hipped(), &order()).unwrap());
    let mut checked = 0;
    for (name, (rows, formulas)) in &book {
        for ((row, column), formula) in formulas {
            let stored = number(rows[*row as usize].get(*column as usize));
            let own = reckon(&book, name, formula);
            assert!((stored - own).abs() < SAME, "{name} {row},{column} `{formula}`: {stored}, reckoned {own}");
            checked += 1;
        }
    }
    // Five bought lengths with two formulas each and their sums; six lines and two sums; three sources and five sums.
    assert_eq!(checked, 5 * 2 + 2 + 6 + 2 + 3 + 5);
}

#[test]
fn the_spreadsheet_comes_to_what_the_order_comes_to() {
    let order = order();
    let book = read(order_xlsx(&fixture::hipped(), &order).unwrap());
    let (quote, _) = &book["Quote"];
    let bought = quote.iter().find(|row| row[0] == Data::String("bought".into())).unwrap();
    assert!((number(bought.get(2)) - order.quote.total.amount()).abs() < 0.005, "{bought:?}");
    let (timber, _) = &book["Timber"];
    let rows: usize = order.timber.iter().map(|t| t.buy.len() + usize::from(t.refused.is_some())).sum();
    assert_eq!(timber.len(), 1 + rows + 1);
    let whole: f64 = order.timber.iter().map(|t| t.bought_m).sum();
    assert!((number(timber.last().unwrap().get(6)) - whole).abs() < SAME);
    let (plan, _) = &book["Cutting plan"];
    let cuts: usize = order.timber.iter().flat_map(|t| &t.layouts).map(|l| l.cuts.len()).sum();
    assert_eq!(plan.len(), 1 + cuts);
}

#[test]
fn what_has_no_price_is_an_empty_cell_with_its_formula() {
    let book = read(order_xlsx(&fixture::hipped(), &order()).unwrap());
    let (rows, formulas) = &book["Timber"];
    let row = rows.iter().position(|r| r[0] == Data::String("32 × 225".into())).unwrap();
    assert_eq!(rows[row].get(4), Some(&Data::Empty));
    assert_eq!(formulas[&(row as u32, 5)], format!("C{0}*E{0}", row + 1));
}

#[test]
fn names_are_never_formulas_and_odd_figures_leave_cells_empty() {
    let mut order = order_fixture::made(" & <\"tail\"> \u{1}");
    order.timber[1].buy[2].yard = Some("=1+1".into());
    order.timber[0].buy[0].each = Some(f64::NAN);
    order.currency = "\"&<".into();
    order.lines[0].line.quantity = f64::INFINITY;
    let book = read(order_xlsx(&fixture::hipped(), &order).unwrap());
    let (rows, _) = &book["Covering and fixings"];
    assert!(rows.iter().flatten().any(|d| matches!(d, Data::String(s) if s.contains("& <\"tail\">"))));
    let mut lead = order_fixture::made("");
    lead.lines[0].line.what = "=1+1".into();
    assert!(order_csv(&lead).unwrap().contains(", =1+1,") || order_csv(&lead).unwrap().contains(" =1+1"));
}

#[test]
fn the_same_order_gives_the_same_bytes() {
    let solution = fixture::hipped();
    let first = order_xlsx(&solution, &order()).unwrap();
    assert_eq!(first, order_xlsx(&solution, &order()).unwrap());
    assert!(first.starts_with(b"PK"));
    // No clock in it: the earliest time that the container can say, 1 January 1980.
    assert_eq!(&first[10..14], &[0x00, 0x00, 0x21, 0x00]);
    assert!(!first.windows(7).any(|w| w == b"dcterms"));
}

#[test]
fn the_list_has_a_row_for_every_line() {
    let order = order();
    let text = order_csv(&order).unwrap();
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().unwrap().clone();
    let column = |name: &str| head.iter().position(|h| h == name).unwrap();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let buys: usize = order.timber.iter().map(|t| t.buy.len()).sum();
    assert_eq!(rows.len(), buys + order.lines.len());
    let cost = |row: &csv::StringRecord| row[column("cost")].parse::<f64>().unwrap_or(0.0);
    let whole: f64 = rows.iter().filter(|r| &r[column("kind")] != "to choose").map(cost).sum();
    assert!((whole - order.quote.total.amount()).abs() < 0.01, "{whole}");
    assert_eq!(rows.iter().filter(|r| &r[0] == "yard").count(), 1);
}
