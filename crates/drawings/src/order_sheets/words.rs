//! Words and figures that the sheets and lists of an order share.

use job::written::{Lengths, fixed, tenth};
use order::whole::out::{Best, Layout, TimberOut};

use crate::text::one_line;

/// Amounts beyond this are not written: no roof costs it.
const MOST_MONEY: f64 = 1e12;
/// Millimetres in a metre.
pub const METRE: f64 = 1000.0;

/// An amount with its sign and thousands apart: `£1,234.50`.
pub fn money(currency: &str, amount: f64) -> String {
    if !amount.is_finite() || amount.abs() > MOST_MONEY {
        return "–".to_owned();
    }
    let written = fixed(amount.abs(), 2);
    let (whole, part) = written.split_once('.').unwrap_or((&written, "00"));
    let mut grouped = String::new();
    for (k, digit) in whole.chars().enumerate() {
        if k > 0 && (whole.len() - k) % 3 == 0 {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    let sign = if amount < 0.0 { "-" } else { "" };
    format!("{sign}{}{grouped}.{part}", one_line(currency))
}

/// An amount, or that there is none.
pub fn money_or(currency: &str, amount: Option<f64>) -> String {
    amount.map_or_else(|| "no price".to_owned(), |amount| money(currency, amount))
}

/// Section and class of a group of timbers: `47 × 150 C24`.
pub fn group_name(lengths: Lengths, timber: &TimberOut) -> String {
    let section = lengths.section(timber.size.thickness_mm, timber.size.depth_mm);
    timber.class.as_ref().map_or_else(|| section.clone(), |class| format!("{section} {}", one_line(class)))
}

/// A weight, whole kilograms.
pub fn kilograms(kg: f64) -> String {
    format!("{} kg", fixed(kg, 0))
}

/// A quantity: whole figures whole, others to a tenth.
pub fn quantity(value: f64) -> String {
    tenth(value)
}

/// How far a plan is from the best there can be.
pub fn best_words(best: &Best) -> String {
    let (least, what) = match best.of.as_str() {
        "money" => ("cost less", "least cost"),
        "waste" => ("waste less", "least waste"),
        _ => ("do with less length", "least length"),
    };
    if best.proven {
        return format!("No plan can {least}.");
    }
    let over = (best.value - best.at_least) / best.at_least * 100.0;
    if best.at_least > 0.0 && over.is_finite() {
        format!("Within {} % of the {what} there can be.", fixed((over * 10.0).ceil() / 10.0, 1))
    } else {
        format!("Not proven to be the {what} there can be.")
    }
}

/// What sharing cuts saves, as both plans are; empty when it saves nothing.
pub fn shared_words(currency: &str, timber: &TimberOut) -> String {
    let Some(plain) = timber.unshared else { return String::new() };
    let length = |m: f64| format!("{} m", fixed(m, 1));
    if plain.bought_m <= timber.bought_m && plain.cost.unwrap_or(0.0) <= timber.cost.unwrap_or(0.0) {
        return String::new();
    }
    match (plain.cost, timber.cost) {
        (Some(without), Some(with)) => format!(
            "Cuts are shared: {} for {}. Without that {} for {}.",
            length(timber.bought_m),
            money(currency, with),
            length(plain.bought_m),
            money(currency, without)
        ),
        _ => format!("Cuts are shared: {}. Without that {}.", length(timber.bought_m), length(plain.bought_m)),
    }
}

/// What a cut is for, in a word.
pub fn cut_word(what: &str) -> &str {
    match what {
        "squaring" => "square",
        "parting" => "part",
        "shared" => "share",
        "trimming" => "trim",
        other => other,
    }
}

/// The side of a cut that is kept.
pub const fn keep_word(kerf_right: bool) -> &'static str {
    if kerf_right { "left" } else { "right" }
}

/// A layout with its place in the whole plan.
pub struct Placed<'a> {
    /// Number in the whole plan, from 1.
    pub number: usize,
    /// The timber it is of.
    pub timber: &'a TimberOut,
    /// The layout.
    pub layout: &'a Layout,
    /// Number of its first offcut that is kept, from 1; counts on through its lengths.
    pub first_offcut: usize,
}

/// All layouts, numbered through.
pub fn placed(timber: &[TimberOut]) -> Vec<Placed<'_>> {
    let mut out: Vec<Placed<'_>> = Vec::new();
    let mut offcut = 1;
    for group in timber {
        for layout in &group.layouts {
            out.push(Placed { number: out.len() + 1, timber: group, layout, first_offcut: offcut });
            if layout.kept {
                offcut += layout.count as usize;
            }
        }
    }
    out
}

impl Placed<'_> {
    /// Names of the offcuts that are kept of it.
    pub fn offcuts(&self) -> Vec<String> {
        let count = if self.layout.kept { self.layout.count as usize } else { 0 };
        (0..count).map(|k| format!("K{}", self.first_offcut + k)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_is_written_with_its_sign_and_thousands() {
        assert_eq!(money("£", 1_234_567.5), "£1,234,567.50");
        assert_eq!(money("£", 123.0), "£123.00");
        assert_eq!(money("$", -1234.0), "-$1,234.00");
        assert_eq!(money("£", f64::NAN), "–");
        assert_eq!(money_or("£", None), "no price");
    }

    #[test]
    fn how_far_from_the_best_never_sounds_nearer_than_it_is() {
        let best = |of: &str, value, at_least, proven| Best { of: of.into(), value, at_least, proven };
        assert_eq!(best_words(&best("money", 100.0, 100.0, true)), "No plan can cost less.");
        assert_eq!(best_words(&best("length", 101.21, 100.0, false)), "Within 1.3 % of the least length there can be.");
        assert_eq!(best_words(&best("waste", 1.0, 0.0, false)), "Not proven to be the least waste there can be.");
    }
}
