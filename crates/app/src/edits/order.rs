//! What is bought: prices, offcuts, the covering.

use super::{Changes, refused};
use crate::entries::phrase;
use crate::opening::{self, Open};
use crate::ordering::{Stocked, joined, section_of, stocked};
use crate::refusal::{FaultLine, Refusal};
use crate::views::{ItemPriceGiven, Offcut, OffcutGiven, StockPriceGiven};
use job::Job;
use job::edit::EditError;
use order::prices::{PriceListFaults, PutFault, put_into, read_csv};
use order::stock::same_section;

/// Offcuts whose lengths differ by less are alike, mm.
const SAME_LENGTH: f64 = 0.5;
/// What people write before a price.
const SIGNS: [char; 3] = ['£', '$', '€'];

/// A text as it stands in a file, between quotes; what would end them is left out.
fn quoted(text: &str) -> String {
    format!("\"{}\"", text.trim().replace(['"', '\\'], "").replace(char::is_control, ""))
}

/// A price as typed: without the sign of the currency, and with a point for its decimals.
fn price(text: &str) -> Result<String, Refusal> {
    let plain = text.trim().trim_start_matches(SIGNS).trim().replace(',', ".");
    match plain.parse::<f64>() {
        Ok(value) if value.is_finite() && value > 0.0 => Ok(plain.trim_start_matches('+').to_owned()),
        _ => Err(Refusal::new(
            "no-price",
            format!("{} is no price", quoted(text)),
            "Write a number above 0, such as 3.20, with a point before the pence or cents",
        )),
    }
}

fn open_job(open: &Open) -> Result<&Job, Refusal> {
    open.job.as_ref().map_err(Clone::clone)
}

/// Writes the price of a stock of timber, or takes it out.
pub(super) fn stock_price(open: &Open, given: &StockPriceGiven) -> Result<Changes, Refusal> {
    let job = open_job(open)?;
    let stock = stocked(job, &given.of).ok_or_else(|| {
        Refusal::new("no-such-stock", "The job has no such stock any more", "Open the order again, and write it there")
    })?;
    let mut keys: Vec<(&str, Option<String>)> = Vec::new();
    let written;
    if given.by_length {
        let mut each: Vec<(f64, String)> = Vec::new();
        for (length, typed) in stock.lengths(job).into_iter().zip(&given.lengths) {
            if !typed.trim().is_empty() {
                each.push((length, price(typed)?));
            }
        }
        written = !each.is_empty();
        let list = |one: &dyn Fn(&(f64, String)) -> String| {
            format!("[{}]", each.iter().map(one).collect::<Vec<_>>().join(", "))
        };
        keys.push(("price", None));
        if written {
            keys.push(("lengths", Some(list(&|(length, _)| length.to_string()))));
            keys.push(("prices", Some(list(&|(_, price)| price.clone()))));
        } else {
            keys.push(("prices", None));
        }
    } else {
        keys.push(("prices", None));
        let typed = given.metre.trim();
        written = !typed.is_empty();
        keys.push(("price", if written { Some(price(typed)?) } else { None }));
    }
    let dated = given.dated.trim();
    keys.push(("dated", (written && !dated.is_empty()).then(|| quoted(dated))));
    let (name, said) = match &stock {
        Stocked::Known(known) => (known.name.clone(), format!("Price of {}", known.name)),
        Stocked::New { section, class } => {
            let class = class.map(|class| class.name());
            (free_stock(open, *section, class), "Price of timber".to_owned())
        }
    };
    if let Stocked::New { section, class } = &stock {
        let mut group = vec![format!("size = {}", section_of(*section))];
        group.extend(class.map(|class| format!("class = \"{}\"", class.name())));
        group.extend(keys.into_iter().filter_map(|(word, value)| Some(format!("{word} = {}", value?))));
        if !written {
            return Err(Refusal::new("no-price", "No price is written", "Write a price first"));
        }
        let steps = vec![(format!("stock.{name}"), Some(format!("{{ {} }}", group.join(", "))))];
        return Ok(Changes { steps, said });
    }
    let there = |path: &String| open.said.has(path);
    let steps = keys
        .into_iter()
        .map(|(word, value)| (format!("stock.{name}.{word}"), value))
        .filter(|(path, value)| value.is_some() || there(path));
    Ok(Changes { steps: steps.collect(), said })
}

