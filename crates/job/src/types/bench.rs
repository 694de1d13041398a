//! The work on the bench.

/// How timber is set out and cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bench {
    /// Timbers that differ from their pattern by no more than this are cut from
    /// it, mm.
    pub alike_within: f64,
}
