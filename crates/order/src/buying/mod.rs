//! What is bought besides timber and covering: fixings, straps, hangers, preservative; with prices, weights and sums.
//!
//! * [`lines`]: what a roof needs, counted on its timbers and the places where they touch;
//! * [`priced`]: lines with the prices of the job;
//! * [`loads_up`]: how many lifts of the hoist things take;
//! * [`quote()`]: sums by group.
//!
//! Item words such as `nails-100x4` are what prices go by in a job: `[price.nails-100x4]`. Counts come from timbers,
//! contacts and joints; where a habit says how many go into each, the line is an allowance and says so.
//!
//! # What is not guaranteed
//!
//! No strength is checked here. Where the strength of the roof asks for more in a joint than the habit, its count is
//! used; makers of hangers and straps say what theirs need.

pub mod board_feet;
mod bolts;
pub mod figures;
mod hangers;
mod joints;
mod line;
mod nails;
mod pricing;
mod protection;
pub mod quote;
mod sheets;
mod straps;
mod strength_says;
pub mod weights;

pub use line::{Line, LineKind, per_word};
pub use pricing::{Notice, NoticeLevel, PricedLine, priced};
pub use quote::{Entry, Quote, quote};
pub use straps::strap_count;
pub use weights::{LiftGroup, LiftLoad, loads_up, small_goods};

use figures::Figures;
use job::Job;
use roof::solution::Solution;
use strength::whole::Strength;

/// What a roof needs besides timber and covering, in the order of a shopping list. With the strength of the roof, its
/// joints and straps count where they ask for more than the habit.
#[must_use]
pub fn lines(job: &Job, solution: &Solution, strength: Option<&Strength>) -> Vec<Line> {
    let figures = Figures::of(&job.region);
    let found = joints::found(solution, figures);
    let hung = hangers::hung(solution, &found);
    let straps = straps::straps(job, solution, strength, figures);
    let mut nails = nails::Nails::new(figures);
    nails.joints(&found, strength);
    nails.straps(&straps);
    nails.hangers(&hung);
    let mut all = nails.lines();
    all.extend(bolts::lines(solution, &found, strength, figures));
    all.extend(straps::lines(&straps, figures));
    all.extend(hangers::lines(&hung, figures));
    all.extend(protection::lines(job, solution, figures));
    all.extend(sheets::lines(job, solution, &found));
    all
}