/// A name that the job has no stock of yet, as price lists name it.
fn free_stock(open: &Open, [thickness, depth]: [f64; 2], class: Option<&str>) -> String {
    let class = class.map_or_else(String::new, |class| format!("-{class}"));
    let plain = format!("timber-{thickness:.0}x{depth:.0}{class}");
    free(open, "stock", &plain)
}

/// A name that is free in a group: itself, or with a number behind it.
fn free(open: &Open, group: &str, plain: &str) -> String {
    let taken = open.said.names(group);
    let mut name = plain.to_owned();
    let mut number = 1_u32;
    while taken.contains(&name) {
        number += 1;
        name = format!("{plain}-{number}");
    }
    name
}

/// Writes the price of something that is no timber, or takes it out.
pub(super) fn item_price(open: &Open, given: &ItemPriceGiven) -> Result<Changes, Refusal> {
    let group = format!("price.{}", given.item);
    if given.price.trim().is_empty() {
        if !open.said.has(&group) {
            return Err(Refusal::new("no-price", "No price is written", "Write a price first"));
        }
        return Ok(Changes { steps: vec![(group, None)], said: format!("Price of {} taken out", given.item) });
    }
    let price = price(&given.price)?;
    let dated = given.dated.trim();
    let dated = (!dated.is_empty()).then(|| quoted(dated));
    let said = format!("Price of {} {price}", given.item);
    if open.said.has(&group) {
        let path = |word: &str| format!("{group}.{word}");
        let mut steps = vec![(path("price"), Some(price)), (path("per"), Some(given.per.clone()))];
        if dated.is_some() || open.said.has(&path("dated")) {
            steps.push((path("dated"), dated));
        }
        return Ok(Changes { steps, said });
    }
    let dated = dated.map_or_else(String::new, |dated| format!(", dated = {dated}"));
    let value = format!("{{ price = {price}, per = {}{dated} }}", quoted(&given.per));
    Ok(Changes { steps: vec![(group, Some(value))], said })
}

/// Reads a price list in. The roof stays as it is.
pub(super) fn price_list(open: &Open, text: &str) -> Result<(Open, String), Refusal> {
    let rows = read_csv(text.as_bytes()).map_err(|faults| of_list(&faults))?;
    let text = put_into(&open.text, &rows).map_err(|fault| match fault {
        PutFault::NotAJob(faults) => Refusal::of_faults(&faults),
        PutFault::Edit(EditError::Faults(faults)) => Refusal::of_faults(&faults),
        other => Refusal::new(
            "list-not-taken",
            crate::wording::capital(&other.to_string()),
            "Nothing was changed. Put that right, and read the list in again",
        ),
    })?;
    let said = if rows.len() == 1 { "1 price read in".to_owned() } else { format!("{} prices read in", rows.len()) };
    Ok((open.with_text(text)?, said))
}

fn of_list(faults: &PriceListFaults) -> Refusal {
    let lines: Vec<FaultLine> = faults
        .iter()
        .map(|fault| FaultLine {
            line: fault.line,
            column: 1,
            what: fault.what.clone(),
            why: fault.why.clone(),
            remedy: fault.remedy.clone(),
        })
        .collect();
    let what = match lines.as_slice() {
        [_] => "The price list has a fault".to_owned(),
        many => format!("The price list has {} faults", many.len()),
    };
    let remedy = "No price was changed. Mend what is listed, then read the list in again";
    Refusal { faults: lines, ..Refusal::new("price-list", what, remedy) }
}

