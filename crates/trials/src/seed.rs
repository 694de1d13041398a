//! Pseudo-random numbers, the same on every machine.

/// A small generator of pseudo-random numbers (xorshift64*).
pub struct Seed(u64);

impl Seed {
    /// Starts from a number of the caller's.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D)
    }

    /// A number in `0..n`.
    pub fn below(&mut self, n: u64) -> u64 {
        (self.bits() >> 33) % n
    }

    /// A number in `lo..hi`.
    pub fn between(&mut self, lo: f64, hi: f64) -> f64 {
        lo + (hi - lo) * (self.bits() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// A number in `lo..=hi`, in whole steps from `lo`.
    pub fn stepped(&mut self, lo: f64, hi: f64, step: f64) -> f64 {
        let steps = ((hi - lo) / step).max(0.0) as u64;
        lo + step * self.below(steps + 1) as f64
    }

    /// True once in `n`.
    pub fn once_in(&mut self, n: u64) -> bool {
        self.below(n) == 0
    }

    /// One of several.
    pub fn of<T: Copy, const N: usize>(&mut self, several: [T; N]) -> T {
        several[self.below(N as u64) as usize]
    }

    /// A number with about a normal spread of 1 round 0: the sum of twelve even ones.
    pub fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.between(-0.5, 0.5)).sum()
    }
}
