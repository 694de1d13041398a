//! A cutting plan as layouts: lengths that are cut alike, told once.

use super::out::{CutOut, LaidOut, Layout};
use crate::cutting::{Bar, CutFor, CuttingPlan, Need, SawCut, Turn};
use crate::stock::Group;

/// Places that differ by less are told as one, mm: a tenth of what a saw holds.
const SAME_PLACE: f64 = 0.01;

/// The plan, told once for all lengths that are cut alike; faces of each pattern piece are `faces`, in the order of the
/// need's pieces.
pub fn layouts(need: &Need, plan: &CuttingPlan, group: &Group, faces: &[Vec<Vec<[f64; 3]>>]) -> Vec<Layout> {
    let mut out: Vec<(usize, Layout)> = Vec::new();
    for (number, bar) in plan.bars.iter().enumerate() {
        let before = out.iter_mut().find(|(first, _)| plan.bars.get(*first).is_some_and(|other| alike(other, bar)));
        if let Some((_, layout)) = before {
            layout.count += 1;
            for (laid, piece) in layout.pieces.iter_mut().zip(&bar.pieces) {
                laid.marks.push(piece.mark.clone());
            }
        } else {
            out.push((number, layout(need, bar, group, faces)));
        }
    }
    out.into_iter().map(|(_, layout)| layout).collect()
}

fn alike(a: &Bar, b: &Bar) -> bool {
    a.stock == b.stock
        && a.pieces.len() == b.pieces.len()
        && a.pieces
            .iter()
            .zip(&b.pieces)
            .all(|(p, q)| p.piece == q.piece && p.turn == q.turn && (p.at - q.at).abs() < SAME_PLACE)
}

fn layout(need: &Need, bar: &Bar, group: &Group, faces: &[Vec<Vec<[f64; 3]>>]) -> Layout {
    let stock = need.stock.get(bar.stock);
    let depth = need.section[1];
    let pieces = bar.pieces.iter().map(|laid| {
        let piece = need.pieces.get(laid.piece);
        let points: &[[f64; 3]] = piece.map_or(&[], |p| &p.points);
        let turned: Vec<[f64; 3]> = points.iter().map(|p| turn(*p, laid.turn, depth)).collect();
        let [low, high] = reach(&turned);
        let shift = laid.at - low;
        LaidOut {
            marks: vec![laid.mark.clone()],
            card: group.pieces.get(laid.piece).and_then(|p| p.marks.first()).cloned().unwrap_or_default(),
            turn: word(laid.turn).to_owned(),
            from_mm: laid.at,
            to_mm: high + shift,
            outline: faces.get(laid.piece).map_or_else(Vec::new, |f| outline(f, laid.turn, depth, shift)),
        }
    });
    Layout {
        length_mm: stock.map_or(0.0, |s| s.length),
        count: 1,
        yard: stock.and_then(|s| s.yard.clone()),
        pieces: pieces.collect(),
        cuts: bar.cuts.iter().map(|c| cut(c, need.section)).collect(),
        left_mm: bar.left,
        kept: bar.left >= need.sawing.keep,
    }
}

/// A point of a piece as it lies in the stock, before it is moved along.
fn turn([x, y, z]: [f64; 3], turn: Turn, depth: f64) -> [f64; 3] {
    match turn {
        Turn::AsItLies => [x, y, z],
        Turn::EndForEnd => [-x, y, -z],
        Turn::EndForEndOver => [-x, depth - y, z],
        Turn::Over => [x, depth - y, -z],
    }
}

fn reach(points: &[[f64; 3]]) -> [f64; 2] {
    points.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], p| [low.min(p[0]), high.max(p[0])])
}

/// Those faces of a piece that look up from the bench, as it lies in the stock with the near side up.
fn outline(faces: &[Vec<[f64; 3]>], how: Turn, depth: f64, shift: f64) -> Vec<Vec<[f64; 2]>> {
    /// A face looks up when more than this share of it does: all but those along the edges.
    const UP: f64 = 0.05;
    let turned = faces.iter().map(|ring| ring.iter().map(|p| turn(*p, how, depth)).collect::<Vec<_>>());
    turned
        .filter(|ring| {
            // Twice the area vector; the near side of the stock faces against `across`.
            let mut area = [0.0; 3];
            for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                area[0] += a[1] * b[2] - a[2] * b[1];
                area[1] += a[2] * b[0] - a[0] * b[2];
                area[2] += a[0] * b[1] - a[1] * b[0];
            }
            let whole = (area[0] * area[0] + area[1] * area[1] + area[2] * area[2]).sqrt();
            -area[2] > UP * whole
        })
        .map(|ring| ring.into_iter().map(|p| [p[0] + shift, p[1]]).collect())
        .collect()
}

const fn word(turn: Turn) -> &'static str {
    match turn {
        Turn::AsItLies => "as it lies",
        Turn::EndForEnd => "end for end",
        Turn::EndForEndOver => "end for end, top edge down",
        Turn::Over => "top edge down",
    }
}

fn cut(cut: &SawCut, [thickness, depth]: [f64; 2]) -> CutOut {
    let [nx, ny, nz] = cut.normal;
    // On the side that lies up, half the thickness against `across`, and on the one that lies down, half of it along:
    // along = at - (up - middle) ny/nx - across nz/nx.
    let along = |up: f64, across: f64| {
        if nx.abs() > 0.0 { cut.at - ((up - depth / 2.0) * ny + across * nz) / nx } else { cut.at }
    };
    let edges = |across: f64| [along(0.0, across), along(depth, across)];
    CutOut {
        what: match cut.what {
            CutFor::Squaring => "squaring",
            CutFor::Parting => "parting",
            CutFor::Shared => "shared",
            CutFor::Trimming => "trimming",
        }
        .to_owned(),
        ends: cut.ends.iter().map(|e| u32::try_from(*e).unwrap_or(u32::MAX)).collect(),
        at_mm: edges(-thickness / 2.0),
        under_mm: edges(thickness / 2.0),
        kerf_right: cut.kerf_right,
        face_angle_deg: cut.marking.face_deg,
        edge_angle_deg: cut.marking.edge_deg,
        saw: cut.marking.saw,
        square: cut.marking.square,
    }
}
