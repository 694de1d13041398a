//! The sheet of what to buy: timber, what lies in the yard, covering and fixings, sums.

use job::written::{Lengths, fixed};
use order::buying::{LineKind, NoticeLevel, PricedLine};
use order::money::Money;
use order::whole::Order;
use order::whole::out::{Buy, TimberOut};
use roof::solution::Solution;

use crate::flow::Flow;
use crate::order_sheets::words::{METRE, group_name, kilograms, money, money_or, quantity};
use crate::page::{LEFT, Page, ROOM};
use crate::sheet::{Anchor, Role};
use crate::table::{Column, Table};
use crate::text::{Style, one_line};

const CAUTION: &str = "Check sections and strength classes against the engineer's or building control's approval, and \
                       count again what was measured on site, before ordering. No tax, delivery or discount in these \
                       figures.";
const WORDS: Style = Style::regular(10.0);
/// Notes at the end.
const NOTE: Style = Style::regular(8.5);
const STRONG: Style = Style::bold(11.0);
const FIGURE: Style = Style::bold(13.0);
/// Heading of a part of a sheet.
const PART: Style = Style::bold(14.0);
/// Height of such a heading, mm.
const PART_HEIGHT: f64 = 9.0;
/// Space above it, mm.
const PART_SPACE: f64 = 3.0;
/// A heading is not left alone at the foot of a sheet: height that must follow it, mm.
const AFTER_PART: f64 = 18.0;
/// How a line is counted, in words.
const COUNTED: Style = Style::regular(8.5);
/// Lines of a cell.
const MOST_LINES: usize = 12;
/// Lines of a paragraph.
const MOST_PARAGRAPH: usize = 6;
/// Things that are told one by one before the rest is only counted.
const MOST_NOTES: usize = 24;

/// The sheets.
pub fn pages(solution: &Solution, order: &Order) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("What to buy", false, CAUTION);
    before(&mut flow, order, lengths);
    timber(&mut flow, order, lengths);
    yard(&mut flow, order, lengths);
    let (covering, rest) = lines_of(order);
    lines(&mut flow, &covering_heading(order), &covering, &order.currency);
    lines(&mut flow, "Fixings and the rest", &rest, &order.currency);
    sums(&mut flow, order);
    notes(&mut flow, order);
    flow.finish()
}

/// A heading of a part of a sheet, with room for what follows it.
pub fn part(flow: &mut Flow, heading: &str) {
    if flow.left() < PART_SPACE + PART_HEIGHT + AFTER_PART {
        flow.break_page();
    } else {
        flow.space(PART_SPACE);
    }
    let (sheet, y) = flow.block(PART_HEIGHT);
    sheet.part(Role::Heading, |s| {
        s.text_within([LEFT, y + 6.0], Anchor::Start, PART, heading, ROOM);
    });
}

/// Lines one below another; they may go on on the next sheet.
pub fn paragraph(flow: &mut Flow, style: Style, text: &str) {
    for line in style.wrap_at_most(&one_line(text), ROOM, MOST_PARAGRAPH) {
        let (sheet, y) = flow.block(style.line_mm());
        sheet.text([LEFT, y + style.cap_mm() + 0.6], Anchor::Start, style, &line);
    }
    flow.space(1.0);
}

/// What stands in the way of ordering.
fn before(flow: &mut Flow, order: &Order, lengths: Lengths) {
    let mut told: Vec<String> = Vec::new();
    for timber in &order.timber {
        if let Some(why) = &timber.refused {
            told.push(format!("{}, {} timbers: not counted here. {why}", group_name(lengths, timber), timber.timbers));
        }
    }
    let of_timber = |text: &str| order.timber.iter().any(|t| t.refused.as_deref() == Some(text));
    if let Some(why) = &order.covering_refused {
        told.push(format!("The covering is not counted here. {why}"));
    }
    let warned = order.notices.iter().filter(|n| n.level == NoticeLevel::Warn && !of_timber(&n.text));
    told.extend(warned.map(|n| n.text.clone()));
    if told.is_empty() {
        return;
    }
    part(flow, "Before you order");
    many(flow, STRONG, &told);
}

/// Paragraphs, the rest of very many only counted.
fn many(flow: &mut Flow, style: Style, texts: &[String]) {
    for text in texts.iter().take(MOST_NOTES) {
        paragraph(flow, style, text);
    }
    if texts.len() > MOST_NOTES {
        paragraph(flow, style, &format!("And {} more; the app shows all.", texts.len() - MOST_NOTES));
    }
}

