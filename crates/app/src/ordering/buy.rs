//! What to buy of one section and class.

use super::figures::{counted, kilograms};
use super::pricing;
use crate::views::{Figure, OrderBuy, OrderTimber};
use crate::wording::Writing;
use crate::wording::capital;
use job::Job;
use job::written::tenth;
use order::whole::{Best, Buy, TimberOut};
use roof::solution::Solution;

/// Lengths and sums that differ by less are no saving, m or in the currency: less than is written.
const NOTHING: f64 = 0.05;

/// The name of a group in other calls.
pub(super) fn id(timber: &TimberOut) -> String {
    let size = timber.size;
    let section = format!("{}x{}", size.thickness_mm, size.depth_mm);
    timber.class.as_ref().map_or_else(|| section.clone(), |class| format!("{section} {class}"))
}

/// The group, worded.
pub(super) fn timber(job: &Job, solution: &Solution, timber: &TimberOut, writing: &Writing) -> OrderTimber {
    let (yard, buy): (Vec<&Buy>, Vec<&Buy>) = timber.buy.iter().partition(|buy| buy.yard.is_some());
    let row = |buy: &&Buy| OrderBuy {
        count: buy.count.to_string(),
        length: writing.length(buy.length_mm),
        each: buy.each.map(|each| format!("{} each", writing.money(each))),
    };
    let figure = |label: &str, value: String| Figure { label: writing.say(label), value, why: None };
    let cost = timber.cost.map_or_else(|| "no price yet".to_owned(), |cost| writing.money(cost));
    OrderTimber {
        id: id(timber),
        title: writing.title(timber),
        kinds: kinds(solution, timber, writing),
        timbers: counted(timber.timbers, "timber", "timbers"),
        buy: buy.iter().map(row).collect(),
        yard: yard.iter().map(row).collect(),
        figures: vec![
            figure("Together", writing.metres(timber.bought_m)),
            figure("Weight", kilograms(timber.kg)),
            figure("Cost", cost),
        ],
        priced: timber.cost.is_some(),
        best: best(&timber.best, writing),
        proven: timber.best.proven,
        saving: saving(timber, writing),
        waste: format!("{} % goes into sawdust and short ends.", tenth(timber.waste_percent.max(0.0))),
        refused: timber.refused.as_ref().map(|why| writing.sentence(why)),
        prices: pricing::prices(job, timber, writing),
    }
}

/// Which kinds of timber are cut from a group, in the order in which they come.
fn kinds(solution: &Solution, timber: &TimberOut, writing: &Writing) -> String {
    let mut names: Vec<String> = Vec::new();
    for laid in timber.layouts.iter().flat_map(|layout| &layout.pieces) {
        if let Some(member) = solution.members.iter().find(|member| member.mark == laid.card) {
            let name = writing.say(&format!("{}s", member.kind.name()));
            if !names.contains(&name) {
                names.push(name);
            }
        }
    }
    capital(&names.join(", "))
}

/// How far the plan is from the best. Nothing better is claimed not to exist unless that is proven.
fn best(best: &Best, writing: &Writing) -> String {
    let least = match best.of.as_str() {
        "money" => "costs less",
        "waste" => "wastes less",
        _ => "buys less",
    };
    if best.proven {
        return format!("No other way of cutting {least}: that is proven.");
    }
    let gap = (best.value - best.at_least).max(0.0);
    let much = match best.of.as_str() {
        "money" => writing.money(gap),
        _ => writing.metres(gap),
    };
    let share =
        if best.at_least > 0.0 { format!(" ({} %)", tenth(gap / best.at_least * 100.0)) } else { String::new() };
    format!("At most {much}{share} over the least that any way of cutting could need.")
}

/// What shared cuts save against every timber in its box.
fn saving(timber: &TimberOut, writing: &Writing) -> Option<String> {
    let plain = timber.unshared?;
    let metres = plain.bought_m - timber.bought_m;
    let money = plain.cost.zip(timber.cost).map(|(plain, cost)| plain - cost).filter(|saved| *saved > NOTHING);
    let saved = match (metres > NOTHING, money) {
        (false, None) => return None,
        (true, None) => writing.metres(metres),
        (false, Some(money)) => writing.money(money),
        (true, Some(money)) => format!("{} and {}", writing.metres(metres), writing.money(money)),
    };
    Some(format!("Cuts that two timbers share save {saved}."))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::views::Dialect;
    use job::written::Lengths;

    #[test]
    fn the_best_is_claimed_only_when_it_is_proven() {
        let writing = Writing { lengths: Lengths::Millimetres, words: Dialect::Uk, currency: "£".to_owned() };
        let of = |of: &str, value: f64, at_least: f64, proven: bool| {
            best(&Best { of: of.to_owned(), value, at_least, proven }, &writing)
        };
        assert_eq!(of("money", 90.0, 90.0, true), "No other way of cutting costs less: that is proven.");
        let over = "over the least that any way of cutting could need.";
        assert_eq!(of("money", 101.0, 100.0, false), format!("At most £1.00 (1 %) {over}"));
        assert_eq!(of("length", 51.0, 50.0, false), format!("At most 1.0 m (2 %) {over}"));
        assert_eq!(of("waste", 0.4, 0.0, false), format!("At most 0.4 m {over}"));
    }
}
