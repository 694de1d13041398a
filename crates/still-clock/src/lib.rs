//! A clock that stands still.
//!
//! The solver of linear programs asks for the time at every turn, for limits that are never set here. The real library
//! would ask the browser, so that the core would need a host, and a plan might come to hang on the hour. Under the name
//! of that library (see `[patch.crates-io]`) it gets a clock on which no time passes.

use std::time::Duration;

/// A moment; there is only one, and those reckoned from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Instant(Duration);

impl Instant {
    /// Always the same moment.
    #[must_use]
    pub const fn now() -> Self {
        Self(Duration::ZERO)
    }

    /// How long ago it was: nothing, for now.
    #[must_use]
    pub const fn elapsed(&self) -> Duration {
        Duration::ZERO.saturating_sub(self.0)
    }

    /// The moment so much later, if it can be written.
    #[must_use]
    pub fn checked_add(&self, later: Duration) -> Option<Self> {
        self.0.checked_add(later).map(Self)
    }

    /// How much later it is than another; nothing when it is not later.
    #[must_use]
    pub const fn duration_since(&self, earlier: Self) -> Duration {
        self.0.saturating_sub(earlier.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_time_passes() {
        let start = Instant::now();
        assert_eq!(start.elapsed(), Duration::ZERO);
        let later = start.checked_add(Duration::from_secs(1)).unwrap();
        assert!(later > Instant::now() && later.duration_since(start) == Duration::from_secs(1));
        assert_eq!(start.duration_since(later), Duration::ZERO);
    }
}
