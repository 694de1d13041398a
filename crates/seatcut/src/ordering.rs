//! What to buy for a solved job, in plain lines for a terminal.

use std::fmt::Write as _;

use job::Job;
use job::written::Lengths;
use order::buying::{LineKind, NoticeLevel, PricedLine};
use order::whole::{CutOut, Layout, Order, TimberOut, order};
use roof::solution::Solution;
use strength::whole::Strength;

use crate::failure::Failure;
use crate::progress;

/// Works out the order of a job.
pub fn of(job: &Job, solution: &Solution, strength: Option<&Strength>) -> Result<Order, Failure> {
    progress::during("working out the cutting plan", || order(job, solution, strength))
        .map_err(|why| Failure::BadInput(why.to_string()))
}

/// The order in a line, for the end of a summary.
pub fn in_short(order: &Order) -> String {
    let bought: f64 = order.timber.iter().map(|t| t.bought_m).sum();
    let kg: f64 = order.timber.iter().map(|t| t.kg).sum();
    let open = order.timber.iter().filter(|t| t.refused.is_none() && !t.best.proven).count();
    let refused = order.timber.iter().filter(|t| t.refused.is_some()).count();
    let best = match open {
        0 => "no plan can be better".to_owned(),
        n => format!("{n} of {} sections may have a better plan", order.timber.len()),
    };
    let refused =
        if refused > 0 { format!("; {refused} sections cannot be cut from their stock") } else { String::new() };
    format!(
        "\nTimber to buy: {bought:.1} m, {kg:.0} kg; {best}{refused}. `seatcut order` shows what and how to cut it.\n"
    )
}

fn money(order: &Order, amount: f64) -> String {
    format!("{}{amount:.2}", order.currency)
}

fn section(timber: &TimberOut) -> String {
    let class = timber.class.as_ref().map_or_else(String::new, |c| format!(" {c}"));
    format!("{:.0} x {:.0}{class}", timber.size.thickness_mm, timber.size.depth_mm)
}

/// What to buy.
pub fn report(solution: &Solution, order: &Order) -> String {
    let lengths = Lengths::from_show(&solution.show);
    let mut text = format!("{}\n\nTimber\n", solution.title);
    for timber in &order.timber {
        let _ = writeln!(text, "  {:<16} {}", section(timber), bought(order, timber, lengths));
        if let Some(why) = &timber.refused {
            let _ = writeln!(text, "  LOOK  {why}");
        }
    }
    let (covering, rest) = order.lines.split_at((order.covering_lines as usize).min(order.lines.len()));
    text.push_str("\nCovering\n");
    match (&order.covering, &order.covering_refused) {
        (Some(covered), _) => {
            for slope in &covered.slopes {
                let _ = writeln!(
                    text,
                    "  {}: {:.1} m2, {} courses at {:.1} mm",
                    slope.place, slope.area_m2, slope.courses, slope.gauge_mm
                );
            }
            covering.iter().for_each(|l| line(&mut text, order, l));
            for notice in &covered.notices {
                let _ = writeln!(text, "  {}: {}", notice.place, notice.text);
            }
        }
        (None, Some(why)) => {
            let _ = writeln!(text, "  LOOK  {why}");
        }
        (None, None) => text.push_str("  none is named: write [covering]\n"),
    }
    text.push_str("\nFixings and the rest\n");
    rest.iter().for_each(|l| line(&mut text, order, l));
    let _ = writeln!(text, "\nPriced so far: {}", money(order, order.quote.total.amount()));
    for note in &order.quote.notes {
        let _ = writeln!(text, "note  {note}");
    }
    for notice in &order.notices {
        let word = if notice.level == NoticeLevel::Warn { "LOOK" } else { "note" };
        let _ = writeln!(text, "{word}  {}: {}", notice.place, notice.text);
    }
    for caution in &order.cautions {
        let _ = writeln!(text, "note  {caution}");
    }
    text
}

