//! Pieces counted on the real face, course by course: which are whole, which are cut and by what.

use super::chosen::Product;
use super::figures::Bond;
use super::ring;
use super::rows::{Row, RowKind, Rows};
use super::slope::{Edge, EdgeKind, Slope};
use geometry::DVec2;
use serde::{Deserialize, Serialize};

/// Less than this share of a piece is no piece, and all but it a whole one: the joints of a course take it up, no unit.
const TAKEN_UP: f64 = 0.02;

/// A wide piece makes good up to half a width, and what joints take up: share of a width, no unit.
const WIDE_UP_TO: f64 = 0.5 + TAKEN_UP;

/// Corners of a slope this near a joint lie on it, mm.
const AT_JOINT: f64 = 1e-3;

/// A verge is upright when it leans less than this up the whole course, mm.
const UPRIGHT: f64 = 5.0;

/// Cut pieces, by what cuts them. The part cut off is waste: that it fits elsewhere is not assumed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cuts {
    /// At hips.
    pub hip: u64,
    /// At valleys.
    pub valley: u64,
    /// At verges.
    pub verge: u64,
    /// Round windows, stacks and dormers.
    pub opening: u64,
    /// Against walls.
    pub wall: u64,
    /// Below ridges and breaks that lie lower than the top of the slope, and at steps of eaves.
    pub other: u64,
}

impl Cuts {
    /// All of them.
    #[must_use]
    pub const fn all(&self) -> u64 {
        self.hip + self.valley + self.verge + self.opening + self.wall + self.other
    }

    /// Adds others.
    pub fn add(&mut self, other: &Self) {
        self.hip += other.hip;
        self.valley += other.valley;
        self.verge += other.verge;
        self.opening += other.opening;
        self.wall += other.wall;
        self.other += other.other;
    }
}

/// Pieces of a slope.
#[derive(Clone, Copy, Debug, Default)]
pub struct Counted {
    /// Whole ones in whole courses.
    pub whole: u64,
    /// Cut ones in whole courses.
    pub cut: u64,
    /// Short ones, under the eaves course and in the top one, cut or not.
    pub short: u64,
    /// Wide ones at verges.
    pub wide: u64,
    /// Which are cut, and by what; short ones too.
    pub cuts: Cuts,
    /// What shows of all courses, mm².
    pub area: f64,
    /// Battens, mm.
    pub batten: f64,
    /// Pieces that are nailed, of every length.
    pub nailed: u64,
    /// Courses that hips and valleys cross, each as often as it is crossed.
    pub hip_courses: u64,
    /// The same of valleys.
    pub valley_courses: u64,
}

/// Counts the pieces of a slope.
pub fn count(slope: &Slope, rows: &Rows, product: &Product) -> Counted {
    let mut all = Counted::default();
    let holes = slope.hole_rings();
    let origin = origin(slope);
    for row in &rows.rows {
        let shift = if product.bond == Bond::Half && row.number % 2 == 1 { product.cover_width / 2.0 } else { 0.0 };
        let in_row = Course { slope, holes: &holes, row, width: product.cover_width, start: origin + shift };
        let pieces = in_row.pieces(product.wide.is_some());
        let laid = pieces.whole + pieces.cut + pieces.wide;
        if row.kind == RowKind::Whole {
            all.whole += pieces.whole;
            all.cut += pieces.cut;
        } else {
            all.short += pieces.whole + pieces.cut;
        }
        all.wide += pieces.wide;
        all.cuts.add(&pieces.cuts);
        let edge = row.kind != RowKind::Whole || row.number == 0;
        all.nailed +=
            if edge || row.number % product.nail_every == 0 { laid } else { (pieces.cut + pieces.wide).min(laid) };
        if row.shows_to > row.tail {
            let shown = |r: &[DVec2]| ring::area(&ring::band(r, row.tail, row.shows_to)).abs();
            all.area += shown(&slope.ring) - holes.iter().map(|hole| shown(hole)).sum::<f64>();
        }
        all.batten += ring::level_length(&slope.ring, &holes, row.hangs_at);
        if row.kind != RowKind::UnderEaves {
            all.hip_courses += crossed(slope, row, EdgeKind::Hip);
            all.valley_courses += crossed(slope, row, EdgeKind::Valley);
        }
    }
    all
}

/// Edges of a kind at the middle of what shows of a course.
fn crossed(slope: &Slope, row: &Row, kind: EdgeKind) -> u64 {
    let at = (row.tail + row.shows_to) / 2.0;
    slope.edges.iter().filter(|e| e.kind == kind && (e.ends[0].y <= at) != (e.ends[1].y <= at)).count() as u64
}

/// Where joints are counted from: an upright verge, so that whole pieces begin there; else where the wall begins.
fn origin(slope: &Slope) -> f64 {
    let uprights = slope.edges.iter().filter(|e| upright_verge(e));
    uprights.map(|e| e.ends[0].x.min(e.ends[1].x)).min_by(f64::total_cmp).unwrap_or(0.0)
}

fn upright_verge(edge: &Edge) -> bool {
    edge.kind == EdgeKind::Verge && (edge.ends[0].x - edge.ends[1].x).abs() < UPRIGHT
}

/// One course on a slope.
struct Course<'a> {
    slope: &'a Slope,
    holes: &'a [Vec<DVec2>],
    row: &'a Row,
    width: f64,
    start: f64,
}

