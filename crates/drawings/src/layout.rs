//! Rooms on a sheet, scales that a carpenter's scale rule has, and a way to
//! put words where no others are.

use crate::sheet::{Pt, Text};

/// A rectangle on a sheet, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Left.
    pub x: f64,
    /// Top.
    pub y: f64,
    /// Width.
    pub w: f64,
    /// Height.
    pub h: f64,
}

/// Scales in use, as the 1 : n of a drawing.
const SCALES: [f64; 18] =
    [1.0, 2.0, 2.5, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 75.0, 100.0, 125.0, 150.0, 200.0];

/// The largest scale in use (the least n) at which `fits` holds. Beyond 1:200
/// the n doubles as long as needed, up to a limit that only a plan of no sense
/// reaches.
pub fn scale(fits: impl Fn(f64) -> bool) -> f64 {
    const DOUBLINGS: i32 = 40;
    if let Some(&n) = SCALES.iter().find(|&&n| fits(n)) {
        return n;
    }
    let mut n = 250.0;
    for _ in 0..DOUBLINGS {
        if fits(n) {
            break;
        }
        n *= 2.0;
    }
    n
}

/// A scale in words.
pub fn scale_words(n: f64) -> String {
    format!("1:{}", job::written::tenth(n))
}

/// Remembers where words are in a room.
pub struct Taken {
    room: Room,
    boxes: Vec<[Pt; 4]>,
}

impl Taken {
    /// A room without words.
    pub const fn new(room: Room) -> Self {
        Self { room, boxes: Vec::new() }
    }

    /// Whether a text would be in the room and not run into another.
    pub fn is_free(&self, corners: &[Pt; 4]) -> bool {
        let Room { x, y, w, h } = self.room;
        let inside = corners.iter().all(|p| (x..=x + w).contains(&p[0]) && (y..=y + h).contains(&p[1]));
        inside && !self.boxes.iter().any(|other| overlap(corners, other, 0.0))
    }

    /// Takes the place.
    pub fn take(&mut self, corners: [Pt; 4]) {
        self.boxes.push(corners);
    }

    /// The first of some texts that is free; takes its place.
    pub fn first_free(&mut self, tries: impl IntoIterator<Item = Text>) -> Option<Text> {
        let text = tries.into_iter().find(|t| self.is_free(&t.corners()))?;
        self.take(text.corners());
        Some(text)
    }
}

/// Whether two convex outlines overlap by more than `slack` mm (separating
/// axes: they do not if some side of one has the other wholly beyond it).
pub fn overlap(a: &[Pt; 4], b: &[Pt; 4], slack: f64) -> bool {
    !(separated(a, b, slack) || separated(b, a, slack))
}

fn separated(a: &[Pt; 4], b: &[Pt; 4], slack: f64) -> bool {
    (0..4).any(|i| {
        let (p, q) = (a[i], a[(i + 1) % 4]);
        let (dx, dy) = (q[0] - p[0], q[1] - p[1]);
        let length = (dx * dx + dy * dy).sqrt();
        if length <= f64::MIN_POSITIVE {
            return false;
        }
        let side = |r: Pt| (dx * (r[1] - p[1]) - dy * (r[0] - p[0])) / length;
        let own = a.iter().map(|&r| side(r)).fold((f64::INFINITY, f64::NEG_INFINITY), |m, s| (m.0.min(s), m.1.max(s)));
        let other =
            b.iter().map(|&r| side(r)).fold((f64::INFINITY, f64::NEG_INFINITY), |m, s| (m.0.min(s), m.1.max(s)));
        other.0 >= own.1 - slack || other.1 <= own.0 + slack
    })
}

/// Places on a line for labels that want to be at `wanted` (sorted) but no
/// nearer to one another than `apart`, inside `low..high` as far as they fit.
pub fn spread(wanted: &[f64], apart: f64, low: f64, high: f64) -> Vec<f64> {
    let n = wanted.len();
    if n == 0 {
        return Vec::new();
    }
    let apart = apart.min((high - low) / (n.max(2) - 1) as f64);
    // Groups of labels pushed together, each about its members' mean.
    let mut groups: Vec<(f64, usize)> = Vec::new();
    for &w in wanted {
        groups.push((w, 1));
        while groups.len() > 1 {
            let (later, later_count) = groups[groups.len() - 1];
            let (earlier, earlier_count) = groups[groups.len() - 2];
            if later - earlier >= apart * earlier_count as f64 {
                break;
            }
            groups.pop();
            let count = earlier_count + later_count;
            let shifted = later - apart * earlier_count as f64;
            let start = (earlier * earlier_count as f64 + shifted * later_count as f64) / count as f64;
            let last = groups.len() - 1;
            groups[last] = (start, count);
        }
    }
    let mut out: Vec<f64> =
        groups.iter().flat_map(|&(start, count)| (0..count).map(move |k| start + apart * k as f64)).collect();
    let mut floor = low;
    for place in &mut out {
        *place = place.max(floor);
        floor = *place + apart;
    }
    let mut ceiling = high;
    for place in out.iter_mut().rev() {
        *place = place.min(ceiling);
        ceiling = *place - apart;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spread_labels_keep_apart_in_order_and_inside() {
        let places = spread(&[0.0, 1.0, 2.0, 50.0, 99.0, 99.5], 5.0, 0.0, 100.0);
        assert_eq!(places.len(), 6);
        for pair in places.windows(2) {
            assert!(pair[1] - pair[0] > 5.0 - 1e-9, "{places:?}");
        }
        assert!(places[0] >= 0.0 && places[5] <= 100.0, "{places:?}");
        assert_eq!(places[3], 50.0);
    }

    #[test]
    fn labels_with_too_little_room_still_share_it() {
        let places = spread(&[5.0; 11], 5.0, 0.0, 10.0);
        assert!(places.windows(2).all(|p| p[1] - p[0] > 1.0 - 1e-9), "{places:?}");
    }

    #[test]
    fn boxes_overlap_only_where_they_do() {
        let a = [[0., 0.], [2., 0.], [2., 1.], [0., 1.]];
        let b = [[1.9, 0.5], [3., 0.5], [3., 2.], [1.9, 2.]];
        // A turned square beside the corner: its box overlaps, it does not.
        let c = [[3., 0.2], [4., 1.2], [3., 2.2], [2.1, 1.2]];
        assert!(overlap(&a, &b, 0.0));
        assert!(!overlap(&a, &b, 0.2));
        assert!(!overlap(&a, &c, 0.0));
    }

    #[test]
    fn scales_grow_until_they_fit() {
        assert_eq!(scale(|n| 8400.0 / n <= 150.0), 75.0);
        assert_eq!(scale(|_| true), 1.0);
        assert!(scale(|_| false).is_finite());
    }
}
