//! Sheets about strength: what needs an engineer, what was taken for granted, timbers, joints, walls, feet, and the
//! working of the timber that is used most.

use job::written::{Lengths, fixed};
use roof::solution::Solution;
use strength::whole::{JointUse, MemberUse, PairFeet, Strength, Verdict, WallLoad};
use strength::working::Line;

use crate::flow::Flow;
use crate::marks::ranges;
use crate::page::{LEFT, Page, ROOM};
use crate::sheet::{Anchor, Pen, Role};
use crate::strength_sheets::words::{by_kind, figure, for_engineer, percent, verdict};
use crate::table::{Column, Table};
use crate::text::Style;

/// On every sheet.
const CAUTION: &str = "Member check only: racking, gables, wind bracing, the walls and the building as a whole are not \
                       looked at. Building control and a structural engineer decide. Figures hold only for the loads \
                       and strength classes named on these sheets.";
const WORDS: Style = Style::regular(10.0);
const STRONG: Style = Style::bold(11.0);
const FIGURE: Style = Style::bold(13.0);
/// Heading of a part of a sheet.
const PART: Style = Style::bold(14.0);
/// Height of such a heading, mm.
const PART_HEIGHT: f64 = 9.0;
/// Space above it, mm.
const PART_SPACE: f64 = 5.0;
/// A heading is not left alone at the foot of a sheet: height that must follow it, mm.
const AFTER_PART: f64 = 18.0;
/// Pairs of rafters shown with free and held feet.
const MOST_PAIRS: usize = 6;
/// Lines of a cell.
const MOST_LINES: usize = 5;
/// Between a box and its words, mm.
const BOX_PAD: f64 = 3.0;
/// Newtons in a kilonewton.
const KILO: f64 = 1e3;

/// What sheets about strength are made from.
#[derive(Clone, Copy)]
pub struct StrengthPapers<'a> {
    /// The results.
    pub strength: &'a Strength,
    /// The working of the timber that is used most, under its governing check.
    pub working: &'a [Line],
}

/// All sheets about strength.
pub fn pages(solution: &Solution, papers: &StrengthPapers<'_>) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let strength = papers.strength;
    let mut flow = Flow::new("Strength", false, CAUTION);
    engineer(&mut flow, strength);
    assumed(&mut flow, strength);
    timbers(&mut flow, strength, lengths);
    joints(&mut flow, &strength.joints);
    walls(&mut flow, &strength.walls, lengths);
    feet(&mut flow, &strength.feet);
    loads(&mut flow, strength);
    let mut sheets = flow.finish();
    if let Some(most) = strength.members.first() {
        sheets.extend(working(most, papers.working));
    }
    sheets
}

fn part(flow: &mut Flow, heading: &str) {
    flow.space(PART_SPACE);
    if flow.left() < PART_HEIGHT + AFTER_PART {
        flow.break_page();
    }
    let (sheet, y) = flow.block(PART_HEIGHT);
    sheet.part(Role::Heading, |s| {
        s.text_within([LEFT, y + 6.0], Anchor::Start, PART, heading, ROOM);
    });
}

/// Lines one below another; they may go on on the next sheet.
fn paragraph(flow: &mut Flow, style: Style, text: &str) {
    for line in style.wrap_at_most(text, ROOM, MOST_LINES) {
        let (sheet, y) = flow.block(style.line_mm());
        sheet.text([LEFT, y + style.cap_mm() + 0.6], Anchor::Start, style, &line);
    }
    flow.space(1.0);
}

