//! What a family of figures gives back: the lines, and the words around them.

use crate::chain::Chain;

/// The working of a figure in words, before it is drawn.
#[derive(Clone, Debug)]
pub(crate) struct Told {
    pub chain: Chain,
    pub idea: String,
    pub by_hand: Option<String>,
    pub rule: String,
}

impl Told {
    pub(crate) fn new(chain: Chain, idea: impl Into<String>, rule: impl Into<String>) -> Self {
        Self { chain, idea: idea.into(), by_hand: None, rule: rule.into() }
    }

    pub(crate) fn by_hand(mut self, words: impl Into<String>) -> Self {
        self.by_hand = Some(words.into());
        self
    }
}

/// Sources of rules, as they are named.
pub(crate) mod rule {
    pub(crate) const COMMON: &str = "I. S. Griffith, Carpentry (1916): the rafter is the long side of run and rise";
    pub(crate) const HIP: &str =
        "NAVEDTRA 14044, Builder (US Navy), chapter 2: hips from their own run and the rise of the roof";
    pub(crate) const DEDUCT: &str = "NAVEDTRA 14044, Builder (US Navy), chapter 2: half the thickness of what it meets, measured level along the timber";
    pub(crate) const ENDS: &str = "from first principles: the long side of a square-cornered triangle";
    pub(crate) const SOLID: &str = "from first principles: measured on the finished timber";
    pub(crate) const PLUMB_CUT: &str =
        "from first principles: an upright cut stands to the timber as the timber stands to level";
    pub(crate) const EDGE: &str =
        "F. T. Hodgson, ABC of the Steel Square: the side cut is taken from the plan and the length of the rafter";
    pub(crate) const SEAT: &str = "from first principles: the notch is a square-cornered triangle turned by the pitch";
    pub(crate) const PRACTICE: &str = "common practice";
}
