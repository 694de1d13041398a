//! The numbers along the walls: where rafters would stand if the roof had no
//! openings and one pitch all round.

use super::Numbering;
use crate::frame::Standing;
use geometry::DVec2;
use geometry::surface::{Surface, WallId};
use job::Job;

/// Places along a wall nearer than this are one, mm: rounding only.
pub const SAME: f64 = 0.5;

/// What is fixed to the side of a rafter has its middle nearer than this to the
/// rafter's, in thicknesses of it.
const BESIDE: f64 = 2.5;

/// A place between two numbers is told in so many parts of the way.
const PARTS: f64 = 10.0;

/// Rounding does not decide between two such parts (a share of one).
const ROUNDING: f64 = 1e-3;

/// A rafter that an opening has moved keeps a number this near to it, as a
/// share of the centres: two rafters that want one number are then hardly ever
/// to be had, which would make the name of one hang on the other.
const MOVED: f64 = 0.15;

/// A rafter of the plain roof takes the number of one with even pitches this
/// near to it, as a share of the centres: each is near to some, and one that
/// stands midway may have either.
const NEAREST: f64 = 0.6;

/// A number along a wall.
#[derive(Clone, Debug)]
struct Post {
    /// Along the wall, mm.
    at: f64,
    /// Its number.
    number: u32,
    /// What is written after the letter of the wall: the number, or `5-3`,
    /// three tenths of the way from 5 to 6.
    tail: String,
}

impl Post {
    fn whole(at: f64, number: u32) -> Self {
        Self { at, number, tail: number.to_string() }
    }
}

/// A place along a wall that wants a name.
#[derive(Clone, Copy, Debug)]
pub struct Place {
    /// Along the wall, mm.
    pub at: f64,
    /// Who goes first where two are near to one number; `None` does not ask
    /// for one at all.
    pub rank: Option<u8>,
}

/// The numbers along one wall.
#[derive(Clone, Debug, Default)]
struct Row {
    /// Over the plan with one pitch.
    even: Vec<Post>,
    /// With the pitches of the job.
    plain: Vec<Post>,
}

/// The numbers along every wall.
pub struct Grid {
    rows: Vec<Row>,
    ends: Vec<Option<[DVec2; 2]>>,
    letters: Vec<String>,
    centres: f64,
    thickness: f64,
}

impl Grid {
    /// The numbers along the walls of a job.
    pub fn of(job: &Job, surface: &Surface, numbering: &Numbering) -> Self {
        let rafter = &job.timber.rafter;
        let row = |k: usize| {
            let even: Vec<Post> =
                (1..).zip(places(&numbering.even, k)).map(|(number, p)| Post::whole(p.at, number)).collect();
            let plain = places(&numbering.plain, k);
            let tails = named(&[], &even, &plain, rafter.centres, NEAREST);
            let number = |tail: &str| tail.split('-').next().and_then(|n| n.parse().ok()).unwrap_or(0);
            let plain = plain.into_iter().zip(tails);
            let plain = plain.map(|(p, tail)| Post { at: p.at, number: number(&tail), tail }).collect();
            Row { even, plain }
        };
        Self {
            rows: (0..job.walls.len()).map(row).collect(),
            ends: (0..job.walls.len()).map(|k| surface.wall_ends(WallId(k as u32))).collect(),
            letters: job.walls.iter().map(|w| w.letter.clone()).collect(),
            centres: rafter.centres,
            thickness: rafter.size.thickness,
        }
    }

    /// What the rafters at these places along a wall are called after its letter.
    pub fn tails(&self, wall: usize, places: &[Place]) -> Vec<String> {
        let none = Row::default();
        let row = self.rows.get(wall).unwrap_or(&none);
        named(&row.plain, &row.even, places, self.centres, MOVED)
    }

    /// The letter of a wall and the number of the rafter that a point stands
    /// at, or of the last one before it.
    pub fn spot(&self, wall: usize, p: DVec2) -> String {
        let letter = self.letters.get(wall).map_or("", String::as_str);
        let (Some(dir), Some(row)) = (self.dir(wall), self.rows.get(wall)) else { return letter.to_owned() };
        let at = dir.dot(p) + BESIDE * self.thickness;
        let posts = &row.even;
        let Some(k) = posts.iter().rposition(|p| p.at <= at) else { return format!("{letter}0") };
        // Past the last rafter the numbers go on at the centres.
        let past = if k + 1 == posts.len() { ((at - posts[k].at) / self.centres) as u32 } else { 0 };
        format!("{letter}{}", posts[k].number + past)
    }

    /// Direction of a wall in plan.
    pub fn dir(&self, wall: usize) -> Option<DVec2> {
        self.ends.get(wall).copied().flatten().map(|[a, b]| (b - a).normalize_or_zero())
    }

    /// The wall with rafters on it that a point is nearest to; of several, the first.
    pub fn nearest(&self, p: DVec2) -> usize {
        let off = |k: usize| {
            let [a, b] = self.ends[k]?;
            let side = b - a;
            let share = ((p - a).dot(side) / side.length_squared()).clamp(0.0, 1.0);
            (!self.rows[k].plain.is_empty()).then(|| (a + side * share - p).length())
        };
        let offs: Vec<(usize, f64)> = (0..self.rows.len()).filter_map(|k| Some((k, off(k)?))).collect();
        let least = offs.iter().map(|(_, d)| *d).fold(f64::INFINITY, f64::min);
        offs.iter().find(|(_, d)| *d < least + SAME).map_or(0, |(k, _)| *k)
    }
}