/// What needs an engineer, boxed; a box for every sheet that it goes over.
fn engineer(flow: &mut Flow, strength: &Strength) {
    let matters = for_engineer(&strength.refused);
    let over = what_is_over(strength);
    if matters.is_empty() && over.is_none() {
        paragraph(flow, STRONG, "Nothing here is outside what these checks cover. That is no approval.");
        return;
    }
    let width = ROOM - 2.0 * BOX_PAD;
    let mut lines: Vec<(Style, String)> = Vec::new();
    let told = matters.iter().map(|matter| format!("{}: {}", ranges(&matter.places), matter.text));
    for text in over.into_iter().chain(told) {
        lines.extend(STRONG.wrap_at_most(&text, width, MOST_LINES).into_iter().map(|line| (STRONG, line)));
    }
    let mut rest = lines.as_slice();
    let mut heading = "Needs an engineer";
    while !rest.is_empty() {
        let head = BOX_PAD + PART.line_mm();
        if flow.left() < head + STRONG.line_mm() * 3.0 + BOX_PAD {
            flow.break_page();
        }
        let room = if flow.left() > 0.0 { flow.left() } else { crate::page::BOTTOM - crate::page::TOP - 12.0 };
        let fit = (((room - head - 2.0 * BOX_PAD) / STRONG.line_mm()).floor() as usize).clamp(1, rest.len());
        let height = head + STRONG.line_mm() * fit as f64 + BOX_PAD;
        let (sheet, y) = flow.block(height);
        sheet.rect([LEFT, y], [ROOM, height], None, Some(Pen::black(1.0)));
        sheet.text([LEFT + BOX_PAD, y + BOX_PAD + PART.cap_mm()], Anchor::Start, PART, heading);
        let mut base = y + head + STRONG.cap_mm() + 1.0;
        for (style, line) in &rest[..fit] {
            sheet.text([LEFT + BOX_PAD, base], Anchor::Start, *style, line);
            base += style.line_mm();
        }
        rest = &rest[fit..];
        heading = "Needs an engineer, continued";
        flow.space(2.0);
    }
}

/// Timbers and joints that do not pass, in a sentence; `None` when all pass.
fn what_is_over(strength: &Strength) -> Option<String> {
    let mut names: Vec<String> = by_kind(strength)
        .iter()
        .filter(|kind| kind.over > 0)
        .map(|kind| format!("{} × {}", kind.over, kind.kind.name()))
        .collect();
    let joints = strength.joints.iter().filter(|joint| joint.verdict == Some(Verdict::Over));
    names.extend(joints.map(|joint| format!("{} at {}", joint.name, ranges(&joint.marks))));
    (!names.is_empty()).then(|| format!("OVER: {}.", names.join("; ")))
}

/// The row of a table with its verdict: over has a bar.
fn row(table: &mut Table, verdict: Option<Verdict>, cells: &[String]) {
    table.row(cells, MOST_LINES);
    if verdict == Some(Verdict::Over) {
        table.bar_last();
    }
}

fn timbers(flow: &mut Flow, strength: &Strength, lengths: Lengths) {
    part(flow, "Timbers: the most used of each kind");
    let mut table = Table::new(&[
        Column::words("", 4.5, WORDS),
        Column::words("kind", 31.0, STRONG),
        Column::figures("timbers", 15.0, WORDS),
        Column::figures("over", 11.0, STRONG),
        Column::figures("near", 11.0, WORDS),
        Column::words("most used", 28.0, STRONG),
        Column::words("size", 24.0, WORDS),
        Column::words("governing check and clause", 51.0, WORDS),
        Column::words("under", 41.5, WORDS),
        Column::figures("used", 20.0, FIGURE),
        Column::words("", 16.0, STRONG),
        Column::words("would pass", 24.0, STRONG),
    ]);
    for kind in by_kind(strength) {
        let most = kind.most;
        let check = most.checks.first();
        let governs = check.map_or_else(String::new, |c| format!("{}\n{}", c.name, c.clause));
        let would = match (&most.would_pass, most.left.verdict) {
            (Some(size), _) => lengths.section(size.thickness_mm, size.depth_mm),
            (None, Verdict::Over) => "no stock size".to_owned(),
            (None, _) => String::new(),
        };
        let cells = [
            String::new(),
            kind.kind.name().to_owned(),
            kind.count.to_string(),
            if kind.over > 0 { kind.over.to_string() } else { "–".to_owned() },
            if kind.near > 0 { kind.near.to_string() } else { "–".to_owned() },
            most.mark.clone(),
            lengths.section(most.size.thickness_mm, most.size.depth_mm),
            governs,
            check.map_or_else(String::new, |c| combination(strength, c.combination)),
            percent(most.left.used),
            verdict(most.left.verdict).to_owned(),
            would,
        ];
        row(&mut table, Some(most.left.verdict), &cells);
    }
    flow.table(&table);
}

