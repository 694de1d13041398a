//! What is bought besides timber.

use super::figures::{counted, kilograms, per_words, quantity};
use crate::views::OrderLine;
use crate::wording::Writing;
use job::{Job, Per};
use order::buying::{LiftLoad, LineKind, PricedLine};

/// What single things may be priced by.
const THINGS: [Per; 3] = [Per::Each, Per::Hundred, Per::Thousand];

/// A line, worded. A price that is written in the job is shown even where its unit does not fit the line.
pub(super) fn line(job: &Job, priced: &PricedLine, writing: &Writing) -> OrderLine {
    let line = &priced.line;
    let written = job.prices.iter().find(|price| price.item == line.item);
    let pers: Vec<Per> = if THINGS.contains(&line.unit) { THINGS.to_vec() } else { vec![line.unit] };
    let what = if line.size.is_empty() { line.what.clone() } else { format!("{}, {}", line.what, line.size) };
    let per = written.map(|price| price.per).filter(|per| pers.contains(per)).unwrap_or(line.unit);
    OrderLine {
        item: line.item.clone(),
        what: writing.say_first(&what),
        quantity: quantity(line.quantity, line.unit),
        counted: writing.sentence(&line.counted),
        source: match (line.source.is_empty(), line.standing.is_empty()) {
            (true, _) => String::new(),
            (false, true) => writing.sentence(&line.source),
            (false, false) => writing.sentence(&format!("{} ({})", line.source, line.standing)),
        },
        remark: match line.kind {
            LineKind::Counted => String::new(),
            LineKind::Allowance => "an allowance".to_owned(),
            LineKind::ToChoose => "if you choose it".to_owned(),
        },
        weight: if line.kg > 0.0 { kilograms(line.kg) } else { String::new() },
        cost: priced.cost.map(|cost| writing.money(cost.amount())),
        price: written.map(|price| price.price.to_string()).unwrap_or_default(),
        per: per.word().to_owned(),
        pers: pers.iter().map(|per| (per.word().to_owned(), writing.say(per_words(*per)))).collect(),
        dated: written.and_then(|price| price.dated.clone()).unwrap_or_default(),
    }
}

/// How often the hoist goes up for one kind of thing.
pub(super) fn lift(load: &LiftLoad, lift_kg: f64, writing: &Writing) -> String {
    let what = writing.say_first(&load.what);
    if load.lifts == 0 {
        let (each, most) = (kilograms(load.each_kg), kilograms(lift_kg));
        return format!("{what}: one weighs {each}, more than the {most} of a lift.");
    }
    format!("{what}: {}, {}.", kilograms(load.kg), counted(load.lifts, "lift", "lifts"))
}
