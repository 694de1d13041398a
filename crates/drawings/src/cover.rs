//! The first sheet: plan, picture of the frame, key figures, notices.

use roof::solution::{Notice, NoticeLevel, Solution};

use crate::layout::{Room, scale_words};
use crate::page::{BOTTOM, LEFT, Page, RIGHT, ROOM, TOP};
use crate::sheet::{Anchor, Pen, Role, Sheet};
use crate::text::{SMALLEST_PT, Style};
use crate::{plan, view3d};
use job::written::{Lengths, fixed};

const CAUTION: &str = "Measure the plates again before cutting. Sizes and fixings of timbers: building control or a \
                       structural engineer decides.";
const INSIDE_CAUTION: &str = "Struts stand on walls or beams that carry them down: building control or a structural \
                              engineer decides.";
const LABEL: Style = Style::regular(SMALLEST_PT);
const FIGURE: Style = Style::bold(16.0);
const NOTICE: Style = Style::regular(10.0);
/// Height of the row of figures, mm.
const FIGURES_HEIGHT: f64 = 14.0;
/// The most of the cover that notices take before they go on to a sheet of
/// their own, mm.
const MOST_NOTICES: f64 = 27.0;
/// Where the words of a notice begin, mm.
const WORDS_AT: f64 = LEFT + 26.0;

/// The cover, and further sheets if there are more notices than it holds.
pub fn pages(solution: &Solution) -> Vec<Page> {
    let mut page = Page::new("Roof", true, CAUTION);
    let sheet = &mut page.sheet;
    sheet.part(Role::Heading, |s| {
        s.text_within([LEFT, TOP + 8.0], Anchor::Start, Style::bold(26.0), &solution.title, ROOM);
    });
    let top = TOP + 12.0;
    let written: Vec<Written> = write(&solution.notices);
    let notices_height = written.iter().map(|n| n.height).sum::<f64>().clamp(6.0, MOST_NOTICES);
    let figures_top = BOTTOM - notices_height - FIGURES_HEIGHT - 2.0;
    let end = figures_top - 2.0;
    let middle = LEFT + ROOM * 0.53;
    plan_and_key(sheet, solution, plan::Layer::Rafters, Room { x: LEFT, y: top, w: middle - LEFT - 3.0, h: end - top });
    view3d::draw(sheet, solution, Room { x: middle + 3.0, y: top + 3.0, w: RIGHT - middle - 3.0, h: end - top - 6.0 });
    figures(sheet, solution, figures_top);
    let mut pages = vec![page];
    notices(&mut pages, &written, figures_top + FIGURES_HEIGHT + 5.5);
    pages
}

/// The plan of what stands inside, on a sheet of its own, if the job has any.
pub fn inside(solution: &Solution) -> Option<Page> {
    if !plan::has_inside(solution) {
        return None;
    }
    let mut page = Page::new("Inside", true, INSIDE_CAUTION);
    page.sheet.part(Role::Heading, |s| {
        s.text([LEFT, TOP + 7.0], Anchor::Start, Style::bold(20.0), "Inside the roof");
    });
    let room = Room { x: LEFT, y: TOP + 10.0, w: ROOM, h: BOTTOM - TOP - 10.0 };
    plan_and_key(&mut page.sheet, solution, plan::Layer::Inside, room);
    Some(page)
}

fn plan_and_key(sheet: &mut Sheet, solution: &Solution, layer: plan::Layer, room: Room) {
    const KEY_HEIGHT: f64 = 6.0;
    const REST_HEIGHT: f64 = 4.0;
    let drawn = plan::draw(sheet, solution, layer, Room { h: room.h - KEY_HEIGHT - REST_HEIGHT, ..room });
    let key: Vec<(&str, Pen)> = match layer {
        plan::Layer::Rafters => plan::kinds(solution).collect(),
        plan::Layer::Inside => plan::inside_kinds(solution).collect(),
    };
    let base = room.y + room.h - 1.0;
    if let Some(plan::Drawn { unplaced, .. }) = &drawn
        && !unplaced.is_empty()
    {
        let words = format!("other walls: {}", unplaced.join(", "));
        sheet.text_within([room.x, base - 5.0], Anchor::Start, LABEL, &words, room.w);
    }
    let mut x = room.x;
    if let Some(plan::Drawn { scale, .. }) = drawn {
        let words = format!("plan {}", scale_words(scale));
        sheet.text([x, base], Anchor::Start, Style::bold(9.0), &words);
        x += Style::bold(9.0).width_mm(&words) + 5.0;
    }
    for (name, pen) in key {
        let width = LABEL.width_mm(name);
        if x + 13.0 + width > room.x + room.w {
            break;
        }
        sheet.line([x, base - 1.0], [x + 11.0, base - 1.0], pen);
        sheet.text([x + 12.5, base], Anchor::Start, LABEL, name);
        x += width + 17.0;
    }
}