/// A combination by its number, in words.
fn combination(strength: &Strength, number: Option<u32>) -> String {
    let found = number.and_then(|n| strength.combinations.get(n as usize));
    found.map_or_else(|| "all that come together".to_owned(), |c| c.name.clone())
}

fn joints(flow: &mut Flow, joints: &[JointUse]) {
    if joints.is_empty() {
        return;
    }
    part(flow, "Joints, each kind where it is used most");
    let mut table = Table::new(&[
        Column::words("", 4.5, WORDS),
        Column::words("joint", 46.0, STRONG),
        Column::words("where", 34.0, WORDS),
        Column::figures("carries", 22.0, WORDS),
        Column::words("takes", 48.0, STRONG),
        Column::words("clause", 38.0, WORDS),
        Column::figures("used", 20.0, FIGURE),
        Column::words("", 16.0, STRONG),
        Column::words("remark", 48.5, WORDS),
    ]);
    for joint in joints {
        let cells = [
            String::new(),
            joint.name.clone(),
            ranges(&joint.marks),
            kilonewtons(joint.force_n / KILO),
            joint.takes.clone(),
            joint.clause.clone(),
            joint.used.map_or_else(|| "not known".to_owned(), percent),
            joint.verdict.map_or("", verdict).to_owned(),
            joint.remark.clone(),
        ];
        row(&mut table, joint.verdict, &cells);
    }
    flow.table(&table);
}

fn kilonewtons(kn: f64) -> String {
    format!("{} kN", fixed(kn, 1))
}

fn walls(flow: &mut Flow, walls: &[WallLoad], lengths: Lengths) {
    if walls.is_empty() {
        return;
    }
    part(flow, "What comes on the walls");
    let mut table = Table::new(&[
        Column::words("wall or bearing", 60.0, STRONG),
        Column::figures("length", 28.0, WORDS),
        Column::figures("own weight,\nwithout factors", 34.0, WORDS),
        Column::figures("most down,\nwith factors", 34.0, FIGURE),
        Column::figures("most up,\nwith factors", 34.0, FIGURE),
        Column::words("straps against lifting", 80.0, STRONG),
    ]);
    for wall in walls {
        let straps = match (wall.straps, wall.straps_apart_mm) {
            (Some(0) | None, _) if wall.uplift_kn > 0.0 => "not worked out".to_owned(),
            (Some(0) | None, _) => "none needed against this wind".to_owned(),
            (Some(n), Some(apart)) => format!("{n}, no more than {} apart", lengths.write_with_unit(apart)),
            (Some(n), None) => n.to_string(),
        };
        let cells = [
            wall.name.clone(),
            if wall.length_m > 0.0 { lengths.total(wall.length_m * KILO) } else { "–".to_owned() },
            kilonewtons(wall.permanent_kn),
            kilonewtons(wall.most_kn),
            kilonewtons(wall.uplift_kn),
            straps,
        ];
        row(&mut table, None, &cells);
    }
    flow.table(&table);
}

