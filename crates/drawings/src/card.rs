//! The card of a pattern piece: all that is needed at the bench to cut it.

use roof::solution::{BoltWay, CutPlace, Member, PatternPiece, Solution, SpliceForm, SpliceOut};

use crate::cover::key_figures;
use crate::heel;
use crate::layout::Room;
use crate::lists::alike_to;
use crate::marks::ranges;
use crate::page::{BOTTOM, LEFT, Page, RIGHT, ROOM, TOP};
use crate::piece_view;
use crate::sheet::{Anchor, Pen, Role, Sheet};
use crate::table::{Column, Table};
use crate::text::{SMALLEST_PT, Style, one_line};
use job::written::{Lengths, degrees, tenth};

const CAUTION: &str = "All angles are from square across, not from the length. Cut one, try it in its place, then cut \
                       the rest.";
const LABEL: Style = Style::regular(SMALLEST_PT);
const WORDS: Style = Style::regular(10.0);
const FIGURE: Style = Style::bold(16.0);
/// Rows of the sheet, mm.
const FIGURES_TOP: f64 = TOP + 25.0;
const FIGURES_HEIGHT: f64 = 12.0;
const DRAWING_TOP: f64 = FIGURES_TOP + FIGURES_HEIGHT + 2.0;
const TABLES_TOP: f64 = 117.5;
/// Columns of the lower half: cuts, tape and deductions, birdsmouth.
const TAPE_AT: f64 = LEFT + 150.0;
const HEEL_AT: f64 = RIGHT - 59.0;
/// An edge angle nearer to square is not worth a line, degrees.
const SQUARE: f64 = 0.05;
/// Lines a cell may take.
const MOST_LINES: usize = 3;

/// The card, with further pages if it has more cuts or marks than one holds.
/// With `mirrored` it serves that piece too, cut to the other hand.
pub fn pages(solution: &Solution, piece: &PatternPiece, mirrored: Option<&PatternPiece>) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let name = format!("Card {}", piece.mark);
    let mut page = Page::new(&name, true, CAUTION);
    heading(&mut page.sheet, piece, mirrored, None, lengths);
    let Some(member) = solution.members.iter().find(|m| m.mark == piece.mark) else {
        page.sheet.text([LEFT, TABLES_TOP], Anchor::Start, WORDS, "The job has no timber with this mark.");
        return vec![page];
    };
    page.sheet.items.clear();
    heading(&mut page.sheet, piece, mirrored, Some(member), lengths);
    figures(&mut page.sheet, member, lengths);
    let room = Room { x: LEFT, y: DRAWING_TOP, w: ROOM, h: TABLES_TOP - DRAWING_TOP - 1.5 };
    piece_view::draw(&mut page.sheet, member, lengths, room);
    if let Some(mouth) = member.birdsmouth {
        let room = Room { x: HEEL_AT, y: TABLES_TOP, w: RIGHT - HEEL_AT, h: BOTTOM - TABLES_TOP };
        heel::draw(&mut page.sheet, member, mouth, lengths, room);
    }
    let (cuts, tape) = (cut_table(member, lengths), tape_table(member, lengths));
    let mut pages = vec![page];
    let (mut next_cut, mut next_mark) = (0, 0);
    let mut top = TABLES_TOP;
    loop {
        let Some(page) = pages.last_mut() else { return pages };
        let before = (next_cut, next_mark);
        if next_cut < cuts.len() {
            next_cut = cuts.draw(&mut page.sheet, [LEFT, top], BOTTOM, next_cut).0;
        }
        let mut y = top;
        if next_mark < tape.len() {
            (next_mark, y) = tape.draw(&mut page.sheet, [TAPE_AT, top], BOTTOM, next_mark);
        }
        if next_mark >= tape.len() && next_cut >= cuts.len() {
            deductions(&mut pages, member, lengths, y + 4.5);
            return pages;
        }
        // A row that no page can hold ends the card instead of going on for ever.
        if before == (next_cut, next_mark) && top < TABLES_TOP {
            return pages;
        }
        pages.push(continued(&name, piece));
        top = TOP + 14.0;
    }
}

fn continued(name: &str, piece: &PatternPiece) -> Page {
    let mut page = Page::new(name, false, CAUTION);
    let words = format!("{}  {}, continued", piece.mark, piece.kind.name());
    page.sheet.part(Role::Heading, |s| {
        s.text_within([LEFT, TOP + 8.0], Anchor::Start, Style::bold(20.0), &words, ROOM);
    });
    page
}