fn bought(order: &Order, timber: &TimberOut, lengths: Lengths) -> String {
    let each: Vec<String> = timber
        .buy
        .iter()
        .map(|b| {
            let yard = b.yard.as_ref().map_or_else(String::new, |y| format!(" from the yard ({y})"));
            format!("{} of {}{yard}", b.count, lengths.write(b.length_mm))
        })
        .collect();
    let cost = timber.cost.map_or_else(String::new, |c| format!(", {}", money(order, c)));
    let saved = timber.unshared.map(|u| u.bought_m - timber.bought_m).filter(|m| *m > 0.05);
    let saved = saved.map_or_else(String::new, |m| format!("; {m:.1} m less than with square cuts only"));
    format!(
        "{}: {:.1} m, {:.0} kg{cost}; waste {:.1} %; {}{saved}",
        each.join(", "),
        timber.bought_m,
        timber.kg,
        timber.waste_percent,
        best(timber)
    )
}

/// How far a plan is from the best.
fn best(timber: &TimberOut) -> String {
    let best = &timber.best;
    if best.proven {
        return "no plan can be better".to_owned();
    }
    let gap = if best.value > 0.0 { (best.value - best.at_least) / best.value * 100.0 } else { 0.0 };
    format!("within {gap:.1} % of the best there can be")
}

fn line(text: &mut String, order: &Order, priced: &PricedLine) {
    let line = &priced.line;
    let size = if line.size.is_empty() { String::new() } else { format!(", {}", line.size) };
    let cost = priced.cost.map_or_else(String::new, |c| format!("  {}", money(order, c.amount())));
    let kind = match line.kind {
        LineKind::Counted => "",
        LineKind::Allowance => " (allowance)",
        LineKind::ToChoose => " (if chosen)",
    };
    let _ = writeln!(
        text,
        "  {:>9} {:<8} {}{size}{kind}: {}{cost}  [{}]",
        quantity(line.quantity),
        line.unit.word(),
        line.what,
        line.counted,
        line.item
    );
}

fn quantity(value: f64) -> String {
    if (value - value.round()).abs() < 5e-7 { format!("{value:.0}") } else { format!("{value:.1}") }
}

/// How to cut every length.
pub fn cutting(solution: &Solution, order: &Order) -> String {
    let lengths = Lengths::from_show(&solution.show);
    let mut text = format!("{}: how to cut\n", solution.title);
    for timber in &order.timber {
        let _ = writeln!(text, "\n{}: {}", section(timber), best(timber));
        for layout in &timber.layouts {
            let _ = write!(text, "{}", laid(layout, lengths));
        }
    }
    text
}

fn laid(layout: &Layout, lengths: Lengths) -> String {
    let yard = layout.yard.as_ref().map_or_else(String::new, |y| format!(" from the yard ({y})"));
    let mut text = format!("\n  {} of {}{yard}\n", layout.count, lengths.write(layout.length_mm));
    for piece in &layout.pieces {
        let _ = writeln!(
            text,
            "    {} to {}: {}, {}",
            lengths.write(piece.from_mm),
            lengths.write(piece.to_mm),
            piece.marks.join(", "),
            piece.turn
        );
    }
    for (number, cut) in layout.cuts.iter().enumerate() {
        let _ = writeln!(text, "    cut {}: {}", number + 1, told(layout, cut, lengths));
    }
    let _ = writeln!(text, "    left: {}{}", lengths.write(layout.left_mm), if layout.kept { ", keep it" } else { "" });
    text
}

fn told(layout: &Layout, cut: &CutOut, lengths: Lengths) -> String {
    let ends: Vec<&str> =
        cut.ends.iter().filter_map(|e| layout.pieces.get(*e as usize)?.marks.first().map(String::as_str)).collect();
    format!(
        "{} at {} on the lower edge and {} on the upper, mitre {:.1}, tilt {:.1}, blade to the {} ({})",
        cut.what,
        lengths.write(cut.at_mm[0]),
        lengths.write(cut.at_mm[1]),
        cut.saw.mitre_deg,
        cut.saw.tilt_deg,
        if cut.kerf_right { "right" } else { "left" },
        ends.join(" and ")
    )
}