/// Puts offcuts into the yard of the job: onto those that are alike, or under a name of their own.
pub(super) fn into_yard(open: &Open, offcuts: &[Offcut]) -> Result<Changes, Refusal> {
    let job = open_job(open)?;
    let offcuts = joined(offcuts);
    let mut steps: Vec<(String, Option<String>)> = Vec::new();
    let mut number = 1_u32;
    let taken = open.said.names("yard");
    for offcut in &offcuts {
        let section = [offcut.thickness_mm, offcut.depth_mm];
        let known = job.yard.iter().find(|yard| {
            same_section([yard.size.thickness, yard.size.depth], section)
                && yard.class.map(|class| class.name()) == offcut.class.as_deref()
                && (yard.length - offcut.length_mm).abs() < SAME_LENGTH
        });
        if let Some(yard) = known {
            let count = yard.count.saturating_add(offcut.count);
            steps.push((format!("yard.{}.count", yard.name), Some(count.to_string())));
            continue;
        }
        let name = loop {
            let name = format!("offcut-{number}");
            number += 1;
            if !taken.contains(&name) {
                break name;
            }
        };
        let class = offcut.class.as_ref().map_or_else(String::new, |class| format!(", class = {}", quoted(class)));
        let value = format!(
            "{{ size = {}, length = {}, count = {}{class} }}",
            section_of(section),
            offcut.length_mm,
            offcut.count
        );
        steps.push((format!("yard.{name}"), Some(value)));
    }
    if steps.is_empty() {
        return Err(Refusal::new("no-offcuts", "There are no offcuts to put there", "Choose some first"));
    }
    let all: u32 = offcuts.iter().map(|offcut| offcut.count).fold(0, u32::saturating_add);
    let said = if all == 1 { "1 offcut into the yard".to_owned() } else { format!("{all} offcuts into the yard") };
    Ok(Changes { steps, said })
}

/// Puts one kind of offcut into the yard, as typed: lengths with or without their units.
pub(super) fn one_into_yard(open: &Open, given: &OffcutGiven) -> Result<Changes, Refusal> {
    let name = free(open, "yard", "offcut");
    let typed = |text: &str| {
        let text = text.trim();
        if text.parse::<f64>().is_ok() { text.to_owned() } else { format!("'{}'", text.replace(['\'', '\\'], "")) }
    };
    let count = given.count.trim();
    let count = if count.is_empty() { "1" } else { count };
    let mut group = vec![
        format!("size = [{}, {}]", typed(&given.thickness), typed(&given.depth)),
        format!("length = {}", typed(&given.length)),
        format!("count = {}", typed(count)),
    ];
    let class = given.class.trim();
    group.extend((!class.is_empty()).then(|| format!("class = {}", quoted(class))));
    let steps = vec![(format!("yard.{name}"), Some(format!("{{ {} }}", group.join(", "))))];
    // Its line would be one of a text that is not there.
    let changes = Changes { steps, said: "Offcut into the yard".to_owned() };
    job::edit::set_all(&open.text, changes.each()).map_err(|error| {
        let fault = refused(&error);
        let (what, remedy) = match fault.faults.as_slice() {
            [only, ..] => (only.what.clone(), only.remedy.clone()),
            [] => (fault.what.clone(), fault.remedy.clone()),
        };
        Refusal { faults: Vec::new(), what, remedy, ..fault }
    })?;
    Ok(changes)
}

/// Chooses what covers the slopes. What was said of another covering's sizes goes: they are not this one's.
pub(super) fn covering(open: &Open, of: &str) -> Result<Changes, Refusal> {
    const SIZES: [&str; 8] =
        ["length", "width", "cover_width", "head_lap", "most_gauge", "least_pitch", "weight", "batten"];
    let of = of.trim();
    if of.is_empty() {
        if !open.said.has("covering") {
            return Err(Refusal::new("not-said", "The job chooses no covering", "Nothing needs to be taken out"));
        }
        let steps = vec![("covering".to_owned(), None)];
        return Ok(Changes { steps, said: "Covering taken out".to_owned() });
    }
    let mut steps = vec![("covering.of".to_owned(), Some(of.to_owned()))];
    if open.said.value("covering.of").is_some_and(|now| now != of) {
        let there = SIZES.iter().map(|word| format!("covering.{word}")).filter(|path| open.said.has(path));
        steps.extend(there.map(|path| (path, None)));
    }
    Ok(Changes { steps, said: format!("{} {of}", phrase("covering.of")) })
}

/// Whether an edit leaves the roof alone, so that it need not be built anew.
pub(super) fn leaves_the_roof(edit: &crate::views::Edit) -> bool {
    use crate::views::Edit;
    matches!(
        edit,
        Edit::StockPrice(_) | Edit::ItemPrice(_) | Edit::Yard { .. } | Edit::YardOne(_) | Edit::Covering { .. }
    )
}

/// The job with a change made that leaves the roof as it is.
pub(super) fn without_roof(open: &Open, changes: &Changes) -> Result<Open, Refusal> {
    let text = changes.applied(&open.text)?;
    match open.solution() {
        Ok(_) => open.with_text(text),
        Err(_) => opening::open(text),
    }
}