fn heading(
    sheet: &mut Sheet,
    piece: &PatternPiece,
    mirrored: Option<&PatternPiece>,
    member: Option<&Member>,
    lengths: Lengths,
) {
    const HEIGHT: f64 = 13.0;
    const COUNT_WIDTH: f64 = 46.0;
    let (style, mark) = Style::bold(28.0).fit(&one_line(&piece.mark), 80.0);
    let box_width = style.width_mm(&mark) + 7.0;
    sheet.rect([LEFT, TOP], [box_width, HEIGHT], None, Some(Pen::black(0.7)));
    let base = TOP + HEIGHT / 2.0;
    let kind = piece.kind.name();
    let section = member.map_or_else(String::new, |m| lengths.section(m.size.thickness_mm, m.size.depth_mm));
    sheet.part(Role::Heading, |sheet| {
        sheet.text([LEFT + 3.5, base + style.cap_mm() / 2.0], Anchor::Start, style, &mark);
        let words = Style::bold(20.0);
        let room = ROOM - box_width - COUNT_WIDTH - 10.0;
        let text = if section.is_empty() { kind.to_owned() } else { format!("{kind}   {section}") };
        sheet.text_within([LEFT + box_width + 5.0, base + words.cap_mm() / 2.0], Anchor::Start, words, &text, room);
        let count = Style::bold(28.0);
        let text = match mirrored {
            Some(other) => format!("cut {} + {}", piece.count, other.count),
            None => format!("cut {}", piece.count),
        };
        sheet.text_within([RIGHT, base + count.cap_mm() / 2.0], Anchor::End, count, &text, COUNT_WIDTH);
    });
    let mut lines: Vec<String> = Vec::new();
    if member.is_some_and(|m| m.firred) {
        lines.push(FIRRED.to_owned());
    }
    match (mirrored, &piece.mirror_of) {
        (Some(other), _) => {
            let alike = alike_to(if other.differ_mm > piece.differ_mm { other } else { piece }, lengths);
            let these = format!("{} as drawn: {}{alike}.", piece.count, ranges(&piece.members));
            let those = format!("{} mirrored, every bevel to the other hand: {}.", other.count, ranges(&other.members));
            lines.extend([these, those]);
        }
        (None, Some(other)) => lines.push(mirror_words(other, member)),
        (None, None) => {}
    }
    if mirrored.is_none() && (piece.members.len() > 1 || piece.members.first() != Some(&piece.mark)) {
        lines.push(format!("for {}{}", ranges(&piece.members), alike_to(piece, lengths)));
    }
    let most = 3 - lines.len().min(2);
    let lines: Vec<String> = lines.iter().flat_map(|l| WORDS.wrap_at_most(&one_line(l), ROOM, most)).take(2).collect();
    sheet.lines([LEFT, TOP + HEIGHT + 5.0], WORDS, &lines);
}

/// How to come by a piece that is the mirror of another. Where the head has one
/// bevelled cut, the offcut of the other's head, turned end over end, has it.
fn mirror_words(other: &str, member: Option<&Member>) -> String {
    let mut heads = member.into_iter().flat_map(|m| &m.cuts).filter(|c| c.at == CutPlace::Head);
    match (heads.next(), heads.next()) {
        (Some(cut), None) if cut.edge_angle_deg.abs() > SQUARE => {
            format!("Mirror of {other}: the offcut of its head cut, turned end over end, is the head of this one.")
        }
        _ => format!("Mirror of {other}: same lengths, every bevel to the other hand."),
    }
}

fn figures(sheet: &mut Sheet, member: &Member, lengths: Lengths) {
    let pitch = if piece_view::is_sloping(member) { degrees(member.pitch_deg) } else { "level".to_owned() };
    let mut boxes = vec![
        ("true length", lengths.write(member.true_length_mm)),
        ("cut length, long points of top edge", lengths.write(member.cut_length_mm)),
        ("pick stock of at least", lengths.write(member.stock_length_mm)),
        ("rises at", pitch),
    ];
    if let Some([left, right]) = member.backing_deg {
        boxes.push(("backing left / right", format!("{} / {}", degrees(left), degrees(right))));
    }
    // A valley that is not lowered says nothing about it.
    if let Some(drop) = member.drop_mm.filter(|d| *d != 0.0) {
        boxes.push(("drop, plumb", lengths.write(drop)));
    }
    key_figures(sheet, &boxes, [LEFT, FIGURES_TOP], [ROOM, FIGURES_HEIGHT], FIGURE);
}

fn cut_table(member: &Member, lengths: Lengths) -> Table {
    let small = Style::regular(9.0);
    let figure = Style::bold(14.0);
    let mut table = Table::new(&[
        Column::words("cut", 36.0, small),
        Column::figures("face\nangle", 20.0, figure),
        Column::figures("edge\nangle", 20.0, figure),
        Column::figures("roofing square\nrun / rise", 32.0, small),
        Column::figures("bevel gauge\nmm in 100", 19.0, small),
        Column::figures("saw\nmitre / tilt", 20.0, small),
    ]);
    for cut in &member.cuts {
        let mut name = one_line(&cut.name);
        if !name.contains(place(cut.at)) && cut.at != CutPlace::Foot {
            name = format!("{}: {name}", place(cut.at));
        }
        if let Some(other) = &cut.against {
            name = format!("{name}, against {other}");
        }
        let edge = cut.edge_angle_deg.abs() > SQUARE;
        let pair = |run: f64, rise: f64| format!("{} / {}", lengths.write(run), lengths.write(rise));
        let mut square = pair(cut.square.run, cut.square.rise);
        let mut bevel = tenth(cut.bevel_mm_in_100);
        if edge {
            square = format!("face {square}\nedge {}", pair(cut.edge_square.run, cut.edge_square.rise));
            bevel = format!("{bevel}\n{}", tenth(cut.edge_bevel_mm_in_100));
        }
        let saw = format!("{} / {}", tenth(cut.saw.mitre_deg), tenth(cut.saw.tilt_deg));
        let (face, edge) = (degrees(cut.face_angle_deg), degrees(cut.edge_angle_deg));
        table.row(&[name, face, edge, square, bevel, saw], MOST_LINES);
    }
    table
}

