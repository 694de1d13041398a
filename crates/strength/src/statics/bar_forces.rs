//! Forces and bending along one bar.

use super::frame::{Bar, Lie};
use super::onset::Onset;

/// Parts that a stretch of a bar is looked through for its largest sag; each is then halved down.
const SAG_PARTS: usize = 8;
/// Halvings of a part: to 1/2^40 of it.
const SAG_HALVINGS: usize = 40;

/// The forces of one bar: at its ends and anywhere between.
///
/// Along is from its first node to its second, across is 90° anticlockwise from that. N is positive in tension. V is
/// what the part before gives to the part after, positive across; M = ∫V is positive when it stretches the side that
/// lies to the right when looking along, which is the underside of a bar drawn from left to right.
#[derive(Clone, Debug, PartialEq)]
pub struct BarForces {
    /// Its length, mm.
    pub length: f64,
    /// Stiffness along, N.
    pub ea: f64,
    /// Stiffness in bending, N mm².
    pub ei: f64,
    /// What its first node gives it: along N, across N, anticlockwise N mm.
    pub start: [f64; 3],
    /// What its second node gives it.
    pub end: [f64; 3],
    /// Movements of its ends: along, across at the start; along, across at the end, mm.
    pub moved: [f64; 4],
    /// Loads that begin at its start.
    first: Onset,
    /// Loads that begin further on, in order of place.
    later: Vec<Onset>,
}

/// What a bar carries at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// From its start, mm.
    pub at: f64,
    /// Tension, N.
    pub n: f64,
    /// Shear, N.
    pub v: f64,
    /// Bending, N mm.
    pub m: f64,
}

/// A value and where it is, mm from the start.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Peak {
    /// From the start of the bar, mm.
    pub at: f64,
    /// The value.
    pub value: f64,
}

/// The largest and smallest of each force along a bar.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Extremes {
    /// Most tension, N.
    pub n_most: Peak,
    /// Least tension, that is most compression when negative, N.
    pub n_least: Peak,
    /// Most shear, N.
    pub v_most: Peak,
    /// Least shear, N.
    pub v_least: Peak,
    /// Most bending, N mm.
    pub m_most: Peak,
    /// Least bending, N mm.
    pub m_least: Peak,
}

impl Extremes {
    /// The larger and smaller of two.
    #[must_use]
    pub fn widened(&self, other: &Self) -> Self {
        let most = |a: Peak, b: Peak| if b.value > a.value { b } else { a };
        let least = |a: Peak, b: Peak| if b.value < a.value { b } else { a };
        Self {
            n_most: most(self.n_most, other.n_most),
            n_least: least(self.n_least, other.n_least),
            v_most: most(self.v_most, other.v_most),
            v_least: least(self.v_least, other.v_least),
            m_most: most(self.m_most, other.m_most),
            m_least: least(self.m_least, other.m_least),
        }
    }
}

impl BarForces {
    pub(super) const fn idle(bar: &Bar, lie: Lie) -> Self {
        Self {
            length: lie.length,
            ea: bar.ea,
            ei: bar.ei,
            start: [0.0; 3],
            end: [0.0; 3],
            moved: [0.0; 4],
            first: Onset::NONE,
            later: Vec::new(),
        }
    }

    /// A load that runs in a straight line between two places, given as (along, across) at each, N/mm.
    pub(super) fn add_spread(&mut self, [from, to]: [f64; 2], start: [f64; 2], end: [f64; 2]) {
        let rise = [0, 1].map(|k| (end[k] - start[k]) / (to - from));
        self.add_onset(&Onset { at: from, force: [0.0; 2], spread: start, rise }, 1.0);
        if to < self.length {
            let (spread, rise) = (end.map(|v| -v), rise.map(|v| -v));
            self.add_onset(&Onset { at: to, force: [0.0; 2], spread, rise }, 1.0);
        }
    }

    /// A load at one place, as (along, across), N.
    pub(super) fn add_point(&mut self, at: f64, force: [f64; 2]) {
        self.add_onset(&Onset { at, force, ..Onset::NONE }, 1.0);
    }

    fn add_onset(&mut self, more: &Onset, factor: f64) {
        if more.at <= 0.0 {
            return self.first.add(more, factor);
        }
        let place = self.later.partition_point(|onset| onset.at < more.at);
        match self.later.get_mut(place) {
            Some(there) if there.at == more.at => there.add(more, factor),
            _ => {
                let mut onset = Onset { at: more.at, ..Onset::NONE };
                onset.add(more, factor);
                self.later.insert(place, onset);
            }
        }
    }

