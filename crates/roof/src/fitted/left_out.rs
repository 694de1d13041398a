//! What was asked for and found no place: counted by its reason, and told once
//! for each kind.

use crate::carcass::Carcass;
use crate::solution::NoticeLevel;
use geometry::surface::WallId;

/// Most walls that a notice names one by one.
const MOST_WALLS: usize = 6;

/// Why some pieces of a kind are missing.
struct Reason {
    why: String,
    count: usize,
    walls: Vec<WallId>,
}

/// The pieces of one kind while they are fitted.
pub struct Tally {
    /// What they are called, in the plural.
    what: &'static str,
    asked: usize,
    missing: Vec<Reason>,
}

impl Tally {
    /// Nothing asked for yet.
    pub const fn of(what: &'static str) -> Self {
        Self { what, asked: 0, missing: Vec::new() }
    }

    /// One that stands in its place.
    pub fn fitted(&mut self) {
        self.asked += 1;
    }

    /// One that is left out because it `why`, at a wall.
    pub fn missed(&mut self, why: &str, wall: Option<WallId>) {
        self.asked += 1;
        let k = self.missing.iter().position(|r| r.why == why).unwrap_or_else(|| {
            self.missing.push(Reason { why: why.to_owned(), count: 0, walls: Vec::new() });
            self.missing.len() - 1
        });
        let reason = &mut self.missing[k];
        reason.count += 1;
        reason.walls.extend(wall.filter(|w| !reason.walls.contains(w)));
    }

    /// Say how many of how many are missing, why and where, and what to do.
    pub fn tell(self, carcass: &mut Carcass<'_>, level: NoticeLevel, code: &str, then: &str) {
        let missing: usize = self.missing.iter().map(|r| r.count).sum();
        if missing == 0 {
            return;
        }
        let whys: Vec<String> = self.missing.iter().map(|r| reason_words(carcass, r, missing)).collect();
        let mut walls: Vec<WallId> = self.missing.iter().flat_map(|r| r.walls.iter().copied()).collect();
        walls.sort_unstable();
        walls.dedup();
        let are = if missing == 1 { "is" } else { "are" };
        let text = format!("{missing} of {} {} {are} left out: {}. {then}", self.asked, self.what, whys.join("; "));
        carcass.remark(level, code, named(carcass, &walls).unwrap_or_else(|| self.what.to_owned()), text);
    }
}

fn reason_words(carcass: &Carcass<'_>, reason: &Reason, missing: usize) -> String {
    let count = if reason.count == missing { String::new() } else { format!("{} ", reason.count) };
    let at = named(carcass, &reason.walls).map_or_else(String::new, |walls| format!(" ({walls})"));
    format!("{count}{}{at}", reason.why)
}

/// `wall A`, `walls A, C`; `None` for none, or for more than anybody reads.
fn named(carcass: &Carcass<'_>, walls: &[WallId]) -> Option<String> {
    let letters: Vec<&str> =
        walls.iter().filter_map(|w| carcass.job.walls.get(w.index())).map(|w| w.letter.as_str()).collect();
    match letters.len() {
        0 => None,
        1 => Some(format!("wall {}", letters[0])),
        n if n <= MOST_WALLS => Some(format!("walls {}", letters.join(", "))),
        _ => None,
    }
}
