//! The order as comma-separated values: a row a line.

use order::buying::LineKind;
use order::whole::Order;

use crate::PackError;
use crate::members_csv::{figure, words};
use crate::order_sheets::buy::{Shown, lines_of};

const HEAD: [&str; 13] = [
    "group",
    "item",
    "what",
    "size",
    "length_mm",
    "from",
    "quantity",
    "unit",
    "price",
    "price_per",
    "cost",
    "kind",
    "counted",
];

/// What is bought as comma-separated values (RFC 4180, UTF-8), a head line and one line for each line of the order:
/// timber, what is taken from the yard, covering, fixings. Prices and costs are in the currency of the order, with a
/// full stop as decimal mark; without a price they are empty.
///
/// # Errors
/// [`PackError::List`] when the rows can't be written.
pub fn order_csv(order: &Order) -> Result<String, PackError> {
    let fault = |e: &dyn std::fmt::Display| PackError::List(e.to_string());
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    writer.write_record(HEAD).map_err(|e| fault(&e))?;
    for row in timber(order) {
        writer.write_record(row).map_err(|e| fault(&e))?;
    }
    let (covering, rest) = lines_of(order);
    for (group, lines) in [("covering", covering), ("fixings", rest)] {
        for shown in &lines {
            writer.write_record(line(group, shown)).map_err(|e| fault(&e))?;
        }
    }
    let bytes = writer.into_inner().map_err(|e| fault(&e))?;
    String::from_utf8(bytes).map_err(|e| fault(&e))
}

fn timber(order: &Order) -> Vec<[String; HEAD.len()]> {
    let mut out = Vec::new();
    for group in &order.timber {
        let size = format!("{}x{}", figure(group.size.thickness_mm), figure(group.size.depth_mm));
        for buy in &group.buy {
            let (of, from) = match (&buy.yard, &buy.stock) {
                (Some(yard), _) => ("yard", yard.as_str()),
                (None, stock) => ("timber", stock.as_deref().unwrap_or_default()),
            };
            let maybe = |v: Option<f64>| v.map_or_else(String::new, figure);
            out.push([
                of.to_owned(),
                String::new(),
                words(group.class.as_deref().unwrap_or("timber")),
                size.clone(),
                figure(buy.length_mm),
                words(from),
                buy.count.to_string(),
                "each".to_owned(),
                maybe(buy.each),
                if buy.each.is_some() { "each".to_owned() } else { String::new() },
                maybe(buy.each.map(|each| each * f64::from(buy.count))),
                "counted".to_owned(),
                String::new(),
            ]);
        }
    }
    out
}

fn line(group: &str, shown: &Shown<'_>) -> [String; HEAD.len()] {
    let price = shown.price;
    let kind = match shown.kind {
        LineKind::Counted => "counted",
        LineKind::Allowance => "allowance",
        LineKind::ToChoose => "to choose",
    };
    [
        group.to_owned(),
        words(shown.item),
        words(shown.what),
        words(shown.size),
        String::new(),
        String::new(),
        figure(shown.quantity),
        shown.unit.to_owned(),
        price.map_or_else(String::new, |(amount, _)| figure(amount)),
        price.map_or_else(String::new, |(_, per)| per.to_owned()),
        shown.cost.map_or_else(String::new, figure),
        kind.to_owned(),
        words(shown.counted),
    ]
}