    pub(super) const fn set_ends(&mut self, ends: [f64; 6], moved: [f64; 6]) {
        self.start = [ends[0], ends[1], ends[2]];
        self.end = [ends[3], ends[4], ends[5]];
        self.moved = [moved[0], moved[1], moved[3], moved[4]];
    }

    /// The same bar without load.
    pub(super) fn unload(&mut self) {
        (self.start, self.end, self.moved) = ([0.0; 3], [0.0; 3], [0.0; 4]);
        self.first = Onset::NONE;
        self.later.clear();
    }

    /// Add the forces of the same bar under another load, times a factor.
    pub(super) fn add(&mut self, other: &Self, factor: f64) {
        for k in 0..3 {
            self.start[k] += factor * other.start[k];
            self.end[k] += factor * other.end[k];
        }
        for (v, o) in self.moved.iter_mut().zip(other.moved) {
            *v += factor * o;
        }
        for onset in other.onsets() {
            self.add_onset(onset, factor);
        }
    }

    fn onsets(&self) -> impl Iterator<Item = &Onset> {
        std::iter::once(&self.first).chain(&self.later)
    }

    /// Forces at `x` mm from the start. Where a load stands, `after` takes those just after it, else just before.
    fn side(&self, x: f64, after: bool) -> Station {
        let mut n = -self.start[0];
        let mut v = self.start[1];
        let mut m = -self.start[2] + x * self.start[1];
        for onset in self.onsets() {
            let d = x - onset.at;
            if d > 0.0 || (after && d == 0.0) {
                n -= onset.force[0] + d * (onset.spread[0] + d * onset.rise[0] / 2.0);
                v += onset.force[1] + d * (onset.spread[1] + d * onset.rise[1] / 2.0);
                m += d * (onset.force[1] + d * (onset.spread[1] / 2.0 + d * onset.rise[1] / 6.0));
            }
        }
        Station { at: x, n, v, m }
    }

    /// Forces at `x` mm from the start; where a load stands, those just before it, but just after
    /// one at the very start. `x` is taken onto the bar.
    #[must_use]
    pub fn at(&self, x: f64) -> Station {
        let x = self.onto(x);
        self.side(x, x == 0.0)
    }

    /// Tension at `x` mm from the start, N.
    #[must_use]
    pub fn n(&self, x: f64) -> f64 {
        self.at(x).n
    }

    /// Shear at `x` mm from the start, N.
    #[must_use]
    pub fn v(&self, x: f64) -> f64 {
        self.at(x).v
    }

    /// Bending at `x` mm from the start, N mm.
    #[must_use]
    pub fn m(&self, x: f64) -> f64 {
        self.at(x).m
    }

    fn onto(&self, x: f64) -> f64 {
        if x > 0.0 { x.min(self.length) } else { 0.0 }
    }

    /// Places where bending, shear or tension can be largest, in order: the ends, both sides of each load at a place,
    /// and between these where the shear, the load across or the load along is nought.
    #[must_use]
    pub fn stations(&self) -> Vec<Station> {
        let mut found = Vec::with_capacity(4 + 4 * self.later.len());
        self.each_station(|station| found.push(station));
        found
    }

    /// The largest and smallest of each force, exact for these loads.
    #[must_use]
    pub fn extremes(&self) -> Extremes {
        let first = self.side(0.0, true);
        let same = |value| Peak { at: 0.0, value };
        let (n, v, m) = (same(first.n), same(first.v), same(first.m));
        let mut out = Extremes { n_most: n, n_least: n, v_most: v, v_least: v, m_most: m, m_least: m };
        let grow = |most: &mut Peak, least: &mut Peak, at: f64, value: f64| {
            if value > most.value {
                *most = Peak { at, value };
            }
            if value < least.value {
                *least = Peak { at, value };
            }
        };
        self.each_station(|s| {
            grow(&mut out.n_most, &mut out.n_least, s.at, s.n);
            grow(&mut out.v_most, &mut out.v_least, s.at, s.v);
            grow(&mut out.m_most, &mut out.m_least, s.at, s.m);
        });
        out
    }

    /// Stretches between the ends and the places where loads begin or end.
    fn stretches(&self) -> impl Iterator<Item = (f64, f64)> {
        let l = self.length;
        let inner = move |onset: &&Onset| onset.at < l;
        let starts = std::iter::once(0.0).chain(self.later.iter().filter(inner).map(|onset| onset.at));
        let ends = self.later.iter().filter(inner).map(|onset| onset.at).chain(std::iter::once(l));
        starts.zip(ends)
    }