#[derive(Default)]
struct Pieces {
    whole: u64,
    cut: u64,
    wide: u64,
    cuts: Cuts,
}

impl Course<'_> {
    fn pieces(&self, has_wide: bool) -> Pieces {
        let mut out = Pieces::default();
        if self.row.head <= self.row.tail {
            return out;
        }
        let mut wide = 0;
        let mut done: Option<i64> = None;
        for [first, last] in self.disturbed() {
            // Undisturbed from the last one on: all whole, or all outside.
            let from = done.map_or(first, |d| d + 1);
            if first > from && self.lies_inside(from) {
                out.whole += (first - from) as u64;
            }
            for place in first.max(from)..=last {
                match self.piece(place, has_wide) {
                    Piece::None => {}
                    Piece::Whole => out.whole += 1,
                    Piece::Wide => {
                        wide += 1;
                    }
                    Piece::Cut(kind) => {
                        out.cut += 1;
                        tally(&mut out.cuts, kind);
                    }
                }
            }
            done = Some(done.map_or(last, |d| d.max(last)));
        }
        // A wide piece takes the place of the part at the verge and of the whole one beside it.
        out.wide = wide;
        out.whole = out.whole.saturating_sub(wide);
        out
    }

    /// Numbers of the pieces that an edge or a hole crosses, from … to, in order and apart.
    fn disturbed(&self) -> Vec<[i64; 2]> {
        let (low, high) = (DVec2::new(f64::NEG_INFINITY, self.row.tail), DVec2::new(f64::INFINITY, self.row.head));
        let place = |u: f64| ((u - self.start) / self.width).floor() as i64;
        let mut all: Vec<[i64; 2]> = self
            .stretches()
            .filter_map(|(ends, _)| ring::stretch(ends, low, high))
            .map(|[a, b]| [place(a.x.min(b.x) - AT_JOINT), place(a.x.max(b.x) + AT_JOINT)])
            .collect();
        all.sort_unstable();
        let mut apart: Vec<[i64; 2]> = Vec::with_capacity(all.len());
        for [a, b] in all {
            match apart.last_mut() {
                Some(last) if a <= last[1] => last[1] = last[1].max(b),
                _ => apart.push([a, b]),
            }
        }
        apart
    }

    /// Every edge of the slope and its holes.
    fn stretches(&self) -> impl Iterator<Item = ([DVec2; 2], Option<EdgeKind>)> + '_ {
        let edges = self.slope.edges.iter().map(|e| (e.ends, Some(e.kind)));
        let holes = self
            .holes
            .iter()
            .flat_map(|hole| hole.iter().enumerate().map(|(k, a)| ([*a, hole[(k + 1) % hole.len()]], None)));
        edges.chain(holes)
    }

    fn reach(&self, place: i64) -> [f64; 2] {
        let from = self.start + place as f64 * self.width;
        [from, from + self.width]
    }

    fn lies_inside(&self, place: i64) -> bool {
        let [a, b] = self.reach(place);
        let (u, s) = ((a + b) / 2.0, (self.row.tail + self.row.head) / 2.0);
        let within = |r: &[DVec2]| ring::level(r, s).iter().any(|[from, to]| u > *from && u < *to);
        within(&self.slope.ring) && !self.holes.iter().any(|hole| within(hole))
    }

    fn piece(&self, place: i64, has_wide: bool) -> Piece {
        let [a, b] = self.reach(place);
        let (low, high) = (self.row.tail, self.row.head);
        let covered = |r: &[DVec2]| ring::area(&ring::band(&ring::upright(r, a, b), low, high)).abs();
        let share =
            (covered(&self.slope.ring) - self.holes.iter().map(|h| covered(h)).sum::<f64>()) / ((b - a) * (high - low));
        if share <= TAKEN_UP {
            return Piece::None;
        }
        if share > 1.0 - TAKEN_UP {
            return Piece::Whole;
        }
        // What cuts it: the edge that runs furthest across it.
        let (min, max) = (DVec2::new(a, low), DVec2::new(b, high));
        let mut by: (f64, Option<EdgeKind>) = (0.0, None);
        let mut verge = false;
        for (ends, kind) in self.stretches() {
            let Some([p, q]) = ring::stretch(ends, min, max) else { continue };
            let length = (q - p).length();
            if length > by.0 {
                by = (length, kind);
                verge = kind == Some(EdgeKind::Verge) && (p.x - q.x).abs() < UPRIGHT;
            }
        }
        if has_wide && verge && share <= WIDE_UP_TO {
            return Piece::Wide;
        }
        Piece::Cut(by.1)
    }
}

enum Piece {
    None,
    Whole,
    Wide,
    Cut(Option<EdgeKind>),
}

fn tally(cuts: &mut Cuts, kind: Option<EdgeKind>) {
    let place = match kind {
        None => &mut cuts.opening,
        Some(EdgeKind::Hip) => &mut cuts.hip,
        Some(EdgeKind::Valley) => &mut cuts.valley,
        Some(EdgeKind::Verge) => &mut cuts.verge,
        Some(EdgeKind::TopWall | EdgeKind::SideWall) => &mut cuts.wall,
        Some(EdgeKind::Eaves | EdgeKind::BreakFoot | EdgeKind::BreakHead | EdgeKind::Ridge | EdgeKind::Step) => {
            &mut cuts.other
        }
    };
    *place += 1;
}
