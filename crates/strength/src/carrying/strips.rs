//! Which part of a slope each rafter carries: a strip half way to its neighbours on either side, cut across where its
//! supports are. What lies beyond the ends of a rafter, over an opening or beside a hip, goes to the end that is next.

use super::run::Run;
use super::touch::{area_and_middle, left_of};
use geometry::{DVec2, DVec3};
use roof::solution::{FaceOut, LineKind, Solution};

/// Rafters nearer than this to one line up the slope are pieces of one column, mm.
const ONE_COLUMN: f64 = 1.0;

/// Points nearer than this are one, mm.
const SAME: f64 = 0.5;

/// A face with its own measure: `u` along the wall, `v` level up the slope from the plate line.
#[derive(Clone, Debug)]
pub struct Slope {
    /// Letters of its walls.
    pub walls: Vec<String>,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// Start of its first wall.
    origin: DVec2,
    /// Along the wall.
    pub along: DVec2,
    /// Level, square to the wall and in.
    pub inward: DVec2,
    /// Its outline with the overhangs, anticlockwise, in `u` and `v`, mm.
    outline: Vec<DVec2>,
}

impl Slope {
    /// `u` and `v` of a point.
    #[must_use]
    pub fn of(&self, point: DVec3) -> DVec2 {
        let from = point.truncate() - self.origin;
        DVec2::new(self.along.dot(from), self.inward.dot(from))
    }

    /// Its area in plan with the overhangs, mm².
    #[must_use]
    pub fn area(&self) -> f64 {
        area_and_middle(&self.outline).map_or(0.0, |(area, _)| area)
    }

    /// Where it begins and ends along the wall, mm.
    #[must_use]
    pub fn reach(&self) -> [f64; 2] {
        self.outline.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], p| [a.min(p.x), b.max(p.x)])
    }
}

/// The slopes of a roof.
#[must_use]
pub fn slopes(solution: &Solution) -> Vec<Slope> {
    solution.faces.iter().filter_map(|face| slope(solution, face)).collect()
}

fn slope(solution: &Solution, face: &FaceOut) -> Option<Slope> {
    let wall_of = |letter: &str| solution.plan.walls.iter().find(|w| w.id == *letter);
    let wall = wall_of(face.walls.first()?)?;
    let (from, to) = (DVec2::from_array(wall.from), DVec2::from_array(wall.to));
    let along = (to - from).normalize_or_zero();
    let inward = along.perp();
    let base = Slope {
        walls: face.walls.clone(),
        pitch_deg: face.pitch_deg,
        origin: from,
        along,
        inward,
        outline: Vec::new(),
    };
    let outline: Vec<DVec2> = face.outline.iter().map(|p| base.of(DVec3::from_array(*p))).collect();
    let verges: Vec<[DVec2; 2]> = lines_of(solution, face, LineKind::Verge, &base);
    let hips: Vec<[DVec2; 2]> =
        [LineKind::Hip, LineKind::Valley].into_iter().flat_map(|kind| lines_of(solution, face, kind, &base)).collect();
    let verge_out = |u: f64| {
        // The verge belongs to the gable wall that is crossed there.
        let gable = solution.plan.walls.iter().filter(|w| w.gable).min_by(|a, b| {
            let off = |w: &&roof::solution::WallOut| {
                let middle = (DVec2::from_array(w.from) + DVec2::from_array(w.to)) / 2.0;
                (along.dot(middle - from) - u).abs()
            };
            off(a).total_cmp(&off(b))
        });
        gable.map_or(0.0, |w| w.overhang_mm)
    };
    let middle = outline.iter().copied().sum::<DVec2>() / outline.len().max(1) as f64;
    let out = |p: DVec2| -> DVec2 {
        let mut moved = p;
        let on = |line: &[DVec2; 2]| line.iter().any(|end| end.distance(p) < SAME);
        if p.y.abs() < SAME {
            // Down to the edge of the eaves, along the hip or valley that ends here.
            let hip = hips.iter().find(|line| on(line)).map(|[a, b]| *b - *a);
            let slant = hip.filter(|d| d.y.abs() > SAME).map_or(0.0, |d| d.x / d.y);
            moved += DVec2::new(-slant * wall.overhang_mm, -wall.overhang_mm);
        }
        if verges.iter().any(on) {
            moved.x += verge_out(p.x) * if p.x < middle.x { -1.0 } else { 1.0 };
        }
        moved
    };
    Some(Slope { outline: outline.iter().map(|p| out(*p)).collect(), ..base })
}