    fn each_station(&self, mut visit: impl FnMut(Station)) {
        for (from, to) in self.stretches() {
            let start = self.side(from, true);
            visit(start);
            // In the stretch V is start.v + q·t + r·t²/2 with t from its beginning.
            let (mut spread, mut rise) = ([0.0; 2], [0.0; 2]);
            for onset in self.onsets().filter(|onset| onset.at <= from) {
                for k in 0..2 {
                    spread[k] += onset.spread[k] + onset.rise[k] * (from - onset.at);
                    rise[k] += onset.rise[k];
                }
            }
            let [a, b] = roots(start.v, spread[1], rise[1] / 2.0);
            let mut places = [a, b, -spread[1] / rise[1], -spread[0] / rise[0]];
            places.sort_unstable_by(f64::total_cmp);
            for t in places {
                if t > 0.0 && t < to - from {
                    visit(self.side(from + t, true));
                }
            }
            visit(self.side(to, false));
        }
    }

    /// ∫∫M and ∫M from the start to `x`, of which EI times sag and slope are made.
    fn integrals(&self, x: f64) -> [f64; 2] {
        let [_, v, m] = self.start;
        let mut twice = x * x * (-m / 2.0 + x * v / 6.0);
        let mut once = x * (-m + x * v / 2.0);
        for onset in self.onsets() {
            let d = x - onset.at;
            if d > 0.0 {
                let (p, q, r) = (onset.force[1], onset.spread[1], onset.rise[1]);
                twice += d * d * d * (p / 6.0 + d * (q / 24.0 + d * r / 120.0));
                once += d * d * (p / 2.0 + d * (q / 6.0 + d * r / 24.0));
            }
        }
        [twice, once]
    }

    /// How far the bar bends across from the straight line between its moved ends at `x` mm from the start, mm.
    #[must_use]
    pub fn bow(&self, x: f64) -> f64 {
        let x = self.onto(x);
        (self.integrals(x)[0] - self.integrals(self.length)[0] * x / self.length) / self.ei
    }

    /// How far the bar moves across, with its ends, at `x` mm from the start, mm: exact for these loads.
    #[must_use]
    pub fn deflection(&self, x: f64) -> f64 {
        let x = self.onto(x);
        let [_, start, _, end] = self.moved;
        self.bow(x) + start + (end - start) * x / self.length
    }

    /// How far the bar moves along itself at `x` mm from the start, mm.
    #[must_use]
    pub fn stretch(&self, x: f64) -> f64 {
        let x = self.onto(x);
        let mut pull = -x * self.start[0];
        for onset in self.onsets() {
            let d = x - onset.at;
            if d > 0.0 {
                pull -= d * (onset.force[0] + d * (onset.spread[0] / 2.0 + d * onset.rise[0] / 6.0));
            }
        }
        self.moved[0] + pull / self.ea
    }

    /// The largest [`Self::bow`] to either side, with its sign.
    #[must_use]
    pub fn bow_most(&self) -> Peak {
        self.most(0.0, |x| self.bow(x))
    }

    /// The largest [`Self::deflection`] to either side, with its sign.
    #[must_use]
    pub fn deflection_most(&self) -> Peak {
        self.most((self.moved[3] - self.moved[1]) / self.length, |x| self.deflection(x))
    }

    /// The largest of a sag whose chord falls by `chord` for each mm.
    fn most(&self, chord: f64, sag: impl Fn(f64) -> f64) -> Peak {
        let lead = self.integrals(self.length)[0] / self.length;
        let slope = |x: f64| (self.integrals(x)[1] - lead) / self.ei + chord;
        let ends = [0.0, self.length].map(|at| Peak { at, value: sag(at) });
        let mut best = if ends[1].value.abs() > ends[0].value.abs() { ends[1] } else { ends[0] };
        let step = self.length / SAG_PARTS as f64;
        let mut before = slope(0.0);
        for part in 0..SAG_PARTS {
            let (mut low, mut high) = (part as f64 * step, (part + 1) as f64 * step);
            let after = slope(high);
            if (before > 0.0) != (after > 0.0) {
                for _ in 0..SAG_HALVINGS {
                    let middle = (low + high) / 2.0;
                    if (slope(middle) > 0.0) == (before > 0.0) { low = middle } else { high = middle }
                }
                let value = sag(low);
                if value.abs() > best.value.abs() {
                    best = Peak { at: low, value };
                }
            }
            before = after;
        }
        best
    }
}

/// Where a + b·t + c·t² is nought; NaN for a root that is not there.
fn roots(a: f64, b: f64, c: f64) -> [f64; 2] {
    let inside = b * b - 4.0 * a * c;
    if inside < 0.0 {
        return [f64::NAN; 2];
    }
    // The stable pair: one root by the sum of like signs, the other by the product.
    let half = -(b + inside.sqrt().copysign(b)) / 2.0;
    [half / c, a / half]
}
