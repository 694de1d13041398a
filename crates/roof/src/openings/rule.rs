//! Rules of trimming.

/// A rule to quote: one sentence and where it is from.
pub struct Rule {
    text: &'static str,
    source: &'static str,
}

impl Rule {
    /// The rule in brackets, for the end of a notice.
    pub fn quote(&self) -> String {
        format!("(rule: {}; {})", self.text, self.source)
    }
}

/// How many rafters are added beside an opening.
pub const TRIMMING: Rule = Rule {
    text: "where one or two rafters are cut, one is added on each side; where three or four are cut, two",
    source: "roof construction textbook, trimming rules, published",
};

/// What cutting a rafter does to the one opposite.
pub const COUPLE: Rule = Rule {
    text: "a cut rafter breaks its couple: it needs trimming and another path for its thrust",
    source: "vocational text on couple roofs, published",
};

/// How far timber keeps from a chimney.
pub const CHIMNEY: Rule = Rule {
    text: "timber keeps 200 mm from the inside of a flue or 40 mm from the face of the masonry",
    source: "NHBC Standards 6.8.6, published",
};

/// So many cut rafters are made up for by one rafter added on each side
/// (published: roof construction textbook, trimming rules fig. 3.18b;
/// reference/site_checks.json `op.trim.*`).
const CUT_PER_PLY: usize = 2;

/// Most rafters that a hole may cut without an engineer (common practice;
/// reference site.md section 4).
pub const MOST_CUT: usize = 4;

/// Least distance of timber from the inside of a flue, mm (published: NHBC
/// 6.8.6; `op.chim.uk_from_flue_mm`).
const FROM_FLUE: f64 = 200.0;

/// Least distance of timber from the face of the masonry round a flue, mm
/// (published: NHBC 6.8.6; `op.chim.uk_from_face_mm`).
const FROM_FACE: f64 = 40.0;

/// Trimming rafters on each side of a hole that cuts so many rafters; `None`
/// where an engineer must decide.
pub fn plies(cut: usize) -> Option<usize> {
    (cut <= MOST_CUT).then(|| cut.div_ceil(CUT_PER_PLY).max(1))
}

/// Distance that timber keeps from a chimney's masonry, mm: far enough from
/// its face or from its flue, whichever asks less.
pub fn from_face(flue_wall: Option<f64>) -> f64 {
    flue_wall.map_or(FROM_FACE, |wall| FROM_FACE.min((FROM_FLUE - wall).max(0.0)))
}