fn lines_of(solution: &Solution, face: &FaceOut, kind: LineKind, base: &Slope) -> Vec<[DVec2; 2]> {
    solution
        .lines
        .iter()
        .filter(|line| line.kind == kind && line.faces.contains(&face.id))
        .map(|line| [line.from, line.to].map(|p| base.of(DVec3::from_array(p))))
        .collect()
}

/// The part of a slope that one rafter carries.
#[derive(Clone, Debug)]
pub struct Strip {
    /// The rafter, by its run.
    pub run: usize,
    /// The slope, by its number.
    pub slope: usize,
    /// Its outline in `u` and `v`, mm.
    outline: Vec<DVec2>,
}

impl Strip {
    /// What of it lies between two distances from the plate line, with its middle's; `None` when nothing does.
    #[must_use]
    pub fn between(&self, low: f64, high: f64) -> Option<(f64, f64)> {
        let ring = bounded(&self.outline, [low, high], DVec2::Y)?;
        area_and_middle(&ring).map(|(area, middle)| (area, middle.y))
    }

    /// Its middle along the wall, mm.
    #[must_use]
    pub fn middle(&self) -> f64 {
        area_and_middle(&self.outline).map_or(0.0, |(_, middle)| middle.x)
    }
}

/// What of a ring lies between two lines square to `axis`.
fn cut(ring: &[DVec2], low: f64, high: f64, axis: DVec2) -> Option<Vec<DVec2>> {
    if high <= low {
        return None;
    }
    let side = axis.perp();
    // Left of a line is where `axis` grows when the line runs against `side`.
    let kept = left_of(ring, axis * low, axis * low - side);
    let kept = left_of(&kept, axis * high, axis * high + side);
    (kept.len() > 2).then_some(kept)
}

/// The strips of all rafters of a slope.
///
/// `rafters`: runs that lie up the slope.
#[must_use]
pub fn strips(slope: &Slope, number: usize, rafters: &[(usize, &Run)]) -> Vec<Strip> {
    struct Piece {
        run: usize,
        u: f64,
        v: [f64; 2],
    }
    let mut pieces: Vec<Piece> = rafters
        .iter()
        .map(|(run, r)| {
            let ends = r.ends.map(|p| slope.of(p));
            Piece { run: *run, u: (ends[0].x + ends[1].x) / 2.0, v: [ends[0].y, ends[1].y] }
        })
        .collect();
    pieces.sort_by(|a, b| a.u.total_cmp(&b.u).then(a.v[0].total_cmp(&b.v[0])));
    let mut columns: Vec<Vec<Piece>> = Vec::new();
    for piece in pieces {
        match columns.last_mut() {
            Some(column) if (piece.u - column[0].u).abs() < ONE_COLUMN => column.push(piece),
            _ => columns.push(vec![piece]),
        }
    }
    let us: Vec<f64> = columns.iter().map(|column| column[0].u).collect();
    let mut all = Vec::new();
    for (k, column) in columns.iter().enumerate() {
        let low = if k == 0 { f64::NEG_INFINITY } else { (us[k - 1] + us[k]) / 2.0 };
        let high = us.get(k + 1).map_or(f64::INFINITY, |next| (us[k] + next) / 2.0);
        for (j, piece) in column.iter().enumerate() {
            let below = if j == 0 { f64::NEG_INFINITY } else { (column[j - 1].v[1] + piece.v[0]) / 2.0 };
            let above = column.get(j + 1).map_or(f64::INFINITY, |next| (piece.v[1] + next.v[0]) / 2.0);
            let ring =
                bounded(&slope.outline, [low, high], DVec2::X).and_then(|r| bounded(&r, [below, above], DVec2::Y));
            if let Some(outline) = ring {
                all.push(Strip { run: piece.run, slope: number, outline });
            }
        }
    }
    all
}

/// As [`cut`], between lines that may be infinitely far.
fn bounded(ring: &[DVec2], [low, high]: [f64; 2], axis: DVec2) -> Option<Vec<DVec2>> {
    let reach =
        ring.iter().map(|p| axis.dot(*p)).fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], x| [a.min(x), b.max(x)]);
    cut(ring, low.max(reach[0]), high.min(reach[1]), axis)
}