fn figures(sheet: &mut Sheet, solution: &Solution, top: f64) {
    let lengths = Lengths::from_show(&solution.show);
    let totals = &solution.totals;
    let boxes = [
        ("timbers", totals.members.to_string()),
        ("cards", totals.pieces.to_string()),
        ("rise above the plates", lengths.write(totals.rise_mm)),
        ("upstand above plates", lengths.write(totals.upstand_mm)),
        ("plan inside the plates", format!("{} m²", fixed(totals.plan_area_m2, 1))),
        ("slopes", format!("{} m²", fixed(totals.slope_area_m2, 1))),
        ("timber, net", format!("{} m³", fixed(totals.timber_m3, 2))),
    ];
    key_figures(sheet, &boxes, [LEFT, top], [ROOM, FIGURES_HEIGHT], FIGURE);
}

/// A row of boxes, each a figure with a word above it.
pub fn key_figures<L: AsRef<str>>(
    sheet: &mut Sheet,
    boxes: &[(L, String)],
    [x, y]: [f64; 2],
    [w, h]: [f64; 2],
    style: Style,
) {
    let each = w / boxes.len().max(1) as f64;
    sheet.rect([x, y], [w, h], None, Some(Pen::black(0.35)));
    for (i, (label, figure)) in boxes.iter().enumerate() {
        let left = x + each * i as f64;
        if i > 0 {
            sheet.line([left, y], [left, y + h], Pen::black(0.2));
        }
        sheet.text_within([left + 1.5, y + 3.6], Anchor::Start, LABEL, label.as_ref(), each - 3.0);
        sheet.text_within([left + 1.5, y + h - 2.4], Anchor::Start, style, figure, each - 3.0);
    }
}

/// Sign and word of a level: never colour alone.
const fn sign(level: NoticeLevel) -> (&'static str, &'static str) {
    match level {
        NoticeLevel::Stop => ("■", "STOP"),
        NoticeLevel::Warn => ("▲", "LOOK"),
        NoticeLevel::Note => ("●", "NOTE"),
    }
}

/// A notice as it is set.
struct Written {
    level: NoticeLevel,
    lines: Vec<String>,
    height: f64,
}

/// The notices, gravest first.
fn write(notices: &[Notice]) -> Vec<Written> {
    let mut ordered: Vec<&Notice> = notices.iter().collect();
    ordered.sort_by_key(|n| n.level);
    ordered
        .into_iter()
        .map(|notice| {
            let place = if notice.place.is_empty() { String::new() } else { format!("{}: ", notice.place) };
            let words = crate::text::one_line(&format!("{place}{}", notice.text));
            let lines = NOTICE.wrap_at_most(&words, RIGHT - WORDS_AT, 4);
            let height = lines.len().max(1) as f64 * NOTICE.line_mm() + 1.2;
            Written { level: notice.level, lines, height }
        })
        .collect()
}

fn notices(pages: &mut Vec<Page>, written: &[Written], mut y: f64) {
    if written.is_empty()
        && let Some(page) = pages.last_mut()
    {
        page.sheet.text([LEFT, y], Anchor::Start, NOTICE, "No notices.");
    }
    for notice in written {
        if y + notice.height - NOTICE.line_mm() > BOTTOM {
            let mut page = Page::new("Notices", false, CAUTION);
            page.sheet.part(Role::Heading, |s| {
                s.text([LEFT, TOP + 7.0], Anchor::Start, Style::bold(20.0), "Notices, continued");
            });
            pages.push(page);
            y = TOP + 18.0;
        }
        let Some(page) = pages.last_mut() else { return };
        let (mark, word) = sign(notice.level);
        page.sheet.text([LEFT, y], Anchor::Start, Style::bold(12.0), mark);
        page.sheet.text([LEFT + 6.0, y], Anchor::Start, Style::bold(10.0), word);
        page.sheet.lines([WORDS_AT, y], NOTICE, &notice.lines);
        y += notice.height;
    }
}
