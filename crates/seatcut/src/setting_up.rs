//! How a solved job is put up, in plain lines for a terminal.

use std::fmt::Write as _;

use drawings::ranges;
use job::written::Lengths;
use roof::solution::Solution;
use site::access::{Row, Section};
use site::lifts::Hands;
use site::programme::When;
use site::sequence::{PropFoot, PuttingUp, Step};
use site::whole::Site;

/// Putting up in a line, for the end of a summary.
pub fn in_short(site: &Site) -> String {
    let steps = match (&site.putting_up, &site.putting_up_refused) {
        (Some(up), _) => format!("{} steps, {} props, {} braces", up.steps.len(), up.props.len(), up.braces.len()),
        (None, Some(why)) => format!("no order of work was found: {why}"),
        (None, None) => "no order of work was found".to_owned(),
    };
    let [low, _, high] = site.programme.spread.days;
    format!(
        "\nPutting up: {steps}; {low:.0} to {high:.0} working days, estimated. `seatcut site` shows the order of work, \
         lifts, programme and access.\n"
    )
}

fn when(at: &When) -> String {
    at.date.clone().unwrap_or_else(|| format!("day {}", at.day))
}

/// The order of work, programme and access.
pub fn report(solution: &Solution, site: &Site) -> String {
    let lengths = Lengths::from_show(&solution.show);
    let mut text = format!("{}: putting up\n", solution.title);
    match (&site.putting_up, &site.putting_up_refused) {
        (Some(up), _) => text.push_str(&putting_up(up, lengths)),
        (None, why) => {
            let _ = writeln!(text, "LOOK  no order of work was found: {}", why.as_deref().unwrap_or_default());
        }
    }
    text.push_str(&lifts(site, lengths));
    text.push_str(&programme(site));
    let access = &site.access.layout;
    let _ = writeln!(
        text,
        "\nAccess: {}, {} long in all, {} bays, {} of boards, highest platform {}",
        access.kind,
        lengths.write(access.length_mm),
        access.bays,
        lengths.total(access.board_m * 1000.0),
        lengths.write(access.highest_mm)
    );
    site.access.sections.iter().for_each(|s| section(&mut text, s));
    for unused in &site.records.unused {
        let _ = writeln!(text, "LOOK  no paper has a place for {unused}");
    }
    for caution in site.access.cautions.iter().chain(&site.programme.cautions) {
        let _ = writeln!(text, "note  {caution}");
    }
    text
}

fn putting_up(up: &PuttingUp, lengths: Lengths) -> String {
    let mut text = String::new();
    for step in &up.steps {
        text.push_str(&one_step(step, up, lengths));
    }
    if !up.props.is_empty() {
        text.push_str("\nProps\n");
    }
    for prop in &up.props {
        let _ = writeln!(
            text,
            "  {:<8} under {}, {} from its {} end: {} high, cut {}{}",
            prop.name,
            prop.under,
            lengths.write(prop.from_end_mm),
            if prop.from_end == site::sequence::End::Foot { "foot" } else { "head" },
            lengths.write(prop.height_mm),
            lengths.write(prop.cut_mm),
            match prop.from {
                PropFoot::PlateLevel => "; both from the level of the plates: add the drop to the floor",
                PropFoot::InPlace => "; both at least: measure in place",
                PropFoot::Joists => "",
            }
        );
    }
    if !up.braces.is_empty() {
        text.push_str("\nTemporary braces, cuts from square\n");
    }
    for brace in &up.braces {
        let _ = writeln!(
            text,
            "  {:<8} {}: {} long, {:.1} deg from level, head {:.1}, foot {:.1}",
            brace.name,
            brace.from_mark,
            lengths.write(brace.length_mm),
            brace.slope_deg,
            brace.head_cut.face_angle_deg,
            brace.foot_cut.face_angle_deg
        );
    }
    for caution in &up.cautions {
        let _ = writeln!(text, "note  {} Who decides: {}.", caution.text, caution.decides);
    }
    text
}

