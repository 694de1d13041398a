//! The walls under the roof's edges: how high the masonry goes under the
//! rafters or the ladder, point by point.

use roof::solution::{GableOut, Solution, WallOut};

use crate::flow::Flow;
use crate::layout::{scale, scale_words};
use crate::page::{LEFT, Page};
use crate::sheet::{Anchor, Pen, Role};
use crate::table::{Column, Table};
use crate::text::{SMALLEST_PT, Style};
use job::written::{Lengths, fixed};

const CAUTION: &str = "Build up to the line only when the rafters stand and are braced: a free gable falls in a wind.";
const FIGURE: Style = Style::bold(12.0);
const LABEL: Style = Style::regular(SMALLEST_PT);
/// Room for a gable's picture, mm.
const PICTURE: [f64; 2] = [150.0, 62.0];
/// Height of a gable's heading, mm.
const HEADING: f64 = 9.0;
/// Where the table of its points stands, mm.
const TABLE_AT: f64 = LEFT + PICTURE[0] + 14.0;

/// A picture and a table of points for every gable.
pub fn pages(solution: &Solution) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Gable walls", true, CAUTION);
    for gable in &solution.gables {
        if let Some(wall) = solution.plan.walls.iter().find(|w| w.id == gable.wall) {
            draw(&mut flow, gable, wall, lengths);
        }
    }
    flow.finish()
}

/// The points of a gable as seen from outside: along the wall from its start,
/// and height, mm.
fn seen(gable: &GableOut, wall: &WallOut) -> Vec<[f64; 2]> {
    let run = [wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]];
    let length = wall.length_mm.max(1.0);
    gable
        .outline
        .iter()
        .map(|p| [((p[0] - wall.from[0]) * run[0] + (p[1] - wall.from[1]) * run[1]) / length, p[2]])
        .collect()
}

fn draw(flow: &mut Flow, gable: &GableOut, wall: &WallOut, lengths: Lengths) {
    let points = seen(gable, wall);
    let span = |axis: usize| {
        points.iter().map(|p| p[axis]).fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)))
    };
    let ((left, right), (low, high)) = (span(0), span(1));
    if !((right - left).is_finite() && (high - low).is_finite()) {
        return;
    }
    let n = scale(|n| (right - left) / n <= PICTURE[0] && (high - low) / n <= PICTURE[1]);
    let mut table = Table::new(&[
        Column::words("point", 16.0, FIGURE),
        Column::figures("along the wall\nfrom its start", 40.0, FIGURE),
        Column::figures("height over\nthe datum", 36.0, FIGURE),
    ]);
    for (k, [along, height]) in points.iter().enumerate() {
        table.row(&[(k + 1).to_string(), lengths.write(*along), lengths.write(*height)], 1);
    }
    let (sheet, top) = flow.block(HEADING + table.height().max(PICTURE[1] + 8.0));
    let words = format!("wall {}   {} m²   {}", gable.wall, fixed(gable.area_m2, 1), scale_words(n));
    sheet.part(Role::Heading, |s| {
        s.text([LEFT, top + 5.0], Anchor::Start, Style::bold(14.0), &words);
    });
    // Walls run with the building on their left: seen from outside, along them is to the right.
    let place = |[x, z]: [f64; 2]| [LEFT + 4.0 + (x - left) / n, top + HEADING + 4.0 + (high - z) / n];
    sheet.part(Role::Figure(format!("The wall under the gable of wall {}, from outside.", gable.wall)), |sheet| {
        sheet.path(points.iter().map(|p| place(*p)).collect(), true, Some(236), Some(Pen::black(0.5)));
        for (k, point) in points.iter().enumerate() {
            let at = place(*point);
            sheet.disc(at, 2.1, Some(255), Some(Pen::black(0.3)));
            sheet.text([at[0], at[1] + LABEL.cap_mm() / 2.0], Anchor::Middle, LABEL, &(k + 1).to_string());
        }
    });
    table.draw(sheet, [TABLE_AT, top + HEADING], f64::INFINITY, 0);
}