fn feet(flow: &mut Flow, feet: &[PairFeet]) {
    if feet.is_empty() {
        return;
    }
    part(flow, "Pairs of rafters: feet that can move out, and feet that the walls hold");
    let mut worst: Vec<&PairFeet> = feet.iter().collect();
    let moves = |pair: &PairFeet| pair.spread_mm.unwrap_or(f64::INFINITY);
    worst.sort_by(|a, b| moves(b).total_cmp(&moves(a)).then(b.thrust_n.total_cmp(&a.thrust_n)));
    let more = worst.len().saturating_sub(MOST_PAIRS);
    let mut table = Table::new(&[
        Column::words("rafters", 44.0, STRONG),
        Column::words("collar", 24.0, WORDS),
        Column::words("tied by joists", 26.0, WORDS),
        Column::figures("feet free:\nplates move apart", 38.0, FIGURE),
        Column::figures("feet free:\npull in the tie", 34.0, WORDS),
        Column::figures("feet free:\nforce in the collar", 36.0, WORDS),
        Column::figures("feet held:\npush on each wall", 38.0, FIGURE),
        Column::figures("feet held:\nforce in the collar", 36.0, WORDS),
    ]);
    for pair in worst.into_iter().take(MOST_PAIRS) {
        let collar = |n: f64| if pair.collar.is_some() { kilonewtons(n / KILO) } else { "–".to_owned() };
        let spread = pair.spread_mm.map_or_else(|| "cannot stand".to_owned(), |mm| format!("{} mm", fixed(mm, 1)));
        let cells = [
            pair.rafters.join(", "),
            pair.collar.clone().unwrap_or_else(|| "–".to_owned()),
            if pair.tied { "yes" } else { "no" }.to_owned(),
            spread,
            if pair.tied { kilonewtons(pair.tie_n / KILO) } else { "–".to_owned() },
            collar(pair.collar_free_n),
            kilonewtons(pair.thrust_n / KILO),
            collar(pair.collar_held_n),
        ];
        row(&mut table, None, &cells);
    }
    flow.table(&table);
    if more > 0 {
        flow.space(1.0);
        paragraph(flow, WORDS, &format!("Those whose plates move apart most; there are {more} more pairs."));
    }
}

fn assumed(flow: &mut Flow, strength: &Strength) {
    part(flow, "What was assumed");
    let taken = &strength.assumed;
    let sharing = if taken.sharing { "share their loads" } else { "do not share their loads" };
    let ridge = if taken.ridge == "beam" { "carries the heads of the rafters" } else { "is a board" };
    let text = format!(
        "All timber is of strength class {}, in service class {}. Feet of rafters: {}. The ridge {ridge}. Rafters and \
         joists {sharing} with their neighbours. {} of the figures used are from memory of their source.",
        taken.class, taken.service, taken.feet, taken.from_memory
    );
    paragraph(flow, WORDS, &text);
    let totals = &strength.totals;
    let text = format!(
        "Own weight of the whole roof {}, even snow {}; walls and bearings get {} of both.",
        kilonewtons(totals.permanent_kn),
        kilonewtons(totals.snow_kn),
        kilonewtons(totals.arrived_kn)
    );
    paragraph(flow, WORDS, &text);
    paragraph(flow, WORDS, &format!("Editions: {}.", strength.editions.join("; ")));
}

fn loads(flow: &mut Flow, strength: &Strength) {
    part(flow, "Loads");
    let mut table = figures_table();
    for load in &strength.loads {
        figures_row(&mut table, &load.what, &load.how, load.value, &load.unit, &load.from);
    }
    flow.table(&table);
    part(flow, "Cautions");
    for caution in &strength.cautions {
        paragraph(flow, STRONG, caution);
    }
}

/// A table of figures, how each comes about, and where the rule stands.
pub fn figures_table() -> Table {
    Table::new(&[
        Column::words("what", 82.0, STRONG),
        Column::words("how", 85.0, WORDS),
        Column::figures("value", 30.0, FIGURE),
        Column::words("", 18.0, WORDS),
        Column::words("from", 62.0, WORDS),
    ])
}

/// A row of it.
pub fn figures_row(table: &mut Table, what: &str, how: &str, value: f64, unit: &str, from: &str) {
    table.row(&[what.to_owned(), how.to_owned(), figure(value), unit.to_owned(), from.to_owned()], MOST_LINES);
}

fn working(most: &MemberUse, lines: &[Line]) -> Vec<Page> {
    let mut flow = Flow::new("Working of the most used timber", false, CAUTION);
    if lines.is_empty() {
        return Vec::new();
    }
    let check = most.checks.first().map_or_else(String::new, |c| format!(", {}", c.name));
    let heading = format!("{} {}{check}: used {}", most.kind.name(), most.mark, percent(most.left.used));
    part(&mut flow, &format!("{heading} {}", verdict(most.left.verdict)));
    let mut table = figures_table();
    for line in lines {
        figures_row(&mut table, &line.what, &line.how, line.value, &line.unit, &line.from);
    }
    flow.table(&table);
    flow.finish()
}