fn timber(flow: &mut Flow, order: &Order, lengths: Lengths) {
    let groups: Vec<&TimberOut> = order.timber.iter().filter(|t| t.refused.is_none()).collect();
    if groups.is_empty() {
        return;
    }
    part(flow, if order.treated { "Timber: what carries is bought treated" } else { "Timber" });
    let mut table = Table::new(&[
        Column::words("section and class", 52.0, FIGURE),
        Column::figures("buy", 20.0, FIGURE),
        Column::words("", 8.0, WORDS),
        Column::figures("length", 30.0, FIGURE),
        Column::words("", 45.0, WORDS),
        Column::figures("price of one", 28.0, WORDS),
        Column::figures("cost", 34.0, STRONG),
        Column::figures("bought", 30.0, STRONG),
        Column::figures("weight", 30.0, STRONG),
    ]);
    for group in &groups {
        rows_of(&mut table, order, group, lengths);
    }
    let all = |of: fn(&TimberOut) -> f64| groups.iter().map(|t| of(t)).sum::<f64>();
    let cost: Option<f64> = groups.iter().map(|t| t.cost).sum();
    let none = String::new();
    table.row(
        &[
            "all timber".to_owned(),
            none.clone(),
            none.clone(),
            none.clone(),
            none.clone(),
            none,
            cost.map_or_else(String::new, |c| money(&order.currency, c)),
            lengths.total(all(|t| t.bought_m) * METRE),
            kilograms(all(|t| t.kg)),
        ],
        1,
    );
    flow.table(&table);
}

/// What is bought of one section and class: a row a length, its sums beside the last.
fn rows_of(table: &mut Table, order: &Order, group: &TimberOut, lengths: Lengths) {
    let bought: Vec<&Buy> = group.buy.iter().filter(|b| b.yard.is_none()).collect();
    let last = bought.len().saturating_sub(1);
    for (k, buy) in bought.iter().enumerate() {
        let sum = |text: String| if k == last { text } else { String::new() };
        let cells = [
            if k == 0 { group_name(lengths, group) } else { String::new() },
            buy.count.to_string(),
            "×".to_owned(),
            lengths.write_with_unit(buy.length_mm),
            buy.stock.clone().unwrap_or_default(),
            money_or(&order.currency, buy.each),
            sum(money_or(&order.currency, group.cost)),
            sum(lengths.total(group.bought_m * METRE)),
            sum(kilograms(group.kg)),
        ];
        table.row(&cells, MOST_LINES);
    }
    if bought.is_empty() {
        let mut cells = vec![String::new(); 9];
        cells[0] = group_name(lengths, group);
        cells[4] = "nothing to buy".to_owned();
        table.row(&cells, MOST_LINES);
    }
}

fn yard(flow: &mut Flow, order: &Order, lengths: Lengths) {
    let mut table = Table::new(&[
        Column::words("section and class", 52.0, FIGURE),
        Column::figures("take", 20.0, FIGURE),
        Column::words("", 8.0, WORDS),
        Column::figures("length", 30.0, FIGURE),
        Column::words("its name in the yard", 167.0, WORDS),
    ]);
    for group in &order.timber {
        for buy in &group.buy {
            if let Some(name) = &buy.yard {
                let length = lengths.write_with_unit(buy.length_mm);
                let cells = [group_name(lengths, group), buy.count.to_string(), "×".to_owned(), length, name.clone()];
                table.row(&cells, MOST_LINES);
            }
        }
    }
    if table.len() > 0 {
        part(flow, "Take from the yard");
        flow.table(&table);
    }
}

/// A line as it is shown: with its price, when it has one.
pub struct Shown<'a> {
    /// Word of its price.
    pub item: &'a str,
    /// In words.
    pub what: &'a str,
    /// Its size.
    pub size: &'a str,
    /// How much.
    pub quantity: f64,
    /// Of what.
    pub unit: &'static str,
    /// How it was counted.
    pub counted: &'a str,
    /// How sure it is.
    pub kind: LineKind,
    /// Its price, and the unit it is of.
    pub price: Option<(f64, &'static str)>,
    /// What it comes to.
    pub cost: Option<f64>,
    /// When its price was asked.
    pub dated: &'a str,
}

/// Lines of the covering, and all others.
pub fn lines_of(order: &Order) -> (Vec<Shown<'_>>, Vec<Shown<'_>>) {
    let all: Vec<Shown<'_>> = order.lines.iter().map(shown).collect();
    let mut covering = all;
    let rest = covering.split_off((order.covering_lines as usize).min(covering.len()));
    (covering, rest)
}

