//! How figures of an order are written.

use crate::wording::Writing;
use job::Per;
use job::written::fixed;
use order::whole::TimberOut;

/// A metre, mm.
const METRE: f64 = 1000.0;
/// Weights from here on are written without decimals, kg: the scale of a merchant shows no more.
const HEAVY: f64 = 10.0;

impl Writing {
    /// Section and class.
    pub(super) fn title(&self, timber: &TimberOut) -> String {
        let section = self.section(timber.size.thickness_mm, timber.size.depth_mm);
        timber.class.as_ref().map_or_else(|| section.clone(), |class| format!("{section}, {class}"))
    }

    /// Metres, or feet.
    pub(super) fn metres(&self, metres: f64) -> String {
        self.lengths.total(metres * METRE)
    }

    /// Money.
    pub(super) fn money(&self, amount: f64) -> String {
        let text = fixed(amount, 2);
        let (sign, text) = text.strip_prefix('-').map_or(("", text.as_str()), |rest| ("-", rest));
        let (whole, cents) = text.split_once('.').unwrap_or((text, "00"));
        format!("{sign}{}{}.{cents}", self.currency, grouped(whole))
    }
}

/// Digits in threes: `12,345`.
fn grouped(digits: &str) -> String {
    let count = digits.chars().count();
    let mut out = String::with_capacity(count + count / 3);
    for (k, digit) in digits.chars().enumerate() {
        if k > 0 && (count - k).is_multiple_of(3) && digit.is_ascii_digit() {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

/// A weight.
pub(super) fn kilograms(kg: f64) -> String {
    if kg >= HEAVY { format!("{} kg", grouped(&fixed(kg, 0))) } else { format!("{} kg", plain(kg, 1)) }
}

/// A quantity with its unit.
pub(super) fn quantity(amount: f64, unit: Per) -> String {
    match unit {
        Per::Each => grouped(&fixed(amount.ceil(), 0)),
        Per::Hundred => format!("{} hundred", plain(amount, 1)),
        Per::Thousand => format!("{} thousand", plain(amount, 2)),
        Per::Metre => format!("{} m", plain(amount, 1)),
        Per::SquareMetre => format!("{} m²", plain(amount, 1)),
        Per::CubicMetre => format!("{} m³", plain(amount, 2)),
        Per::Kilogram => format!("{} kg", plain(amount, 1)),
        Per::Roll if amount <= 1.0 => "1 roll".to_owned(),
        Per::Roll => format!("{} rolls", fixed(amount.ceil(), 0)),
    }
}

/// What a price is a price of, in words.
pub(super) const fn per_words(per: Per) -> &'static str {
    match per {
        Per::Each => "for one",
        Per::Hundred => "for a hundred",
        Per::Thousand => "for a thousand",
        Per::Metre => "for a metre",
        Per::SquareMetre => "for a square metre",
        Per::CubicMetre => "for a cubic metre",
        Per::Kilogram => "for a kilogram",
        Per::Roll => "for a roll",
    }
}

/// A figure with no more decimals than it needs.
fn plain(value: f64, decimals: usize) -> String {
    let text = fixed(value, decimals);
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    match text.split_once('.') {
        Some((whole, part)) => format!("{}.{part}", grouped(whole)),
        None => grouped(text),
    }
}

/// `12 lengths`, `1 length`.
pub(super) fn counted(count: u32, one: &str, many: &str) -> String {
    if count == 1 { format!("1 {one}") } else { format!("{} {many}", grouped(&count.to_string())) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::views::Dialect;
    use job::written::Lengths;

    #[test]
    fn money_and_quantities_are_written_as_a_merchant_does() {
        let writing = Writing { lengths: Lengths::Millimetres, words: Dialect::Uk, currency: "£".to_owned() };
        for (amount, text) in [(0.0, "£0.00"), (3.2, "£3.20"), (1_234_567.891, "£1,234,567.89"), (-12.5, "-£12.50")]
        {
            assert_eq!(writing.money(amount), text);
        }
        assert_eq!(quantity(1239.2, Per::Each), "1,240");
        assert_eq!(quantity(12.0, Per::Metre), "12 m");
        assert_eq!(quantity(0.25, Per::Thousand), "0.25 thousand");
        assert_eq!(quantity(1.0, Per::Roll), "1 roll");
        assert_eq!(kilograms(1234.4), "1,234 kg");
        assert_eq!(kilograms(2.0), "2 kg");
    }
}