/// The places on a wall in rising order; what the shape of the roof fixes goes first.
fn places(all: &[Standing], wall: usize) -> Vec<Place> {
    let on_wall = all.iter().filter(|s| s.wall.index() == wall);
    let mut out: Vec<Place> = on_wall.map(|s| Place { at: s.at, rank: Some(u8::from(!s.fixed)) }).collect();
    out.sort_by(|a, b| a.at.total_cmp(&b.at).then(a.rank.cmp(&b.rank)));
    out.dedup_by(|b, a| b.at - a.at < SAME);
    out
}

/// The posts as they go on past both ends, at the centres.
fn drawn_on(posts: &[Post], [first, last]: [f64; 2], centres: f64) -> Vec<Post> {
    let mut out = if posts.is_empty() { vec![Post::whole(first, 1)] } else { posts.to_vec() };
    let low = &out[0];
    if first < low.at - SAME {
        let before = Post::whole(low.at - centres, low.number.saturating_sub(1));
        out.insert(0, before);
    }
    while let Some(top) = out.last().filter(|top| top.at < last) {
        let next = Post::whole(top.at + centres, top.number + 1);
        out.push(next);
    }
    out
}

/// Names for places along a wall. A place on a post has the name of the post.
/// Of the others that may, the first and nearest to an even post whose number
/// is free has that; what is left is told by how far it stands between two
/// even posts, which neither openings nor pitches move.
fn named(posts: &[Post], even: &[Post], places: &[Place], centres: f64, near: f64) -> Vec<String> {
    let on = |posts: &[Post], at: f64| posts.iter().find(|p| (p.at - at).abs() < SAME).map(|p| p.tail.clone());
    let mut names: Vec<String> = places.iter().map(|p| on(posts, p.at).unwrap_or_default()).collect();
    let reach = places.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], p| [lo.min(p.at), hi.max(p.at)]);
    if places.is_empty() {
        return names;
    }
    let even = drawn_on(even, reach, centres);
    let mut asking: Vec<(bool, u8, f64, usize, &Post)> = Vec::new();
    for (k, place) in places.iter().enumerate().filter(|(k, _)| names[*k].is_empty()) {
        for post in &even {
            let off = (post.at - place.at).abs();
            match place.rank {
                _ if off < SAME => asking.push((false, 0, off, k, post)),
                Some(rank) if off < centres * near => asking.push((true, rank, off, k, post)),
                _ => {}
            }
        }
    }
    asking.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)).then(a.2.total_cmp(&b.2)).then(a.3.cmp(&b.3)));
    for (_, _, _, k, post) in asking {
        if names[k].is_empty() && !names.contains(&post.tail) {
            names[k].clone_from(&post.tail);
        }
    }
    for (k, place) in places.iter().enumerate() {
        if !names[k].is_empty() {
            continue;
        }
        let before = even.iter().rposition(|p| p.at <= place.at + SAME);
        let (number, from) = before.map_or((0, even[0].at - centres), |j| (even[j].number, even[j].at));
        let to = even.get(before.map_or(0, |j| j + 1)).map_or(from + centres, |p| p.at);
        let share = ((place.at - from) / (to - from) * PARTS + ROUNDING).floor().clamp(0.0, PARTS - 1.0) as u32;
        let free = |part: &u32| !names.contains(&format!("{number}-{part}"));
        if let Some(part) = (share..).find(free) {
            names[k] = format!("{number}-{part}");
        }
    }
    names
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tails(even: &[f64], places: &[(f64, bool)]) -> Vec<String> {
        let even: Vec<Post> = (1..).zip(even).map(|(number, at)| Post::whole(*at, number)).collect();
        let places: Vec<Place> = places.iter().map(|(at, may)| Place { at: *at, rank: may.then_some(0) }).collect();
        named(&even, &even, &places, 400.0, MOVED)
    }

    #[test]
    fn what_comes_between_leaves_the_numbers_alone() {
        let even = [0.0, 400.0, 800.0, 1200.0];
        let plain: Vec<(f64, bool)> = even.iter().map(|at| (*at, true)).collect();
        assert_eq!(tails(&even, &plain), ["1", "2", "3", "4"]);
        // A trimming rafter 130 mm past the second: three tenths of the way.
        assert_eq!(tails(&even, &[(0.0, true), (400.0, true), (530.0, false), (800.0, true)]), ["1", "2", "2-3", "3"]);
        // One away leaves a gap; one moved a little keeps its number, a trimming rafter there has none.
        assert_eq!(tails(&even, &[(0.0, true), (820.0, true), (1200.0, true)]), ["1", "3", "4"]);
        assert_eq!(tails(&even, &[(0.0, true), (820.0, false), (1200.0, true)]), ["1", "3-0", "4"]);
    }

    #[test]
    fn numbers_go_on_past_both_ends() {
        assert_eq!(
            tails(&[0.0, 400.0], &[(-390.0, true), (0.0, true), (810.0, true), (1200.0, true)]),
            ["0", "1", "3", "4"]
        );
        assert_eq!(tails(&[], &[(100.0, true), (500.0, true)]), ["1", "2"]);
    }
}