fn one_step(step: &Step, up: &PuttingUp, lengths: Lengths) -> String {
    let people = if step.hands == 1 { "person" } else { "people" };
    let mut text = format!("\n{}. {} ({} {people})\n", step.number, step.title, step.hands);
    let mut tell = |what: &str, names: &[String]| {
        if !names.is_empty() {
            let _ = writeln!(text, "   {what} {}", ranges(names));
        }
    };
    tell("set", &step.props_set);
    tell("brace", &step.braces_set);
    tell("fix", &step.members);
    tell("fix for good", &step.permanent_set);
    tell("take out", &step.props_out);
    tell("take out", &step.braces_out);
    for words in step.lifting() {
        let _ = writeln!(text, "   {words}");
    }
    let _ = writeln!(text, "   why: {}\n   hazard: {}", step.why, step.hazard);
    for hold in up.holds.iter().filter(|h| step.holds.contains(&h.number)) {
        let figure = hold.figure_mm.map_or_else(String::new, |mm| format!(" {}", lengths.write(mm)));
        let metre = if hold.per_metre { " in a metre" } else { "" };
        let within = hold.tolerance.map_or_else(|| " by eye".to_owned(), |mm| format!(" within {mm} mm{metre}"));
        let _ = writeln!(text, "   HOLD {}, {}:{figure}{within}", hold.what, hold.at);
    }
    text
}

fn lifts(site: &Site, lengths: Lengths) -> String {
    let mut text = "\nLifts, damp\n".to_owned();
    if let Some(why) = &site.lifts_refused {
        let _ = writeln!(text, "LOOK  {why}");
    }
    let hands = |hands: Hands| match hands {
        Hands::People(1) => "one person".to_owned(),
        Hands::People(n) => format!("{n} people"),
        Hands::Aid => "a hoist, or in stages".to_owned(),
    };
    for pack in &site.packs {
        let worst = site.lifts.iter().filter(|l| l.kind == pack.kind).max_by(|a, b| a.damp_kg.total_cmp(&b.damp_kg));
        let Some(worst) = worst else { continue };
        let overhead =
            if worst.above_shoulder { format!("; overhead {}", hands(worst.overhead)) } else { String::new() };
        let _ = writeln!(
            text,
            "  {:<16} {:>3}, {:.0} kg in all; the heaviest {} kg, {} long: {}{overhead}",
            pack.kind.name(),
            pack.pieces,
            pack.damp_kg,
            job::written::fixed(worst.damp_kg, 1),
            lengths.write(worst.length_mm),
            hands(worst.carried)
        );
    }
    text
}

fn programme(site: &Site) -> String {
    let programme = &site.programme;
    let mut text = format!(
        "\nProgramme, estimated: {} working days, done {}; one time in ten by {}, nine in ten by {}\n",
        programme.working_days,
        when(&programme.last),
        when(&programme.spread.tenth),
        when(&programme.spread.ninetieth)
    );
    for activity in &programme.activities {
        let [low, likely, high] = activity.hours;
        let _ = writeln!(
            text,
            "  {:<34} {} to {}{}  {likely:.0} hours ({low:.0} to {high:.0}), {} {}",
            activity.name,
            when(&activity.first),
            when(&activity.last),
            if activity.critical { " *" } else { "" },
            activity.people,
            if activity.people == 1 { "person" } else { "people" }
        );
    }
    text.push_str("  * nothing can wait here without the whole waiting\n");
    text
}

fn section(text: &mut String, section: &Section) {
    let _ = writeln!(text, "\n{}", section.heading);
    for row in &section.rows {
        let _ = match row {
            Row::Said(said) => writeln!(text, "  {}  [{}; {}]", said.text, said.source, said.basis.words()),
            Row::Blank(blank) => writeln!(text, "  {}  ______", blank.question),
        };
    }
}
