//! Reads what is bought: stock, yard, prices and covering.

use super::group::{Group, Read};
use super::names::Named;
use super::reader::Reader;
use crate::{CoveringChoice, OrderAim, Ordering, Per, PriceOf, Section, StockTimber, StrengthClass, YardTimber};

/// What is said of the order.
pub(super) struct ReadOrder {
    pub(super) ordering: Ordering,
    pub(super) stock: Vec<StockTimber>,
    pub(super) yard: Vec<YardTimber>,
    pub(super) prices: Vec<PriceOf>,
    pub(super) covering: Option<CoveringChoice>,
}

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>) -> ReadOrder {
    let ordering = ordering(reader, root);
    let stock = reader.named(root, "stock").into_iter().map(|named| stock(reader, named)).collect();
    let yard = reader.named(root, "yard").into_iter().map(|named| yard(reader, named)).collect();
    let prices = reader.named(root, "price").into_iter().map(|named| price(reader, named)).collect();
    ReadOrder { ordering, stock, yard, prices, covering: covering(reader, root) }
}

fn ordering(reader: &mut Reader<'_>, root: &Group<'_>) -> Ordering {
    let group = reader.group(root, "order");
    Ordering {
        aim: reader.choice(&group, "aim", OrderAim::Cost).value,
        kerf: reader.needed(&group, "kerf").value,
        trim: reader.needed(&group, "trim").value,
        keep: reader.needed(&group, "keep").value,
        treated: reader.flag(&group, "treated").value,
        lift: reader.needed(&group, "lift").value,
    }
}

/// A section that must be there, as it lies in the stack: the smaller side is its thickness.
fn section(reader: &mut Reader<'_>, group: &Group<'_>) -> Section {
    let size = reader.size(group, "size").map_or(Section { thickness: 0.0, depth: 0.0 }, |read| read.value);
    if size.thickness <= size.depth { size } else { Section { thickness: size.depth, depth: size.thickness } }
}

fn class(reader: &mut Reader<'_>, group: &Group<'_>) -> Option<StrengthClass> {
    let read = reader.choice(group, "class", StrengthClass::C16);
    read.is_written().then_some(read.value)
}

fn line(reader: &mut Reader<'_>, group: &Group<'_>, word: &str) -> Option<String> {
    reader.line(group, word).map(|read| read.value)
}

fn value(read: Option<Read<f64>>) -> Option<f64> {
    read.map(|read| read.value)
}

fn stock(reader: &mut Reader<'_>, named: Named<'_>) -> StockTimber {
    let Named { name, group, .. } = named;
    let lengths = reader.lengths(&group, "lengths");
    let price = reader.number(&group, "price");
    let prices = reader.figures(&group, "prices");
    if let Some(prices) = &prices
        && prices.is_written()
        && prices.value.len() != lengths.len()
    {
        reader.fault(
            &prices.span,
            "prices-and-lengths",
            format!("`{}` has {} prices for {} lengths", group.path, prices.value.len(), lengths.len()),
            "Each price goes with the length in the same place, so one would be bought at the price of another",
            "Write as many prices as lengths, or price for a metre",
        );
    }
    if let (Some(price), Some(prices)) = (&price, &prices)
        && price.is_written()
        && prices.is_written()
    {
        reader.fault(
            &price.span,
            "priced-twice",
            format!("`{}` has a price for a metre and prices for its lengths", group.path),
            "Only one of them can be what is paid",
            "Take out price, or prices",
        );
    }
    StockTimber {
        size: section(reader, &group),
        class: class(reader, &group),
        lengths,
        price: value(price),
        prices: prices.map(|read| read.value).unwrap_or_default(),
        clean: reader.flag(&group, "clean").value,
        dated: line(reader, &group, "dated"),
        name,
    }
}

fn yard(reader: &mut Reader<'_>, named: Named<'_>) -> YardTimber {
    let Named { name, group, .. } = named;
    YardTimber {
        size: section(reader, &group),
        length: reader.needed(&group, "length").value,
        count: reader.count(&group, "count").map_or(1, |read| read.value),
        class: class(reader, &group),
        clean: reader.flag(&group, "clean").value,
        name,
    }
}

fn price(reader: &mut Reader<'_>, named: Named<'_>) -> PriceOf {
    let Named { name, group, .. } = named;
    PriceOf {
        item: name,
        price: reader.needed(&group, "price").value,
        per: reader.chosen(&group, "per", Per::Each).value,
        dated: line(reader, &group, "dated"),
    }
}

fn covering(reader: &mut Reader<'_>, root: &Group<'_>) -> Option<CoveringChoice> {
    let group = reader.group(root, "covering");
    let written = reader.says(&group);
    let of = line(reader, &group, "of").unwrap_or_default();
    let mut number = |word: &str| value(reader.number(&group, word));
    let choice = CoveringChoice {
        of,
        length: number("length"),
        width: number("width"),
        cover_width: number("cover_width"),
        head_lap: number("head_lap"),
        most_gauge: number("most_gauge"),
        least_pitch: number("least_pitch"),
        weight: number("weight"),
        breakage: number("breakage"),
        batten: reader.size(&group, "batten").map(|read| read.value),
        boarded: reader.flag(&group, "boarded").value,
    };
    written.then_some(choice)
}
