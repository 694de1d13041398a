//! Results of strength in words and figures, the same on sheets and on a terminal.

use roof::solution::MemberKind;
use strength::span_table::MOST_SPAN;
use strength::whole::{MemberUse, Refused, Strength, Verdict};

/// All timbers of a kind.
pub struct KindUse<'a> {
    /// The kind.
    pub kind: MemberKind,
    /// The most used of them.
    pub most: &'a MemberUse,
    /// How many there are.
    pub count: usize,
    /// How many do not pass.
    pub over: usize,
    /// How many pass by little.
    pub near: usize,
}

/// Timbers by kind, the kind that is used most first.
#[must_use]
pub fn by_kind(strength: &Strength) -> Vec<KindUse<'_>> {
    let mut kinds: Vec<KindUse<'_>> = Vec::new();
    // Timbers come most used first, so the first of a kind is the most used of it.
    for member in &strength.members {
        let index = kinds.iter().position(|k| k.kind == member.kind).unwrap_or(kinds.len());
        if index == kinds.len() {
            kinds.push(KindUse { kind: member.kind, most: member, count: 0, over: 0, near: 0 });
        }
        let kind = &mut kinds[index];
        kind.count += 1;
        match member.left.verdict {
            Verdict::Over => kind.over += 1,
            Verdict::Near => kind.near += 1,
            Verdict::Within => {}
        }
    }
    kinds
}

/// A matter for an engineer, with everything that it is about.
pub struct Matter<'a> {
    /// What, and why.
    pub text: &'a str,
    /// Marks, or what of the job it is.
    pub places: Vec<String>,
}

/// What is for an engineer, the same words once with all their marks.
#[must_use]
pub fn for_engineer(refused: &[Refused]) -> Vec<Matter<'_>> {
    let mut matters: Vec<Matter<'_>> = Vec::new();
    for one in refused {
        match matters.iter_mut().find(|m| m.text == one.text) {
            Some(matter) => matter.places.push(one.place.clone()),
            None => matters.push(Matter { text: &one.text, places: vec![one.place.clone()] }),
        }
    }
    matters
}

/// How far something is used, e.g. `87 %`. What is over is never rounded to 100 %, and what cannot be worked out is said
/// so.
#[must_use]
pub fn percent(used: f64) -> String {
    const MOST: f64 = 9.99;
    if !used.is_finite() {
        return "none left".to_owned();
    }
    if used > MOST {
        return "over 999 %".to_owned();
    }
    let hundredths = if used > 1.0 { (used * 100.0).ceil() } else { (used * 100.0).round() };
    format!("{hundredths:.0} %")
}

/// The word for a verdict; nothing for what passes with something left.
#[must_use]
pub const fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Over => "OVER",
        Verdict::Near => "NEAR",
        Verdict::Within => "",
    }
}

/// A clear span in m, rounded down to a hundredth.
#[must_use]
pub fn written_span(clear_mm: f64) -> String {
    if clear_mm > MOST_SPAN {
        return format!("over {:.2}", MOST_SPAN / 1000.0);
    }
    let hundredths = (clear_mm / 10.0).floor();
    if hundredths >= 1.0 { format!("{:.2}", hundredths / 100.0) } else { "–".to_owned() }
}

/// A figure of a working: four figures or so.
#[must_use]
pub fn figure(value: f64) -> String {
    if !value.is_finite() {
        return "none".to_owned();
    }
    match value.abs() {
        size if size >= 1000.0 => format!("{value:.0}"),
        size if size >= 100.0 => format!("{value:.1}"),
        size if size >= 10.0 => format!("{value:.2}"),
        _ => format!("{value:.3}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_over_never_reads_as_100() {
        assert_eq!(percent(1.0), "100 %");
        assert_eq!(percent(1.0001), "101 %");
        assert_eq!(percent(0.874), "87 %");
        assert_eq!(percent(f64::INFINITY), "none left");
        assert_eq!(percent(12.0), "over 999 %");
    }

    #[test]
    fn spans_are_rounded_down() {
        assert_eq!(written_span(3129.99), "3.12");
        assert_eq!(written_span(5600.0), "over 5.00");
        assert_eq!(written_span(0.0), "–");
        assert_eq!(written_span(f64::NAN), "–");
    }
}
