//! Seeded plans to measure, and what a tape or bevel would read on them.

use geometry::survey::Measure;
use geometry::{Angle, DVec2};

/// A small seeded generator (xorshift): the same plans on every machine.
pub struct Rng(u64);

impl Rng {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    /// Evenly in 0..1.
    pub fn unit(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, count: usize) -> usize {
        ((self.unit() * count as f64) as usize).min(count.saturating_sub(1))
    }

    /// Normal with deviation 1, near enough: twelve even numbers summed.
    pub fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.unit()).sum::<f64>() - 6.0
    }
}

/// Corners round a centre at uneven angles.
fn round(rng: &mut Rng, n: usize, radius: impl Fn(&mut Rng) -> f64) -> Vec<DVec2> {
    (0..n)
        .map(|k| {
            let angle = Angle::deg(360.0 * (k as f64 + 0.5 * rng.unit()) / n as f64);
            let r = radius(rng);
            DVec2::new(r * angle.cos(), 0.7 * r * angle.sin())
        })
        .collect()
}

/// No corner points inwards.
pub fn polygon(rng: &mut Rng, n: usize) -> Vec<DVec2> {
    let size = 4000.0 + 6000.0 * rng.unit();
    round(rng, n, |_| size)
}

/// Corners point in and out as it comes; four corners or fewer have none inwards.
pub fn star(rng: &mut Rng, n: usize) -> Vec<DVec2> {
    let least = if n < 5 { 1.0 } else { 0.4 };
    round(rng, n, |rng| 8000.0 * (least + (1.0 - least) * rng.unit()))
}

/// The inside angle at a corner, degrees.
pub fn inside_deg(plan: &[DVec2], k: usize) -> f64 {
    let n = plan.len();
    let (before, after) = (plan[(k + n - 1) % n] - plan[k], plan[(k + 1) % n] - plan[k]);
    let angle = Angle::from_rise_run(after.perp_dot(before), after.dot(before)).to_deg();
    if angle < 0.0 { angle + 360.0 } else { angle }
}

/// What is read of a plan, mm or degrees.
pub fn reading(plan: &[DVec2], what: Measure) -> f64 {
    match what {
        Measure::Side(k) => plan[k].distance(plan[(k + 1) % plan.len()]),
        Measure::Diagonal(a, b) => plan[a].distance(plan[b]),
        Measure::Turn(k) => inside_deg(plan, k),
    }
}