fn shown(priced: &PricedLine) -> Shown<'_> {
    let line = &priced.line;
    Shown {
        item: &line.item,
        what: &line.what,
        size: &line.size,
        quantity: line.quantity,
        unit: line.unit.word(),
        counted: &line.counted,
        kind: line.kind,
        price: priced.price.map(|p| (p.amount, p.per.word())),
        cost: priced.cost.map(Money::amount),
        dated: priced.dated.as_deref().unwrap_or_default(),
    }
}

/// A unit as sheets write it.
fn unit_written(unit: &str) -> &str {
    match unit {
        "each" => "",
        "m2" => "m²",
        "m3" => "m³",
        other => other,
    }
}

fn covering_heading(order: &Order) -> String {
    order.covering.as_ref().map_or_else(
        || "Covering".to_owned(),
        |c| format!("Covering: {}, {} m² of slopes", one_line(&c.called), fixed(c.area_m2, 1)),
    )
}

fn lines(flow: &mut Flow, heading: &str, lines: &[Shown<'_>], currency: &str) {
    if lines.is_empty() {
        return;
    }
    part(flow, heading);
    let mut table = Table::new(&[
        Column::words("what", 53.0, STRONG),
        Column::words("size", 29.0, WORDS),
        Column::figures("quantity", 21.0, FIGURE),
        Column::words("", 18.0, WORDS),
        Column::figures("price", 35.0, WORDS),
        Column::figures("cost", 25.0, STRONG),
        Column::words("how it is counted", 96.0, COUNTED),
    ]);
    for line in lines {
        let sure = match line.kind {
            LineKind::Counted => "",
            LineKind::Allowance => "Allowance: ",
            LineKind::ToChoose => "To choose, not in the sum: ",
        };
        let price = line.price.map_or_else(
            || "no price".to_owned(),
            |(amount, per)| format!("{} per {}", money(currency, amount), unit_written_or_each(per)),
        );
        let cost = line.cost.map_or_else(String::new, |c| money(currency, c));
        let cells = [
            line.what.to_owned(),
            line.size.to_owned(),
            quantity(line.quantity),
            unit_written(line.unit).to_owned(),
            price,
            cost,
            format!("{sure}{}", line.counted),
        ];
        table.row(&cells, MOST_LINES);
    }
    flow.table(&table);
}

fn unit_written_or_each(unit: &str) -> &str {
    let written = unit_written(unit);
    if written.is_empty() { "one" } else { written }
}

fn sums(flow: &mut Flow, order: &Order) {
    let quote = &order.quote;
    let mut table = Table::new(&[
        Column::words("sums", 90.0, FIGURE),
        Column::figures("with a price", 36.0, WORDS),
        Column::figures("without", 36.0, STRONG),
        Column::figures("sum of what has a price", 50.0, FIGURE),
    ]);
    for group in &quote.groups {
        let without = if group.not_priced > 0 { group.not_priced.to_string() } else { "–".to_owned() };
        let cells =
            [group.group.clone(), group.priced.to_string(), without, money(&order.currency, group.sum.amount())];
        table.row(&cells, MOST_LINES);
    }
    let none = String::new();
    table.row(&["in all".to_owned(), none.clone(), none, money(&order.currency, quote.total.amount())], 1);
    part(flow, "What it comes to");
    if table.height() > flow.left() {
        flow.space(flow.left());
    }
    flow.table(&table);
    flow.space(2.0);
    many(flow, STRONG, &quote.notes);
    if !quote.not_priced.is_empty() {
        paragraph(flow, WORDS, &format!("Without a price: {}.", quote.not_priced.join("; ")));
    }
    if !quote.to_choose.is_empty() {
        let chosen = |(what, cost): &(String, Option<Money>)| {
            format!("{what} ({})", money_or(&order.currency, cost.map(Money::amount)))
        };
        let told: Vec<String> = quote.to_choose.iter().map(chosen).collect();
        paragraph(flow, WORDS, &format!("To choose, and not in the sum: {}.", told.join("; ")));
    }
}

fn notes(flow: &mut Flow, order: &Order) {
    let mut told: Vec<String> = order.cautions.clone();
    let noted = order.notices.iter().filter(|n| n.level == NoticeLevel::Note);
    told.extend(noted.map(|n| n.text.clone()));
    let covering = order.covering.iter().flat_map(|c| &c.notices);
    told.extend(covering.map(|n| format!("{}: {}", n.place, n.text)));
    if told.is_empty() {
        return;
    }
    part(flow, "To mind");
    many(flow, NOTE, &told);
}