const fn place(at: CutPlace) -> &'static str {
    match at {
        CutPlace::Tail => "tail",
        CutPlace::Foot => "foot",
        CutPlace::Head => "head",
    }
}

fn tape_table(member: &Member, lengths: Lengths) -> Table {
    let figure = Style::bold(11.0);
    let mut table = Table::new(&[
        Column::words("", 6.0, Style::bold(SMALLEST_PT)),
        Column::words("pull from foot\nc: centre line", 23.0, Style::regular(9.0)),
        Column::figures("left\narris", 18.5, figure),
        Column::figures("right\narris", 18.5, figure),
    ]);
    for (i, mark) in member.marks.iter().enumerate() {
        let [left, right] = piece_view::tape_ends(mark, member.size.thickness_mm, lengths);
        table.row(&[(i + 1).to_string(), mark.name.clone(), left, right], MOST_LINES);
    }
    table
}

/// What is drawn on top of a plate.
const FIRRED: &str = "The blocks on top are firring, pieces of their own: its strip says where, and how high. Cut the plate \
                      level.";

/// The named deductions and the splices under the tape marks, or on a page more.
fn deductions(pages: &mut Vec<Page>, member: &Member, lengths: Lengths, mut y: f64) {
    const WIDTH: f64 = HEEL_AT - TAPE_AT - 4.0;
    let style = Style::regular(9.0);
    let taken_off: Vec<String> = member
        .deductions
        .iter()
        .map(|d| {
            let along = lengths.write(d.slope_mm);
            format!("{} less {along}: {} ({} level)", place(d.at), d.why, lengths.write(d.mm))
        })
        .collect();
    let spliced: Vec<String> = member.splices.iter().map(|s| splice_words(s, lengths)).collect();
    for (head, words) in [("taken off the true length, along the timber", taken_off), ("splices", spliced)] {
        for (i, words) in words.iter().enumerate() {
            // A scarf has many bolts: nothing of it may be cut off.
            let lines = style.wrap_at_most(&one_line(words), WIDTH, 12);
            if y + (lines.len() as f64 - 1.0) * style.line_mm() > BOTTOM {
                let Some(last) = pages.last() else { return };
                let mut page = Page::new(&last.name, false, CAUTION);
                page.sheet.text([LEFT, TOP + 8.0], Anchor::Start, Style::bold(14.0), "Continued");
                pages.push(page);
                y = TOP + 16.0;
            }
            let Some(page) = pages.last_mut() else { return };
            if i == 0 {
                page.sheet.text([TAPE_AT, y], Anchor::Start, LABEL, head);
                y += LABEL.line_mm() + 0.6;
            }
            y = page.sheet.lines([TAPE_AT, y], style, &lines) + 0.6;
        }
    }
}

/// A splice in words, with its bolt holes pulled from the foot.
fn splice_words(splice: &SpliceOut, lengths: Lengths) -> String {
    let kind = match splice.kind {
        SpliceForm::HalfLap => "half lap",
        SpliceForm::FishPlates => "butt with fish plates",
        SpliceForm::Splayed => "splayed scarf",
        SpliceForm::Hooked => "hooked scarf",
        SpliceForm::BoardSplay => "splayed butt",
    };
    let mut words = format!(
        "{}: {kind} with {}, {} long from {}",
        place(splice.at),
        splice.mate,
        lengths.write(splice.length_mm),
        lengths.write(splice.from_mm)
    );
    if let Some(taper) = splice.wedge_mm_in_100 {
        words.push_str(&format!("; folding wedges tapered {} in 100", tenth(taper)));
    }
    if let Some(first) = splice.bolts.first() {
        words.push_str(&format!("; {} holes of {} at ", splice.bolts.len(), lengths.write(first.diameter_mm)));
        let holes: Vec<String> = splice
            .bolts
            .iter()
            .map(|b| match b.through {
                BoltWay::Thickness => format!("{} ({} up)", lengths.write(b.along_mm), lengths.write(b.up_mm)),
                BoltWay::Depth => format!("{} (from the top)", lengths.write(b.along_mm)),
            })
            .collect();
        words.push_str(&holes.join(", "));
    }
    words
}
